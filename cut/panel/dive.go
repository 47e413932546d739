package panel

import (
	"math"
	"slices"
)

// dive lays out boards one after another as the linear program would have them: the ways that its solution uses wholly,
// or else the one it uses most, are taken, and the program is solved anew for what is left.
type dive struct {
	s     *search
	p     *program
	left  []float64 // net width that is still wanted, by kind of the bound
	scope scope
	cut   [][]segment
	noise float64 // how far the program's word is mixed with chance
}

// diveRounds bounds how often ways are generated before the next is taken.
const diveRounds = 4

// dive lays out all boards for so much net width of each kind of the bound.
func (s *search) dive(p *program, left []float64, noise float64) {
	d := dive{s: s, p: p, left: left, scope: p.all(), cut: make([][]segment, len(s.m.boards)), noise: noise}
	d.run()
}

func (d *dive) run() {
	for j := range d.p.of {
		d.p.lp.off[j] = false
	}
	for !d.s.budget.Over() && d.open() {
		d.solve()
		if !d.take() {
			return
		}
	}
	if !d.open() { // what is cut may fall short of it when it is ripped
		d.s.offer(d.s.rip(d.cut))
	}
}

// open reports whether anything is still wanted.
func (d *dive) open() bool {
	return slices.ContainsFunc(d.left, func(w float64) bool { return w >= 1 })
}

// solve solves the program for what is left.
func (d *dive) solve() {
	p := d.p
	p.aim(d.scope)
	for t, w := range d.left {
		p.lp.right[t] = math.Max(0, w) / p.l.kinds[t].need
	}
	p.lp.reset()
	for range diveRounds {
		before := p.lp.pivots
		p.lp.solve(1000)
		d.s.budget.Spend(1 + (p.lp.pivots-before)*(p.needs()*p.needs()+len(p.ways))/400)
		for t, v := range p.lp.price {
			p.price[t] = math.Max(0, v) / p.l.kinds[t].need
		}
		if _, added := p.lagrange(d.scope, true); added == 0 {
			break
		}
	}
}

// take cuts the boards that the program is sure of; it reports false where it uses none.
func (d *dive) take() bool {
	var best groupWay
	most, whole := 0.0, false
	d.p.use(func(w groupWay, times float64) {
		for ; times > 1-1e-6 && d.scope.hi[w.group] > 0; times-- {
			whole = true
			d.fix(w)
		}
		if v := times + d.noise*d.s.dice.Share(); times > 1e-6 && v > most && !w.crude {
			most, best = v, w
		}
	})
	if !whole && most > 0 {
		whole = d.fix(best)
	}
	return whole
}

// fix cuts a board of the way's group.
func (d *dive) fix(w groupWay) bool {
	g := &d.p.groups[w.group]
	d.scope.hi[w.group]--
	for _, k := range g.boards {
		if len(d.cut[k]) > 0 {
			continue
		}
		segs, ok := d.s.realised(d.p.l, k, w.way)
		if !ok {
			continue
		}
		segs = d.wanted(k, segs)
		d.cut[k] = segs
		for _, sg := range segs {
			d.left[d.p.l.lowIndex(d.s.m.kinds[sg.kind])] -= float64(sg.net)
		}
		return true
	}
	return true
}

// wanted drops the segments that are beyond what is left.
func (d *dive) wanted(k int, segs []segment) []segment {
	over := slices.Clone(d.left)
	for _, g := range segs {
		over[d.p.l.lowIndex(d.s.m.kinds[g.kind])] -= float64(g.net)
	}
	var out []segment
	for i := len(segs) - 1; i >= 0; i-- {
		g := segs[i]
		t := d.p.l.lowIndex(d.s.m.kinds[g.kind])
		if over[t]+float64(g.net) < 1 {
			over[t] += float64(g.net)
			continue
		}
		out = append(out, g)
	}
	slices.Reverse(out)
	if len(out) == len(segs) {
		return segs
	}
	return d.s.closeUp(k, out)
}
