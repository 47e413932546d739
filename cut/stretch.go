package cut

import "rodwright/length"

// Stretch is a range from, up to.
type Stretch struct{ From, To length.Length }

// Without takes the range d out of free ranges.
func Without(free []Stretch, d Stretch) (out []Stretch) {
	for _, f := range free {
		if d.To <= f.From || d.From >= f.To {
			out = append(out, f)
			continue
		}
		if d.From > f.From {
			out = append(out, Stretch{f.From, d.From})
		}
		if d.To < f.To {
			out = append(out, Stretch{d.To, f.To})
		}
	}
	return out
}

// Across returns what r covers across the length of the stock.
func (r Rect) Across() Stretch { return Stretch{r.Y, r.Y + r.Width} }
