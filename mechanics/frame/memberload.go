package frame

import (
	"fmt"
	"math"
)

// spot is a force on a member along its own axes.
type spot struct {
	at    float64
	force Vec
}

// spread is an even load on a part of a member along its own axes.
type spread struct {
	from, to float64
	perMM    Vec
}

// burden is all that one case lays on one member.
type burden struct {
	spots   []spot
	spreads []spread
}

// burdens sorts the loads of a case by member.
func (m *Model) burdens(c Case) (map[int]*burden, error) {
	all := map[int]*burden{}
	of := func(i int) *burden {
		if all[i] == nil {
			all[i] = &burden{}
		}
		return all[i]
	}
	for _, p := range c.Points {
		i, is := m.names.member[p.Member]
		switch {
		case !is:
			return nil, fmt.Errorf("case %q: a load stands on %q, which is no member of the frame", c.Name, p.Member)
		case !(p.At >= 0 && p.At <= m.sticks[i].long) || !p.Force.within(mostLoad):
			return nil, fmt.Errorf("case %q: load %v at %g mm of member %q, which is %.6g mm long", c.Name, p.Force, p.At, p.Member, m.sticks[i].long)
		}
		b := of(i)
		b.spots = append(b.spots, spot{p.At, p.Force.along(&m.sticks[i].axes)})
	}
	for _, e := range c.Evens {
		i, is := m.names.member[e.Member]
		if !is {
			return nil, fmt.Errorf("case %q: a load lies on %q, which is no member of the frame", c.Name, e.Member)
		}
		long := m.sticks[i].long
		if e.From == 0 && e.To == 0 {
			e.To = long
		}
		if !(e.From >= 0 && e.To > e.From && e.To <= long) || !e.PerMM.within(mostLoad) {
			return nil, fmt.Errorf("case %q: load %v from %g to %g mm of member %q, which is %.6g mm long", c.Name, e.PerMM, e.From, e.To, e.Member, long)
		}
		b := of(i)
		b.spreads = append(b.spreads, spread{e.From, e.To, e.PerMM.along(&m.sticks[i].axes)})
	}
	return all, nil
}

// lumps are the spots that act on the ends as the burden does. What the ends feel of a spot is at most a cubic
// of its place, so that the two places of Gauss stand for an even load without error.
func (b *burden) lumps() []spot {
	all := append([]spot(nil), b.spots...)
	for _, s := range b.spreads {
		middle, half := (s.from+s.to)/2, (s.to-s.from)/2
		off := half / math.Sqrt(3)
		all = append(all, spot{middle - off, s.perMM.times(half)}, spot{middle + off, s.perMM.times(half)})
	}
	return all
}

// held are the forces with which the nodes hold a loaded member whose ends do not move, and the forces of
// its strains among them. The member is first laid on two rests, its start held lengthwise; what it strains
// there is then forced back. The turnings of the ends on two rests are P ab(L+b)/6LEI and P ab(L+a)/6LEI
// (Roark's Formulas for Stress and Strain, Table 8.1 case 1e, from memory); give in shear adds nothing to
// them, since the shear of a beam on two rests adds up to nothing over its length.
func (s *stick) held(m Member, b *burden) (ends [12]float64, q [strains]float64) {
	var strain [strains]float64
	var start, end Vec
	c, l := m.Section, s.long
	for _, p := range b.lumps() {
		a, rest := p.at, l-p.at
		start = start.minus(Vec{p.force[0], p.force[1] * rest / l, p.force[2] * rest / l})
		end = end.minus(Vec{0, p.force[1] * a / l, p.force[2] * a / l})
		strain[stretch] += p.force[0] * a / (c.E * c.Area)
		first, last := a*rest*(l+rest)/(6*l), a*rest*(l+a)/(6*l)
		strain[startY] -= p.force[2] * first / (c.E * c.IY)
		strain[endY] += p.force[2] * last / (c.E * c.IY)
		strain[startZ] += p.force[1] * first / (c.E * c.IZ)
		strain[endZ] -= p.force[1] * last / (c.E * c.IZ)
	}
	q = s.forces(strain)
	for i := range q {
		q[i] = -q[i]
	}
	ends = s.onEnds(q)
	s.axes.back(start).addTo(ends[:], 0)
	s.axes.back(end).addTo(ends[:], 6)
	return ends, q
}
