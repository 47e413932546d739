package piece

import (
	"slices"

	"rodwright/length"
)

// layPanels lays every panel down at its place and level.
func (r *rod) layPanels() error {
	for i := range r.doc.Panels {
		p := &r.doc.Panels[i]
		x, y := p.extent()
		at, top := *r.panelAt[i], *r.panelTop[i]
		flat := FlatPanel{Spec: p, Name: p.Name, GrainX: p.GrainX,
			Min: Vec{at.x, at.y, top - p.Thickness}, Max: Vec{at.x + x, at.y + y, top}}
		for _, e := range r.doc.Edges {
			if e.Panel == p.Name {
				flat.Edges = append(flat.Edges, e)
			}
		}
		r.out.Panels = append(r.out.Panels, flat)
	}
	return nil
}

// seatPanels finds each place where a panel is borne or fastened, and the line along which it is held.
func (r *rod) seatPanels() error {
	for i := range r.out.Panels {
		if err := r.seatPanel(i); err != nil {
			return err
		}
		r.hold(i)
	}
	return nil
}

func (r *rod) seatPanel(i int) error {
	p := &r.out.Panels[i]
	for k := range r.out.Nodes {
		if n := &r.out.Nodes[k]; n.Panel == i {
			kind := OnPosts
			if n.Dirs[0].Z > 0 {
				kind = UnderPosts
			}
			p.Seats = append(p.Seats, PanelSeat{Kind: kind, Node: k, Stick: n.Sticks[0], At: [2]length.Length{n.At.X, n.At.Y}, Foot: -1})
		}
	}
	for _, s := range p.Spec.Seats {
		var err error
		switch s.Kind {
		case OnPosts, UnderPosts:
			err = r.checkFlanges(p, s)
		case OnRails:
			err = r.seatOnRails(p, s)
		case AroundPosts, BetweenPosts:
			err = r.seatAtPosts(p, s)
		}
		if err != nil {
			return err
		}
	}
	for k := range r.out.Feet {
		if f := &r.out.Feet[k]; f.Panel == i {
			p.Seats = append(p.Seats, PanelSeat{Kind: OnFeet, Node: -1, Stick: -1, At: [2]length.Length{f.At.X, f.At.Y}, Foot: k})
		}
	}
	return nil
}

// checkFlanges checks that the posts a panel is written to sit on, or under, are flanged to it.
func (r *rod) checkFlanges(p *FlatPanel, s Seat) error {
	for _, seat := range p.Seats {
		if seat.Kind == s.Kind && r.out.Sticks[seat.Stick].Group == s.Group {
			return nil
		}
	}
	end := map[SeatKind]string{OnPosts: "to", UnderPosts: "from"}[s.Kind]
	return r.fault(s.Pos, "write "+end+": "+p.Name+" at those posts, or let the panel sit elsewhere",
		"%s sits %s %s, but these do not end at it", p.Name, s.Kind, s.Group)
}

// seatAtPosts notes the posts a panel goes round or stops at.
func (r *rod) seatAtPosts(p *FlatPanel, s Seat) error {
	found := false
	for k := range r.runs {
		u := &r.runs[k]
		if u.role != PostRole || u.group != s.Group {
			continue
		}
		at := u.start
		if u.start.Z >= p.Max.Z || u.far().Z <= p.Min.Z {
			return r.fault(s.Pos, "let the post pass the panel, or let the panel sit on it", "%s sits %s %s, but the %s goes from %s up to %s and does not pass it",
				p.Name, s.Kind, s.Group, u.name, r.text(u.start.Z), r.text(u.far().Z))
		}
		if inside := at.X > p.Min.X && at.X < p.Max.X && at.Y > p.Min.Y && at.Y < p.Max.Y; inside != (s.Kind == AroundPosts) {
			where := map[bool]string{true: "inside", false: "outside"}[inside]
			return r.fault(s.Pos, "move the panel or the posts, or change how it sits", "%s sits %s %s, but the axis of the %s is %s it", p.Name, s.Kind, s.Group, u.name, where)
		}
		found = true
		p.Seats = append(p.Seats, PanelSeat{Kind: s.Kind, Node: -1, Stick: r.stickAt(k, (p.Min.Z + p.Max.Z).Half()), At: [2]length.Length{at.X, at.Y}, Foot: -1})
	}
	if !found {
		return r.fault(s.Pos, "name posts of the piece", "%s sits %s %s, which names no posts", p.Name, s.Kind, s.Group)
	}
	return nil
}

// stickAt returns the stick of an upright run at a height, the nearest end stick where the run is shorter.
func (r *rod) stickAt(run int, z length.Length) int {
	best := -1
	for i, of := range r.stickRun {
		if of != run {
			continue
		}
		if best = i; r.out.Nodes[r.out.Sticks[i].B].At.Z >= z {
			break
		}
	}
	return best
}

// across returns the coordinate across the grain of a plan point.
func (p *FlatPanel) across(at [2]length.Length) length.Length {
	if p.GrainX {
		return at[1]
	}
	return at[0]
}

// hold finds the line along which a panel is held: that of the flanges under it, or in the middle between
// the first and the last row of them; without such flanges by the flanges on it, the straps, its own feet, in
// this order. A loose panel is held nowhere, and reckoned from its middle.
func (r *rod) hold(i int) {
	p := &r.out.Panels[i]
	for _, by := range []struct {
		words string
		is    func(PanelSeat) bool
	}{
		{"flanges under it", func(s PanelSeat) bool { return s.Kind == OnPosts }},
		{"flanges on it", func(s PanelSeat) bool { return s.Kind == UnderPosts }},
		{"straps", func(s PanelSeat) bool { return s.Strap }},
		{"its feet", func(s PanelSeat) bool { return s.Kind == OnFeet }},
	} {
		var rows []length.Length
		for _, s := range p.Seats {
			if by.is(s) {
				rows = append(rows, p.across(s.At))
			}
		}
		if len(rows) == 0 {
			continue
		}
		lo, hi := slices.Min(rows), slices.Max(rows)
		r.holding[i] = by.is
		p.HeldAt, p.HeldBy, p.Fixed = lo+(hi-lo).Half(), by.words, true
		if lo != hi {
			p.HeldBy = "the middle of " + by.words
		}
		return
	}
	lo, hi := p.across([2]length.Length{p.Min.X, p.Min.Y}), p.across([2]length.Length{p.Max.X, p.Max.Y})
	p.HeldAt, p.HeldBy = lo+(hi-lo).Half(), "nothing: it lies loose"
}

// heldNodes returns the joints of the frame that hold a panel, as hold chose them.
func (r *rod) heldNodes(i int) (nodes []int) {
	for _, s := range r.out.Panels[i].Seats {
		switch {
		case r.holding[i] == nil || !r.holding[i](s):
		case s.Node >= 0:
			nodes = append(nodes, s.Node)
		case s.Stick >= 0:
			nodes = append(nodes, r.out.Sticks[s.Stick].A, r.out.Sticks[s.Stick].B)
		}
	}
	return nodes
}
