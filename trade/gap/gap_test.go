package gap

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

func TestAScrewCentredInItsHoleMovesBothWays(t *testing.T) {
	for _, c := range []struct{ shank, dry, wet, want float64 }{ // in; arithmetic
		{0.19, -0.1, 0.15, 0.49}, {0.19, -0.2, 0.15, 0.59}, {0.19, 0, 0, 0.19}, {0.19, 0.1, 0.2, 0.59}, {0.19, -0.2, -0.1, 0.59},
	} {
		got := Hole(length.FromInches(c.shank), c.dry*25.4, c.wet*25.4).Value / 25.4
		if math.Abs(got-c.want) > 1e-9 {
			t.Errorf("shank %v, dry %v, wet %v: hole %v in, want %v", c.shank, c.dry, c.wet, got, c.want)
		}
	}
}

func TestTheWallOnTheHeldSideKeepsOffTheGrowingWoodTheOtherOffTheShrinking(t *testing.T) {
	w := Notch(length.FromInches(1.458), -0.05*25.4, 0.08*25.4, length.FromInches(0.07), length.FromInches(0.06))
	for _, c := range []struct {
		name      string
		got, want float64 // in; arithmetic
	}{{"inner", w.Inner.Value, 0.21}, {"outer", w.Outer.Value, 0.18}, {"opening", w.Opening.Value, 1.848}} {
		if math.Abs(c.got/25.4-c.want) > 1e-9 {
			t.Errorf("%s is %v in, want %v", c.name, c.got/25.4, c.want)
		}
	}
}

func TestWoodThatOnlyShrinksStillNeedsBandAndGap(t *testing.T) {
	w := Notch(length.Inch, -3, -1, length.Millimetre, 2*length.Millimetre)
	if w.Inner.Value != 3 || w.Outer.Value != 6 {
		t.Errorf("inner %v, outer %v mm, want 3 and 6", w.Inner.Value, w.Outer.Value)
	}
}

func TestThePostNeverTouchesAWallInAnyAirBetween(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		dry := rapid.Float64Range(-20, 20).Draw(r, "dry")
		wet := dry + rapid.Float64Range(0, 20).Draw(r, "more")
		band, working := length.Length(rapid.Int64Range(0, 5e6).Draw(r, "band")), length.Length(rapid.Int64Range(0, 5e6).Draw(r, "gap"))
		w := Notch(length.Inch, dry, wet, band, working)
		now := dry + rapid.Float64Range(0, 1).Draw(r, "air")*(wet-dry)
		// The wood carries both walls outward by now; the post stands off by band at most.
		if in := w.Inner.Value - now - band.MM(); in < working.MM()-1e-9 {
			r.Errorf("the inner wall comes within %v mm of the post, the gap is %v", in, working.MM())
		}
		if out := w.Outer.Value + now - band.MM(); out < working.MM()-1e-9 {
			r.Errorf("the outer wall comes within %v mm of the post, the gap is %v", out, working.MM())
		}
	})
}

func ExampleHole() {
	fmt.Printf("%.3f in\n", Hole(length.FromInches(0.19), -2.4, 4).Value/25.4)
	// Output: 0.505 in
}
