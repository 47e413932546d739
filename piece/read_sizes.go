package piece

import (
	"errors"
	"strings"

	"rodwright/length"
	"rodwright/piece/formula"
	"rodwright/piece/markup"
)

// sizing is what is known of the sizes while the document is read.
type sizing map[string]*sizeOnTheWay

// sizeOnTheWay is a size between its text and its value.
type sizeOnTheWay struct {
	Size
	formula *formula.Formula // nil when it is wrong
	text    written
	state   sizeState
}

type sizeState uint8

const (
	waiting sizeState = iota
	inWork            // its formula is being worked out: meeting it again is a circle
	good
	bad // it, or a size it follows from, is wrong
)

// settled reports whether a size has its value.
func (s sizing) settled(name string) bool { return s[name] != nil && s[name].state == good }

func (s sizing) value(name string) length.Length { return s[name].Value }

// readSizes reads all formulas, then works them out, each after those it uses.
func (r *reading) readSizes(n *markup.Node) {
	entries := r.entries(n, "sizes", "depth: 19 in")
	r.sizes = make(sizing, len(entries))
	for _, e := range entries {
		r.sizes[e.Key] = r.readSize(e)
	}
	for _, e := range entries {
		r.settle(e.Key, nil)
		r.doc.Sizes = append(r.doc.Sizes, r.sizes[e.Key].Size)
	}
}

// readSize reads a size in its short form, a formula, or in its long one with where it comes from.
func (r *reading) readSize(e markup.Entry) *sizeOnTheWay {
	s := &sizeOnTheWay{Size: Size{Name: e.Key, Pos: e.KeyPos}, state: bad}
	n := e.Value
	var f fields
	if n.Kind == markup.Map {
		f, _ = r.fields(n, "the size "+e.Key, "is", "origin", "measured", "note")
		f.require("is", "42 in")
		n = f.node("is")
	} else if n.Kind == markup.Empty {
		r.fail(n.Pos, "write a length or a formula behind the colon", "the size %s has no value", e.Key)
		return s
	}
	if n = r.single(n, e.Key); n == nil {
		return s
	}
	s.Formula, s.text = n.Text, writtenAt(n)
	parsed, ok := r.parse(s.text, r.doc.Unit)
	if !ok {
		return s
	}
	s.formula, s.state, s.Uses = parsed, waiting, parsed.Names()
	s.Origin = Assumed
	if len(s.Uses) > 0 {
		s.Origin = Rule
	}
	if f.reading != nil && !r.readOrigin(f, s) {
		s.state = bad
	}
	return s
}

// readOrigin reads what the long form says beside the formula.
func (r *reading) readOrigin(f fields, s *sizeOnTheWay) bool {
	before := len(r.errs)
	if n := f.scalar("measured"); n != nil {
		r.readMeasured(n, s)
	}
	word, ok := f.choice("origin", string(Assumed), string(Client), string(Measured), string(Rule), string(Standard))
	if ok {
		s.Origin = Origin(word)
	}
	if s.Origin == Measured && s.OnSite == nil && f.has("origin") && !f.has("measured") {
		f.require("measured", "41 7/8 in")
	}
	if n := f.node("note"); n != nil && n.Kind == markup.Scalar {
		s.Note = n.Text
	} else if n != nil {
		r.fail(n.Pos, "write one text", "note: is %s", n.Kind)
	}
	return len(r.errs) == before
}

// readMeasured reads a length that was measured on site. It follows from nothing, so no size is named in it.
func (r *reading) readMeasured(n *markup.Node, s *sizeOnTheWay) {
	l, err := formula.Eval(n.Text, r.doc.Unit)
	var e *formula.Error
	switch {
	case errors.As(err, &e) && e.Unknown != "":
		r.fail(n.TextPos.After(e.Offset), "write the length that was read off the tape", "measured: has %q in it, but what is measured follows from nothing", clipped(e.Unknown))
	case err != nil:
		r.formulaError(writtenAt(n), err)
	case r.hasSign(l, writtenAt(n), "measured", fromZero):
		s.OnSite, s.Origin = &l, Measured
	}
}

// settle works out a size and those it uses. Chain holds the sizes that led here.
func (r *reading) settle(name string, chain []string) {
	s := r.sizes[name]
	switch {
	case s.state == inWork:
		r.circle(name, chain)
		return
	case s.state != waiting:
		return
	}
	s.state = inWork
	chain = append(chain, name)
	for _, used := range s.Uses {
		if r.settle(used, chain); s.state == bad || r.sizes[used].state != good {
			s.state = bad
			return
		}
	}
	l, err := s.formula.Length(r.sizes.value)
	if err != nil {
		r.formulaError(s.text, err)
		s.state = bad
		return
	}
	s.Formed, s.Value, s.state = l, l, good
	if s.OnSite != nil {
		s.Value = *s.OnSite
	}
}

// circle notes that a size follows from itself, once, at its own formula, and marks all of the circle wrong.
func (r *reading) circle(name string, chain []string) {
	start := 0
	for chain[start] != name {
		start++
	}
	ring := chain[start:]
	for _, n := range ring {
		r.sizes[n].state = bad
	}
	r.fail(r.sizes[name].text.at, "give one of them a length of its own", "the size %s follows from itself: %s → %s",
		name, strings.Join(ring, " → "), name)
}
