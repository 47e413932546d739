package piece

import (
	"cmp"
	"slices"

	"rodwright/length"
)

// railPlan is a rail as seen from above, from the end in its From group to the other.
type railPlan struct {
	a, b       spot
	endA, endB railEnd
}

// railEnd is the post or rail that carries the end of a rail.
type railEnd struct {
	rails bool
	group int
	no    int
}

// railsReady reports whether the groups a rail group joins are placed.
func (r *rod) railsReady(g *Rails) bool {
	ready := func(name string, rails bool) bool {
		if rails {
			i, ok := r.railsNo[name]
			return ok && r.railAt[i] != nil
		}
		i, ok := r.postsNo[name]
		return ok && r.postAt[i] != nil
	}
	return ready(g.From, g.FromRails) && (g.With == "" || ready(g.With, g.WithRails))
}

// bearer is what a rail's end can be joined to: a post's axis, or the share of a rail.
type bearer struct {
	end railEnd
	at  spot
	on  *railPlan // the rail, where it is one
}

// bearers returns the members of a group that rails can be joined to. Rails are met at the group's share.
func (r *rod) bearers(g *Rails, name string, rails bool) (out []bearer) {
	if !rails {
		i := r.postsNo[name]
		for k, p := range r.postAt[i] {
			out = append(out, bearer{railEnd{group: i, no: k}, p, nil})
		}
		return out
	}
	i := r.railsNo[name]
	n, d := g.Share[0], g.Share[1]
	if d == 0 {
		n, d = 1, 2
	}
	for k := range r.railAt[i] {
		rail := &r.railAt[i][k]
		from, to := rail.a, rail.b
		if to.x < from.x || to.x == from.x && to.y < from.y {
			from, to = to, from
		}
		at := spot{from.x + (to.x-from.x).Scale(n, d), from.y + (to.y-from.y).Scale(n, d)}
		out = append(out, bearer{railEnd{true, i, k}, at, rail})
	}
	return out
}

// planRails pairs the members of the groups a rail group joins and returns the rails between them.
func (r *rod) planRails(g *Rails) ([]railPlan, error) {
	from := r.bearers(g, g.From, g.FromRails)
	pairs := neighbours(from)
	if g.With != "" {
		pairs = partners(from, r.bearers(g, g.With, g.WithRails))
	}
	if len(pairs) == 0 {
		return nil, r.fault(g.Pos, "join two groups, or posts that stand in line with each other", "the rails %s join nothing: %s has no two members in line", g.Name, g.From)
	}
	var out []railPlan
	for _, p := range pairs {
		rail, err := r.planRail(g, p[0], p[1])
		if err != nil {
			return nil, err
		}
		out = append(out, rail)
	}
	return out, nil
}

// planRail returns the rail between two members. Where a post meets a rail, the rail is met in line with
// the post instead of at its share.
func (r *rod) planRail(g *Rails, a, b bearer) (railPlan, error) {
	switch {
	case a.on == nil && b.on != nil:
		b.at = b.on.beside(a.at)
	case a.on != nil && b.on == nil:
		a.at = a.on.beside(b.at)
	}
	dx, dy := (b.at.x - a.at.x).Abs(), (b.at.y - a.at.y).Abs()
	if dx == 0 && dy == 0 {
		return railPlan{}, r.fault(g.Pos, "join members that stand apart", "a rail of %s would have no length: both its ends stand at the same place", g.Name)
	}
	if dx != 0 && dy != 0 && dx != dy {
		return railPlan{}, r.fault(g.Pos, "move one of the two into line with the other; fittings join pipes square or at 45°",
			"a rail of %s would run %s along and %s across, which is neither square nor at 45°", g.Name, r.text(dx), r.text(dy))
	}
	return railPlan{a.at, b.at, a.end, b.end}, nil
}

// beside returns the point of the rail that is in line with p: square to the rail, or its nearer end.
func (rail *railPlan) beside(p spot) spot {
	lo, hi := around([]spot{rail.a, rail.b})
	return spot{min(max(p.x, lo.x), hi.x), min(max(p.y, lo.y), hi.y)}
}

// neighbours pairs the members of one group that follow each other in a line along or across the piece:
// along first, each line from the left or front.
func neighbours(all []bearer) (pairs [][2]bearer) {
	for _, line := range []struct{ on, along func(spot) length.Length }{
		{func(p spot) length.Length { return p.y }, func(p spot) length.Length { return p.x }},
		{func(p spot) length.Length { return p.x }, func(p spot) length.Length { return p.y }},
	} {
		order := slices.Clone(all)
		slices.SortStableFunc(order, func(a, b bearer) int {
			return cmp.Or(cmp.Compare(line.on(a.at), line.on(b.at)), cmp.Compare(line.along(a.at), line.along(b.at)))
		})
		for i := 1; i < len(order); i++ {
			if a, b := order[i-1], order[i]; line.on(a.at) == line.on(b.at) && a.at != b.at {
				pairs = append(pairs, [2]bearer{a, b})
			}
		}
	}
	return pairs
}

// partners pairs the members of two groups: each with the nearest of the other group where that pairs them
// one to one, else in their order where both have the same number, else each of the larger group with the
// nearest of the smaller.
func partners(from, with []bearer) (pairs [][2]bearer) {
	near := nearest(from, with)
	if len(from) == len(with) {
		if !distinct(near) {
			for i := range near {
				near[i] = i
			}
		}
	} else if len(from) < len(with) {
		for i, k := range nearest(with, from) {
			pairs = append(pairs, [2]bearer{from[k], with[i]})
		}
		return pairs
	}
	for i, k := range near {
		pairs = append(pairs, [2]bearer{from[i], with[k]})
	}
	return pairs
}

// nearest returns for each member the index of the nearest of the others, the first of several.
func nearest(of, others []bearer) []int {
	out := make([]int, len(of))
	for i, a := range of {
		best := 0.0
		for k, b := range others {
			dx, dy := (a.at.x - b.at.x).MM(), (a.at.y - b.at.y).MM()
			if d := dx*dx + dy*dy; k == 0 || d < best {
				best, out[i] = d, k
			}
		}
	}
	return out
}

func distinct(indexes []int) bool {
	seen := slices.Clone(indexes)
	slices.Sort(seen)
	return len(slices.Compact(seen)) == len(indexes)
}
