package shop

import "rodwright/length"

// Rack is what the shop already has and may use up. An empty rack is a shop that buys everything.
type Rack struct {
	Boards []Board
	Sticks []Stick
	Sheets []Sheet

	Nipples map[string]float64 `json:",omitempty"` // stock nipples bought for the piece that is laid out, by item
}

// Board is one board in the rack.
type Board struct {
	Tag        string
	Species    string
	Quarters   string // as it was bought; empty where not known
	Length     length.Length
	Width      length.Length
	Thickness  length.Length // as it is now
	RoughEdges int
	Ring       string // up, down, or empty: the side the bark face looks to
	Defects    []Defect
	Paid       bool // bought for the piece that is laid out: what is used of it costs nothing more
}

// Defect is a rectangle of a board that a good face must not have, from the board's corner.
type Defect struct {
	Kind          string // knot, split, wane, sap, void
	Face          string // both, good, back
	X, Y          length.Length
	Length, Width length.Length
}

// Stick is one length of pipe in the rack, an offcut among them.
type Stick struct {
	Tag    string
	Pipe   string // size: 3/4, DN20
	Length length.Length
	Paid   bool // bought for the piece that is laid out
}

// Sheet is one sheet of panel goods in the rack, or an offcut of one.
type Sheet struct {
	Tag           string
	Sheet         string // id, for example birch-plywood-18
	Length, Width length.Length
	Paid          bool // bought for the piece that is laid out
}
