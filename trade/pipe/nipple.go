package pipe

import (
	_ "embed"
	"slices"
	"sync"

	"rodwright/length"
	"rodwright/trade/table"
)

//go:embed nipples.csv
var nipplesCSV string

//go:embed nipples_metric.csv
var nipplesMetricCSV string

// Threadable is the least length of a piece that a threading machine can hold and thread: 3 in, common
// practice, no source. Shorter pieces are bought as nipples.
const Threadable = 3 * length.Inch

// nippleRows are the stock lengths, the close nipple apart.
type nippleRows struct {
	close  map[string]length.Length   // by nominal size
	stock  map[string][]length.Length // by nominal size, rising
	metric []length.Length            // for every DN size, rising
}

var nippleTable = sync.OnceValue(func() nippleRows {
	t := nippleRows{close: map[string]length.Length{}, stock: map[string][]length.Length{}}
	for _, r := range table.Read(nipplesCSV) {
		nominal, l := r.Text("nps"), r.Inches("length_in")
		if r.Text("kind") == "close" {
			t.close[nominal] = l
		} else {
			t.stock[nominal] = append(t.stock[nominal], l)
		}
	}
	for _, r := range table.Read(nipplesMetricCSV) {
		t.metric = append(t.metric, r.MM("length_mm"))
	}
	return t
})

func (t nippleRows) closeNipple(nominal string) (length.Length, bool) {
	l, ok := t.close[nominal]
	return l, ok
}

// StockNipples returns the lengths of nipples sold in a size, rising, the close nipple first. NPT: ASTM A733,
// half inches to 6 in, inches to 12 in, from memory. DN: the close nipple as the NPT one, then the millimetre
// lengths of the trade from 40 to 300 mm that are longer, from memory.
func StockNipples(s Size) []length.Length {
	out := []length.Length{s.CloseNipple}
	steps := nippleTable().stock[s.Nominal]
	if s.Standard == ISO7 {
		steps = nippleTable().metric
	}
	for _, l := range steps {
		if l > s.CloseNipple {
			out = append(out, l)
		}
	}
	return out
}

// NearestNipple returns the stock nipple nearest to an exact length, and its neighbours: the longest that
// is no longer and the shortest that is no shorter, both equal to the exact length where it is sold. A
// neighbour that is not sold is zero. Halfway between two the shorter is nearest.
func NearestNipple(s Size, exact length.Length) (stock, shorter, longer length.Length) {
	for _, l := range StockNipples(s) {
		if l <= exact {
			shorter = l
		}
		if l >= exact && longer == 0 {
			longer = l
		}
	}
	switch {
	case shorter == 0:
		return longer, 0, longer
	case longer == 0 || exact-shorter <= longer-exact:
		return shorter, shorter, longer
	}
	return longer, shorter, longer
}

// IsStockNipple reports whether a nipple of exactly that length is sold.
func IsStockNipple(s Size, l length.Length) bool { return slices.Contains(StockNipples(s), l) }

// Bridge returns the exact length of a nipple between two fitting faces that are the given gap apart: the gap
// and two engagements.
func (s Size) Bridge(gap length.Length) length.Length { return gap + 2*s.Engagement }

// LeastBetween returns the least distance between two joints that a pipe can bridge: the close nipple and
// both take-outs.
func LeastBetween(a, b Fitting) length.Length {
	return a.Size.CloseNipple + a.TakeOut() + b.TakeOut()
}

// Extension returns by how much a coupling and a nipple of the given length make a pipe longer:
// W − 2e + nipple. The error is that of the coupling.
func (s Size) Extension(nipple length.Length) (length.Length, error) {
	c, err := s.Fitting(Coupling)
	if err != nil {
		return 0, err
	}
	return 2*c.TakeOut() + nipple, nil
}
