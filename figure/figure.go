// Package figure holds a number that remembers where it came from: its formula, what went in, the
// published source and what was assumed.
//
// A figure that a person could doubt is a [Figure]. Formulas are static values, so that carrying one
// costs a pointer; text is made only when somebody asks for it. Start with [Of].
package figure

import (
	"math"
	"strconv"

	"rodwright/length"
)

// Unit names the unit of a figure's value. The set is closed and is part of the JSON contract.
type Unit string

// The units of figures. A length is always in millimetres here, exact lengths are package length's.
const (
	MM         Unit = "mm"
	Kg         Unit = "kg"
	N          Unit = "N"
	NMM        Unit = "N·mm"
	MPa        Unit = "MPa"
	Percent    Unit = "percent"
	ML         Unit = "ml"
	M2         Unit = "m2"
	Deg        Unit = "deg"
	Count      Unit = "count"
	Hours      Unit = "hours"
	BoardFeet  Unit = "boardfeet"
	Ratio      Unit = "ratio"
	MPerS      Unit = "m/s"
	NPerMM     Unit = "N/mm"
	Text       Unit = "text"
	Money      Unit = "money"
	Celsius    Unit = "C"
	KgPerM     Unit = "kg/m"
	KgPerM3    Unit = "kg/m3"
	GramPerM2  Unit = "g/m2"
	SquareMM   Unit = "mm2"
	MM4        Unit = "mm4"
	MM3        Unit = "mm3"
	PerPercent Unit = "1/percent"
	PerInch    Unit = "1/in"
	Grams      Unit = "g"
	M2PerL     Unit = "m2/L"
	Fahrenheit Unit = "F"
)

// Formula is one relation of the trade or of mechanics, with the place it was published.
type Formula struct {
	Text   string // as it is printed, for example ΔD = D·C·(MC2 − MC1)
	Source string // title, edition, equation or table; "common practice, no source"; "from memory"
	Range  string // where it holds; empty when it holds everywhere
}

// Input is one value that went into a figure.
type Input struct {
	Name  string  // the letter or word used in the formula
	Value float64 // in Unit; unused when Text is set
	Unit  Unit
	Text  string // a value that is no number, or one to be shown just so
}

// Figure is a number with its reason. The zero Figure has no name and means that there is none.
type Figure struct {
	Name    string
	Value   float64
	Unit    Unit
	Words   string   // the answer in words where Unit is Text
	Formula *Formula // nil when the value is simply given
	Inputs  []Input
	Source  string   // where the value, or the table row behind it, comes from, when that is not the formula's source
	Assumed []string // what was taken for granted, in words
}

// Of returns a figure computed by formula f from the given inputs.
func Of(name string, value float64, unit Unit, f *Formula, inputs ...Input) Figure {
	return Figure{Name: name, Value: value, Unit: unit, Formula: f, Inputs: inputs}
}

// OfLength returns a figure for an exact length, in millimetres.
func OfLength(name string, l length.Length, f *Formula, inputs ...Input) Figure {
	return Of(name, l.MM(), MM, f, inputs...)
}

// In returns an input with a number.
func In(name string, value float64, unit Unit) Input {
	return Input{Name: name, Value: value, Unit: unit}
}

// InLength returns an input that is a length.
func InLength(name string, l length.Length) Input { return In(name, l.MM(), MM) }

// InText returns an input that is told in words.
func InText(name, text string) Input { return Input{Name: name, Text: text} }

// Assuming returns f with further assumptions, in words.
func (f Figure) Assuming(words ...string) Figure {
	f.Assumed = append(append([]string(nil), f.Assumed...), words...)
	return f
}

// From returns f with the source of the value named.
func (f Figure) From(source string) Figure {
	f.Source = source
	return f
}

// Missing reports whether f is the zero Figure.
func (f Figure) Missing() bool { return f.Name == "" && f.Unit == "" }

// Show prints the value with its unit, as a maker would set a tape: lengths to the fineness, all else to
// three significant digits.
func (f Figure) Show(to length.Fineness) string {
	if f.Unit == Text {
		return f.Words
	}
	return Show(f.Value, f.Unit, to)
}

// Show prints a value in the given unit, a length to the fineness.
func Show(v float64, u Unit, to length.Fineness) string {
	switch {
	case u == MM && math.Abs(v) < length.Max.MM():
		return to.Text(length.FromMM(v))
	case u == Percent:
		return Digits(v, 3) + " %"
	case u == Deg:
		return Digits(v, 3) + "°"
	case u == Count || u == Ratio || u == "":
		return Digits(v, 4)
	case u == Money:
		return strconv.FormatFloat(v, 'f', 2, 64)
	case u == BoardFeet:
		return Digits(v, 4) + " board feet"
	case u == M2:
		return Digits(v, 3) + " m²"
	}
	return Digits(v, 3) + " " + string(u)
}

// Digits prints v with at least the given number of significant digits, never in powers of ten, and
// without zeros at the end of its decimals.
func Digits(v float64, digits int) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	decimals := max(0, digits-1-int(math.Floor(math.Log10(math.Abs(v)))))
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'f', decimals, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

// Show prints the input for a person: "D 508 mm" is printed as its value alone, 508 mm.
func (in Input) Show(to length.Fineness) string {
	if in.Text != "" {
		return in.Text
	}
	return Show(in.Value, in.Unit, to)
}
