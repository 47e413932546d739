package length

import (
	"fmt"
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// ParseError says what text could not be read as a length, where, and what would have been read.
type ParseError struct {
	Text   string // the whole text
	Offset int    // where reading stopped, in runes from the start of Text
	Why    string // what was wrong there
}

// Error gives the text, the place counted from 1, and examples of what is read.
func (e *ParseError) Error() string {
	return fmt.Sprintf("%q is not a length: %s at character %d; write for example 14 3/8 in, 1' 2 3/8\" or 365 mm",
		e.Text, e.Why, e.Offset+1)
}

// Parse reads one length as a maker types it. A number without a unit takes the unit bare.
//
// Read are whole numbers, decimals, fractions and mixed numbers (14 3/8, 14-3/8, 14⅜, 3/8, ⅜, 14.375),
// followed by in, ", ″, ft, ', ′, mm, cm, m or nothing; feet may be followed by inches (1' 2 3/8"). A
// hyphen between a whole number and a fraction makes a mixed number. A leading - or − makes it negative.
// Anything else is a *ParseError.
func Parse(text string, bare Unit) (Length, error) {
	s := strings.TrimSpace(text)
	lead := utf8.RuneCountInString(text[:strings.Index(text, s)])
	negative := false
	rest := s
	for _, sign := range []string{"-", "−"} {
		if after, ok := strings.CutPrefix(rest, sign); ok {
			negative, rest = true, strings.TrimLeft(after, " ")
			break
		}
	}
	at := func(tail string) int { return lead + utf8.RuneCountInString(s) - utf8.RuneCountInString(tail) }
	value, tail, why := Scan(rest, bare)
	if why == "" && strings.TrimSpace(tail) != "" {
		why = "unexpected " + fmt.Sprintf("%q", firstRune(strings.TrimLeft(tail, " ")))
		tail = strings.TrimLeft(tail, " ")
	}
	if why != "" {
		return 0, &ParseError{Text: text, Offset: at(tail), Why: why}
	}
	l, ok := FromRat(value)
	if !ok {
		return 0, &ParseError{Text: text, Offset: lead, Why: "more than 1 km"}
	}
	if negative {
		l = -l
	}
	return l, nil
}

// Scan reads a length without a sign from the start of text and returns it in nanometres, exact, with the
// text behind it. A number without a unit takes the unit bare. When nothing can be read, why is not
// empty and rest begins at the place of the trouble.
func Scan(text string, bare Unit) (value *big.Rat, rest string, why string) {
	num, rest, why := ScanNumber(text)
	if why != "" {
		return nil, rest, why
	}
	unit, after, ok := scanUnit(rest)
	if !ok {
		return num.Mul(num, bare.Size().Rat()), rest, ""
	}
	value = num.Mul(num, unit.Size().Rat())
	if unit != Ft {
		return value, after, ""
	}
	inches, tail, ok := scanInches(after)
	if ok {
		return value.Add(value, inches), tail, ""
	}
	return value, after, ""
}

// scanInches reads the inches that may follow feet, as in 1' 2 3/8". Their unit must be there or the
// text must end: 6 ft 2 mm would be two lengths. A hyphen may be glued between feet and inches; with a
// space before or behind it is a subtraction and not part of a length.
func scanInches(text string) (value *big.Rat, rest string, ok bool) {
	t, glued := strings.CutPrefix(text, "-")
	if !glued {
		t = strings.TrimLeft(text, " ")
	}
	if glued && strings.HasPrefix(t, " ") {
		return nil, text, false
	}
	num, tail, why := ScanNumber(t)
	if why != "" {
		return nil, text, false
	}
	if u, after, found := scanUnit(tail); found {
		if u != In {
			return nil, text, false
		}
		tail = after
	} else if strings.TrimSpace(tail) != "" {
		return nil, text, false
	}
	return num.Mul(num, Inch.Rat()), tail, true
}

// scanUnit reads a unit symbol, with or without spaces before it.
func scanUnit(text string) (u Unit, rest string, ok bool) {
	t := strings.TrimLeft(text, " \u00a0\u202f") // a space, or one that keeps number and unit on one line
	for _, mark := range []struct {
		text string
		unit Unit
	}{{`"`, In}, {"″", In}, {"”", In}, {"''", In}, {"'", Ft}, {"′", Ft}, {"’", Ft}} {
		if after, found := strings.CutPrefix(t, mark.text); found {
			return mark.unit, after, true
		}
	}
	word := t[:len(t)-len(strings.TrimLeftFunc(t, unicode.IsLetter))]
	u, ok = UnitOf(word)
	return u, t[len(word):], ok
}

// glyphs are the fractions that Unicode gives a character of their own.
var glyphs = map[rune][2]int64{
	'½': {1, 2}, '¼': {1, 4}, '¾': {3, 4}, '⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
	'⅓': {1, 3}, '⅔': {2, 3}, '⅕': {1, 5}, '⅖': {2, 5}, '⅗': {3, 5}, '⅘': {4, 5}, '⅙': {1, 6}, '⅚': {5, 6},
}

// maxDigits bounds a run of digits, so that a hostile text can't build numbers without end.
const maxDigits = 18

// ScanNumber reads a whole number, decimal, fraction or mixed number without sign or unit from the start
// of text. When nothing can be read, why is not empty and rest begins at the place of the trouble.
func ScanNumber(text string) (value *big.Rat, rest string, why string) {
	t := strings.TrimLeft(text, " ")
	if f, after, ok := scanFraction(t); ok {
		return f, after, ""
	}
	whole, after := digits(t)
	if whole == "" && !strings.HasPrefix(after, ".") {
		return nil, t, "a number is missing"
	}
	if len(whole) > maxDigits {
		return nil, t, "too many digits"
	}
	if dec, ok := strings.CutPrefix(after, "."); ok {
		return scanDecimal(t, whole, dec)
	}
	value = number(whole)
	if bar, broken := brokenFraction(t); broken {
		return nil, bar, fractionRule
	}
	part := strings.TrimLeft(after, " ")
	if p, ok := strings.CutPrefix(after, "-"); ok {
		part = p
	}
	if f, tail, ok := scanFraction(part); ok {
		if f.Cmp(big.NewRat(1, 1)) >= 0 {
			return nil, part, "the fraction of a mixed number must be below one"
		}
		return value.Add(value, f), tail, ""
	}
	if bar, broken := brokenFraction(part); broken {
		return nil, bar, fractionRule
	}
	return value, after, ""
}

const fractionRule = "a fraction needs whole numbers above and below, the lower not zero,"

// brokenFraction reports whether t begins with digits and a fraction bar, where no fraction could be
// read, and returns the text from the bar on.
func brokenFraction(t string) (bar string, broken bool) {
	over, after := digits(t)
	return after, over != "" && (strings.HasPrefix(after, "/") || strings.HasPrefix(after, "⁄"))
}

func scanDecimal(from, whole, dec string) (*big.Rat, string, string) {
	frac, after := digits(dec)
	if frac == "" {
		return nil, dec, "digits are missing behind the point"
	}
	if len(frac) > maxDigits {
		return nil, from, "too many digits"
	}
	if whole == "" {
		whole = "0"
	}
	v, _ := new(big.Rat).SetString(whole + "." + frac)
	return v, after, ""
}

// scanFraction reads n/d or n⁄d written without spaces, or one fraction character.
func scanFraction(t string) (*big.Rat, string, bool) {
	r, size := utf8.DecodeRuneInString(t)
	if f, ok := glyphs[r]; ok {
		return big.NewRat(f[0], f[1]), t[size:], true
	}
	over, after := digits(t)
	if over == "" || len(over) > maxDigits {
		return nil, t, false
	}
	bar, size := utf8.DecodeRuneInString(after)
	if bar != '/' && bar != '⁄' {
		return nil, t, false
	}
	under, tail := digits(after[size:])
	if under == "" || len(under) > maxDigits || strings.Trim(under, "0") == "" {
		return nil, t, false
	}
	return new(big.Rat).Quo(number(over), number(under)), tail, true
}

func digits(t string) (run, rest string) {
	n := 0
	for n < len(t) && t[n] >= '0' && t[n] <= '9' {
		n++
	}
	return t[:n], t[n:]
}

// number reads digits as a decimal number, also with zeros before it: big.Rat's own reader takes 010/16
// for an octal fraction.
func number(digits string) *big.Rat {
	v, _ := new(big.Int).SetString(digits, 10)
	return new(big.Rat).SetInt(v)
}

func firstRune(t string) string {
	r, _ := utf8.DecodeRuneInString(t)
	return string(r)
}
