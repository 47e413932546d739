package view

import (
	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/solid"
)

func vec(v piece.Vec) solid.Vec { return solid.Vec(v) }

// Of draws a piece from one side, at the least scale at which it keeps within the style's room, dimensions and
// tags included. Promises:
//
//  1. No words stand on others, and every chain of dimensions adds up to its whole.
//  2. A line is drawn once: as seen exactly where nothing stands before it, as hidden only where a panel does.
//     What lies behind pipe alone, or inside a fitting, is not drawn.
//  3. The same piece gives the same drawing.
func Of(r *piece.Resolved, list *part.List, side Side, st draw.Style) *draw.Drawing {
	s := sceneOf(r, list, side)
	s.stations = mostStations[len(mostStations)-1]
	d := &draw.Drawing{ID: string(side), Title: side.Title(), Alt: s.words(list, st.Fineness), Per: 1}
	per := draw.ScaleFor(nm(s.whole.hi.u-s.whole.lo.u), nm(s.whole.hi.v-s.whole.lo.v), st)
	for _, stations := range mostStations {
		per, marks := lettering.Fit(st, per, func(per int64) []draw.Mark {
			_, marks := s.measured(nil, st, per, stations)
			return marks
		})
		d.Per, d.Marks = per, marks
		if lettering.Fits(st, per, marks) {
			s.stations = stations
			break
		}
	}
	d.Per, d.Marks = s.tagged(st, d.Per)
	return d
}

// tagged draws the scene at a scale, or at the next one that gives every ring that is needed room near its part;
// failing that, at the first that gives them room anywhere.
func (s scene) tagged(st draw.Style, per int64) (int64, []draw.Mark) {
	first, marks, lost := per, []draw.Mark(nil), false
	for k := 0; k < 2 || lost && k < 3; k++ {
		try, far, without := s.marks(st, per)
		fits := lettering.Fits(st, per, try)
		switch {
		case fits && far+without == 0:
			return per, try
		case k == 0, lost && fits && without == 0:
			first, marks, lost = per, try, without > 0
		}
		per = draw.ScaleFor(lettering.Full(st.Width, per)+1, lettering.Full(st.Height, per)+1, st)
	}
	return first, marks
}

// marks draws the scene at a scale: steel, lines, what stands around, dimensions, names and tags. It counts the
// rings that have no room nearby, and those that have none at all.
func (s scene) marks(st draw.Style, per int64) (marks []draw.Mark, far, without int) {
	drawn, marks := s.measured(s.grain(per), st, per, s.stations)
	d := &draw.Drawing{Per: per, Marks: marks}
	c := crowdOf(d, roomOf(drawn, d.Bounds(), st, per))
	d.Marks = append(d.Marks, s.names(c)...)
	tags, far, without := s.tags(c)
	return append(d.Marks, tags...), far, without
}

// measured draws the scene with its dimensions, and returns the extent of what these are laid around.
func (s scene) measured(grain []stretch, st draw.Style, per int64, stations int) (draw.Rect, []draw.Mark) {
	lines := newSheet()
	for _, all := range [][]stretch{s.edges, s.axes, s.crosses(per), grain} {
		for _, t := range all {
			lines.add(t)
		}
	}
	d := &draw.Drawing{Per: per, Marks: append(s.steel[:len(s.steel):len(s.steel)], lines.marks()...)}
	d.Marks = append(d.Marks, s.surroundings(per)...)
	drawn := d.Bounds()

	below, right := s.chains(per, stations)
	d.Marks = append(d.Marks, draw.Dimensions(drawn, per, st, draw.Below, 1, below...)...)
	d.Marks = append(d.Marks, draw.Dimensions(d.Bounds(), per, st, draw.RightOf, 1+len(below), right...)...)
	return drawn, d.Marks
}
