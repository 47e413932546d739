// Package sawing tells how a layout comes apart at the saw: every cut, where it runs, what must be cut before
// it and what is left after it; and the list that a person follows, grouped by the setting of stop and fence.
// The solvers end with [Finish], so that an answer's cuts are the steps of that list, with their numbers.
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
	c := &comb{kerf: p.Kerf(), cuts: make([]Cut, 0, mostLikely(used))}
	for i, u := range used {
		size, ok := p.Size(u.Stock)
		if !ok {
			continue
		}
		c.piece, c.whole = i, cut.Rect{Length: size[0], Width: size[1]}
		blocks := blocksOf(u)
		c.part(c.whole, blocks, c.first(p, blocks), -1)
	}
	l := &List{Cuts: c.cuts}
	l.gather(l.arrange(p.Boards != nil))
	return l
}

// mostLikely is how many cuts are to be expected: two for a part, and a few for the edges.
func mostLikely(used []cut.Used) (n int) {
	for _, u := range used {
		n += 2*len(u.Parts) + len(u.Left) + 4
	}
	return n
}

// Finish gives an answer its cuts, those of its list, and returns it.
func Finish(p cut.Problem, a *cut.Answer) *cut.Answer {
	a.Cuts = Of(p, a.Used).Order(a.Used)
	return a
}

// gather puts the cuts into runs and steps, in the order of s.
func (l *List) gather(s cut.Sequence) {
	l.Settings, l.Walks, l.AtLeast = s.Settings, s.Walks, s.AtLeast
	n, from := 0, 0
	for at, i := range s.Tasks {
		c := &l.Cuts[i]
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
			n, from = n+1, at
			r.Steps = append(r.Steps, Step{N: n, Piece: c.Piece})
		}
		t := &r.Steps[len(r.Steps)-1]
		t.Cuts = s.Tasks[from : at+1 : at+1]
		t.Left = c.Left
	}
}

// stand tells settings apart: at one number a stop for parts and one for what is taken off, saw cut and all,
// stand a saw cut apart.
func (c *Cut) stand() length.Length {
	if c.takesOff() {
		return -c.Setting
	}
	return c.Setting
}

// takesOff reports whether nothing of what comes off is used.
func (c *Cut) takesOff() bool { return c.Why == Square || c.Why == Off }

// Order returns the list as the steps of an answer, with the numbers of the list. Ends of sticks that are squared
// are none of them. A step that makes no part takes something off, saw cut and all, or an offcut to keep.
func (l *List) Order(used []cut.Used) (out []cut.Setting) {
	out = make([]cut.Setting, 0, l.last())
	for _, r := range l.Runs {
		for _, s := range r.Steps {
			if s.N == 0 {
				continue
			}
			c := cut.Setting{N: s.N, On: used[s.Piece].Stock, Machine: r.Machine, Setting: r.Setting, Makes: slices.Clip(l.Cuts[s.Cuts[0]].Makes)}
			for _, i := range s.Cuts[1:] {
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
	parts := 0
	for _, u := range used {
		parts += len(u.Parts)
	}
	l := &List{Cuts: make([]Cut, 0, parts+len(used))}
	tags := make([]string, 0, parts)
	left := make([]length.Length, len(used))
	for i, u := range used {
		at := slices.IndexFunc(p.Stock, func(s cut.StickStock) bool { return s.Tag == u.Stock })
		if at < 0 {
			continue
		}
		left[i] = p.Stock[at].Length
		for _, q := range u.Parts {
			tags = append(tags, q.Tag)
			x := q.At[0] + q.Size[0] + min(p.Kerf, max(0, left[i]-q.At[0]-q.Size[0])).Half()
			l.Cuts = append(l.Cuts, Cut{
				Piece: i, Machine: cut.Crosscut, Setting: q.Size[0], Why: Part, Makes: tags[len(tags)-1 : len(tags) : len(tags)], Whole: true,
				A: [2]length.Length{x}, B: [2]length.Length{x}, After: -1,
			})
		}
	}
	order := l.longestFirst()
	l.square(p.Trim, used, left)
	for at, i := range order {
		c := &l.Cuts[i]
		left[c.Piece] -= min(c.Setting+p.Kerf, left[c.Piece])
		c.Left = left[c.Piece]
		l.take(order, at)
	}
	l.AtLeast = l.Settings
	return l
}

// longestFirst orders the cuts by their settings, those of one setting as they are.
func (l *List) longestFirst() []int {
	type stop struct {
		at length.Length
		i  int
	}
	stops := make([]stop, len(l.Cuts))
	for i := range stops {
		stops[i] = stop{l.Cuts[i].Setting, i}
	}
	slices.SortFunc(stops, func(a, b stop) int { return cmp.Or(cmp.Compare(b.at, a.at), cmp.Compare(a.i, b.i)) })
	order := make([]int, len(stops))
	for k, s := range stops {
		order[k] = s.i
	}
	return order
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

// take adds a cut of a stick, that at one place of an order, at the end of the list.
func (l *List) take(order []int, at int) {
	c := &l.Cuts[order[at]]
	if k := len(l.Runs) - 1; k < 0 || l.Runs[k].Why == Square || l.Runs[k].Setting != c.Setting {
		l.Runs = append(l.Runs, Run{Machine: c.Machine, Setting: c.Setting, Why: Part})
		l.Settings++
	}
	r := &l.Runs[len(l.Runs)-1]
	if k := len(r.Steps) - 1; k < 0 || r.Steps[k].Piece != c.Piece {
		r.Steps = append(r.Steps, Step{N: l.last() + 1, Piece: c.Piece})
	}
	t := &r.Steps[len(r.Steps)-1]
	t.Cuts = order[at-len(t.Cuts) : at+1 : at+1]
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
