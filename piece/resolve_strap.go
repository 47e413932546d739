package piece

import (
	"rodwright/length"
	"rodwright/trade/pipe"
)

// seatOnRails notes where a panel lies on the sticks of a rail or arm group, and where the straps stand that
// hold it there.
func (r *rod) seatOnRails(p *FlatPanel, s Seat) error {
	found := false
	for k := range r.runs {
		u := &r.runs[k]
		if !u.carries(s.Group) {
			continue
		}
		t0, t1, ok := u.under(p)
		if !ok {
			continue
		}
		found = true
		r.bearings(p, k, t0, t1)
		r.straps(p, k, t0, t1)
	}
	if !found {
		return r.fault(s.Pos, "move the panel or the rails", "%s lies on %s, but none of these passes under it", p.Name, s.Group)
	}
	return nil
}

// under returns the part of a level run that a panel covers in plan, in steps from its start.
func (u *run) under(p *FlatPanel) (t0, t1 length.Length, ok bool) {
	t0, t1 = 0, u.n
	for _, axis := range []struct {
		at, lo, hi length.Length
		d          int8
	}{{u.start.X, p.Min.X, p.Max.X, u.dir.X}, {u.start.Y, p.Min.Y, p.Max.Y, u.dir.Y}} {
		switch axis.d {
		case 0:
			if axis.at < axis.lo || axis.at > axis.hi {
				return 0, 0, false
			}
		case 1:
			t0, t1 = max(t0, axis.lo-axis.at), min(t1, axis.hi-axis.at)
		default:
			t0, t1 = max(t0, axis.at-axis.hi), min(t1, axis.at-axis.lo)
		}
	}
	return t0, t1, t0 < t1
}

// bearings adds one seat for each stick of the run that the panel lies on, at the middle of what it covers.
func (r *rod) bearings(p *FlatPanel, run int, t0, t1 length.Length) {
	u := &r.runs[run]
	for i, of := range r.stickRun {
		if of != run {
			continue
		}
		a, b := r.stepsTo(u, r.out.Sticks[i].A), r.stepsTo(u, r.out.Sticks[i].B)
		if a, b = max(a, t0), min(b, t1); a < b {
			at := u.at(a + (b - a).Half())
			p.Seats = append(p.Seats, PanelSeat{Kind: OnRails, Node: -1, Stick: i, At: [2]length.Length{at.X, at.Y}, Foot: -1})
		}
	}
}

// stepsTo returns how far along a run one of its nodes is.
func (r *rod) stepsTo(u *run, node int) length.Length {
	_, n, _ := line(u.start, r.out.Nodes[node].At)
	return n
}

// strapRoom is how much clear pipe each strap takes where the shop's number of straps is taken for want of
// the maker's: 3 in, common practice, no source. One strap goes onto any pipe that is longer than the strap
// is wide, 3/4 in.
const (
	strapRoom = 3 * length.Inch
	strapWide = 3 * length.Inch / 4
)

// straps adds the straps of a panel on one run: spread so that each holds an equal part of the pipe that is
// clear of fittings, at (i − ½)/n of it.
func (r *rod) straps(p *FlatPanel, run int, t0, t1 length.Length) {
	n := p.Spec.Straps
	clear, total := r.clearOf(run, t0, t1)
	if n < 0 {
		n = min(r.shop.Settings.Straps, max(1, int(total/strapRoom)))
	}
	if total < strapWide {
		return
	}
	u := &r.runs[run]
	for i := range n {
		along := total.Scale(int64(2*i+1), int64(2*n))
		for _, c := range clear {
			if along > c.t1-c.t0 {
				along -= c.t1 - c.t0
				continue
			}
			at := u.at(c.t0 + along)
			p.Seats = append(p.Seats, PanelSeat{Kind: OnRails, Node: -1, Stick: c.stick, At: [2]length.Length{at.X, at.Y}, Strap: true, Foot: -1})
			break
		}
	}
}

// clearPipe is a part of a run where nothing but the pipe is.
type clearPipe struct {
	stick  int
	t0, t1 length.Length
}

// clearOf returns the parts of a run between t0 and t1 that are clear of fittings, and their sum.
func (r *rod) clearOf(run int, t0, t1 length.Length) (out []clearPipe, total length.Length) {
	u := &r.runs[run]
	for i, of := range r.stickRun {
		if of != run {
			continue
		}
		s := &r.out.Sticks[i]
		a := r.stepsTo(u, s.A) + u.dir.steps(r.reach(s.A))
		b := r.stepsTo(u, s.B) - u.dir.steps(r.reach(s.B))
		if a, b = max(a, t0), min(b, t1); a < b {
			out = append(out, clearPipe{i, a, b})
			total += b - a
		}
	}
	return out, total
}

// reach is how far a joint's fitting covers the pipe from its centre or face.
func (r *rod) reach(node int) length.Length {
	n := &r.out.Nodes[node]
	if n.Kind == pipe.None {
		return 0
	}
	return n.Fitting.CentreToEnd
}
