package sheet

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/length"
)

func rect(x, y, l, w length.Length) cut.Rect { return cut.Rect{X: x, Y: y, Length: l, Width: w} }

func TestAPieceIsDividedBySawCuts(t *testing.T) {
	p := piece{Rect: rect(0, 0, 100, 60)}
	free, spare := p.divide(rect(0, 0, 40, 20), acrossX, 0, 2)
	if len(spare) != 0 || len(free) != 2 || free[0].Rect != rect(42, 0, 58, 60) || free[1].Rect != rect(0, 22, 40, 38) {
		t.Errorf("across x first: %+v, %+v", free, spare)
	}
	if free[0].stage != 1 || free[1].stage != 2 {
		t.Errorf("stages %d and %d, want 1 and 2", free[0].stage, free[1].stage)
	}
	free, _ = p.divide(rect(0, 0, 40, 20), acrossY, 0, 2)
	if len(free) != 2 || free[0].Rect != rect(0, 22, 100, 38) || free[1].Rect != rect(42, 0, 58, 20) {
		t.Errorf("across y first: %+v", free)
	}
	if free, _ = p.divide(rect(30, 10, 40, 20), acrossX, 0, 2); len(free) != 4 {
		t.Errorf("from the middle: %+v", free)
	}
	if free, _ = p.divide(rect(0, 0, 99, 60), acrossX, 0, 2); len(free) != 0 {
		t.Errorf("what the saw cut takes is left as a piece: %+v", free)
	}
}

func TestCutsBeyondTheLastStageOnlyTrim(t *testing.T) {
	p := piece{Rect: rect(0, 0, 100, 60), stage: 2, dir: acrossY}
	for _, c := range []struct {
		name     string
		r        cut.Rect
		first    direction
		stages   int
		possible bool
	}{
		{"a third stage and a trim", rect(0, 0, 40, 20), acrossX, 3, true},
		{"no stage is left but that of the piece itself", rect(0, 0, 40, 20), acrossX, 2, false},
		{"in the direction of its own stage, then a trim", rect(0, 0, 40, 20), acrossY, 2, true},
		{"a single trim", rect(0, 0, 40, 60), acrossX, 2, true},
		{"any number of stages", rect(0, 0, 40, 20), acrossX, 0, true},
		{"nothing to cut", rect(0, 0, 100, 60), acrossX, 2, true},
	} {
		if got := p.possible(c.r, c.first, c.stages); got != c.possible {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	free, spare := p.divide(rect(0, 0, 40, 20), acrossY, 2, 0)
	if len(free) != 1 || free[0].stage != 2 || len(spare) != 1 || spare[0].stage != 3 {
		t.Errorf("free %+v, spare %+v", free, spare)
	}
}

// Laws of dividing: the pieces lie within, apart from each other and from the part, and with a saw cut of
// no width nothing is lost.
func TestNothingIsLostByDividing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, least, most int) length.Length {
			return length.Length(rapid.IntRange(least, most).Draw(t, name))
		}
		p := piece{Rect: rect(n("x", 0, 9), n("y", 0, 9), n("l", 1, 30), n("w", 1, 30))}
		r := rect(0, 0, n("rl", 1, int(p.Length)), n("rw", 1, int(p.Width)))
		r.X, r.Y = p.X+n("dx", 0, int(p.Length-r.Length)), p.Y+n("dy", 0, int(p.Width-r.Width))
		kerf := n("kerf", 0, 3)
		free, spare := p.divide(r, rapid.SampledFrom([]direction{acrossX, acrossY}).Draw(t, "first"), rapid.IntRange(0, 1).Draw(t, "stages"), kerf)
		all := append(free, spare...)
		area := r.Length * r.Width
		for i, q := range all {
			area += q.Length * q.Width
			if q.X < p.X || q.Y < p.Y || q.X+q.Length > p.X+p.Length || q.Y+q.Width > p.Y+p.Width || q.Overlaps(r) {
				t.Fatalf("%+v lies outside %+v or over %+v", q, p, r)
			}
			for _, o := range all[i+1:] {
				if q.Overlaps(o.Rect) {
					t.Fatalf("%+v overlaps %+v", q, o)
				}
			}
		}
		if whole := p.Length * p.Width; kerf == 0 && area != whole || area > whole {
			t.Fatalf("%d of %d are left", area, whole)
		}
	})
}

func TestTheFewestStagesThatPartTheBoxes(t *testing.T) {
	b := rect
	for _, c := range []struct {
		name  string
		boxes []cut.Rect
		want  int
	}{
		{"one part", []cut.Rect{b(0, 0, 10, 10)}, 0},
		{"two beside each other", []cut.Rect{b(0, 0, 10, 10), b(12, 5, 10, 10)}, 1},
		{"two columns, one parted again", []cut.Rect{b(0, 0, 10, 10), b(12, 0, 10, 10), b(12, 12, 10, 10)}, 2},
		{"a pinwheel", []cut.Rect{b(0, 0, 20, 10), b(22, 0, 10, 20), b(12, 22, 20, 10), b(0, 12, 10, 20)}, never},
		{"closer than the saw cut", []cut.Rect{b(0, 0, 10, 10), b(11, 0, 10, 10)}, never},
	} {
		if got := stagesOf(c.boxes, 2); got != c.want {
			t.Errorf("%s: %d stages, want %d", c.name, got, c.want)
		}
	}
}

func TestSumsOfPartsAreTheSizesWorthTrying(t *testing.T) {
	got, ok := sums([]length.Length{3, 5}, 10)
	if want := []length.Length{0, 3, 5, 6, 8, 9, 10}; !ok || !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
	if _, ok = sums([]length.Length{1}, 10_000); ok {
		t.Error("ten thousand sizes are not too many")
	}
}
