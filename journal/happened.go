package journal

import "rodwright/length"

// What says what a fact tells.
type What string

// What facts tell.
const (
	Bought    What = "bought"    // stock came into the shop
	Made      What = "made"      // work was done on a part
	Measured  What = "measured"  // a distance of the standing frame was taken
	Pushed    What = "pushed"    // the standing frame was pushed, and how far it moved
	Wrong     What = "wrong"     // something went wrong with a part that is still there: it is short, a hole is not where it should be
	Spoiled   What = "spoiled"   // a part can't be used for anything any more
	Meant     What = "meant"     // a part already made is for another place from now on, or for the rack
	Finished  What = "finished"  // the piece is ready
	Delivered What = "delivered" // the piece is at its place
)

// MM is a length in a journal: millimetres as a number, exact to the nanometre.
type MM = length.Millimetres

// Happened is a fact: what was bought, done or measured. The members that do not belong to its What are zero.
//
// A part that is made is a thing with an identity of its own, the id of the entry that first told of it: tags count
// the parts of one plan and shift with it. Each fact of work on a thing tells what it is like from then on, whole,
// so that no plan of old has to be derived to know it.
type Happened struct {
	What What `json:"what"`

	// Of made, wrong, spoiled and meant.
	Thing  string  `json:"thing,omitempty"`   // id of the entry that first told of it; empty in that entry itself
	Part   string  `json:"part,omitempty"`    // its tag in the plan when this was written: C2.1
	Place  string  `json:"place,omitempty"`   // what it is for: deep board, front left post 1; empty: the rack
	Work   string  `json:"work,omitempty"`    // of made: the kind of work done, as the steps have it: size, cut-pipe
	Shape  *Shape  `json:"shape,omitempty"`   // of made and wrong: what it is like from then on
	HandsH float64 `json:"hands_h,omitempty"` // of made: hours with hands that it took, as somebody told
	PlanH  float64 `json:"plan_h,omitempty"`  // of made: the hours that the plan gives it, where nobody told
	Again  bool    `json:"again,omitempty"`   // of made: work that a piece made right at first does not take
	From   string  `json:"from,omitempty"`    // of made: tag of the bought board, stick or sheet it was cut from
	Took   MM      `json:"took,omitempty"`    // of made: how much of the length of that it used up, saw cuts included

	Goods    *Goods    `json:"goods,omitempty"`    // of bought
	Distance *Distance `json:"distance,omitempty"` // of measured
	Push     *Push     `json:"push,omitempty"`     // of pushed
	Why      string    `json:"why,omitempty"`      // of wrong and spoiled: what went wrong; of the others a note
}

// Shape is what a part that was made is like. Lengths are as measured, or as drawn where nobody measured.
type Shape struct {
	Kind     string    `json:"kind"`     // panel or pipe
	Material string    `json:"material"` // species, sheet or pipe size
	Sheet    bool      `json:"sheet,omitempty"`
	Size     [3]MM     `json:"size"` // along the grain, across it, thick; of a pipe its length first
	Openings []Opening `json:"openings,omitempty"`
	Profiles []Profile `json:"profiles,omitempty"`
	Drawn    [3]MM     `json:"drawn,omitzero"`     // what the plan said when it was made to its size; zero where it missed it
	Measured bool      `json:"measured,omitempty"` // somebody measured the size
}

// Opening is a cut in a panel, in its own coordinates: along the grain and across it from its datum corner.
type Opening struct {
	Kind   string `json:"kind"` // notch, hole, slot, cut-out, relief
	At     [2]MM  `json:"at"`   // the corner of its rectangle nearest to the datum
	Size   [2]MM  `json:"size"`
	Round  bool   `json:"round,omitempty"`
	Radius MM     `json:"radius,omitempty"` // of inside corners
	Depth  MM     `json:"depth,omitempty"`  // zero: through; else from the underside
	Opens  string `json:"opens,omitempty"`  // the edge a notch opens to: start end, far end, near edge, far edge
}

// Profile is a shape run along one edge of a panel.
type Profile struct {
	Side    string `json:"side"` // start end, far end, near edge, far edge
	Profile string `json:"profile"`
	Size    MM     `json:"size"`
}

// Goods are what was bought: one board, stick or sheet with a tag and its measured size, or a number of things sold
// by the piece.
type Goods struct {
	Kind     string   `json:"kind"`               // board, stick, sheet or item
	Tag      string   `json:"tag,omitempty"`      // of a board, stick or sheet, as it is written on it
	Item     string   `json:"item,omitempty"`     // of item: as the buying list names it: tee 1
	Material string   `json:"material,omitempty"` // species, pipe size, sheet
	Quarters string   `json:"quarters,omitempty"` // of a board: 5/4
	Size     [3]MM    `json:"size,omitzero"`      // along, across, thick
	Rough    int      `json:"rough,omitempty"`    // rough edges of a board: 0 to 2
	Defects  []Defect `json:"defects,omitempty"`
	Count    float64  `json:"count,omitempty"` // of item
	Cents    *int64   `json:"cents,omitempty"` // what was paid for all of it, in hundredths of the shop's currency
}

// Defect is a rectangle of a board that a good face must not have, from the board's corner.
type Defect struct {
	Kind string `json:"kind"` // knot, split, wane, sap, void
	Face string `json:"face"` // both, good, back
	At   [2]MM  `json:"at"`
	Size [2]MM  `json:"size"`
}

// Distance is a distance between two things of the standing frame: posts, rails and panels by name, floor, wall.
type Distance struct {
	From  string `json:"from"` // stays where it is
	To    string `json:"to"`   // is moved by what was measured
	Value MM     `json:"value"`
	Over  string `json:"over,omitempty"`  // centres (empty), outside or inside: which faces the tape was laid to
	Drawn MM     `json:"drawn,omitempty"` // what was drawn when it was measured, laid over the same faces; zero: not known
}

// The kinds of things that are made.
const (
	KindPanel = "panel"
	KindPipe  = "pipe"
)

// The kinds of goods.
const (
	BoardGoods = "board"
	StickGoods = "stick"
	SheetGoods = "sheet"
	ItemGoods  = "item"
)

// The faces a tape is laid to.
const (
	OverCentres = ""
	OverOutside = "outside"
	OverInside  = "inside"
)
