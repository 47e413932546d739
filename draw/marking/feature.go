package marking

import (
	"fmt"
	"math"
	"strings"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

func degrees(radians float64) float64 { return radians * 180 / math.Pi }

// Letter names a feature by its place in the list: a to z, then aa, ab and so on.
func Letter(i int) string {
	out := ""
	for i++; i > 0; i = (i - 1) / 26 {
		out = string(rune('a'+(i-1)%26)) + out
	}
	return out
}

// round reports whether a feature is a round hole.
func round(f part.Feature) bool { return f.Round && f.Size[0] == f.Size[1] }

// centred reports whether a feature is marked by its middle: a hole, or the ends of a slot.
func centred(f part.Feature) bool { return round(f) || f.Kind == piece.SlotFeature }

// centres returns the middle of a hole, or those of the ends of a slot.
func centres(f part.Feature) [][2]length.Length {
	c := f.Centre()
	if round(f) || f.Size[0] == f.Size[1] {
		return [][2]length.Length{c}
	}
	k := 0
	if f.Size[1] > f.Size[0] {
		k = 1
	}
	a, b := c, c
	r := f.Size[1-k].Half()
	a[k], b[k] = f.At[k]+r, f.At[k]+f.Size[k]-r
	return [][2]length.Length{a, b}
}

// what names a feature in a word of the trade.
func what(f part.Feature) string {
	switch {
	case f.Depth > 0:
		return "pocket"
	case round(f):
		return "hole"
	}
	return string(f.Kind)
}

// size is a diameter or length × width.
func size(f part.Feature, to length.Fineness) string {
	if round(f) {
		return "⌀ " + to.Text(f.Size[0])
	}
	return to.Number(f.Size[0]) + " × " + to.Text(f.Size[1])
}

func depth(f part.Feature, to length.Fineness) string {
	if f.Depth == 0 {
		return "through"
	}
	return to.Finer().Text(f.Depth)
}

// Features is the table that goes with the drawing of a panel, a row for each feature: its letter, what it
// is, where it is from the datum along and across the grain, its size, inside radius and depth, and why it is
// there. The place is the middle of a hole, else the corner nearest to the datum.
func Features(p part.Part, f length.Fineness) (head []string, rows [][]string) {
	head = []string{"", "What", "Along", "Across", "Size", "Radius", "Depth", "Why"}
	for i, c := range p.Features {
		place, radius := c.At, ""
		if round(c) {
			place = c.Centre()
		} else if c.Radius > 0 {
			radius = f.Finer().Text(c.Radius)
		}
		rows = append(rows, []string{
			Letter(i), what(c), f.Text(place[0]), f.Text(place[1]), size(c, f), radius, depth(c, f), c.Why,
		})
	}
	return head, rows
}

// group is the features that are alike but for their place.
type group struct{ letters, says string }

// groups gathers features that are cut alike.
func (m *marker) groups() (out []group) {
	f := m.st.Fineness
	var members [][]string
	for i, c := range m.p.Features {
		says := what(c) + " " + size(c, f)
		if !round(c) && c.Radius > 0 && c.Kind != piece.SlotFeature {
			says += ", inside corners " + f.Finer().Text(c.Radius) + " radius"
		}
		if c.Depth > 0 {
			says += fmt.Sprintf(", %s deep from the underside", depth(c, f))
		} else if c.Opens == part.NoSide {
			says += ", through"
		}
		k := 0
		for k < len(out) && out[k].says != says {
			k++
		}
		if k == len(out) {
			out, members = append(out, group{says: says}), append(members, nil)
		}
		members[k] = append(members[k], Letter(i))
	}
	for k := range out {
		out[k].letters = strings.Join(members[k], ", ")
	}
	return out
}
