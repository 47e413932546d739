package marking

import (
	"slices"
	"strings"
	"testing"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

func in(v float64) length.Length { return length.FromInches(v) }

// A board of 40 × 12 in with a notch of 1 3/4 × 4 in open to the far edge, 2 in from the left; two holes of
// 5/8 in, middles at 7 and 14 in along and 1 1/2 in across; a pocket 3 × 2 in, 1/4 in deep, at 30 × 5 in; and a
// slot 3 × 1 in at 20 × 6 in, so the middles of its ends are 1/2 in from its ends.
func board() part.Part {
	cut := func(kind piece.FeatureKind, x, y, l, w, r float64) part.Feature {
		return part.Feature{Kind: kind, At: [2]length.Length{in(x), in(y)}, Size: [2]length.Length{in(l), in(w)}, Radius: in(r)}
	}
	p := part.Part{
		Kind: part.Panel, Tag: "A1", Name: "board", Material: "white-oak", Datum: "front left",
		Finished: [3]length.Length{in(40), in(12), in(1)},
		Features: []part.Feature{
			cut(piece.NotchFeature, 2, 8, 1.75, 4, 0.25), cut(piece.HoleFeature, 6.6875, 1.1875, 0.625, 0.625, 0.3125),
			cut(piece.HoleFeature, 13.6875, 1.1875, 0.625, 0.625, 0.3125), cut(piece.ReliefFeature, 30, 5, 3, 2, 0.25),
			cut(piece.SlotFeature, 20, 6, 3, 1, 0.5),
		},
		Profiles: []part.Profile{{Side: part.NearEdge, Profile: "chamfer", Size: in(0.125), Run: in(40)}},
	}
	p.Features[0].Opens, p.Features[0].Why = part.FarEdge, "round back left post"
	p.Features[1].Round, p.Features[2].Round = true, true
	p.Features[3].Depth = in(0.25)
	return p
}

func TestStopsRunFromTheDatum(t *testing.T) {
	m := &marker{p: board(), st: sheets[0]}
	for axis, want := range []string{
		"a: 2|a: 3 3/4|b: 7|c: 14|e: 20 1/2|e: 22 1/2|d: 30|d: 33",
		"b, c: 1 1/2|d: 5|e: 6 1/2|d: 7|a: 8",
	} {
		var got []string
		for _, s := range m.stopsOf(axis) {
			got = append(got, s.words(m.st.Fineness))
		}
		if strings.Join(got, "|") != want {
			t.Errorf("axis %d: %q, by hand %q", axis, got, want)
		}
	}
}

func TestLettersThatFollowEachOtherAreOneRange(t *testing.T) {
	for in, want := range map[string]string{"a": "a", "a b": "a, b", "a b c": "a–c", "a c d e flange": "a, c–e, flange", "y z aa ab": "y, z, aa, ab"} {
		if got := ranges(strings.Fields(in)); got != want {
			t.Errorf("%s: %q, not %q", in, got, want)
		}
	}
}

func TestTheTableSaysWhereEachFeatureIs(t *testing.T) {
	head, rows := Features(board(), length.Sixteenth)
	want := []string{
		"a|notch|2 in|8 in|1 3/4 × 4 in|1/4 in|through|round back left post",
		"b|hole|7 in|1 1/2 in|⌀ 5/8 in||through|",
		"c|hole|14 in|1 1/2 in|⌀ 5/8 in||through|",
		"d|pocket|30 in|5 in|3 × 2 in|1/4 in|1/4 in|",
		"e|slot|20 in|6 in|3 × 1 in|1/2 in|through|",
	}
	for i, r := range rows {
		if got := strings.Join(r, "|"); got != want[i] || len(r) != len(head) {
			t.Errorf("row %d is %q, by hand %q", i, got, want[i])
		}
	}
}

func TestLettersGoOnAfterZ(t *testing.T) {
	for i, want := range map[int]string{0: "a", 25: "z", 26: "aa", 27: "ab", 51: "az", 52: "ba", 701: "zz", 702: "aaa"} {
		if got := Letter(i); got != want {
			t.Errorf("letter %d is %q, not %q", i, got, want)
		}
	}
}

func TestAPlainRectangleNeedsNoMarking(t *testing.T) {
	plain := part.Part{Kind: part.Panel, Finished: [3]length.Length{in(10), in(5), in(1)}}
	plain.FaceM2 = in(10).MM() * in(5).MM() / 1e6
	rounded, flanged, pipe := plain, plain, plain
	rounded.FaceM2 -= 1e-5
	flanged.Sits = "on posts, on rails"
	pipe.Kind = part.Pipe
	pipe.Features = board().Features
	for _, c := range []struct {
		p    part.Part
		want bool
	}{{plain, false}, {rounded, true}, {flanged, true}, {pipe, false}, {board(), true}} {
		if Needed(c.p) != c.want {
			t.Errorf("%+v: %v", c.p, !c.want)
		}
	}
}

func TestAPanelOfNoPieceIsDrawnFromItsPartAlone(t *testing.T) {
	d := Of(nil, board(), sheets[0])
	if err := wordsKeepApart(d, nil, board(), sheets[0]); err != nil {
		t.Error(err)
	}
	for _, says := range []string{"datum", "a", "e", "near edge, chamfer 1/8 in", "far end", "Near edge: chamfer 1/8 in, after everything else is cut.", "e: 22 1/2"} {
		if !slices.Contains(wordsOf(d), says) {
			t.Errorf("nowhere says %q: %q", says, wordsOf(d))
		}
	}
}

func TestEveryTightPlaceStillHasALetter(t *testing.T) {
	p := board()
	p.Features = nil
	for i := range 40 { // holes 1/8 in apart
		f := board().Features[1]
		f.At = [2]length.Length{in(1 + float64(i%16)*0.75), in(1 + float64(i/16)*0.75)}
		p.Features = append(p.Features, f)
	}
	for _, st := range sheets {
		d := Of(nil, p, st)
		for _, law := range []func(*draw.Drawing, *piece.Resolved, part.Part, draw.Style) error{wordsKeepApart, lettersOnce, placesAreWritten} {
			if err := law(d, nil, p, st); err != nil {
				t.Error(err)
			}
		}
	}
}

// A panel from front to back, its left front corner at (100, 200) mm of the piece, 300 mm wide and 1000 deep.
// Its datum is the front right corner: a flange at (150, 260) is 60 mm along, and 300 − 50 across.
func TestATurnedPanelIsMeasuredFromItsFrontRightCorner(t *testing.T) {
	vec := func(x, y float64) piece.Vec { return piece.Vec{X: mm(x), Y: mm(y)} }
	r := &piece.Resolved{
		Nodes: make([]piece.Node, 1),
		Panels: []piece.FlatPanel{{
			Name: "board", Spec: &piece.Panel{Corners: map[piece.Corner]length.Length{piece.BackRight: mm(20)}},
			Min: vec(100, 200), Max: vec(400, 1200),
			Seats: []piece.PanelSeat{{Kind: piece.OnPosts, Node: 0, Stick: 0, At: [2]length.Length{mm(150), mm(260)}, Foot: -1}},
		}},
	}
	p := panelOf(1000, 300)
	p.Indexes, p.Datum = []int{0}, "front right"
	m := &marker{r: r, p: p, flat: flatOf(r, p), st: sheets[1], fixings: fixingsOf(r, p, flatOf(r, p))}
	if a, b := m.stopsOf(0), m.stopsOf(1); len(a) != 1 || a[0].at != mm(60) || len(b) != 1 || b[0].at != mm(250) {
		t.Errorf("along %v, across %v", a, b)
	}
	for side, want := range map[part.Side]string{part.StartEnd: "front", part.FarEnd: "back", part.NearEdge: "right", part.FarEdge: "left"} {
		if _, got := m.sideWords(side); got != want {
			t.Errorf("its %s is the %s, not the %s", side, got, want)
		}
	}
	if o := wholePanel(p, flatOf(r, p)); o.radius != [4]float64{0, 20e6, 0, 0} { // back right: far along, near across
		t.Errorf("radii %v", o.radius)
	}
}
