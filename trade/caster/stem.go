package caster

import (
	_ "embed"
	"math"
	"sync"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

//go:embed stems.csv
var stemsCSV string

// Thread is a thread that stems and inserts are sold with.
type Thread struct {
	ID       string // 3/8-16, M10
	Metric   bool
	Diameter length.Length
	Pitch    length.Length // rounded to the nanometre
	Source   table.Source
}

var threads = sync.OnceValue(func() []Thread {
	var out []Thread
	for _, r := range table.Read(stemsCSV) {
		t := Thread{ID: r.Text("id"), Metric: r.Has("diameter_mm"), Source: r.Source()}
		if t.Metric {
			t.Diameter, t.Pitch = r.MM("diameter_mm"), r.MM("pitch_mm")
		} else {
			n, _ := r.Int("threads_per_in")
			t.Diameter, t.Pitch = r.Inches("diameter_in"), length.Inch.Scale(1, int64(n))
		}
		out = append(out, t)
	}
	return out
})

// stemReading is how well a paper strip or a ruler tells a stem's diameter: 0.02 in. Two threads closer
// together than that can't be told apart by it.
const stemReading = length.Inch / 50

var stemFormula = figure.Formula{
	Text: "d = circumference ÷ π", Source: "geometry", Range: "paper laid round the stem once, pulled tight; good to 0.02 in",
}

// StemAround returns the diameter in mm of a stem from the length of a paper strip that goes round it once, and
// the threads it may have, nearest first. Where an inch and a metric one are both near, a ruler can't tell:
// they do not mate, so try a nut.
func StemAround(circumference length.Length) (figure.Figure, []Thread, error) {
	if err := within.Length("circumference", circumference); err != nil {
		return figure.Figure{}, nil, err
	}
	d := length.FromMM(circumference.MM() / math.Pi)
	var near []Thread
	for gap := range 2 { // within half the reading first, then all of it
		for _, t := range threads() {
			off := (t.Diameter - d).Abs()
			if first := off*2 <= stemReading; off <= stemReading && first == (gap == 0) {
				near = append(near, t)
			}
		}
	}
	return figure.OfLength("stem diameter", d, &stemFormula, figure.InLength("circumference", circumference)), near, nil
}
