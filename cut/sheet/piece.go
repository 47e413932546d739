package sheet

import (
	"rodwright/cut"
	"rodwright/length"
)

// direction is the direction of the cuts that made a piece.
type direction uint8

// A cut across x parts a piece's length, one across y its width.
const (
	uncut direction = iota
	acrossX
	acrossY
)

// piece is a free rectangle of a sheet.
type piece struct {
	cut.Rect
	stage int       // of the cut that made it
	dir   direction // of that cut
}

// placed is one part on a sheet.
type placed struct {
	kind   int
	turned bool
	cut.Rect
}

// filled is one sheet with its parts and the rectangles left.
type filled struct {
	store int
	parts []placed
	free  []piece
	value float64
}

// spot is a place for a part in a free piece, and how it is cut there.
type spot struct {
	piece  int
	at     cut.Rect
	first  direction // the direction that is cut first
	turned bool
	waste  float64 // lower is better
}

// next returns the stage of a cut in direction d of a piece.
func (p piece) next(d direction) int {
	if p.dir == d {
		return p.stage
	}
	return p.stage + 1
}

// needs reports whether freeing r takes cuts in direction d.
func (p piece) needs(r cut.Rect, d direction) bool {
	if d == acrossX {
		return r.Length < p.Length
	}
	return r.Width < p.Width
}

// possible reports whether r can be freed from p with cuts in direction first and then the other, within
// the stages: the second may be a trim beyond them, and so may the first where it is the only one.
func (p piece) possible(r cut.Rect, first direction, stages int) bool {
	second := other(first)
	if !p.needs(r, first) || stages == 0 {
		return true
	}
	return p.next(first) <= stages || !p.needs(r, second)
}

func other(d direction) direction {
	if d == acrossX {
		return acrossY
	}
	return acrossX
}

// divide cuts r out of p and returns the pieces left. Those made beyond the last stage are lost: spare
// holds them.
func (p piece) divide(r cut.Rect, first direction, stages int, kerf length.Length) (free, spare []piece) {
	for _, d := range []direction{first, other(first)} {
		if !p.needs(r, d) {
			continue
		}
		stage := p.next(d)
		before, middle, after := p.split(r, d, kerf)
		for _, q := range []cut.Rect{before, after} {
			if q.Length <= 0 || q.Width <= 0 {
				continue
			}
			if stages > 0 && stage > stages {
				spare = append(spare, piece{q, stage, d})
			} else {
				free = append(free, piece{q, stage, d})
			}
		}
		p = piece{middle, stage, d}
	}
	return free, spare
}

// split parts p before and behind r in direction d.
func (p piece) split(r cut.Rect, d direction, kerf length.Length) (before, middle, after cut.Rect) {
	before, middle, after = p.Rect, p.Rect, p.Rect
	if d == acrossX {
		before.Length = r.X - kerf - p.X
		middle.X, middle.Length = r.X, r.Length
		after.X = r.X + r.Length + kerf
		after.Length = p.X + p.Length - after.X
		return before, middle, after
	}
	before.Width = r.Y - kerf - p.Y
	middle.Y, middle.Width = r.Y, r.Width
	after.Y = r.Y + r.Width + kerf
	after.Width = p.Y + p.Width - after.Y
	return before, middle, after
}

// near cuts a piece in two, size being that of the near one in direction d.
func (p piece) near(d direction, size, kerf length.Length) (near, far piece) {
	near, far = p, p
	if d == acrossX {
		near.Length = size
		far.X, far.Length = p.X+size+kerf, p.Length-size-kerf
	} else {
		near.Width = size
		far.Y, far.Width = p.Y+size+kerf, p.Width-size-kerf
	}
	if near.Rect != p.Rect {
		stage := p.next(d)
		near.stage, near.dir, far.stage, far.dir = stage, d, stage, d
	}
	return near, far
}
