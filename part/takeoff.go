package part

import (
	"slices"
	"strconv"
	"strings"

	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// takeOff is one take-off in the making.
type takeOff struct {
	r    *piece.Resolved
	s    *shop.Shop
	doc  *piece.Document
	list *List

	fits map[fit]pipe.Fitting // the shop's fittings, as far as they were asked for
}

type fit struct {
	size string
	kind pipe.Kind
}

// TakeOff lists everything the piece is made of, as the shop would make it: panels, pipes, fittings,
// hardware, and what is used up. The error is a *piece.Error and names a joint whose fitting exists in no
// table, or a class that is not known; pipes that can't be made and screws that don't fit are on the list,
// for the checks to speak of.
//
// Promises:
//
//  1. Every panel, pipe and fitting of r has exactly one tag, and every tag stands for one thing.
//  2. A pipe's Exact and both take-outs add up to Between, to the nanometre.
//  3. A blank contains its finished panel.
//  4. The masses of the parts, each times its count, add up to the total.
//  5. The same input gives the same list.
func TakeOff(r *piece.Resolved, s *shop.Shop) (*List, error) {
	t := &takeOff{r: r, s: s, doc: r.Doc, list: &List{}, fits: map[fit]pipe.Fitting{}}
	if t.doc == nil {
		t.doc = &piece.Document{}
	}
	for _, step := range []func() error{t.panels, t.sticks, t.fittings, t.hardware} {
		if err := step(); err != nil {
			return nil, err
		}
	}
	t.totals()
	if err := t.supplies(); err != nil {
		return nil, err
	}
	return t.list, nil
}

// add puts parts on the list under their letter, and their physical tags by index.
func (t *takeOff) add(letter string, parts []Part, tags []string) {
	for i := range parts {
		p := &parts[i]
		p.Tag = letter + itoa(i+1)
		p.Tags = make([]string, p.Count)
		for n := range p.Tags {
			p.Tags[n] = p.Tag + "." + itoa(n+1)
			if n < len(p.Indexes) && tags != nil {
				tags[p.Indexes[n]] = p.Tags[n]
			}
		}
	}
	t.list.Parts = append(t.list.Parts, parts...)
}

// wrong is the error for a place of the document that can't be taken off.
func (t *takeOff) wrong(at piece.Pos, message, want string) error {
	return &piece.Error{File: t.doc.File, Pos: at, Message: message, Want: want}
}

// words parts assumptions that are written in one text with "; " between them, and keeps each once, in
// order. What follows a semicolon without naming a thing of its own, as in "from memory; measure yours",
// stays with what it follows.
func words(texts ...string) (out []string) {
	for _, text := range texts {
		said := ""
		for w := range strings.SplitSeq(text, "; ") {
			if said != "" && strings.Contains(w, ": ") {
				out, said = once(out, said), ""
			}
			if said != "" {
				w = said + "; " + w
			}
			said = w
		}
		out = once(out, said)
	}
	return out
}

// once appends a text that is not there yet.
func once(to []string, text string) []string {
	if text == "" || slices.Contains(to, text) {
		return to
	}
	return append(to, text)
}

func itoa(n int) string { return strconv.Itoa(n) }
