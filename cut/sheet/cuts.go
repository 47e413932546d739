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
	return min(stagesFrom(slices.Clone(boxes), acrossX, kerf), stagesFrom(slices.Clone(boxes), acrossY, kerf))
}

// stagesFrom returns how many stages part the boxes with cuts in direction d first. It puts them in another order.
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

// parted sorts the boxes along d and divides them wherever a saw cut fits between them.
func parted(boxes []box, d direction, kerf length.Length) (groups [][]box) {
	slices.SortStableFunc(boxes, func(a, b box) int {
		x, _ := extent(a.Rect, d)
		y, _ := extent(b.Rect, d)
		return cmp.Compare(x, y)
	})
	var end length.Length
	first := 0
	for i, b := range boxes {
		from, to := extent(b.Rect, d)
		if i > 0 && from >= end+kerf {
			groups = append(groups, boxes[first:i:i])
			first = i
		}
		end = max(end, to)
	}
	return append(groups, boxes[first:])
}

// staged is a cut with its stage.
type staged struct {
	cut.Task
	stage int
}

// cutter lists the cuts of one sheet, each after the one that made the piece it cuts.
type cutter struct {
	sheet string
	kerf  length.Length
	tasks []staged
}

// piece lists the cuts of one piece that holds the boxes: across d wherever they can be parted so, then
// each of what comes off. after is the cut that made the piece.
func (c *cutter) piece(r cut.Rect, boxes []box, d direction, after, stage int) {
	if len(boxes) == 0 || len(boxes) == 1 && boxes[0].Rect == r {
		return
	}
	groups := parted(boxes, d, c.kerf)
	start, end := extent(r, d)
	if from, _ := extent(groups[0][0].Rect, d); len(groups) == 1 && from == start && reach(groups[0], d) == end {
		if len(boxes) == 1 || len(parted(boxes, other(d), c.kerf)) > 1 {
			c.piece(r, boxes, other(d), after, stage)
		}
		return
	}
	at := start
	for _, g := range groups {
		from, _ := extent(g[0].Rect, d)
		to := reach(g, d)
		if lost := from - at - c.kerf; lost > 0 {
			after = c.add(d, lost, nil, after, stage)
		}
		if to < end {
			after = c.add(d, to-from, tagsOf(g), after, stage)
		}
		c.piece(between(r, d, from, to), g, other(d), after, stage+1)
		at = to + c.kerf
	}
}

func (c *cutter) add(d direction, setting length.Length, makes []string, after, stage int) int {
	machine := cut.Rip
	if d == acrossX {
		machine = cut.Crosscut
	}
	c.tasks = append(c.tasks, staged{cut.Task{After: after, Setting: cut.Setting{
		On: c.sheet, Machine: machine, Setting: setting, Makes: makes,
	}}, stage})
	return len(c.tasks) - 1
}

// mostOrdered is how many cuts are put in the order of the fewest settings. Of more, nobody has so many sheets half
// cut: one sheet follows another, and on each one stage the other.
const mostOrdered = 400

// ordered are the cuts as they are made.
func ordered(tasks []staged) []cut.Setting {
	if len(tasks) <= mostOrdered {
		plain := make([]cut.Task, len(tasks))
		for i, t := range tasks {
			plain[i] = t.Task
		}
		return cut.Order(plain)
	}
	out := make([]cut.Setting, 0, len(tasks))
	for from, to := 0, 0; from < len(tasks); from = to {
		for to = from + 1; to < len(tasks) && tasks[to].After >= 0; to++ {
		}
		of := tasks[from:to] // what follows one first cut
		slices.SortStableFunc(of, func(a, b staged) int { return cmp.Compare(a.stage, b.stage) })
		for _, t := range of {
			n := len(out) - 1
			if n >= 0 && out[n].On == t.On && out[n].Machine == t.Machine && out[n].Setting == t.Setting.Setting {
				out[n].Makes = append(out[n].Makes, t.Makes...)
				continue
			}
			t.Setting.N = n + 2
			out = append(out, t.Setting)
		}
	}
	return out
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
			if tags == nil {
				tags = make([]string, 0, len(boxes))
			}
			tags = append(tags, b.tag)
		}
	}
	return tags
}
