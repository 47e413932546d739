package fate

import (
	"cmp"
	"slices"

	"rodwright/length"
	"rodwright/part"
)

// WiderUpTo is how much wider than drawn an opening that is already cut may be where it is used on, 1/8 in: a gap that
// shows and does no harm. Common practice, no source.
const WiderUpTo = length.Inch / 8

// plugUpTo is the largest hole that is plugged, 2 in: plugs are cut with a hole saw from the same wood. Common
// practice, no source.
const plugUpTo = 2 * length.Inch

// placing is a way to find a needed panel in one that is made: where the needed one begins, which of the two ways
// round, and what is to be done.
type placing struct {
	at       [2]length.Length // of the needed panel's datum, from the made one's
	turned   bool
	quarter  bool                // the made panel was turned by a quarter first
	off      [2][2]length.Length // to cut off, by axis: at the low and the high side
	plugs    []opening           // holes of the made panel to plug, in its coordinates
	wider    []opening           // openings that stay wider than drawn
	missing  []int               // openings of the need still to be cut or widened, by number
	profiles []part.Side         // edges of the need whose profile is to be run
}

// place finds the best way to get the needed outline out of the made one: fewest plugs, then fewest openings that stay
// wider than drawn, fewest profiles to run again, least uneven cuts, as drawn before turned. Every way there can be
// has one with the same openings kept among those that are tried: at an end of the slack, in its middle, with an
// opening against a wall of a needed one, in its middle, or just left in the offcut.
//
// It reports false where there is none; stays is then an opening that would be left over in the new panel, if that
// is the reason.
func place(made, need outline, mayTurn bool) (best placing, stays *opening, ok bool) {
	ways := []bool{false}
	if mayTurn {
		ways = append(ways, true)
	}
	for _, turned := range ways {
		want := need
		if turned {
			want = need.turned()
		}
		xs, ys := candidates(made, want, 0), candidates(made, want, 1)
		for _, x := range xs {
			for _, y := range ys {
				p, bad := try(made, want, [2]length.Length{x, y})
				switch {
				case bad != nil:
					if stays == nil {
						stays = bad
					}
				case !ok || p.before(best):
					p.turned = turned
					best, ok = p, true
				}
			}
		}
	}
	return best, stays, ok
}

// candidates returns where the needed panel may begin along one axis.
func candidates(made, need outline, k int) []length.Length {
	slack := made.size[k] - need.size[k]
	if slack < 0 {
		return nil
	}
	at := []length.Length{slack.Half(), 0, slack}
	for _, o := range made.openings {
		at = append(at, o.hi[k], o.lo[k]-need.size[k])
		for _, n := range need.openings {
			at = append(at, o.lo[k]-n.lo[k], o.hi[k]-n.hi[k], (o.lo[k] + o.hi[k] - n.lo[k] - n.hi[k]).Half())
		}
	}
	at = slices.DeleteFunc(at, func(v length.Length) bool { return v < 0 || v > slack })
	slices.Sort(at)
	return slices.Compact(at)
}

// try tells what is to be done when the needed panel begins at a place of the made one; bad is an opening that would be
// left over, or the made panel's edge whose profile would.
func try(made, need outline, at [2]length.Length) (p placing, bad *opening) {
	p.at = at
	for k := range 2 {
		p.off[k] = [2]length.Length{at[k], made.size[k] - need.size[k] - at[k]}
	}
	whole := rect{lo: at, hi: [2]length.Length{at[0] + need.size[0], at[1] + need.size[1]}}
	cut := make([]bool, len(need.openings)) // it is there as drawn
	for i := range made.openings {
		o := &made.openings[i]
		switch n, full, wider := serves(o, need, at); {
		case o.endless(nowhere).clear(whole):
		case n >= 0:
			cut[n] = cut[n] || full
			if wider {
				p.wider = append(p.wider, *o)
			}
		case o.pluggable():
			p.plugs = append(p.plugs, *o)
		default:
			return p, o
		}
	}
	for i := range need.openings {
		if !cut[i] {
			p.missing = append(p.missing, i)
		}
	}
	return p, p.profile(made, need)
}

// nowhere moves nothing.
var nowhere [2]length.Length

// Marking is how far two cuts may lie apart and count as one, 1/64 in: no bench mark tells them apart. Common practice,
// no source.
const Marking = length.Inch / 64

// serves returns the needed opening that one already cut is part of; -1 when none. Full says that it is all of that
// opening, wider that it is more.
func serves(o *opening, need outline, at [2]length.Length) (n int, full, wider bool) {
	a := o.endless(nowhere)
	for i := range need.openings {
		w := &need.openings[i]
		if !o.asDeepAs(w) {
			continue
		}
		b := w.endless(at)
		switch full := b.within(a.grown(Marking)) && o.depth == w.depth; {
		case a.within(b.grown(Marking)):
			return i, full, false
		case a.within(b.grown(WiderUpTo)) && !a.clear(b):
			return i, full, true
		}
	}
	return -1, false, false
}

// asDeepAs reports whether the wanted opening takes away all that the one already cut did.
func (c *opening) asDeepAs(w *opening) bool {
	return w.depth == 0 || c.depth > 0 && c.depth <= w.depth
}

// pluggable reports whether an opening is a round hole that a plug can fill.
func (c *opening) pluggable() bool {
	w, h := c.hi[0]-c.lo[0], c.hi[1]-c.lo[1]
	return c.kind == "hole" && w == h && 2*c.r >= w-1 && w <= plugUpTo
}

// profile settles which edges are to be profiled. One that is there already and wanted stays when nothing is cut off
// its edge; one that is not wanted must go with what is cut off.
func (p *placing) profile(made, need outline) (bad *opening) {
	for k := range 2 {
		for end := range 2 {
			side := sides[k][end]
			had, wanted := made.profiles[side], need.profiles[side]
			had.Side, wanted.Side = "", ""
			off := p.off[k][end]
			switch {
			case had == wanted && off == 0:
			case had.Profile == "" || length.Length(had.Size) <= off || had.Profile == wanted.Profile && had.Size < wanted.Size && off == 0:
				if wanted.Profile != "" {
					p.profiles = append(p.profiles, side)
				}
			default:
				return &opening{kind: had.Profile, name: "on its " + string(side)}
			}
		}
	}
	return nil
}

// before reports whether p is better than q.
func (p placing) before(q placing) bool {
	return cmp.Or(
		cmp.Compare(len(p.plugs), len(q.plugs)), cmp.Compare(len(p.wider), len(q.wider)), cmp.Compare(len(p.missing), len(q.missing)),
		cmp.Compare(len(p.profiles), len(q.profiles)), cmp.Compare(p.odd(), q.odd()), cmp.Compare(p.uneven(), q.uneven()),
	) < 0
}

// odd counts the axes along which unlike amounts are cut off both sides: one cut less does as well, off one side.
func (p placing) odd() (n int) {
	for k := range 2 {
		if lo, hi := p.off[k][0], p.off[k][1]; lo > 0 && hi > 0 && (lo-hi).Abs() > 1 {
			n++
		}
	}
	return n
}

// uneven is how much more is cut off one side than the other, both axes together.
func (p placing) uneven() (sum length.Length) {
	for k := range 2 {
		sum += (p.off[k][0] - p.off[k][1]).Abs()
	}
	return sum
}
