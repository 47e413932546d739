package piece

import (
	"cmp"
	"slices"
	"strings"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// setFeet places the feet: one under each post that comes from the feet, or under the corners of the panel
// that stands on them. Locks go to the front ones first, from the left.
func (r *rod) setFeet() error {
	f := &r.doc.Feet
	if f.Kind == NoFeet {
		return nil
	}
	var at []spot
	panel := -1
	if f.Panel != "" {
		panel = r.panelNo[f.Panel]
		if f.Count != 0 && f.Count != 4 && f.Count != 6 {
			return r.fault(f.Pos, "write 4, or 6 for a middle pair", "%d feet under a panel have no places of their own", f.Count)
		}
		at = r.footCorners(panel)
	} else {
		for i := range r.doc.Posts {
			if r.doc.Posts[i].From.Kind == AtFeet {
				at = append(at, r.postAt[i]...)
			}
		}
	}
	words := wordsFor(at)
	for k, p := range at {
		r.out.Feet = append(r.out.Feet, Foot{Spec: f, At: Vec{p.x, p.y, f.fixedAt()}, Node: -1, Panel: panel, Name: memberName(f.noun(), "foot", words[k])})
	}
	order := make([]int, len(at))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(at[a].y, at[b].y), cmp.Compare(at[a].x, at[b].x)) })
	for _, k := range order[:min(f.Locks, len(order))] {
		r.out.Feet[k].Locked = true
	}
	return nil
}

// footCorners returns the places of the feet under a panel: its corners by the inset, and for six the middle
// of its longer sides.
func (r *rod) footCorners(i int) []spot {
	f, lo := &r.doc.Feet, *r.panelAt[i]
	x, y := r.doc.Panels[i].extent()
	var at []spot
	for _, c := range []Corner{FrontLeft, FrontRight, BackLeft, BackRight} {
		at = append(at, corner(c, lo, x, y, f.Inset, f.Inset))
	}
	switch {
	case f.Count == 6 && x >= y:
		at = append(at, spot{lo.x + x.Half(), at[0].y}, spot{lo.x + x.Half(), at[2].y})
	case f.Count == 6:
		at = append(at, spot{at[0].x, lo.y + y.Half()}, spot{at[1].x, lo.y + y.Half()})
	}
	return at
}

// fixedAt is the height above the floor of what a foot is fixed to: the cap's closed face or the flange's or
// panel's underside for casters and levelling feet, the floor for what stands on it itself.
func (f *Feet) fixedAt() length.Length {
	switch f.Kind {
	case StemCaster, PlateCaster, Leveller:
		return f.Height
	}
	return 0
}

// end is what a post comes to at such a foot.
func (f *Feet) end() pipe.Kind {
	switch f.Kind {
	case PlateCaster, FlangeFoot:
		return pipe.Flange
	case BareFoot:
		return pipe.None
	}
	return pipe.Cap
}

func (f *Feet) noun() string {
	switch f.Kind {
	case StemCaster, PlateCaster:
		return "casters"
	}
	return "foot"
}

// footUnderPosts returns the foot at each plan point where one stands.
func (r *rod) footUnderPosts() map[spot]int {
	at := map[spot]int{}
	for i, f := range r.out.Feet {
		at[spot{f.At.X, f.At.Y}] = i
	}
	return at
}

// postFoot ends a post at its foot.
func (r *rod) postFoot(g *Posts, name string, at spot, upper bool, feet map[spot]int) (runEnd, length.Length, error) {
	f := &r.doc.Feet
	switch {
	case upper:
		return runEnd{}, 0, r.fault(g.Pos, "write from: feet, and to: with what its upper end comes to", "the upper end of the %s can't be at the feet", name)
	case f.Kind == NoFeet:
		return runEnd{}, 0, r.fault(g.Pos, "name feet, for example casters, caps or flanges", "the %s comes from the feet, but the piece has none", name)
	case f.Panel != "":
		return runEnd{}, 0, r.fault(g.Pos, "leave the panel of the feet out, or let the posts come from the panel", "the %s comes from the feet, but the feet are under %s", name, f.Panel)
	}
	no := feet[at]
	foot := &r.out.Feet[no]
	foot.Name = memberName(f.noun(), "foot", r.whose(name))
	return runEnd{fixed: true, kind: f.end(), panel: -1, foot: no, pos: g.Pos}, foot.At.Z, nil
}

// whose takes the noun off a post's name, so that its foot can be named after it: front left post gives
// front left.
func (r *rod) whose(post string) string {
	for _, noun := range nouns {
		if rest, ok := strings.CutSuffix(post, " "+noun); ok {
			return rest
		}
	}
	return post
}

// standOn adds a foot for a stick that stands on the floor without one of the document's: on a flange, a cap
// or its bare end.
func (r *rod) standOn(kind pipe.Kind, at Vec, name string, pos Pos) int {
	spec := &Feet{Kind: BareFoot, Pos: pos}
	switch kind {
	case pipe.Flange:
		spec.Kind = FlangeFoot
	case pipe.Cap:
		spec.Kind = CapFoot
	}
	r.out.Feet = append(r.out.Feet, Foot{Spec: spec, At: at, Node: -1, Panel: -1, Name: memberName("foot", "foot", r.whose(name))})
	return len(r.out.Feet) - 1
}
