package sheet

import (
	"cmp"
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/cut/master"
	"rodwright/length"
)

// alternation improves weights of length and weights of width in turn: with those of width held, the best weights
// of length are the duals of the linear program that covers the parts, each as often as its weight of width says,
// by rows of the sheet's length; and the other way round (Caprara, Locatelli and Monaci, Integer Programming and
// Combinatorial Optimization 2005: bidimensional packing by bilinear programming; from memory). It starts from
// every scale in turn. What a row holds of the weights is found by whole numbers, so that the bound rests on no
// rounding of the program.
type alternation struct {
	b      *boundary
	rows   [][2]*rower // for each kind of sheet: along, across
	starts []start
	next   int
	now    start // where it stands
	going  bool
	best   float64
}

// start is weights of one direction to begin with, and the bound they gave beside scales.
type start struct {
	store int // that the weights were made for
	dir   int
	w     weights
	bound float64
}

// mostAlternating bounds copies × cells of a row's knapsack.
const mostAlternating = 2_000_000

// alternation returns the improvement of bounds, nil where parts may turn, sheets are filled for value, it takes too
// long or the budget is spent.
func (m *model) alternation(budget *cut.Budget) *alternation {
	if budget.Over() || m.valued || len(m.stores) > mostStores || slices.ContainsFunc(m.kinds, func(k kind) bool { return k.turn }) {
		return nil
	}
	b := &boundary{m: m, need: m.needs(), nodes: holdNodes}
	b.reduce()
	a := &alternation{b: b, rows: make([][2]*rower, len(m.stores))}
	seen := map[[2]length.Length]bool{}
	for i, st := range m.stores {
		size := [2]length.Length{st.in.Length, st.in.Width}
		if seen[size] {
			continue
		}
		seen[size] = true
		for d := range a.rows[i] {
			if a.rows[i][d] = b.rower(i, d == 0); a.rows[i][d] == nil {
				return nil
			}
		}
		a.begin(i, budget)
	}
	slices.SortStableFunc(a.starts, func(x, y start) int { return cmp.Compare(y.bound, x.bound) })
	return a
}

// mostStores is how many kinds of sheets the alternation deals with.
const mostStores = 4

// begin adds every scale made for a kind of sheet, with the best bound it gave beside others.
func (a *alternation) begin(store int, budget *cut.Budget) {
	along, across := a.b.scaled(a.b.m.stores[store], budget)
	best := [2][]float64{make([]float64, len(along)), make([]float64, len(across))}
	for i, f := range along {
		for j, g := range across {
			v := a.b.fraction(store, f, g)
			best[0][i], best[1][j] = math.Max(best[0][i], v), math.Max(best[1][j], v)
		}
	}
	for i, f := range along {
		a.starts = append(a.starts, start{store, 0, f, best[0][i]})
	}
	for j, g := range across {
		a.starts = append(a.starts, start{store, 1, g, best[1][j]})
	}
}

// fraction is how many sheets of one kind the parts weigh.
func (b *boundary) fraction(store int, f, g weights) (v float64) {
	for k, n := range b.need {
		v += float64(n) * float64(f.plain[k]) * float64(g.plain[k])
	}
	return v / math.Max(1, float64(f.hold[store])*float64(g.hold[store]))
}

// step makes one set of weights better, or begins with the next start; it reports whether any is left.
func (a *alternation) step(budget *cut.Budget) bool {
	if !a.going {
		if a.next >= len(a.starts) {
			return false
		}
		a.now, a.going = a.starts[a.next], true
		a.next++
	}
	dir := 1 - a.now.dir
	better, ok := a.rows[a.now.store][dir].best(a.now.w.plain, a.b.need, budget)
	if !ok {
		a.going = false
		return true
	}
	v := a.b.fraction(a.now.store, a.now.w, better)
	a.best = math.Max(a.best, a.b.product(a.now.w, better))
	a.going = v > a.now.bound+leastRise
	a.now = start{a.now.store, dir, better, v}
	return true
}

// leastRise is what a step must add, in sheets, for the next to be worth while.
const leastRise = 1e-3

// rower finds the best weights of one direction.
type rower struct {
	sizes  []int32 // cells of each kind
	copies []int32 // most of a kind in a row
	all    []int32 // most of a kind in the longest row of any sheet
	room   int32
	rooms  []int32 // of every kind of sheet
	lp     *master.Master
	right  []float64
	value  []float64
	most   []int64
	taken  [][]int32
}

// rowCells is the most cells of a row.
const rowCells = 2000

func (b *boundary) rower(store int, along bool) *rower {
	most := int64(0)
	for _, st := range b.m.stores {
		most = max(most, b.across(st, along))
	}
	shrink := math.Min(1, rowCells/float64(most))
	r := &rower{}
	for _, st := range b.m.stores {
		r.rooms = append(r.rooms, int32(math.Ceil(float64(b.across(st, along))*shrink-1e-9)))
	}
	r.room = r.rooms[store]
	widest := slices.Max(r.rooms)
	work := 0
	for k, kd := range b.m.kinds {
		s := b.size(kd.w)
		if along {
			s = b.size(kd.l)
		}
		size := max(1, int32(math.Floor(float64(s)*shrink+1e-9)))
		n := int32(min(b.need[k], math.MaxInt32))
		r.sizes, r.copies, r.all = append(r.sizes, size), append(r.copies, min(n, r.room/size)), append(r.all, min(n, widest/size))
		work += int(r.all[k]+1) * int(widest)
	}
	if work > mostAlternating || len(r.sizes) > 250 {
		return nil
	}
	r.value, r.most = make([]float64, r.room+1), make([]int64, widest+1)
	r.taken = make([][]int32, len(r.sizes))
	sense, right := make([]master.Sense, len(r.sizes)), make([]float64, len(r.sizes))
	for k := range r.sizes {
		r.taken[k] = make([]int32, r.room+1)
		sense[k] = master.Need
	}
	r.right = right
	r.lp = master.New(sense, right, 100)
	for k, n := range r.copies {
		if n > 0 {
			r.lp.Add(master.Column{Cost: 1, Entries: []master.Entry{{Row: k, Value: float64(n)}}})
		}
	}
	return r
}

// shaken is added to each need, otherwise for each, so that the program does not pivot on the spot; mostRows is how
// many rows are sought for one set of weights.
const (
	shaken   = 1e-7
	mostRows = 200
)

// best returns the weights that are worth most beside those of the other direction.
func (r *rower) best(other []int64, need []int, budget *cut.Budget) (weights, bool) {
	for k := range r.right {
		r.right[k] = float64(need[k])*float64(other[k])/share + shaken*float64(1+k*7919%101)
	}
	r.lp.Reset(r.right)
	n := len(r.right)
	for range mostRows {
		before := r.lp.Pivots
		solved := r.lp.Solve(pivotsAtOnce)
		if !budget.Spend((r.lp.Pivots-before)*(1+n*n/100) + n*int(r.room)/16) {
			return weights{}, false
		}
		if solved && !r.priceIn(budget) {
			break
		}
	}
	w := weights{plain: make([]int64, len(r.right))}
	for k, d := range r.lp.Duals() {
		w.plain[k] = int64(math.Max(0, math.Min(1, d)) * share)
	}
	w.hold = r.hold(w.plain)
	return w, slices.Min(w.hold) > 0
}

// rowsAtOnce is how many rows are added before the program is solved again.
const rowsAtOnce = 4

// priceIn adds the row that holds most by the duals, then the best of what is left, and so on, unless they hold no
// more than one.
func (r *rower) priceIn(budget *cut.Budget) (added bool) {
	dual := slices.Clone(r.lp.Duals())
	for range rowsAtOnce {
		if !budget.Ask() {
			return added
		}
		clear(r.value)
		for k, s := range r.sizes {
			if dual[k] > 1e-12 {
				r.pack(k, s, dual[k])
			}
		}
		if r.value[r.room] <= 1+1e-6 {
			break
		}
		var entries []master.Entry
		for k, a := len(r.sizes)-1, r.room; k >= 0; k-- {
			if dual[k] <= 1e-12 {
				continue
			}
			if n := r.taken[k][a]; n > 0 {
				entries = append(entries, master.Entry{Row: k, Value: float64(n)})
				a -= n * r.sizes[k]
				dual[k] = 0
			}
		}
		r.lp.Add(master.Column{Cost: 1, Entries: entries})
		added = true
	}
	return added
}

// pack takes up to the copies of kind k into the knapsack of values. From the largest room down, what is read
// is of the kinds before.
func (r *rower) pack(k int, size int32, value float64) {
	clear(r.taken[k][:min(size, r.room+1)])
	if r.copies[k] == 1 {
		taken := r.taken[k]
		for a := r.room; a >= size; a-- {
			if v := r.value[a-size] + value; v > r.value[a] {
				r.value[a], taken[a] = v, 1
			} else {
				taken[a] = 0
			}
		}
		return
	}
	for a := r.room; a >= size; a-- {
		best, n := r.value[a], int32(0)
		for c := int32(1); c <= r.copies[k] && c*size <= a; c++ {
			if v := r.value[a-c*size] + float64(c)*value; v > best {
				best, n = v, c
			}
		}
		r.value[a], r.taken[k][a] = best, n
	}
}

// hold is the most that a row of each kind of sheet holds of whole weights.
func (r *rower) hold(w []int64) []int64 {
	clear(r.most)
	for k, size := range r.sizes {
		for range r.all[k] {
			for a := len(r.most) - 1; a >= int(size); a-- {
				r.most[a] = max(r.most[a], r.most[a-int(size)]+w[k])
			}
		}
	}
	hold := make([]int64, len(r.rooms))
	for j, room := range r.rooms {
		hold[j] = r.most[room]
	}
	return hold
}
