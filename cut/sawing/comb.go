package sawing

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// block is what the cuts of a piece make: a part, or an offcut that is kept, which has no tag.
type block struct {
	cut.Rect
	tag string
}

func blocksOf(u cut.Used) []block {
	out := make([]block, 0, len(u.Parts)+len(u.Left))
	for _, p := range u.Parts {
		out = append(out, block{cut.Rect{X: p.At[0], Y: p.At[1], Length: p.Size[0], Width: p.Size[1]}, p.Tag})
	}
	for _, o := range u.Left {
		out = append(out, block{Rect: cut.Rect{X: o.At[0], Y: o.At[1], Length: o.Size[0], Width: o.Size[1]}})
	}
	return out
}

// extent is the range of a rectangle in the direction in which the cuts of a machine follow each other.
func extent(r cut.Rect, m cut.Machine) (from, to length.Length) {
	if m == cut.Crosscut {
		return r.X, r.X + r.Length
	}
	return r.Y, r.Y + r.Width
}

func other(m cut.Machine) cut.Machine {
	if m == cut.Crosscut {
		return cut.Rip
	}
	return cut.Crosscut
}

// parted sorts blocks in the direction of a machine's cuts and divides them wherever a saw cut fits between them.
func parted(blocks []block, m cut.Machine, kerf length.Length) (groups [][]block) {
	slices.SortStableFunc(blocks, func(a, b block) int {
		x, _ := extent(a.Rect, m)
		y, _ := extent(b.Rect, m)
		return cmp.Compare(x, y)
	})
	var end length.Length
	first := 0
	for i, b := range blocks {
		from, to := extent(b.Rect, m)
		if i == 0 {
			end = to
		} else if from >= end+kerf {
			groups = append(groups, blocks[first:i:i])
			first, end = i, to
		}
		end = max(end, to)
	}
	return append(groups, blocks[first:])
}

// reach is the range that blocks take up.
func reach(blocks []block, m cut.Machine) (from, to length.Length) {
	from, to = extent(blocks[0].Rect, m)
	for _, b := range blocks {
		f, t := extent(b.Rect, m)
		from, to = min(from, f), max(to, t)
	}
	return from, to
}

// never is more changes of direction than any layout needs.
const never = 1 << 30

// stages counts how often the direction is taken up to part the blocks when the first cuts are made by m. It puts
// them in another order.
func stages(blocks []block, m cut.Machine, kerf length.Length) int {
	if len(blocks) <= 1 {
		return 0
	}
	groups := parted(blocks, m, kerf)
	if len(groups) == 1 {
		return never
	}
	worst := 0
	for _, g := range groups {
		worst = max(worst, stages(g, other(m), kerf))
	}
	return min(never, worst+1)
}

// comb parts one piece of stock after the other into its blocks.
type comb struct {
	kerf  length.Length
	cuts  []Cut
	piece int
	whole cut.Rect
}

// first is the machine that a piece comes to first: boards are crosscut, sheets go where they come apart in
// fewer stages.
func (c *comb) first(p cut.Problem, blocks []block) cut.Machine {
	if p.Sheets == nil {
		return cut.Crosscut
	}
	if stages(slices.Clone(blocks), cut.Rip, c.kerf) < stages(slices.Clone(blocks), cut.Crosscut, c.kerf) {
		return cut.Rip
	}
	return cut.Crosscut
}

func hasParts(blocks []block) bool {
	return slices.ContainsFunc(blocks, func(b block) bool { return b.tag != "" })
}

// part cuts a piece right across wherever a saw cut fits between its blocks, by machine m, then each of what
// comes off by the other. What lies before a block is cut off first; offcuts alone are not cut further.
func (c *comb) part(piece cut.Rect, blocks []block, m cut.Machine, after int) {
	if !hasParts(blocks) || len(blocks) == 1 && blocks[0].Rect == piece {
		return
	}
	groups := parted(blocks, m, c.kerf)
	start, end := extent(piece, m)
	if from, to := reach(groups[0], m); len(groups) == 1 && from == start && to == end {
		if len(blocks) == 1 || len(parted(blocks, other(m), c.kerf)) > 1 {
			c.part(piece, blocks, other(m), after)
		}
		return
	}
	edge, _ := extent(c.whole, m)
	x := start
	for i, g := range groups {
		from, to := reach(g, m)
		if i == len(groups)-1 && !hasParts(g) { // what stays behind is kept as it is
			return
		}
		if from > x {
			after = c.add(piece, m, [2]length.Length{max(x, from-c.kerf), from}, from-x, after)
			c.cuts[after].serves(i == 0 && x == edge)
		}
		if to < end {
			after = c.add(piece, m, [2]length.Length{to, min(end, to+c.kerf)}, to-from, after)
			c.cuts[after].makes(g, between(piece, m, from, to))
		}
		c.part(between(piece, m, from, to), g, other(m), after)
		x = to + c.kerf
	}
}

// add adds a cut at which the blade takes the given range.
func (c *comb) add(piece cut.Rect, m cut.Machine, blade [2]length.Length, setting length.Length, after int) int {
	_, end := extent(piece, m)
	n := Cut{Piece: c.piece, Machine: m, Setting: setting, After: after, Left: end - blade[1]}
	mid := (blade[0] + blade[1]).Half()
	n.A, n.B = [2]length.Length{mid, piece.Y}, [2]length.Length{mid, piece.Y + piece.Width}
	if m == cut.Rip {
		n.A, n.B = [2]length.Length{piece.X, mid}, [2]length.Length{piece.X + piece.Length, mid}
	}
	c.cuts = append(c.cuts, n)
	return len(c.cuts) - 1
}

// serves tells of a cut that makes nothing what it is for: an edge of the stock, or what lies farther in.
func (n *Cut) serves(edge bool) {
	n.Whole = true
	if n.Why = Off; edge {
		n.Why = Square
	}
}

// makes tells what a cut takes off: parts, or an offcut to keep.
func (n *Cut) makes(g []block, off cut.Rect) {
	n.Why = Keep
	if hasParts(g) {
		n.Makes = make([]string, 0, len(g))
	}
	for _, b := range g {
		if b.tag != "" {
			n.Why = Part
			n.Makes = append(n.Makes, b.tag)
		}
	}
	n.Whole = len(g) == 1 && g[0].Rect == off
	if n.Why == Keep {
		n.Whole = true
		n.Kept = [2]length.Length{off.Length, off.Width}
	}
}

func between(r cut.Rect, m cut.Machine, from, to length.Length) cut.Rect {
	if m == cut.Crosscut {
		r.X, r.Length = from, to-from
	} else {
		r.Y, r.Width = from, to-from
	}
	return r
}
