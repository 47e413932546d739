package journal

import "slices"

// State says how far the making of a part has come.
type State uint8

// The states of a part, in the order of the work. Not every part passes through all: a pipe is never glued, and a
// panel without openings is shaped once it is sized.
const (
	Planned  State = iota // on paper
	InHand                // its stock is bought
	BlankCut              // strips and pieces are sawn
	Glued                 // the blank is glued up
	Sized                 // cut to its finished size; of a pipe: threaded and deburred
	Shaped                // notches, holes and edges are cut
	Filled                // its voids are poured
	Sanded                // of a pipe: cleaned
	Coated                // its finish is on
	Fitted                // it is in the piece
)

var stateWords = [...]string{"planned", "bought", "blank cut", "glued", "sized", "shaped", "filled", "sanded", "finished", "fitted"}

// String returns the state in words.
func (s State) String() string {
	if int(s) < len(stateWords) {
		return stateWords[s]
	}
	return "unknown"
}

// workDone says which state a part has reached once a kind of work of the steps is done to it.
var workDone = []struct {
	work string
	to   State
}{
	{"crosscut", BlankCut}, {"flatten", BlankCut}, {"rip", BlankCut}, {"joint", BlankCut}, {"cut-pipe", BlankCut},
	{"glue", Glued},
	{"flatten-panel", Sized}, {"size", Sized}, {"size-sheet", Sized}, {"thread", Sized}, {"deburr", Sized},
	{"mark", Shaped}, {"notch", Shaped}, {"bore", Shaped}, {"hole-saw", Shaped}, {"cut-out", Shaped}, {"slot", Shaped},
	{"relief", Shaped}, {"profile", Shaped},
	{"pour", Filled},
	{"sand", Sanded}, {"clean-pipe", Sanded}, {"descale", Sanded},
	{"coat", Coated}, {"cure", Coated}, {"coat-pipe", Coated},
	{"wrench", Fitted}, {"dry-fit", Fitted}, {"frame", Fitted}, {"lay", Fitted}, {"flange", Fitted}, {"strap", Fitted}, {"foot", Fitted},
}

// AfterWork returns the state a part has reached once that kind of work is done to it. The word of a state stands for
// all work up to it. It reports false for work that is not done to parts.
func AfterWork(work string) (State, bool) {
	if i := slices.Index(stateWords[:], work); i > int(InHand) {
		return State(i), true
	}
	for _, w := range workDone {
		if w.work == work {
			return w.to, true
		}
	}
	return Planned, false
}

// Works lists the kinds of work that are done to parts, in their order.
func Works() []string {
	out := make([]string, 0, len(workDone))
	for _, w := range workDone {
		out = append(out, w.work)
	}
	return slices.Clip(out)
}
