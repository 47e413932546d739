package frame

// Case is one set of loads. What stands in it is the caller's choice.
type Case struct {
	Name string
	// HeldDown lets the floors hold their feet down too, as if they were bolted there: the frame answers a sum of such
	// cases with the sum of the answers, and never tips.
	HeldDown bool
	Pushes   []Push
	Points   []Point
	Evens    []Even
	Shifts   []Shift
}

// Push is a force (N) and a moment (N·mm) on a node, along and about the axes of the frame.
type Push struct {
	Node   string
	Force  Vec
	Moment Vec
}

// Point is a force (N, along the axes of the frame) on a member, At mm from its start.
type Point struct {
	Member string
	At     float64
	Force  Vec
}

// Even is a load spread evenly along a member from From to To mm of its start, in N per mm of member along
// the axes of the frame. From and To both 0 stand for the whole member.
type Even struct {
	Member   string
	From, To float64
	PerMM    Vec
}

// Shift moves the ground under a hold, in mm or rad: a foot that stands on a block, a wall that leans.
type Shift struct {
	Node    string
	Freedom Freedom
	By      float64
}

// Term is a case and how many times it is taken.
type Term struct {
	By   float64
	Case Case
}

// Combine adds up cases. A frame without one-sided feet answers a sum of cases with the sum of the answers;
// with them it does not, which is why the loads are added here and not the answers. Where one of the cases holds the
// feet down the sum does.
func Combine(name string, terms ...Term) Case {
	sum := Case{Name: name}
	for _, t := range terms {
		sum.HeldDown = sum.HeldDown || t.Case.HeldDown
		for _, p := range t.Case.Pushes {
			sum.Pushes = append(sum.Pushes, Push{p.Node, p.Force.times(t.By), p.Moment.times(t.By)})
		}
		for _, p := range t.Case.Points {
			sum.Points = append(sum.Points, Point{p.Member, p.At, p.Force.times(t.By)})
		}
		for _, e := range t.Case.Evens {
			sum.Evens = append(sum.Evens, Even{e.Member, e.From, e.To, e.PerMM.times(t.By)})
		}
		for _, s := range t.Case.Shifts {
			sum.Shifts = append(sum.Shifts, Shift{s.Node, s.Freedom, s.By * t.By})
		}
	}
	return sum
}
