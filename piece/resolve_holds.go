package piece

import (
	"slices"
	"strconv"

	"rodwright/length"
)

// placeHolds stands the things the piece must hold on their panels. A thing that is not placed is spread
// along its panel's length, the middle of the i-th of n at (i − ½)/n of it, and stands across that in the
// middle of the widest strip that no post passes, or in the middle of the panel where it does not fit in the
// strip. Of things that are placed the first stands there and the others beside it along the piece.
func (r *rod) placeHolds() error {
	for i := range r.doc.Holds {
		h := &r.doc.Holds[i]
		no := r.panelNo[h.On]
		p := &r.out.Panels[no]
		middle := r.clearMiddle(p, h)
		for k := range h.Count {
			at := p.spread(h, k, middle)
			lo := Vec{at[0] - h.Size[0].Half(), at[1] - h.Size[1].Half(), p.Max.Z}
			held := Held{Spec: h, Name: h.Name, Panel: no, MassKg: h.MassKg, Min: lo,
				Max: Vec{lo.X + h.Size[0], lo.Y + h.Size[1], lo.Z + h.Size[2]}}
			if h.Count > 1 {
				held.Name += " " + strconv.Itoa(k+1)
			}
			r.out.Held = append(r.out.Held, held)
		}
	}
	return nil
}

// spread returns the plan centre of the k-th thing held, in the piece; middle is where it stands across the
// panel's length.
func (p *FlatPanel) spread(h *Hold, k int, middle length.Length) [2]length.Length {
	if h.At != nil {
		return [2]length.Length{p.Min.X + h.At[0] + h.Size[0]*length.Length(k), p.Min.Y + h.At[1]}
	}
	n, d := int64(2*k+1), int64(2*h.Count)
	if p.Spec.Turned {
		return [2]length.Length{middle, p.Min.Y + (p.Max.Y-p.Min.Y).Scale(n, d)}
	}
	return [2]length.Length{p.Min.X + (p.Max.X-p.Min.X).Scale(n, d), middle}
}

// clearMiddle returns the middle, across the panel's length, of the widest strip that no post passes at the
// height of the thing, the front or left one of two alike.
func (r *rod) clearMiddle(p *FlatPanel, h *Hold) length.Length {
	lo, hi, axis := p.Min.Y, p.Max.Y, 1
	if p.Spec.Turned {
		lo, hi, axis = p.Min.X, p.Max.X, 0
	}
	var taken [][2]length.Length
	for k := range r.runs {
		u := &r.runs[k]
		top := p.Max.Z + h.Size[2]
		if !u.dir.upright() || u.start.Z >= top || u.far().Z <= p.Max.Z {
			continue
		}
		if u.start.X <= p.Min.X || u.start.X >= p.Max.X || u.start.Y <= p.Min.Y || u.start.Y >= p.Max.Y {
			continue
		}
		half := r.sectionIn(k, p.Max.Z, top).section.Half()
		at := [2]length.Length{u.start.X, u.start.Y}[axis]
		taken = append(taken, [2]length.Length{at - half, at + half})
	}
	slices.SortFunc(taken, func(a, b [2]length.Length) int { return int(a[0] - b[0]) })
	best, middle, from := h.Size[axis]-1, lo+(hi-lo).Half(), lo
	for _, t := range append(taken, [2]length.Length{hi, hi}) {
		if width := t[0] - from; width > best {
			best, middle = width, from+width.Half()
		}
		from = max(from, t[1])
	}
	return middle
}
