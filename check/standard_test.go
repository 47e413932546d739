package check

import (
	"testing"

	"rodwright/finding"
	"rodwright/piece"
)

// 50 kg, centre 30 in up, 6 in inside feet 12 in apart: atan(6 ÷ 30) = 11.310°. Pushed at its top, 31 in: 490.3·6 ÷ 31 =
// 94.9 N; asked is 13 %, 63.74 N. A board 8 in outside the feet: 490.3·6 ÷ 8 = 367.7 N; asked are at most 100 N.
func TestAPieceByPublishedRequirements(t *testing.T) {
	p := block([2]float64{40, 12}, piece.Feet{Kind: piece.CapFoot}, []slab{{50, 30}})
	p.Panels[0].Min.Y, p.Panels[0].Max.Y = -8*in, 20*in
	for id, c := range map[string]struct {
		words         string
		figure, limit float64
		want          finding.Verdict
	}{
		"iec-60335-1-tilt":   {"IEC 60335-1 clause 20.1", 11.310, 10, finding.Tight},
		"iec-62368-1-tilt":   {"IEC 62368-1", 11.310, 10, finding.Tight},
		"iec-60065-tilt":     {"IEC 60065", 11.310, 10, finding.Tight},
		"iec-60598-2-4-tilt": {"IEC 60598-2-4", 11.310, 6, finding.Stands},
		"iec-60598-2-7-tilt": {"IEC 60598-2-7", 11.310, 15, finding.Fails},
		"iec-62368-1-push":   {"IEC 62368-1", 94.90, 63.74, finding.Stands},
		"iec-62368-1-down":   {"IEC 62368-1", 367.7, 100, finding.Stands},
	} {
		p.Doc.Standards = []string{id}
		f := only(t, Tip(p), "by "+c.words)
		near(t, id, f.Figure.Value, c.figure, 0.05)
		near(t, id+" asked", f.Limit.Value, c.limit, 0.01)
		verdict(t, f, c.want)
		says(t, f.Assumed[len(f.Assumed)-2], "published for", "by choice")
	}
	// 15° asks 30·tan 15° = 8.038 in: 2.038 more, 2 1/16 on the tape
	p.Doc.Standards = []string{"iec-60598-2-7-tilt"}
	says(t, only(t, Tip(p), "by IEC").Mend, "2 1/16 in out")
}

// IEC 62368-1, 3rd edition: pushed at up to 1.5 m. At 2 m the same piece would tip at 75 % of that force.
func TestTheTestPushIsAtNoMoreThanAMetreAndAHalf(t *testing.T) {
	p := block([2]float64{40, 12}, piece.Feet{Kind: piece.CapFoot}, []slab{{50, 30}})
	p.Nodes[0].At.Z = 80 * in
	p.Doc.Standards = []string{"iec-62368-1-push"}
	f := only(t, Tip(p), "by IEC")
	near(t, "push", f.Figure.Value, 490.33*6*25.4/1500, 0.05)
	verdict(t, f, finding.Fails) // 49.8 N, asked 63.7
	// 13 % of the weight at 1500 mm need 195 mm, it has 152.4: 42.6 mm more, 1 11/16 in on the tape
	says(t, f.Mend, "1 11/16 in out, to the")
}

func TestWhatAStandardDoesNotCoverIsSaid(t *testing.T) {
	p := block([2]float64{40, 12}, piece.Feet{Kind: piece.CapFoot}, []slab{{8, 20}})
	for id, words := range map[string]string{
		"iec-60065-tilt": "covers what has 25 kg and more, or is 1 m high", "laboratory-tilt": "covers what has 11 kg",
		"astm-f2057": "F2057", "en-12521": "test house", "en-1022": "not known here", "en-16121": "test house",
	} {
		p.Doc.Standards = []string{id}
		var f finding.Finding
		for _, f = range Tip(p) {
		}
		verdict(t, f, finding.Unknown)
		says(t, f.Missing, words)
		wholesome(t, id, f)
	}
}
