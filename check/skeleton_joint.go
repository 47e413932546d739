package check

import (
	"math"

	beams "rodwright/mechanics/frame"
)

// gives are the turning stiffnesses of the joints, N·mm/rad.
type gives struct{ thread, flange, strap float64 }

// The bounds within which joints give. A flange on wood 1 to 20 kN·m/rad and a threaded joint 5 kN·m/rad to rigid are
// estimates, as is a strap's hold about its pipe of 0.1 to 2 kN·m/rad: a push test on the standing frame settles them.
var (
	softest  = gives{thread: 5e6, flange: 1e6, strap: 0.1e6}
	stiffest = gives{thread: beams.Rigid, flange: 20e6, strap: 2e6}
)

// stiffer are the soft joints, each so many times as stiff.
func stiffer(by float64) gives {
	return gives{softest.thread * by, softest.flange * by, softest.strap * by}
}

// springs of a joint about a member's own axes.
func (g gives) springs(j joint) beams.Springs {
	switch j {
	case threaded:
		return beams.Springs{Twist: g.thread, Y: g.thread, Z: g.thread}
	case screwed:
		return beams.Springs{Twist: beams.Rigid, Y: g.flange, Z: g.flange}
	case walled:
		both := g.flange
		if !math.IsInf(g.thread, 1) {
			both = 1 / (1/g.thread + 1/g.flange)
		}
		return beams.Springs{Twist: g.thread, Y: both, Z: both}
	case strapped:
		return beams.Springs{Twist: beams.Rigid, Y: g.flange, Z: g.strap}
	case strapAcross:
		return beams.Springs{Twist: g.flange, Y: g.strap, Z: beams.Rigid}
	case strapAlong:
		return beams.Springs{Twist: g.strap, Y: g.flange, Z: beams.Rigid}
	}
	return beams.Stiff
}

// jointed is the frame with its joints.
func (k *skeleton) jointed(g gives) beams.Frame {
	f := k.frame
	f.Members = append([]beams.Member(nil), f.Members...)
	for i := range f.Members {
		f.Members[i].Start.Springs, f.Members[i].End.Springs = g.springs(k.ends[i][0]), g.springs(k.ends[i][1])
	}
	return f
}

// rolling is the frame on wheels that nothing brakes: a spring of 1 N/mm keeps it where it is against what is left of
// loads that balance.
func rolling(f beams.Frame, floor map[int]int) beams.Frame {
	f.Nodes = append([]beams.Node(nil), f.Nodes...)
	for _, at := range floor {
		f.Nodes[at].Hold[beams.AlongX], f.Nodes[at].Hold[beams.AlongY] = 1, 1
	}
	return f
}
