package marking

import (
	"slices"
	"strings"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

// fixing is a place where the frame is screwed to the panel.
type fixing struct {
	says  string // flange under it
	at    [2]length.Length
	plate length.Length // diameter; zero where none is known
	below bool
}

// short is what is screwed on there in a word: flange.
func (x fixing) short() string {
	word, _, _ := strings.Cut(x.says, " ")
	return word
}

// fixingsOf finds the flanges, straps and feet on a panel, measured from its datum.
func fixingsOf(r *piece.Resolved, p part.Part, flat *piece.FlatPanel) (out []fixing) {
	if flat == nil {
		return nil
	}
	for _, s := range flat.Seats {
		x := fixing{at: own(flat, p, s.At), below: true}
		switch {
		case s.Kind == piece.OnPosts && s.Node >= 0:
			x.says, x.plate = "flange under it", r.Nodes[s.Node].Fitting.Plate
		case s.Kind == piece.UnderPosts && s.Node >= 0:
			x.says, x.plate, x.below = "flange on it", r.Nodes[s.Node].Fitting.Plate, false
		case s.Strap:
			x.says = "strap under it"
		case s.Foot >= 0:
			x.says = "foot under it"
		default:
			continue
		}
		out = append(out, x)
	}
	return out
}

// own turns a place in the piece's plan into the panel's own: along the grain and across it from its datum.
func own(flat *piece.FlatPanel, p part.Part, at [2]length.Length) [2]length.Length {
	x, y := at[0]-flat.Min.X, at[1]-flat.Min.Y
	if flat.GrainX {
		return [2]length.Length{x, y}
	}
	return [2]length.Length{y, p.Finished[1] - x}
}

// drawFixings shows what is screwed to the panel, dashed where it lies under it.
func (m *marker) drawFixings() {
	for _, x := range m.fixings {
		pen := draw.Ghost
		if x.below {
			pen = draw.Hidden
		}
		r := m.full(1.5)
		if x.plate > 0 {
			r = x.plate.Half()
			m.add(draw.Arc{Pen: pen, Centre: at(x.at[0], x.at[1]), Radius: r, Sweep: 360})
			c := opening{lo: spotOf(x.at).minus(spot{float64(r), float64(r)}), hi: spotOf(x.at).plus(spot{float64(r), float64(r)})}
			for i := range c.radius {
				c.radius[i] = float64(r)
			}
			m.room.KeepPath(pathOf(c.edges()))
		}
		r += m.full(1.2)
		m.kept(draw.Centre, at(x.at[0]-r, x.at[1]), at(x.at[0]+r, x.at[1]))
		m.kept(draw.Centre, at(x.at[0], x.at[1]-r), at(x.at[0], x.at[1]+r))
	}
}

// fixingWords tells what is screwed on, each kind once.
func (m *marker) fixingWords() (out []string) {
	for _, x := range m.fixings {
		if !slices.Contains(out, x.says) {
			out = append(out, x.says)
		}
	}
	return out
}
