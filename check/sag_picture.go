package check

import (
	"math"

	"rodwright/finding"
	bend "rodwright/mechanics/plate"
)

// The points of the picture of a bent panel along its longer side and across it, at most.
const (
	bentAlong  = 33
	bentAcross = 17
)

// bentPicture is how far a panel sags at points an even distance apart, in mm to three places, where it is as it lies in
// the piece: rails that give way count.
func bentPicture(model *bend.Plate, f *bend.Field) finding.Picture {
	columns, rows := bentAlong, bentAcross
	if model.Depth > model.Width {
		columns, rows = rows, columns
	}
	out := &finding.Bent{Width: model.Width, Depth: model.Depth, Columns: columns, Supports: supportsOf(model)}
	for j := range rows {
		y := model.Depth * float64(j) / float64(rows-1)
		for i := range columns {
			w, ok := f.At(model.Width*float64(i)/float64(columns-1), y)
			if !ok {
				w = math.NaN()
			}
			out.Down = append(out.Down, math.Round(w*1000)/1000)
		}
	}
	return finding.Picture{Bent: out}
}

// supportsOf are the places that bear a panel, of a rail its ends.
func supportsOf(model *bend.Plate) (out [][2]float64) {
	for _, d := range model.Discs {
		out = append(out, [2]float64{d.X, d.Y})
	}
	for _, q := range model.Posts {
		out = append(out, [2]float64{q.X, q.Y})
	}
	for _, r := range model.Rails {
		out = append(out, [2]float64{r.FromX, r.FromY}, [2]float64{r.ToX, r.ToY})
	}
	return out
}
