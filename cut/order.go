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

// machining is what must be changed at a machine between two cuts.
type machining struct {
	machine Machine
	setting length.Length
}

// Order returns the tasks in an order in which they can be made, with as few changes of setting as a
// simple rule finds: the setting that most of the possible cuts need is made next, and all that can be
// made with it are. Cuts that follow each other on one piece of stock at one setting become one step.
func Order(tasks []Task) (out []Setting) {
	after := make([][]int, len(tasks))
	ready := map[machining][]int{}
	open := func(i int) {
		k := machining{tasks[i].Machine, tasks[i].Setting.Setting}
		ready[k] = append(ready[k], i)
	}
	for i, t := range tasks {
		if t.After < 0 {
			open(i)
		} else {
			after[t.After] = append(after[t.After], i)
		}
	}
	for len(ready) > 0 {
		k := busiest(ready)
		for len(ready[k]) > 0 {
			i := ready[k][0]
			ready[k] = ready[k][1:]
			out = appendStep(out, tasks[i].Setting)
			for _, j := range after[i] {
				open(j)
			}
		}
		delete(ready, k)
	}
	for i := range out {
		out[i].N = i + 1
	}
	return out
}

// busiest returns the setting that most cuts wait for; of equals the greatest, crosscuts first.
func busiest(ready map[machining][]int) (best machining) {
	keys := make([]machining, 0, len(ready))
	for k := range ready {
		keys = append(keys, k)
	}
	return slices.MinFunc(keys, func(a, b machining) int {
		return cmp.Or(cmp.Compare(len(ready[b]), len(ready[a])), cmp.Compare(a.machine, b.machine),
			cmp.Compare(b.setting, a.setting))
	})
}

func appendStep(out []Setting, s Setting) []Setting {
	if n := len(out); n > 0 && out[n-1].On == s.On && out[n-1].Machine == s.Machine && out[n-1].Setting == s.Setting {
		out[n-1].Makes = append(out[n-1].Makes, s.Makes...)
		return out
	}
	s.Makes = slices.Clone(s.Makes)
	return append(out, s)
}
