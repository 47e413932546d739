package formula

import (
	"math/big"

	"rodwright/length"
)

// scope is what a formula is worked out in.
type scope struct {
	size func(name string) length.Length
	bare length.Unit
}

// node is one part of a formula that was read.
type node interface {
	value(scope) (value, *Error)
	offset() int
}

// named is a size.
type named struct {
	at   int
	name string
}

func (n named) offset() int { return n.at }

func (n named) value(s scope) (value, *Error) {
	return value{rat: s.size(n.name).Rat(), isLength: true}, nil
}

// negative is an operand with a minus before it.
type negative struct {
	at    int
	inner node
}

func (n negative) offset() int { return n.at }

func (n negative) value(s scope) (value, *Error) {
	v, err := n.inner.value(s)
	if err != nil {
		return v, err
	}
	v.rat.Neg(v.rat)
	return v, nil
}

// binary is a sum, difference, product or quotient.
type binary struct {
	kind        byte
	at          int // of the operator
	left, right node
}

func (n binary) offset() int { return n.left.offset() }

func (n binary) value(s scope) (value, *Error) {
	a, err := n.left.value(s)
	if err != nil {
		return a, err
	}
	b, err := n.right.value(s)
	if err != nil {
		return b, err
	}
	switch n.kind {
	case '*':
		return n.times(a, b)
	case '/':
		return n.over(a, b)
	}
	a, b = alike(a, b, s.bare)
	if n.kind == '-' {
		a.rat.Sub(a.rat, b.rat)
	} else {
		a.rat.Add(a.rat, b.rat)
	}
	return a, nil
}

// alike gives two values that are to be added or compared one dimension: a number beside a length takes
// the document's unit.
func alike(a, b value, bare length.Unit) (value, value) {
	if a.isLength == b.isLength {
		return a, b
	}
	return value{a.asLength(bare), true}, value{b.asLength(bare), true}
}

func (n binary) times(a, b value) (value, *Error) {
	if a.isLength && b.isLength {
		return a, n.unitError("a length times a length is an area", "multiply a length by a number without a unit")
	}
	return value{new(big.Rat).Mul(a.rat, b.rat), a.isLength || b.isLength}, nil
}

func (n binary) over(a, b value) (value, *Error) {
	if b.isLength {
		what := "a number divided by a length is no length"
		if a.isLength {
			what = "a length divided by a length is no length"
		}
		return a, n.unitError(what, "divide a length by a number without a unit")
	}
	if b.rat.Sign() == 0 {
		return a, &Error{Offset: n.right.offset(), Message: "division by zero", Want: "divide by a number that is not zero"}
	}
	return value{new(big.Rat).Quo(a.rat, b.rat), a.isLength}, nil
}

func (n binary) unitError(message, want string) *Error {
	return &Error{Offset: n.at, Message: message, Want: want}
}

// extreme is min or max of its arguments.
type extreme struct {
	at       int
	function string
	args     []node
}

func (n extreme) offset() int { return n.at }

func (n extreme) value(s scope) (value, *Error) {
	best, err := n.args[0].value(s)
	if err != nil {
		return best, err
	}
	for _, arg := range n.args[1:] {
		v, err := arg.value(s)
		if err != nil {
			return v, err
		}
		best, v = alike(best, v, s.bare)
		if c := v.rat.Cmp(best.rat); c < 0 && n.function == "min" || c > 0 && n.function == "max" {
			best = v
		}
	}
	return best, nil
}
