package offcut

import (
	"cmp"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// answer turns a plan into an answer; bound and what could not be made are those of a, as far as they still hold.
func (w *work) answer(a *cut.Answer, pl *plan) *cut.Answer {
	out := &cut.Answer{Cost: cut.RoundMoney(pl.cost), Bound: a.Bound, Proven: a.Proven}
	rest := pl.strips
	for g, q := range w.glued {
		n := 0
		for n < len(rest) && rest[n].glued == g {
			n++
		}
		strips := rest[:n]
		rest = rest[n:]
		tag := w.p.Panels[q.panel].Tag
		if len(strips) > 0 {
			out.Panels = append(out.Panels, cut.GluedPanel{Tag: tag, Strips: w.strips(g, strips)})
		}
	}
	out.NotPlaced = w.notPlaced(a, out)
	if out.Cost < a.Bound {
		out.Bound, out.Proven = out.Cost, false
	}
	s := &sawing{w: w, stops: map[stop]bool{}}
	for k, strips := range pl.boards {
		if len(strips) > 0 {
			s.board(k, strips)
			out.Used = append(out.Used, w.used(k, strips, s.kerf, &out.Waste))
		}
	}
	return out
}

// notPlaced is what a could not place and out does not either.
func (w *work) notPlaced(a, out *cut.Answer) (left []cut.NotPlaced) {
	made := map[string]int{}
	for _, g := range out.Panels {
		made[g.Tag]++
	}
	for _, g := range a.Panels {
		made[g.Tag]--
	}
	for _, n := range a.NotPlaced {
		if made[n.Tag] > 0 {
			made[n.Tag]--
			continue
		}
		left = append(left, n)
	}
	return left
}

// strips are the strips of a panel in the order in which they are glued: as they were where they still are.
func (w *work) strips(g int, strips []strip) []cut.Strip {
	before := w.glued[g].before
	same := len(before) == len(strips)
	for i := 0; same && i < len(strips); i++ {
		same = w.told(strips[i], before[i].Ring) == before[i]
	}
	if same {
		return before
	}
	return w.alternate(g, strips)
}

// used describes one board and adds up what is lost of it.
func (w *work) used(k int, strips []strip, kerf []cut.Rect, waste *cut.Waste) cut.Used {
	b := w.p.Boards[k]
	u := cut.Used{Stock: b.Tag}
	strips = slices.Clone(strips)
	slices.SortStableFunc(strips, byPlace)
	free := []cut.Rect{{Length: b.Length, Width: b.Width}}
	end := length.Length(0)
	for _, s := range strips {
		u.Parts = append(u.Parts, cut.Placed{
			Tag: w.p.Panels[w.glued[s.glued].panel].Tag,
			At:  [2]length.Length{s.X, s.Y}, Size: [2]length.Length{s.Length, s.Width},
		})
		end = max(end, s.X+s.Length)
		free, _ = take(free, s.Rect)
	}
	var lost float64
	if tail := w.tail(k, end); tail > 0 && tail >= w.p.MinTail {
		u.Left = []cut.Offcut{{At: [2]length.Length{end + w.p.Kerf}, Size: [2]length.Length{tail, b.Width}}}
		free, lost = take(free, cut.Rect{X: end + w.p.Kerf, Length: tail, Width: b.Width})
		waste.LeftoverUseful += lost
	}
	for _, r := range kerf {
		free, lost = take(free, r)
		waste.Kerf += lost
	}
	in := w.usable(k)
	for _, r := range []cut.Rect{{Length: b.Length, Width: in.Y}, {Y: in.Y + in.Width, Length: b.Length, Width: b.Width - in.Y - in.Width}} {
		free, lost = take(free, r)
		waste.Trim += lost
	}
	for _, d := range b.Defects {
		free, lost = take(free, d.Rect)
		waste.Defect += lost
	}
	for _, r := range free {
		waste.LeftoverLost += area(r)
	}
	return u
}

// byPlace compares strips from left to right and from the low side up.
func byPlace(a, b strip) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) }

func area(r cut.Rect) float64 { return r.Length.MM() * r.Width.MM() }

// take takes a rectangle out of those that are free, and returns what is left and the area that was taken.
func take(free []cut.Rect, hole cut.Rect) (left []cut.Rect, taken float64) {
	for _, r := range free {
		if !r.Overlaps(hole) {
			left = append(left, r)
			continue
		}
		x, y := max(r.X, hole.X), max(r.Y, hole.Y)
		end, top := min(r.X+r.Length, hole.X+hole.Length), min(r.Y+r.Width, hole.Y+hole.Width)
		taken += area(cut.Rect{Length: end - x, Width: top - y})
		for _, p := range []cut.Rect{
			{X: r.X, Y: r.Y, Length: x - r.X, Width: r.Width},
			{X: end, Y: r.Y, Length: r.X + r.Length - end, Width: r.Width},
			{X: x, Y: r.Y, Length: end - x, Width: y - r.Y},
			{X: x, Y: top, Length: end - x, Width: r.Y + r.Width - top},
		} {
			if p.Length > 0 && p.Width > 0 {
				left = append(left, p)
			}
		}
	}
	return left, taken
}
