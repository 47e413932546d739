package piece

import (
	"errors"
	"math/big"
	"strings"
	"unicode/utf8"

	"rodwright/length"
	"rodwright/piece/formula"
	"rodwright/piece/markup"
)

// sign is which lengths a place of the document takes.
type sign uint8

const (
	anySign   sign = iota // a coordinate
	fromZero              // a distance that may be nothing
	aboveZero             // the size of a thing
)

// written is a text with the place where it begins, cut out of a scalar.
type written struct {
	text string
	at   Pos
}

func writtenAt(n *markup.Node) written { return written{n.Text, n.TextPos} }

// cut returns the part of w from one byte to another, without the spaces round it.
func (w written) cut(from, to int) written {
	part := w.text[from:to]
	lead := len(part) - len(strings.TrimLeft(part, " "))
	return written{strings.TrimSpace(part), w.at.After(utf8.RuneCountInString(w.text[:from+lead]))}
}

// after returns what follows a prefix, without the spaces before it.
func (w written) after(prefix string) (written, bool) {
	if !strings.HasPrefix(w.text, prefix) {
		return w, false
	}
	return w.cut(len(prefix), len(w.text)), true
}

// length reads the formula under a key.
func (f fields) length(key string, s sign) (length.Length, bool) {
	n := f.scalar(key)
	if n == nil {
		return 0, false
	}
	return f.lengthAt(writtenAt(n), key, s)
}

// lengthAt works out a formula. Ok is false when it is wrong, or when it follows from a size that is.
func (r *reading) lengthAt(w written, what string, s sign) (length.Length, bool) {
	l, ok := r.evaluate(w, r.doc.Unit)
	if !ok {
		return 0, false
	}
	return l, r.hasSign(l, w, what, s)
}

func (r *reading) hasSign(l length.Length, w written, what string, s sign) bool {
	switch {
	case s == aboveZero && l <= 0:
		r.fail(w.at, "write a length above zero", "%s: %s is %s", what, clipped(w.text), r.shown(l))
	case s == fromZero && l < 0:
		r.fail(w.at, "write zero or more", "%s: %s is %s", what, clipped(w.text), r.shown(l))
	default:
		return true
	}
	return false
}

// shown prints a length for an error, to the document's fineness, and says when that rounds it.
func (r *reading) shown(l length.Length) string { return r.doc.Fineness.Show(l) }

// evaluate works out a formula whose unitless numbers take a unit.
func (r *reading) evaluate(w written, unit length.Unit) (length.Length, bool) {
	f, ok := r.parse(w, unit)
	if !ok {
		return 0, false
	}
	for _, name := range f.Names() {
		if !r.sizes.settled(name) {
			return 0, false
		}
	}
	l, err := f.Length(r.sizes.value)
	if err != nil {
		r.formulaError(w, err)
		return 0, false
	}
	return l, true
}

func (r *reading) parse(w written, unit length.Unit) (*formula.Formula, bool) {
	declared := func(name string) bool { return r.declared(aSize, name) }
	f, err := formula.Parse(w.text, unit, declared)
	if err != nil {
		r.formulaError(w, err)
		return nil, false
	}
	return f, true
}

// formulaError notes an error of a formula at its place, with the sizes that were perhaps meant.
func (r *reading) formulaError(w written, err error) {
	var e *formula.Error
	if !errors.As(err, &e) {
		r.fail(w.at, "", "%v", err)
		return
	}
	want := e.Want
	if e.Unknown != "" {
		if names := near(e.Unknown, r.names[aSize]); names != "" {
			want = names + "; or " + want
		}
	}
	r.fail(w.at.After(e.Offset), want, "%s", e.Message)
}

// dimensions reads lengths parted by ×, or by x with a space on both sides: 13 × 15 × 3 in. Where the last
// is written with a unit, bare numbers before it take that unit.
func (r *reading) dimensions(w written, what, example string, count int) ([]length.Length, bool) {
	parts := w.split()
	if len(parts) != count {
		r.fail(w.at, "write for example "+example, "%s: %q is not %d lengths parted by ×", what, clipped(w.text), count)
		return nil, false
	}
	unit := r.doc.Unit
	if last, err := formula.Parse(parts[count-1].text, unit, func(string) bool { return false }); err == nil {
		if u, ok := last.Literal(); ok {
			unit = u
		}
	}
	out := make([]length.Length, count)
	for i, p := range parts {
		l, ok := r.evaluate(p, unit)
		if !ok || !r.hasSign(l, p, what, aboveZero) {
			return nil, false
		}
		out[i] = l
	}
	return out, true
}

// split cuts a text at its × signs.
func (w written) split() (parts []written) {
	start := 0
	for i := 0; i < len(w.text); i++ {
		for _, mark := range []string{"×", " x "} {
			if strings.HasPrefix(w.text[i:], mark) {
				parts = append(parts, w.cut(start, i))
				start = i + len(mark)
				i = start - 1
				break
			}
		}
	}
	return append(parts, w.cut(start, len(w.text)))
}

// point reads a list of coordinates: [x, y].
func (r *reading) point(n *markup.Node, what string, count int) ([]length.Length, bool) {
	axes := []string{"x", "y", "z"}[:count]
	if n.Kind != markup.List || len(n.Items) != count {
		r.fail(n.Pos, "write ["+strings.Join(axes, ", ")+"]", "%s: is not %d coordinates", what, count)
		return nil, false
	}
	out := make([]length.Length, count)
	good := true
	for i, item := range n.Items {
		s := r.single(item, axes[i])
		if s == nil {
			good = false
			continue
		}
		l, ok := r.lengthAt(writtenAt(s), axes[i], anySign)
		out[i], good = l, good && ok
	}
	return out, good
}

// points reads one point in plan, or a list of them.
func (r *reading) points(n *markup.Node, what string) (out [][2]length.Length, ok bool) {
	list := []*markup.Node{n}
	if n.Kind == markup.List && len(n.Items) > 0 && n.Items[0].Kind == markup.List {
		list = n.Items
	}
	if len(list) > maxEntries {
		r.fail(n.Pos, "split it", "%s: has more than %d places", what, maxEntries)
		return nil, false
	}
	for _, item := range list {
		p, ok := r.point(item, what, 2)
		if !ok {
			return nil, false
		}
		out = append(out, [2]length.Length{p[0], p[1]})
	}
	return out, true
}

// share reads a part of a whole, more than nothing and less than all: 1/3, 0.25.
func (f fields) share(key string) ([2]int64, bool) {
	n := f.scalar(key)
	if n == nil {
		return [2]int64{}, false
	}
	v, rest, why := length.ScanNumber(n.Text)
	whole := big.NewRat(1, 1)
	if why != "" || rest != "" || v.Sign() <= 0 || v.Cmp(whole) >= 0 || v.Denom().Cmp(big.NewInt(maxParts)) > 0 {
		f.fail(n.TextPos, "write a fraction between 0 and 1, for example 1/3", "%s: %q is no share", key, clipped(n.Text))
		return [2]int64{}, false
	}
	return [2]int64{v.Num().Int64(), v.Denom().Int64()}, true
}

// maxParts bounds the parts a whole is divided in for a share.
const maxParts = 1_000_000
