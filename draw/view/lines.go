package view

import (
	"rodwright/draw"
	"rodwright/length"
)

// cell is the side of the squares that lines are sorted into, on paper in millimetres.
const cell = 8.0

// lines are sorted by the squares that they may run through, so that those near a place are quick to find.
type lines struct {
	size length.Length
	in   map[[2]int64][]draw.Line
}

func linesOf(size length.Length) lines { return lines{max(size, 1), map[[2]int64][]draw.Line{}} }

func (s lines) add(l draw.Line) {
	s.cells(boxOf(l), func(c [2]int64) bool {
		s.in[c] = append(s.in[c], l)
		return true
	})
}

// near calls f with the lines whose boxes meet a box, some more than once, as long as it returns true.
func (s lines) near(b draw.Rect, f func(draw.Line) bool) {
	s.cells(b, func(c [2]int64) bool {
		for _, l := range s.in[c] {
			if meet(b, boxOf(l)) && !f(l) {
				return false
			}
		}
		return true
	})
}

// cells calls f with the squares of a box, row by row, as long as it returns true.
func (s lines) cells(b draw.Rect, f func([2]int64) bool) {
	for y := floored(b.Min.Y, s.size); y <= floored(b.Max.Y, s.size); y++ {
		for x := floored(b.Min.X, s.size); x <= floored(b.Max.X, s.size); x++ {
			if !f([2]int64{x, y}) {
				return
			}
		}
	}
}

// floored returns how many times a size goes into a length, rounded down.
func floored(l, size length.Length) int64 {
	q := l / size
	if l%size < 0 {
		q--
	}
	return int64(q)
}
