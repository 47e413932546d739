package formula

import (
	"unicode"
	"unicode/utf8"
)

// parser is a Pratt parser: an operand, then operators as long as they bind tighter than the caller's.
type parser struct {
	lexer
	used  []string
	depth int
}

// binding is how tightly an operator holds its operands.
func binding(kind byte) int {
	if kind == '*' || kind == '/' {
		return 2
	}
	return 1
}

func (p *parser) whole() (node, error) {
	if utf8.RuneCountInString(p.text) > maxRunes {
		return nil, &Error{Offset: maxRunes, Message: "the formula is longer than 1000 characters", Want: "name its parts under sizes"}
	}
	root, err := p.expression(0)
	if err != nil {
		return nil, err
	}
	if p.skipSpace(); p.rest() != "" {
		r, _ := utf8.DecodeRuneInString(p.rest())
		return nil, p.fail(p.at, "close what is open, and nothing else", "unexpected %q", r)
	}
	return root, nil
}

// expression reads an operand and every operator behind it that binds tighter than floor.
func (p *parser) expression(floor int) (node, *Error) {
	left, err := p.operand()
	if err != nil {
		return nil, err
	}
	for {
		before := p.at
		kind, at, err := p.operator()
		if err != nil {
			return nil, err
		}
		if kind == 0 || binding(kind) <= floor {
			p.at = before
			return left, nil
		}
		right, err := p.expression(binding(kind))
		if err != nil {
			return nil, err
		}
		left = binary{kind: kind, at: p.offset(at), left: left, right: right}
	}
}

// operand reads a literal, a name, a bracket, a call, or a sign with its operand.
func (p *parser) operand() (node, *Error) {
	p.skipSpace()
	if p.depth++; p.depth > maxDepth {
		return nil, p.fail(p.at, "name its parts under sizes", "more than %d brackets and signs stand inside one another", maxDepth)
	}
	defer func() { p.depth-- }()
	start := p.at
	r, _ := utf8.DecodeRuneInString(p.rest())
	switch {
	case p.rest() == "":
		return nil, p.fail(p.at, "write for example low level + 21 in", "a value is missing")
	case p.accept("-") || p.accept("−"):
		inner, err := p.operand()
		return negative{at: p.offset(start), inner: inner}, err
	case p.accept("("):
		return p.bracket(start)
	case unicode.IsLetter(r):
		return p.word(start)
	}
	lit, err := p.number()
	if err != nil {
		return nil, err
	}
	return lit, nil
}

func (p *parser) bracket(start int) (node, *Error) {
	inner, err := p.expression(0)
	if err != nil {
		return nil, err
	}
	if p.skipSpace(); !p.accept(")") {
		return nil, p.fail(start, "write ) where it ends", "this bracket is not closed")
	}
	return inner, nil
}

// word reads min( or max( with its arguments, or a name.
func (p *parser) word(start int) (node, *Error) {
	for _, f := range []string{"min", "max"} {
		if p.accept(f + "(") {
			return p.call(f, start)
		}
	}
	name, err := p.name()
	if err != nil {
		return nil, err
	}
	p.use(name)
	return named{at: p.offset(start), name: name}, nil
}

func (p *parser) use(name string) {
	for _, n := range p.used {
		if n == name {
			return
		}
	}
	p.used = append(p.used, name)
}

// call reads the arguments of min or max, at least two, up to the closing bracket.
func (p *parser) call(function string, start int) (node, *Error) {
	n := extreme{at: p.offset(start), function: function}
	for {
		arg, err := p.expression(0)
		if err != nil {
			return nil, err
		}
		n.args = append(n.args, arg)
		p.skipSpace()
		if p.accept(")") {
			break
		}
		if !p.accept(";") {
			return nil, p.fail(start, "write "+function+"(a; b)", "the bracket of %s is not closed", function)
		}
	}
	if len(n.args) < 2 {
		return nil, p.fail(start, "write "+function+"(a; b)", "%s needs at least two values", function)
	}
	return n, nil
}
