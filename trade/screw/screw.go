// Package screw holds what the trade knows of wood screws: their sizes by number, how deep to bore for
// them, which length fits, and what they hold.
//
// The words: the gauge is the screw's number; the shank is its outer diameter; the root is the core at the
// bottom of the thread; the pilot is the hole bored for the thread; the grip is what lies between the
// screw's head and the wood it holds in. Start with [Lookup], [Withdrawal] and [LongestFor].
//
// Forces are in newtons, for one screw in sound, seasoned wood, in a pilot of the right size and not
// overdriven: see [Overdriven]. Bolts for plates are in [LookupBolt].
package screw

import (
	_ "embed"
	"fmt"
	"strconv"
	"sync"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

//go:embed screws.csv
var screwsCSV string

// Overdriven is the usual caution where screws go into wood.
const Overdriven = "stop when the head seats: overdriving has cost up to 77 % of a screw's holding in tests"

// Screw is one size of wood screw.
type Screw struct {
	Gauge          int
	Shank          length.Length // outer diameter of the thread
	Root           length.Length // core at the bottom of the thread
	ThreadsPerInch float64
	Clearance      length.Length // bit for the hole the shank passes freely
	ChartHardwood  length.Length // pilot by a supplier's chart
	ChartSoftwood  length.Length
	Source         table.Source // of shank and thread
	RootSource     table.Source
}

var screws = sync.OnceValue(func() []Screw {
	var out []Screw
	for _, r := range table.Read(screwsCSV) {
		gauge, _ := r.Int("screw_number")
		s := Screw{
			Gauge: gauge, Shank: r.Inches("shank_dia_in"), Root: r.Inches("root_dia_nds_in"),
			ThreadsPerInch: r.Float("threads_per_in"), Clearance: r.Inches("clearance_hole_in"),
			ChartHardwood: r.Inches("pilot_hardwood_chart_in"), ChartSoftwood: r.Inches("pilot_softwood_chart_in"),
			Source: r.SourceIn("B18.6.1", "shank_dia_in", "threads_per_in"), RootSource: r.SourceIn("NDS-L", "root_dia_nds_in"),
		}
		if !r.Has("root_dia_nds_in") { // the design specification begins at No. 6
			s.Root, s.RootSource = r.Inches("root_dia_supplier_in"), r.SourceIn("SCREW-CHART", "root_dia_supplier_in")
		}
		out = append(out, s)
	}
	return out
})

// Lookup returns the wood screw with the given number. The error is a *table.UnknownError with the nearest
// numbers.
func Lookup(gauge int) (Screw, error) {
	var known []string
	for _, s := range screws() {
		if s.Gauge == gauge {
			return s, nil
		}
		known = append(known, strconv.Itoa(s.Gauge))
	}
	return Screw{}, &table.UnknownError{Kind: "screw gauge", ID: strconv.Itoa(gauge), Near: nearest(gauge, known)}
}

// nearest orders numbers by how far they lie from gauge: as text, 13 would be as near to 10 as to 12.
func nearest(gauge int, known []string) []string {
	best := make([]string, 0, 3)
	for span := 1; span < 1000 && len(best) < 3; span++ {
		for _, k := range known {
			if n, _ := strconv.Atoi(k); (n-gauge == span || gauge-n == span) && len(best) < 3 {
				best = append(best, k)
			}
		}
	}
	return best
}

// Gauges returns the numbers that [Lookup] knows, thin before thick.
func Gauges() []int {
	var out []int
	for _, s := range screws() {
		out = append(out, s.Gauge)
	}
	return out
}

// String returns the screw as a maker asks for it: No. 10.
func (s Screw) String() string { return fmt.Sprintf("No. %d", s.Gauge) }

// Through returns how many threads go by in the given depth, rounded down to whole threads.
func (s Screw) Through(depth length.Length) int {
	return int(depth.Inches()*s.ThreadsPerInch + 1e-9)
}

var shankFormula = figure.Formula{Text: "D = 0.060 + 0.013·N in", Source: "ASME B18.6.1 Wood Screws", Range: "screw numbers 0 to 24"}

// Shank returns the outer diameter, in mm, of the wood screw with number N, 0 to 24:
//
//	D = 0.060 in + 0.013 in · N
func Shank(gauge int) (figure.Figure, error) {
	if err := within.Counted("screw gauge", gauge, 0, 24); err != nil {
		return figure.Figure{}, err
	}
	d := length.Inch.Scale(int64(60+13*gauge), 1000)
	return figure.OfLength("shank", d, &shankFormula, figure.In("N", float64(gauge), figure.Count)), nil
}
