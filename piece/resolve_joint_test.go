package piece

import (
	"testing"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// pole is a document of free sticks.
func pole(t testing.TB, sticks ...FreeStick) *Document {
	d := blank(t)
	d.Sticks = sticks
	return d
}

// free is a stick between two points in inches, its ends closed by caps where they meet nothing.
func free(name string, ax, ay, az, bx, by, bz float64) FreeStick {
	return FreeStick{Name: name, A: [3]length.Length{inch(ax), inch(ay), inch(az)}, B: [3]length.Length{inch(bx), inch(by), inch(bz)},
		FinishA: pipe.Cap, FinishB: pipe.Cap, Pos: Pos{Line: 7, Column: 3}}
}

func TestSticksThatMeetGetTheirFitting(t *testing.T) {
	mast := free("mast", 0, 0, 5, 0, 0, 45)
	for _, c := range []struct {
		name   string
		sticks []FreeStick
		at     [3]float64
		kind   pipe.Kind
	}{
		{"end on end", []FreeStick{mast, free("top", 0, 0, 45, 0, 0, 60)}, [3]float64{0, 0, 45}, pipe.Coupling},
		{"end square on end", []FreeStick{mast, free("arm", 0, 0, 45, 20, 0, 45)}, [3]float64{0, 0, 45}, pipe.Elbow90},
		{"end at 45°", []FreeStick{mast, free("brace", 0, 0, 45, 20, 0, 65)}, [3]float64{0, 0, 45}, pipe.Elbow45},
		{"end on the side", []FreeStick{mast, free("arm", 0, 0, 25, 20, 0, 25)}, [3]float64{0, 0, 25}, pipe.Tee},
		{"crossing", []FreeStick{mast, free("yard", -20, 0, 25, 20, 0, 25)}, [3]float64{0, 0, 25}, pipe.Cross},
		{"a corner of three", []FreeStick{mast, free("arm", 0, 0, 45, 20, 0, 45), free("other", 0, 0, 45, 0, 20, 45)}, [3]float64{0, 0, 45}, pipe.SideElbow},
		{"two square on the side", []FreeStick{mast, free("arm", 0, 0, 25, 20, 0, 25), free("other", 0, 0, 25, 0, 20, 25)}, [3]float64{0, 0, 25}, pipe.SideTee},
		{"a bare upper end", []FreeStick{mast}, [3]float64{0, 0, 45}, pipe.Cap},
	} {
		r := resolved(t, pole(t, c.sticks...))
		n := nodeAt(t, r, c.at[0], c.at[1], c.at[2])
		f, err := shop.Sample().Fitting(n.Size, c.kind)
		if err != nil {
			t.Fatal(err)
		}
		if n.Kind != c.kind || n.Fitting != f {
			t.Errorf("%s: a %s, want a %s", c.name, n.Kind, c.kind)
		}
	}
}

func TestRunsThatPassEachOtherAreNotJoined(t *testing.T) {
	r := resolved(t, pole(t, free("mast", 0, 0, 5, 0, 0, 45), free("yard", -20, 2, 25, 20, 2, 25), free("low", 4, 0, 25, 20, 0, 25)))
	if len(r.Sticks) != 3 || r.Groups != 3 {
		t.Errorf("%d sticks in %d groups", len(r.Sticks), r.Groups)
	}
}

// Two slanting axes can cross half a nanometre beside every point that lengths can name; they are then left
// apart, as no joint could stand on both.
func TestAxesThatCrossBetweenTwoNanometresDoNotMeet(t *testing.T) {
	cross := func(shift length.Length) *Resolved {
		rising, falling := free("rising", 0, 0, 10, 20, 0, 30), free("falling", 0, 0, 30, 20, 0, 10)
		falling.A[0] += shift
		falling.B[0] += shift
		return resolved(t, pole(t, rising, falling))
	}
	if r := cross(2); len(r.Sticks) != 4 || count(r, pipe.Cross) != 1 {
		t.Errorf("%d sticks", len(r.Sticks))
	}
	if r := cross(1); len(r.Sticks) != 2 {
		t.Errorf("%d sticks half a nanometre apart", len(r.Sticks))
	}
}

func TestASlantingStickIsAsLongAsItsDiagonal(t *testing.T) {
	r := resolved(t, pole(t, free("brace", 0, 0, 5, 12, 0, 17)))
	// offset 12 in at 45°: 12·√2 = 16.9706 in
	if got := r.Sticks[0].Between; (got - inch(16.9705627)).Abs() > length.Micrometre {
		t.Errorf("%.6f in", got.Inches())
	}
}

func TestAStickThroughTheCornersOfACubeIsAsLongAsItsDiagonal(t *testing.T) {
	r := resolved(t, pole(t, free("brace", 0, 0, 5, 12, -12, 17)))
	if got := r.Sticks[0].Between; (got - inch(20.7846097)).Abs() > length.Micrometre { // 12·√3
		t.Errorf("%.6f in", got.Inches())
	}
}

// Two 3/4 tees stand at least 2.870 in apart with a close nipple between them: 2·(1.31 − 0.5625) + 1.375 in, computed
// by hand; rounded up to the sixteenth 2 7/8 in.
func TestFiveSticksAtOnePointSayWhatCouldBeMade(t *testing.T) {
	d := stand(t)
	d.Panels[0].Seats = d.Panels[0].Seats[:1]
	d.Rails = []Rails{
		{Name: "side", From: "front", With: "back", Level: inch(8.5)},
		{Name: "front", From: "front", Level: inch(8.5)},
	}
	d.Sticks = []FreeStick{{Name: "tail", A: [3]length.Length{inch(-10), inch(2.75), inch(8.5)}, B: [3]length.Length{inch(2.75), inch(2.75), inch(8.5)}, FinishA: pipe.Cap}}
	refused(t, d, "front left post at front rail, tail stick and side rail, 8 1/2 in above the floor",
		"sticks leave right, left, back, up and down, and no fitting has these 5 ends",
		"make it a cross and a tee at least 2 7/8 in apart: move the left side rail that much up or down")
}

func TestMeetingsThatAreRefused(t *testing.T) {
	one, err := pipe.Lookup("1")
	if err != nil {
		t.Fatal(err)
	}
	mast := free("mast", 0, 0, 5, 0, 0, 45)
	thick := free("arm", 0, 0, 25, 20, 0, 25)
	thick.Section.Pipe = &one
	side := inch(1.5)
	square := free("post", 3, 3, 5, 3, 3, 45)
	square.Section.Square = &side
	for _, c := range []struct {
		name   string
		sticks []FreeStick
		words  []string
	}{
		{"two sizes", []FreeStick{mast, thick}, []string{"3/4 and 1 pipe meet", "7:3", "mast stick at arm"}},
		{"one in the other", []FreeStick{mast, free("pole", 0, 0, 30, 0, 0, 60)}, []string{"the mast stick and the pole stick lie in one another for 15 in"}},
		{"a steep slant", []FreeStick{free("brace", 0, 0, 5, 12, 0, 30)}, []string{"neither square nor at 45°"}},
		{"no length", []FreeStick{free("brace", 1, 1, 5, 1, 1, 5)}, []string{"has no length"}},
		{"a slanting branch", []FreeStick{mast, free("brace", 0, 0, 25, 12, 0, 37)}, []string{"sticks leave right-up, up and down", "made are elbows"}},
		{"square timber", []FreeStick{square}, []string{"square wooden stick", "name a pipe size"}},
	} {
		t.Run(c.name, func(t *testing.T) { refused(t, pole(t, c.sticks...), c.words...) })
	}
}

func TestARailAtAFlangeIsRefused(t *testing.T) {
	d := stand(t)
	d.Rails = append(d.Rails, Rails{Name: "front", From: "front", Level: inch(16.4375)})
	refused(t, d, "the front left post ends here in a flange")
}

func TestMeasuredFittingsWin(t *testing.T) {
	s := shop.Sample()
	s.Fittings = append(s.Fittings, shop.MeasuredFitting{Pipe: "3/4", Kind: pipe.Tee, CentreToEnd: inch(1.25)})
	r, err := Resolve(stand(t), s)
	if err != nil {
		t.Fatal(err)
	}
	if got := cut(t, r, "left side rail"); got != inch(13.5-2*(1.25-0.5625)) {
		t.Errorf("cut %.4f in", got.Inches())
	}
}
