package check

import (
	"slices"

	bend "rodwright/mechanics/plate"
	"rodwright/trade/plate"
)

// spanOf is the greatest distance in mm that a plate bridges between neighbouring supports, along either side, or twice what
// overhangs them where it sags most there.
func spanOf(model *bend.Plate, bent plate.Bent) float64 {
	var xs, ys []float64
	note := func(x, y float64) { xs, ys = append(xs, x), append(ys, y) }
	for _, d := range model.Discs {
		note(d.X, d.Y)
	}
	for _, q := range model.Posts {
		note(q.X, q.Y)
	}
	for _, r := range model.Rails {
		note(r.FromX, r.FromY)
		note(r.ToX, r.ToY)
	}
	return max(bridged(xs, bent.BelowSupports.X), bridged(ys, bent.BelowSupports.Y), 1)
}

// bridged is the distance of the two supports next to a place, or twice how far it lies beyond all.
func bridged(at []float64, place float64) float64 {
	if len(at) == 0 {
		return 0
	}
	slices.Sort(at)
	lo, hi := at[0], at[len(at)-1]
	switch {
	case place < lo:
		return 2 * (lo - place)
	case place > hi:
		return 2 * (place - hi)
	}
	for _, v := range at {
		if v <= place {
			lo = v
		}
		if v >= place {
			hi = min(hi, v)
		}
	}
	return hi - lo
}
