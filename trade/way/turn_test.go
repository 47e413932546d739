package way

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

// The ladder round a corner, (a^⅔ + b^⅔)^(3/2): any calculus text, from memory.
func TestAThingOfNoWidthIsTheClassicalLadder(t *testing.T) {
	for _, c := range [][2]float64{{900, 900}, {900, 1200}, {800, 2700}, {1000, 125}} {
		f, err := LongestRound(length.FromMM(c[0]), length.FromMM(c[1]), 0)
		want := math.Pow(math.Cbrt(c[0]*c[0])+math.Cbrt(c[1]*c[1]), 1.5)
		if err != nil || math.Abs(f.Value-want) > 1e-6*want {
			t.Errorf("%v: %v, want %v, %v", c, f.Value, want, err)
		}
	}
}

// In passages of equal width the worst angle is 45°: l = 2·(√2·a − w), geometry by symmetry, while that is more than a.
func TestInEqualPassagesTheWorstAngleIsHalfWay(t *testing.T) {
	f, _ := LongestRound(900*length.Millimetre, 900*length.Millimetre, 500*length.Millimetre)
	if want := 2 * (math.Sqrt2*900 - 500); math.Abs(f.Value-want) > 1e-6 {
		t.Errorf("%v mm, want %v", f.Value, want)
	}
}

func TestWhatIsWiderThanAPassageDoesNotPassAndWhatIsAsWideGoesOnlySideways(t *testing.T) {
	f, _ := LongestRound(900*length.Millimetre, 800*length.Millimetre, 801*length.Millimetre)
	if f.Value != 0 {
		t.Errorf("%v mm passes", f.Value)
	}
	f, _ = LongestRound(900*length.Millimetre, 900*length.Millimetre, 900*length.Millimetre)
	if math.Abs(f.Value-900) > 1e-6 {
		t.Errorf("a square of 900 mm: %v mm", f.Value)
	}
}

// walked reports whether a rectangle gets round the corner, by trying: at each of many angles it is pushed into the outer
// corner, and its inner side and its far corners are tried against the inner corner. It may leave along a passage
// wherever it lies within that passage's width.
func walked(a, b, l, w float64) bool {
	round := func(l, w float64) bool {
		const n = 900
		from := false // some angle that it can come by, from which all angles were free so far
		to := false
		for i := range n + 1 {
			s, c := math.Sincos(float64(i) * math.Pi / 2 / n)
			inA, inB := l*s+w*c <= a, l*c+w*s <= b
			// the four corners: (l·c, 0), (0, l·s) and those w inside; is the inner corner (b, a) inside the rectangle?
			off := (b-l*c)*s + a*c
			free := inA || inB || off >= w
			if !free {
				from, to = false, false
				continue
			}
			from, to = from || inA, to || inB
			if from && to {
				return true
			}
		}
		return false
	}
	return round(l, w) || round(w, l)
}

func TestTheLongestIsFoundByWalkingItRound(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		mm := func(name string, lo, hi float64) float64 { return math.Round(rapid.Float64Range(lo, hi).Draw(r, name)) }
		a, b := mm("a", 500, 2000), mm("b", 500, 2000)
		w := mm("w", 20, min(a, b)-10)
		f, err := LongestRound(length.FromMM(a), length.FromMM(b), length.FromMM(w))
		if err != nil {
			r.Fatal(err)
		}
		if l := f.Value * 0.999; l >= w && !walked(a, b, l, w) {
			r.Errorf("%v by %v does not get round %v and %v", l, w, a, b)
		}
		if l := f.Value * 1.001; l >= w && walked(a, b, l, w) {
			r.Errorf("%v by %v gets round %v and %v", l, w, a, b)
		}
	})
}

// Seen by hand: 3-4-5. A box 4 long and 3 high has a diagonal of 5: under a ceiling of 5 it stands up.
func TestABoxPitchedUpTakesLessFloor(t *testing.T) {
	for _, c := range []struct{ l, h, ceiling, want float64 }{
		{4000, 3000, 5000, 3000}, {4000, 3000, 6000, 3000}, {4000, 3000, 3000, 4000}, {4000, 3000, 2000, 4000},
		// no height: a ladder's floor by Pythagoras, √(5² − 3²) = 4
		{5000, 1e-3, 3000, 4000},
	} {
		f, err := Pitched(length.FromMM(c.l), length.FromMM(c.h), length.FromMM(c.ceiling))
		if err != nil || math.Abs(f.Value-c.want) > 0.01 {
			t.Errorf("%v: %v mm, %v", c, f.Value, err)
		}
	}
}

func TestAWiderPassageOrASlimmerThingNeverHinders(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		mm := func(name string, lo, hi float64) length.Length {
			return length.FromMM(rapid.Float64Range(lo, hi).Draw(r, name))
		}
		a, b, w, more := mm("a", 300, 3000), mm("b", 300, 3000), mm("w", 1, 3000), mm("more", 0, 500)
		narrow, _ := LongestRound(a, b, w)
		for _, wide := range [][3]length.Length{{a + more, b, w}, {a, b + more, w}, {a, b, max(0, w-more)}} {
			f, err := LongestRound(wide[0], wide[1], wide[2])
			if err != nil || f.Value < narrow.Value-1e-6 {
				r.Errorf("%v passes %v, but only %v of %v", []length.Length{a, b, w}, narrow.Value, f.Value, wide)
			}
		}
	})
}

func TestTurnsOfNothingAreRefused(t *testing.T) {
	if _, err := LongestRound(0, 1, 1); err == nil {
		t.Error("a passage of no width")
	}
	if _, err := Pitched(1, 0, 1); err == nil {
		t.Error("a box of no height")
	}
}
