package piece

import (
	"testing"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// shelf is a board on two arms that stand out from wall flanges.
func shelf(t testing.TB, bands Bands) *Document {
	d := blank(t)
	d.Arms = []Arms{{Name: "bracket", Panel: "shelf", Inset: inch(6), Count: 2, Under: "shelf", Bands: bands, Reach: inch(12), Finish: pipe.Cap}}
	d.Panels = []Panel{plank("shelf", 40, 9, 1, 55, Seat{Kind: OnRails, Group: "bracket"})}
	return d
}

func TestArmsStandOutFromTheWall(t *testing.T) {
	r := resolved(t, shelf(t, Short))
	// the board's back edge keeps the flange's height of 0.85 in and the working gap from the wall
	wall := inch(9+0.85) + shop.Sample().Settings.WorkingGap
	if r.Wall == nil || *r.Wall != wall {
		t.Fatalf("wall at %v, want %v", r.Wall, wall)
	}
	axis := inch(54 - 0.525)
	for i, x := range []float64{6, 34} {
		s := r.Sticks[i]
		a, b := r.Nodes[s.A], r.Nodes[s.B]
		if b.Kind != pipe.Flange || !b.ToWall || b.At != (Vec{inch(x), wall, axis}) {
			t.Errorf("%s: %s at %v", s.Name, b.Kind, b.At)
		}
		if a.Kind != pipe.Cap || a.At != (Vec{inch(x), wall - inch(12), axis}) || s.Between != inch(12) || s.Role != ArmRole {
			t.Errorf("%s: %s at %v", s.Name, a.Kind, a.At)
		}
	}
	if r.Sticks[0].Name != "left bracket" || r.Nodes[r.Sticks[0].B].Place != "left bracket at the wall" || r.Nodes[r.Sticks[0].A].Place != "front end of the left bracket" {
		t.Errorf("%s: %s", r.Sticks[0].Name, r.Nodes[r.Sticks[0].B].Place)
	}
	if r.Groups != 1 || len(r.Loops) != 0 {
		t.Errorf("%d groups, %d loops", r.Groups, len(r.Loops))
	}
}

func TestArmsAreSpreadEvenlyBetweenTheOuterOnes(t *testing.T) {
	for n, want := range map[int][]float64{1: {20}, 2: {6, 34}, 3: {6, 20, 34}, 5: {6, 13, 20, 27, 34}} {
		d := shelf(t, Short)
		d.Arms[0].Count = n
		r := resolved(t, d)
		if len(r.Sticks) != n {
			t.Fatalf("%d arms, want %d", len(r.Sticks), n)
		}
		for i, x := range want {
			if at := r.Nodes[r.Sticks[i].A].At.X; at != inch(x) {
				t.Errorf("%d arms: the %d. at %.3f in", n, i+1, at.Inches())
			}
		}
	}
}

func TestAPanelOnArmsPlacedByCoordinatesIsCentredOnThem(t *testing.T) {
	d := shelf(t, Short)
	d.Arms[0].Panel, d.Arms[0].At, d.Arms[0].Under, d.Arms[0].Level = "", []length.Length{0, inch(30)}, "", inch(50)
	d.Panels[0].Level = nil
	r := resolved(t, d)
	p := r.Panels[0]
	// the longest arm reaches from the wall to y = 0
	if *r.Wall != inch(12) || p.Min.X != inch(-5) || p.Max.Y != inch(12-0.85)-shop.Sample().Settings.WorkingGap || p.Max.Z != inch(51.525) {
		t.Errorf("wall %v, shelf from %v to %v", *r.Wall, p.Min, p.Max)
	}
}

func TestAPocketOverACapBeginsAtItsClosedFace(t *testing.T) {
	d := shelf(t, Relieved)
	d.Panels[0].Width = inch(12)
	r := resolved(t, d)
	f := featureOf(t, &r.Panels[0], ReliefFeature)
	cap := r.Nodes[f.Node]
	if cap.Kind != pipe.Cap {
		t.Fatalf("a pocket over a %s", cap.Kind)
	}
	front, back := cap.At.Y-r.Panels[0].Min.Y, cap.At.Y+cap.Fitting.CentreToEnd-r.Panels[0].Min.Y
	if f.Min[1] > front || f.Max[1] < back || f.Max[1] > back+inch(0.5) {
		t.Errorf("from %.3f to %.3f in over a cap from %.3f to %.3f", f.Min[1].Inches(), f.Max[1].Inches(), front.Inches(), back.Inches())
	}
}

func TestFreeSticksEndAtFloorWallAndPanel(t *testing.T) {
	flanged := func(name string, ax, ay, az, bx, by, bz float64) FreeStick {
		f := free(name, ax, ay, az, bx, by, bz)
		f.FinishA, f.FinishB = pipe.Flange, pipe.Flange
		return f
	}
	d := blank(t)
	corner := at(-5, -5)
	d.Panels = []Panel{plank("top", 30, 30, 1, 31)}
	d.Panels[0].At = &corner
	d.Sticks = []FreeStick{flanged("prop", 0, 0, 0, 0, 0, 30), free("tie", 0, 0, 15, 0, 20, 15)}
	d.Sticks[1].FinishB = pipe.Flange
	r := resolved(t, d)
	if n := nodeAt(t, r, 0, 0, 30); n.Panel != 0 || n.Place != "prop stick under top" {
		t.Errorf("%s: panel %d", n.Place, n.Panel)
	}
	if n := nodeAt(t, r, 0, 0, 0); n.Foot != 0 || r.Feet[0].Spec.Kind != FlangeFoot {
		t.Errorf("%s: foot %d", n.Place, n.Foot)
	}
	if n := nodeAt(t, r, 0, 20, 15); !n.ToWall || r.Wall == nil || *r.Wall != inch(20) {
		t.Errorf("%s: wall %v", n.Place, r.Wall)
	}
	d.Sticks = append(d.Sticks, flanged("other", 9, 0, 15, 9, 25, 15))
	refused(t, d, "flanged to a wall at y 25 in, but the wall is at y 20 in")
}

func TestArmsThatReachNowhere(t *testing.T) {
	d := shelf(t, Short)
	d.Arms[0].Reach = 0
	refused(t, d, "the arms bracket reach nowhere")
	d = shelf(t, Short)
	d.Arms[0].Under, d.Arms[0].Level, d.Panels[0].Level = "", 0, nil
	refused(t, d, "nothing says how high the arms bracket are")
}

func TestASecondShelfOnTheSameWall(t *testing.T) {
	d := shelf(t, Short)
	d.Panels = append(d.Panels, plank("upper", 30, 6, 1, 70, Seat{Kind: OnRails, Group: "high"}))
	d.Arms = append(d.Arms, Arms{Name: "high", At: []length.Length{inch(10), inch(30)}, Under: "upper", Bands: Short, Reach: inch(8), Finish: pipe.None})
	r := resolved(t, d)
	p := panelNamed(t, r, "upper")
	if low := r.Panels[0]; p.Max.Y != low.Max.Y || p.Min.X != inch(5) {
		t.Errorf("upper from %v to %v", p.Min, p.Max)
	}
	if n := nodeAt(t, r, 10, (*r.Wall).Inches(), 68.475); !n.ToWall {
		t.Errorf("a %s that is not on the wall", n.Kind)
	}
	if len(clashes(r)) != 0 {
		t.Errorf("%v", clashes(r))
	}
}

func TestASizeWithoutAFlangeIsRefusedAtTheWall(t *testing.T) {
	two, err := pipe.Lookup("2")
	if err != nil {
		t.Fatal(err)
	}
	d := shelf(t, Short)
	d.Arms[0].Section.Pipe = &two
	refused(t, d, "flange 2", "measure the fitting")
}
