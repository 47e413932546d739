// Package within says when a value lies outside the range where a formula of the trade holds, in words a
// maker can act on. A formula that is fed past its range gives no figure but an [*Error].
package within

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
)

// Error names a value that a formula can't take, what it was and what it takes.
type Error struct {
	Name string // the value, in the formula's words: span, specific gravity
	Got  string // the value with its unit
	Want string // what would be right
}

// Error returns the value, what was got and what would be right.
func (e *Error) Error() string { return fmt.Sprintf("%s is %s; it must be %s", e.Name, e.Got, e.Want) }

// Positive returns an error unless v is a finite number above zero.
func Positive(name string, v float64, u figure.Unit) error {
	if v > 0 && !math.IsInf(v, 1) {
		return nil
	}
	return &Error{name, show(v, u), "above 0"}
}

// NotNegative returns an error unless v is a finite number of zero or more.
func NotNegative(name string, v float64, u figure.Unit) error {
	if v >= 0 && !math.IsInf(v, 1) {
		return nil
	}
	return &Error{name, show(v, u), "0 or more"}
}

// Between returns an error unless low ≤ v ≤ high.
func Between(name string, v, low, high float64, u figure.Unit) error {
	if v >= low && v <= high {
		return nil
	}
	return &Error{name, show(v, u), "from " + figure.Digits(low, 3) + " to " + show(high, u)}
}

// Length returns an error unless l is above zero and no more than [length.Max].
func Length(name string, l length.Length) error {
	if l > 0 && l <= length.Max {
		return nil
	}
	return &Error{name, show(l.MM(), figure.MM), "above 0 and at most 1 km"}
}

// Room returns an error unless l is zero or more and no more than [length.Max].
func Room(name string, l length.Length) error {
	if l >= 0 && l <= length.Max {
		return nil
	}
	return &Error{name, show(l.MM(), figure.MM), "0 or more and at most 1 km"}
}

// Finite returns an error when v is infinite or not a number.
func Finite(name string, v float64, u figure.Unit) error {
	if !math.IsNaN(v) && !math.IsInf(v, 0) {
		return nil
	}
	return &Error{name, show(v, u), "a number"}
}

// Counted returns an error unless low ≤ n ≤ high.
func Counted(name string, n, low, high int) error {
	if n >= low && n <= high {
		return nil
	}
	return &Error{name, fmt.Sprint(n), fmt.Sprintf("from %d to %d", low, high)}
}

// show prints a value for an error. Lengths are shown unrounded, so that 0.04 mm is not told as 0.
func show(v float64, u figure.Unit) string {
	if u == figure.MM {
		return figure.Digits(v, 4) + " mm"
	}
	return figure.Show(v, u, length.HalfMM)
}

// Whole returns the least whole number that covers q, with a relative slack of 1e-9 so that a quotient that
// is whole but for its last digits is not counted one up: 12 150 ÷ 1 350 is 9. It is zero for q ≤ 0 and
// reports false when q is no number or past what can be counted.
func Whole(q float64) (n int, ok bool) {
	if math.IsNaN(q) || q > 1e9 {
		return 0, false
	}
	return int(math.Ceil(max(0, q) * (1 - 1e-9))), true
}

// Cover returns the least number of equal lengths that cover a total, both above zero. Each may be short by
// the nanometre it was rounded by: three thirds of an inch are an inch.
func Cover(total, each length.Length) int {
	return int((total + each) / (each + length.Nanometre))
}
