package sheet

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func strips(t *rapid.T) []strip {
	table := &frame{tag: "Table", head: []strip{{height: 7}}}
	n := rapid.IntRange(1, 60).Draw(t, "strips")
	out := make([]strip, n)
	from := rapid.IntRange(0, n).Draw(t, "table from")
	to := rapid.IntRange(from, n).Draw(t, "table to")
	for i := range out {
		out[i] = strip{
			height: rapid.Float64Range(1, 90).Draw(t, "height"),
			before: rapid.SampledFrom([]float64{0, 5, 20}).Draw(t, "before"),
			after:  rapid.SampledFrom([]float64{0, 5, 20}).Draw(t, "after"),
			hold:   rapid.SampledFrom([]hold{loose, loose, soft, hard}).Draw(t, "hold"),
			fresh:  rapid.IntRange(0, 9).Draw(t, "fresh") == 0,
		}
		if i >= from && i < to {
			out[i].in = table
		}
		out[i].blocks = []Block{{Level: i + 1}}
	}
	return out
}

func TestStripsFollowEachOtherWithinTheSheets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := strips(t)
		next := 1
		for n, p := range paginate(in, 100) {
			if len(p) == 0 {
				t.Fatalf("sheet %d is empty", n+1)
			}
			foot := 0.0
			for _, s := range p {
				if s.top < foot-1e-9 || s.top+s.height > 100+1e-6 {
					t.Fatalf("sheet %d: a strip stands from %g to %g, the one before ends at %g", n+1, s.top, s.top+s.height, foot)
				}
				foot = s.top + s.height
				if len(s.blocks) == 0 { // a head said again
					continue
				}
				if s.blocks[0].Level != next {
					t.Fatalf("strip %d comes where %d should", s.blocks[0].Level, next)
				}
				if s.fresh && s.top > 0 && len(in[next-1].in.chain()) == 0 {
					t.Fatalf("strip %d should begin a sheet", next)
				}
				next++
			}
		}
		if next != len(in)+1 {
			t.Fatalf("%d of %d strips were laid", next-1, len(in))
		}
	})
}

func TestStripsThatHoldTogetherAreOnOneSheetWhereTheyFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := strips(t)
		for i := range in {
			in[i].in, in[i].fresh = nil, false
		}
		on := make([]int, len(in))
		for n, p := range paginate(in, 100) {
			for _, s := range p {
				on[s.blocks[0].Level-1] = n
			}
		}
		for i := 0; i < len(in); {
			j := i + 1
			for j < len(in) && in[j-1].hold > loose {
				j++
			}
			if height(in[i:j]) <= 100 && on[i] != on[j-1] {
				t.Fatalf("strips %d to %d are %g high and stand on sheets %d to %d", i+1, j, height(in[i:j]), on[i]+1, on[j-1]+1)
			}
			i = j
		}
	})
}

func TestATableSaysItsHeadOnEverySheet(t *testing.T) {
	head := strip{height: 10}
	f := &frame{tag: "Table", head: []strip{head}}
	head.in, head.hold = f, hard
	in := []strip{head}
	for range 25 {
		in = append(in, strip{height: 10, in: f, blocks: []Block{{}}})
	}
	pages := paginate(in, 100)
	if len(pages) != 3 {
		t.Fatalf("25 rows and their head take %d sheets, want 3", len(pages))
	}
	for i, p := range pages {
		if len(p[0].blocks) != 0 {
			t.Errorf("sheet %d does not begin with the head", i+1)
		}
	}
}

func TestTheGreaterClearSpaceCounts(t *testing.T) {
	pages := paginate([]strip{{height: 10, after: 6}, {height: 10, before: 4, after: 1}, {height: 10, before: 9}}, 100)
	for i, want := range []float64{0, 16, 35} {
		if got := pages[0][i].top; math.Abs(got-want) > 1e-9 {
			t.Errorf("strip %d stands at %g, want %g", i+1, got, want)
		}
	}
}
