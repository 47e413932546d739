package frame

import "fmt"

func (f Frame) checkMember(i int, m Member, known names) error {
	if _, twice := known.member[m.Name]; twice || m.Name == "" {
		return fmt.Errorf("member %d is called %q: every member needs a name of its own", i+1, m.Name)
	}
	from, isFrom := known.node[m.From]
	to, isTo := known.node[m.To]
	if !isFrom || !isTo {
		return fmt.Errorf("member %q runs from %q to %q: both must be nodes of the frame", m.Name, m.From, m.To)
	}
	run := f.Nodes[to].At.minus(f.Nodes[from].At)
	if long := run.length(); long < leastLong {
		return fmt.Errorf("member %q from %q to %q is %g mm long: its ends must be apart", m.Name, m.From, m.To, long)
	}
	if !m.Up.within(mostAt) {
		return fmt.Errorf("member %q has up %v, which is no direction", m.Name, m.Up)
	}
	if m.Up != (Vec{}) && !(m.Up.length() > leastFigure && m.Up.unit().cross(run.unit()).length() > 1e-6) {
		return fmt.Errorf("member %q has up %v along itself: it must point across", m.Name, m.Up)
	}
	if err := m.Section.check(m.Name); err != nil {
		return err
	}
	for _, end := range []struct {
		name string
		End
	}{{"start", m.Start}, {"end", m.End}} {
		if err := end.check(m.Name, end.name); err != nil {
			return err
		}
	}
	return nil
}

func (s Section) check(member string) error {
	for _, v := range []struct {
		name  string
		value float64
	}{
		{"modulus of elasticity", s.E},
		{"shear modulus", s.G},
		{"area", s.Area},
		{"torsion constant", s.J},
		{"second moment about y", s.IY},
		{"second moment about z", s.IZ},
	} {
		if !figure(v.value) {
			return fmt.Errorf("member %q: the %s is %g; it must lie between %g and %g", member, v.name, v.value, leastFigure, mostFigure)
		}
	}
	if !maybe(s.ShearY) || !maybe(s.ShearZ) || !maybe(s.WY) || !maybe(s.WZ) {
		return fmt.Errorf("member %q: shear areas and section moduli are 0 or between %g and %g", member, leastFigure, mostFigure)
	}
	return nil
}

func (e End) check(member, end string) error {
	for _, v := range []struct {
		about string
		value float64
	}{{"x", e.Springs.Twist}, {"y", e.Springs.Y}, {"z", e.Springs.Z}} {
		if !stiffness(v.value) {
			return fmt.Errorf("member %q: the %s springs %g about its own %s; a spring is 0, Rigid or from %g to %g",
				member, end, v.value, v.about, leastFigure, mostFigure)
		}
	}
	if !maybe(e.RootY) || !maybe(e.RootZ) {
		return fmt.Errorf("member %q: the root moduli at its %s are 0 or between %g and %g", member, end, leastFigure, mostFigure)
	}
	return nil
}

func (f Frame) checkPanels(known names) error {
	if len(f.Panels) > MostPanels {
		return fmt.Errorf("a frame has at most %d panels, this one %d", MostPanels, len(f.Panels))
	}
	for i, p := range f.Panels {
		if !p.Normal.within(mostAt) || !(p.Normal.length() > leastFigure) {
			return fmt.Errorf("panel %d, %q: normal %v is no direction", i+1, p.Name, p.Normal)
		}
		if len(p.Nodes) < 2 {
			return fmt.Errorf("panel %d, %q, binds %d nodes: it takes two or more", i+1, p.Name, len(p.Nodes))
		}
		seen := map[string]bool{}
		for _, name := range p.Nodes {
			if _, is := known.node[name]; !is || seen[name] {
				return fmt.Errorf("panel %d, %q, binds %q: each must be a node of the frame, and once", i+1, p.Name, name)
			}
			seen[name] = true
		}
		if err := f.checkFlat(p, known); err != nil {
			return err
		}
	}
	return nil
}

// checkFlat refuses nodes off the plane: bound rigidly in it they could not tilt with the panel.
func (f Frame) checkFlat(p Panel, known names) error {
	first, normal := f.Nodes[known.node[p.Nodes[0]]].At, p.Normal.unit()
	size := 0.0
	for _, name := range p.Nodes {
		size = max(size, f.Nodes[known.node[name]].At.minus(first).length())
	}
	if size < leastLong {
		return fmt.Errorf("panel %q: all its nodes stand on one spot", p.Name)
	}
	for _, name := range p.Nodes {
		if off := f.Nodes[known.node[name]].At.minus(first).dot(normal); off > offPlane*size || off < -offPlane*size {
			return fmt.Errorf("panel %q: node %q stands %.6g mm off the plane of %q; the nodes of a panel lie in one plane", p.Name, name, off, p.Nodes[0])
		}
	}
	return nil
}
