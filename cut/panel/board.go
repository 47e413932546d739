package panel

import (
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// board is one board with the places where a segment may begin, and what a segment yields there.
type board struct {
	cut.Board
	from, to length.Length // usable range of y
	cost     float64
	pos      []length.Length   // where segments may begin, ascending
	complete bool              // no place was left out of pos
	next     []([]int)         // by kind and position: the position behind the segment; -1 where none fits
	net      [][]length.Length // by kind and position: net width of the strips there
}

// positionLimit bounds the places tried on one board: enough for a sixteenth of an inch everywhere on a
// board of ten feet. With very many boards and kinds it is less, so that all together stay within placeLimit.
const (
	positionLimit = 2000
	placeLimit    = 10_000_000
)

// positionsEach returns how many places are tried on each board.
func positionsEach(boards, kinds int) int {
	return max(20, min(positionLimit, placeLimit/max(1, boards*kinds)))
}

func (m *model) newBoard(k int) *board {
	b := &board{Board: m.p.Boards[k], cost: m.p.Cost(k)}
	b.from, b.to = m.p.Usable(k)
	steps := make([]length.Length, 0, len(m.kinds))
	for _, kd := range m.kinds {
		steps = append(steps, kd.length+m.p.Kerf)
	}
	b.pos, b.complete = positions(b.Length, b.starts(m.kinds), steps, positionsEach(len(m.p.Boards), len(m.kinds)))
	for i := range m.kinds {
		next, net := m.yields(b, i)
		b.next = append(b.next, next)
		b.net = append(b.net, net)
	}
	return b
}

// as returns the same board under another tag.
func (b *board) as(tag string) *board {
	c := *b
	c.Tag = tag
	return &c
}

// starts returns the places from which segments are tried: the board's end, the ends of defects, and
// where a keep-out of a kind just clears a defect.
func (b *board) starts(kinds []kind) []length.Length {
	out := []length.Length{0}
	for _, d := range b.Defects {
		out = append(out, d.X+d.Length)
		for _, kd := range kinds {
			for _, s := range kd.masks {
				out = append(out, d.X+d.Length-s.From)
			}
		}
	}
	return out
}

// positions returns the starts and all that is reached from them by steps, below limit, ascending. Nearer
// ones come first when there are more than most; complete says that none was left out.
func positions(limit length.Length, starts, steps []length.Length, most int) (out []length.Length, complete bool) {
	if out = gridPositions(limit, starts, steps, most); out != nil {
		return out, true
	}
	seen := map[length.Length]bool{}
	for _, x := range starts {
		if x >= 0 && x < limit && !seen[x] {
			seen[x] = true
			out = append(out, x)
		}
	}
	slices.Sort(steps)
	steps = slices.Compact(steps)
	for i := 0; i < len(out); i++ {
		for _, s := range steps {
			x := out[i] + s
			if x >= limit || seen[x] {
				continue
			}
			if len(out) >= most {
				slices.Sort(out)
				return out, false
			}
			seen[x] = true
			out = append(out, x)
		}
	}
	slices.Sort(out)
	return out, true
}

// gridCells bounds the cells of a board that is divided into equal ones.
const gridCells = 1 << 15

// gridPositions are the positions where all sizes are multiples of one that is not too small; nil where they are not, or
// where there are more than most.
func gridPositions(limit length.Length, starts, steps []length.Length, most int) (out []length.Length) {
	cell := length.Length(0)
	for _, list := range [][]length.Length{starts, steps} {
		for _, x := range list {
			cell = divisor(cell, max(x, -x))
		}
	}
	if cell == 0 || limit/cell >= gridCells {
		return nil
	}
	reached := make([]bool, (limit+cell-1)/cell)
	for _, x := range starts {
		if x >= 0 && x < limit {
			reached[x/cell] = true
		}
	}
	for i, ok := range reached {
		if !ok {
			continue
		}
		if len(out) == most {
			return nil
		}
		out = append(out, length.Length(i)*cell)
		for _, s := range steps {
			if to := i + int(s/cell); to < len(reached) {
				reached[to] = true
			}
		}
	}
	return out
}

// divisor is the greatest number that divides a and b, of which not both are 0.
func divisor(a, b length.Length) length.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// yields computes for one kind, by position, where a segment would end and what it yields.
func (m *model) yields(b *board, k int) (next []int, net []length.Length) {
	kd := m.kinds[k]
	next = make([]int, len(b.pos))
	net = make([]length.Length, len(b.pos))
	sh := newShadow(m, b)
	never := make([]bool, len(b.Defects))
	for j, d := range b.Defects {
		never[j] = !kd.show.Takes(d, false)
	}
	to := 0
	for i, x := range b.pos {
		next[i] = -1
		if x+kd.length > b.Length || kd.thickness > b.Thickness {
			continue
		}
		net[i] = sh.net(x, kd.length, func(j int) bool { return never[j] || m.forbids(kd, b.Defects[j], x) })
		if net[i] > 0 {
			for to < len(b.pos) && b.pos[to] < x+kd.length+m.p.Kerf {
				to++
			}
			next[i] = to
		}
	}
	return next, net
}

// shadow knows what is left free beside some defects of a board.
type shadow struct {
	m    *model
	b    *board
	last []bool // by defect: it was forbidden when the yield was last worked out
	now  []bool
	left length.Length // the yield then
}

func newShadow(m *model, b *board) *shadow {
	sh := &shadow{m: m, b: b, last: make([]bool, len(b.Defects)), now: make([]bool, len(b.Defects))}
	sh.left = m.netOf(b.to - b.from)
	return sh
}

// net is the net width of the ranges in which a segment of the given length at x holds no defect that is forbidden. From
// one place to the next the defects rarely change.
func (sh *shadow) net(x, long length.Length, forbidden func(j int) bool) length.Length {
	same := true
	for j := range sh.b.Defects {
		d := &sh.b.Defects[j]
		sh.now[j] = d.X < x+long && d.X+d.Length > x && forbidden(j)
		same = same && sh.now[j] == sh.last[j]
	}
	if same {
		return sh.left
	}
	sh.now, sh.last = sh.last, sh.now
	free := []cut.Stretch{{From: sh.b.from, To: sh.b.to}}
	for j, d := range sh.b.Defects {
		if sh.last[j] {
			free = cut.Without(free, d.Across())
		}
	}
	sh.left = 0
	for _, s := range sh.m.apart(free) {
		sh.left += sh.m.netOf(s.To - s.From)
	}
	return sh.left
}

// clear returns the ranges of y in which a segment at x holds nothing that kind kd forbids, ascending and
// at least a saw cut apart, so that each can be ripped without regard to the others.
func (m *model) clear(b *board, kd kind, x length.Length) []cut.Stretch {
	free := []cut.Stretch{{From: b.from, To: b.to}}
	for _, d := range b.Defects {
		if d.X < x+kd.length && d.X+d.Length > x && m.forbids(kd, d, x) {
			free = cut.Without(free, d.Across())
		}
	}
	return m.apart(free)
}

// apart moves the beginnings of ranges so that each is a saw cut behind the one before it.
func (m *model) apart(free []cut.Stretch) []cut.Stretch {
	for i := 1; i < len(free); i++ {
		free[i].From = max(free[i].From, free[i-1].To+m.p.Kerf)
	}
	return free
}

// forbids reports whether a strip of kind kd that begins at x may not hold d, which overlaps it.
func (m *model) forbids(kd kind, d cut.Defect, x length.Length) bool {
	if !kd.show.Takes(d, false) {
		return true
	}
	if most := m.p.Strip.Most; d.Kind == cut.Void && most > 0 && d.Width > most {
		return true // no strip is wide enough to hold it whole
	}
	for _, s := range kd.masks {
		if d.X < x+s.To && d.X+d.Length > x+s.From {
			return true
		}
	}
	return false
}

// netOf returns the most net width that strips ripped from a range of the given width can have:
// the best over n strips, n·least + (n − 1)·kerf ≤ width, of min(width − (n − 1)·kerf, n·most) − n·joint.
func (m *model) netOf(width length.Length) length.Length {
	_, net := m.strips(width)
	return net
}

// strips returns how many strips a range is best ripped into, 0 for none, and their net width. Strips of
// the greatest width gain with each one that fits; once the range is used up, each further one only loses
// kerf and joints. So the best number is the last that fits in full width, or one more.
func (m *model) strips(width length.Length) (n, net length.Length) {
	p := m.p
	least := max(p.Strip.Least, p.Joint()+1)
	fit := (width + p.Kerf) / (least + p.Kerf)
	if fit < 1 {
		return 0, 0
	}
	full := length.Length(0)
	if p.Strip.Most > 0 {
		full = (width + p.Kerf) / (p.Strip.Most + p.Kerf)
	}
	for _, c := range []length.Length{max(1, full), full + 1} {
		if c <= fit {
			if v := m.ripped(width, c) - c*p.Joint(); v > net {
				n, net = c, v
			}
		}
	}
	return n, net
}

// ripped returns the width of n strips together, out of a range of the given width.
func (m *model) ripped(width, n length.Length) length.Length {
	r := width - (n-1)*m.p.Kerf
	if m.p.Strip.Most > 0 {
		r = min(r, n*m.p.Strip.Most)
	}
	return r
}

// keep drops all kinds but those with the given indexes.
func (b *board) keep(kinds []int) {
	next, net := b.next, b.net
	b.next, b.net = nil, nil
	for _, k := range kinds {
		b.next = append(b.next, next[k])
		b.net = append(b.net, net[k])
	}
}

// best returns the most that one segment for kind k yields.
func (b *board) best(k int) length.Length {
	return slices.Max(append([]length.Length{0}, b.net[k]...))
}
