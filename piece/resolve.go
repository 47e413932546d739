package piece

import (
	"fmt"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// Resolve sets a piece out in full size: it places every panel and stick of the document, finds where
// they meet, and names the fitting, notch, pocket, seat and union that each place needs. Dimensions of
// fittings, gaps and the lengths sticks are sold in are the shop's.
//
// The order of the work is the order of its files: plan, levels, runs, meetings, loops, panels. All
// lengths are exact; only the movement of wood and diagonals are rounded, to the nanometre. The answer
// depends on nothing but the two arguments, which are not changed. An error is an [*Error] with its place
// in the document.
func Resolve(doc *Document, s *shop.Shop) (*Resolved, error) {
	return ResolveStanding(doc, s, Facts{})
}

// ResolveStanding sets a piece out as it stands: like Resolve, with what was measured of the frame and of the parts
// that are made in place of what is drawn. Openings and seats follow the frame. Without facts it is Resolve.
func ResolveStanding(doc *Document, s *shop.Shop, facts Facts) (*Resolved, error) {
	r := newRod(doc, s)
	r.facts = facts
	for _, stage := range []func() error{
		r.checkNames, r.layPlan, r.findLevels, r.layPanels, r.setFeet, r.raiseSticks, r.joinRuns, r.chooseUnions,
		r.stand, r.asMade, r.reckonAir, r.seatPanels, r.cutPanels, r.placeHolds,
	} {
		if err := stage(); err != nil {
			return nil, err
		}
	}
	r.measure()
	return r.out, nil
}

// rod is the board a piece is set out on: what is known so far.
type rod struct {
	doc   *Document
	shop  *shop.Shop
	facts Facts
	out   *Resolved

	panelNo, postsNo, railsNo, armsNo map[string]int // by name

	panelAt []*spot        // left front corner in plan; nil until it is known
	postAt  [][]spot       // axis of each post of a group
	railAt  [][]railPlan   // ends of each rail of a group
	armAt   [][]armPlan    // arms of a group
	wall    *length.Length // y of the wall's face

	panelTop  []*length.Length // above the floor
	railLevel []*length.Length // axis of a rail group above the floor
	armLevel  []*length.Length

	runs     []run
	segments []segment
	stickRun []int                  // of each stick
	holding  []func(PanelSeat) bool // which seats of each panel hold it; nil for a loose one

	fittings map[fittingKey]pipe.Fitting
}

type fittingKey struct {
	size string
	kind pipe.Kind
}

func newRod(doc *Document, s *shop.Shop) *rod {
	r := &rod{
		doc: doc, shop: s, out: &Resolved{Doc: doc},
		panelNo: map[string]int{}, postsNo: map[string]int{}, railsNo: map[string]int{}, armsNo: map[string]int{},
		panelAt: make([]*spot, len(doc.Panels)), postAt: make([][]spot, len(doc.Posts)),
		railAt: make([][]railPlan, len(doc.Rails)), armAt: make([][]armPlan, len(doc.Arms)),
		panelTop: make([]*length.Length, len(doc.Panels)), railLevel: make([]*length.Length, len(doc.Rails)),
		armLevel: make([]*length.Length, len(doc.Arms)),
		holding:  make([]func(PanelSeat) bool, len(doc.Panels)),
		fittings: map[fittingKey]pipe.Fitting{},
	}
	for i, p := range doc.Panels {
		r.panelNo[p.Name] = i
	}
	for i, p := range doc.Posts {
		r.postsNo[p.Name] = i
	}
	for i, g := range doc.Rails {
		r.railsNo[g.Name] = i
	}
	for i, g := range doc.Arms {
		r.armsNo[g.Name] = i
	}
	return r
}

// spot is a point in plan: x along the piece, y from front to back.
type spot struct{ x, y length.Length }

// fault is an error at a place of the document: what is wrong, and what would be right.
func (r *rod) fault(at Pos, want, format string, args ...any) error {
	return &Error{File: r.doc.File, Pos: at, Message: fmt.Sprintf(format, args...), Want: want}
}

// text prints a length to the document's fineness.
func (r *rod) text(l length.Length) string { return r.doc.Fineness.Text(l) }

// textUp prints a length rounded up to the document's fineness, for a least distance.
func (r *rod) textUp(l length.Length) string {
	if step := r.doc.Fineness.Step; step > 0 && l%step != 0 {
		l += step - l%step
	}
	return r.text(l)
}

// fitting returns the shop's fitting of a kind, asked for on behalf of a place of the document.
func (r *rod) fitting(at Pos, size pipe.Size, kind pipe.Kind) (pipe.Fitting, error) {
	key := fittingKey{size.ID, kind}
	if f, ok := r.fittings[key]; ok {
		return f, nil
	}
	f, err := r.shop.Fitting(size, kind)
	if err != nil {
		return f, r.fault(at, "choose another size of pipe, or measure the fitting and enter it in the shop", "%s %s: %v", kind, size.ID, err)
	}
	r.fittings[key] = f
	return f, nil
}

// pipeOf returns the pipe a stick is made of: its own, or the document's.
func (r *rod) pipeOf(s Section, at Pos) (pipe.Size, error) {
	if s.Square != nil {
		return pipe.Size{}, r.fault(at, "name a pipe size", "a square wooden stick can't be set out")
	}
	if s.Pipe != nil {
		return *s.Pipe, nil
	}
	return r.doc.Pipe, nil
}
