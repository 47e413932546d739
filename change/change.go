// Package change says what a change of a piece does: which cuts move, what more or less is bought, which
// findings turn, what it costs in money, days and weight.
//
// Start with [Compare], which lays two builds side by side. The words: from is the build before, to the one
// after; a ripple is everything that differs between them.
//
// How parts of two builds are known to be the same. Tags count the parts of one build and shift when one is
// added before them, so they tell nothing. A panel is the panel of its name, and a pipe the pipe of its place
// (front left post 2); several of one name are taken in order. Fittings and hardware have no name of their own
// and are counted by what they are. A finding is that of its check and place; of several there the worst counts.
//
// The package weighs a change on paper. What becomes of parts that were already made is not its to say.
package change

import (
	"math"

	"rodwright/build"
	"rodwright/length"
	"rodwright/money"
)

// MM is a length in millimetres, exact to the nanometre for everything a piece has.
type MM float64

// Ripple is what differs between two builds.
type Ripple struct {
	Cuts     []Cut   `json:"cuts"`     // of parts that both have, panels first, in the order of the later build
	Boards   []Stock `json:"boards"`   // what is bought, in the order of the later list, then what is bought no more
	Parts    Made    `json:"parts"`    // what only one of them has
	Findings []Turn  `json:"findings"` // in the order of the later build, then those that are no more
	Money    Money   `json:"money"`
	Days     Days    `json:"days"`
	MassKg   Mass    `json:"massKg"`
}

// Cut is a length to cut that moves: of pipe, or a finished side of a panel. Tag is that of the kind in the later
// build where every one of the kind moves alike, else the tags of those that do.
type Cut struct {
	Tag   string `json:"tag"`
	Name  string `json:"name"`
	What  string `json:"what"` // cut of pipe; length, width or thickness of a panel
	Count int    `json:"count"`
	From  MM     `json:"from"`
	To    MM     `json:"to"`
}

// Stock is something that is bought in another amount. From and To are in Unit, whole packs counted.
type Stock struct {
	Item string  `json:"item"`
	From float64 `json:"from"`
	To   float64 `json:"to"`
	Unit string  `json:"unit"`
}

// Made lists parts that only one of two builds has, in words: C9 hook rail, 2 × tee 3/4.
type Made struct {
	Added []string `json:"added"`
	Gone  []string `json:"gone"`
}

// Turn is a finding whose verdict turned. From is empty where it is new, To where it is no more; one that is new
// or gone is told only where it does not stand.
type Turn struct {
	Check string `json:"check"`
	Place string `json:"place"`
	From  string `json:"from"`
	To    string `json:"to"`
}

// Money is the total of the quote, tax included, in hundredths of Currency; nil where it is not known.
type Money struct {
	From     *int64 `json:"from"`
	To       *int64 `json:"to"`
	Currency string `json:"currency"` // of the later build's shop
}

// Days are calendar days from the first hour to the piece ready for use.
type Days struct {
	From int `json:"from"`
	To   int `json:"to"`
}

// Mass is the weight of the piece itself in kilograms.
type Mass struct {
	From float64 `json:"from"`
	To   float64 `json:"to"`
}

// Compare returns what differs between two builds. Neither is changed. Promises:
//
//  1. Between a build and itself nothing differs.
//  2. Turned round, the same things differ the other way.
//  3. The same two builds give the same ripple, in the same order.
func Compare(from, to *build.Build) Ripple {
	panels, pipes := matchPanels(from, to), matchPipes(from, to)
	return Ripple{
		Cuts:     append(panelCuts(panels), pipeCuts(pipes)...),
		Boards:   stock(from.Buy.Lines, to.Buy.Lines),
		Parts:    made(from.Parts, to.Parts, panels, pipes),
		Findings: turns(from.Findings, to.Findings),
		Money:    Money{cents(from.Quote.Total), cents(to.Quote.Total), to.Quote.Currency},
		Days:     Days{from.Work.Days, to.Work.Days},
		MassKg:   Mass{MassOf(from), MassOf(to)},
	}
}

// Empty reports whether nothing differs.
func (r Ripple) Empty() bool {
	return len(r.Cuts) == 0 && len(r.Boards) == 0 && len(r.Parts.Added) == 0 && len(r.Parts.Gone) == 0 && len(r.Findings) == 0 &&
		r.Money.same() && r.Days.From == r.Days.To && r.MassKg.From == r.MassKg.To
}

func (m Money) same() bool {
	if m.From == nil || m.To == nil {
		return m.From == m.To
	}
	return *m.From == *m.To
}

func cents(a money.Amount) *int64 {
	if !a.Known {
		return nil
	}
	c := int64(a.Cents)
	return &c
}

func mm(l length.Length) MM { return MM(l.MM()) }

// MassOf returns the weight of a build's piece in kilograms, to six significant digits as a build writes it.
func MassOf(b *build.Build) float64 { return six(b.Parts.Totals.MassKg) }

// six rounds a sum to six significant digits, so that the order in which it was added up does not show.
func six(v float64) float64 {
	if v == 0 {
		return 0
	}
	scale := math.Pow(10, 5-math.Floor(math.Log10(math.Abs(v))))
	return math.Round(v*scale) / scale
}
