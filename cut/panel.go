package cut

import "rodwright/length"

// PanelProblem asks for glued-up panels out of boards. A board is crosscut into segments, each segment is
// ripped into strips along its whole length, and strips are glued side by side to a panel. A strip may be
// longer than its panel's blank, and is judged in its whole length. All strips of one segment are for panels
// of one length, grade and thickness, unless what falls off is used as well (Recut).
//
// x runs along the grain and y across it, from a corner of the board or panel. Panel sizes are finished
// sizes; the strips are longer by EndTrim and together wider by PanelEdgeTrim at both sides.
type PanelProblem struct {
	Unit          length.Unit
	Kerf          length.Length // lost by each crosscut and each rip
	Jointing      length.Length // taken off each edge of a strip, also at the sides of the panel
	EndTrim       length.Length // left on each end of a blank
	PanelEdgeTrim length.Length // left on each side of a blank
	BoardEdgeTrim length.Length // comes off each rough edge of a board before anything else
	Salvage       float64       // share of its price that a kept tail is worth, 0 to 1
	MinTail       length.Length // the shortest tail worth keeping
	Strip         Span          // ripped width, before jointing
	Boards        []Board
	Panels        []Panel

	// Recut allows strips out of what falls off: the offcut beside a segment's strips may be crosscut again and
	// ripped once more, and one segment may serve panels of different lengths, grades and thicknesses.
	Recut bool
}

// Span is the least and the greatest width a strip may be ripped to. Most 0 is no upper limit.
type Span struct{ Least, Most length.Length }

// Board is one board, as it lies there.
type Board struct {
	Tag        string
	Length     length.Length
	Width      length.Length
	Thickness  length.Length // 0 when not known
	RoughEdges int           // 0, 1 (the far one, y = Width) or 2
	Price      Price         // of the board; without it the cost is its area, in the problem's unit squared
	Mate       string        // boards of one log carry one word
	Ring       Ring          // the side its growth rings curve to, when the good face lies up
	Defects    []Defect
}

// Ring says to which side the growth rings of a board or strip curve: on its end, the side that the ends of the arcs
// turn to. Up is the side of the heart.
type Ring string

// The ring sides; NoRing is one that nobody has looked at.
const (
	NoRing   Ring = ""
	RingUp   Ring = "up"
	RingDown Ring = "down"
)

// Other returns the opposite side; of NoRing, NoRing.
func (r Ring) Other() Ring {
	switch r {
	case RingUp:
		return RingDown
	case RingDown:
		return RingUp
	}
	return NoRing
}

// DefectKind names what is wrong with a place of a board.
type DefectKind string

// The kinds of defects.
const (
	Knot  DefectKind = "knot"
	Split DefectKind = "split"
	Wane  DefectKind = "wane"
	Sap   DefectKind = "sap"
	Void  DefectKind = "void"
)

// Face says on which face of a board a defect shows.
type Face string

// The faces of a board.
const (
	BothFaces Face = "both"
	GoodFace  Face = "good"
	BackFace  Face = "back"
)

// Rect is a rectangle on a board, panel or sheet.
type Rect struct{ X, Y, Length, Width length.Length }

// Overlaps reports whether r and s have an area in common.
func (r Rect) Overlaps(s Rect) bool {
	return r.X < s.X+s.Length && s.X < r.X+r.Length && r.Y < s.Y+s.Width && s.Y < r.Y+r.Width
}

// Defect is one marked rectangle of a board.
type Defect struct {
	Kind DefectKind
	Face Face
	Rect
}

// Show is the grade of appearance that a panel's face must have.
type Show string

// The grades, the strictest first.
const (
	Clear      Show = "clear"
	SmallKnots Show = "small-knots"
	Character  Show = "character"
)

// SmallKnot is the greatest length and width of a knot that the grade small-knots takes: 3/4 in. Common
// practice, no source.
const SmallKnot = 3 * length.Inch / 4

// Panel is one glued-up panel that is wanted.
type Panel struct {
	Tag       string
	Length    length.Length // finished, along the grain
	Width     length.Length // finished, across
	Thickness length.Length // the least thickness of its boards; 0 takes any
	Count     Count
	Show      Show
	KeepOut   []Rect // where no defect may lie, in finished coordinates
	Mates     bool   // all strips from one board or from boards with one mate word
}

// Takes reports whether a strip for this grade may hold defect d when the good face is shown, or, with
// back, when the back is.
//
// A split and wane are never taken: a strip can't be jointed and loaded there. A clear face and one with
// small knots take nothing open at all; sap and knots on the face that isn't seen are taken. A character
// face takes knots, sap and voids, which are filled.
func (s Show) Takes(d Defect, back bool) bool {
	seen := d.Face != BackFace
	if back {
		seen = d.Face != GoodFace
	}
	switch d.Kind {
	case Split, Wane:
		return false
	case Void:
		return s == Character
	case Knot:
		small := d.Length <= SmallKnot && d.Width <= SmallKnot
		return !seen || s == Character || s == SmallKnots && small
	}
	return !seen || s != Clear
}

// BlankLength returns the length of the strips of panel i.
func (p *PanelProblem) BlankLength(i int) length.Length { return p.Panels[i].Length + 2*p.EndTrim }

// BlankWidth returns the net width that the strips of panel i add up to.
func (p *PanelProblem) BlankWidth(i int) length.Length {
	return p.Panels[i].Width + 2*p.PanelEdgeTrim
}

// Joint returns what one strip loses by jointing both its edges.
func (p *PanelProblem) Joint() length.Length { return 2 * p.Jointing }

// Usable returns the range of y of board k that is left when its rough edges have come off.
func (p *PanelProblem) Usable(k int) (from, to length.Length) {
	b := p.Boards[k]
	to = b.Width
	if b.RoughEdges > 0 {
		to -= p.BoardEdgeTrim
	}
	if b.RoughEdges > 1 {
		from += p.BoardEdgeTrim
	}
	return from, max(from, to)
}

// Cost returns what board k costs.
func (p *PanelProblem) Cost(k int) float64 {
	b := p.Boards[k]
	return b.Price.Or(In(b.Length, p.Unit) * In(b.Width, p.Unit))
}

// TailCredit returns what a tail of board k that is kept takes off its cost: nothing below MinTail or
// without Salvage.
func (p *PanelProblem) TailCredit(k int, tail length.Length) float64 {
	if tail <= 0 || tail < p.MinTail || p.Salvage == 0 {
		return 0
	}
	return p.Salvage * p.Cost(k) * float64(tail) / float64(p.Boards[k].Length)
}

// Check reports the first value of the problem that can't be.
func (p *PanelProblem) Check() error {
	c := checker{unit: p.Unit}
	for _, f := range []struct {
		l    length.Length
		path string
	}{{p.Kerf, "kerf"}, {p.Jointing, "jointing"}, {p.EndTrim, "end_trim"}, {p.PanelEdgeTrim, "panel_edge_trim"},
		{p.BoardEdgeTrim, "board_edge_trim"}, {p.MinTail, "min_tail"}, {p.Strip.Least, "strip.least"}, {p.Strip.Most, "strip.most"}} {
		c.atLeast(0, f.l, "%s", f.path)
	}
	c.share(p.Salvage, "salvage")
	c.strip(p)
	c.some(len(p.Boards), "boards")
	for i := range p.Boards {
		c.board(&p.Boards[i], i)
	}
	for i := range p.Panels {
		c.panel(&p.Panels[i], i)
	}
	return c.err
}

func (c *checker) strip(p *PanelProblem) {
	if p.Strip.Most > 0 && p.Strip.Most < p.Strip.Least {
		c.fail("must be at least strip.least, "+Text(p.Strip.Least, p.Unit), "strip.most")
	}
	if m := p.Strip.Most; m > 0 && m < length.Millimetre {
		c.fail("must be at least 1 mm", "strip.most")
	}
	if m := p.Strip.Most; m > 0 && m <= p.Joint() {
		c.fail("must be more than the two jointed edges take, "+Text(p.Joint(), p.Unit), "strip.most")
	}
}

func (c *checker) board(b *Board, i int) {
	c.tag(b.Tag, "boards", i)
	c.over(b.Length, "boards[%d].length", i)
	c.over(b.Width, "boards[%d].width", i)
	c.atLeast(0, b.Thickness, "boards[%d].thickness", i)
	c.price(b.Price, "boards[%d].price", i)
	if b.RoughEdges < 0 || b.RoughEdges > 2 {
		c.fail("must be 0, 1 or 2", "boards[%d].rough_edges", i)
	}
	c.oneOf(string(b.Ring), []string{"", "up", "down"}, "boards[%d].ring", i)
	for j, d := range b.Defects {
		c.oneOf(string(d.Kind), []string{"knot", "split", "wane", "sap", "void"}, "boards[%d].defects[%d].kind", i, j)
		c.oneOf(string(d.Face), []string{"both", "good", "back"}, "boards[%d].defects[%d].face", i, j)
		c.rect(d.Rect, "boards[%d].defects[%d]", i, j)
	}
}

func (c *checker) panel(q *Panel, i int) {
	c.tag(q.Tag, "panels", i)
	c.over(q.Length, "panels[%d].length", i)
	c.over(q.Width, "panels[%d].width", i)
	c.atLeast(0, q.Thickness, "panels[%d].thickness", i)
	c.pieces(q.Count, "panels[%d].count", i)
	c.oneOf(string(q.Show), []string{"clear", "small-knots", "character"}, "panels[%d].show", i)
	for j, r := range q.KeepOut {
		c.rect(r, "panels[%d].keep_out[%d]", i, j)
	}
}
