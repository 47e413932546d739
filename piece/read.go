package piece

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"rodwright/length"
	"rodwright/piece/markup"
	"rodwright/trade/table"
)

// Grammar is the version of the document's grammar that is read and written here.
const Grammar = 1

// Read reads a piece document. File is the name that errors give. The grammar is docs/piece.md.
//
// The document is read whole, its formulas are worked out and every name in it is looked up; nothing is
// derived. When something is wrong, the error is an [*Error] about the first wrong place in the text.
func Read(file string, text []byte) (*Document, error) {
	root, err := markup.Parse(text)
	if err != nil {
		return nil, asError(file, err)
	}
	r := &reading{doc: &Document{File: file, Text: slices.Clone(text)}, root: root}
	r.readAll()
	if len(r.errs) == 0 {
		return r.doc, nil
	}
	first := slices.MinFunc(r.errs, func(a, b *Error) int {
		switch {
		case a.Pos.Before(b.Pos):
			return -1
		case b.Pos.Before(a.Pos):
			return 1
		}
		return 0
	})
	return nil, first
}

// asError turns an error of the text layer into one of the document.
func asError(file string, err error) *Error {
	var e *markup.Error
	if errors.As(err, &e) {
		return &Error{File: file, Pos: e.Pos, Message: e.Message, Want: e.Want}
	}
	return &Error{File: file, Message: err.Error()}
}

// reading is a document on the way from its tree. It goes on after an error, as sections may stand in any
// order and the error that is told is the first in the text; a value that follows from a wrong one is not
// told again.
type reading struct {
	doc   *Document
	root  *markup.Node
	errs  []*Error
	sizes sizing
	names map[noun][]string
}

// fail notes an error at a place: what is wrong, and what would be right.
func (r *reading) fail(at Pos, want, format string, args ...any) {
	r.errs = append(r.errs, &Error{File: r.doc.File, Pos: at, Message: fmt.Sprintf(format, args...), Want: want})
}

// readAll reads every section. What others refer to comes first: the unit, names, sizes, wood and pipe.
func (r *reading) readAll() {
	if !r.readVersion() {
		return
	}
	top, ok := r.fields(r.root, "a piece document", "rodwright", "piece", "unit", "fineness", "place", "wood", "pipe",
		"sizes", "holds", "posts", "rails", "arms", "sticks", "panels", "feet", "holes", "voids", "edges", "joints", "standards", "loads")
	if !ok {
		return
	}
	r.readHead(top)
	r.declareNames(top)
	r.readSizes(top.node("sizes"))
	r.readPlace(top.node("place"))
	r.readWood(top.node("wood"))
	r.readPipe(top.node("pipe"))
	r.readPanels(top.node("panels"))
	r.readHolds(top.node("holds"))
	r.readPosts(top.node("posts"))
	r.readRails(top.node("rails"))
	r.readArms(top.node("arms"))
	r.readSticks(top.node("sticks"))
	r.readFeet(top.node("feet"))
	r.readLoads(top.node("loads"))
	r.readHoles(top.node("holes"))
	r.readVoids(top.node("voids"))
	r.readEdges(top.node("edges"))
	r.readJoints(top.node("joints"))
	r.readStandards(top.node("standards"))
	r.checkWhole()
}

// readVersion reads the grammar's version before anything else: the entries of a newer one are unknown here.
func (r *reading) readVersion() bool {
	n := r.root.Entry("rodwright")
	switch {
	case r.root.Kind == markup.Empty:
		r.fail(Pos{Line: 1, Column: 1}, "begin with rodwright: 1, or with a starter", "the document is empty")
	case n == nil:
		r.fail(Pos{Line: 1, Column: 1}, "write rodwright: 1 on the first line", "the version of the grammar is missing")
	case n.Kind != markup.Scalar:
		r.fail(n.Pos, "write rodwright: 1", "the version of the grammar is %s", n.Kind)
	case n.Text == fmt.Sprint(Grammar):
		return true
	case strings.Trim(n.Text, "0123456789") == "" && n.Text != "" && n.Text[0] != '0':
		r.fail(n.Pos, "read it with a newer program", "this document is written in grammar %s; grammar %d is read here", clipped(n.Text), Grammar)
	default:
		r.fail(n.Pos, "write rodwright: 1", "%q is no version of the grammar", clipped(n.Text))
	}
	return false
}

// readHead reads the name, the unit and the fineness.
func (r *reading) readHead(top fields) {
	r.doc.Name, _ = top.text("piece", "stepped seedling stand")
	if unit, ok := top.choice("unit", "in", "mm"); ok {
		r.doc.Unit, _ = length.UnitOf(unit)
	} else {
		top.require("unit", "in, or mm")
	}
	r.doc.Fineness = length.Sixteenth
	if r.doc.Unit == length.MM {
		r.doc.Fineness = length.WholeMM
	}
	n := top.scalar("fineness")
	if n == nil {
		return
	}
	f, err := length.ParseFineness(n.Text)
	if err != nil {
		r.fail(n.Pos, "write 1/16, 1/32, 1/64, 1 mm or 0.5 mm", "%q is no fineness", clipped(n.Text))
		return
	}
	r.doc.Fineness = f
}

// checkWhole says what is missing from the piece as a whole.
func (r *reading) checkWhole() {
	d := r.doc
	sticks := len(d.Posts) + len(d.Rails) + len(d.Arms) + len(d.Sticks)
	if len(d.Panels)+sticks == 0 && len(r.errs) == 0 {
		r.fail(Pos{Line: 1, Column: 1}, "write panels:, posts: or sticks:", "there is nothing to build")
	}
	if len(r.errs) == 0 {
		r.checkBands()
	}
}

// checkBands notes panels that lie on rails or arms which do not say how that is.
func (r *reading) checkBands() {
	silent := map[string]bool{}
	for _, g := range r.doc.Rails {
		silent[g.Name] = g.Bands == ""
	}
	for _, g := range r.doc.Arms {
		silent[g.Name] = g.Bands == ""
	}
	for _, p := range r.doc.Panels {
		for _, s := range p.Seats {
			if s.Kind == OnRails && silent[s.Group] {
				r.fail(s.Pos, "write bands: "+bandWords+" in "+s.Group, "%s lies on %s, which has no bands:", p.Name, s.Group)
			}
		}
	}
}

// near words the known names nearest to a wrong one; empty when there are none.
func near(name string, known []string) string {
	if list := table.Near(name, known); len(list) > 0 {
		return "near: " + strings.Join(list, ", ")
	}
	return ""
}

// clipped shortens a text that is shown in an error.
func clipped(text string) string {
	const most = 60
	runes := []rune(text)
	if len(runes) <= most {
		return text
	}
	return string(runes[:most]) + "…"
}
