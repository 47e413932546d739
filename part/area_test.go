package part

import (
	"math"
	"testing"

	"rodwright/length"
	"rodwright/piece"
)

func rect(kind piece.FeatureKind, x0, y0, x1, y1 length.Length) piece.Feature {
	return piece.Feature{Kind: kind, Min: [2]length.Length{x0, y0}, Max: [2]length.Length{x1, y1}}
}

func with(f piece.Feature, change func(*piece.Feature)) piece.Feature {
	change(&f)
	return f
}

// The expected areas are worked by hand from plane geometry, on a panel of 400 × 200 × 20 mm.
func TestAreaOfWhatIsLeft(t *testing.T) {
	round := func(f *piece.Feature) { f.Round = true }
	radius := func(r length.Length) func(*piece.Feature) {
		return func(f *piece.Feature) { f.Radius = r }
	}
	const plate, all = 80_000.0, 1200.0
	for _, c := range []struct {
		name               string
		cut                piece.Feature
		face, edge, volume float64
	}{
		{"a square opening inside", rect(piece.CutOutFeature, 50*mm, 50*mm, 90*mm, 80*mm), plate - 1200, all + 140, 20 * (plate - 1200)},
		{"with round corners it leaves more", with(rect(piece.CutOutFeature, 50*mm, 50*mm, 90*mm, 80*mm), radius(10*mm)),
			plate - 1200 + 85.840735, all + 140 - 17.168147, 20 * (plate - 1200 + 85.840735)},
		{"a round hole", with(rect(piece.HoleFeature, 100*mm, 100*mm, 120*mm, 120*mm), round),
			plate - 314.159265, all + 62.831853, 20 * (plate - 314.159265)},
		{"a slot with round ends", with(rect(piece.SlotFeature, 100*mm, 100*mm, 140*mm, 120*mm), radius(10*mm)),
			plate - 714.159265, all + 102.831853, 20 * (plate - 714.159265)},
		{"a notch in the back edge", rect(piece.NotchFeature, 50*mm, 160*mm, 80*mm, 200*mm), plate - 1200, all + 80, 20 * (plate - 1200)},
		{"a notch has two inside corners", with(rect(piece.NotchFeature, 50*mm, 160*mm, 80*mm, 200*mm), radius(10*mm)),
			plate - 1200 + 42.920367, all + 80 - 8.584073, 20 * (plate - 1200 + 42.920367)},
		{"a notch out of a corner leaves the edge as long", rect(piece.NotchFeature, 370*mm, 160*mm, 400*mm, 200*mm), plate - 1200, all, 20 * (plate - 1200)},
		{"a pocket keeps the face", with(rect(piece.ReliefFeature, 50*mm, 50*mm, 90*mm, 80*mm), func(f *piece.Feature) { f.Depth = 5 * mm }),
			plate, all, 20*plate - 6000},
		{"a pocket as deep as the panel goes through", with(rect(piece.ReliefFeature, 50*mm, 50*mm, 90*mm, 80*mm), func(f *piece.Feature) { f.Depth = 20 * mm }),
			plate - 1200, all + 140, 20 * (plate - 1200)},
		{"an opening over the edge counts only what lies in the panel", rect(piece.NotchFeature, -20*mm, 50*mm, 30*mm, 90*mm), plate - 1200, all + 60, 20 * (plate - 1200)},
		{"an opening beside the panel counts nothing", rect(piece.CutOutFeature, 500*mm, 50*mm, 530*mm, 90*mm), plate, all, 20 * plate},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := outlineOf(board(400*mm, 200*mm, 20*mm, true, c.cut))
			for what, pair := range map[string][2]float64{
				"face": {o.face, c.face}, "edge": {o.edge, c.edge}, "volume": {o.volume, c.volume},
			} {
				if math.Abs(pair[0]-pair[1]) > 1e-4*math.Max(1, math.Abs(pair[1])/1e4) {
					t.Errorf("%s %v, want %v", what, pair[0], pair[1])
				}
			}
		})
	}
}

// A pocket over a fitting's band runs into the notch round its post: 40 × 30 mm, of which 20 × 30 lie in a
// notch of 30 × 60.
func TestAPocketThatRunsIntoANotchIsTakenOffOnce(t *testing.T) {
	notch := rect(piece.NotchFeature, 100*mm, 140*mm, 130*mm, 200*mm)
	pocket := with(rect(piece.ReliefFeature, 110*mm, 150*mm, 150*mm, 180*mm), func(f *piece.Feature) { f.Depth = 5 * mm })
	o := outlineOf(board(400*mm, 200*mm, 20*mm, true, notch, pocket))
	if want := 20*(80_000.0-1800) - 20*30*5; math.Abs(o.volume-want) > 1e-6 || math.Abs(o.face-78_200) > 1e-6 {
		t.Errorf("volume %v, want %v; face %v", o.volume, want, o.face)
	}
	o = outlineOf(board(400*mm, 200*mm, 20*mm, true, notch, notch))
	if math.Abs(o.volume-20*78_200) > 1e-6 || math.Abs(o.face-78_200) > 1e-6 {
		t.Errorf("the same notch twice: volume %v, face %v", o.volume, o.face)
	}
}

func TestRoundedOutsideCornersTakeAway(t *testing.T) {
	p := board(400*mm, 200*mm, 20*mm, true)
	p.Spec.Corners = map[piece.Corner]length.Length{piece.FrontLeft: 20 * mm, piece.BackRight: 20 * mm}
	o := outlineOf(p)
	// Two corners of radius 20: 2 × (1 − π/4) × 400 mm² and 2 × (2 − π/2) × 20 mm.
	if math.Abs(o.face-(80_000-171.681469)) > 1e-4 || math.Abs(o.edge-(1200-17.168147)) > 1e-4 {
		t.Errorf("face %v, edge %v", o.face, o.edge)
	}
}

func TestAPanelThatIsAllHoleWeighsNothing(t *testing.T) {
	all := rect(piece.CutOutFeature, 0, 0, 400*mm, 200*mm)
	if o := outlineOf(board(400*mm, 200*mm, 20*mm, true, all)); o.volume != 0 || o.face != 0 || o.edge != 0 {
		t.Errorf("left %+v", o)
	}
}
