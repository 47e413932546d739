package quantity

import (
	"fmt"
	"strings"

	"rodwright/figure"
	"rodwright/length"
)

// parseLength reads a length with its unit. Nought needs none.
func parseLength(t string) (Value, string) {
	l, err := length.Parse(t, length.In)
	if err != nil {
		if n, symbol, why := scanNumber(t); why == "" && n == n && symbol != "" {
			if other, known := kindOf(symbol); known && other != Length {
				return Value{}, wrongUnit(symbol, Length)
			}
		}
		return Value{}, reason(err)
	}
	// Two readings that differ show that a number stands without its unit.
	if mm, err := length.Parse(t, length.MM); err != nil || mm != l {
		return Value{}, "the unit is missing (" + Units(Length) + ")"
	}
	return Value{Length: l, Number: l.MM(), Imperial: !strings.HasSuffix(t, "m")}, ""
}

// reason returns what package length found wrong, without the text that [Error] shows anyway.
func reason(err error) string {
	if e, ok := err.(*length.ParseError); ok {
		return fmt.Sprintf("%s at character %d", e.Why, e.Offset+1)
	}
	return err.Error()
}

// parseRough reads 8/4 as two inches, or a length.
func parseRough(t string) (Value, string) {
	if n, ok := strings.CutSuffix(t, "/4"); ok && allDigits(n) {
		return parseLength(t + " in")
	}
	return parseLength(t)
}

func allDigits(t string) bool {
	return t != "" && len(t) <= 3 && strings.Trim(t, "0123456789") == ""
}

// cutTimes parts 91 in x 28 in at its sign of multiplication.
func cutTimes(t string) (a, b string, ok bool) {
	for _, sign := range []string{"x", "×", "*"} {
		if a, b, ok = strings.Cut(t, sign); ok {
			return strings.TrimSpace(a), strings.TrimSpace(b), true
		}
	}
	return "", "", false
}

func parseProduct(a, b string) (Value, string) {
	first, why := parseLength(a)
	if why != "" {
		return Value{}, "first side: " + why
	}
	second, why := parseLength(b)
	if why != "" {
		return Value{}, "second side: " + why
	}
	return Value{Number: first.Number * second.Number / 1e6, Imperial: first.Imperial}, ""
}

// parseMix reads 2:1 as the number of parts to one part; a number alone is parts to one.
func parseMix(t string) (Value, string) {
	a, b, ok := strings.Cut(t, ":")
	if !ok {
		b = "1"
	}
	first, why := parseNumber(strings.TrimSpace(a), Money)
	if why != "" {
		return Value{}, "before the colon: " + why
	}
	second, why := parseNumber(strings.TrimSpace(b), Money)
	if why != "" {
		return Value{}, "behind the colon: " + why
	}
	if first.Number <= 0 || second.Number <= 0 {
		return Value{}, "both parts must be above nought"
	}
	return Value{Number: first.Number / second.Number}, ""
}

// amounts are the kinds that an Amount may be, besides a bare number and board feet, and the unit each
// is kept in.
var amounts = []struct {
	kind Kind
	unit figure.Unit
}{{Length, figure.MM}, {Area, figure.M2}, {Volume, figure.ML}, {Mass, figure.Kg}}

func parseAmount(t string) (Value, string) {
	v, why := parseNumber(t, Amount)
	if why == "" {
		v.Unit = figure.Count
		if v.Imperial {
			v.Unit = figure.BoardFeet
		}
		return v, ""
	}
	for _, a := range amounts {
		if v, other := parse(t, a.kind); other == "" {
			v.Unit = a.unit
			return v, ""
		}
	}
	return Value{}, why
}
