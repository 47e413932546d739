package piece

import (
	"slices"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/pipe"
)

// relieve cuts a pocket into the underside of a panel over every band below it that stands proud of the pipe
// it lies on, unless it rides on the bands or stops short of them.
func (r *rod) relieve(i int) error {
	p := &r.out.Panels[i]
	relieved := slices.ContainsFunc(p.Seats, func(s PanelSeat) bool {
		return s.Kind == OnRails && r.bandsOf(s.Stick) != Ridden && r.bandsOf(s.Stick) != Short
	})
	if !relieved {
		return nil
	}
	for n := range r.out.Nodes {
		if err := r.relieveOver(i, n); err != nil {
			return err
		}
	}
	return nil
}

// bandsOf returns how a panel meets the bands of a rail or arm.
func (r *rod) bandsOf(stick int) Bands {
	s := &r.out.Sticks[stick]
	if s.Role == ArmRole {
		return r.doc.Arms[r.armsNo[s.Group]].Bands
	}
	return r.doc.Rails[r.railsNo[s.Group]].Bands
}

// relieveOver cuts the pockets over the level outlets of one joint, one for those along the piece and one
// for those from front to back.
func (r *rod) relieveOver(i, node int) error {
	p, n := &r.out.Panels[i], &r.out.Nodes[node]
	depth := n.At.Z + n.Fitting.Band.Half() - p.Min.Z
	if n.Kind == pipe.None || n.Kind == pipe.Flange || depth <= 0 || n.At.Z > p.Min.Z {
		return nil
	}
	level := slices.IndexFunc(n.Dirs, Dir.level)
	if level < 0 || !p.near(n) {
		return nil
	}
	band, bandLength := r.frameBand(i, n.Sticks[level])
	at := [2]length.Length{n.At.X, n.At.Y}
	g, err := r.gapsAt(p, at, band, bandLength)
	if err != nil {
		return err
	}
	depth += r.shop.Settings.WorkingGap
	for _, along := range []bool{true, false} {
		f, ok := p.pocket(n, along, g)
		if !ok {
			continue
		}
		if depth >= p.Max.Z-p.Min.Z {
			return r.fault(p.Spec.Pos, "write bands: ridden, or make the panel thicker", "%s is %s thick: a pocket over the band at the %s would be %s deep and go through",
				p.Name, r.text(p.Max.Z-p.Min.Z), n.Place, r.text(depth))
		}
		f.Name, f.Why = string(n.Kind)+" at "+n.Place, "over the band at the "+n.Place
		f.Depth, f.Node, f.Section, f.Pos = depth, node, n.Fitting.Band, p.Spec.Pos
		f.Radius = min(r.shop.Settings.InsideRadius, (f.Max[0] - f.Min[0]).Half(), (f.Max[1] - f.Min[1]).Half())
		p.Features = append(p.Features, f)
	}
	return nil
}

// near reports whether a joint's bands come under a panel, seen from above.
func (p *FlatPanel) near(n *Node) bool {
	reach := max(n.Fitting.CentreToEnd, n.Fitting.Band.Half())
	return n.At.X > p.Min.X-reach && n.At.X < p.Max.X+reach && n.At.Y > p.Min.Y-reach && n.At.Y < p.Max.Y+reach
}

// pocket returns the pocket over the outlets of a joint that lead along the piece, or else from front to
// back; a slanting outlet counts for both. It is false where there is no such outlet under the panel.
func (p *FlatPanel) pocket(n *Node, along bool, g gaps) (f Feature, ok bool) {
	half := n.Fitting.Band.Half()
	f = Feature{Kind: ReliefFeature, Stick: -1, Walls: []figure.Figure{g.inner, g.outer, g.beside}}
	f.Min, f.Max = p.rectangle([2]length.Length{n.At.X, n.At.Y}, half, g)
	end := n.Kind.Outlets() <= 1 // a cap ends at its closed face
	for _, d := range n.Dirs {
		axis, v := 0, d.X
		if !along {
			axis, v = 1, d.Y
		}
		if v == 0 || !d.level() {
			continue
		}
		ok = true
		more := n.Fitting.CentreToEnd - half
		if v > 0 {
			f.Max[axis] += more
		} else {
			f.Min[axis] -= more
		}
		switch {
		case end && v > 0:
			f.Min[axis] += half
		case end:
			f.Max[axis] -= half
		}
	}
	size := [2]length.Length{p.Max.X - p.Min.X, p.Max.Y - p.Min.Y}
	for k := range 2 {
		f.Min[k], f.Max[k] = max(0, f.Min[k]), min(size[k], f.Max[k])
		ok = ok && f.Min[k] < f.Max[k]
	}
	return f, ok
}
