package piece

import (
	"fmt"

	"rodwright/piece/markup"
	"rodwright/trade/pipe"
	"rodwright/trade/wood"
)

// readWood reads what the panels are made of unless they say otherwise.
func (r *reading) readWood(n *markup.Node) {
	if n == nil {
		return
	}
	if w := r.woodAt(n, nil); w != nil {
		r.doc.Wood = *w
	}
}

// The wood that is taken when a document is silent on it.
const (
	usualMoisture = 8.0 // percent, furniture dried for heated rooms; common practice, no source
	wettest       = 60.0
	driest        = 2.0
)

// woodAt reads a wood: its species alone, or with cut and moisture. What is not written comes from the
// document's wood, else is assumed.
func (r *reading) woodAt(n *markup.Node, usual *Wood) *Wood {
	if usual == nil {
		usual = &Wood{Cut: wood.Flat, Moisture: usualMoisture, Assumed: []string{flatWords, moistureWords}}
	}
	w := Wood{Cut: usual.Cut, Moisture: usual.Moisture, Assumed: usual.Assumed, Pos: n.Pos}
	if n.Kind == markup.Scalar {
		return r.withSpecies(w, r.single(n, "wood"))
	}
	f, ok := r.fields(n, "the wood", "species", "cut", "moisture")
	if !ok {
		return nil
	}
	f.require("species", "white-oak")
	if word, ok := f.choice("cut", string(wood.Flat), string(wood.Quarter), string(wood.Mixed)); ok {
		w.Cut = wood.Cut(word)
		w.Assumed = without(w.Assumed, flatWords)
	}
	if mc, ok := f.percent("moisture", driest, wettest); ok {
		w.Moisture = mc
		w.Assumed = without(w.Assumed, moistureWords)
	}
	return r.withSpecies(w, f.scalar("species"))
}

// without returns the words but the given ones.
func without(words []string, out string) (rest []string) {
	for _, w := range words {
		if w != out {
			rest = append(rest, w)
		}
	}
	return rest
}

const flatWords = "flat-sawn"

var moistureWords = fmt.Sprintf("wood at %g %% moisture on the day the panels are made", usualMoisture)

func (r *reading) withSpecies(w Wood, n *markup.Node) *Wood {
	if n == nil {
		return nil
	}
	s, err := wood.Lookup(n.Text)
	if err != nil {
		r.unknownID(n.TextPos, "wood", n.Text, err)
		return nil
	}
	w.Species = s
	return &w
}

// readPipe reads the pipe of every stick that names no other: its size alone, or with its standard.
func (r *reading) readPipe(n *markup.Node) {
	if n == nil {
		return
	}
	if size := r.pipeAt(n); size != nil {
		r.doc.Pipe = *size
	}
}

func (r *reading) pipeAt(n *markup.Node) *pipe.Size {
	if n.Kind == markup.Scalar {
		return r.pipeSize(r.single(n, "pipe"), "")
	}
	f, ok := r.fields(n, "the pipe", "standard", "size")
	if !ok {
		return nil
	}
	f.require("size", "3/4")
	standard, _ := f.choice("standard", string(pipe.NPT), string(pipe.ISO7))
	return r.pipeSize(f.scalar("size"), pipe.Standard(standard))
}

// pipeSize looks a size up. In inches it means the size of that name in the standard that is written; a DN
// size has its own standard.
func (r *reading) pipeSize(n *markup.Node, standard pipe.Standard) *pipe.Size {
	if n == nil {
		return nil
	}
	size, err := pipe.Lookup(n.Text)
	if err != nil {
		r.unknownID(n.TextPos, "pipe size", n.Text, err)
		return nil
	}
	if standard == "" || size.Standard == standard {
		return &size
	}
	for _, id := range pipe.Sizes() {
		if other, err := pipe.Lookup(id); err == nil && other.Standard == standard && other.Nominal == size.Nominal && size.ID == size.Nominal {
			return &other
		}
	}
	r.fail(n.TextPos, "leave standard: out, or write a size of that standard", "%s is no size of %s", size.ID, standard)
	return nil
}

// section reads the pipe of a group of sticks: its own, or the document's.
func (f fields) section() Section {
	if n := f.node("pipe"); n != nil {
		return Section{Pipe: f.pipeAt(n)}
	}
	if f.doc.Pipe.ID == "" && f.root.Entry("pipe") == nil && !f.has("pipe") {
		f.fail(f.at.Pos, "write pipe: 3/4 at the top of the document, or in this group", "nothing says which pipe %s are of", f.what)
	}
	return Section{Pipe: &f.doc.Pipe}
}
