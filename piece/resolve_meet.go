package piece

import (
	"slices"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// segment is the part of a run between two joints.
type segment struct {
	run    int
	a, b   int           // nodes
	t0, t1 length.Length // where they are on the run
	joints []pipe.Kind   // couplings and unions that divide it, from a to b
}

// joinRuns finds where runs meet, makes a joint of every meeting and every end, and divides the runs there.
func (r *rod) joinRuns() error {
	cuts := make([][]length.Length, len(r.runs))
	for i := range r.runs {
		cuts[i] = append(cuts[i], 0, r.runs[i].n)
		for k := range i {
			if err := r.meetRuns(k, i, cuts); err != nil {
				return err
			}
		}
	}
	nodeAt := map[Vec]int{}
	node := func(at Vec) int {
		n, ok := nodeAt[at]
		if !ok {
			n = len(r.out.Nodes)
			nodeAt[at] = n
			r.out.Nodes = append(r.out.Nodes, Node{At: at, Panel: -1, Foot: -1})
		}
		return n
	}
	for i := range r.runs {
		slices.Sort(cuts[i])
		on := slices.Compact(cuts[i])
		for k := 1; k < len(on); k++ {
			r.segments = append(r.segments, segment{run: i, a: node(r.runs[i].at(on[k-1])), b: node(r.runs[i].at(on[k])), t0: on[k-1], t1: on[k]})
		}
	}
	return r.nameJoints()
}

// meetRuns adds the point where two runs meet to the cuts of both. Runs that lie in one another are an
// error.
func (r *rod) meetRuns(i, k int, cuts [][]length.Length) error {
	a, b := &r.runs[i], &r.runs[k]
	if a.dir == b.dir {
		if share := a.shares(b); share > 0 {
			return r.fault(b.pos, "move one of them, or let one end where the other begins", "the %s and the %s lie in one another for %s", a.name, b.name, r.text(a.dir.distance(share)))
		}
		return nil
	}
	if t, s, ok := a.crossing(b); ok {
		cuts[i] = append(cuts[i], t)
		cuts[k] = append(cuts[k], s)
	}
	return nil
}

// shares returns for how many steps two runs of one direction lie in one another.
func (u *run) shares(v *run) length.Length {
	w := Vec{v.start.X - u.start.X, v.start.Y - u.start.Y, v.start.Z - u.start.Z}
	var from length.Length
	for _, c := range []struct {
		d int8
		w length.Length
	}{{u.dir.X, w.X}, {u.dir.Y, w.Y}, {u.dir.Z, w.Z}} {
		if c.d != 0 {
			from = c.w * length.Length(c.d)
		}
	}
	if u.at(from) != v.start {
		return 0
	}
	return max(0, min(u.n, from+v.n)-max(0, from))
}

// crossing returns where the axes of two runs of different directions meet, in steps along each, and
// whether they do, ends included.
//
// With w from one start to the other and n = d1 × d2, the axes lie in one plane where w·n = 0, and then
// t = (w × d2)·n ÷ n², s = (w × d1)·n ÷ n². A point that is not on a whole nanometre of both is no meeting.
func (u *run) crossing(v *run) (t, s length.Length, ok bool) {
	w := [3]int64{int64(v.start.X - u.start.X), int64(v.start.Y - u.start.Y), int64(v.start.Z - u.start.Z)}
	d1, d2 := u.dir.ints(), v.dir.ints()
	n := cross(d1, d2)
	square := dot(n, n)
	if square == 0 || dot(w, n) != 0 {
		return 0, 0, false
	}
	tn, sn := dot(cross(w, d2), n), dot(cross(w, d1), n)
	if tn%square != 0 || sn%square != 0 {
		return 0, 0, false
	}
	t, s = length.Length(tn/square), length.Length(sn/square)
	return t, s, t >= 0 && t <= u.n && s >= 0 && s <= v.n
}

func (d Dir) ints() [3]int64 { return [3]int64{int64(d.X), int64(d.Y), int64(d.Z)} }

func cross(a, b [3]int64) [3]int64 {
	return [3]int64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func dot(a, b [3]int64) int64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
