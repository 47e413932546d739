package lumber

import (
	"strings"
	"sync"

	"rodwright/length"
	"rodwright/trade/table"
)

// Dressed is softwood by its nominal size, planed on four sides.
type Dressed struct {
	ID             string        // 1x6
	Thickness      length.Length // dry
	Width          length.Length
	GreenThickness length.Length
	GreenWidth     length.Length
	Source         table.Source
}

// softwoods is the dressed thickness and width of every nominal size.
var softwoods = sync.OnceValue(func() (t struct {
	thickness, width map[string]table.Row
	known            []string
},
) {
	t.thickness, t.width = map[string]table.Row{}, map[string]table.Row{}
	var thick, wide []string
	for _, r := range table.Read(lumberCSV) {
		switch id := r.Text("nominal"); r.Text("kind") {
		case softwoodBoard, softwoodDimension:
			t.thickness[id] = r
			thick = append(thick, id)
		case softwoodWidth:
			t.width[id] = r
			wide = append(wide, id)
		}
	}
	for _, a := range thick {
		for _, b := range wide {
			t.known = append(t.known, a+"x"+b)
		}
	}
	return t
})

// Softwood returns the dressed size of softwood named by nominal thickness and width in inches: 1x6, 2 × 4,
// 1 1/4 x 8. Dry is 19 % MC or less. The error is a *table.UnknownError.
func Softwood(nominal string) (Dressed, error) {
	t := softwoods()
	thick, wide, _ := strings.Cut(strings.ReplaceAll(nominal, "×", "x"), "x")
	thick, wide = strings.Join(strings.Fields(thick), "-"), strings.TrimSpace(wide)
	a, okA := t.thickness[thick]
	b, okB := t.width[wide]
	if !okA || !okB {
		return Dressed{}, table.Unknown("softwood size", nominal, t.known)
	}
	return Dressed{
		ID: thick + "x" + wide, Source: a.Source(),
		Thickness: a.Inches("dressed_dry_in"), GreenThickness: a.Inches("dressed_green_in"),
		Width: b.Inches("dressed_dry_in"), GreenWidth: b.Inches("dressed_green_in"),
	}, nil
}

// metricStep is the step in which sawn softwood is sold by length where metres are used: 300 mm, common
// practice, no source.
const metricStep = 300 * length.Millimetre

// MetricBelow returns the length sold in metres that a buyer gets when asking for l, and how much it is
// short: sellers round down to steps of 300 mm.
func MetricBelow(l length.Length) (sold, short length.Length) {
	sold = max(0, l) / metricStep * metricStep
	return sold, max(0, l) - sold
}

// MetricFor returns the shortest length sold in metres that reaches l.
func MetricFor(l length.Length) length.Length {
	sold, short := MetricBelow(l)
	if short > 0 {
		sold += metricStep
	}
	return sold
}
