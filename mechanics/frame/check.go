package frame

import (
	"fmt"
	"math"
)

// The bounds of what is taken for a number of this trade. They keep every product within what a float64
// holds to many places, and catch a figure in the wrong unit.
const (
	MostNodes   = 5000
	MostMembers = 10000
	MostFloors  = 200
	MostPanels  = 200
	mostAt      = 1e6   // mm from the origin: 1 km
	leastLong   = 1e-3  // mm, of a member
	leastFigure = 1e-9  // of a modulus, a section figure, a stiffness
	mostFigure  = 1e15  // of the same
	mostLoad    = 1e12  // N, N·mm, N/mm
	offPlane    = 1e-7  // of its size, how far a node may stand off the plane of its panel
	nearlyZero  = 1e-12 // of a direction, when squared against another
)

// names finds nodes and members by name.
type names struct{ node, member map[string]int }

// check refuses what is no frame, naming the place.
func (f Frame) check() (names, error) {
	known := names{map[string]int{}, map[string]int{}}
	if len(f.Nodes) == 0 || len(f.Nodes) > MostNodes || len(f.Members) > MostMembers {
		return known, fmt.Errorf("a frame has 1 to %d nodes and at most %d members, this one %d and %d",
			MostNodes, MostMembers, len(f.Nodes), len(f.Members))
	}
	floors := 0
	for i, n := range f.Nodes {
		if err := n.check(i, known); err != nil {
			return known, err
		}
		known.node[n.Name] = i
		if n.Floor {
			floors++
		}
	}
	if floors > MostFloors {
		return known, fmt.Errorf("%d nodes stand on a floor; at most %d may", floors, MostFloors)
	}
	for i, m := range f.Members {
		if err := f.checkMember(i, m, known); err != nil {
			return known, err
		}
		known.member[m.Name] = i
	}
	return known, f.checkPanels(known)
}

func (n Node) check(i int, known names) error {
	if _, twice := known.node[n.Name]; twice || n.Name == "" {
		return fmt.Errorf("node %d is called %q: every node needs a name of its own", i+1, n.Name)
	}
	if !n.At.within(mostAt) {
		return fmt.Errorf("node %q at %v: coordinates are mm, at most 1 km from the origin", n.Name, n.At)
	}
	for f, k := range n.Hold {
		if !stiffness(k) {
			return fmt.Errorf("node %q holds %g %s: a hold is 0, Rigid or a stiffness from %g to %g", n.Name, k, Freedom(f), leastFigure, mostFigure)
		}
	}
	switch {
	case n.Floor && n.Hold[AlongZ] == 0:
		return fmt.Errorf("node %q stands on a floor that does not push: set its hold along z", n.Name)
	case !n.Floor && n.Gap != 0:
		return fmt.Errorf("node %q has a gap but no floor below it", n.Name)
	case !(n.Gap >= 0 && n.Gap <= mostAt):
		return fmt.Errorf("node %q has a gap of %g mm; it is 0 or more, at most 1 km", n.Name, n.Gap)
	}
	return nil
}

// within reports three finite numbers of at most the given size.
func (a Vec) within(most float64) bool {
	for _, v := range a {
		if !(math.Abs(v) <= most) {
			return false
		}
	}
	return true
}

func stiffness(k float64) bool { return k == 0 || math.IsInf(k, 1) || figure(k) }
func figure(v float64) bool    { return v >= leastFigure && v <= mostFigure }
func maybe(v float64) bool     { return v == 0 || figure(v) }
