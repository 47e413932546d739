// Package formula reads and works out the formulas of a piece document: `low level + 21 in`,
// `(length - 3 in) / 2`, `max(depth; 19 in)`.
//
// # What is read
//
// A formula is made of lengths as [length.Scan] reads them (14 3/8 in, 14-3/8", 1' 2 3/8", 365 mm, ⅜),
// plain numbers, names of sizes, + − * / ( ) and min( ; ) max( ; ). Arguments are separated by
// semicolons, as a comma separates entries of the document. Subtraction and division have a space on both
// sides: a hyphen glued between a whole number and a fraction makes a mixed number, and digits/digits is a
// fraction. Where several names fit, the longest wins.
//
// # Dimensions
//
// A value is a length or a number. Length × number, length ÷ number and length ± length are lengths; a
// product or a quotient of two lengths is an error with its place. A number without a unit stays a number
// until it is added to, taken from or compared with a length, or is itself the answer where a length is
// wanted: then it takes the document's unit. So `2 * side inset` is twice the inset, and `21` is 21 in.
//
// # Rounding
//
// Everything is worked out in rationals and rounded once, halves to even, to the nanometre.
package formula

import (
	"math/big"

	"rodwright/length"
)

// Formula is a formula that was read; it can be worked out any number of times.
type Formula struct {
	root  node
	names []string
	bare  length.Unit
}

// Error is one thing wrong in a formula.
type Error struct {
	Offset  int    // where, in runes from the start of the text
	Message string // what is wrong there
	Want    string // what would be right; may be empty
	Unknown string // the words no declared name fits, when that is what is wrong
}

// Error gives what is wrong and what would be right.
func (e *Error) Error() string {
	if e.Want == "" {
		return e.Message
	}
	return e.Message + "; " + e.Want
}

// The bounds on what is read, so that a hostile text costs no more than a long honest one.
const (
	maxRunes = 1000 // characters of one formula
	maxDepth = 50   // brackets and signs inside one another
)

// Parse reads a formula whose unitless numbers take the unit bare. Declared reports whether a name is a
// size of the document. What can't be read is an *[Error].
func Parse(text string, bare length.Unit, declared func(name string) bool) (*Formula, error) {
	p := parser{lexer: lexer{text: text, bare: bare, declared: declared}}
	root, err := p.whole()
	if err != nil {
		return nil, err
	}
	return &Formula{root: root, names: p.used, bare: bare}, nil
}

// Names returns the sizes the formula uses, each once, in the order of the text.
func (f *Formula) Names() []string { return f.names }

// Length works the formula out. Size gives the value of a declared name. A mistake of units, a division
// by zero or a result beyond ±[length.Max] is an *[Error].
func (f *Formula) Length(size func(name string) length.Length) (length.Length, error) {
	v, err := f.root.value(scope{size: size, bare: f.bare})
	if err != nil {
		return 0, err
	}
	l, ok := length.FromRat(v.asLength(f.bare))
	if !ok {
		return 0, &Error{Offset: f.root.offset(), Message: "the result is more than 1 km", Want: "check the units"}
	}
	return l, nil
}

// Literal reports the unit a formula that is a single written length ends with; ok is false for a number
// without a unit, a name, or anything longer. It lets 13 × 15 × 3 in give its unit to all three.
func (f *Formula) Literal() (unit length.Unit, ok bool) {
	lit, isLiteral := f.root.(literal)
	if !isLiteral || !lit.v.isLength {
		return 0, false
	}
	return lit.unit, true
}

// Bare reports whether the formula is a single number without a unit.
func (f *Formula) Bare() bool {
	lit, isLiteral := f.root.(literal)
	return isLiteral && !lit.v.isLength
}

// Eval reads and works out text in one go, for a formula that uses no sizes.
func Eval(text string, bare length.Unit) (length.Length, error) {
	f, err := Parse(text, bare, func(string) bool { return false })
	if err != nil {
		return 0, err
	}
	return f.Length(func(string) length.Length { return 0 })
}

// value is a quantity on the way: nanometres for a length, else a pure number.
type value struct {
	rat      *big.Rat
	isLength bool
}

// asLength returns v in nanometres; a number takes the unit bare.
func (v value) asLength(bare length.Unit) *big.Rat {
	if v.isLength {
		return v.rat
	}
	return new(big.Rat).Mul(v.rat, bare.Size().Rat())
}
