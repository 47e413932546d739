package verify

import (
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// saw follows the list of cuts from step to step with pieces of stock on a bench: each cut must run right across a piece
// that is there, at the setting and with the parts that its step says, and at the end every part and offcut must lie by
// itself. A step may stand for several cuts at one setting on one kind of stock, so it may fit more than one piece; all
// are tried.
//
// The setting of a cut is what comes off in front of the saw cut; of a piece that is cut off for nothing, with or without
// it. Of an edge of no more than a saw cut it is all that goes: the blade skims it off, and what is cut next is measured
// from there. An offcut is kept in the piece that it lies in, and need not be cut out of that.
type saw struct {
	kerf   length.Length
	steps  []cut.Setting
	pieces map[string][]piece // by tag of the stock
	dead   map[string]bool    // states that lead nowhere
	work   int                // that is left; a list that is too tangled is not refused
}

// sawWork is more than lists need that can be followed, some tenths of a second at most.
const sawWork = 1 << 21

func newSaw(kerf length.Length, steps []cut.Setting) *saw {
	return &saw{kerf: kerf, steps: steps, pieces: map[string][]piece{}, dead: map[string]bool{}, work: sawWork}
}

// piece is a rectangle of a kind of stock, with what lies in it.
type piece struct {
	cut.Rect
	stock string
	boxes []box
}

// span is the range of a rectangle in the direction in which a machine takes pieces off.
func span(r cut.Rect, m cut.Machine) (from, to length.Length) {
	if m == cut.Crosscut {
		return r.X, r.X + r.Length
	}
	return r.Y, r.Y + r.Width
}

// part returns the rectangle between two places of that direction.
func (p piece) part(m cut.Machine, from, to length.Length) cut.Rect {
	if m == cut.Crosscut {
		return cut.Rect{X: from, Y: p.Y, Length: to - from, Width: p.Width}
	}
	return cut.Rect{X: p.X, Y: from, Length: p.Length, Width: to - from}
}

// cut cuts the piece at a setting: what comes off, what stays. It reports whether such a cut makes sense.
func (p piece) cut(m cut.Machine, setting, kerf length.Length) (off, stays piece, ok bool) {
	if len(p.boxes) == 0 {
		return off, stays, false
	}
	low, high := span(p.Rect, m)
	first := high
	for _, b := range p.boxes {
		from, _ := span(b.Rect, m)
		first = min(first, from)
	}
	wide := first - low
	if wide > 0 && (setting == wide || wide > kerf && setting == wide-kerf) {
		return off, piece{p.part(m, first, high), p.stock, p.boxes}, true
	}
	off.stock, stays.stock = p.stock, p.stock
	line := first + setting
	if wide > 0 || line >= high {
		return off, stays, false
	}
	var reach length.Length
	for _, b := range p.boxes {
		switch from, to := span(b.Rect, m); {
		case to <= line:
			off.boxes = append(off.boxes, b)
			reach = max(reach, to)
		case from >= line+kerf:
			stays.boxes = append(stays.boxes, b)
		default:
			return off, stays, false
		}
	}
	off.Rect, stays.Rect = p.part(m, first, line), p.part(m, min(line+kerf, high), high)
	return off, stays, reach == line
}

// whole reports whether the piece is one part, or holds offcuts alone, and needs no further cut.
func (p piece) whole() bool { return p.just() || tagged(p.boxes) == 0 }

// just reports whether the piece is one part or offcut and nothing else, so that it can't be cut further.
func (p piece) just() bool { return len(p.boxes) == 1 && p.boxes[0].Rect == p.Rect }

// begin lays a piece of stock on the bench.
func (s *saw) begin(u cut.Used, l, w length.Length) {
	var boxes []box
	for _, q := range u.Parts {
		boxes = append(boxes, boxOf(q.At, q.Size, q.Tag, true))
	}
	for _, o := range u.Left {
		boxes = append(boxes, boxOf(o.At, o.Size, "an offcut", false))
	}
	if len(boxes) > 0 {
		s.pieces[u.Stock] = append(s.pieces[u.Stock], piece{cut.Rect{Length: l, Width: w}, u.Stock, boxes})
	}
}

// can reports whether all steps can be made; also where the work is spent before that is known.
func (s *saw) can() bool {
	for _, on := range s.pieces {
		if slices.ContainsFunc(on, func(p piece) bool { return !s.hopeful(p, 0) }) {
			return false
		}
	}
	return s.follow(0, s.steps[0].Makes, 0)
}

// follow reports whether the steps from one on can be made; makes is what that step has still to make, made how many
// cuts it has made.
func (s *saw) follow(step int, makes []string, made int) bool {
	if step == len(s.steps) {
		return s.apart()
	}
	here := s.state(step, makes, made)
	if s.dead[here] {
		return false
	}
	c := s.steps[step]
	on := s.pieces[c.On]
	for i, p := range on {
		if s.work -= 1 + len(p.boxes); s.work < 0 {
			return true
		}
		off, stays, ok := p.cut(c.Machine, c.Setting, s.kerf)
		n := tagged(off.boxes)
		if !ok || !sameTags(off.boxes, makes[:min(n, len(makes))], n) || i > 0 && p.like(on[i-1]) || !s.hopeful(off, step) || !s.hopeful(stays, step) {
			continue
		}
		s.pieces[c.On] = replaced(on, i, off, stays)
		if s.follow(step, makes[n:], made+1) {
			return true
		}
		s.pieces[c.On] = on
	}
	if len(makes) == 0 && made > 0 && s.goOn(step) {
		return true
	}
	s.dead[here] = true
	return false
}

// goOn takes up the next step.
func (s *saw) goOn(step int) bool {
	for _, p := range s.pieces[s.steps[step].On] {
		if !s.hopeful(p, step+1) {
			return false
		}
	}
	var next []string
	if step+1 < len(s.steps) {
		next = s.steps[step+1].Makes
	}
	return s.follow(step+1, next, 0)
}

// hopeful reports whether a piece is done, or one of the steps from one on can cut it.
func (s *saw) hopeful(p piece, step int) bool {
	if p.whole() {
		return true
	}
	for _, c := range s.steps[step:] {
		if c.On != p.stock {
			continue
		}
		s.work -= 1 + len(p.boxes)
		if _, _, ok := p.cut(c.Machine, c.Setting, s.kerf); ok {
			return true
		}
	}
	return false
}

// state tells what lies on the bench and what is still to be done, in whatever order it came to that.
func (s *saw) state(step int, makes []string, made int) string {
	keys := make([]string, 0, 16)
	for _, on := range s.pieces {
		for _, p := range on {
			if s.work -= 1 + 4*len(p.boxes); !p.just() { // a key costs more than a look
				keys = append(keys, fmt.Sprint(p.stock, p.Length, p.Width, p.boxes[0].X-p.X, p.boxes[0].Y-p.Y, p.names()))
			}
		}
	}
	slices.Sort(keys)
	return fmt.Sprint(step, len(makes), made > 0, keys)
}

// names are the boxes with their places in the piece.
func (p piece) names() (out []string) {
	for _, b := range p.boxes {
		out = append(out, fmt.Sprint(b.name, b.X-p.X, b.Y-p.Y, b.Length, b.Width))
	}
	return out
}

// replaced puts what a cut made of piece i in its place, as far as anything lies in it.
func replaced(on []piece, i int, made ...piece) []piece {
	out := slices.Clone(on[:i])
	for _, p := range made {
		if len(p.boxes) > 0 {
			out = append(out, p)
		}
	}
	return append(out, on[i+1:]...)
}

// like reports whether two pieces are the same but for their place: if one can't be cut, the other can't.
func (p piece) like(q piece) bool {
	return p.Length == q.Length && p.Width == q.Width && slices.EqualFunc(p.boxes, q.boxes, func(a, b box) bool {
		return a.name == b.name && a.part == b.part && a.Length == b.Length && a.Width == b.Width &&
			a.X-p.X == b.X-q.X && a.Y-p.Y == b.Y-q.Y
	})
}

func (s *saw) apart() bool {
	for _, on := range s.pieces {
		if slices.ContainsFunc(on, func(p piece) bool { return !p.whole() }) {
			return false
		}
	}
	return true
}

// tagged counts the parts among boxes.
func tagged(boxes []box) (n int) {
	for _, b := range boxes {
		if b.part {
			n++
		}
	}
	return n
}

// sameTags reports whether the n parts among boxes are those of the tags, in any order.
func sameTags(boxes []box, tags []string, n int) bool {
	if len(tags) != n {
		return false
	}
	count := tally{}
	for _, b := range boxes {
		if b.part {
			count[b.name]++
		}
	}
	for _, tag := range tags {
		if count[tag]--; count[tag] < 0 {
			return false
		}
	}
	return true
}
