package typeface

import (
	"strconv"
	"strings"
)

const (
	fractionSlash = "⁄"      // U+2044
	narrowSpace   = "\u202f" // narrow, and no line is broken at it
)

var (
	raised  = strings.NewReplacer("0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")
	lowered = strings.NewReplacer("0", "₀", "1", "₁", "2", "₂", "3", "₃", "4", "₄", "5", "₅", "6", "₆", "7", "₇", "8", "₈", "9", "₉")
)

// Fractions sets the proper fractions in words as fractions: 14 3/8 in becomes 14 ³⁄₈ in, with a narrow space
// behind the whole number at which no line breaks. Left as they are: dates (3/8/2027, 03/08), 1/x, m/s, R2/3,
// decimals, and what is no proper fraction below a thousandth, such as the thickness 5/4 of lumber.
func Fractions(words string) string {
	if !strings.Contains(words, "/") {
		return words
	}
	var b strings.Builder
	done := 0
	for i := 0; i < len(words); i++ {
		if words[i] != '/' {
			continue
		}
		from, to := i, i+1
		for from > done && isDigit(words[from-1]) {
			from--
		}
		for to < len(words) && isDigit(words[to]) {
			to++
		}
		if !proper(words[from:i], words[i+1:to]) || !alone(words, from, to) {
			continue
		}
		b.WriteString(beforeFraction(words[done:from]))
		b.WriteString(raised.Replace(words[from:i]) + fractionSlash + lowered.Replace(words[i+1:to]))
		done = to
	}
	b.WriteString(words[done:])
	return b.String()
}

// beforeFraction narrows the space between a whole number and the fraction that follows.
func beforeFraction(s string) string {
	if n := len(s); n > 1 && s[n-1] == ' ' && isDigit(s[n-2]) {
		return s[:n-1] + narrowSpace
	}
	return s
}

// proper reports whether two strings of digits make a fraction below one with a denominator below 1000.
func proper(above, below string) bool {
	if above == "" || below == "" || len(below) > 3 || above[0] == '0' || below[0] == '0' {
		return false
	}
	n, err := strconv.Atoi(above)
	d, _ := strconv.Atoi(below) // three digits at most
	return err == nil && n < d
}

// alone reports whether words[from:to] is no part of a longer word, number or date.
func alone(words string, from, to int) bool {
	before, behind := []rune(words[:from]), []rune(words[to:])
	if n := len(before); n > 0 && joins(before[n-1]) {
		return false
	}
	if len(behind) == 0 {
		return true
	}
	// a full stop ends a sentence, unless a digit follows
	if behind[0] == '.' || behind[0] == ',' {
		return len(behind) == 1 || behind[1] < '0' || behind[1] > '9'
	}
	return !joins(behind[0])
}

// joins reports whether a letter beside digits makes them part of something longer.
func joins(r rune) bool {
	return r == '/' || r == '.' || r == ',' || r == '_' || r == '⁄' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }
