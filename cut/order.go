package cut

import (
	"cmp"
	"slices"

	"rodwright/length"
)

// Task is one cut that can be made once another has been made.
type Task struct {
	Setting
	After int // index of the task before it; -1 for none
}

// machining is what must stand at a machine for a cut.
type machining struct {
	machine Machine
	setting length.Length
}

// Sequence is an order in which cuts can be made, and how far it is from the fewest changes.
type Sequence struct {
	Tasks    []int // indices, in the order in which they are made
	Settings int   // how often a stop or fence is set
	Walks    int   // how often one goes over from one machine to the other
	AtLeast  int   // no order has fewer settings and walks together
}

// Fewest reports whether no order has fewer settings and walks together.
func (s Sequence) Fewest() bool { return s.Settings+s.Walks == s.AtLeast }

// Arrange orders the tasks for the fewest changes: settings of a stop or fence, and walks from one machine
// to the other. Each machine keeps its setting while work is done at the other. Among orders that it finds
// equal long cuts come first, and the cuts of one setting follow each other stock by stock.
//
// It is exact for the cuts of a shop's job (branching over the settings that cuts wait for, with a bound
// from the chains of cuts that must follow each other), and the best of a quick rule where its work is
// spent; AtLeast tells which.
func Arrange(tasks []Task) Sequence {
	q := queueOf(tasks)
	colours, best := q.quick()
	at := q.bound(q.begin())
	if best > at {
		colours, _, at = q.search(colours, best, at)
	}
	s := Sequence{AtLeast: at}
	s.Tasks = q.lay(colours)
	s.Settings, s.Walks = Changes(tasks, s.Tasks)
	return s
}

// Changes counts how often a stop or fence is set and how often one goes over to the other machine when
// tasks are made in the given order.
func Changes(tasks []Task, order []int) (settings, walks int) {
	stands := map[Machine]length.Length{}
	at := Machine("")
	for _, i := range order {
		t := tasks[i]
		if set, ok := stands[t.Machine]; !ok || set != t.Setting.Setting {
			stands[t.Machine] = t.Setting.Setting
			settings++
		}
		if at != "" && at != t.Machine {
			walks++
		}
		at = t.Machine
	}
	return settings, walks
}

// queue is the tasks as their settings, numbered ("colours"), and what waits for what.
type queue struct {
	colour  []int       // of each task
	kinds   []machining // of each colour: crosscuts first, the longest first
	station []int       // the machine of each colour: 0 crosscut, 1 rip
	next    [][]int     // tasks that come after each
	first   []int       // tasks that come after none
	stock   []int       // of each task
}

func queueOf(tasks []Task) *queue {
	q := &queue{colour: make([]int, len(tasks)), next: make([][]int, len(tasks)), stock: make([]int, len(tasks))}
	for _, t := range tasks {
		q.kinds = append(q.kinds, machining{t.Machine, t.Setting.Setting})
	}
	slices.SortFunc(q.kinds, func(a, b machining) int {
		return cmp.Or(cmp.Compare(a.machine, b.machine), cmp.Compare(b.setting, a.setting))
	})
	q.kinds = slices.Compact(q.kinds)
	number := make(map[machining]int, len(q.kinds))
	for i, k := range q.kinds {
		number[k] = i
		q.station = append(q.station, 0)
		if k.machine == Rip {
			q.station[i] = 1
		}
	}
	stocks := map[string]int{}
	for i, t := range tasks {
		q.colour[i] = number[machining{t.Machine, t.Setting.Setting}]
		if _, ok := stocks[t.On]; !ok {
			stocks[t.On] = len(stocks)
		}
		q.stock[i] = stocks[t.On]
		if t.After < 0 {
			q.first = append(q.first, i)
		} else {
			q.next[t.After] = append(q.next[t.After], i)
		}
	}
	return q
}

// lay puts the tasks in order: all that can be made at each colour in turn, stock by stock.
func (q *queue) lay(colours []int) (out []int) {
	ready := slices.Clone(q.first) // by stock, and so it stays: what comes after a cut takes its place
	slices.SortStableFunc(ready, func(a, b int) int { return cmp.Compare(q.stock[a], q.stock[b]) })
	for _, c := range colours {
		var rest []int
		for _, i := range ready {
			rest = q.make(i, c, &out, rest)
		}
		ready = rest
	}
	return out
}

// make makes a task and what comes after it as far as colour c goes; what is ready then but of other colours
// is added to rest.
func (q *queue) make(i, c int, made *[]int, rest []int) []int {
	if q.colour[i] != c {
		return append(rest, i)
	}
	*made = append(*made, i)
	for _, j := range q.next[i] {
		rest = q.make(j, c, made, rest)
	}
	return rest
}
