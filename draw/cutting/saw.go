package cutting

import (
	"cmp"
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/length"
)

// sawing is one saw cut on a piece of stock: where it runs, and the setting it is made at.
type sawing struct {
	machine cut.Machine
	setting length.Length
	makes   []string
	a, b    draw.Point
}

// block is what one cut makes: a part, or something kept, which has no tag.
type block struct {
	draw.Rect
	tag string
}

// low and high are a block's extent in the direction that a machine's cuts follow each other.
func low(r draw.Rect, m cut.Machine) length.Length {
	if m == cut.Crosscut {
		return r.Min.X
	}
	return r.Min.Y
}

func high(r draw.Rect, m cut.Machine) length.Length {
	if m == cut.Crosscut {
		return r.Max.X
	}
	return r.Max.Y
}

func other(m cut.Machine) cut.Machine {
	if m == cut.Crosscut {
		return cut.Rip
	}
	return cut.Crosscut
}

func blocksOf(u cut.Used) (out []block) {
	for _, p := range u.Parts {
		out = append(out, block{placed(p), p.Tag})
	}
	for _, o := range u.Left {
		out = append(out, block{rect(o.At[0], o.At[1], o.Size[0], o.Size[1]), ""})
	}
	return out
}

// sawn finds the cuts that part the blocks of a piece: right across it wherever a saw cut fits between them,
// by the given machine, then each of what comes off by the other. What lies before a block is cut off first.
func sawn(piece draw.Rect, blocks []block, m cut.Machine, kerf length.Length) (out []sawing) {
	if len(blocks) == 0 || len(blocks) == 1 && blocks[0].Rect == piece {
		return nil
	}
	groups := parted(blocks, m, kerf)
	start, end := low(piece, m), high(piece, m)
	if from, to := reach(groups[0], m); len(groups) == 1 && from == start && to == end {
		if len(blocks) == 1 || len(parted(blocks, other(m), kerf)) > 1 {
			return sawn(piece, blocks, other(m), kerf)
		}
		return nil
	}
	x := start
	for _, g := range groups {
		from, to := reach(g, m)
		if lost := from - x - kerf; lost > 0 {
			out = append(out, across(piece, m, from-kerf.Half(), lost, nil))
		}
		if to < end {
			out = append(out, across(piece, m, to+min(kerf, end-to).Half(), to-from, tagsIn(g)))
		}
		out = append(out, sawn(between(piece, m, from, to), g, other(m), kerf)...)
		x = to + kerf
	}
	return out
}

// across is one cut through the whole of a piece.
func across(piece draw.Rect, m cut.Machine, x, setting length.Length, makes []string) sawing {
	s := sawing{m, setting, makes, at(x, piece.Min.Y), at(x, piece.Max.Y)}
	if m == cut.Rip {
		s.a, s.b = at(piece.Min.X, x), at(piece.Max.X, x)
	}
	return s
}

// parted divides blocks wherever a saw cut fits between them.
func parted(blocks []block, m cut.Machine, kerf length.Length) (groups [][]block) {
	sorted := slices.Clone(blocks)
	slices.SortStableFunc(sorted, func(a, b block) int { return cmp.Compare(low(a.Rect, m), low(b.Rect, m)) })
	var end length.Length
	for i, b := range sorted {
		if i == 0 || low(b.Rect, m) >= end+kerf {
			groups = append(groups, nil)
			end = high(b.Rect, m)
		}
		groups[len(groups)-1] = append(groups[len(groups)-1], b)
		end = max(end, high(b.Rect, m))
	}
	return groups
}

func reach(blocks []block, m cut.Machine) (from, to length.Length) {
	from, to = low(blocks[0].Rect, m), high(blocks[0].Rect, m)
	for _, b := range blocks {
		from, to = min(from, low(b.Rect, m)), max(to, high(b.Rect, m))
	}
	return from, to
}

func between(r draw.Rect, m cut.Machine, from, to length.Length) draw.Rect {
	if m == cut.Crosscut {
		r.Min.X, r.Max.X = from, to
	} else {
		r.Min.Y, r.Max.Y = from, to
	}
	return r
}

func tagsIn(blocks []block) (tags []string) {
	for _, b := range blocks {
		if b.tag != "" {
			tags = append(tags, b.tag)
		}
	}
	return tags
}

// steps finds the step of the answer's order of cuts that each sawing belongs to: same stock, machine and
// setting, and it makes those parts. Zero where the order names none. found counts them.
func steps(order []cut.Setting, stock string, sawings []sawing) (n []int, found int) {
	left := make([][]string, len(order))
	for i, o := range order {
		left[i] = slices.Clone(o.Makes)
	}
	n = make([]int, len(sawings))
	for i, s := range sawings {
		for k, o := range order {
			if o.On != stock || o.Machine != s.machine || o.Setting != s.setting || !takes(&left[k], s.makes, len(o.Makes)) {
				continue
			}
			n[i] = o.N
			found++
			break
		}
	}
	return n, found
}

// takes takes tags out of those a step makes; a cut that makes nothing is of a step that makes nothing, or of
// one at the same setting.
func takes(left *[]string, tags []string, all int) bool {
	if len(tags) == 0 {
		return all == 0
	}
	rest := slices.Clone(*left)
	for _, t := range tags {
		i := slices.Index(rest, t)
		if i < 0 {
			return false
		}
		rest = slices.Delete(rest, i, i+1)
	}
	*left = rest
	return true
}

// saw draws the cuts of one piece of stock with the numbers of their steps in rings: at the edge of the stock
// where the cut begins there, else on the cut.
func (f *figure) saw(sawings []sawing, numbers [][]int, whole draw.Rect) {
	for i, s := range sawings {
		a, b := s.a, s.b
		over := f.full(1)
		if s.machine == cut.Crosscut {
			if a.Y <= whole.Min.Y {
				a.Y -= over
			}
			if b.Y >= whole.Max.Y {
				b.Y += over
			}
		} else {
			if a.X <= whole.Min.X {
				a.X -= over
			}
			if b.X >= whole.Max.X {
				b.X += over
			}
		}
		f.line(draw.Saw, a, b)
		f.ring(sawings[i], numbers[i], whole)
	}
}

// ring writes the numbers of a cut's steps at the first free place: off the edge of the stock where the cut
// begins there, with a line to it where it must stand aside, else on the cut.
func (f *figure) ring(s sawing, numbers []int, whole draw.Rect) {
	says := ""
	for i, n := range numbers {
		if i > 0 {
			says += ", "
		}
		says += fmt.Sprint(n)
	}
	if says == "" {
		return
	}
	t := draw.Text{Words: says, Height: small, Anchor: draw.Middle}
	b := t.Box(f.per)
	r := max(f.full(ring), (b.Max.X-b.Min.X).Half()+f.full(0.4))
	end, places := f.ringPlaces(s, r, whole)
	h := f.full(ring)
	for i, p := range places {
		box := draw.Rect{Min: at(p.X-r, p.Y-h), Max: at(p.X+r, p.Y+h)}
		if !f.room.Free(box) {
			continue
		}
		f.room.Keep(box)
		if i < len(places)-onCut {
			f.line(draw.Measure, end, p)
		}
		t.At = at(p.X, p.Y-f.full(t.Height*0.35))
		f.add(draw.Area{Pen: draw.Measure, Fill: draw.Paper, Outer: draw.Rounded(box.Min, box.Max, h)}, t)
		return
	}
}

// onCut is how many places on a cut itself are tried.
const onCut = 13

// ringPlaces lists where a ring may stand, the last onCut on the cut, and the cut's end on the stock's edge.
func (f *figure) ringPlaces(s sawing, r length.Length, whole draw.Rect) (end draw.Point, places []draw.Point) {
	high := f.full(ring)
	for _, k := range []length.Length{0, 1, -1, 2, -2} {
		switch {
		case s.machine == cut.Crosscut && s.b.Y >= whole.Max.Y:
			end = at(s.b.X, whole.Max.Y+f.full(1))
			places = append(places, at(s.b.X+k*(2*r+f.full(1.2)), whole.Max.Y+f.full(1.6)+high+k*k*f.full(0.4)))
		case s.machine == cut.Rip && s.a.X <= whole.Min.X:
			end = at(whole.Min.X-f.full(1), s.a.Y)
			places = append(places, at(whole.Min.X-f.full(1.6)-r-k*k*f.full(0.4), s.a.Y+k*(2*high+f.full(1.2))))
		}
	}
	for k := range int64(onCut) {
		places = append(places, at(s.a.X+(s.b.X-s.a.X).Scale(2*k+1, 40), s.a.Y+(s.b.Y-s.a.Y).Scale(2*k+1, 40)))
	}
	return end, places
}

// stepsOf finds the numbers of the cuts on all pieces of a stack: each piece's own, none twice.
func (b *bench) stepsOf(s stack, of func(cut.Used) []sawing) (sawings []sawing, numbers [][]int) {
	sawings = of(b.l.Answer.Used[s.of[0]])
	numbers = make([][]int, len(sawings))
	for _, i := range s.of {
		u := b.l.Answer.Used[i]
		n, _ := steps(b.l.Answer.Cuts, u.Stock, of(u))
		for k := range min(len(n), len(numbers)) {
			if n[k] > 0 && !slices.Contains(numbers[k], n[k]) {
				numbers[k] = append(numbers[k], n[k])
			}
		}
	}
	for k := range numbers { // a long list of steps would say less than the list of cuts does
		if len(numbers[k]) > 3 {
			numbers[k] = nil
		}
	}
	return sawings, numbers
}
