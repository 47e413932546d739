package formula

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"

	"rodwright/length"
)

// lexer cuts a formula into tokens, one at a time, as the parser asks: whether a hyphen is a sign, part of
// a mixed number or a subtraction depends on what is expected where it stands.
type lexer struct {
	text     string
	at       int // bytes read
	bare     length.Unit
	declared func(string) bool
}

// offset turns a byte position into runes.
func (l *lexer) offset(at int) int { return utf8.RuneCountInString(l.text[:at]) }

func (l *lexer) fail(at int, want, format string, args ...any) *Error {
	return &Error{Offset: l.offset(at), Message: fmt.Sprintf(format, args...), Want: want}
}

func (l *lexer) rest() string { return l.text[l.at:] }

func (l *lexer) skipSpace() {
	l.at += len(l.rest()) - len(strings.TrimLeftFunc(l.rest(), unicode.IsSpace))
}

// accept moves past mark if the text goes on with it.
func (l *lexer) accept(mark string) bool {
	if strings.HasPrefix(l.rest(), mark) {
		l.at += len(mark)
		return true
	}
	return false
}

// operators are the two-sided operators with what they are called when they lack their spaces.
var operators = []struct {
	mark   string
	kind   byte
	spaced string
}{
	{"+", '+', ""}, {"*", '*', ""},
	{"-", '-', "subtraction"}, {"−", '-', "subtraction"},
	{"/", '/', "division"},
}

// operator reads a two-sided operator and where it stands. Kind is 0 where there is none: at the end, a
// bracket or a semicolon.
func (l *lexer) operator() (kind byte, at int, err *Error) {
	start := l.at
	l.skipSpace()
	at = l.at
	rest := l.rest()
	if rest == "" || strings.ContainsRune(");", rune(rest[0])) {
		return 0, at, nil
	}
	for _, op := range operators {
		if !l.accept(op.mark) {
			continue
		}
		next, _ := utf8.DecodeRuneInString(l.rest())
		if op.spaced != "" && (at == start || !unicode.IsSpace(next)) {
			return 0, at, l.fail(at, fmt.Sprintf("write a %s b", op.mark), "%s needs a space on both sides", op.spaced)
		}
		return op.kind, at, nil
	}
	return 0, at, l.strangeOperator(at)
}

// strangeOperator says what is wrong where an operator should stand.
func (l *lexer) strangeOperator(at int) *Error {
	r, _ := utf8.DecodeRuneInString(l.text[at:])
	switch {
	case r == '×' || r == '·':
		return l.fail(at, "write a * b", "%q is not read as times here", r)
	case r == '÷' || r == ':':
		return l.fail(at, "write a / b", "%q is not read as divided by", r)
	case r == ',':
		return l.fail(at, "separate arguments with ;", "unexpected ','")
	case unicode.IsLetter(r) || unicode.IsDigit(r) || r == '(':
		word := l.text[at:]
		if i := strings.IndexFunc(word, func(r rune) bool { return !inWord(r) }); i > 0 {
			word = word[:i]
		} else if i == 0 {
			word = string(r)
		}
		return l.fail(at, "put + - * or / between two values", "an operator is missing before %q", word)
	}
	return l.fail(at, "write for example low level + 21 in", "unexpected %q", r)
}

// inWord reports whether r may stand inside a word of a name.
func inWord(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune("-'’_.", r)
}

// number reads a length or a plain number. The text handed to length.Scan ends where the literal must
// end, so that 6 ft - 2 in is a subtraction and 1' 2 + 3 in adds to one foot two.
func (l *lexer) number() (lit literal, err *Error) {
	start := l.at
	part := l.rest()[:literalEnd(l.rest())]
	_, plainRest, why := length.ScanNumber(part)
	if why != "" {
		return lit, l.fail(start+len(part)-len(plainRest), "write for example 14 3/8 in or 365 mm", "%s", strings.TrimSuffix(why, ","))
	}
	nm, rest, why := length.Scan(part, l.bare)
	if why != "" {
		return lit, l.fail(start+len(part)-len(rest), "write for example 14 3/8 in or 365 mm", "%s", strings.TrimSuffix(why, ","))
	}
	l.at = start + len(part) - len(rest)
	lit = literal{at: l.offset(start), v: value{rat: nm, isLength: true}}
	if rest == plainRest { // no unit was read
		n, _, _ := length.ScanNumber(part)
		lit.v = value{rat: n}
		return lit, nil
	}
	lit.unit = unitAt(strings.TrimSpace(part[:len(part)-len(rest)]))
	return lit, nil
}

// literalEnd returns how many bytes of text can belong to a literal that begins it.
func literalEnd(text string) int {
	spaced := false
	for i, r := range text {
		switch {
		case strings.ContainsRune("+*()×·÷;,:", r):
			return i
		case spaced && strings.ContainsRune("-−/", r):
			return i
		}
		spaced = unicode.IsSpace(r)
	}
	return len(text)
}

// unitAt returns the unit a literal ends with; feet and inches together count as inches.
func unitAt(literal string) length.Unit {
	word := literal[len(strings.TrimRightFunc(literal, unicode.IsLetter)):]
	if u, ok := length.UnitOf(word); ok {
		return u
	}
	for _, mark := range []string{"'", "′", "’"} {
		if strings.HasSuffix(literal, mark) && !strings.HasSuffix(literal, "''") {
			return length.Ft
		}
	}
	return length.In
}

// name reads the longest declared name that the text goes on with.
func (l *lexer) name() (string, *Error) {
	start := l.at
	found, end := "", start
	var words []string
	for at := start; at < len(l.text); {
		word := l.word(at)
		if word == "" {
			break
		}
		at += len(word)
		words = append(words, word)
		if joined := strings.Join(words, " "); l.declared(joined) {
			found, end = joined, at
		}
		at += len(l.text[at:]) - len(strings.TrimLeftFunc(l.text[at:], unicode.IsSpace))
	}
	if found == "" {
		return "", l.unknown(start, words)
	}
	l.at = end
	return found, nil
}

// word returns the word that begins at the given byte, empty when none does.
func (l *lexer) word(at int) string {
	rest := l.text[at:]
	end := strings.IndexFunc(rest, func(r rune) bool { return !inWord(r) })
	if end < 0 {
		end = len(rest)
	}
	if r, _ := utf8.DecodeRuneInString(rest); !unicode.IsLetter(r) && !unicode.IsDigit(r) {
		return ""
	}
	return rest[:end]
}

func (l *lexer) unknown(at int, words []string) *Error {
	name := strings.Join(words, " ")
	want := "name it under sizes"
	if strings.Contains(name, "-") {
		want += "; subtraction has a space on both sides"
	}
	e := l.fail(at, want, "there is no size named %q", name)
	e.Unknown = name
	return e
}

// literal is a written length or number.
type literal struct {
	at   int
	v    value
	unit length.Unit // as written, for a length
}

func (n literal) offset() int { return n.at }

func (n literal) value(scope) (value, *Error) {
	return value{rat: new(big.Rat).Set(n.v.rat), isLength: n.v.isLength}, nil
}
