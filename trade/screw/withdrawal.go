package screw

import (
	"cmp"
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
	"rodwright/trade/wood"
)

// Grain says into which face of the wood a screw goes.
type Grain string

// The faces. The first is the default of an answer.
const (
	Side Grain = "side" // across the grain: face or edge of a board
	End  Grain = "end"  // along the grain: the board's end
)

// ParseGrain reads side or end.
func ParseGrain(text string) (Grain, error) {
	if g := Grain(text); g == Side || g == End {
		return g, nil
	}
	return "", fmt.Errorf("grain %q is not one of side, end", text)
}

// poundForce is the pound-force in newtons and psi one pound-force per square inch in MPa, exact from the
// inch and pound of 1959 and the standard gravity of 1901.
const (
	poundForce = 0.45359237 * 9.80665
	psi        = poundForce / (25.4 * 25.4)
)

// The range the formulas are used in: sizes of the handbook's list, No. 1 to 20 up to 3 in, from memory.
const (
	leastDiameter = 0.073 * 25.4
	mostDiameter  = 0.320 * 25.4
	mostThread    = 3 * length.Inch
	leastG, mostG = 0.1, 1.3 // lightest to heaviest wood there is
)

const screwRange = "screws No. 1 to 20, up to 3 in of thread, seasoned wood, pilot bored, not overdriven"

var (
	ultimateSide = figure.Formula{
		Text:   "p = 15700·G²·D·L (lbf, in)",
		Source: "Wood Handbook FPL-GTR-282 (2021) ch. 8, wood screws, withdrawal from side grain, from memory",
		Range:  screwRange,
	}
	ultimateEnd = figure.Formula{
		Text:   "p = 0.75·15700·G²·D·L (lbf, in)",
		Source: "Wood Handbook FPL-GTR-282 (2021) ch. 8, wood screws in end grain, from memory; a carpenters' handbook says 60 %",
		Range:  screwRange,
	}
	designSide = figure.Formula{
		Text:   "W = 2850·G²·D·L (lbf, in)",
		Source: "National Design Specification for Wood Construction ch. 12, wood screws, reference withdrawal before adjustment",
		Range:  screwRange,
	}
	designEnd = figure.Formula{
		Text:   "W = 0",
		Source: "National Design Specification for Wood Construction ch. 12: no withdrawal load from end grain, from memory",
		Range:  screwRange,
	}
)

// Withdrawal returns what one screw of the given shank diameter holds against a pull along it, with the
// given length of thread in the wood: the pull that draws it out in a test, and the pull to design for.
//
//	ultimate p = 15700·G²·D·L, design W = 2850·G²·D·L (lbf and inches)
//
// G is the species' specific gravity at 12 % MC; the design specification takes the dry volume, where G is
// a little higher, so that the design figure lies on the safe side. From end grain the ultimate is 75 % and
// the design nothing.
func Withdrawal(s wood.Species, diameter, thread length.Length, grain Grain) (ultimate, design figure.Figure, err error) {
	_, err = ParseGrain(string(grain))
	err = cmp.Or(err, hasGravity(s),
		within.Between("screw diameter", diameter.MM(), leastDiameter, mostDiameter, figure.MM),
		within.Between("thread in the wood", thread.MM(), 0, mostThread.MM(), figure.MM))
	if err != nil {
		return figure.Figure{}, figure.Figure{}, err
	}
	base := s.SG12 * s.SG12 * diameter.Inches() * thread.Inches() * poundForce
	in := []figure.Input{
		figure.In("G", s.SG12, figure.Ratio), figure.InLength("D", diameter), figure.InLength("L", thread),
	}
	source := s.Source.String()
	if grain == End {
		return figure.Of("pull that draws it out", 0.75*15700*base, figure.N, &ultimateEnd, in...).From(source),
			figure.Of("pull to design for", 0, figure.N, &designEnd, in...).From(source), nil
	}
	return figure.Of("pull that draws it out", 15700*base, figure.N, &ultimateSide, in...).From(source),
		figure.Of("pull to design for", 2850*base, figure.N, &designSide, in...).From(source), nil
}

// hasGravity returns an error when the table has no specific gravity for the species.
func hasGravity(s wood.Species) error {
	if math.IsNaN(s.SG12) {
		return &within.Error{Name: "specific gravity of " + s.Name, Got: "not in the table", Want: "known; choose a species that has it"}
	}
	return within.Between("specific gravity", s.SG12, leastG, mostG, figure.Ratio)
}

var pryingFormula = figure.Formula{
	Text: "F = M ÷ (a · n)", Source: "statics, any mechanics text",
	Range: "a plate pried off by a moment about its far edge, n screws pulling at about the arm a",
}

// Prying returns the pull in newtons on each of the screws that pull when a moment in N·mm pries a plate
// off the wood: the moment ÷ (arm · number of screws that pull).
func Prying(moment float64, arm length.Length, pulling int) (figure.Figure, error) {
	err := cmp.Or(within.NotNegative("moment", moment, figure.NMM), within.Length("arm", arm),
		within.Counted("screws that pull", pulling, 1, 100))
	if err != nil {
		return figure.Figure{}, err
	}
	return figure.Of("pull on each screw", moment/(arm.MM()*float64(pulling)), figure.N, &pryingFormula,
		figure.In("M", moment, figure.NMM), figure.InLength("a", arm), figure.In("n", float64(pulling), figure.Count)), nil
}
