package answer

import (
	"math"
	"strings"

	"rodwright/figure"
	"rodwright/length"
)

// The finenesses to which answers are shown: a tape from an inch or a centimetre up, a rule below.
var (
	millimetres = length.Fineness{Step: length.Millimetre / 2, Unit: length.MM}
	tenths      = length.Fineness{Step: length.Millimetre / 10, Unit: length.MM}
	thousandths = length.Fineness{Step: length.Micrometre, Unit: length.MM}
)

// resultOf shows a figure in the system of units the question was asked in.
func resultOf(f figure.Figure, imperial bool) Result {
	r := Result{Name: f.Name, Unit: f.Unit, Value: Value{Number: f.Value}, Shown: shown(f, imperial)}
	if f.Unit == figure.Text {
		r.Value = Value{Words: f.Words}
		return r
	}
	if exact := precise(f.Value, f.Unit); exact != r.Shown {
		r.metric = exact
	}
	return r
}

// shown prints a figure rounded, as a maker sets a tape or reads a scale.
func shown(f figure.Figure, imperial bool) string {
	if f.Words != "" {
		return f.Words
	}
	switch {
	case f.Unit == figure.MM && imperial:
		return inches(f.Value)
	case f.Unit == figure.MM:
		return metric(f.Value)
	case f.Unit == figure.MPerS:
		return figure.Digits(f.Value, 3) + " m/s"
	case imperial:
		if text, ok := pounds(f.Value, f.Unit); ok {
			return text
		}
	case f.Unit == figure.ML && math.Abs(f.Value) >= 1000:
		return figure.Digits(f.Value/1000, 3) + " L"
	}
	return figure.Show(f.Value, f.Unit, millimetres)
}

// inches prints millimetres to 1/16 in, below an inch to 1/64.
func inches(mm float64) string {
	to := length.Sixteenth
	if math.Abs(mm) < length.Inch.MM() {
		to = length.SixtyFourth
	}
	return set(mm, to)
}

// metric prints millimetres to half a millimetre, below 10 mm to a tenth.
func metric(mm float64) string {
	to := millimetres
	if math.Abs(mm) < 10 {
		to = tenths
	}
	return set(mm, to)
}

// set prints millimetres to a fineness. What is less than half a step is not nought: it is said to be
// under one step.
func set(mm float64, to length.Fineness) string {
	if math.Abs(mm) > length.Max.MM() {
		return figure.Digits(mm, 6) + " mm"
	}
	l := length.FromMM(mm)
	if l != 0 && to.Round(l) == 0 {
		return "under " + to.Text(to.Step)
	}
	return to.Text(l)
}

// poundForce is one lbf in newtons, exact by the definitions of the pound and of standard gravity.
const poundForce = 4.4482216152605

// pounds prints what has a unit of its own where inches are used.
func pounds(v float64, u figure.Unit) (string, bool) {
	switch u {
	case figure.Kg:
		return figure.Digits(v/0.45359237, 3) + " lb", true
	case figure.N:
		return figure.Digits(v/poundForce, 3) + " lbf", true
	case figure.MPa:
		return figure.Digits(v/0.006894757293168361, 3) + " psi", true
	case figure.M2:
		return figure.Digits(v/0.09290304, 3) + " sq ft", true
	case figure.ML:
		return quarts(v), true
	}
	return "", false
}

// quarts prints millilitres in the largest US measure that is filled.
func quarts(ml float64) string {
	const gallon = 3785.411784
	switch {
	case ml >= gallon:
		return figure.Digits(ml/gallon, 3) + " gal"
	case ml >= gallon/4:
		return figure.Digits(ml/gallon*4, 3) + " qt"
	}
	return figure.Digits(ml/gallon*128, 3) + " fl oz"
}

// precise prints a value in its own unit to six digits.
func precise(v float64, u figure.Unit) string {
	text := figure.Digits(v, 6)
	switch u {
	case figure.Percent:
		return text + " %"
	case figure.Deg:
		return text + "°"
	case figure.Count, figure.Ratio, figure.Money, "":
		return text
	case figure.BoardFeet:
		return text + " board feet"
	case figure.M2:
		return text + " m²"
	}
	return text + " " + string(u)
}

// reasonOf shows a figure's formula with what went in, in the units the formula is written in.
// A value that stands in a table has no formula but the table's source.
func reasonOf(f figure.Figure) Reason {
	if f.Formula == nil {
		return Reason{Formula: f.Name + ", from a table", Source: f.Source, Inputs: Inputs{}, result: precise(f.Value, f.Unit)}
	}
	r := Reason{Formula: f.Formula.Text, Source: f.Formula.Source, Range: f.Formula.Range, Inputs: Inputs{}, result: precise(f.Value, f.Unit)}
	if f.Source != "" && f.Source != f.Formula.Source {
		r.Source += "; " + f.Source
	}
	inch := inInches(f.Formula.Text)
	for _, in := range f.Inputs {
		r.Inputs = append(r.Inputs, Input{in.Name, inputShown(in, inch)})
	}
	switch {
	case f.Unit == figure.Text:
		r.result = f.Words
	case inch && f.Unit == figure.N:
		r.result = precise(f.Value/poundForce, "lbf") + " = " + r.result
	case inch && f.Unit == figure.MM:
		r.result = precise(f.Value/length.Inch.MM(), "in") + " = " + r.result
	}
	return r
}

// inInches reports whether a formula says that its numbers are in inches and pounds: p = 15700·G²·D·L (lbf, in).
func inInches(formula string) bool {
	return strings.Contains(formula, "(lbf, in)") || strings.Contains(formula, "(in") || strings.HasSuffix(formula, " in")
}

// inputShown shows what went into a formula; its lengths in inches where the formula is written so.
func inputShown(in figure.Input, inch bool) string {
	switch {
	case in.Text != "":
		return in.Text
	case in.Unit == figure.PerPercent:
		return figure.Digits(in.Value, 4) // a coefficient stands bare, as tables print it
	case in.Unit == figure.MM && inch:
		return figure.Digits(in.Value/length.Inch.MM(), 5) + " in"
	}
	return raised.Replace(in.Show(thousandths))
}

// raised prints powers of units as a person writes them.
var raised = strings.NewReplacer("mm4", "mm⁴", "mm3", "mm³", "mm2", "mm²", "/m3", "/m³", "/m2", "/m²", "m2/", "m²/")
