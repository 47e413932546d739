package plot

import (
	"math"
	"strconv"

	"rodwright/figure"
	"rodwright/length"
)

// digits prints a number to some significant digits.
func digits(v float64, n int) string { return figure.Digits(v, n) }

// ticks are places along an axis with their words, ascending.
type ticks struct {
	at    []float64 // mm
	words []string  // without the unit
	unit  string
}

// fractions of an inch that a rule shows, and then whole inches.
var inchSteps = []float64{1. / 64, 1. / 32, 1. / 16, 1. / 8, 1. / 4, 1. / 2, 1, 2, 5, 10, 20, 50, 100}

// lengthTicks divides a stretch in millimetres into at most `most` steps of the reader's tape: fractions of an
// inch where the stretch is some of these, else 1, 2 or 5 times a power of ten.
func lengthTicks(lo, hi float64, most int, to length.Fineness) ticks {
	unit, name := 1.0, "mm"
	if !to.Unit.Metric() {
		unit, name = length.Inch.MM(), "in"
	}
	least := (hi - lo) / unit / float64(most)
	step, fraction := decimalStep(least), false
	if name == "in" && (hi-lo)/unit >= 3./64 {
		for _, s := range inchSteps {
			if s >= least*(1-1e-9) {
				step, fraction = s, true
				break
			}
		}
	}
	t := ticks{unit: name}
	for k := math.Ceil(lo/unit/step - 1e-9); k*step*unit <= hi+1e-9*(hi-lo) && len(t.at) <= 2*most; k++ {
		t.at = append(t.at, k*step*unit)
		if fraction {
			t.words = append(t.words, length.SixtyFourth.Number(length.FromInches(k*step)))
			continue
		}
		t.words = append(t.words, decimals(k*step, step))
	}
	return t
}

// decimalStep returns the least of 1, 2 and 5 times a power of ten that is not below a step.
func decimalStep(least float64) float64 {
	if least <= 0 {
		return 1
	}
	ten := math.Pow(10, math.Floor(math.Log10(least)))
	for _, k := range []float64{1, 2, 5} {
		if k*ten >= least*(1-1e-9) {
			return k * ten
		}
	}
	return 10 * ten
}

// decimals prints a multiple of a step to the digits of the step.
func decimals(v, step float64) string {
	n := max(0, -int(math.Floor(math.Log10(step)+1e-9)))
	return strconv.FormatFloat(v+0, 'f', n, 64)
}

// widest returns the room that the widest words take.
func (t ticks) widest() (w float64) {
	for _, words := range t.words {
		w = max(w, wide(words))
	}
	return w
}
