package piece

import (
	"rodwright/length"
	"rodwright/trade/pipe"
)

// raisePosts stands every post between its two ends.
func (r *rod) raisePosts() error {
	feet := r.footUnderPosts()
	for i := range r.doc.Posts {
		g := &r.doc.Posts[i]
		size, err := r.pipeOf(g.Section, g.Pos)
		if err != nil {
			return err
		}
		names := r.postNames(g, r.postAt[i])
		for k, at := range r.postAt[i] {
			u := run{name: r.unique(names[k], g.Name), noun: nounFor(g.Name, "post"), group: g.Name, role: PostRole, pos: g.Pos, size: size, from: g.Section}
			low, bottom, err := r.postEnd(g, u.name, at, false, feet)
			if err != nil {
				return err
			}
			high, top, err := r.postEnd(g, u.name, at, true, feet)
			if err != nil {
				return err
			}
			if bottom >= top {
				return r.fault(g.Pos, "put its upper end above its lower one", "the %s would go from %s up to %s", u.name, r.text(bottom), r.text(top))
			}
			u, _ = u.lay(Vec{at.x, at.y, bottom}, Vec{at.x, at.y, top}, low, high)
			r.runs = append(r.runs, u)
		}
	}
	return nil
}

// postNames names the posts of a group by their corners, or by how they stand to one another.
func (r *rod) postNames(g *Posts, at []spot) []string {
	words := wordsFor(at)
	out := make([]string, len(at))
	for k := range at {
		if len(g.Corners) == len(at) {
			words[k] = g.Corners[k].String()
		}
		out[k] = memberName(g.Name, "post", words[k])
	}
	return out
}

// postEnd returns what one end of a post comes to, and its height.
func (r *rod) postEnd(g *Posts, name string, at spot, upper bool, feet map[spot]int) (runEnd, length.Length, error) {
	e := g.From
	if upper {
		e = g.To
	}
	pos := e.Pos
	if pos == (Pos{}) {
		pos = g.Pos
	}
	switch e.Kind {
	case AtFeet:
		return r.postFoot(g, name, at, upper, feet)
	case AtPanel:
		return r.postPanel(e, name, at, upper, pos)
	case AtRail:
		level, err := r.railAbove(e, name, at, pos)
		return openEnd(pos), level, err
	case AtLevel:
		end := closedBy(e.Finish, pos)
		if e.Level == 0 && !upper {
			end.foot, end.fixed = r.standOn(e.Finish, Vec{at.x, at.y, 0}, name, pos), true
		}
		if e.Finish == pipe.Flange {
			end.panel = r.panelFacing(Vec{at.x, at.y, e.Level}, upper)
			end.fixed = true
		}
		return end, e.Level, nil
	}
	return runEnd{}, 0, r.fault(pos, "end it at feet, a panel, a rail or a level", "the %s is upright and can't end at the wall", name)
}

// postPanel ends a post in a flange on a panel: under it, or on it for a lower end.
func (r *rod) postPanel(e PostEnd, name string, at spot, upper bool, pos Pos) (runEnd, length.Length, error) {
	i, ok := r.panelNo[e.Name]
	if !ok {
		return runEnd{}, 0, r.fault(pos, "name a panel of the piece", "the %s ends at %s, which is no panel", name, e.Name)
	}
	if !r.covers(i, at) {
		return runEnd{}, 0, r.fault(pos, "move the post or the panel, or end the post elsewhere", "the %s ends at %s, but does not stand %s it", name, e.Name, map[bool]string{true: "under", false: "over"}[upper])
	}
	end := runEnd{fixed: true, kind: pipe.Flange, panel: i, foot: -1, pos: pos}
	if upper {
		return end, *r.panelTop[i] - r.doc.Panels[i].Thickness, nil
	}
	return end, *r.panelTop[i], nil
}

// covers reports whether a plan point lies within a panel.
func (r *rod) covers(i int, at spot) bool {
	lo := *r.panelAt[i]
	x, y := r.doc.Panels[i].extent()
	return at.x >= lo.x && at.x <= lo.x+x && at.y >= lo.y && at.y <= lo.y+y
}

// panelFacing returns the panel whose underside an upward flange, or whose top a downward one, lies against;
// -1 when there is none.
func (r *rod) panelFacing(at Vec, up bool) int {
	for i := range r.doc.Panels {
		face := *r.panelTop[i]
		if up {
			face -= r.doc.Panels[i].Thickness
		}
		if face == at.Z && r.covers(i, spot{at.X, at.Y}) {
			return i
		}
	}
	return -1
}

// railAbove returns the level of the rail of the named group that passes over a post's axis.
func (r *rod) railAbove(e PostEnd, name string, at spot, pos Pos) (length.Length, error) {
	i, ok := r.railsNo[e.Name]
	if !ok {
		return 0, r.fault(pos, "name rails of the piece", "the %s ends at %s, which names no rails", name, e.Name)
	}
	for k := range r.railAt[i] {
		if r.railAt[i][k].passes(at) {
			return *r.railLevel[i], nil
		}
	}
	return 0, r.fault(pos, "end it at a rail that passes over it", "the %s ends at the rails %s, but none of them passes over it", name, e.Name)
}

// passes reports whether a plan point lies on the rail.
func (rail *railPlan) passes(p spot) bool {
	lo, hi := around([]spot{rail.a, rail.b})
	if p.x < lo.x || p.x > hi.x || p.y < lo.y || p.y > hi.y {
		return false
	}
	ax, ay, bx, by := p.x-rail.a.x, p.y-rail.a.y, rail.b.x-rail.a.x, rail.b.y-rail.a.y
	switch {
	case bx == 0:
		return ax == 0
	case by == 0:
		return ay == 0
	}
	return ax.Abs() == ay.Abs() && (ax > 0) == (ay > 0) == ((bx > 0) == (by > 0)) || ax == 0 && ay == 0
}
