package main

import (
	"runtime"
	"sync"
	"sync/atomic"
	"time"
)

// The search puts cell after cell behind the front: into the present row, a new row, a new section or a new plate. A
// cell holds a pane, two panes as long above one another, or a pane above a flaw. Of all fronts that hold about as
// much the best by what they enclose over what they hold are kept, without those behind another that holds the same
// panes, and the whole is done again with more until the time is over (Libralesso and Fontan, "An anytime tree search
// algorithm for the 2018 ROADEF/EURO challenge glass cutting problem", arXiv 2004.00963: there a memory bounded A*;
// here beams that grow, one on every core).

// opening says what a cell begins.
type opening uint8

const (
	inRow opening = iota
	newRow
	newSection
	newPlate
)

// front is a state of the search: the panes cut so far, and where the next may come.
type front struct {
	before *front
	under  *front // the last of the row below in the section
	cell
	open  opening
	fixed bool // the row can't be wider: a cell with a cut inside fills it

	plate  int
	x0, x1 int // the present section
	y0, y1 int // the present row
	end    int // of the last cell in the row
	far    int // where the row of the section ends that reaches farthest
	top    int // of the highest pane in the row, or the least a row may be wide
	turn   []uint16
	same   uint64 // equal for the same panes
	held   int    // area of panes
	count  int
}

// cell is what one cell of a row holds.
type cell struct {
	pane int  // the one below
	at   flaw // its rectangle
	over int  // the pane above it, -1 for none
	high int  // where that ends
}

// none is no pane.
const none = -1

// glassManner is a way to compare fronts: how fine the levels of area are, and whether it counts that the panes cut are
// few and large.
type glassManner struct {
	levels int // for each pane
	large  bool
}

// glassManners take turns: none is the best for every problem.
var glassManners = []glassManner{{30, true}, {30, false}, {12, true}, {100, true}, {6, false}}

// Fronts that a beam keeps for each pane: of the first beam, of the narrowest after it, and how much each round of
// manners keeps more than the one before.
const (
	firstWide = 12
	leastWide = 100
	widenBy   = 1.6
	mostWide  = 1e7
)

// glassRun is one search on all cores.
type glassRun struct {
	g     *glass
	until time.Time
	clock func() time.Time
	task  atomic.Int64
	waste atomic.Int64 // of the best, to leave out what can't be better
	mu    sync.Mutex
	best  *front
}

// search returns the best front that holds all panes; the first, narrow beam is always ended.
func (g *glass) search(until time.Time, clock func() time.Time) *front {
	r := &glassRun{g: g, until: until, clock: clock}
	r.waste.Store(1 << 62)
	r.beam(firstWide, glassManners[0], true)
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(r.work)
	}
	workers.Wait()
	return r.best
}

// work takes one beam after another until the time is over.
func (r *glassRun) work() {
	for !r.over() {
		n := int(r.task.Add(1) - 1)
		wide := float64(leastWide)
		for range n / len(glassManners) {
			wide *= widenBy
		}
		if wide > mostWide {
			return
		}
		r.beam(int(wide), glassManners[n%len(glassManners)], false)
	}
}

func (r *glassRun) over() bool { return r.clock().After(r.until) }

// found takes a layout of all panes.
func (r *glassRun) found(f *front) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.best == nil || f.total() < r.best.total() {
		r.best = f
		r.waste.Store(int64(f.total() - r.g.area))
	}
}

// beam searches level by level, keeping so many fronts for each pane; a level is what holds about the same area, so that
// one waste compares with another.
func (r *glassRun) beam(wide int, how glassManner, mustEnd bool) {
	g := r.g
	b := &glassBeam{run: r, how: how, levels: make([]glassLevel, (how.levels+1)*len(g.panes)+1), next: make([]int, len(g.stacks))}
	for i := range b.levels {
		b.levels[i].wide = max(1, wide/how.levels)
	}
	b.levels[0].add(&front{plate: -1, turn: make([]uint16, len(g.stacks)), cell: cell{pane: none, over: none}}, 0)
	for b.at = range b.levels {
		level := &b.levels[b.at]
		if len(level.all) == 0 {
			continue
		}
		if !mustEnd && r.over() {
			return
		}
		level.thin()
		for n, f := range level.all {
			if !mustEnd && n%16 == 15 && r.over() {
				return
			}
			b.after(f.front)
		}
		level.all = nil
	}
}

// glassBeam is one beam.
type glassBeam struct {
	run    *glassRun
	how    glassManner
	levels []glassLevel
	at     int   // the level that is being left
	next   []int // the pane whose turn it is in each stack
	placed bool
}

// add keeps a front where it is good enough for its level.
func (b *glassBeam) add(n *front) {
	b.placed = true
	if n.count == len(b.run.g.panes) {
		f := *n
		b.run.found(&f)
		return
	}
	if l, rank := b.level(n.enclosed(), n.held, n.count); l != nil {
		f := *n
		l.add(&f, rank)
	}
}

// level is the level of a front that encloses and holds so much in so many panes, and its rank there; nil where it is
// not good enough.
func (b *glassBeam) level(enclosed, held, count int) (*glassLevel, float64) {
	g := b.run.g
	if int64(enclosed-held) >= b.run.waste.Load() {
		return nil, 0
	}
	rank := b.how.promise(enclosed, held, count)
	at := max(b.at+1, held*b.how.levels*len(g.panes)/g.area)
	if l := &b.levels[at]; l.takes(rank) {
		return l, rank
	}
	return nil, 0
}

// hopeful reports whether a cell that ends at x and y can be good enough, if no flaw is in its way.
func (b *glassBeam) hopeful(n *front, x, y, held int) bool {
	count := n.count + 1
	if n.over != none {
		count++
	}
	if count == len(b.run.g.panes) {
		return true
	}
	y1 := max(n.top, y)
	x1 := max(n.x0+leastFirst, n.far, x)
	enclosed := (n.plate*plateLength+n.x0)*plateWidth + n.y0*(x1-n.x0) + (y1-n.y0)*(x-n.x0)
	l, _ := b.level(enclosed, n.held+held, count)
	return l != nil
}

// promise says how good a front is; the less the better. The second form is that of Libralesso and Fontan's guide by
// which large panes come first (from memory).
func (how glassManner) promise(enclosed, held, count int) float64 {
	wasted := 1 - float64(held)/float64(enclosed)
	if how.large {
		return wasted * float64(count) / float64(held)
	}
	return wasted
}

// enclosed is the area before the front.
func (f *front) enclosed() int {
	return (f.plate*plateLength+f.x0)*plateWidth + f.y0*(f.x1-f.x0) + (f.y1-f.y0)*(f.end-f.x0)
}

// total is the area up to the last section's end: what a layout that ends here takes.
func (f *front) total() int { return (f.plate*plateLength + f.x1) * plateWidth }
