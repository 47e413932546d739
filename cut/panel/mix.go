package panel

import (
	"math"
	"slices"
)

// mix is the linear program over ways to cut: how often each is used, at the least cost.
//
//	minimise Σ cost_j·x_j   with   Σ a_tj·x_j ≥ right_t for each need t,   Σ x_j = room_g over the ways of each set g,   x ≥ 0
//
// It is the simplex method with generalised upper bounds (Dantzig and Van Slyke, Journal of Computer and System Sciences 1,
// 1967, from memory): of each set one way, its key, follows from the others, so that the basis is only as large as there are
// needs. The first way of a set is not to cut at all. What is below nothing in a basis, a need not met or a way after
// its room has shrunk, costs the penalty for each unit, and so does a way that may not be used: so every basis is a
// beginning.
//
// Numbers are floating; bounds are worked out anew from the duals.
type mix struct {
	needs   int
	right   []float64
	room    []float64 // by set
	penalty float64

	cost []float64
	set  []int32
	off  []bool
	a    []float64 // of each way its numbers in the needs, one way after another
	of   [][]int32 // ways by set

	key   []int32   // by set
	basis []int32   // by place: a way, or -1-t for what need t is passed by
	home  []bool    // by way: it is a key or stands in the basis
	extra []bool    // by need: its surplus stands in the basis
	inv   []float64 // inverse of the basis, by place
	x     []float64 // by place
	xkey  []float64 // by set

	price []float64 // dual by need
	fee   []float64 // dual by set

	best   []int32 // by set: the way that costs least below its duals at the last look; -1 for none
	w      []float64
	drop   []float64 // by set: how fast its key falls
	since  int
	pivots int // all of them, as a measure of work

	goOn func() bool // asked after every pivotsAtOnce of them
}

// pivotsAtOnce is the number of pivots between two questions whether time is over: up to a millisecond.
const pivotsAtOnce = 16

// mixRenewal is after how many pivots the inverse is made anew.
const mixRenewal = 100

// newMix returns a program whose sets hold nothing but the way not to cut. It is solved for as long as goOn says.
func newMix(needs, sets int, penalty float64, goOn func() bool) *mix {
	m := &mix{
		goOn:  goOn,
		needs: needs, right: make([]float64, needs), room: make([]float64, sets), penalty: penalty, of: make([][]int32, sets),
		key: make([]int32, sets), basis: make([]int32, needs), extra: make([]bool, needs), inv: make([]float64, needs*needs),
		x: make([]float64, needs), xkey: make([]float64, sets), price: make([]float64, needs), fee: make([]float64, sets),
		best: make([]int32, sets), w: make([]float64, needs), drop: make([]float64, sets),
	}
	for g := range sets {
		m.key[g] = int32(m.add(g, 0, nil))
		m.home[m.key[g]] = true
	}
	for t := range needs {
		m.basis[t], m.extra[t], m.inv[t*needs+t] = int32(-1-t), true, -1
	}
	return m
}

// grow makes room for so many ways.
func (m *mix) grow(ways int) {
	m.cost, m.set, m.off, m.home = slices.Grow(m.cost, ways), slices.Grow(m.set, ways), slices.Grow(m.off, ways), slices.Grow(m.home, ways)
	m.a = slices.Grow(m.a, ways*m.needs)
}

// add appends a way to a set and returns its index; a may be nil for a way that yields nothing.
func (m *mix) add(set int, cost float64, a []float64) int {
	j := len(m.cost)
	m.cost = append(m.cost, cost)
	m.set = append(m.set, int32(set))
	m.off = append(m.off, false)
	m.home = append(m.home, false)
	m.of[set] = append(m.of[set], int32(j))
	if a == nil {
		for range m.needs {
			m.a = append(m.a, 0)
		}
	} else {
		m.a = append(m.a, a...)
	}
	return j
}

// column is what way j yields in the needs.
func (m *mix) column(j int32) []float64 { return m.a[int(j)*m.needs : (int(j)+1)*m.needs] }

func (m *mix) row(place int) []float64 { return m.inv[place*m.needs : (place+1)*m.needs] }

// charged is the cost of a unit of v, whose value is x.
func (m *mix) charged(v int32, x float64) float64 {
	c := 0.0
	if v >= 0 {
		c = m.cost[v]
	}
	switch {
	case x < -mixTiny:
		return c - m.penalty
	case v >= 0 && m.off[v]:
		return c + m.penalty
	}
	return c
}

const (
	mixTiny  = 1e-9  // what counts as nothing in a value
	mixGain  = 1e-10 // a way comes in when it costs less than its duals by this share of the penalty
	mixPivot = 1e-8  // the least pivot
)

// reset works the values out anew after right sides, rooms or what may be used have changed.
func (m *mix) reset() {
	rest := m.w
	copy(rest, m.right)
	for g, k := range m.key {
		m.xkey[g] = m.room[g]
		if r := m.room[g]; r != 0 {
			for t, v := range m.column(k) {
				rest[t] -= r * v
			}
		}
	}
	for p := range m.basis {
		v := 0.0
		for t, c := range m.row(p) {
			v += c * rest[t]
		}
		m.x[p] = v
		if j := m.basis[p]; j >= 0 {
			m.xkey[m.set[j]] -= v
		}
	}
}

// duals computes prices and fees from the inverse.
func (m *mix) duals() {
	clear(m.price)
	for p, j := range m.basis {
		c := m.charged(j, m.x[p])
		if j >= 0 {
			g := m.set[j]
			c -= m.charged(m.key[g], m.xkey[g])
		}
		if c == 0 {
			continue
		}
		for t, v := range m.row(p) {
			m.price[t] += c * v
		}
	}
	for g, k := range m.key {
		m.fee[g] = m.charged(k, m.xkey[g]) - m.worth(k)
	}
}

// worth is what way j yields at the prices.
func (m *mix) worth(j int32) (v float64) {
	for t, y := range m.column(j) {
		v += m.price[t] * y
	}
	return v
}

// below is how much less way j costs than its duals say, negative.
func (m *mix) below(j int32) float64 { return m.cost[j] - m.worth(j) - m.fee[m.set[j]] }

// solve brings ways in until none costs less than its duals, or the pivots or the time are spent; it reports whether
// the mix is the best of the ways there are.
func (m *mix) solve(pivots int) bool {
	m.duals()
	eps := mixGain * m.penalty
	for pivots > 0 {
		if !m.look(eps) {
			return true
		}
		for pivots > 0 {
			in, ok := m.entering(eps)
			if !ok {
				break
			}
			pivots--
			if !m.pivot(in) {
				return false
			}
			m.duals()
			if m.pivots%pivotsAtOnce == 0 && !m.goOn() {
				return false
			}
		}
	}
	return false
}

// look finds of each set the way that costs least below its duals; it reports whether there is one, or a need passed
// at a price.
func (m *mix) look(eps float64) (any bool) {
	for g, list := range m.of {
		m.best[g] = -1
		if m.room[g] == 0 && m.member(g) < 0 {
			continue
		}
		least := -eps
		fee := m.fee[g]
		for _, j := range list {
			if m.home[j] || m.off[j] {
				continue
			}
			d := m.cost[j] - fee
			for t, y := range m.column(j) {
				d -= m.price[t] * y
			}
			if d < least {
				least, m.best[g], any = d, j, true
			}
		}
	}
	for t, p := range m.price {
		any = any || p < -eps && !m.extra[t]
	}
	return any
}

// entering returns the best of what was found at the last look, or what passes a need.
func (m *mix) entering(eps float64) (in int32, ok bool) {
	least := -eps
	for _, j := range m.best {
		if j < 0 || m.home[j] {
			continue
		}
		if d := m.below(j); d < least {
			least, in, ok = d, j, true
		}
	}
	for t, p := range m.price {
		if p < least && !m.extra[t] {
			least, in, ok = p, int32(-1-t), true
		}
	}
	return in, ok
}

// transform writes into w how fast the values of the basis fall as v grows, and into drop how fast the keys do.
func (m *mix) transform(v int32) {
	if v < 0 {
		t := int(-1 - v)
		for p := range m.basis {
			m.w[p] = -m.inv[p*m.needs+t]
		}
	} else {
		a, k := m.column(v), m.column(m.key[m.set[v]])
		for p := range m.basis {
			x := 0.0
			for t, c := range m.row(p) {
				x += c * (a[t] - k[t])
			}
			m.w[p] = x
		}
	}
	for _, j := range m.basis {
		if j >= 0 {
			m.drop[m.set[j]] = 0
		}
	}
	if v >= 0 {
		m.drop[m.set[v]] = 1
	}
	for p, j := range m.basis {
		if j >= 0 {
			m.drop[m.set[j]] -= m.w[p]
		}
	}
}

// blocks returns how far v may grow until a value x that falls at the rate reaches nothing; +Inf where it does not.
func blocks(x, rate float64) float64 {
	switch {
	case rate > mixPivot && x >= -mixTiny:
		return math.Max(x, 0) / rate
	case rate < -mixPivot && x < -mixTiny:
		return x / rate
	}
	return math.Inf(1)
}

// leaving finds what reaches nothing first as v grows, and how far v grows until then: what stands at a place of the
// basis, or else the key of a set; of equals, what makes the largest pivot.
func (m *mix) leaving(v int32) (place, set int, step float64) {
	place, set, step = -1, -1, math.Inf(1)
	rate := 0.0
	closer := func(x, r float64) bool {
		s := blocks(x, r)
		if s < step-mixTiny || s < step+mixTiny && math.Abs(r) > rate {
			step, rate = math.Min(s, step), math.Abs(r)
			return true
		}
		return false
	}
	for p, w := range m.w {
		if closer(m.x[p], w) {
			place = p
		}
	}
	key := func(g int32) {
		if closer(m.xkey[g], m.drop[g]) {
			place, set = -1, int(g)
		}
	}
	if v >= 0 {
		key(m.set[v])
	}
	for _, j := range m.basis {
		if j >= 0 {
			key(m.set[j])
		}
	}
	return place, set, step
}

// pivot brings v in for what reaches nothing first.
func (m *mix) pivot(v int32) bool {
	m.transform(v)
	place, set, step := m.leaving(v)
	if math.IsInf(step, 1) {
		return false // unbounded: no program of cutting is
	}
	m.move(v, step)
	if place < 0 {
		if place = m.member(set); place >= 0 {
			m.swapKey(place)
			m.transform(v)
		}
	}
	if place >= 0 {
		m.exchange(v, place, step)
	} else { // the set has its key alone
		m.home[m.key[set]], m.home[v] = false, true
		m.key[set], m.xkey[set] = v, step
	}
	m.pivots++
	if m.since++; m.since >= mixRenewal {
		m.renew()
	}
	return true
}

// move lets v grow by step.
func (m *mix) move(v int32, step float64) {
	if v >= 0 {
		m.xkey[m.set[v]] -= step
	}
	for p, j := range m.basis {
		m.x[p] -= step * m.w[p]
		if j >= 0 {
			m.xkey[m.set[j]] += step * m.w[p]
		}
	}
}

// member returns a place of the basis where a way of the set stands, -1 for none.
func (m *mix) member(set int) int {
	for p, j := range m.basis {
		if j >= 0 && int(m.set[j]) == set {
			return p
		}
	}
	return -1
}

// swapKey makes the way at a place the key of its set, and puts the key there.
func (m *mix) swapKey(place int) {
	j := m.basis[place]
	g := m.set[j]
	sum := m.row(place)
	for p, i := range m.basis {
		if p != place && i >= 0 && m.set[i] == g {
			for t, v := range m.row(p) {
				sum[t] += v
			}
		}
	}
	for t := range sum {
		sum[t] = -sum[t]
	}
	m.basis[place], m.key[g] = m.key[g], j
	m.x[place], m.xkey[g] = m.xkey[g], m.x[place]
}

// exchange puts v in the place of what stands there.
func (m *mix) exchange(v int32, place int, step float64) {
	if j := m.basis[place]; j >= 0 {
		m.home[j] = false
	} else {
		m.extra[-1-j] = false
	}
	if v >= 0 {
		m.home[v] = true
	} else {
		m.extra[-1-v] = true
	}
	m.basis[place], m.x[place] = v, step
	row, by := m.row(place), m.w[place]
	for t := range row {
		row[t] /= by
	}
	for p, w := range m.w {
		if p == place || w == 0 {
			continue
		}
		other := m.row(p)[:len(row)]
		for t, v := range row {
			other[t] -= w * v
		}
	}
}

// renew makes the inverse anew by elimination with the largest pivots, and the values from it. A basis that rounding
// has made singular keeps the inverse it has.
func (m *mix) renew() {
	m.since = 0
	n := m.needs
	a := make([][]float64, n) // rows of the basis beside the unit matrix
	for t := range a {
		a[t] = make([]float64, 2*n)
		a[t][n+t] = 1
	}
	for p, j := range m.basis {
		if j < 0 {
			a[-1-j][p] = -1
			continue
		}
		k := m.column(m.key[m.set[j]])
		for t, v := range m.column(j) {
			a[t][p] = v - k[t]
		}
	}
	for p := range n {
		at := p
		for i := p + 1; i < n; i++ {
			if math.Abs(a[i][p]) > math.Abs(a[at][p]) {
				at = i
			}
		}
		if math.Abs(a[at][p]) < 1e-11 {
			m.reset()
			return
		}
		a[p], a[at] = a[at], a[p]
		eliminate(a, p)
	}
	for p := range n {
		copy(m.row(p), a[p][n:])
	}
	m.reset()
}

// eliminate clears column p of all rows but the p-th.
func eliminate(a [][]float64, p int) {
	row := a[p]
	by := row[p]
	for k := p; k < len(row); k++ {
		row[k] /= by
	}
	for i, other := range a {
		f := other[p]
		if i == p || f == 0 {
			continue
		}
		for k := p; k < len(row); k++ {
			other[k] -= f * row[k]
		}
	}
}

// value returns the cost of the present mix, penalties included.
func (m *mix) value() (v float64) {
	for p, j := range m.basis {
		v += m.charged(j, m.x[p]) * m.x[p]
	}
	for g, k := range m.key {
		v += m.charged(k, m.xkey[g]) * m.xkey[g]
	}
	return v
}

// use calls visit for every way, but not to cut, that the present mix uses and may use.
func (m *mix) use(visit func(j int, times float64)) {
	one := func(j int32, x float64) {
		if j >= int32(len(m.of)) && !m.off[j] && x > mixTiny {
			visit(int(j), x)
		}
	}
	for p, j := range m.basis {
		one(j, m.x[p])
	}
	for g, k := range m.key {
		one(k, m.xkey[g])
	}
}
