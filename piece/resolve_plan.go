package piece

import (
	"slices"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// layPlan places panels, posts, rails and arms as seen from above, each as soon as what it goes by is
// placed. When nothing moves on, the first panel that nothing places is stood with its left front corner
// at 0, 0; a second one is an error.
func (r *rod) layPlan() error {
	origin := ""
	for {
		moved, err := r.planOnce()
		if err != nil {
			return err
		}
		if moved {
			continue
		}
		waiting, free := r.unplaced()
		switch {
		case waiting < 0 && r.wall == nil && len(r.doc.Arms) > 0:
			r.wallFromReach()
		case waiting < 0:
			return r.checkRailPlans()
		case free >= 0 && origin != "":
			return r.fault(r.doc.Panels[free].Pos, "write at: with the x and y of its left front corner, or let it sit on posts",
				"nothing says where the panel %s stands; %s already stands at 0, 0", r.doc.Panels[free].Name, origin)
		case free >= 0:
			origin = r.doc.Panels[free].Name
			r.panelAt[free] = &spot{}
		case r.wall == nil && slices.ContainsFunc(r.armAt, func(a []armPlan) bool { return a != nil }):
			r.wallFromReach()
		default:
			return r.fault(r.doc.Panels[waiting].Pos, "write at: for one of them",
				"the place of the panel %s follows from posts that follow from the panel itself", r.doc.Panels[waiting].Name)
		}
	}
}

// checkRailPlans says which rails have no place, as they join each other in a circle.
func (r *rod) checkRailPlans() error {
	for i := range r.doc.Rails {
		if g := &r.doc.Rails[i]; r.railAt[i] == nil {
			return r.fault(g.Pos, "join one of them to posts", "the rails %s join rails that join them", g.Name)
		}
	}
	return nil
}

// planOnce places what can be placed now and reports whether that was anything.
func (r *rod) planOnce() (moved bool, err error) {
	for i := range r.doc.Panels {
		if r.panelAt[i] == nil {
			r.panelAt[i] = r.planPanel(&r.doc.Panels[i])
			moved = moved || r.panelAt[i] != nil
		}
	}
	for i := range r.doc.Posts {
		if r.postAt[i] == nil && r.planPosts(i) {
			moved = true
		}
	}
	for i := range r.doc.Rails {
		if r.railAt[i] != nil || !r.railsReady(&r.doc.Rails[i]) {
			continue
		}
		if r.railAt[i], err = r.planRails(&r.doc.Rails[i]); err != nil {
			return false, err
		}
		moved = true
	}
	for i := range r.doc.Arms {
		if r.armAt[i] == nil && r.planArms(i) {
			moved = true
		}
	}
	settled, err := r.findWall()
	return moved || settled, err
}

// unplaced returns the first panel without a place, and the first such panel that nothing places; -1
// where there is none.
func (r *rod) unplaced() (waiting, free int) {
	waiting, free = -1, -1
	for i := range r.doc.Panels {
		if r.panelAt[i] != nil {
			continue
		}
		if waiting < 0 {
			waiting = i
		}
		if free < 0 && len(r.seatsBy(&r.doc.Panels[i])) == 0 {
			free = i
		}
	}
	return waiting, free
}

// extent returns how far a panel reaches along the piece and from front to back.
func (p *Panel) extent() (x, y length.Length) {
	if p.Turned {
		return p.Width, p.Length
	}
	return p.Length, p.Width
}

// seatsBy returns the seats that can place a panel: those on posts, rails and arms whose own place does
// not follow from the panel.
func (r *rod) seatsBy(p *Panel) (by []Seat) {
	for _, s := range p.Seats {
		follows := false
		switch s.Kind {
		case ByPlace, OnFeet:
			follows = true
		case OnRails:
			if i, ok := r.railsNo[s.Group]; ok {
				follows = r.railsFollow(&r.doc.Rails[i], p.Name, nil)
			} else if i, ok := r.armsNo[s.Group]; ok {
				follows = r.doc.Arms[i].Panel == p.Name
			}
		default:
			if i, ok := r.postsNo[s.Group]; ok {
				follows = r.doc.Posts[i].Panel == p.Name
			}
		}
		if !follows {
			by = append(by, s)
		}
	}
	return by
}

// railsFollow reports whether the plan of a rail group follows from the corners of the panel.
func (r *rod) railsFollow(g *Rails, panel string, seen []string) bool {
	if slices.Contains(seen, g.Name) {
		return false
	}
	seen = append(seen, g.Name)
	for _, end := range []struct {
		group string
		rails bool
	}{{g.From, g.FromRails}, {g.With, g.WithRails}} {
		if i, ok := r.railsNo[end.group]; end.rails && ok && r.railsFollow(&r.doc.Rails[i], panel, seen) {
			return true
		}
		if i, ok := r.postsNo[end.group]; !end.rails && ok && r.doc.Posts[i].Panel == panel {
			return true
		}
	}
	return false
}

// planPanel returns the left front corner of a panel: written, or such that the panel is centred on all it
// sits on and does not itself place. It returns nil while that is not known.
func (r *rod) planPanel(p *Panel) *spot {
	if p.At != nil {
		return &spot{p.At[0], p.At[1]}
	}
	seats := r.seatsBy(p)
	var under []spot
	arms := false
	for _, s := range seats {
		at := r.seatAt(s)
		if at == nil {
			return nil
		}
		under = append(under, at...)
		_, rails := r.railsNo[s.Group]
		_, ok := r.armsNo[s.Group]
		arms = arms || s.Kind == OnRails && ok && !rails
	}
	if len(under) == 0 {
		return nil
	}
	lo, hi := around(under)
	x, y := p.extent()
	at := spot{(lo.x + hi.x - x).Half(), (lo.y + hi.y - y).Half()}
	if arms {
		if r.wall == nil {
			return nil
		}
		at.y = *r.wall - r.standOff() - y
	}
	return &at
}

// seatAt returns the plan points of what a seat is on, or nil while they are not known.
func (r *rod) seatAt(s Seat) (at []spot) {
	if s.Kind != OnRails {
		if i, ok := r.postsNo[s.Group]; ok {
			return r.postAt[i]
		}
		return nil
	}
	if i, ok := r.railsNo[s.Group]; ok {
		for _, rail := range r.railAt[i] {
			at = append(at, rail.a, rail.b)
		}
		return at
	}
	if i, ok := r.armsNo[s.Group]; ok && r.wall != nil {
		for _, a := range r.armAt[i] {
			at = append(at, spot{a.x, *r.wall}, spot{a.x, *r.wall - r.doc.Arms[i].Reach})
		}
	}
	return at
}

// around returns the corners of the least rectangle that holds the points.
func around(points []spot) (lo, hi spot) {
	lo, hi = points[0], points[0]
	for _, p := range points[1:] {
		lo = spot{min(lo.x, p.x), min(lo.y, p.y)}
		hi = spot{max(hi.x, p.x), max(hi.y, p.y)}
	}
	return lo, hi
}

// planPosts places a post group by coordinates, or at the corners of its panel once that is placed.
func (r *rod) planPosts(i int) bool {
	g := &r.doc.Posts[i]
	if g.Panel == "" {
		at := make([]spot, 0, len(g.At))
		for _, p := range g.At {
			at = append(at, spot{p[0], p[1]})
		}
		r.postAt[i] = at
		return true
	}
	no, ok := r.panelNo[g.Panel]
	if !ok || r.panelAt[no] == nil {
		return false
	}
	at, panel := r.panelAt[no], &r.doc.Panels[no]
	x, y := panel.extent()
	out := make([]spot, 0, len(g.Corners))
	for _, c := range g.Corners {
		out = append(out, corner(c, *at, x, y, g.InsetX, g.InsetY))
	}
	r.postAt[i] = out
	return true
}

// corner returns the point inset from a corner of the rectangle of x by y at a left front corner.
func corner(c Corner, at spot, x, y, insetX, insetY length.Length) spot {
	p := spot{at.x + insetX, at.y + insetY}
	if c == FrontRight || c == BackRight {
		p.x = at.x + x - insetX
	}
	if c == BackLeft || c == BackRight {
		p.y = at.y + y - insetY
	}
	return p
}

// standOff is how far the back edge of a panel on arms stays from the wall: the height of the flange that
// carries the arm, whose plate stands above the pipe, and the working gap. It is zero where the shop has
// no flange of that size; raising the arms then says so.
func (r *rod) standOff() length.Length {
	for _, g := range r.doc.Arms {
		if size, err := r.pipeOf(g.Section, g.Pos); err == nil {
			if f, err := r.fitting(g.Pos, size, pipe.Flange); err == nil {
				return f.CentreToEnd + r.shop.Settings.WorkingGap
			}
		}
	}
	return 0
}
