package wire

import (
	"errors"
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"rodwright/cut"
	"rodwright/length"
)

// decoder turns JSON values into the values of a problem. It keeps the first error and goes on with zero
// values, so that its users need not ask after every field.
type decoder struct {
	file, src string
	unit      length.Unit
	places    map[string]int // path of a value → offset
	err       error
}

func newDecoder(file string, src []byte) (*decoder, *value) {
	d := &decoder{file: file, src: strings.TrimPrefix(string(src), "\ufeff"), places: map[string]int{}}
	v, err := parse(d.src)
	var se *syntaxError
	if errors.As(err, &se) {
		d.fail(se.at, se.why, "")
		return d, nil
	}
	return d, v
}

func (d *decoder) fail(at int, message, want string) {
	if d.err == nil {
		line, col := place(d.src, at)
		d.err = &Error{d.file, line, col, message, want}
	}
}

// checked returns the first error of reading, or else of what the problem itself finds wrong, with its
// place.
func (d *decoder) checked(check func() error) error {
	if d.err != nil {
		return d.err
	}
	var fe *cut.FieldError
	if err := check(); errors.As(err, &fe) {
		d.fail(d.placeOf(fe.Path), fe.Error(), "")
	}
	return d.err
}

// placeOf returns the place of a path, or of the nearest value around it.
func (d *decoder) placeOf(path string) int {
	for p := path; p != ""; {
		if at, ok := d.places[p]; ok {
			return at
		}
		p = p[:max(0, strings.LastIndexAny(p, ".["))]
	}
	return 0
}

// node is an object being read: every key must be asked for, or it is unknown.
type node struct {
	d     *decoder
	v     *value
	path  string
	known []string
}

// object returns v as an object; when it is none, an empty one.
func (d *decoder) object(v *value, path string) *node {
	if v == nil {
		return &node{d: d, v: &value{form: object}, path: path}
	}
	d.places[path] = v.at
	if v.form != object {
		d.fail(v.at, fmt.Sprintf("%s is %s, not an object", named(path), v.form), "{…}")
		return &node{d: d, v: &value{form: object, at: v.at}, path: path}
	}
	for i, f := range v.fields {
		if slices.ContainsFunc(v.fields[:i], func(g field) bool { return g.key == f.key }) {
			d.fail(f.at, fmt.Sprintf("the key %q stands twice", f.key), "")
		}
	}
	return &node{d: d, v: v, path: path}
}

func named(path string) string {
	if path == "" {
		return "the file"
	}
	return path
}

func (n *node) sub(key string) string {
	if n.path == "" {
		return key
	}
	return n.path + "." + key
}

// field returns the value of a key, nil when it is missing, and notes the key as known.
func (n *node) field(key string) *value {
	n.known = append(n.known, key)
	for _, f := range n.v.fields {
		if f.key == key {
			n.d.places[n.sub(key)] = f.v.at
			return f.v
		}
	}
	return nil
}

// end reports the first key that nobody asked for.
func (n *node) end() {
	for _, f := range n.v.fields {
		if !slices.Contains(n.known, f.key) {
			n.d.fail(f.at, fmt.Sprintf("unknown key %q", f.key), nearest(f.key, n.known))
			return
		}
	}
}

// wrongForm reports a value of another kind than wanted.
func (n *node) wrongForm(v *value, key, want string) {
	n.d.fail(v.at, fmt.Sprintf("%s is %s", n.sub(key), v.form), want)
}

// length reads a length; a missing or null one is 0.
func (n *node) length(key string) length.Length {
	v := n.field(key)
	if v == nil || v.form == null {
		return 0
	}
	return n.d.lengthOf(v, n.sub(key))
}

func (d *decoder) lengthOf(v *value, path string) length.Length {
	d.places[path] = v.at
	switch v.form {
	case number:
		l, ok := numberLength(v.raw, d.unit)
		if !ok {
			d.fail(v.at, path+" is more than 1 km", "")
		}
		return l
	case text:
		l, err := length.Parse(v.raw, d.unit)
		if err != nil {
			d.fail(v.at, path+": "+err.Error(), "")
		}
		return l
	}
	d.fail(v.at, fmt.Sprintf("%s is %s", path, v.form), `a length, such as 317.6 or "14 3/8"`)
	return 0
}

// numberLength reads a JSON number of units, exact, rounded once to the nanometre.
func numberLength(raw string, u length.Unit) (length.Length, bool) {
	f, err := strconv.ParseFloat(raw, 64)
	if err != nil || f > 1e12 || f < -1e12 {
		return 0, false
	}
	if f != 0 && (f < 1e-12 && f > -1e-12) || len(raw) > 64 {
		return length.FromRat(new(big.Rat).Mul(new(big.Rat).SetFloat64(f), u.Size().Rat()))
	}
	r, ok := new(big.Rat).SetString(raw)
	if !ok {
		return 0, false
	}
	return length.FromRat(r.Mul(r, u.Size().Rat()))
}

// float reads a number; absent says whether it is missing or null.
func (n *node) float(key string) (f float64, absent bool) {
	v := n.field(key)
	if v == nil || v.form == null {
		return 0, true
	}
	if v.form != number {
		n.wrongForm(v, key, "a number")
		return 0, true
	}
	f, err := strconv.ParseFloat(v.raw, 64)
	if err != nil {
		n.d.fail(v.at, n.sub(key)+" is too large", "")
	}
	return f, false
}

func (n *node) price(key string) cut.Price {
	f, absent := n.float(key)
	if absent {
		return cut.Price{}
	}
	return cut.Priced(f)
}

// count reads a whole number; where it is missing or null, it is otherwise.
func (n *node) count(key string, otherwise cut.Count) cut.Count {
	v := n.field(key)
	if v == nil || v.form == null {
		return otherwise
	}
	if v.form != number {
		n.wrongForm(v, key, "a whole number")
		return 0
	}
	f, err := strconv.ParseFloat(v.raw, 64)
	switch {
	case err != nil || f > 1e15 || f < -1e15:
		n.d.fail(v.at, fmt.Sprintf("%s is far too large", n.sub(key)), fmt.Sprintf("a whole number up to %d", cut.MaxPieces))
		return 0
	case f != float64(int(f)):
		n.d.fail(v.at, fmt.Sprintf("%s is %s", n.sub(key), v.raw), "a whole number")
		return 0
	case f < 0:
		n.d.fail(v.at, fmt.Sprintf("%s can't be negative, is %s", n.sub(key), v.raw), "")
		return 0
	}
	return cut.Count(f)
}

// text reads a text; where it is missing or null, it is otherwise.
func (n *node) text(key, otherwise string) string {
	v := n.field(key)
	if v == nil || v.form == null {
		return otherwise
	}
	if v.form != text {
		n.wrongForm(v, key, "a text in quotes")
		return otherwise
	}
	return v.raw
}

// flag reads true or false; where it is missing or null, false.
func (n *node) flag(key string) bool {
	v := n.field(key)
	if v == nil || v.form == null {
		return false
	}
	if v.form != boolean {
		n.wrongForm(v, key, "true or false")
	}
	return v.raw == "true"
}

// each calls read for every element of a list; a missing or null one has none.
func (n *node) each(key string, read func(v *value, path string)) {
	v := n.field(key)
	if v == nil || v.form == null {
		return
	}
	if v.form != array {
		n.wrongForm(v, key, "a list [ … ]")
		return
	}
	for i, e := range v.list {
		if n.d.err != nil {
			return
		}
		read(e, fmt.Sprintf("%s[%d]", n.sub(key), i))
	}
}

// pair reads a list of two lengths; a missing one is 0, 0.
func (n *node) pair(key string) (out [2]length.Length) {
	v := n.field(key)
	if v == nil || v.form == null {
		return out
	}
	if v.form != array || len(v.list) != 2 {
		n.wrongForm(v, key, "two lengths, such as [300, 150]")
		return out
	}
	for i := range out {
		out[i] = n.d.lengthOf(v.list[i], fmt.Sprintf("%s[%d]", n.sub(key), i))
	}
	return out
}

// readUnit reads the unit, which must be there.
func (n *node) readUnit() {
	v := n.field("unit")
	if v == nil {
		for _, f := range n.v.fields {
			if edits(f.key, "unit") <= 2 {
				n.d.fail(f.at, fmt.Sprintf("unknown key %q", f.key), `"unit"`)
				return
			}
		}
		n.d.fail(n.v.at, `the key "unit" is missing`, `"unit": "mm" or "unit": "in"`)
		return
	}
	u, ok := length.UnitOf(v.raw)
	if v.form != text || !ok || u != length.MM && u != length.In {
		n.d.fail(v.at, "unit is no unit of lengths", `"mm" or "in"`)
	}
	n.d.unit = u
}
