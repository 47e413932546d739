// Package anchor holds what the trade knows of fixing steel flanges to a wall: screws into the studs of a
// framed wall, and plugs in masonry.
//
// The classes are generic and from memory; what holds in the wall at hand is for the maker's data sheet of
// the fixing, the local code and a licensed person to say, and every figure here carries that. Start with
// [For]; [Offset] says whether flanges can all lie on studs. The package reckons no loads.
package anchor

import (
	"cmp"
	_ "embed"
	"slices"
	"sync"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/screw"
	"rodwright/trade/table"
	"rodwright/trade/within"
	"rodwright/trade/wood"
)

//go:embed anchors.csv
var anchorsCSV string

// Caution is the usual one where something hangs on a wall.
const Caution = "What falls from a wall can hurt someone: fix it into studs or with masonry anchors fit for the load, by their maker's data sheet; the local code and a licensed person decide."

// StudWidth is the face of a stud as it is commonly found, 1 1/2 in, and StudSpacing how far apart studs
// commonly stand, 16 in: both from memory.
const (
	StudWidth   = 3 * length.Inch / 2
	StudSpacing = 16 * length.Inch
)

// studG is the specific gravity of a light softwood of construction, from memory.
const studG = 0.42

// Class is a generic class of wall fixing.
type Class struct {
	ID      string
	Words   string
	PullN   float64       // each, to design for; NaN where it is reckoned from the screw
	AcrossN float64       // each; NaN likewise
	Lining  length.Length // between the flange and what holds
	Source  table.Source
}

var classes = sync.OnceValue(func() map[string]Class {
	out := map[string]Class{}
	for _, r := range table.Read(anchorsCSV) {
		c := Class{
			ID: r.Text("id"), Words: r.Text("words"), PullN: r.Float("pull_lbf") * lbf, AcrossN: r.Float("across_lbf") * lbf,
			Lining: r.Inches("lining_in"), Source: r.Source(),
		}
		out[c.ID] = c
	}
	return out
})

// lbf is the pound-force in newtons, exact.
const lbf = 0.45359237 * 9.80665

var classFormula = figure.Formula{
	Text: "a generic class of anchor, each", Source: "from memory, no source: a low figure of what plugs are sold for", Range: "sound solid masonry; the maker's data sheet decides",
}

// Shift is how far the flanges of a piece lie off the middles of studs when the piece is hung where that is least.
type Shift struct {
	Figure figure.Figure   // mm, of the flange that is farthest off
	Each   []length.Length // of every flange, in the order given, to the right positive
}

var shiftFormula = figure.Formula{
	Text: "off = half the least span, modulo the spacing, that holds every flange", Source: "geometry", Range: "studs evenly spaced, the piece hung where it suits them best",
}

// Offset returns how far flanges at the given places along a wall lie off the middles of studs of the given
// spacing, with the whole piece shifted so that the worst is least. It is an error without flanges or
// spacing.
func Offset(at []length.Length, spacing length.Length) (Shift, error) {
	if err := cmp.Or(within.Length("spacing of the studs", spacing), within.Counted("flanges", len(at), 1, 10000)); err != nil {
		return Shift{}, err
	}
	rest := make([]length.Length, len(at))
	for i, x := range at {
		rest[i] = ((x-at[0])%spacing + spacing) % spacing
	}
	order := slices.Clone(rest)
	slices.Sort(order)
	widest, from := order[0]+spacing-order[len(order)-1], order[0]
	for i := 1; i < len(order); i++ {
		if gap := order[i] - order[i-1]; gap > widest {
			widest, from = gap, order[i]
		}
	}
	span := spacing - widest
	s := Shift{Figure: figure.OfLength("off the stud's middle", span.Half(), &shiftFormula, figure.InLength("spacing", spacing), figure.InLength("span", span))}
	for _, r := range rest {
		s.Each = append(s.Each, (r-from+spacing)%spacing-span.Half())
	}
	return s, nil
}

// Held is what one fixing is designed for.
type Held struct {
	Pull    figure.Figure // N, along it
	Across  figure.Figure // N, across it
	Thread  figure.Figure // mm in the stud; missing in masonry
	Assumed []string
}

// For returns what one screw of the given gauge and length is designed for through steel of the given grip
// into a wall of studs or masonry, under a load that stays. The error is a *table.UnknownError for another
// kind of wall, or a *within.Error where the screw doesn't reach: it needs four diameters in the stud.
func For(wall string, gauge int, long, grip length.Length) (Held, error) {
	sc, err := screw.Lookup(gauge)
	if err != nil {
		return Held{}, err
	}
	switch wall {
	case "studs":
		return inStud(classes()["stud"], sc, long, grip)
	case "masonry":
		c := classes()["plug"]
		given := func(name string, v float64) figure.Figure { return figure.Of(name, v, figure.N, &classFormula) }
		return Held{
			Pull: given("pull to design for", c.PullN), Across: given("load across to design for", c.AcrossN),
			Assumed: []string{c.Words + ", generic class, from memory; read the maker's data sheet of yours"},
		}, nil
	}
	return Held{}, table.Unknown("kind of wall", wall, []string{"studs", "masonry"})
}

// studWood stands for the wood of a stud whose species nobody knows.
var studWood = wood.Species{ID: "stud", Name: "a softwood stud", SG12: studG}

func inStud(c Class, sc screw.Screw, long, grip length.Length) (Held, error) {
	if err := cmp.Or(within.Length("screw length", long), within.Room("grip", grip)); err != nil {
		return Held{}, err
	}
	thread, err := screw.ThreadIn(long, grip+c.Lining)
	if err != nil {
		return Held{}, err
	}
	_, pull, err := screw.Withdrawal(studWood, sc.Shank, length.FromMM(thread.Value), screw.Side)
	if err != nil {
		return Held{}, err
	}
	across, err := screw.Lateral(studWood, sc.Shank, long-grip-c.Lining)
	if err != nil {
		return Held{}, err
	}
	if pull, err = screw.Lasting(pull.Value); err != nil {
		return Held{}, err
	}
	if across, err = screw.Lasting(across.Value); err != nil {
		return Held{}, err
	}
	return Held{Pull: pull, Across: across, Thread: thread, Assumed: []string{
		"studs of softwood, specific gravity 0.42, 1 1/2 in wide, behind 1/2 in of lining, from memory",
	}}, nil
}
