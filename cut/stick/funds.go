package stick

import "math"

// funds is money in whole numbers.
type funds struct {
	price []int // of a stick of each store, in steps that every price is a multiple of
	cell  int   // steps of one cell of the tables of what money holds
}

// fineness is into how many parts one unit of money is divided: the first that makes all prices whole. A price has
// millionths; a length in its place has nanometres, of which an inch has 25 400 000.
var fineness = []float64{1e6, 127e6}

// open sets the prices. It reports false where they are no whole parts.
func (f *funds) open(m *model) bool {
	for _, fine := range fineness {
		if f.price = m.wholePrices(fine); f.price != nil {
			return true
		}
	}
	return false
}

// wholePrices is what a stick of each store costs, in the largest steps that all prices are whole multiples of; nil where
// they are not whole when money is so fine, or all of them are 0.
func (m *model) wholePrices(fine float64) []int {
	out, step := make([]int, len(m.stores)), int64(0)
	for s, st := range m.stores {
		n := math.Round(st.price * fine)
		if n > 1<<50 || math.Abs(n-st.price*fine) > 1e-4 {
			return nil
		}
		out[s] = int(n)
		step = gcd(step, int64(n))
	}
	if step == 0 {
		return nil
	}
	for s := range out {
		out[s] /= int(step)
	}
	return out
}

// cellsMost bounds the cells that all stores together take of one table.
const cellsMost = 1 << 21

// coarsen sets the steps of a cell for tables up to most. Prices are rounded down to cells, and so is what may be spent:
// a sum of prices rounded down is never more than the sum rounded down, so such a table says too much rather than too
// little. It reports false where that makes stock without limit free.
func (f *funds) coarsen(m *model, most int) bool {
	f.cell = most/(cellsMost/len(m.stores)+1) + 1
	for s, st := range m.stores[:m.sold] {
		if st.count < 0 && f.price[s] < f.cell {
			return false
		}
	}
	return true
}

// weighing is one weight of each kind of part, and what stock holds by it.
type weighing struct {
	weight []int64
	all    int64   // what all parts weigh
	hold   []int64 // the most that a stick of each store holds
	tables map[string][]int64
	whole  []int64 // the table of all stock
	at     []byte
}

func newWeighing(s *search, weight []int64) *weighing {
	w := &weighing{weight: weight, tables: map[string][]int64{}}
	need := s.m.needs()
	for k, n := range need {
		w.all += int64(n) * weight[k]
	}
	var cells int
	var ok bool
	if w.hold, cells, ok = s.m.holdsOf(need, weight); ok {
		s.budget.Spend(cells / cellsPerNode)
	} else {
		nodes := valuedNodes
		w.hold = s.m.holdsByBranching(need, weight, &nodes)
		s.budget.Spend(valuedNodes - nodes)
	}
	for i, st := range s.m.stores[s.m.sold:] {
		w.hold[s.m.sold+i] = weight[st.only]
	}
	return w
}

// tablesMost bounds the tables that are kept; where there are more choices of stock the table of all of it serves too.
const tablesMost = 64

// holds is the most that the stock which is there holds for each number of cells up to most. The first that is asked for
// must be all stock. It reports false where the budget ends first: the table then says too little.
func (w *weighing) holds(s *search, f *funds, avail []int, most int) (t []int64, ok bool) {
	w.at = limited(w.at[:0], avail[:s.m.sold])
	t, ok = w.tables[string(w.at)]
	switch {
	case ok:
		return t, true
	case len(w.tables) >= tablesMost:
		return w.whole, true
	}
	if t, ok = w.table(s, f, avail, most/f.cell+1); !ok {
		return t, false
	}
	if w.tables[string(w.at)] = t; w.whole == nil {
		w.whole = t
	}
	return t, true
}

// table works the table out. It asks the budget before each pass over it, and reports false where that ends.
func (w *weighing) table(s *search, f *funds, avail []int, cells int) ([]int64, bool) {
	t := make([]int64, cells)
	for i, st := range s.m.stores {
		n, cost := avail[i], f.price[i]/f.cell
		if st.only >= 0 {
			n = s.m.kinds[st.only].need
		}
		if n < 0 {
			if !s.budget.Spend(len(t) / cellsPerNode) {
				return t, false
			}
			w.holdAny(t, w.hold[i], cost)
		}
		for times := 1; n > 0; times *= 2 {
			some := min(times, n)
			n -= some
			if !s.budget.Spend(max(0, len(t)-some*cost) / cellsPerNode) {
				return t, false
			}
			w.holdOnce(t, int64(some)*min(w.hold[i], w.all/int64(some)+1), some*cost) // no more than all is wanted
		}
	}
	return t, true
}

// holdAny takes what can be had any number of times into a table.
func (w *weighing) holdAny(t []int64, hold int64, cost int) {
	for c := cost; c < len(t); c++ {
		t[c] = max(t[c], min(t[c-cost]+hold, w.all))
	}
}

// holdOnce takes what can be had once into a table.
func (w *weighing) holdOnce(t []int64, hold int64, cost int) {
	for c := len(t) - 1; c >= cost; c-- {
		t[c] = max(t[c], min(t[c-cost]+hold, w.all))
	}
}
