// Package draw holds a drawing as a value: lines by what they mean, outlines hatched by their material, text,
// dimensions and tags, all full size and exact. Packages svg, dxf and the book's renderers put it on a sheet.
//
// The words: a pen is what a line means, never how thick it is; a mark is one thing drawn; paper millimetres
// are what a reader's ruler shows on the sheet, everything else is the piece's own size. X runs to the right,
// Y up. Start with package view for the three views of a piece, marking for one part, cutting for stock.
package draw

import "rodwright/length"

// Point is a place on a drawing, full size.
type Point struct{ X, Y length.Length }

// Pen says what a line means. Renderers choose its weight and dashes.
type Pen uint8

// The pens, heavy before light.
const (
	Outline  Pen = iota // an edge that is seen
	Hidden              // an edge behind something
	Centre              // the axis of what is round
	Saw                 // where a saw goes
	Measure             // dimension lines, extension lines, leaders
	Grain               // along the grain of wood
	Hatching            // what fills a cut or an end
	Ghost               // what is not part of what is drawn: what the piece holds, the wall, the floor
)

// Pens lists every pen.
func Pens() []Pen {
	return []Pen{Outline, Hidden, Centre, Saw, Measure, Grain, Hatching, Ghost}
}

// String returns the pen in a word, which is also its layer in exchange files.
func (p Pen) String() string {
	return [...]string{"outline", "hidden", "centre", "saw", "measure", "grain", "hatching", "ghost"}[p]
}

// Fill says what an outline is filled with. It tells materials apart without colour.
type Fill uint8

// The fills.
const (
	Empty    Fill = iota // nothing: what is behind shows
	Paper                // the sheet itself: what is behind is covered
	LongWood             // wood seen along its grain: lines along it
	EndWood              // end grain: growth-ring arcs
	Steel                // solid
	Plywood              // plies: lines along the thickness
	Waste                // what is cut away: slanting lines
)

// Vertex is a corner of a path. Bulge is the tangent of a quarter of the angle that the edge to the next
// corner turns through, positive to the left; zero is a straight edge.
type Vertex struct {
	Point
	Bulge float64
}

// Path is a closed line.
type Path []Vertex

// Drawing is one figure.
type Drawing struct {
	ID    string // unique in a book, of a–z, 0–9 and -: front, part-a1
	Title string
	Alt   string // what it shows, in words, for who can't see it
	Per   int64  // 1 : Per is the scale on paper; at least 1
	Marks []Mark // in the order of painting
}

// Mark is one thing drawn: a Line, Arc, Area, Text, Dimension or Tag. The set is closed.
type Mark interface{ mark() }

// Line is a straight line.
type Line struct {
	Pen  Pen
	A, B Point
}

// Arc is a part of a circle, anticlockwise. From and Sweep are degrees; a sweep of 360 is a circle.
type Arc struct {
	Pen         Pen
	Centre      Point
	Radius      length.Length
	From, Sweep float64
}

// Area is a closed outline with holes, and what fills it.
type Area struct {
	Pen   Pen
	Outer Path
	Holes []Path
	Fill  Fill
	Along Axis // the direction of the grain or plies
}

// Axis is a direction of the sheet.
type Axis uint8

// The axes.
const (
	AlongX Axis = iota
	AlongY
)

// Anchor says which point of a text stands at its place.
type Anchor uint8

// The anchors; all on the line the letters stand on.
const (
	Start Anchor = iota
	Middle
	End
)

// Text is one line of words. Fractions such as 3/8 in it are drawn as true fractions.
type Text struct {
	At     Point
	Words  string
	Height float64 // of a line, the type's size, in paper millimetres
	Anchor Anchor
	Turned bool // read from the right: turned a quarter to the left
	Strong bool
}

// Dimension is one link of a chain: the distance between two places along an axis. Chain is the number of its
// chain in the drawing; the links of a chain follow each other and their words add up. Whole marks a link over
// the whole of a chain.
type Dimension struct {
	Chain    int
	Whole    bool
	Along    Axis
	From, To Point         // what is measured, where the extension lines begin
	Line     length.Length // the other coordinate of the dimension line
	Value    length.Length // as it is written: rounded so that the chain adds up
	Words    string
	Text     Text  // the words at their place
	Leader   *Line // from the dimension line to words that did not fit on it; nil
}

// Tag is the name of a part in a ring, with a line to the part.
type Tag struct {
	Words string
	At    Point // the middle of the ring
	Part  Point // a place on the part
}

func (Line) mark()      {}
func (Arc) mark()       {}
func (Area) mark()      {}
func (Text) mark()      {}
func (Dimension) mark() {}
func (Tag) mark()       {}

// Style is how a reader wants drawings: the tape's marks, and the room on the sheet.
type Style struct {
	Fineness      length.Fineness
	Width, Height float64 // greatest extent on paper, in millimetres, dimensions included
}

// Station is a place that a chain of dimensions stops at: its coordinate along the chain, and the other
// coordinate of the thing measured, where the extension line begins.
type Station struct{ At, Off length.Length }

// Edge is the side of a drawing on which a chain stands.
type Edge uint8

// The edges.
const (
	Below Edge = iota
	Above
	LeftOf
	RightOf
)

// Rect is an upright rectangle, full size.
type Rect struct{ Min, Max Point }
