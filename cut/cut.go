// Package cut holds the problems of cutting stock into parts, and their answers, as plain lengths and
// counts. It knows nothing of furniture and solves nothing: packages stick, panel and sheet do that,
// package verify checks what they say, and package wire reads and writes both as JSON.
//
// A problem is one of [StickProblem], [PanelProblem] and [SheetProblem]; every answer is an [Answer].
// Lengths are exact; money is a plain number. Problems are never changed by who solves them.
package cut

import (
	"fmt"
	"math"
	"strconv"

	"rodwright/length"
)

// Count is a number of pieces: of stock that is there, or of parts that are wanted.
type Count int

// Any stands for as many pieces as are needed.
const Any Count = -1

// MaxPieces bounds the pieces of one problem: far above any job of a shop, and small enough that a slip
// of the keyboard is answered with an error instead of an answer of gigabytes.
const MaxPieces = 20_000

// Price is what one piece of stock costs. The zero value is no price: cost is then length or area.
type Price struct {
	Value float64
	Given bool
}

// Priced returns a price that is given.
func Priced(v float64) Price { return Price{Value: v, Given: true} }

// Or returns the price, or size where none is given.
func (p Price) Or(size float64) float64 {
	if p.Given {
		return p.Value
	}
	return size
}

// In returns l as a number of units.
func In(l length.Length, u length.Unit) float64 { return float64(l) / float64(u.Size()) }

// Text prints l in full with its unit, as it stands in the problem.
func Text(l length.Length, u length.Unit) string {
	return strconv.FormatFloat(In(l, u), 'f', -1, 64) + " " + u.String()
}

// moneySteps is the number of steps in one unit of money that sums are rounded to: fine enough that no
// price is changed by it, coarse enough that the order of summing never shows.
const moneySteps = 1e6

// RoundMoney rounds a sum of money to a millionth.
func RoundMoney(v float64) float64 {
	if math.Abs(v) > 1e12 {
		return v
	}
	return math.Round(v*moneySteps) / moneySteps
}

// Settle returns cost and bound as they are printed: both rounded to a millionth, the bound towards the
// safe side, and proven when nothing was left between them before. upper says that bound is an upper bound.
func Settle(cost, bound float64, upper bool) (c, b float64, proven bool) {
	c = RoundMoney(cost)
	slack := 1e-9 * math.Max(1, math.Abs(c)*1e-3)
	if upper && bound-slack <= cost || !upper && bound+slack >= cost {
		return c, c, true
	}
	if upper {
		bound = math.Ceil((bound-slack)*moneySteps) / moneySteps
		return c, math.Max(bound, c), bound <= c
	}
	bound = math.Floor((bound+slack)*moneySteps) / moneySteps
	return c, math.Min(bound, c), bound >= c
}

// A FieldError says which value of a problem can't be and what would be right.
type FieldError struct {
	Path string // parts[2].length
	Why  string // must be more than 0, is -3 mm
}

// Error gives place and reason.
func (e *FieldError) Error() string { return e.Path + " " + e.Why }

func wrong(why string, path string, args ...any) error {
	return &FieldError{Path: fmt.Sprintf(path, args...), Why: why}
}
