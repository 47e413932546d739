// Package steps turns a piece, its parts and its layouts into ordered work: what is done in which order,
// with which tool of the shop and what could serve instead, how long hands and waiting take, what to
// beware of, and on which day it can be done.
//
// Start with [Plan]. Words: hands are hours in which somebody works; a wait needs nobody, as when glue
// sets or oil dries; a stop setting is one position of a fence or stop, at which equal cuts follow each
// other. The package decides no size: figures come from packages part and cut.
package steps

import (
	"rodwright/cut"
)

// Step is one thing to do.
type Step struct {
	N           int      // from 1, in the order of the work
	Work        string   // kind of work, a shop's Operation: glue, notch, thread …
	Title       string   // in a maker's words, with figures
	Parts       []string // tags of the physical parts it is done to
	Tool        string
	Substitutes []string
	Measures    []string // what to set and mark, one line each
	HandsH      float64  // hours with hands
	WaitH       float64  // hours to wait after it, without hands, before what follows
	Units       float64  // how many of Per the hours are for
	Per         string   // what a unit is: cut, joint, m2
	Settings    int      // how many stop settings it takes; each is set up anew
	Clamps      int      // clamps it holds from its start until ClampH after its end
	ClampH      float64
	Cautions    []string
	After       []int // steps that must be done first, ascending
	Assumed     []string
}

// Work is the whole job in order.
type Work struct {
	Steps   []Step
	HandsH  float64  // of all steps
	Days    int      // calendar days from the first hour to the piece ready for use
	Spans   []Span   // of each step, in the order of Steps
	Unknown []string // times that the shop does not know, in words; hours and days are then a least
	Assumed []string
}

// Kind says what a layout cuts up.
type Kind string

// The kinds of layouts.
const (
	OfSticks Kind = "stick"
	OfBoards Kind = "panel"
	OfSheets Kind = "sheet"
)

// Layout is the answer for one stock material: which parts are cut from what.
type Layout struct {
	Kind     Kind
	Material string // 3/4; white-oak 5/4; birch-plywood-18
	Answer   *cut.Answer
}
