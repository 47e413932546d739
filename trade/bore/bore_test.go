package bore

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// fitting returns a fitting of the given size, which the tables have.
func fitting(t interface{ Fatal(...any) }, size string, k pipe.Kind) pipe.Fitting {
	s, err := pipe.Lookup(size)
	if err != nil {
		t.Fatal(err)
	}
	f, err := s.Fitting(k)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// ASME B36.10M: NPS 1/2 is 0.840 in outside; ASME B16.3, from memory: band of the 3/4 fittings 1.458 in. Flange
// plate 3 1/2 in, not standardised, from memory.
func TestWhatMustPassIsThePipeTheBandOrThePlate(t *testing.T) {
	for _, c := range []struct {
		size string
		kind pipe.Kind
		want string
	}{{"1/2", pipe.None, "0.84 in"}, {"3/4", pipe.Coupling, "1.458 in"}, {"3/4", pipe.Tee, "1.458 in"}, {"3/4", pipe.Flange, "3.5 in"}} {
		want, err := length.Parse(c.want, length.In)
		if err != nil {
			t.Fatal(err)
		}
		if got := Section(fitting(t, c.size, c.kind)); got != want {
			t.Errorf("%s %s: %v in, want %s", c.kind, c.size, got.Inches(), c.want)
		}
	}
}

func TestTheBitIsTheNextStepUp(t *testing.T) {
	for _, c := range []struct {
		needs, want string
		metric      bool
	}{{"0.87125 in", "7/8 in", false}, {"7/8 in", "7/8 in", false}, {"0.8751 in", "15/16 in", false}, {"27.7 mm", "28 mm", true}, {"28 mm", "28 mm", true}} {
		needs, _ := length.Parse(c.needs, length.In)
		want, _ := length.Parse(c.want, length.In)
		if got := length.FromMM(Bit(needs, c.metric).Value); got != want {
			t.Errorf("%s: bit %v mm, want %s", c.needs, got.MM(), c.want)
		}
	}
}

func TestABitIsLessThanAStepOverWhatIsNeeded(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		needs := length.Length(rapid.Int64Range(1, int64(length.Metre)).Draw(r, "needs"))
		metric := rapid.Bool().Draw(r, "metric")
		step := Step
		if metric {
			step = length.Millimetre
		}
		over := length.FromMM(Bit(needs, metric).Value) - needs
		if over < 0 || over >= step {
			r.Errorf("needs %d nm, bit over by %d", needs, over)
		}
	})
}

// The circle is checked by walking round the fitting's outline.
func TestAnElbowGoesThroughItsHoleArmAndAllAndNoSmallerOne(t *testing.T) {
	for _, size := range []string{"1/2", "3/4", "1", "DN20"} {
		f := fitting(t, size, pipe.Elbow90)
		a, h := f.CentreToEnd.MM(), f.Band.MM()
		radius := func(centre float64) float64 { // the least circle about a centre on the arm's axis
			far := math.Hypot(a-centre, h/2)
			for i := range 360 {
				s, c := math.Sincos(float64(i) * math.Pi / 180)
				far = math.Max(far, math.Hypot(h/2*c-centre, h/2*s))
			}
			return far
		}
		best := math.Inf(1)
		for centre := 0.0; centre < a; centre += a / 5000 {
			best = math.Min(best, radius(centre))
		}
		if got := Straight(f).Value; math.Abs(got-2*best) > 0.01 {
			t.Errorf("%s: %v mm, by walking round it %v", size, got, 2*best)
		}
	}
	if !Bent(fitting(t, "3/4", pipe.Tee)) || Bent(fitting(t, "3/4", pipe.Coupling)) {
		t.Error("a tee has an arm, a coupling none")
	}
}

func TestASawShallowerThanThePanelGoesInFromBothFaces(t *testing.T) {
	for _, c := range []struct {
		thick, depth string
		want         float64 // 0: refused
	}{{"1 in", "1 in", 1}, {"1 in", "2 in", 1}, {"1 1/4 in", "1 in", 2}, {"2 in", "1 in", 2}, {"2 1/16 in", "1 in", 0}, {"0 in", "1 in", 0}, {"1 in", "0 in", 0}} {
		thick, _ := length.Parse(c.thick, length.In)
		depth, _ := length.Parse(c.depth, length.In)
		got, err := Sides(thick, depth)
		if (err != nil) != (c.want == 0) || got.Value != c.want {
			t.Errorf("%s with a saw of %s: %v, %v; want %v", c.thick, c.depth, got.Value, err, c.want)
		}
	}
}

func TestWhatCannotPassIsRefused(t *testing.T) {
	if _, err := Needs(0, length.Millimetre); err == nil {
		t.Error("nothing passes")
	}
	if _, err := Needs(length.Inch, -1); err == nil {
		t.Error("a clearance below nought")
	}
}

func ExampleNeeds() {
	s, _ := pipe.Lookup("1/2")
	needs, _ := Needs(s.OD, length.Inch/32)
	fmt.Println(needs.Show(length.SixtyFourth), "takes a bit of", Bit(length.FromMM(needs.Value), false).Show(length.Sixteenth))
	// Output: 7/8 in takes a bit of 7/8 in
}
