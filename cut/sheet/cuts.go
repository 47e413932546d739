package sheet

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// box is a part or a kept offcut on a sheet.
type box struct {
	cut.Rect
	tag string // empty for an offcut
}

// boxes are the parts of a filled sheet, without tags.
func (m *model) boxes(f filled) (out []box) {
	for _, q := range f.parts {
		out = append(out, box{Rect: q.Rect, tag: "part"})
	}
	return out
}

// never is more stages than any layout needs.
const never = 1 << 30

// stagesOf returns the fewest stages of cuts that part the boxes.
func stagesOf(boxes []box, kerf length.Length) int {
	return min(stagesFrom(boxes, acrossX, kerf), stagesFrom(boxes, acrossY, kerf))
}

func stagesFrom(boxes []box, d direction, kerf length.Length) int {
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

// parted divides the boxes wherever a saw cut fits between them.
func parted(boxes []box, d direction, kerf length.Length) (groups [][]box) {
	sorted := slices.Clone(boxes)
	slices.SortStableFunc(sorted, func(a, b box) int {
		x, _ := extent(a.Rect, d)
		y, _ := extent(b.Rect, d)
		return cmp.Compare(x, y)
	})
	var end length.Length
	for i, b := range sorted {
		from, to := extent(b.Rect, d)
		if i == 0 || from >= end+kerf {
			groups = append(groups, nil)
			end = to
		}
		groups[len(groups)-1] = append(groups[len(groups)-1], b)
		end = max(end, to)
	}
	return groups
}

// cutter lists the cuts of one sheet, each after the one that made the piece it cuts.
type cutter struct {
	sheet string
	kerf  length.Length
	tasks []cut.Task
}

// piece lists the cuts of one piece that holds the boxes: across d wherever they can be parted so, then
// each of what comes off. after is the cut that made the piece.
func (c *cutter) piece(r cut.Rect, boxes []box, d direction, after int) {
	if len(boxes) == 0 || len(boxes) == 1 && boxes[0].Rect == r {
		return
	}
	groups := parted(boxes, d, c.kerf)
	start, end := extent(r, d)
	if from, _ := extent(groups[0][0].Rect, d); len(groups) == 1 && from == start && reach(groups[0], d) == end {
		if len(parted(boxes, other(d), c.kerf)) > 1 || len(boxes) == 1 {
			c.piece(r, boxes, other(d), after)
		}
		return
	}
	at := start
	for _, g := range groups {
		from, _ := extent(g[0].Rect, d)
		to := reach(g, d)
		if lost := from - at - c.kerf; lost > 0 {
			after = c.add(d, lost, nil, after)
		}
		if to < end {
			after = c.add(d, to-from, tagsOf(g), after)
		}
		c.piece(between(r, d, from, to), g, other(d), after)
		at = to + c.kerf
	}
}

func (c *cutter) add(d direction, setting length.Length, makes []string, after int) int {
	machine := cut.Rip
	if d == acrossX {
		machine = cut.Crosscut
	}
	c.tasks = append(c.tasks, cut.Task{After: after, Setting: cut.Setting{
		On: c.sheet, Machine: machine, Setting: setting, Makes: makes,
	}})
	return len(c.tasks) - 1
}

// reach is where the farthest box ends.
func reach(boxes []box, d direction) (end length.Length) {
	for _, b := range boxes {
		_, to := extent(b.Rect, d)
		end = max(end, to)
	}
	return end
}

func between(r cut.Rect, d direction, from, to length.Length) cut.Rect {
	if d == acrossX {
		r.X, r.Length = from, to-from
	} else {
		r.Y, r.Width = from, to-from
	}
	return r
}

func tagsOf(boxes []box) (tags []string) {
	for _, b := range boxes {
		if b.tag != "" {
			tags = append(tags, b.tag)
		}
	}
	return tags
}
