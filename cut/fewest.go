package cut

import (
	"container/heap"
	"encoding/binary"
	"slices"
)

// stand is a moment of an order of cuts: what can be made next, what both machines are set to, and where
// one stands.
type stand struct {
	ready []int  // tasks: all that is open, so that nothing of a set colour is left ready
	set   [2]int // colour at each machine, -1 before the first
	at    int    // machine, -1 before the first cut
	cost  int    // changes so far
	least int    // cost and the bound of what is left
	turn  int    // the order in which it was thought of, so that equals never fall by chance
	from  *stand
	by    int // the colour that led here
}

func (q *queue) begin() *stand {
	return &stand{ready: slices.Clone(q.first), set: [2]int{-1, -1}, at: -1, by: -1}
}

// does makes all that can be made at colour c.
func (q *queue) does(s *stand, c int) *stand {
	m := q.station[c]
	out := &stand{set: s.set, at: m, cost: s.cost + q.changes(s, c), from: s, by: c}
	out.set[m] = c
	var made []int
	for _, i := range s.ready {
		out.ready = q.make(i, c, &made, out.ready)
	}
	return out
}

// changes counts what must be changed for colour c: its setting, where it does not stand, and the way to its
// machine.
func (q *queue) changes(s *stand, c int) (n int) {
	m := q.station[c]
	if s.set[m] != c {
		n++
	}
	if s.at >= 0 && s.at != m {
		n++
	}
	return n
}

// choices lists the colours of the tasks that are ready, in ascending order.
func (q *queue) choices(s *stand) (out []int) {
	for _, i := range s.ready {
		out = append(out, q.colour[i])
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// bound returns a number of changes that no order of what is left has fewer of.
//
// Along a chain of cuts that must follow each other a setting must be made anew each time another setting
// of its machine stands before it in the chain; any order of all chains makes it at least as often as the
// chain that asks for it most often. Settings differ, so that these numbers add up. Of the machines alone
// the same holds for walks, and each machine that is still needed must be walked to. What stands at the
// machines now costs nothing at first.
func (q *queue) bound(s *stand) int {
	w := &chains{q: q, count: make([]int, len(q.kinds)), most: make([]int, len(q.kinds)), set: s.set, at: s.at}
	for _, i := range s.ready {
		w.along(i)
	}
	sum := 0
	for _, n := range w.most {
		sum += n
	}
	apart := -1 // machines needed but the one that is stood at, or the first
	for m, needed := range w.needed {
		if needed && m != s.at {
			apart++
		}
	}
	if s.at >= 0 {
		apart++
	}
	return sum + max(w.mostWalks, apart, 0)
}

// chains counts along the chains of cuts that are left.
type chains struct {
	q         *queue
	count     []int // of settings of each colour, along the chain that is gone along
	most      []int // the greatest count of any chain
	set       [2]int
	at        int
	walks     int
	mostWalks int
	needed    [2]bool
}

// along goes from a task to all that come after it, and back.
func (w *chains) along(i int) {
	c := w.q.colour[i]
	m := w.q.station[c]
	set, at, walks := w.set[m], w.at, w.walks
	w.needed[m] = true
	if set != c {
		w.count[c]++
		w.most[c] = max(w.most[c], w.count[c])
	}
	if at >= 0 && at != m {
		w.walks++
		w.mostWalks = max(w.mostWalks, w.walks)
	}
	w.set[m], w.at = c, m
	for _, j := range w.q.next[i] {
		w.along(j)
	}
	w.set[m], w.at, w.walks = set, at, walks
	if set != c {
		w.count[c]--
	}
}

// The work that one order may take, in tasks looked at: a few milliseconds for the search, less for the quick
// rule, which looks one setting ahead only as long as that lasts. standWork is what a stand takes besides.
const (
	searchWork = 100_000
	lookWork   = 60_000
	standWork  = 40
)

// quick finds an order by a rule: next comes the colour that leaves the least to be hoped for, of equals
// the one that most cuts wait for, then crosscuts, then the longest.
func (q *queue) quick() (colours []int, changes int) {
	s := q.begin()
	waiting := make([]int, len(q.kinds))
	for work := 0; len(s.ready) > 0; work += len(s.ready) {
		clear(waiting)
		for _, i := range s.ready {
			waiting[q.colour[i]]++
		}
		best, least := -1, 0
		for c, n := range waiting {
			if n == 0 {
				continue
			}
			hope := q.changes(s, c)
			if work < lookWork {
				t := q.does(s, c)
				hope = t.cost + q.bound(t)
				work += len(q.colour)
			}
			if best < 0 || hope < least || hope == least && n > waiting[best] {
				best, least = c, hope
			}
		}
		colours = append(colours, best)
		s = q.does(s, best)
		s.from = nil
	}
	return colours, s.cost
}

// search looks for the fewest changes among all orders, the most promising first, as long as its work
// lasts. colours and changes are what is known, least a bound; it returns what is known then.
func (q *queue) search(colours []int, changes, least int) ([]int, int, int) {
	open := &stands{}
	start := q.begin()
	start.least = least
	heap.Push(open, start)
	seen := map[string]int{}
	turns := 0
	for work := 0; open.Len() > 0 && work < searchWork; {
		s := heap.Pop(open).(*stand)
		least = max(least, s.least)
		if s.least >= changes {
			return colours, changes, changes
		}
		if len(s.ready) == 0 {
			return s.path(), s.cost, s.cost
		}
		work += len(q.colour)
		for _, c := range q.worth(s) {
			t := q.does(s, c)
			t.least = max(t.cost+q.bound(t), s.least)
			work += len(q.colour) + standWork
			key := t.key()
			if known, ok := seen[key]; t.least >= changes || ok && known <= t.cost {
				continue
			}
			seen[key] = t.cost
			turns++
			t.turn = turns
			heap.Push(open, t)
		}
	}
	if open.Len() == 0 {
		return colours, changes, changes
	}
	return colours, changes, min(changes, max(least, (*open)[0].least))
}

// worth lists the colours that are worth trying next. A colour of the machine that one stands at whose cuts
// are all ready, while nothing is left for what that machine is set to, is best made at once: it must be
// set once at least, and no order is made worse by moving it here.
func (q *queue) worth(s *stand) []int {
	all := q.choices(s)
	if s.at < 0 {
		return all
	}
	later := make([]bool, len(q.kinds)) // colours with cuts that are not ready, nor become so at that colour alone
	var look func(i, above int)
	look = func(i, above int) {
		c := q.colour[i]
		if above >= 0 && above != c {
			later[c] = true
		}
		run := above
		if above < 0 || above == c {
			run = c
		} else {
			run = len(q.kinds) // of no colour alone
		}
		for _, j := range q.next[i] {
			look(j, run)
		}
	}
	for _, i := range s.ready {
		look(i, -1)
	}
	if later[s.set[s.at]] || slices.Contains(all, s.set[s.at]) {
		return all
	}
	for _, c := range all {
		if q.station[c] == s.at && !later[c] {
			return []int{c}
		}
	}
	return all
}

// path is the colours that led to s.
func (s *stand) path() (out []int) {
	for ; s.from != nil; s = s.from {
		out = append(out, s.by)
	}
	slices.Reverse(out)
	return out
}

// key is the same for stands from which the same is left to be done.
func (s *stand) key() string {
	b := make([]byte, 0, 2*len(s.ready)+6)
	for _, n := range []int{s.set[0], s.set[1], s.at} {
		b = binary.AppendVarint(b, int64(n))
	}
	for _, i := range s.ready {
		b = binary.AppendVarint(b, int64(i))
	}
	return string(b)
}

// stands is a heap: the most promising first, of equals the one that is farther on, then the older.
type stands []*stand

func (h stands) Len() int { return len(h) }
func (h stands) Less(i, j int) bool {
	a, b := h[i], h[j]
	if a.least != b.least {
		return a.least < b.least
	}
	if a.cost != b.cost {
		return a.cost > b.cost
	}
	return a.turn < b.turn
}
func (h stands) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *stands) Push(x any)   { *h = append(*h, x.(*stand)) }
func (h *stands) Pop() any {
	old := *h
	n := len(old)
	x := old[n-1]
	old[n-1] = nil
	*h = old[:n-1]
	return x
}
