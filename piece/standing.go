package piece

import (
	"math"

	"rodwright/length"
)

// Facts are what was measured of a piece that is being built. Where a fact and the drawing differ the fact holds:
// the geometry that [ResolveStanding] sets out is the standing one.
type Facts struct {
	Distances []Distance  // of the standing frame, in the order they were taken
	Panels    []MadePanel // made to another size than drawn
	Pipes     []MadePipe  // made to another length than drawn
}

// Empty reports whether nothing differs from the drawing by a fact.
func (f Facts) Empty() bool { return len(f.Distances) == 0 && len(f.Panels) == 0 && len(f.Pipes) == 0 }

// Distance was measured between two things of the standing frame, by their names: front left post, left end rail,
// top, floor, wall.
type Distance struct {
	From, To string
	Value    length.Length
	Over     Over
	Number   int64         // of the entry that tells it; zero where it follows from a pipe's own length
	Drawn    length.Length // what was drawn when it was measured; zero: not known
}

// Over says which faces of two things a tape was laid to.
type Over string

// The ways to lay a tape.
const (
	Centres Over = ""
	Outside Over = "outside"
	Inside  Over = "inside"
)

// MadePanel is a panel as it was made: along the grain, across it, and thick.
type MadePanel struct {
	Name string
	Size [3]length.Length
}

// MadePipe is a pipe that was made longer than drawn, or shorter where Longer is negative.
type MadePipe struct {
	Name   string
	Longer length.Length
}

// Standing says how the frame stands against the drawing.
type Standing struct {
	Distances []Stood
	Moved     bool // a joint stands elsewhere than drawn
}

// Stood is one measured distance against the drawing and against what was measured before it.
type Stood struct {
	Distance
	Drawn    length.Length // as drawn, laid over the same faces
	Now      length.Length // as the frame stands by all distances that were taken over
	Bearing  Bearing
	Diagonal bool
}

// Bearing says what a measured distance does.
type Bearing uint8

// What a measured distance does.
const (
	Moves       Bearing = iota // a post stands where it says, and openings and seats follow
	Agrees                     // it follows from others within what a tape can tell
	Contradicts                // it and others can't all be: it moves nothing
	Compared                   // it is told against the drawing, and moves nothing
	NoSuchThing                // it names nothing of this piece
	SamePlace                  // the two things do not lie apart
	Lapsed                     // the design has moved there since, and it moves nothing
)

// TapeReach is how far two measurements of one distance may differ and still agree, 1/32 in: half of a tape's
// sixteenth either way at both ends. Common practice, no source.
const TapeReach = length.Inch / 32

// offset is how far something stands from where it is drawn, in plan.
type offset struct{ x, y length.Length }

// stand moves the joints of the frame to where they stand by what was measured. Posts move as a whole; a joint on a
// rail moves by its share of what the rail's ends do. The first of two posts that were measured stays unless the
// second already stands somewhere.
//
// Where the pipe between two posts was made to another length than drawn, that is a distance too; a tape laid on
// the standing frame counts before it.
func (r *rod) stand() error {
	if r.facts.Empty() {
		return nil
	}
	s := &stander{rod: r, off: map[int]offset{}, setX: newForest(len(r.runs)), setY: newForest(len(r.runs))}
	s.out.Standing = &Standing{}
	for _, d := range r.facts.Distances {
		s.take(d)
	}
	for _, p := range r.facts.Pipes {
		s.takePipe(p)
	}
	for i := range s.out.Standing.Distances {
		s.again(&s.out.Standing.Distances[i])
	}
	s.moveJoints()
	return nil
}

// stander moves a frame to where it stands.
type stander struct {
	*rod
	off        map[int]offset // of each post that moved, by its run
	setX, setY *forest        // posts whose distance along that axis is settled
}

// take takes over one measured distance.
func (s *stander) take(d Distance) {
	from, to := s.runNamed(d.From), s.runNamed(d.To)
	out := Stood{Distance: d}
	if from < 0 || to < 0 || s.runs[from].role != PostRole || s.runs[to].role != PostRole {
		out.Drawn, out.Bearing = s.level(d)
		out.Now = out.Drawn
		s.out.Standing.Distances = append(s.out.Standing.Distances, out)
		return
	}
	out.Drawn = s.drawn(from, to) + s.faces(d, from, to)
	axis := s.axis(from, to)
	out.Diagonal = axis == bothAxes
	if d.Drawn != 0 && d.Drawn != out.Drawn {
		out.Bearing = Lapsed
		s.out.Standing.Distances = append(s.out.Standing.Distances, out)
		return
	}
	out.Bearing = s.settle(from, to, axis, d.Value-s.faces(d, from, to))
	s.out.Standing.Distances = append(s.out.Standing.Distances, out)
}

// faces is what a tape laid over that faces shows more than the distance between the axes.
func (s *stander) faces(d Distance, from, to int) length.Length {
	half := (s.runs[from].size.OD + s.runs[to].size.OD).Half()
	switch d.Over {
	case Outside:
		return half
	case Inside:
		return -half
	}
	return 0
}

// axes of plan along which two posts lie apart.
type axes uint8

const (
	noAxis axes = iota
	alongX
	alongY
	bothAxes
)

func (s *stander) axis(from, to int) axes {
	a, b := s.runs[from].start, s.runs[to].start
	switch {
	case a.X != b.X && a.Y != b.Y:
		return bothAxes
	case a.X != b.X:
		return alongX
	case a.Y != b.Y:
		return alongY
	}
	return noAxis
}

func (s *stander) drawn(from, to int) length.Length {
	a, b := s.runs[from].start, s.runs[to].start
	return apart(b.X-a.X, b.Y-a.Y)
}

// apart is the distance in plan, exact where it runs along an axis.
func apart(dx, dy length.Length) length.Length {
	switch {
	case dx == 0:
		return dy.Abs()
	case dy == 0:
		return dx.Abs()
	}
	return length.FromMM(math.Hypot(dx.MM(), dy.MM()))
}

// now is the distance between two posts as they stand.
func (s *stander) now(from, to int) length.Length {
	a, b, p, q := s.runs[from].start, s.runs[to].start, s.off[from], s.off[to]
	if s.axis(from, to) == alongX {
		return (b.X + q.x - a.X - p.x).Abs()
	}
	if s.axis(from, to) == alongY {
		return (b.Y + q.y - a.Y - p.y).Abs()
	}
	return apart(b.X+q.x-a.X-p.x, b.Y+q.y-a.Y-p.y)
}

// settle lets one of two posts stand where the distance between their axes says.
func (s *stander) settle(from, to int, axis axes, value length.Length) Bearing {
	if axis == noAxis {
		return SamePlace
	}
	if axis == bothAxes {
		return s.agrees(from, to, value)
	}
	set := s.setX
	if axis == alongY {
		set = s.setY
	}
	if set.root(from) == set.root(to) {
		return s.agrees(from, to, value)
	}
	s.move(set, from, to, axis, value)
	return Moves
}

func (s *stander) agrees(from, to int, value length.Length) Bearing {
	if (s.now(from, to) - value).Abs() <= TapeReach {
		return Agrees
	}
	return Contradicts
}

// move moves the second post, and all that are settled with it, so that the distance is as measured; where only the
// second is settled with others, the first.
func (s *stander) move(set *forest, from, to int, axis axes, value length.Length) {
	if s.alone(set, from) && !s.alone(set, to) {
		from, to = to, from
	}
	by := s.now(from, to)
	dir := length.Length(1)
	if a, b := s.runs[from].start, s.runs[to].start; axis == alongX && b.X < a.X || axis == alongY && b.Y < a.Y {
		dir = -1
	}
	by = dir * (value - by)
	root := set.root(to)
	for k := range s.runs {
		if s.runs[k].role != PostRole || set.root(k) != root {
			continue
		}
		o := s.off[k]
		if axis == alongX {
			o.x += by
		} else {
			o.y += by
		}
		s.off[k] = o
	}
	set.join(from, to)
}

// alone reports whether no distance was settled from a post yet.
func (s *stander) alone(set *forest, run int) bool {
	for k := range s.runs {
		if k != run && set.root(k) == set.root(run) {
			return false
		}
	}
	return true
}

// takePipe takes over that a level pipe between two posts was made longer or shorter than drawn, unless a tape told
// the distance.
func (s *stander) takePipe(p MadePipe) {
	for i := range s.out.Sticks {
		st := &s.out.Sticks[i]
		if st.Name != p.Name || p.Longer == 0 {
			continue
		}
		from, to := s.postAtNode(st.A), s.postAtNode(st.B)
		axis := noAxis
		if from >= 0 && to >= 0 {
			axis = s.axis(from, to)
		}
		if axis != alongX && axis != alongY {
			return
		}
		value := s.drawn(from, to) + p.Longer
		told := s.told(from, to)
		if bearing := s.settle(from, to, axis, value); !told || bearing == Moves {
			s.out.Standing.Distances = append(s.out.Standing.Distances, Stood{
				Distance: Distance{From: s.runs[from].name, To: s.runs[to].name, Value: value}, Drawn: s.drawn(from, to), Bearing: bearing,
			})
		}
		return
	}
}

// told reports whether a tape told the distance between two posts.
func (s *stander) told(from, to int) bool {
	for _, d := range s.facts.Distances {
		if a, b := s.runNamed(d.From), s.runNamed(d.To); a == from && b == to || a == to && b == from {
			return true
		}
	}
	return false
}

// postAtNode returns the post that passes a joint; -1 where none does.
func (s *stander) postAtNode(node int) int {
	for _, i := range s.out.Nodes[node].Sticks {
		if run := s.stickRun[i]; s.runs[run].role == PostRole {
			return run
		}
	}
	return -1
}

func (s *stander) runNamed(name string) int {
	for k := range s.runs {
		if s.runs[k].name == name {
			return k
		}
	}
	return -1
}

// again tells a distance as the frame stands once all are taken over.
func (s *stander) again(d *Stood) {
	from, to := s.runNamed(d.From), s.runNamed(d.To)
	if from >= 0 && to >= 0 && s.runs[from].role == PostRole && s.runs[to].role == PostRole {
		d.Now = s.now(from, to) + s.faces(d.Distance, from, to)
	}
}

// level returns the drawn height of one thing above another, for distances that are compared only.
func (s *stander) level(d Distance) (length.Length, Bearing) {
	a, knownA := s.height(d.From)
	b, knownB := s.height(d.To)
	switch {
	case !knownA || !knownB:
		return 0, NoSuchThing
	case a == b:
		return 0, SamePlace
	}
	return (b - a).Abs(), Compared
}

// height is the level of the floor, of a panel's top, of a rail's axis or of a post's upper end.
func (s *stander) height(name string) (length.Length, bool) {
	if name == "floor" {
		return 0, true
	}
	for i := range s.out.Panels {
		if s.out.Panels[i].Name == name {
			return s.out.Panels[i].Max.Z, true
		}
	}
	if k := s.runNamed(name); k >= 0 {
		return max(s.runs[k].start.Z, s.runs[k].far().Z), true
	}
	return 0, false
}
