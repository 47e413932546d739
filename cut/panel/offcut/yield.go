package offcut

import (
	"math/big"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// grades from the strictest on: a strip that one takes, all that follow take too.
var grades = []cut.Show{cut.Clear, cut.SmallKnots, cut.Character}

func gradeOf(s cut.Show) int { return slices.Index(grades, s) }

// slab is a stretch of a board on which strips side by side have at most the given net width together.
type slab struct {
	from, to length.Length
	net      length.Length
}

// slabs returns what board k can yield for a grade, from left to right: no strip is shorter than shortest. Every strip
// is taken as longer by the saw cut behind it, so that the last slab ends a saw cut behind the board.
func (w *work) slabs(k int, grade cut.Show, shortest length.Length) (out []slab) {
	g := w.grid(k, grade)
	for g.open(shortest, w.least) {
	}
	kerf := w.p.Kerf
	at := slices.Clone(g.x)
	for _, x := range g.x {
		at = append(at, x+kerf)
	}
	slices.Sort(at)
	at = slices.Compact(at)
	for i := 1; i < len(at); i++ {
		s := slab{at[i-1], at[i], 0}
		run := length.Length(0)
		for j := range len(g.y) - 1 {
			if g.reaches(j, s.from, kerf) {
				run += g.y[j+1] - g.y[j]
				continue
			}
			s.net += w.most(run)
			run = 0
		}
		s.net += w.most(run)
		out = append(out, s)
	}
	return out
}

// most is the greatest net width of strips out of a range, whatever their number.
func (w *work) most(width length.Length) length.Length {
	_, net := w.count(width, length.Max*2)
	return net
}

// grid is a board divided by the edges of its defects.
type grid struct {
	x, y []length.Length
	free [][]bool // by row and column
}

// never reports whether no strip of a grade may hold d, whichever face it shows.
func never(s cut.Show, d cut.Defect, ring cut.Ring) bool {
	return !s.Takes(d, false) && (ring == cut.NoRing || !s.Takes(d, true))
}

func (w *work) grid(k int, grade cut.Show) *grid {
	in, b := w.usable(k), w.p.Boards[k]
	g := &grid{x: []length.Length{0, in.Length}, y: []length.Length{in.Y, in.Y + in.Width}}
	var bad []cut.Rect
	for _, d := range b.Defects {
		if !never(grade, d, b.Ring) || !d.Rect.Overlaps(in) {
			continue
		}
		bad = append(bad, d.Rect)
		g.x = append(g.x, max(0, d.X), min(in.Length, d.X+d.Length))
		g.y = append(g.y, max(in.Y, d.Y), min(in.Y+in.Width, d.Y+d.Width))
	}
	slices.Sort(g.x)
	slices.Sort(g.y)
	g.x, g.y = slices.Compact(g.x), slices.Compact(g.y)
	for j := range len(g.y) - 1 {
		row := make([]bool, len(g.x)-1)
		for i := range row {
			cell := cut.Rect{X: g.x[i], Y: g.y[j], Length: g.x[i+1] - g.x[i], Width: g.y[j+1] - g.y[j]}
			row[i] = !slices.ContainsFunc(bad, func(d cut.Rect) bool { return d.Overlaps(cell) })
		}
		g.free = append(g.free, row)
	}
	return g
}

// open takes out the places round which no strip fits, along or across; it reports whether there were any.
func (g *grid) open(shortest, narrowest length.Length) (changed bool) {
	rows, columns := len(g.y)-1, len(g.x)-1
	for j := range rows {
		row := func(i int) *bool { return &g.free[j][i] }
		changed = closeRuns(columns, row, g.x, shortest) || changed
	}
	for i := range columns {
		column := func(j int) *bool { return &g.free[j][i] }
		changed = closeRuns(rows, column, g.y, narrowest) || changed
	}
	return changed
}

// closeRuns closes the runs of free cells that are shorter than least.
func closeRuns(n int, free func(int) *bool, edge []length.Length, least length.Length) (changed bool) {
	for i := 0; i < n; {
		if !*free(i) {
			i++
			continue
		}
		from := i
		for i < n && *free(i) {
			i++
		}
		if edge[i]-edge[from] < least {
			for j := from; j < i; j++ {
				*free(j) = false
			}
			changed = true
		}
	}
	return changed
}

// reaches reports whether row j is free at x or was within a saw cut before it.
func (g *grid) reaches(j int, x, kerf length.Length) bool {
	for i, free := range g.free[j] {
		if free && g.x[i] <= x && x < g.x[i+1]+kerf {
			return true
		}
	}
	return false
}

// yielding is slabs with what those before each yield.
type yielding struct {
	slabs  []slab
	before []*big.Int
}

func sumUp(slabs []slab) yielding {
	y, sum := yielding{slabs: slabs}, new(big.Int)
	for _, s := range slabs {
		y.before = append(y.before, sum)
		sum = new(big.Int).Add(sum, area128(s.to-s.from, s.net))
	}
	return y
}

// last returns the index of the last slab that begins before x, -1 for none.
func (y yielding) last(x length.Length) int {
	i := len(y.slabs) - 1
	for i >= 0 && y.slabs[i].from >= x {
		i--
	}
	return i
}

// to is the area that the slabs up to x yield.
func (y yielding) to(x length.Length) *big.Int {
	i := y.last(x)
	if i < 0 {
		return new(big.Int)
	}
	sum := area128(min(y.slabs[i].to, x)-y.slabs[i].from, y.slabs[i].net)
	return sum.Add(sum, y.before[i])
}

// net is the net width on the lines just before x.
func (y yielding) net(x length.Length) length.Length {
	if i := y.last(x); i >= 0 && x <= y.slabs[i].to {
		return y.slabs[i].net
	}
	return 0
}

// widest is the greatest net width on a line before x.
func (y yielding) widest(x length.Length) (net length.Length) {
	for _, s := range y.slabs[:y.last(x)+1] {
		net = max(net, s.net)
	}
	return net
}
