package piece

import (
	"math"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// run is a straight line of pipe as the document names it, before it is divided where others meet it.
type run struct {
	name  string // left side rail
	noun  string // side rail: what it is called where its member is clear
	group string
	role  Role
	pos   Pos
	size  pipe.Size
	from  Section
	start Vec           // the lower, left or front end
	dir   Dir           // from there
	n     length.Length // how far, counted along each axis that dir has a part in
	ends  [2]runEnd     // at the start, at the far end
	union bool
}

// runEnd is what an end of a run comes to where it meets no other run.
type runEnd struct {
	open  bool      // nothing closes it: it must meet another run
	fixed bool      // it is screwed to something and can't be in a fitting as well
	kind  pipe.Kind // flange, cap or none
	panel int       // a flange's panel; -1
	wall  bool
	foot  int // -1
	pos   Pos
}

func openEnd(at Pos) runEnd { return runEnd{open: true, panel: -1, foot: -1, pos: at} }

func closedBy(kind pipe.Kind, at Pos) runEnd { return runEnd{kind: kind, panel: -1, foot: -1, pos: at} }

// at returns the point t steps from the start.
func (u *run) at(t length.Length) Vec {
	return Vec{u.start.X + length.Length(u.dir.X)*t, u.start.Y + length.Length(u.dir.Y)*t, u.start.Z + length.Length(u.dir.Z)*t}
}

// far returns the end that is not the start.
func (u *run) far() Vec { return u.at(u.n) }

// distance returns the true length of t steps in direction d, rounded to the nanometre where d slants.
func (d Dir) distance(t length.Length) length.Length {
	switch d.slants() {
	case 1:
		return length.FromMM(t.MM() * math.Sqrt2)
	case 2:
		return length.FromMM(t.MM() * math.Sqrt(3))
	}
	return t
}

// steps returns how many steps in direction d are the given true length.
func (d Dir) steps(l length.Length) length.Length {
	switch d.slants() {
	case 1:
		return length.FromMM(l.MM() / math.Sqrt2)
	case 2:
		return length.FromMM(l.MM() / math.Sqrt(3))
	}
	return l
}

// line returns direction and steps from a to b, and whether a stick can run so: along an axis, or at 45° to
// those it does not run along.
func line(a, b Vec) (d Dir, n length.Length, ok bool) {
	part := func(v length.Length) int8 {
		switch {
		case v > 0:
			return 1
		case v < 0:
			return -1
		}
		return 0
	}
	dx, dy, dz := b.X-a.X, b.Y-a.Y, b.Z-a.Z
	d = Dir{part(dx), part(dy), part(dz)}
	n = max(dx.Abs(), dy.Abs(), dz.Abs())
	for _, v := range []length.Length{dx, dy, dz} {
		if v != 0 && v.Abs() != n {
			return d, n, false
		}
	}
	return d, n, n > 0
}

// forward reports whether a direction leads from the lower, left or front end to the other.
func (d Dir) forward() bool {
	switch {
	case d.Z != 0:
		return d.Z > 0
	case d.X != 0:
		return d.X > 0
	}
	return d.Y > 0
}

// lay turns two points and their ends into the run between them, its start at the lower, left or front one.
func (u run) lay(a, b Vec, endA, endB runEnd) (run, bool) {
	d, n, ok := line(a, b)
	if !d.forward() {
		a, endA, endB, d = b, endB, endA, d.minus()
	}
	u.start, u.dir, u.n, u.ends = a, d, n, [2]runEnd{endA, endB}
	return u, ok
}

// raiseSticks stands the posts, lays the rails, arms and free sticks in space.
func (r *rod) raiseSticks() error {
	for _, raise := range []func() error{r.raisePosts, r.raiseRails, r.raiseArms, r.raiseFree} {
		if err := raise(); err != nil {
			return err
		}
	}
	r.out.Wall = nil
	for i := range r.runs {
		for _, e := range r.runs[i].ends {
			if e.wall {
				r.out.Wall = r.wall
			}
		}
	}
	return nil
}
