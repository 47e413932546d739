package piece

import (
	"strconv"

	"rodwright/length"
)

// bore adds the document's holes, slots and cut-outs to a panel: a row of n stands at i/(n + 1) of its edge.
func (r *rod) bore(p *FlatPanel) error {
	for i := range r.doc.Holes {
		h := &r.doc.Holes[i]
		if h.In != p.Name {
			continue
		}
		centres := p.row(h)
		for k, c := range centres {
			if c[0] < 0 || c[1] < 0 || c[0] > p.Max.X-p.Min.X || c[1] > p.Max.Y-p.Min.Y {
				return r.fault(h.Pos, "place it within the panel", "the middle of %s %d lies outside %s", h.Name, k+1, p.Name)
			}
			f := h.feature(c)
			if len(centres) > 1 {
				f.Name += " " + strconv.Itoa(k+1)
			}
			p.Features = append(p.Features, f)
		}
	}
	return nil
}

// row returns the centres of the holes, measured from the panel's left front corner.
func (p *FlatPanel) row(h *Holes) (at [][2]length.Length) {
	if h.Along == "" {
		return h.At
	}
	x, y := p.Max.X-p.Min.X, p.Max.Y-p.Min.Y
	for i := range max(1, h.Count) {
		n, d := int64(i+1), int64(max(1, h.Count)+1)
		switch PanelSide(h.Along) {
		case FrontSide:
			at = append(at, [2]length.Length{x.Scale(n, d), h.FromEdge})
		case BackSide:
			at = append(at, [2]length.Length{x.Scale(n, d), y - h.FromEdge})
		case LeftSide:
			at = append(at, [2]length.Length{h.FromEdge, y.Scale(n, d)})
		case RightSide:
			at = append(at, [2]length.Length{x - h.FromEdge, y.Scale(n, d)})
		}
	}
	return at
}

// feature returns one opening of the row at its centre.
func (h *Holes) feature(c [2]length.Length) Feature {
	f := Feature{Name: h.Name, Why: h.Name, Depth: h.Depth, Node: -1, Stick: -1, PassSize: h.PassSize, Passes: h.Passes, Pos: h.Pos}
	size := h.Size
	switch h.Kind {
	case Slot:
		f.Kind, f.Radius = SlotFeature, min(size[0], size[1]).Half()
	case CutOut:
		f.Kind, f.Radius = CutOutFeature, h.Radius
	default:
		f.Kind, f.Round, f.Radius = HoleFeature, true, h.Diameter.Half()
		size = [2]length.Length{h.Diameter, h.Diameter}
	}
	for k := range 2 {
		f.Min[k] = c[k] - size[k].Half()
		f.Max[k] = f.Min[k] + size[k]
	}
	return f
}
