package panel

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"

	"rodwright/cut"
)

// besideSeed begins the dice of the search beside the first one.
const besideSeed = 2

// runBeside runs the search, and beside it on another core a second one that looks for layouts alone, with other dice. It
// is for a search that time ends, where what is reached depends on the machine in any case: one that nodes end runs alone,
// so that it has the same answer everywhere.
func (s *search) runBeside(ctx context.Context) {
	if runtime.GOMAXPROCS(0) < 2 {
		s.run()
		return
	}
	halt := &halting{Context: ctx}
	var other *search
	var wait sync.WaitGroup
	wait.Go(func() {
		other = newSearch(newModel(s.m.p), cut.NewBudget(halt, cut.Limits{Nodes: cut.Endless})) // a model's tables are filled as it goes: each has its own
		other.dice = cut.NewDice(besideSeed)
		other.unbounded = true
		other.run()
	})
	s.run()
	halt.halt.Store(true)
	wait.Wait()
	s.offer(other.best)
	s.bound = min(max(s.bound, other.bound), s.best.cost)
}

// halting is a context that is also ended by hand, at the next question for its Err.
type halting struct {
	context.Context
	halt atomic.Bool
}

// Err returns why the context has ended; nil before.
func (h *halting) Err() error {
	if h.halt.Load() {
		return context.Canceled
	}
	return h.Context.Err()
}
