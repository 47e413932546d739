package fate

import (
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

// grid is a small panel in whole millimetres, so that every place a needed one can have in it is tried.
func grid(t *rapid.T, label string, most int) outline {
	size := func(l string) length.Length {
		return length.Length(rapid.IntRange(4, most).Draw(t, label+l)) * length.Millimetre
	}
	o := outline{size: [2]length.Length{size(" long"), size(" wide")}}
	for range rapid.IntRange(0, 3).Draw(t, label+" openings") {
		var lo, hi [2]length.Length
		for k := range 2 {
			whole := int(o.size[k] / length.Millimetre)
			a := rapid.IntRange(0, whole-1).Draw(t, label+" at")
			b := rapid.IntRange(a+1, whole).Draw(t, label+" to")
			lo[k], hi[k] = length.Length(a)*length.Millimetre, length.Length(b)*length.Millimetre
		}
		o.add("cut-out", "", lo, hi, false, 0, 0)
	}
	return o
}

// serves says by its squares of a millimetre whether the made panel, less what is cut off, can be made into the needed
// one by taking away only: every square of the needed one must be wood in the made one, and every square that is gone
// in the made one must be gone in the needed one, but for a gap that may show. An opening that runs out over the edge
// of the needed panel must run out there altogether, which squares can't tell: openings are kept inside here.
func wood(o outline, x, y int) bool {
	at := [2]length.Length{length.Length(x)*length.Millimetre + length.Millimetre/2, length.Length(y)*length.Millimetre + length.Millimetre/2}
	for k := range 2 {
		if at[k] < 0 || at[k] > o.size[k] {
			return false
		}
	}
	for _, c := range o.openings {
		if at[0] > c.lo[0] && at[0] < c.hi[0] && at[1] > c.lo[1] && at[1] < c.hi[1] {
			return false
		}
	}
	return true
}

// fits reports whether every square of wood that is needed is wood in the made panel.
func fits(made, need outline, dx, dy int) bool {
	for x := range int(need.size[0] / length.Millimetre) {
		for y := range int(need.size[1] / length.Millimetre) {
			if wood(need, x, y) && !wood(made, x+dx, y+dy) {
				return false
			}
		}
	}
	return true
}

// What is found is really there: wherever wood is needed there is wood, but within the gap that may stay wider.
func TestAPanelIsFoundOnlyWhereThereIsWood(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		made, need := grid(t, "made", 24), grid(t, "need", 24)
		p, _, ok := place(made, need, true)
		if !ok || len(p.wider) > 0 {
			return
		}
		want := need
		if p.turned {
			want = need.turned()
		}
		for k := range 2 {
			if p.at[k] < 0 || p.at[k]+want.size[k] > made.size[k] {
				t.Fatalf("it lies outside: %v", p.at)
			}
		}
		if p.at[0]%length.Millimetre != 0 || p.at[1]%length.Millimetre != 0 {
			return // in the middle of the slack: squares can't tell
		}
		if !fits(made, want, int(p.at[0]/length.Millimetre), int(p.at[1]/length.Millimetre)) {
			t.Fatalf("wood is missing: made %+v\nneed %+v\nat %v", made, want, p.at)
		}
	})
}

// What is there is found: a plain panel that lies clear of all openings somewhere is found in the made one.
func TestAPlainPanelIsFoundWhereverItFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		made, need := grid(t, "made", 20), grid(t, "need", 14)
		need.openings = nil
		there := false
		for dx := 0; dx <= int((made.size[0]-need.size[0])/length.Millimetre); dx++ {
			for dy := 0; dy <= int((made.size[1]-need.size[1])/length.Millimetre); dy++ {
				there = there || fits(made, need, dx, dy)
			}
		}
		if _, _, ok := place(made, need, true); ok != there {
			t.Fatalf("found %v, there %v: made %+v need %v", ok, there, made, need.size)
		}
	})
}

func TestADiscLiesInARoundedCornerOnlyWhereItReachesNoFarther(t *testing.T) {
	b := rect{hi: [2]length.Length{100, 100}, r: 20}
	for _, c := range []struct {
		at   [2]length.Length
		r    length.Length
		want bool
	}{
		{[2]length.Length{20, 20}, 20, true},
		{[2]length.Length{10, 10}, 10, false}, // its corner of the square is rounded away
		{[2]length.Length{15, 15}, 10, true},  // √2·5 = 7.07 from the corner's centre, and 20 − 10 = 10 are free
		{[2]length.Length{50, 10}, 10, true},
		{[2]length.Length{50, 9}, 10, false},
	} {
		if got := b.holds(c.at, c.r); got != c.want {
			t.Errorf("%v, radius %d: %v", c.at, c.r, got)
		}
	}
}

func TestARoundHoleClearsASquareCornerByItsRadiusOnly(t *testing.T) {
	hole := rect{lo: [2]length.Length{-20, -20}, hi: [2]length.Length{0, 0}, r: 10} // centre −10, −10
	for at, want := range map[length.Length]bool{-2: true, -3: true, -4: false} {   // √2·(10−2) = 11.3, √2·7 = 9.9
		b := rect{lo: [2]length.Length{at, at}, hi: [2]length.Length{100, 100}}
		if at == -3 {
			want = false
		}
		if got := hole.clear(b); got != want {
			t.Errorf("corner at %d: clear %v", at, got)
		}
	}
}

func TestTurnedTwiceIsAsBefore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := grid(t, "panel", 20)
		twice := o.turned().turned()
		four := o.quartered().quartered().quartered().quartered()
		for i, c := range o.openings {
			if twice.openings[i].rect != c.rect || four.openings[i].rect != c.rect || twice.openings[i].opens != c.opens || four.openings[i].opens != c.opens {
				t.Fatalf("%+v, turned twice %+v, four quarters %+v", c, twice.openings[i], four.openings[i])
			}
		}
	})
}
