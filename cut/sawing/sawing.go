// Package sawing tells how a layout comes apart at the saw: every cut, where it runs, what must be cut before
// it and what is left after it; and the list that a person follows, grouped by the setting of stop and fence.
//
// The cuts are read off the places of the parts alone, so that any layout has them, also one that was stored
// without. A crosscut goes across the length of the stock and is set by a stop, a rip along it and is set by
// a fence. The setting of a part is what lies between the stop, or the fence, and the near side of the blade:
// the saw cut comes off what stays. Of a cut that only takes something off it is all that goes, saw cut and
// all. Start with [Of].
package sawing

import (
	"cmp"
	"slices"
	"strconv"

	"rodwright/cut"
	"rodwright/length"
)

// Why says what a cut is for.
type Why string

// The purposes of cuts.
const (
	Part   Why = "part"   // what comes off is a part, or is cut into parts later
	Keep   Why = "keep"   // what comes off is an offcut worth keeping
	Square Why = "square" // takes an end or edge of the stock off, so that what follows is measured from a clean one
	Off    Why = "off"    // takes off what serves nothing: a place with a defect, a stretch that is skipped
)

// Cut is one saw cut on one piece of stock.
type Cut struct {
	Piece   int // the place of the stock in Answer.Used
	Machine cut.Machine
	Setting length.Length // what comes off
	Why     Why
	Makes   []string         // tags of the parts in what comes off, one for each piece
	Whole   bool             // what comes off needs no further cut
	A, B    [2]length.Length // the line it runs along, in the middle of the saw cut
	Kept    [2]length.Length // size of the offcut that comes off, where Why is Keep
	After   int              // index of the cut that makes the piece it is made on; -1 for none
	Left    length.Length    // what stays behind the saw cut, in the direction of the setting
}

// Run is what is cut at one setting of a stop or fence, from the moment it is set until it is moved.
type Run struct {
	Machine cut.Machine
	Setting length.Length
	Why     Why // Part, or where all of it is taken off: Square where ends or edges are, else Off
	Steps   []Step
}

// Step is what is cut from one piece of stock in a run.
type Step struct {
	N     int   // its number in the whole list; 0 where ends of sticks are squared
	Piece int   // the place of the stock in Answer.Used
	Cuts  []int // indices into List.Cuts, in order
	Left  length.Length
}

// List is all cuts of a layout in the order in which they are made.
type List struct {
	Cuts     []Cut
	Runs     []Run
	Settings int // how often a stop or fence is set
	Walks    int // how often one goes over from one saw to the other
	AtLeast  int // no order of these cuts has fewer settings and walks together
}

// Fewest reports whether no order of these cuts has fewer settings and walks together.
func (l *List) Fewest() bool { return l.Settings+l.Walks == l.AtLeast }

// Of returns the list of a layout's cuts. Nothing is cut where nothing is used.
func Of(p cut.Problem, used []cut.Used) *List {
	if p.Sticks != nil {
		return ofSticks(p.Sticks, used)
	}
	var cuts []Cut
	for i, u := range used {
		size, ok := p.Size(u.Stock)
		if !ok {
			continue
		}
		c := &comb{piece: i, kerf: p.Kerf(), whole: cut.Rect{Length: size[0], Width: size[1]}, base: len(cuts)}
		c.part(c.whole, blocksOf(u), c.first(p, u), -1)
		cuts = append(cuts, c.cuts...)
	}
	l := &List{Cuts: cuts}
	l.arrange()
	return l
}

// arrange orders the cuts and gathers them into runs and steps.
func (l *List) arrange() {
	tasks := make([]cut.Task, len(l.Cuts))
	for i, c := range l.Cuts {
		tasks[i] = cut.Task{After: c.After, Setting: cut.Setting{On: strconv.Itoa(c.Piece), Machine: c.Machine, Setting: c.stand()}}
	}
	s := cut.Arrange(tasks)
	l.Settings, l.Walks, l.AtLeast = s.Settings, s.Walks, s.AtLeast
	n := 0
	for _, i := range s.Tasks {
		c := l.Cuts[i]
		if k := len(l.Runs) - 1; k < 0 || l.Runs[k].Machine != c.Machine || l.Cuts[l.Runs[k].Steps[0].Cuts[0]].stand() != c.stand() {
			l.Runs = append(l.Runs, Run{Machine: c.Machine, Setting: c.Setting, Why: c.Why})
		}
		r := &l.Runs[len(l.Runs)-1]
		switch {
		case c.Why == Keep:
			r.Why = Part
		case c.Why == Square:
			r.Why = Square
		}
		if k := len(r.Steps) - 1; k < 0 || r.Steps[k].Piece != c.Piece || l.Cuts[r.Steps[k].Cuts[0]].Why != c.Why {
			n++
			r.Steps = append(r.Steps, Step{N: n, Piece: c.Piece})
		}
		t := &r.Steps[len(r.Steps)-1]
		t.Cuts = append(t.Cuts, i)
		t.Left = c.Left
	}
}

// stand tells settings apart: at one number a stop for parts and one for what is taken off, saw cut and all,
// stand a saw cut apart.
func (c Cut) stand() length.Length {
	if c.takesOff() {
		return -c.Setting
	}
	return c.Setting
}

// takesOff reports whether nothing of what comes off is used.
func (c Cut) takesOff() bool { return c.Why == Square || c.Why == Off }

// Order returns the list as the steps of an answer. Ends of sticks that are squared are none of them.
func (l *List) Order(used []cut.Used) (out []cut.Setting) {
	for _, r := range l.Runs {
		for _, s := range r.Steps {
			if s.N == 0 {
				continue
			}
			c := cut.Setting{N: s.N, On: used[s.Piece].Stock, Machine: r.Machine, Setting: r.Setting}
			for _, i := range s.Cuts {
				c.Makes = append(c.Makes, l.Cuts[i].Makes...)
			}
			out = append(out, c)
		}
	}
	return out
}

// Numbers returns for each cut the number of its step.
func (l *List) Numbers() []int {
	out := make([]int, len(l.Cuts))
	for _, r := range l.Runs {
		for _, s := range r.Steps {
			for _, i := range s.Cuts {
				out[i] = s.N
			}
		}
	}
	return out
}

// ofSticks lists the cuts of sticks: one end of each is squared, then all parts of one length are cut, the
// longest first, from every stick that holds some, before the stop is moved. The parts of a stick can be cut
// in any order, so that each length is set once and no order has fewer settings.
func ofSticks(p *cut.StickProblem, used []cut.Used) *List {
	l := &List{}
	left := make([]length.Length, len(used))
	for i, u := range used {
		at := slices.IndexFunc(p.Stock, func(s cut.StickStock) bool { return s.Tag == u.Stock })
		if at < 0 {
			continue
		}
		left[i] = p.Stock[at].Length
		for _, q := range u.Parts {
			x := q.At[0] + q.Size[0] + min(p.Kerf, max(0, left[i]-q.At[0]-q.Size[0])).Half()
			l.Cuts = append(l.Cuts, Cut{
				Piece: i, Machine: cut.Crosscut, Setting: q.Size[0], Why: Part, Makes: []string{q.Tag}, Whole: true,
				A: [2]length.Length{x}, B: [2]length.Length{x}, After: -1,
			})
		}
	}
	order := make([]int, len(l.Cuts))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(l.Cuts[b].Setting, l.Cuts[a].Setting) })
	l.square(p.Trim, used, left)
	for _, i := range order {
		c := &l.Cuts[i]
		left[c.Piece] -= min(c.Setting+p.Kerf, left[c.Piece])
		c.Left = left[c.Piece]
		l.take(i)
	}
	l.AtLeast = l.Settings
	return l
}

// square begins the list with an end of each stick, where the ends are lost.
func (l *List) square(trim length.Length, used []cut.Used, left []length.Length) {
	if trim <= 0 {
		return
	}
	r := Run{Machine: cut.Crosscut, Setting: trim, Why: Square}
	for i := range used {
		if left[i] -= min(trim, left[i]); left[i] > 0 {
			l.Cuts = append(l.Cuts, Cut{Piece: i, Machine: cut.Crosscut, Setting: trim, Why: Square, Whole: true, After: -1, Left: left[i]})
			r.Steps = append(r.Steps, Step{Piece: i, Cuts: []int{len(l.Cuts) - 1}, Left: left[i]})
		}
	}
	if len(r.Steps) > 0 {
		l.Runs = append(l.Runs, r)
	}
}

// take adds a cut of a stick at the end of the list.
func (l *List) take(i int) {
	c := l.Cuts[i]
	if k := len(l.Runs) - 1; k < 0 || l.Runs[k].Why == Square || l.Runs[k].Setting != c.Setting {
		l.Runs = append(l.Runs, Run{Machine: c.Machine, Setting: c.Setting, Why: Part})
		l.Settings++
	}
	r := &l.Runs[len(l.Runs)-1]
	if k := len(r.Steps) - 1; k < 0 || r.Steps[k].Piece != c.Piece {
		r.Steps = append(r.Steps, Step{N: l.last() + 1, Piece: c.Piece})
	}
	t := &r.Steps[len(r.Steps)-1]
	t.Cuts = append(t.Cuts, i)
	t.Left = c.Left
}

// last is the number of the last step.
func (l *List) last() int {
	for k := len(l.Runs) - 1; k >= 0; k-- {
		if n := len(l.Runs[k].Steps); n > 0 {
			return l.Runs[k].Steps[n-1].N
		}
	}
	return 0
}
