package piece

import (
	"rodwright/length"
	"rodwright/piece/markup"
	"rodwright/trade/pipe"
	"rodwright/trade/wood"
)

// Pos is a place in a document, line and column counted from 1 in characters. The zero Pos means that
// the value was not written but follows from a default.
type Pos = markup.Pos

// Document is a piece as its maker wrote it down, read and with every formula worked out. Nothing in it
// is derived: fittings, notches, counts and cut lengths come from [Resolve].
type Document struct {
	File     string // the name errors give
	Name     string
	Unit     length.Unit // In or MM: what a bare number means
	Fineness length.Fineness
	Place    Place
	Wood     Wood
	Pipe     pipe.Size // the size and standard of every stick that names no other
	Sizes    []Size
	Holds    []Hold
	Posts    []Posts
	Rails    []Rails
	Arms     []Arms
	Sticks   []FreeStick
	Panels   []Panel
	Feet     Feet
	Holes    []Holes
	Voids    []Void
	Edges    []Edge
	Joints   Joints
	Loads    []Load
	// Standards are published requirements the piece is to meet besides the shop's own limits: ids of
	// trade/stability.
	Standards []string
	Text      []byte // the source, for editing in place
}

// Shown returns the document as it is shown to who reads another tape: the same piece, its lengths printed to
// the given fineness. The text and what a bare number in it means stay.
func (d *Document) Shown(f length.Fineness) *Document {
	shown := *d
	shown.Fineness = f
	return &shown
}

// Origin says who settled a size.
type Origin string

// The origins of a size.
const (
	Assumed  Origin = "assumed"
	Client   Origin = "client"
	Measured Origin = "measured"
	Rule     Origin = "rule"
	Standard Origin = "standard"
)

// Size is a named dimension: its formula as written, and its value. A value measured on site wins over
// the formula, which stays.
type Size struct {
	Name    string
	Formula string
	Origin  Origin
	Formed  length.Length  // what the formula gives
	OnSite  *length.Length // measured on site; nil when it was not
	Value   length.Length  // OnSite if there is one, else Formed
	Uses    []string       // the names of the sizes its formula uses
	Note    string
	Pos     Pos
}

// Place is where the piece will live: its air over the year and the ways it must pass.
type Place struct {
	Room            string  // living, kitchen, bath, office, greenhouse, workshop, porch, store …
	LowRH           float64 // percent
	HighRH          float64 // percent
	LowC, HighC     float64 // degrees Celsius
	AirAssumed      bool    // the air comes from the room's preset, not from the maker
	HumidityAssumed bool    // no humidity is written: it is that of the room or of the city
	Doors           []Door
	Ceiling         *length.Length
	WallKind        string        // studs, masonry or empty where there is no wall
	StudSpacing     length.Length // zero where unknown
	Slope           float64       // of the floor, degrees
	City            string        // whose air outdoors the months follow, an id of trade/wood; empty where unknown
	Turns           []Turn        // on the way to the place
	Threshold       length.Length // the highest step it is rolled over; zero where none is named
	Pos             Pos
}

// Turn is a corner on the way, from a passage of one width into one of another.
type Turn struct {
	Name     string
	From, To length.Length
	Pos      Pos
}

// Door is an opening on the way to the piece's place.
type Door struct {
	Name          string
	Width, Height length.Length
	Pos           Pos
}

// Wood is what the panels are made of unless a panel says otherwise.
type Wood struct {
	Species  wood.Species
	Cut      wood.Cut
	Moisture float64 // percent on the day the panels are made
	Assumed  []string
	Pos      Pos
}

// Hold is a thing the piece must carry, Count times, spread evenly over its panel unless placed.
type Hold struct {
	Name   string
	On     string           // panel
	Size   [3]length.Length // along the piece, front to back, high
	MassKg float64          // each
	Count  int
	At     *[2]length.Length // centre of the first, from the panel's left front corner; nil when spread
	Pos    Pos
}

// Load is something that may come upon the piece besides what it holds: a weight straight down, or a push
// sideways at the top of its panel. Exactly one of MassKg and PushN is not zero.
type Load struct {
	Name    string
	On      string            // panel
	Edge    PanelSide         // at the middle of this edge; empty where At is set
	At      *[2]length.Length // from the panel's left front corner
	MassKg  float64
	PushN   float64
	Towards PanelSide // of a push
	Pos     Pos
}

// Corner names a plan corner of a panel, or says that the place is given by coordinates.
type Corner uint8

// The plan corners.
const (
	NoCorner Corner = iota
	FrontLeft
	FrontRight
	BackLeft
	BackRight
)

// String returns the corner in words.
func (c Corner) String() string {
	return [...]string{"", "front left", "front right", "back left", "back right"}[c]
}

// Posts is a group of upright sticks.
type Posts struct {
	Name    string
	Panel   string             // the panel at whose corners they stand; empty when At is given
	Corners []Corner           // of Panel, in reading order: front left, front right, back left, back right
	InsetX  length.Length      // from the panel's left or right edge to the axis
	InsetY  length.Length      // from its front or back edge to the axis
	At      [][2]length.Length // x, y of each, when placed by coordinates
	From    PostEnd
	To      PostEnd
	Section Section
	Pos     Pos
}

// EndKind says what a stick's end comes to.
type EndKind uint8

// What a stick may end at.
const (
	AtFeet  EndKind = iota // the group's foot: caster, levelling foot, cap or flange
	AtPanel                // a flange on that panel: under it for an upper end, on it for a lower
	AtLevel                // an open end at a level, closed by Finish
	AtRail                 // the axis of that rail: the end is in its fitting
	AtWall                 // a flange on the wall
)

// PostEnd is one end of a post or arm.
type PostEnd struct {
	Kind   EndKind
	Name   string        // of the panel or rail
	Level  length.Length // for AtLevel, above the floor, to the pipe's end or the cap's closed face
	Finish pipe.Kind     // for AtLevel: pipe.Cap, pipe.Flange or pipe.None
	Pos    Pos
}

// Section is a stick's cross-section. Exactly one of its fields is set.
type Section struct {
	Pipe   *pipe.Size
	Square *length.Length // side of a square wooden stick; none is read yet
}

// Bands says how a panel that lies on a rail meets the fittings' bands, which stand proud of the pipe.
type Bands string

// The ways a panel meets the bands.
const (
	Relieved Bands = "relieved" // lies on the pipe, its underside relieved over the bands
	Ridden   Bands = "ridden"   // lies on the bands
	Short    Bands = "short"    // lies on the pipe and stops short of the fittings
)

// Rails is a group of level sticks between posts or between other rails.
type Rails struct {
	Name string
	From string // a post group, or a rail group when FromRails
	With string // the group its partner ends are in; empty: neighbours within From
	// FromRails and WithRails say that From and With name rail groups: posts and rails may share a name.
	FromRails, WithRails bool
	Level                length.Length // of the axis above the floor, when Under is empty
	Under                string        // the panel that lies on these rails: the level follows from it
	Bands                Bands         // for Under
	Share                [2]int64      // where it meets rails: this share of their length from the front or left, 1/2 by default
	Union                bool          // the maker wants the union here
	Section              Section
	Pos                  Pos
}

// Arms is a group of level sticks that stand out from the wall, towards the front.
type Arms struct {
	Name    string
	Panel   string          // the panel whose ends they keep Inset from
	Inset   length.Length   // from the panel's ends
	Count   int             // spread evenly between the two outer ones
	At      []length.Length // x of each, when placed by coordinates
	Level   length.Length   // of the axis, when Under is empty
	Under   string
	Bands   Bands
	Reach   length.Length // from the wall to the closed face of the cap, or the end
	Finish  pipe.Kind     // pipe.Cap or pipe.None
	Section Section
	Pos     Pos
}

// FreeStick is a stick placed by coordinates, for what posts, rails and arms can't say.
type FreeStick struct {
	Name    string
	A, B    [3]length.Length
	FinishA pipe.Kind // what closes an end that meets nothing: pipe.Cap, pipe.Flange (floor or wall) or pipe.None
	FinishB pipe.Kind
	Section Section
	Pos     Pos
}

// SeatKind is a way a panel sits.
type SeatKind string

// The ways a panel sits.
const (
	OnPosts      SeatKind = "on posts"      // flanges under it, on the posts' upper ends
	UnderPosts   SeatKind = "under posts"   // flanges on it, on the posts' lower ends
	OnRails      SeatKind = "on rails"      // lies on rails or arms, strapped unless it lies loose
	BetweenPosts SeatKind = "between posts" // its edges stop at posts, with a gap
	AroundPosts  SeatKind = "around posts"  // notched or holed round posts
	OnFeet       SeatKind = "on feet"       // on the feet that name the panel; the group is empty
	ByPlace      SeatKind = "by place"      // placed by coordinates, held by nothing the document names
)

// Seat is one way one panel sits, on one group.
type Seat struct {
	Kind  SeatKind
	Group string // posts, rails or arms; for UnderPosts and OnPosts a post group
	Pos   Pos
}

// Panel is a board or sheet, lying flat.
type Panel struct {
	Name      string
	Length    length.Length // its longer naming dimension as drawn, along the piece unless Turned
	Width     length.Length
	Thickness length.Length
	Turned    bool              // length runs front to back
	GrainX    bool              // the grain runs along the piece, after Turned is taken into account
	Level     *length.Length    // of its top above the floor; nil when it follows from rails or feet
	At        *[2]length.Length // its left front corner, when placed
	Seats     []Seat
	Straps    int                      // straps on each rail it lies on; -1 means the default, 0 loose
	Wood      *Wood                    // nil for sheet goods
	Sheet     string                   // sheet id; empty for wood
	Corners   map[Corner]length.Length // radius of outside corners
	Opens     map[string]string        // group it goes round → hole, front, back, left, right; absent: auto
	Gap       *length.Length           // working gap round posts; nil: the default
	Show      string                   // clear, small-knots or character
	Stock     string                   // thickness of the stock in quarters (5/4); empty: the thinnest that serves
	Pos       Pos
}

// Holes is a row, or a single one, of openings in a panel.
type Holes struct {
	Name     string
	In       string // panel
	Kind     HoleKind
	Along    string        // front, back, left or right: the edge the row follows; empty when At is given
	FromEdge length.Length // from that edge to the centres
	Count    int
	At       [][2]length.Length // centres from the panel's left front corner
	Diameter length.Length      // round holes
	Size     [2]length.Length   // slots and cut-outs: along the piece, front to back
	Radius   length.Length      // inside corners of cut-outs
	Depth    length.Length      // zero: through
	Passes   string             // what must pass through: free words, pipe, coupling, plug 1 1/2 in …
	PassSize length.Length      // its largest section, zero when nothing is named
	Pos      Pos
}

// HoleKind is the shape of an opening.
type HoleKind string

// The shapes of openings.
const (
	RoundHole HoleKind = "hole"
	Slot      HoleKind = "slot"
	CutOut    HoleKind = "cut-out"
)

// Edge is a profile on one edge of a panel.
type Edge struct {
	Panel   string
	Side    string        // front, back, left, right
	Profile string        // chamfer, round-over, bevel
	Size    length.Length // of the profile, measured on the face
	Pos     Pos
}

// Feet says what the posts that come from the feet, and the panels that stand on feet, end in.
type Feet struct {
	Kind    FootKind
	Panel   string        // casters or feet under this panel's corners; empty: under the posts
	Inset   length.Length // from the panel's edges to the swivel axis or foot
	Wheel   length.Length
	Height  length.Length // overall: from the floor to what it is fixed to
	Offset  length.Length // swivel
	RatedKg float64
	Locks   int
	Count   int      // under a panel: 4 by default
	Fixed   string   // through drilled caps, plate, insert
	Assumed []string // which of the figures come from the generic class
	Pos     Pos
}

// FootKind is what a post stands on.
type FootKind string

// The kinds of feet.
const (
	NoFeet      FootKind = ""
	StemCaster  FootKind = "stem caster"
	PlateCaster FootKind = "plate caster"
	Leveller    FootKind = "levelling foot"
	CapFoot     FootKind = "cap"
	FlangeFoot  FootKind = "flange"
	BareFoot    FootKind = "bare"
)

// Joints says how panels and frame are fastened where the defaults are not wanted.
type Joints struct {
	Flange     Fastening // screws through flanges into panels
	Strap      Fastening // screws through straps into panels
	WallFlange Fastening // screws through flanges into the wall
	Caster     Fastening // screws through caster plates
}

// Fastening is a chosen screw. The zero value takes the default of the fitting and the longest screw
// that fits.
type Fastening struct {
	Gauge   int
	Length  length.Length
	Slotted bool          // the steel's holes are slotted or opened for the movement of the wood
	Hole    length.Length // diameter the maker drills in flange or strap; zero: as sold
	Pos     Pos
}

// Walls is how the walls of a void run down from the face.
type Walls string

// The walls of voids.
const (
	BowlWalls     Walls = "bowl"     // round-bottomed, as open knots are
	StraightWalls Walls = "straight" // as of a split, or a knot that goes right through
	FunnelWalls   Walls = "funnel"
)

// Void is a number of equal hollows in a panel's wood, open knots or splits, that are filled with resin.
// They are where the boards have them: nothing of the geometry follows from them.
type Void struct {
	Name  string
	In    string           // panel
	Size  [2]length.Length // long and wide, at the face, of the oval round it
	Depth length.Length    // at its deepest; the panel's thickness where it goes through
	Count int
	Walls Walls
	Resin string // class in trade/adhesive
	Pos   Pos
}
