// Package frame works out linear static frames in space: straight sticks between nodes, joints that give,
// feet that stand on a floor or are held, panels that keep their shape. It knows no furniture, only numbers.
//
// Units are mm, N, N·mm and MPa (= N/mm²) throughout; turnings are in radians, stiffnesses of a turning
// spring in N·mm/rad. Axes are right-handed, z points up.
//
// The words: a node is a point that moves and turns; a member is a stick between two nodes; an end is where
// a member meets its node, through a turning spring about each of the member's own axes; a hold is what keeps
// a node from moving; a floor hold pushes up and never pulls; a panel is a set of nodes that moves as one
// rigid body in its plane; a case is one set of loads. Start with [New], then [Model.Solve].
//
// The theory is that of small movements: the frame is in balance where it stood before the load. Bending
// follows Euler and Bernoulli, with the give in shear of Timoshenko where a section says its shear areas.
// Joints are put in series with the member and condensed out (G. R. Monforton, T. S. Wu, Matrix Analysis of
// Semi-Rigidly Connected Frames, J. Struct. Div. ASCE 89, ST6, 1963). Buckling is not looked at.
package frame

import "math"

// Vec is a point, a push or a direction along x, y and z.
type Vec [3]float64

// Freedom is one of the six ways a node moves: along an axis or about it.
type Freedom int

// The six freedoms of a node, in the order of every [6]float64 of this package.
const (
	AlongX Freedom = iota
	AlongY
	AlongZ
	AboutX
	AboutY
	AboutZ
)

// String names the freedom as a person says it.
func (f Freedom) String() string {
	if f < AlongX || f > AboutZ {
		return "no freedom"
	}
	return [...]string{"along x", "along y", "along z", "about x", "about y", "about z"}[f]
}

// Rigid is the stiffness of a spring that does not give; it may stand wherever a spring does. A stiffness of
// zero is no spring at all: a hinge at the end of a member, a free way of a node.
var Rigid = math.Inf(1)

// Stiff are the springs of an end that does not give about any axis.
var Stiff = Springs{Twist: Rigid, Y: Rigid, Z: Rigid}

// Clamped is a hold in all six freedoms, Pinned one in the three along the axes.
var (
	Clamped = [6]float64{Rigid, Rigid, Rigid, Rigid, Rigid, Rigid}
	Pinned  = [6]float64{Rigid, Rigid, Rigid, 0, 0, 0}
)

// Frame is what is to be worked out: nodes, the members between them, and panels.
type Frame struct {
	Nodes   []Node
	Members []Member
	Panels  []Panel
}

// Node is a point at which members meet.
type Node struct {
	Name string
	At   Vec        // mm
	Hold [6]float64 // stiffness along (N/mm) and about (N·mm/rad) the axes; 0 free, Rigid held fast
	// Floor makes Hold[AlongZ] one-sided: it pushes up and lets go where it would have to pull.
	Floor bool
	Gap   float64 // mm between an unloaded foot and its floor, 0 or more; for Floor alone
}

// Member is a straight stick between two nodes.
//
// Its own x runs from From to To. Its own z is the part of Up square to that; its own y is z × x, so that
// for a level member z is up and y lies level. A zero Up stands for up, or for x where the member is plumb.
type Member struct {
	Name       string
	From, To   string
	Up         Vec
	Section    Section
	Start, End End
}

// End is how a member meets its node.
type End struct {
	Springs Springs
	// RootY and RootZ are the moduli (mm³) that resist bending about own y and z right at the node, where a
	// thread or a mortise weakens the stick. 0 stands for the modulus of the section.
	RootY, RootZ float64
}

// Springs are the turning stiffnesses (N·mm/rad) of a joint about the member's own x, y and z.
type Springs struct{ Twist, Y, Z float64 }

// Panel is a set of nodes that moves as one rigid body in its plane: they slide and turn together in it, and
// bend out of it each on its own. The nodes must lie in one plane square to Normal.
type Panel struct {
	Name   string
	Nodes  []string
	Normal Vec
}
