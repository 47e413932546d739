package piece

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/pipe"
)

// Vec is a point or extent of the piece: X along it from the left, Y from front to back, Z up from the
// floor.
type Vec struct{ X, Y, Z length.Length }

// Dir is one of the directions a stick can leave a joint in: each component -1, 0 or 1.
type Dir struct{ X, Y, Z int8 }

// Resolved is the exact geometry of a piece: every panel and stick at its place, the joints between them
// named. It is what every other room computes on, and is never changed once made.
type Resolved struct {
	Doc    *Document
	Panels []FlatPanel
	Nodes  []Node
	Sticks []Stick
	Feet   []Foot
	Held   []Held
	Loops  []Loop // the closed loops of the frame, with the union that closes each
	Groups int    // frames that do not touch each other; all flanges on the wall count as one joint
	Air    Air
	Wall   *length.Length // y of the wall's face; nil when nothing is fixed to a wall
	// Standing tells how the frame stands against the drawing; nil where nothing was measured.
	Standing *Standing
	Min      Vec // bounding box of the piece without the things it holds
	Max      Vec
}

// Air is the moisture the wood is built at and will live at.
type Air struct {
	BuildMC, DryMC, WetMC float64         // percent
	Months                []float64       // percent, January first, from DryMC to WetMC; nil where no city is known
	Figures               []figure.Figure // how dry and wet were reckoned
	Assumed               []string
}

// Node is a joint: a fitting, or what a stick ends in.
type Node struct {
	At   Vec // centre of a fitting; the face a flange is screwed to; a cap's closed face; a pipe's bare end
	Kind pipe.Kind
	Size pipe.Size
	// Fitting is the shop's fitting of that kind and size: measured, else by the table.
	Fitting pipe.Fitting
	Dirs    []Dir  // in which sticks leave it, in the order x, y, z, positive first
	Sticks  []int  // the sticks that leave it, in the order of Dirs
	Panel   int    // the panel a flange is screwed to; -1 when to none
	ToWall  bool   // a flange on the wall
	Foot    int    // the foot under a cap, flange or bare end; -1
	Place   string // in words: front left post at side rail
	Pos     Pos
}

// Role says what a stick does in the frame.
type Role string

// The roles of sticks.
const (
	PostRole Role = "post"
	RailRole Role = "rail"
	ArmRole  Role = "arm"
	FreeRole Role = "stick"
)

// Stick is one length of pipe, or later of square wood, between two joints.
type Stick struct {
	Name    string // front left post 1: the first from below
	Group   string // front: the name in the document
	Role    Role
	A, B    int // nodes; A is the lower, left or front end
	Section Section
	Between length.Length // distance between A.At and B.At
	Dir     Dir           // from A to B
	Pos     Pos
}

// PanelSide names a plan edge of a panel: front, back, left or right. An empty side is none.
type PanelSide string

// The sides of a panel as it lies in the piece.
const (
	NoSide    PanelSide = ""
	FrontSide PanelSide = "front"
	BackSide  PanelSide = "back"
	LeftSide  PanelSide = "left"
	RightSide PanelSide = "right"
)

// FlatPanel is a panel at its place.
type FlatPanel struct {
	Spec     *Panel
	Name     string
	Min, Max Vec  // its finished body before notches and holes, as drawn
	GrainX   bool // grain along X, else along Y
	Features []Feature
	Seats    []PanelSeat
	Edges    []Edge
	HeldAt   length.Length // the coordinate across the grain, in the piece, of the line along which it is held
	HeldBy   string        // what holds it there, in words
	Fixed    bool          // something holds it; a loose panel is held nowhere
}

// FeatureKind is the kind of a cut in a panel.
type FeatureKind string

// The kinds of features.
const (
	NotchFeature  FeatureKind = "notch"
	HoleFeature   FeatureKind = "hole"
	SlotFeature   FeatureKind = "slot"
	CutOutFeature FeatureKind = "cut-out"
	ReliefFeature FeatureKind = "relief" // a pocket in the underside over a fitting's band
)

// Feature is one cut in a panel. Its rectangle lies in the piece's plan directions and is measured from
// the panel's left front corner; a notch's rectangle reaches the edge it opens to.
type Feature struct {
	Kind     FeatureKind
	Name     string
	Min, Max [2]length.Length
	Round    bool            // a circle that fills the rectangle
	Radius   length.Length   // of inside corners, or half the width of a slot's ends
	Depth    length.Length   // zero: through; else a pocket, from the underside
	Opens    PanelSide       // the edge a notch opens to
	Node     int             // the fitting it goes round or over; -1 when only pipe or nothing is there
	Stick    int             // the post it goes round; -1
	Section  length.Length   // the largest section in it
	Walls    []figure.Figure // inner, outer, sides: how the gap to each wall was reckoned
	PassSize length.Length
	Passes   string
	Why      string // round back left post; over the band of …; drains
	Pos      Pos
}

// PanelSeat is one place where a panel is borne or held.
type PanelSeat struct {
	Kind  SeatKind
	Node  int              // the flange, for on posts and under posts; -1
	Stick int              // the rail, arm or post; -1
	At    [2]length.Length // plan centre of the bearing, in the piece
	Strap bool             // a strap stands here
	Foot  int              // the foot under the panel; -1
}

// Foot is one point the piece stands on.
type Foot struct {
	Spec   *Feet
	At     Vec // the point above the floor contact: swivel axis, or foot's axis; Z is the height of what it is fixed to
	Node   int // the end it is fixed to; -1
	Panel  int // the panel it is fixed under; -1
	Locked bool
	Name   string
}

// Held is one thing the piece carries.
type Held struct {
	Spec     *Hold
	Name     string
	Panel    int
	Min, Max Vec
	MassKg   float64
}

// Loop is one closed loop of the frame and the union that lets it be closed.
type Loop struct {
	Sticks []int // in the closed frame, round the loop
	Union  int   // the node of the union
}
