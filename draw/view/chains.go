package view

import (
	"cmp"
	"math"
	"slices"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/piece"
)

// mostStations bounds a chain: more than the first of these is no longer read, and the others are for a small
// sheet, down to the whole alone.
var mostStations = []int{9, 7, 5, 4, 3, 2}

// chains returns the dimension chains of a view at a scale, each of at most so many stations: what lies below
// it, and what stands to its right. The whole is the outermost.
func (s scene) chains(per int64, most int) (below, right [][]draw.Station) {
	level := s.stack(per, alongU)
	upright := s.stack(per, alongV)
	switch s.side {
	case Top:
		return level(most, s.posts(alongU), s.sides(alongU, false)), upright(most, s.posts(alongV), s.sides(alongV, false))
	case Right:
		return level(most, s.posts(alongU)), upright(most, s.rails())
	default:
		panels := s.sides(alongV, false)
		if len(tidied(panels, alongV)) > most-2 {
			panels = s.sides(alongV, true)
		}
		return level(most, s.posts(alongU)), upright(most, s.rails(), panels)
	}
}

// axis is a direction of the sheet.
type axis bool

const (
	alongU axis = false
	alongV axis = true
)

// of returns the coordinate of a place along the axis and the one across it.
func (a axis) of(p place) (at, off float64) {
	if a == alongV {
		return p.v, p.u
	}
	return p.u, p.v
}

func (a axis) station(at, off float64) draw.Station { return draw.Station{At: nm(at), Off: nm(off)} }

// glimpse is the share of a side below which what is seen of it, through a hole or a gap, is not measured.
const glimpse = 0.1

// measurable reports whether enough of a panel's side is seen to measure it: an end of it, or more than a glimpse.
func (t stretch) measurable() bool {
	full := t.curve.length()
	return t.length() >= glimpse*full || t.t0*full < touch || (1-t.t1)*full < touch
}

// sides returns the sides of panels along an axis where they are seen, or only the farther ones: for levels,
// the tops.
func (s scene) sides(a axis, farther bool) (out []draw.Station) {
	for _, t := range s.edges {
		if t.pen != draw.Outline || t.radius > 0 || s.bodies[t.body].Kind != piece.PanelBody {
			continue
		}
		e := s.bodies[t.body].extent
		lo, _ := a.of(place{u: e.u0, v: e.v0})
		hi, _ := a.of(place{u: e.u1, v: e.v1})
		at, off := a.of(t.at(t.t0))
		to, end := a.of(t.at(t.t1))
		if at != to || !t.measurable() || at != hi && (at != lo || farther) {
			continue
		}
		if (a == alongU) == (end < off) {
			off = end
		}
		out = append(out, a.station(at, off))
	}
	return out
}

// posts returns the axes of upright pipes, and of pipes that one looks at along, measured at their lower ends:
// those that stand on feet, at the floor.
func (s scene) posts(a axis) (out []draw.Station) {
	for _, b := range s.bodies {
		if b.Kind != piece.StickBody {
			continue
		}
		stick := &s.r.Sticks[b.Index]
		switch f := b.form.(type) {
		case bar:
			if stick.Dir.Z == 0 && stick.Role != piece.ArmRole || f.a.u != f.b.u || a == alongV {
				continue
			}
			foot := math.Min(f.a.v, f.b.v)
			if n := &s.r.Nodes[stick.A]; n.Foot >= 0 {
				foot = math.Min(foot, 0)
			}
			out = append(out, a.station(f.a.u, foot))
		case disc:
			if s.side == Top || stick.Role == piece.ArmRole {
				out = append(out, a.station(a.of(f.centre)))
			}
		}
	}
	return out
}

// rails returns the axes of the level pipes, measured at their right ends.
func (s scene) rails() (out []draw.Station) {
	for _, b := range s.bodies {
		if b.Kind != piece.StickBody || s.r.Sticks[b.Index].Dir.Z != 0 {
			continue
		}
		switch f := b.form.(type) {
		case bar:
			out = append(out, alongV.station(f.a.v, math.Max(f.a.u, f.b.u)))
		case disc:
			out = append(out, alongV.station(f.centre.v, f.centre.u))
		}
	}
	return out
}

// pastFloor is how far the floor's line runs past the piece, on paper in millimetres.
const pastFloor = 5.0

// stack returns a function that makes chains along an axis from one side of the piece to the other, one through
// each list of stations, and outside them the whole. Chains that say the same are made once.
func (s scene) stack(per int64, a axis) func(most int, lists ...[]draw.Station) [][]draw.Station {
	lo, hi := s.whole.lo, s.whole.hi
	first, last := a.station(lo.u, lo.v), a.station(hi.u, lo.v)
	if a == alongV {
		first, last = a.station(lo.v, hi.u), a.station(hi.v, hi.u)
		if s.stands() && s.side != Top {
			first.Off = nm(hi.u + onPaper(pastFloor, per))
		}
	}
	return func(most int, lists ...[]draw.Station) (out [][]draw.Station) {
		if last.At <= first.At {
			return nil
		}
		for _, list := range lists {
			inner := slices.DeleteFunc(list, func(x draw.Station) bool { return x.At <= first.At || x.At >= last.At })
			chain := tidied(append(inner, first, last), a)
			thinned(&chain, most)
			if len(chain) > 2 && !slices.ContainsFunc(out, func(o []draw.Station) bool { return alike(o, chain) }) {
				out = append(out, chain)
			}
		}
		return append(out, []draw.Station{first, last})
	}
}

// alike reports whether two chains stop at the same places.
func alike(x, y []draw.Station) bool {
	return slices.EqualFunc(x, y, func(p, q draw.Station) bool { return p.At == q.At })
}

// stands reports whether the piece stands on the floor.
func (s scene) stands() bool { return len(s.r.Feet) > 0 }

// tidied returns one station a place in their order, each measured from where it is nearest to the chain.
func tidied(all []draw.Station, a axis) []draw.Station {
	all = slices.Clone(all)
	slices.SortStableFunc(all, func(x, y draw.Station) int {
		near := cmp.Compare(x.Off, y.Off)
		if a == alongV {
			near = -near
		}
		return cmp.Or(cmp.Compare(x.At, y.At), near)
	})
	return slices.CompactFunc(all, func(x, y draw.Station) bool { return (y.At - x.At).Abs() < length.Length(touch) })
}

// thinned leaves out those that stand closest to their neighbours where there are too many to read.
func thinned(chain *[]draw.Station, most int) {
	all := *chain
	for len(all) > max(most, 2) {
		drop, least := 1, length.Max
		for i := 1; i < len(all)-1; i++ {
			if gap := all[i+1].At - all[i-1].At; gap < least {
				drop, least = i, gap
			}
		}
		all = slices.Delete(all, drop, drop+1)
	}
	*chain = all
}
