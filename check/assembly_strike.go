package check

import "slices"

// strikesOf returns all pairs of bodies on the two sides of a thread that strike each other in a whole turn, as far as
// they are in its group still: their rings about its pipe run into each other. The pipe and the fitting themselves are
// in each other, and pipes in one fitting keep clear by the fitting's make.
func (u *undoing) strikesOf(turn int) (out []strike) {
	t := &u.turns[turn]
	side := u.sideOf(turn)
	var there, here []swept
	for i := range u.bodies {
		switch {
		case u.group[i] != u.group[t.pipe]:
		case side[i]:
			here = append(here, t.sweeps(i, &u.bodies[i]))
		default:
			there = append(there, t.sweeps(i, &u.bodies[i]))
		}
	}
	for _, a := range here {
		for _, b := range there {
			if a.body == t.pipe && (b.body == t.fitting || u.inFitting(b.body, t.node)) {
				continue
			}
			if by := a.meet(b); by > 0 {
				out = append(out, strike{a.body, b.body, -1, by})
			}
		}
	}
	for k := range u.panels {
		if !u.lifted[k] {
			out = append(out, u.panelStrikes(k, t, here, there)...)
		}
	}
	return out
}

// swept is what a body sweeps about a thread's pipe: a ring round all of it, and one for each of its rods.
type swept struct {
	body  int
	whole ring
	rings []ring
}

func (t *threadJoint) sweeps(i int, b *body) swept {
	s := swept{body: i, rings: make([]ring, len(b.rods))}
	for k, r := range b.rods {
		s.rings[k] = t.swept(r)
		if k == 0 {
			s.whole = s.rings[0]
		}
		s.whole = s.whole.round(s.rings[k])
	}
	return s
}

// meet says by how much two bodies run into each other; zero or less where they stay clear.
func (s swept) meet(o swept) (by float64) {
	if s.whole.meet(o.whole) <= 0 {
		return 0
	}
	for _, x := range s.rings {
		for _, y := range o.rings {
			by = max(by, x.meet(y))
		}
	}
	return by
}

// inFitting reports whether a body is a pipe that is screwed into a joint.
func (u *undoing) inFitting(body, node int) bool {
	s := u.bodies[body].stick
	return s >= 0 && (u.Sticks[s].A == node || u.Sticks[s].B == node)
}

// panelStrikes tells what a panel that posts pass through does while it lies in the frame. Posts of it on both sides of
// a thread hold it fast, unless one side has but the pipe that is turned, which turns in its hole. Else it goes with
// the side whose posts are in it, and strikes what it meets of the other.
func (u *undoing) panelStrikes(k int, t *threadJoint, here, there []swept) (out []strike) {
	panel := u.panels[k]
	mine, others := panel.among(here), panel.among(there)
	turnsIn := len(mine) == 1 && mine[0] == t.pipe
	held, against := mine, there
	switch {
	case len(mine)+len(others) == 0, turnsIn && len(panel.pipes) == 1: // it lies loose on the pipe that is turned
		return nil
	case len(mine) > 0 && len(others) > 0 && !turnsIn:
		return []strike{{mine[0], others[0], k, 0}}
	case len(others) > 0:
		held, against = others, here
	}
	slab := t.sweeps(panel.body, &u.bodies[panel.body])
	for _, b := range against {
		if by := slab.meet(b); by > 0 && !slices.Contains(panel.pipes, b.body) {
			out = append(out, strike{held[0], b.body, k, by})
		}
	}
	return out
}

// among returns the panel's posts among what is turned.
func (p through) among(of []swept) (out []int) {
	for _, s := range of {
		if slices.Contains(p.pipes, s.body) {
			out = append(out, s.body)
		}
	}
	return out
}
