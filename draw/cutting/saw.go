package cutting

import (
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/cut/sawing"
	"rodwright/draw"
	"rodwright/length"
)

// line is one saw cut on a piece of stock: where it runs, and the machine it is made at.
type line struct {
	machine cut.Machine
	a, b    draw.Point
}

// linesOf returns the cuts of piece i of the stock used, and the number of each in the list of cuts.
func linesOf(l *sawing.List, i int) (lines []line, numbers []int) {
	all := l.Numbers()
	for k, c := range l.Cuts {
		if c.Piece == i {
			lines = append(lines, line{c.Machine, at(c.A[0], c.A[1]), at(c.B[0], c.B[1])})
			numbers = append(numbers, all[k])
		}
	}
	return lines, numbers
}

// saw draws the cuts of one piece of stock with the numbers of their steps in rings: at the edge of the stock
// where the cut begins there, else on the cut.
func (f *figure) saw(lines []line, numbers [][]int, whole draw.Rect) {
	for i, s := range lines {
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
		f.ring(lines[i], numbers[i], whole)
	}
}

// ring writes the numbers of a cut's steps at the first free place: off the edge of the stock where the cut
// begins there, with a line to it where it must stand aside, else on the cut.
func (f *figure) ring(s line, numbers []int, whole draw.Rect) {
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
	r := max(f.full(ring), (b.Max.X-b.Min.X).Half()+f.full(1)) // off the round ends
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
func (f *figure) ringPlaces(s line, r length.Length, whole draw.Rect) (end draw.Point, places []draw.Point) {
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

// stepsOf finds the cuts of a stack, and of each the numbers of its steps on all pieces of the stack, none
// twice.
func (b *bench) stepsOf(s stack) (lines []line, numbers [][]int) {
	list := b.list()
	lines, _ = linesOf(list, s.of[0])
	numbers = make([][]int, len(lines))
	for _, i := range s.of {
		_, n := linesOf(list, i)
		for k := range min(len(n), len(numbers)) {
			if n[k] > 0 && !slices.Contains(numbers[k], n[k]) {
				numbers[k] = append(numbers[k], n[k])
			}
		}
	}
	for k := range numbers { // a long list of steps would say less than the list of cuts does
		if slices.Sort(numbers[k]); len(numbers[k]) > 3 {
			numbers[k] = nil
		}
	}
	return lines, numbers
}

// list is the layout's list of cuts.
func (b *bench) list() *sawing.List {
	if b.cuts == nil {
		b.cuts = b.l.Cuts()
	}
	return b.cuts
}
