package sheet

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// boxes are the parts of a filled sheet.
func (m *model) boxes(f filled) (out []cut.Rect) {
	for _, q := range f.parts {
		out = append(out, q.Rect)
	}
	return out
}

// never is more stages than any layout needs.
const never = 1 << 30

// stagesOf returns the fewest stages of cuts that part the boxes.
func stagesOf(boxes []cut.Rect, kerf length.Length) int {
	return min(stagesFrom(slices.Clone(boxes), acrossX, kerf), stagesFrom(slices.Clone(boxes), acrossY, kerf))
}

// stagesFrom returns how many stages part the boxes with cuts in direction d first. It puts them in another order.
func stagesFrom(boxes []cut.Rect, d direction, kerf length.Length) int {
	if len(boxes) <= 1 {
		return 0
	}
	groups := parted(boxes, d, kerf)
	if len(groups) == 1 {
		return never
	}
	worst := 0
	for _, g := range groups {
		worst = max(worst, stagesFrom(g, other(d), kerf))
	}
	return min(never, worst+1)
}

// extent is the range of a rectangle in the direction that cuts d part.
func extent(r cut.Rect, d direction) (from, to length.Length) {
	if d == acrossX {
		return r.X, r.X + r.Length
	}
	return r.Y, r.Y + r.Width
}

// parted sorts the boxes along d and divides them wherever a saw cut fits between them.
func parted(boxes []cut.Rect, d direction, kerf length.Length) (groups [][]cut.Rect) {
	slices.SortStableFunc(boxes, func(a, b cut.Rect) int {
		x, _ := extent(a, d)
		y, _ := extent(b, d)
		return cmp.Compare(x, y)
	})
	var end length.Length
	first := 0
	for i, b := range boxes {
		from, to := extent(b, d)
		if i > 0 && from >= end+kerf {
			groups = append(groups, boxes[first:i:i])
			first = i
		}
		end = max(end, to)
	}
	return append(groups, boxes[first:])
}
