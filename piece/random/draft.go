// Package random makes up valid pieces for tests: stands, racks, towers, wall shelves and hoops, with every
// way to sit, both standards of pipe, wood and sheet goods, holes, edges and feet.
//
// Start with [Document], which gives the text of a piece document for a seed, and [Coverage], which counts
// what a set of resolved pieces had among them. The same seed gives the same text.
//
// A random piece can be read and resolved; it need not be a good one: boards may sag and pieces tip. The
// package serves the tests of every room and is no part of the program.
package random

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// The bounds of a random piece.
const (
	MostPanels = 8
	MostSticks = 40
	LeastStick = 4 // fewest sticks
)

// Document returns the text of the random piece with the given seed: 1 to 8 panels on 4 to 40 sticks.
func Document(seed uint64) []byte {
	d := newDraft(seed)
	d.head()
	if d.chance(6) {
		d.wallPiece()
	} else {
		d.floorPiece()
	}
	d.trim()
	d.voids()
	d.loads()
	return d.text()
}

// step is the grain of all sizes: an eighth of an inch, or 3 mm. Sizes are whole numbers of it, so that
// what is written twice is equal.
type step = int

// in is a whole number of inches, or of 24 mm, in steps.
func in(inches int) step { return inches * 8 }

// draft is a document in the making.
type draft struct {
	rng    *rand.Rand
	metric bool
	pipe   string // of the document
	other  string // of a group with a pipe of its own, in the same standard
	feet   feet
	x      step // where the next frame begins
	frame  int  // number of the frame
	panels []board
	sticks int // at most, unions included
	lines  map[string][]string
	top    []string
}

// board is what later sections must know of a panel.
type board struct {
	name         string
	x, y         step // extent along the piece and front to back
	rails, sheet bool
}

func newDraft(seed uint64) *draft {
	return &draft{rng: rand.New(rand.NewPCG(seed, 0x526f64)), lines: map[string][]string{}}
}

// chance is true once in n times.
func (d *draft) chance(n int) bool { return d.rng.IntN(n) == 0 }

// between returns a whole number of inches from low to high, in steps.
func (d *draft) between(low, high int) step { return in(low + d.rng.IntN(high-low+1)) }

// pick returns one of the words.
func (d *draft) pick(words ...string) string { return words[d.rng.IntN(len(words))] }

// size prints steps in the document's unit, now and then without it.
func (d *draft) size(s step) string {
	text, unit := fraction(s), "in"
	if d.metric {
		text, unit = fmt.Sprint(3*s), "mm"
	}
	if d.rng.IntN(8) == 0 {
		return text
	}
	return text + " " + unit
}

// fraction prints eighths of an inch as a maker does: 14 3/8.
func fraction(eighths step) string {
	sign := ""
	if eighths < 0 {
		sign, eighths = "-", -eighths
	}
	whole, n, den := eighths/8, eighths%8, 8
	for n > 0 && n%2 == 0 {
		n, den = n/2, den/2
	}
	switch {
	case n == 0:
		return sign + fmt.Sprint(whole)
	case whole == 0:
		return sign + fmt.Sprintf("%d/%d", n, den)
	}
	return sign + fmt.Sprintf("%d %d/%d", whole, n, den)
}

// point prints coordinates.
func (d *draft) point(at ...step) string {
	texts := make([]string, len(at))
	for i, s := range at {
		texts[i] = d.size(s)
	}
	return "[" + strings.Join(texts, ", ") + "]"
}

// name makes a name that no other frame has: front b.
func (d *draft) name(word string) string { return word + " " + string(rune('a'+d.frame)) }

// add writes one entry of a section: name: {key: value, …}. Fields come as key, value pairs; a pair without a
// value is left out.
func (d *draft) add(section, name string, pairs ...string) {
	var out []string
	for i := 0; i < len(pairs); i += 2 {
		if pairs[i+1] != "" {
			out = append(out, pairs[i]+": "+pairs[i+1])
		}
	}
	d.lines[section] = append(d.lines[section], fmt.Sprintf("  %s: {%s}", name, strings.Join(out, ", ")))
}

// list prints the ways a panel sits.
func list(ways ...string) string {
	if len(ways) == 1 {
		return ways[0]
	}
	return "[" + strings.Join(ways, ", ") + "]"
}

// sections is the order of the document.
var sections = []string{"sizes", "posts", "rails", "arms", "sticks", "panels", "holes", "voids", "edges", "joints", "loads"}

// text puts the document together.
func (d *draft) text() []byte {
	out := append([]string(nil), d.top...)
	for _, s := range sections {
		if len(d.lines[s]) > 0 {
			out = append(append(out, s+":"), d.lines[s]...)
		}
	}
	if len(d.lines["holds"]) > 0 {
		out = append(append(out, "holds:"), d.lines["holds"]...)
	}
	return []byte(strings.Join(out, "\n") + "\n")
}
