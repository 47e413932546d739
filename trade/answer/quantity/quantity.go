// Package quantity reads the values that are asked for at the bench, each with its unit: 20 1/4 in, 80 lb,
// 45 %, 12 m2/L, 8/4.
//
// A value whose unit is missing, unknown or of the wrong kind is refused with an [Error] that says what
// was got and what is taken; nothing is guessed. Start with [Parse]. The package knows units, not topics.
package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rodwright/figure"
	"rodwright/length"
)

// Value is one quantity. Number is in the base unit of its kind (see [Kind]).
type Value struct {
	Kind     Kind
	Number   float64
	Length   length.Length // for Length and Rough, and for an Amount that is a length: the exact length
	Unit     figure.Unit   // for an Amount: what its number counts
	Text     string        // as it was written, without spaces around it
	Imperial bool          // written in inches, pounds, quarts …
}

// Error says what text could not be read as a value of a kind, and why.
type Error struct {
	Text string
	Kind Kind
	Why  string
}

// Error gives the text, the reason and what is taken instead.
func (e *Error) Error() string {
	return fmt.Sprintf("got %q: %s; takes %s, for example %s", e.Text, e.Why, e.Kind, e.Kind.Example())
}

// Parse reads text as a value of kind k. Numbers may be decimals, fractions or mixed numbers.
func Parse(text string, k Kind) (Value, error) {
	t := strings.TrimSpace(text)
	if t == "" {
		return Value{}, &Error{text, k, "there is nothing behind the equals sign"}
	}
	v, why := parse(t, k)
	if why != "" {
		return Value{}, &Error{text, k, why}
	}
	v.Kind, v.Text = k, t
	return v, nil
}

func parse(t string, k Kind) (Value, string) {
	switch k {
	case Length:
		return parseLength(t)
	case Rough:
		return parseRough(t)
	case Area:
		if a, b, ok := cutTimes(t); ok {
			return parseProduct(a, b)
		}
	case Mix:
		return parseMix(t)
	case Amount:
		return parseAmount(t)
	case Gauge:
		t = strings.TrimSpace(strings.TrimPrefix(t, "#"))
	}
	v, why := parseNumber(t, k)
	if why == "" && (k == Count || k == Gauge) && v.Number != math.Trunc(v.Number) {
		return Value{}, "not a whole number"
	}
	return v, why
}

// parseNumber reads a number and the unit behind it.
func parseNumber(t string, k Kind) (Value, string) {
	n, symbol, why := scanNumber(t)
	if why != "" {
		return Value{}, why
	}
	u, ok := unitOf(k, symbol)
	if !ok {
		return Value{}, wrongUnit(symbol, k)
	}
	n = n*u.size + u.zero
	if math.Abs(n) > greatest {
		return Value{}, "too large a number"
	}
	return Value{Number: n, Imperial: u.imperial}, ""
}

// greatest bounds the numbers that are read, far above anything in a shop, so that products of several
// stay finite.
const greatest = 1e12

// scanNumber reads a signed number from the start of t and returns what stands behind it.
func scanNumber(t string) (n float64, rest, why string) {
	sign := 1.0
	for _, s := range []string{"-", "−", "+"} {
		if after, ok := strings.CutPrefix(t, s); ok {
			if s != "+" {
				sign = -1
			}
			t = strings.TrimLeft(after, " ")
			break
		}
	}
	r, rest, why := length.ScanNumber(t)
	if why != "" {
		return 0, "", why
	}
	n, _ = r.Float64()
	if e, after, ok := scanExponent(rest); ok {
		n, rest = n*math.Pow10(e), after
	}
	return sign * n, strings.TrimSpace(rest), ""
}

// scanExponent reads the power of ten in 1.24e6, of at most two digits.
func scanExponent(t string) (e int, rest string, ok bool) {
	if t == "" || t[0] != 'e' && t[0] != 'E' {
		return 0, t, false
	}
	end := 1
	if end < len(t) && (t[end] == '-' || t[end] == '+') {
		end++
	}
	for end < len(t) && t[end] >= '0' && t[end] <= '9' {
		end++
	}
	e, err := strconv.Atoi(t[1:end])
	return e, t[end:], err == nil && e > -100 && e < 100
}

// wrongUnit says what is the matter with a unit that does not belong to kind k.
func wrongUnit(symbol string, k Kind) string {
	other, known := kindOf(symbol)
	switch {
	case symbol == "":
		return "the unit is missing (" + Units(k) + ")"
	case Units(k) == "none":
		return fmt.Sprintf("%q behind the number, which is plain", symbol)
	case known:
		return fmt.Sprintf("%s is the unit of %s, wanted is one of %s", symbol, plain(other), Units(k))
	}
	return fmt.Sprintf("unit %q is not one of %s", symbol, Units(k))
}

// plain names a kind without the alternatives it allows: a force, not a force or a mass.
func plain(k Kind) string {
	name, _, _ := strings.Cut(k.String(), ",")
	name, _, _ = strings.Cut(name, " or ")
	return name
}
