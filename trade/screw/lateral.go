package screw

import (
	"cmp"
	_ "embed"
	"math"
	"sync"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
	"rodwright/trade/wood"
)

//go:embed lateral.csv
var lateralCSV string

// group is a row of the handbook's table: woods of one range of specific gravity and their constant.
type group struct {
	hardwood  bool
	low, high float64
	k         float64 // MPa
}

var groups = sync.OnceValue(func() []group {
	var out []group
	for _, r := range table.Read(lateralCSV) {
		out = append(out, group{r.Text("wood") == "hardwood", r.Float("low_g"), r.Float("high_g"), r.Float("k_lbf_per_in2") * psi})
	}
	return out
})

var lateralFormula = figure.Formula{
	Text:   "p = K·D² · min(1, penetration ÷ 7D)",
	Source: "Wood Handbook FPL-GTR-282 (2021) ch. 8, wood screws, lateral resistance, from memory",
	Range:  "seasoned wood, slip of 0.007 to 0.010 in, penetration 4 D and more; hardwoods G 0.33 to 0.74, softwoods 0.29 to 0.52",
}

// Lateral returns the load in newtons that one screw of the given shank diameter takes across itself at a
// slip of about 0.2 mm, a fifth or less of what breaks it:
//
//	p = K·D²
//
// with K by the specific gravity of hardwoods and softwoods. It asks for a penetration of 7 D; from 4 D to
// 7 D the load is reduced in proportion and the figure says so; below 4 D there is none.
func Lateral(s wood.Species, diameter, penetration length.Length) (figure.Figure, error) {
	err := cmp.Or(hasGravity(s),
		within.Between("screw diameter", diameter.MM(), leastDiameter, mostDiameter, figure.MM),
		within.Between("penetration", penetration.MM(), 4*diameter.MM(), length.Metre.MM(), figure.MM))
	if err != nil {
		return figure.Figure{}, err
	}
	k, err := constant(s)
	if err != nil {
		return figure.Figure{}, err
	}
	d := diameter.MM()
	share := min(1, penetration.MM()/(7*d))
	f := figure.Of("load across it", k*d*d*share, figure.N, &lateralFormula,
		figure.In("K", k, figure.MPa), figure.InLength("D", diameter), figure.InLength("penetration", penetration)).
		From(s.Source.String())
	if share < 1 {
		f = f.Assuming("reduced in proportion below a penetration of 7 diameters, from memory; the design specification asks for 6 at least")
	}
	return f, nil
}

// constant finds the wood's group; the table gives specific gravity to two decimals, so it is taken so.
func constant(s wood.Species) (float64, error) {
	g := math.Round(s.SG12*100) / 100
	low, high := math.Inf(1), 0.0
	for _, row := range groups() {
		if row.hardwood != s.Hardwood {
			continue
		}
		if g >= row.low && g <= row.high {
			return row.k, nil
		}
		low, high = min(low, row.low), max(high, row.high)
	}
	return 0, &within.Error{
		Name: "specific gravity of " + s.Name, Got: figure.Digits(g, 2),
		Want: "from " + figure.Digits(low, 2) + " to " + figure.Digits(high, 2) + ", where the handbook gives a constant",
	}
}
