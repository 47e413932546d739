// Package shop holds one workshop as a value: its stock sizes, prices, tools, habits and the parts it
// has measured. It is the catalogue that a piece is resolved, cut, planned and priced with.
//
// Start with [Sample] for the built-in shop, whose prices are invented, or with [Read] for a shop's own
// file. A [Shop] is never changed once made. What the shop does not know is said to be unknown: a
// missing price is no price of zero.
package shop

import (
	"rodwright/length"
	"rodwright/trade/pipe"
)

// Shop is everything that belongs to the workshop and not to the piece.
type Shop struct {
	Name       string
	Currency   string // as it is printed, for example EUR
	Pipe       PipeWork
	Panel      PanelWork
	Settings   Settings
	Money      Money
	Boards     []BoardSize       // what the yard usually has, thin before thick
	Fittings   []MeasuredFitting // what was measured on the bench; wins over every table
	Tools      []Tool
	Operations []Operation
	Rack       Rack
	Assumed    []string // what no one in this shop has settled, in words

	prices map[string]Price
}

// PipeWork is how pipe is bought and cut.
type PipeWork struct {
	NPT, ISO      []length.Length // lengths in which sticks are sold, longest first
	Kerf          length.Length   // of the saw or, for a wheel cutter, nothing
	Trim          length.Length   // lost at each end of a stick
	Useful        length.Length   // the least leftover worth keeping
	NippleUpTo    length.Length   // stock nipples are bought up to this length; longer pieces are cut
	LeastThreaded length.Length   // the shortest piece the threading machine holds
	ThreadsAtShop bool            // the shop threads its own pipe; else the seller does, for a fee
}

// PanelWork is what the making of a panel takes off a board, and how sheet goods are cut.
type PanelWork struct {
	EndTrim      length.Length // a blank's extra at each end
	EdgeTrim     length.Length // a blank's extra at each edge, the kerf included
	Kerf         length.Length // of the saw
	Jointing     length.Length // taken off each edge that is glued or trued
	BoardTrim    length.Length // taken off each rough edge before the first strip
	StripLeast   length.Length // the narrowest strip that is glued
	StripMost    length.Length // the widest
	Salvage      float64       // share of its price that a kept board's tail is worth
	TailLeast    length.Length // the shortest tail worth keeping
	Flattening   length.Length // lost to flattening on top of bow and twist
	Bow          length.Length // of a board as bought, over BowOver
	BowOver      length.Length
	Twist        length.Length
	SheetTrim    length.Length // off each edge of a sheet
	SheetUseful  length.Length // the least side of a leftover of sheet worth keeping
	LeastMilled  length.Length // parts shorter than this are milled long and cut after
	GluePerJoint float64       // spread of adhesive, g/m²; zero takes the adhesive's own
}

// Settings are the shop's own habits and limits, where the trade leaves the choice to the maker.
type Settings struct {
	WorkingGap     length.Length // round posts, on top of what the wood moves
	InsideRadius   length.Length // of a notch's inside corners
	ScrewAllowance length.Length // left between a screw's point and the far face
	HoleClearance  length.Length // on what must pass a hole
	CornerGap      length.Length // between the rim of a flange and the nearest hole or edge
	SagRatio       float64       // span ÷ elastic sag must be at least this
	LastingRatio   float64       // span ÷ lasting sag must be at least this
	SwayRatio      float64       // height ÷ sway under a push at the top must be at least this
	TipDegrees     float64       // angle at which the piece must still stand
	LiftKg         float64       // one person lifts this much close to the body
	People         int           // hands in the shop
	HandsPerDay    float64       // hours of work with hands on the piece in a day
	Backlog        float64       // working days promised to earlier pieces
	Slack          float64       // share added to the days before a date is promised
	Waste          float64       // share of bought wood that does not reach the piece
	Spare          float64       // share added to adhesive, finish and resin
	Straps         int           // on each rail a panel lies on
	Coats          int           // of finish on every face
	FirstGrit      int           // of paper, after planing or scraping
	LastGrit       int           // before the finish
	Adhesive       string        // class of glue
	Finish         string        // class of finish on wood
	MetalFinish    string        // what the steel is coated with
}

// StickLengths returns the lengths in which pipe of the size's standard is sold, longest first.
func (s *Shop) StickLengths(size pipe.Size) []length.Length {
	if size.Standard == pipe.ISO7 {
		return s.Pipe.ISO
	}
	return s.Pipe.NPT
}

// BoardSize is a board as the yard usually has it.
type BoardSize struct {
	Quarters   string // 5/4
	Length     length.Length
	Width      length.Length
	RoughEdges int
	Surfaced   bool // both faces planed by the yard (S2S)
}

// TypicalBoards returns the boards the yard usually has in the given quarters, in the order of the
// shop's file. None means that the shop has not said, and nothing can be laid out to buy.
func (s *Shop) TypicalBoards(quarters string) []BoardSize {
	var out []BoardSize
	for _, b := range s.Boards {
		if b.Quarters == quarters {
			out = append(out, b)
		}
	}
	return out
}
