package wire

import (
	"context"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/sheet"
	"rodwright/cut/verify"
	"rodwright/length"
)

const mm = length.Millimetre

// counts is how many of each part are cut, for up to four kinds.
type counts [4]int8

func (c counts) plus(d counts) counts {
	for i := range c {
		c[i] += d[i]
	}
	return c
}

func (c counts) within(d counts) bool {
	for i := range c {
		if c[i] > d[i] {
			return false
		}
	}
	return true
}

// patch is a rectangle of a sheet in whole millimetres, to be cut in so many stages; rip says that the first goes along
// the length.
type patch struct {
	x, y, l, w int
	rip        bool
	stages     int
}

// gridSheet finds by trying all that can be cut from one sheet: every cut at every whole millimetre. As all sizes are
// whole, every layout can be pushed onto that grid.
type gridSheet struct {
	p     *cut.SheetProblem
	sheet cut.Sheet
	want  counts
	known map[patch]map[counts]bool
}

// yields are all choices of parts that can be cut from a patch.
func (g *gridSheet) yields(a patch) map[counts]bool {
	if out, ok := g.known[a]; ok {
		return out
	}
	out := map[counts]bool{{}: true}
	for i, q := range g.p.Parts {
		l, w := int(q.Length/mm), int(q.Width/mm)
		if g.holds(a, l, w) || q.Turn && !g.sheet.Grain && g.holds(a, w, l) {
			var one counts
			one[i] = 1
			if one.within(g.want) {
				out[one] = true
			}
		}
	}
	if a.stages > 0 {
		next := a
		next.rip, next.stages = !a.rip, a.stages-1
		for c := range g.yields(next) { // the last of a row of strips
			out[c] = true
		}
		g.parted(a, out)
	}
	g.known[a] = out
	return out
}

// parted adds what comes of cutting a patch: what the first cut takes off goes to the next stage, the rest is cut on.
func (g *gridSheet) parted(a patch, out map[counts]bool) {
	kerf := int(g.p.Kerf / mm)
	size := a.l
	if a.rip {
		size = a.w
	}
	for at := 1; at < size; at++ {
		off, rest := a, a
		if a.rip {
			off.w, rest.y, rest.w = at, a.y+at+kerf, a.w-at-kerf
		} else {
			off.l, rest.x, rest.l = at, a.x+at+kerf, a.l-at-kerf
		}
		off.rip, off.stages = !a.rip, a.stages-1
		kept := map[counts]bool{{}: true}
		if rest.l > 0 && rest.w > 0 {
			kept = g.yields(rest)
		}
		for c := range g.yields(off) {
			for d := range kept {
				if sum := c.plus(d); sum.within(g.want) {
					out[sum] = true
				}
			}
		}
	}
}

// holds reports whether one part fits somewhere in a patch, clear of defects.
func (g *gridSheet) holds(a patch, l, w int) bool {
	for x := a.x; x+l <= a.x+a.l; x++ {
		for y := a.y; y+w <= a.y+a.w; y++ {
			r, bad := cut.Rect{X: length.Length(x) * mm, Y: length.Length(y) * mm, Length: length.Length(l) * mm, Width: length.Length(w) * mm}, false
			for _, d := range g.sheet.Defects {
				bad = bad || d.Overlaps(r)
			}
			if !bad {
				return true
			}
		}
	}
	return false
}

// cheapest is the least cost of sheets that yield all parts, +Inf where none do.
func cheapest(p *cut.SheetProblem) float64 {
	var want counts
	for i, q := range p.Parts {
		want[i] = int8(q.Count)
	}
	best := map[counts]float64{{}: 0} // least cost with the sheets so far
	for i, s := range p.Sheets {
		g := &gridSheet{p: p, sheet: s, want: want, known: map[patch]map[counts]bool{}}
		in, stages := p.Inside(i), p.Stages
		if in.Length <= 0 || in.Width <= 0 {
			continue
		}
		if stages == 0 {
			stages = 8 // as many as five parts can need
		}
		a := patch{int(in.X / mm), int(in.Y / mm), int(in.Length / mm), int(in.Width / mm), false, stages}
		b := a
		b.rip = true
		for range s.Count {
			next := map[counts]float64{}
			for c, cost := range best {
				keep(next, c, cost)
				for _, from := range []patch{a, b} {
					for d := range g.yields(from) {
						if sum := c.plus(d); sum.within(want) {
							keep(next, sum, cost+p.Cost(i))
						}
					}
				}
			}
			best = next
		}
	}
	if cost, ok := best[want]; ok {
		return cost
	}
	return math.Inf(1)
}

func keep(best map[counts]float64, c counts, cost float64) {
	if was, ok := best[c]; !ok || cost < was {
		best[c] = cost
	}
}

// tinySheets is a problem that can be solved by trying everything: two kinds of sheets with prices, grain, trim and
// defects, stages, saw cuts, up to five parts.
func tinySheets(t *rapid.T) *cut.SheetProblem {
	size := func(name string, least, most int) length.Length {
		return length.Length(rapid.IntRange(least, most).Draw(t, name)) * mm
	}
	p := &cut.SheetProblem{
		Unit: length.MM, Kerf: size("kerf", 0, 1), Trim: size("trim", 0, 1), Stages: rapid.IntRange(0, 3).Draw(t, "stages"),
		Useful: [2]length.Length{3 * mm, 3 * mm},
	}
	for i := range rapid.IntRange(1, 2).Draw(t, "sheets") {
		s := cut.Sheet{
			Tag: fmt.Sprint("P", i), Length: size("length", 4, 9), Width: size("width", 3, 7), Count: cut.Count(rapid.IntRange(1, 3).Draw(t, "there")),
			Price: cut.Priced(float64(rapid.IntRange(1, 9).Draw(t, "price"))), Grain: rapid.Bool().Draw(t, "grain"),
		}
		for range rapid.IntRange(0, 2).Draw(t, "defects") {
			s.Defects = append(s.Defects, cut.Rect{X: size("x", 0, 8), Y: size("y", 0, 6), Length: mm, Width: mm})
		}
		p.Sheets = append(p.Sheets, s)
	}
	pieces := 5
	for i := range rapid.IntRange(1, 3).Draw(t, "kinds") {
		n := rapid.IntRange(1, 2).Draw(t, "count")
		if pieces -= n; pieces < 0 {
			break
		}
		p.Parts = append(p.Parts, cut.SheetPart{
			Tag: fmt.Sprint("D", i), Length: size("part", 1, 6), Width: size("wide", 1, 5), Count: cut.Count(n), Turn: rapid.Bool().Draw(t, "turn"),
		})
	}
	return p
}

func TestWhatIsProvenIsTheCheapestThatTryingEverythingFinds(t *testing.T) {
	proven, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := tinySheets(t)
		a, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: 20_000})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range verify.Sheet(p, a) {
			t.Errorf("%v", f)
		}
		want := cheapest(p)
		if len(a.NotPlaced) > 0 {
			return
		}
		if a.Bound > want+1e-9 || a.Cost < want-1e-9 || a.Proven && a.Cost != want {
			t.Fatalf("cost %v, bound %v, proven %v; trying everything finds %v", a.Cost, a.Bound, a.Proven, want)
		}
		all++
		if a.Proven {
			proven++
		}
	})
	t.Logf("%d of %d proven", proven, all)
}
