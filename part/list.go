// Package part takes off a piece: it turns exact geometry into the list of parts to make and to buy, each
// with its tag, sizes, features, weight and count, and what joins them.
//
// Vocabulary: the finished size is what stays in the piece; the blank is what must be glued up or cut
// before the last trimming; a take-out is what a fitting takes off the distance between two centres; a
// stock nipple is a short pipe bought threaded at both ends, a stick the long pipe others are cut from.
//
// Tags stand under their kind's tag: C1 is a kind of pipe, C1.1 and C1.2 are the two pipes of it. A is a
// panel, C a pipe, F a fitting, H hardware. They follow the order of the document and are the same every
// time the same document is taken off.
//
// Start with [TakeOff]. The package judges nothing: a pipe that can't be made is on the list as it comes
// out, and package check speaks of it.
package part

import (
	"rodwright/figure"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// List is everything a piece is made of.
type List struct {
	Parts     []Part
	PanelTags []string   // the physical tag of each resolved panel
	StickTags []string   // of each stick
	NodeTags  []string   // of the fitting at each node; empty at a bare pipe end
	FootTags  []string   // of the caster or levelling foot; where the post's own cap or flange is the foot, of that; empty at a bare end
	SeatTags  [][]string // by panel and seat: of the strap that stands there; empty where none does
	Fasteners []Fastener // every set of screws: flanges by node, then straps by panel and seat, then feet
	Totals    Totals
	Supplies  []Supply
}

// Kind says which of the four families a part belongs to.
type Kind string

// The kinds of parts; their tags begin with A, C, F and H.
const (
	Panel    Kind = "panel"
	Pipe     Kind = "pipe"
	Fitting  Kind = "fitting"
	Hardware Kind = "hardware"
)

// What a pipe is made from. One that neither is a stock nipple nor is long enough to be threaded in the
// machine is made from nothing: its distance must change.
const (
	FromStick   = "stick"
	FromNipple  = "nipple"
	FromNothing = ""
)

// Part is one kind of thing the piece needs, Count times. Fields that do not belong to its kind are zero.
type Part struct {
	Tag      string // A1, C2, F1, H3
	Name     string // deep board, side rail, tee, wood screw 10 × 1 in
	Kind     Kind
	Material string // species or sheet of a panel, size of a pipe, fitting or strap
	Count    int
	Tags     []string        // the tag of each: C1.1, C1.2 …
	Indexes  []int           // of each in the resolved panels, sticks, nodes or feet, as Tags; nil for screws and straps
	Works    [][]string      // of each that is made, as Tags, the kinds of work that were told
	States   []journal.State // of each, as Tags, how far it is made; nil: all are planned
	MassKg   float64         // of one
	At       piece.Vec
	Assumed  []string // in words: what went in from memory or from a default, each once

	// Of a panel. Sizes are along the grain, across it, and the thickness.
	Finished, Blank [3]length.Length
	Rough           string // the stock in quarters, 5/4; empty for sheet goods and where no stock is thick enough
	Sheet           bool   // cut from sheet goods
	Sits            string // on posts, around posts
	Datum           string // the corner, as the panel lies in the piece, that features are measured from
	Features        []Feature
	Profiles        []Profile
	FaceM2          float64 // area of one face, openings taken off
	EdgeM2          float64 // area of the edges all round, those of openings included
	BoardFeet       Tally   // of the blank
	GlueLines       int     // joints between the strips of the blank

	// Of a pipe.
	Cut               length.Length // the length to cut, or of the stock nipple; zero or less where the fittings meet
	Exact             length.Length // Between less both take-outs; differs from Cut for a stock nipple only
	Between           length.Length // from centre or face to centre or face
	Least             length.Length // the least Between that a pipe can bridge: a close nipple and both take-outs
	Loosest, Tightest length.Length // Between as built, every joint one pitch looser or tighter
	TakeOuts          [2]length.Length
	Ends              [2]pipe.Kind
	From              string        // stick, nipple or empty
	FromWhy           string        // why it is bought or cut where it could be either, in words; empty before that is settled
	Sawn              *Sawn         // of a stock nipple that could as well be cut from a stick, as it is then; nil once that is settled
	Moves             length.Length // Cut − Exact: how much farther apart a stock nipple sets its ends
	CutFigure         figure.Figure

	// Of a fitting or of hardware.
	Fitting pipe.Kind     // of a fitting
	Gauge   int           // of a wood screw
	Long    length.Length // of a wood screw
}

// Feature is one cut in a panel, in the panel's own coordinates: along the grain and across it from its
// datum corner, seen from above.
type Feature struct {
	Kind   piece.FeatureKind
	Name   string
	At     [2]length.Length // the corner of its rectangle nearest to the datum
	Size   [2]length.Length
	Round  bool          // a circle that fills the rectangle
	Radius length.Length // of inside corners, or of a slot's ends
	Depth  length.Length // zero: through; else from the underside
	Opens  Side          // the edge a notch opens to
	Why    string
	Index  int // in the resolved panel's features
}

// Centre returns the middle of the feature's rectangle, to the nanometre.
func (f Feature) Centre() [2]length.Length {
	return [2]length.Length{f.At[0] + f.Size[0].Half(), f.At[1] + f.Size[1].Half()}
}

// Side names an edge of a panel in its own coordinates.
type Side string

// The sides of a panel: across the grain at its start and end, along the grain near the datum and far
// from it.
const (
	NoSide   Side = ""
	StartEnd Side = "start end"
	FarEnd   Side = "far end"
	NearEdge Side = "near edge"
	FarEdge  Side = "far edge"
)

// Profile is a shape run along one edge of a panel.
type Profile struct {
	Side    Side
	Profile string // chamfer, round-over, bevel
	Size    length.Length
	Run     length.Length // the length of that edge, notches not taken off
}

// Fastener is one set of equal screws that holds one thing to a panel or to the wall.
type Fastener struct {
	Screws  string // tag of the hardware, H1
	Holds   string // physical tag of the flange, strap or caster it goes through
	Panel   int    // resolved panel it goes into; -1 for the wall
	Node    int    // the flange; -1
	Seat    int    // of Panel, the strap; -1
	Foot    int    // the caster or foot; -1
	Count   int
	Gauge   int
	Length  length.Length
	Grip    length.Length // thickness of the steel under the head
	Hole    length.Length // in the steel; zero where it is as sold and not known
	Slotted bool
	Fits    bool // a screw sold is short enough for the panel
	Assumed []string
}

// Tally is board feet counted the three ways that yards count them.
type Tally struct{ Retail, NHLA, Volume float64 }

// Plus returns the sum of two tallies.
func (t Tally) Plus(u Tally) Tally {
	return Tally{Retail: t.Retail + u.Retail, NHLA: t.NHLA + u.NHLA, Volume: t.Volume + u.Volume}
}

// Totals are the sums over the whole piece.
type Totals struct {
	MassKg    float64 // the piece itself
	WoodKg    float64 // its panels
	SteelKg   float64 // its pipes, fittings and hardware
	HeldKg    float64 // what it carries
	BoardFeet Tally   // of the blanks, each counted as one board of its rough thickness
	Pipe      length.Length
	Fittings  int // unions included
	Unions    int
	Screws    int
	FaceM2    float64 // both faces and the edges of all panels: what is finished
	Assumed   []string
}

// Supply is something used up: glue, finish.
type Supply struct {
	Name     string // wood glue, hard-wax oil
	Class    string // id of its class in the trade's tables
	For      []string
	Quantity figure.Figure
	Cautions []string
	Assumed  []string
}
