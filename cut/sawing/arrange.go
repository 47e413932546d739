package sawing

import (
	"cmp"
	"slices"
	"strconv"

	"rodwright/cut"
	"rodwright/length"
)

// mostOrdered is how many cuts are put in the order of the fewest settings. Of more, nobody has so many sheets
// half cut: one sheet follows another, and on each one stage the other.
const mostOrdered = 400

// arrange orders the cuts. Boards are flattened between the crosscuts and the rips, and what falls off is cut
// again after that: so all cuts of one stage come before those of the next.
func (l *List) arrange(boards bool) cut.Sequence {
	tasks := l.tasks()
	stages := l.stages(boards)
	if len(tasks) <= mostOrdered {
		s := cut.Arrange(tasks)
		if !boards || slices.IsSortedFunc(s.Tasks, func(a, b int) int { return cmp.Compare(stages[a], stages[b]) }) {
			return s
		}
		return sequence(tasks, byStages(tasks, stages), s.AtLeast)
	}
	if boards {
		return sequence(tasks, byStages(tasks, stages), fewestKnown(tasks))
	}
	order := make([]int, len(tasks))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(l.Cuts[a].Piece, l.Cuts[b].Piece), cmp.Compare(stages[a], stages[b]))
	})
	return sequence(tasks, order, fewestKnown(tasks))
}

func (l *List) tasks() []cut.Task {
	tasks := make([]cut.Task, len(l.Cuts))
	for i := range l.Cuts {
		c := &l.Cuts[i]
		tasks[i] = cut.Task{After: c.After, Setting: cut.Setting{On: strconv.Itoa(c.Piece), Machine: c.Machine, Setting: c.stand()}}
	}
	return tasks
}

// stages tells of each cut how often the machine is changed before it comes to its piece of stock. The first
// stage of boards is the crosscuts: a board that needs none waits for those of others.
func (l *List) stages(boards bool) []int {
	out := make([]int, len(l.Cuts))
	for i := range l.Cuts {
		c := &l.Cuts[i]
		switch {
		case c.After < 0 && boards && c.Machine == cut.Rip:
			out[i] = 1
		case c.After >= 0:
			if out[i] = out[c.After]; l.Cuts[c.After].Machine != c.Machine {
				out[i]++
			}
		}
	}
	return out
}

// byStages orders the cuts stage by stage, each for the fewest settings.
func byStages(tasks []cut.Task, stages []int) (order []int) {
	for stage := 0; len(order) < len(tasks); stage++ {
		var of []int // the cuts of this stage
		var own []cut.Task
		place := map[int]int{}
		for i, t := range tasks {
			if stages[i] != stage {
				continue
			}
			place[i] = len(of)
			if before, ok := place[t.After]; ok {
				t.After = before
			} else {
				t.After = -1
			}
			of, own = append(of, i), append(own, t)
		}
		for _, i := range cut.Arrange(own).Tasks {
			order = append(order, of[i])
		}
	}
	return order
}

func sequence(tasks []cut.Task, order []int, atLeast int) cut.Sequence {
	s := cut.Sequence{Tasks: order, AtLeast: atLeast}
	s.Settings, s.Walks = cut.Changes(tasks, order)
	return s
}

// fewestKnown counts what any order must set at least: each setting once, and the way to the second machine.
func fewestKnown(tasks []cut.Task) int {
	type stand struct {
		machine cut.Machine
		setting length.Length
	}
	settings, machines := map[stand]bool{}, map[cut.Machine]bool{}
	for _, t := range tasks {
		settings[stand{t.Machine, t.Setting.Setting}] = true
		machines[t.Machine] = true
	}
	return len(settings) + max(0, len(machines)-1)
}
