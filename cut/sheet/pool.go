package sheet

import (
	"cmp"
	"math"
	"slices"

	"rodwright/cut/master"
)

// pool keeps the filled sheets that the search meets as columns of a linear program: every part on a sheet at
// least once, at the least cost (Monaci and Toth, INFORMS Journal on Computing 18, 2006: set covering for
// packing in bins; from memory). Its duals say what parts are worth when sheets are filled anew, and plans are made by
// taking what it uses most, again and again.
type pool struct {
	s      *search
	lp     *master.Master
	sheets []filled
	known  map[string]bool
	right  []float64
	limits []int // rows of limited stores, −1 for others
	fresh  int   // columns since the last plan
}

// Bounds of the pool: rows of the program, one for each kind and each store of limited number, and columns after which
// it begins anew from the best plan.
const (
	mostPoolRows    = 300
	mostPoolColumns = 4000
)

// newPool returns an empty pool, nil where the program would be too large or sheets are filled for value.
func newPool(s *search) *pool {
	rows := len(s.m.kinds)
	for _, st := range s.m.stores {
		if st.count >= 0 {
			rows++
		}
	}
	if s.budget.Over() || s.m.valued || rows > mostPoolRows || len(s.m.kinds) == 0 {
		return nil
	}
	p := &pool{s: s, known: map[string]bool{}}
	sense := make([]master.Sense, len(s.m.kinds))
	top := 0.0
	for k, kd := range s.m.kinds {
		sense[k] = master.Need
		p.right = append(p.right, float64(kd.need))
	}
	for _, st := range s.m.stores {
		top = math.Max(top, st.price)
		row := -1
		if st.count >= 0 {
			row = len(sense)
			sense = append(sense, master.Limit)
			p.right = append(p.right, float64(st.count))
		}
		p.limits = append(p.limits, row)
	}
	p.lp = master.New(sense, p.right, 20*math.Max(top, costEps))
	return p
}

// add takes a filled sheet in, once.
func (p *pool) add(f filled) {
	if len(p.sheets) >= mostPoolColumns || len(f.parts) == 0 {
		return
	}
	counts := p.s.m.countsOf(f)
	key := string(rune(f.store)) + countsKey(counts)
	if p.known[key] {
		return
	}
	p.known[key] = true
	c := master.Column{Cost: p.s.m.stores[f.store].price}
	for k, n := range counts {
		if n > 0 {
			c.Entries = append(c.Entries, master.Entry{Row: k, Value: float64(n)})
		}
	}
	if row := p.limits[f.store]; row >= 0 {
		c.Entries = append(c.Entries, master.Entry{Row: row, Value: 1})
	}
	p.lp.Add(c)
	p.sheets = append(p.sheets, f)
	p.fresh++
}

// countsOf says how many parts of each kind a sheet holds.
func (m *model) countsOf(f filled) []uint16 {
	counts := make([]uint16, len(m.kinds))
	for _, q := range f.parts {
		counts[q.kind]++
	}
	return counts
}

// solve brings the program to its end, or nearly.
func (p *pool) solve() {
	n := len(p.right)
	for range poolPivots / pivotsAtOnce {
		before := p.lp.Pivots
		solved := p.lp.Solve(pivotsAtOnce)
		if !p.s.budget.Spend((p.lp.Pivots-before)*(1+(n*n+4*len(p.sheets))/100)) || solved {
			return
		}
	}
}

// poolPivots bounds one solution of the program; between pivotsAtOnce the clock is asked.
const (
	poolPivots   = 400
	pivotsAtOnce = 20
)

// plan makes a plan by taking sheets of the pool, those that the program uses most first and then those that hold
// most by its duals of what is still wanted; what no sheet of the pool holds well is built.
func (p *pool) plan() plan {
	have, avail := p.s.m.needs(), p.s.m.counts()
	out := plan{}
	p.takeUsed(&out, have, avail)
	worth := p.worths()
	fill := 0.9 + 0.1*p.s.dice.Share()
	for !p.s.budget.Over() {
		best, most := -1, fill
		for j := range p.sheets {
			if v := p.held(j, have, worth) * (1 - 0.1*p.s.dice.Share()); v > most && avail[p.sheets[j].store] != 0 {
				best, most = j, v
			}
		}
		if best < 0 {
			break
		}
		p.take(best, &out, have, avail)
		p.s.budget.Spend(len(p.sheets) / 8)
	}
	rest := p.s.build(have, avail, p.s.manners(3))
	out.sheets, out.left = append(out.sheets, rest.sheets...), rest.left
	return out
}

// held is what a sheet of the pool holds of what is wanted, by the worths, for its price.
func (p *pool) held(j int, have []int, worth []float64) (v float64) {
	c := p.lp.Column(j)
	for _, e := range c.Entries {
		if e.Row < len(have) {
			v += min(e.Value, float64(have[e.Row])) * worth[e.Row]
		}
	}
	return v / math.Max(c.Cost, costEps)
}

// takeUsed takes sheets that the program uses, the more it uses one the likelier.
func (p *pool) takeUsed(out *plan, have, avail []int) {
	type use struct {
		j     int
		times float64
	}
	var used []use
	p.lp.Use(func(j int, times float64) { used = append(used, use{j, times + 0.3*p.s.dice.Share()}) })
	slices.SortStableFunc(used, func(a, b use) int { return cmp.Compare(b.times, a.times) })
	for _, u := range used {
		f := p.sheets[u.j]
		if u.times > 0.4 && avail[f.store] != 0 && p.fits(u.j, have) {
			p.take(u.j, out, have, avail)
		}
	}
}

// fits reports whether all that a sheet of the pool holds is still wanted.
func (p *pool) fits(j int, have []int) bool {
	for _, e := range p.lp.Column(j).Entries {
		if e.Row < len(have) && int(e.Value) > have[e.Row] {
			return false
		}
	}
	return true
}

// take puts a sheet of the pool into a plan, without parts that are no longer wanted.
func (p *pool) take(j int, out *plan, have, avail []int) {
	f, _ := p.s.m.without(p.sheets[j], have)
	out.sheets = append(out.sheets, f)
	for _, q := range f.parts {
		have[q.kind]--
	}
	take(avail, f.store)
}

// without is a filled sheet with no more parts than are still wanted; false where none is.
func (m *model) without(f filled, have []int) (filled, bool) {
	left := slices.Clone(have)
	out := filled{store: f.store, free: f.free}
	for _, q := range f.parts {
		if left[q.kind]--; left[q.kind] < 0 {
			out.free = append(slices.Clone(out.free), piece{Rect: q.Rect, stage: never})
			continue
		}
		out.parts = append(out.parts, q)
		out.value += m.value(q.kind)
	}
	return out, len(out.parts) > 0
}

// worths are what the program pays for a part of each kind.
func (p *pool) worths() []float64 { return p.lp.Duals()[:len(p.s.m.kinds)] }

// pooledEvery is the number of steps between plans from the pool, pricings how often worths are taken from the
// program before them, pricedAtOnce how many sheets are filled for the same worths, plansAtOnce how many are made.
const (
	pooledEvery  = 80
	pricings     = 2
	pricedAtOnce = 4
	plansAtOnce  = 3
)

// pooled makes plans from the pool and goes on from one that costs no more.
func (s *search) pooled(cur *plan, avail []int) {
	for _, f := range cur.sheets {
		s.pool.add(f)
	}
	for range pricings {
		s.pool.price()
	}
	for range plansAtOnce {
		if s.budget.Over() {
			return
		}
		p := s.pool.plan()
		s.offer(p)
		if a, b := s.score(p), s.score(*cur); a.left <= b.left+1e-3 && a.cost <= b.cost+costEps {
			copy(avail, s.m.counts())
			for _, f := range p.sheets {
				take(avail, f.store)
			}
			*cur = plan{slices.Clone(p.sheets), p.left}
		}
	}
}

// price solves the program and fills sheets for what it pays for the parts.
func (p *pool) price() {
	p.solve()
	s, w := p.s, slices.Clone(p.worths())
	for range pricedAtOnce {
		how := s.manners(1)[0]
		s.bySections(&how)
		for k := range how.value {
			how.value[k] = w[k]*(1+0.1*s.dice.Share()) + 1e-9*how.value[k]
		}
		how.order = s.m.ranked(func(k int) float64 { return how.value[k] })
		for st := range s.m.stores {
			if s.budget.Over() {
				return
			}
			p.add(s.f.fill(st, s.m.needs(), how))
		}
	}
}
