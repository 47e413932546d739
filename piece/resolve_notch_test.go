package piece

import (
	"math"
	"testing"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
	"rodwright/trade/wood"
)

// notched is a board on two front posts, round two back posts whose axes are d inches behind, with a rail
// under it there so that a tee's band is in its thickness.
func notched(t testing.TB, d float64, opens string) *Document {
	doc := stand(t)
	doc.Holes, doc.Holds, doc.Edges = nil, nil, nil
	doc.Panels[0].Width = inch(d + 2*2.75)
	doc.Panels[0].Opens = map[string]string{"back": opens}
	doc.Panels[1].Width = inch(5)
	return doc
}

// wallsOf returns the figures of a feature's walls by name, in inches.
func wallsOf(f Feature) map[string]float64 {
	out := map[string]float64{}
	for _, w := range f.Walls {
		out[w.Name] = w.Value / length.Inch.MM()
	}
	return out
}

func featureOf(t testing.TB, p *FlatPanel, kind FeatureKind) Feature {
	t.Helper()
	for _, f := range p.Features {
		if f.Kind == kind {
			return f
		}
	}
	t.Fatalf("%s has no %s", p.Name, kind)
	return Feature{}
}

// White oak, flat-sawn, built at 8 %, 30 to 60 % RH at 70 °F, 7.25 in from the held line, band 1/14 in, working gap
// 1/16 in: inner 0.212, outer 0.182 in, opening on a band of 1.458 in 1.853 in, to 0.003 in; computed by hand from Wood
// Handbook FPL-GTR-282 (2021) eq. 4-5 and eq. 13-2.
func TestNotchWallsFollowTheWoodOfTheYear(t *testing.T) {
	doc := notched(t, 7.25, "left")
	gap := inch(1.0 / 16)
	doc.Panels[0].Gap = &gap
	r := resolved(t, doc)
	p := panelNamed(t, r, "deep board")
	f := featureOf(t, p, NotchFeature)
	w := wallsOf(f)
	for name, want := range map[string]float64{"inner wall": 0.212, "outer wall": 0.182, "wall along the grain": 1.0/14 + 1.0/16} {
		if math.Abs(w[name]-want) > 0.003 {
			t.Errorf("%s: %.4f in, want %.3f", name, w[name], want)
		}
	}
	if got := (f.Max[1] - f.Min[1]).Inches(); math.Abs(got-1.853) > 0.003 {
		t.Errorf("opening %.4f in, want 1.853", got)
	}
	if f.Section != inch(1.458) || f.Node < 0 || r.Nodes[f.Node].Kind != pipe.Tee {
		t.Errorf("sized on %v at node %d", f.Section, f.Node)
	}
	// the walls are those of the figures to the nanometre, the inner one in front
	axis, half := inch(2.75+7.25), inch(1.458).Half()
	if front := axis - half - f.Min[1]; front != length.FromMM(f.Walls[0].Value) {
		t.Errorf("front wall %v, figure %v", front, f.Walls[0].Value)
	}
	if f.Opens != LeftSide || f.Min[0] != 0 || f.Max[0] != inch(2.75)+half+length.FromMM(f.Walls[2].Value) {
		t.Errorf("opens %s, from %v to %v", f.Opens, f.Min, f.Max)
	}
}

func TestAWallTowardsTheEdgeIsLeftOutOfAnOpenNotch(t *testing.T) {
	for opens, want := range map[string][]string{
		"back":  {"inner wall", "wall along the grain"},
		"front": {"outer wall", "wall along the grain"},
		"right": {"inner wall", "outer wall", "wall along the grain"},
		"hole":  {"inner wall", "outer wall", "wall along the grain"},
	} {
		p := panelNamed(t, resolved(t, notched(t, 7.25, opens)), "deep board")
		f := p.Features[0]
		if w := wallsOf(f); len(w) != len(want) {
			t.Errorf("%s: %v", opens, w)
		} else {
			for _, name := range want {
				if w[name] == 0 {
					t.Errorf("%s lacks the %s", opens, name)
				}
			}
		}
		if (f.Kind == HoleFeature) != (opens == "hole") || f.Round != (opens == "hole") {
			t.Errorf("%s: a %s", opens, f.Kind)
		}
	}
}

func TestBehindTheHeldLineTheInnerWallIsAtTheBack(t *testing.T) {
	doc := notched(t, 7.25, "left")
	doc.Posts[0].Name, doc.Posts[1].Name = "back", "front" // held at the back, round the posts in front
	doc.Posts[0].Corners, doc.Posts[1].Corners = doc.Posts[1].Corners, doc.Posts[0].Corners
	doc.Rails[1].From = "front"
	doc.Rails[0].From, doc.Rails[0].With = "back", "front"
	doc.Panels[0].Seats = []Seat{{Kind: OnPosts, Group: "back"}, {Kind: AroundPosts, Group: "front"}}
	doc.Panels[0].Opens = map[string]string{"front": "left"}
	doc.Panels[1].Seats[0].Group = "front"
	p := panelNamed(t, resolved(t, doc), "deep board")
	f := featureOf(t, p, NotchFeature)
	low, high := inch(2.75)-f.Section.Half()-f.Min[1], f.Max[1]-inch(2.75)-f.Section.Half()
	if p.HeldAt != inch(10) || high != length.FromMM(f.Walls[0].Value) || low != length.FromMM(f.Walls[1].Value) || high <= low {
		t.Errorf("held at %v: front wall %v, back wall %v, %v", p.HeldAt, low, high, wallsOf(f))
	}
}

func TestARoundHoleTakesItsWidestWall(t *testing.T) {
	f := panelNamed(t, resolved(t, notched(t, 7.25, "hole")), "deep board").Features[0]
	widest := 0.0
	for _, w := range f.Walls {
		widest = max(widest, w.Value)
	}
	if want := inch(1.458).Half() + length.FromMM(widest); f.Radius != want || f.Max[0]-f.Min[0] != 2*want {
		t.Errorf("radius %v, want %v", f.Radius, want)
	}
}

func TestTheOpeningGoesToTheNearestEdge(t *testing.T) {
	post := func(x, y float64) Posts {
		return Posts{Name: "pole", At: [][2]length.Length{at(x, y)}, From: toLevel(0, pipe.Cap), To: toLevel(60, pipe.Cap)}
	}
	for _, c := range []struct {
		name string
		x, y float64
		side PanelSide
		turn bool // the grain runs from front to back
	}{
		{"near the back", 15, 18, BackSide, false},
		{"near the front", 15, 2, FrontSide, false},
		{"near the left end", 2, 10, LeftSide, false},
		{"near the right end", 28, 10, RightSide, false},
		{"a corner, grain along: the edge along the grain", 3, 17, BackSide, false},
		{"a corner, grain from front to back", 3, 17, LeftSide, true},
		{"between front and back alike: the back", 15, 10, NoSide, false},
		{"between front and back alike near an end", 5, 10, LeftSide, false},
		{"between the ends alike, grain along", 15, 5, FrontSide, false},
		{"6 in from the nearest edge", 6, 10, LeftSide, false},
		{"more than 6 in from every edge", 15, 12, NoSide, false},
	} {
		d := blank(t)
		corner := at(0, 0)
		p := plank("board", 30, 20, 1, 30, Seat{Kind: AroundPosts, Group: "pole"})
		p.At, p.GrainX = &corner, !c.turn
		d.Panels, d.Posts = []Panel{p}, []Posts{post(c.x, c.y)}
		if f := resolved(t, d).Panels[0].Features[0]; f.Opens != c.side {
			t.Errorf("%s: opens %q, want %q", c.name, f.Opens, c.side)
		}
	}
}

func TestOfEdgesAlikeTheBackAndTheLeftGoFirst(t *testing.T) {
	for _, grainX := range []bool{true, false} {
		d := blank(t)
		corner := at(0, 0)
		p := plank("board", 10, 10, 1, 30, Seat{Kind: AroundPosts, Group: "pole"})
		p.At, p.GrainX = &corner, grainX
		d.Panels = []Panel{p}
		d.Posts = []Posts{{Name: "pole", At: [][2]length.Length{at(5, 5)}, From: toLevel(0, pipe.Cap), To: toLevel(60, pipe.Cap)}}
		want := map[bool]PanelSide{true: BackSide, false: LeftSide}[grainX]
		if f := resolved(t, d).Panels[0].Features[0]; f.Opens != want {
			t.Errorf("grain along %v: opens %s, want %s", grainX, f.Opens, want)
		}
	}
}

func TestSheetsQuarterSawnAndUnsureBoardsMoveByTheirOwnRule(t *testing.T) {
	inner := func(change func(*Document)) (figure.Figure, Feature) {
		doc := notched(t, 7.25, "left")
		change(doc)
		f := featureOf(t, panelNamed(t, resolved(t, doc), "deep board"), NotchFeature)
		return f.Walls[0], f
	}
	still := inch(1.0/16).MM() + float64(resolved(t, stand(t)).Nodes[0].Size.Pitch)/1e6
	sheet, _ := inner(func(d *Document) { d.Panels[0].Sheet = "birch-plywood-18" })
	if math.Abs(sheet.Value-still) > 1e-6 || len(sheet.Assumed) == 0 {
		t.Errorf("sheet: %v %v", sheet.Value, sheet.Assumed)
	}
	flat, _ := inner(func(*Document) {})
	quarter, _ := inner(func(d *Document) { d.Wood.Cut = wood.Quarter })
	unsure, _ := inner(func(d *Document) { d.Wood.Cut = "" })
	// C_R 0.00180 against C_T 0.00365 for white oak, Wood Handbook Table 13-5
	if ratio := (quarter.Value - still) / (flat.Value - still); math.Abs(ratio-0.00180/0.00365) > 0.002 {
		t.Errorf("quarter-sawn moves %.4f of flat-sawn", ratio)
	}
	if unsure.Value != flat.Value || len(unsure.Assumed) <= len(flat.Assumed) {
		t.Errorf("unsure: %v %v", unsure.Value, unsure.Assumed)
	}
	// built wetter than the room ever is: the inner wall never comes nearer than it was built
	wet, f := inner(func(d *Document) { d.Wood.Moisture = 13 })
	if math.Abs(wet.Value-still) > 1e-6 || !(f.Walls[1].Value > still) {
		t.Errorf("built wet: inner %v, outer %v, still %v", wet.Value, f.Walls[1].Value, still)
	}
}

func TestTheFrameBandCountsTheLevelPipesOnTheWay(t *testing.T) {
	d := stand(t)
	pitch := resolved(t, d).Nodes[0].Size.Pitch
	bandOf := func(d *Document, panel string) length.Length {
		f := featureOf(t, panelNamed(t, resolved(t, d), panel), NotchFeature)
		for _, in := range f.Walls[0].Inputs {
			if in.Name == "band" {
				return length.FromMM(in.Value)
			}
		}
		return 0
	}
	if got := bandOf(d, "deep board"); got != pitch {
		t.Errorf("by the side rail: %v, want one pitch %v", got, pitch)
	}
	// with a stretcher's tee in the side rails, two pipes lie between the posts
	d.Rails = append(d.Rails, Rails{Name: "stretcher", From: "side", FromRails: true, Share: [2]int64{1, 2}})
	if got := bandOf(d, "deep board"); got != 2*pitch {
		t.Errorf("by two pipes: %v, want %v", got, 2*pitch)
	}
	// without side rails nothing but the wood joins the posts
	d.Rails = d.Rails[1:2]
	d.Rails[0].Under, d.Rails[0].Level = "", inch(9)
	d.Panels[0].Seats = []Seat{d.Panels[0].Seats[0], d.Panels[0].Seats[2]}
	if got := bandOf(d, "deep board"); got != pitch {
		t.Errorf("by no pipe: %v, want %v", got, pitch)
	}
}

func TestInsideCornersTakeTheShopsRadius(t *testing.T) {
	s := shop.Sample()
	f := featureOf(t, panelNamed(t, resolved(t, stand(t)), "deep board"), NotchFeature)
	if f.Radius != s.Settings.InsideRadius || f.Depth != 0 {
		t.Errorf("radius %v", f.Radius)
	}
}

func TestPocketsOverTheBandsOfARail(t *testing.T) {
	r := resolved(t, stand(t))
	p := panelNamed(t, r, "deep board")
	var pockets []Feature
	for _, f := range p.Features {
		if f.Kind == ReliefFeature {
			pockets = append(pockets, f)
		}
	}
	if len(pockets) != 2 {
		t.Fatalf("%d pockets, want one over each tee", len(pockets))
	}
	f := pockets[0]
	// the band stands (1.458 − 1.050)/2 = 0.204 in proud, and gets the working gap
	if want := inch(0.204) + shop.Sample().Settings.WorkingGap; f.Depth != want {
		t.Errorf("depth %.4f in", f.Depth.Inches())
	}
	// from the post's axis the tee reaches 1.31 in along the rail
	if want := inch(2.75+1.31) + length.FromMM(f.Walls[2].Value); f.Max[0] != want {
		t.Errorf("reaches to %.4f in", f.Max[0].Inches())
	}
	if f.Min[1] >= inch(16.25-0.729) || f.Max[1] <= inch(16.25+0.729) || f.Opens != NoSide {
		t.Errorf("from %v to %v", f.Min, f.Max)
	}
	for _, b := range []Bands{Ridden, Short} {
		d := stand(t)
		d.Rails[1].Bands = b
		for _, f := range panelNamed(t, resolved(t, d), "deep board").Features {
			if f.Kind == ReliefFeature {
				t.Errorf("%s: a pocket %s", b, f.Why)
			}
		}
	}
	over := stand(t)
	over.Rails = append(over.Rails, Rails{Name: "brace", From: "back", Level: inch(15.9125 - 6)},
		Rails{Name: "deep", From: "front", With: "back", Under: "deep board", Bands: Relieved})
	n := 0
	for _, f := range panelNamed(t, resolved(t, over), "deep board").Features {
		if f.Kind == ReliefFeature {
			n++
		}
	}
	// the panel lies on the back rail alone, but is relieved over the deep rails' tees and unions too: at each
	// back post one pocket along and one across, at each front post one, and one over each union under it
	unions := 0
	for _, node := range resolved(t, over).Nodes {
		if node.Kind == pipe.Union && node.At.Z == inch(15.9125) {
			unions++
		}
	}
	if n != 6+unions {
		t.Errorf("%d pockets with %d unions under the panel", n, unions)
	}
	thin := stand(t)
	thin.Panels[0].Thickness = inch(0.25)
	refused(t, thin, "deep board is 1/4 in thick: a pocket over the band", "bands: ridden")
}
