package panel

import (
	"math"
	"slices"
)

// swept is one board of a sweep with its ways, those that are least worse than the best at the duals first.
type swept struct {
	board int // index in the settling
	ways  []int
	over  []float64
	most  []float64 // greatest area that this board and all behind it yield of each set of kinds
}

// sweep goes through all choices of ways, one board after another. With prices π, bound B, and e the amount by which
// a way is worse than its board's best at these prices, a choice with the yields Y costs B + Σ e + Σ π·(Y − need): so
// a beginning is left as soon as what is certain of that sum is more than a better layout allows, or when the boards
// to come yield too little of a kind.
type sweep struct {
	st     *settling
	price  []float64
	base   float64 // B
	list   []swept
	pick   []int
	left   []float64
	area   []float64 // scratch: what is left of each kind, by area
	sets   [][]int   // kinds that are looked at together
	long   []float64 // by kind: length of the strips in metres, so that areas of kinds can be added up
	steps  int
	looked int // steps that were left at the last look
}

// sweep searches all choices in at most so many steps; it reports false where it was broken off.
func (st *settling) sweep(steps int) bool {
	base := st.bound()
	if base >= st.enough() {
		return true
	}
	n := len(st.need)
	w := &sweep{st: st, base: base, price: make([]float64, n), left: make([]float64, n), area: make([]float64, n), sets: st.s.setsOf(n), steps: steps, looked: steps}
	dual := st.lp.price
	for t := range w.price {
		w.price[t] = math.Max(0, dual[t]) / st.l.kinds[t].need
		w.left[t] = math.Max(0, st.need[t])
		w.long = append(w.long, float64(st.l.kinds[t].length)/1e9)
	}
	w.prepare(dual)
	w.pick = make([]int, len(st.boards))
	if len(w.list) > 0 || !slices.ContainsFunc(w.left, func(d float64) bool { return d >= 1 }) {
		w.search(0, 0)
	}
	w.spend()
	return w.steps > 0
}

// sweepPause is the number of steps between two looks at the budget.
const sweepPause = 1024

// spend takes the steps since the last look from the budget; where it is over, no step is left.
func (w *sweep) spend() bool {
	ok := w.st.s.budget.Spend(max(0, w.looked-w.steps) * len(w.st.need) / 32)
	if w.looked = w.steps; !ok {
		w.steps = 0
	}
	return ok
}

// prepare sorts the ways of each board and drops those that are too much worse.
func (w *sweep) prepare(dual []float64) {
	st := w.st
	gap := st.enough() - w.base
	for i, b := range st.boards {
		least := math.Inf(1)
		red := make([]float64, len(b.ways))
		for j := range b.ways {
			red[j] = st.reduced(b.ways[j], dual)
			least = math.Min(least, red[j])
		}
		s := swept{board: i}
		for j := range b.ways {
			if red[j]-least <= gap {
				s.ways = append(s.ways, j)
			}
		}
		slices.SortStableFunc(s.ways, func(a, b int) int { return sign(red[a] - red[b]) })
		for _, j := range s.ways {
			s.over = append(s.over, red[j]-least)
		}
		w.list = append(w.list, s)
	}
	slices.SortStableFunc(w.list, func(a, b swept) int { return len(a.ways) - len(b.ways) })
	most := make([]float64, len(w.sets))
	for i := len(w.list) - 1; i >= 0; i-- {
		s := &w.list[i]
		for n, set := range w.sets {
			best := 0.0
			for _, j := range s.ways {
				v := 0.0
				for _, t := range set {
					v += st.boards[s.board].ways[j].yields[t] * w.long[t]
				}
				best = math.Max(best, v)
			}
			most[n] += best
		}
		s.most = slices.Clone(most)
	}
}

// setsOf returns the sets of so many kinds that are looked at together.
func (s *search) setsOf(kinds int) [][]int {
	if len(s.sets) == 0 || s.setKinds != kinds {
		s.sets, s.setKinds = setsOf(kinds), kinds
	}
	return s.sets
}

// setsOf lists the sets of kinds that are looked at together: all of few kinds; of more, each alone, each two, all
// but one, and all.
func setsOf(kinds int) (out [][]int) {
	if kinds <= 4 {
		for mask := 1; mask < 1<<kinds; mask++ {
			var set []int
			for t := range kinds {
				if mask>>t&1 == 1 {
					set = append(set, t)
				}
			}
			out = append(out, set)
		}
		return out
	}
	var all []int
	for t := range kinds {
		all = append(all, t)
		out = append(out, []int{t})
	}
	for t := range kinds {
		for u := range t {
			out = append(out, []int{u, t})
		}
		out = append(out, slices.Delete(slices.Clone(all), t, t+1))
	}
	return append(out, all)
}

func (w *sweep) search(i int, over float64) {
	if i == len(w.list) {
		w.leaf()
		return
	}
	s := &w.list[i]
	ways := w.st.boards[s.board].ways
	for n, j := range s.ways {
		gap := w.st.enough() - w.base
		if over+s.over[n] > gap {
			return
		}
		if w.steps--; w.steps <= 0 || w.steps%sweepPause == 0 && !w.spend() {
			return
		}
		y := ways[j].yields
		for t := range w.left {
			w.left[t] -= y[t]
		}
		if w.hopeful(i, gap-over-s.over[n]) {
			w.pick[s.board] = j
			w.search(i+1, over+s.over[n])
		}
		for t := range w.left {
			w.left[t] += y[t]
		}
	}
}

// hopeful reports whether the boards behind i can still yield what is left, any set of kinds together, and what is
// too much already costs less than room.
func (w *sweep) hopeful(i int, room float64) bool {
	last := i+1 == len(w.list)
	for t, d := range w.left {
		if d < 0 {
			if room += w.price[t] * d; room < 0 {
				return false
			}
		}
		if last && d >= 1 {
			return false
		}
		w.area[t] = math.Max(0, d) * w.long[t]
	}
	if last {
		return true
	}
	most := w.list[i+1].most
	for n, set := range w.sets {
		v := 0.0
		for _, t := range set {
			v += w.area[t]
		}
		if v > most[n]*(1+1e-12) {
			return false
		}
	}
	return true
}

// leaf rips the boards as they were chosen.
func (w *sweep) leaf() {
	st := w.st
	cost := st.spent
	segs := make([][]segment, len(st.s.m.boards))
	for k, g := range st.fixed {
		segs[k] = slices.Clone(g)
	}
	ok := true
	for i, j := range w.pick {
		b := &st.boards[i]
		cost += b.ways[j].cost
		var real bool
		segs[b.board], real = st.s.realised(st.l, b.board, b.ways[j])
		ok = ok && real
	}
	if cost >= st.enough() {
		return
	}
	if ok {
		l := st.s.rip(segs)
		st.s.budget.Spend(len(segs))
		w.steps -= 50
		st.s.offer(l)
		if l.short == 0 && l.cost <= cost+costEps {
			return
		}
	}
	st.hole = math.Min(st.hole, cost)
}
