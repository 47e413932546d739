package cut

import (
	"slices"
	"testing"

	"rodwright/length"
)

// Behind a cut at 40 a strip is ripped, and cut at 40 again; another piece is cut at 20. With the stop at 40 the rip
// must stay a choice: to cut at 20 at once would ask for 40 to be set anew.
func TestAStopThatIsStillNeededIsNotMovedInHaste(t *testing.T) {
	cutAt := func(m Machine, setting length.Length, after int) Task {
		return Task{After: after, Setting: Setting{On: "B1", Machine: m, Setting: setting}}
	}
	q := queueOf([]Task{cutAt(Crosscut, 40, -1), cutAt(Rip, 10, 0), cutAt(Crosscut, 40, 1), cutAt(Crosscut, 20, 0)})
	s := q.does(q.begin(), 0) // colours: crosscuts first, the longest first: 40, 20, then the rip
	if got := q.worth(s); !slices.Equal(got, []int{1, 2}) {
		t.Errorf("worth trying are %v", got)
	}
	if s = q.does(q.does(s, 2), 0); !slices.Equal(q.worth(s), []int{1}) {
		t.Errorf("at last only 20 is left, worth trying are %v", q.worth(s))
	}
}
