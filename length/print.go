package length

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// Fineness is the step to which lengths are printed, and the unit they are printed in: a tape's finest
// mark. The zero value prints nanometres as millimetres, unrounded.
type Fineness struct {
	Step Length // the least step; positive
	Unit Unit   // In or MM
}

// The finenesses a maker chooses from.
var (
	Sixteenth    = Fineness{Inch / 16, In}
	ThirtySecond = Fineness{Inch / 32, In}
	SixtyFourth  = Fineness{Inch / 64, In}
	HalfMM       = Fineness{Millimetre / 2, MM}
	WholeMM      = Fineness{Millimetre, MM}
)

// Finenesses lists every fineness that can be chosen, coarse before fine.
func Finenesses() []Fineness {
	return []Fineness{Sixteenth, ThirtySecond, SixtyFourth, WholeMM, HalfMM}
}

// Finer returns the fineness in which reasons are told: gaps, movements and screws' bites are often less
// than the step a maker cuts to. It is 1/64 in, or 0.1 mm; a finer step is kept.
func (f Fineness) Finer() Fineness {
	finer := Fineness{Millimetre / 10, MM}
	if f.Unit == In {
		finer = SixtyFourth
	}
	if f.Step > 0 && f.Step < finer.Step {
		return f
	}
	return finer
}

// ParseFineness reads 1/16, 1/32, 1/64 (inches), 0.5 mm or 1 mm.
func ParseFineness(text string) (Fineness, error) {
	for _, f := range Finenesses() {
		if t := strings.TrimSuffix(strings.TrimSpace(text), " in"); t == f.String() || f.Unit == MM && t+" mm" == f.String() {
			return f, nil
		}
	}
	return Fineness{}, fmt.Errorf("fineness %q is not one of 1/16, 1/32, 1/64, 0.5 mm, 1 mm", text)
}

// String returns the fineness as it is written in a document.
func (f Fineness) String() string {
	if f.Unit == In {
		return fmt.Sprintf("1/%d", Inch/f.Step)
	}
	return strconv.FormatFloat(f.Step.MM(), 'f', -1, 64) + " mm"
}

// Round returns the multiple of the step nearest to l, halves to even.
func (f Fineness) Round(l Length) Length {
	step := max(f.Step, 1)
	q := new(big.Rat).SetFrac64(int64(l), int64(step))
	n, _ := FromRat(q)
	return n * step
}

// Rounded reports whether printing l changes it.
func (f Fineness) Rounded(l Length) bool { return f.Round(l) != l }

// Text prints l with its unit, rounded to the step: 14 3/8 in, 365.5 mm. A rounded value is not marked;
// ask [Fineness.Rounded] or use [Fineness.Show].
func (f Fineness) Text(l Length) string { return f.Number(l) + " " + f.unit().String() }

// Show prints l with its unit; where the printed value is rounded it begins with ≈.
func (f Fineness) Show(l Length) string {
	if f.Rounded(l) {
		return "≈ " + f.Text(l)
	}
	return f.Text(l)
}

// Number prints l without its unit, rounded to the step.
func (f Fineness) Number(l Length) string {
	r := f.Round(l)
	sign := ""
	if r < 0 {
		sign, r = "-", -r
	}
	if f.unit() == MM {
		return sign + decimal(r)
	}
	return sign + mixed(r)
}

func (f Fineness) unit() Unit {
	if f.Unit == In {
		return In
	}
	return MM
}

func decimal(l Length) string {
	s := fmt.Sprintf("%d.%06d", l/Millimetre, l%Millimetre)
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// mixed prints inches as a whole number and a fraction in lowest terms.
func mixed(l Length) string {
	whole, rest := l/Inch, l%Inch
	if rest == 0 {
		return strconv.FormatInt(int64(whole), 10)
	}
	f := big.NewRat(int64(rest), int64(Inch))
	if whole == 0 {
		return f.String()
	}
	return fmt.Sprintf("%d %s", whole, f.String())
}

// Chain rounds the links of a chain of dimensions so that they add up to the rounded total: the running
// position is rounded, not each link. No link is off by more than one step.
func (f Fineness) Chain(links []Length) []Length {
	out := make([]Length, len(links))
	var run, printed Length
	for i, l := range links {
		run += l
		next := f.Round(run)
		out[i] = next - printed
		printed = next
	}
	return out
}
