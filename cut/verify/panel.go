package verify

import (
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// Panel returns the faults of a layout of glued-up panels; none when it is right.
func Panel(p *cut.PanelProblem, a *cut.Answer) []Fault {
	v := &panelCheck{report: report{unit: p.Unit}, p: p, a: a, boards: map[string]int{}, panels: map[string]int{}}
	for i, b := range p.Boards {
		v.boards[b.Tag] = i
	}
	for i, q := range p.Panels {
		v.panels[q.Tag] = i
	}
	return v.run()
}

type panelCheck struct {
	report
	p              *cut.PanelProblem
	a              *cut.Answer
	boards, panels map[string]int
}

func (v *panelCheck) run() []Fault {
	used, got := tally{}, tally{}
	var cost, opened, cutUp float64
	for _, u := range v.a.Used {
		used[u.Stock]++
		for _, q := range u.Parts {
			cutUp += area(q.Size[0], q.Size[1])
		}
		if k, ok := v.boards[u.Stock]; ok {
			cost += v.cost(k, u)
			opened += area(v.p.Boards[k].Length, v.p.Boards[k].Width)
			v.board(u, k)
		}
	}
	have, want := map[string]cut.Count{}, map[string]cut.Count{}
	for _, b := range v.p.Boards {
		have[b.Tag] = 1
	}
	for _, q := range v.p.Panels {
		want[q.Tag] = q.Count
	}
	for _, g := range v.a.Panels {
		got[g.Tag]++
		if i, ok := v.panels[g.Tag]; ok {
			v.panel(g, i)
		}
	}
	v.stockUse(have, tags(v.p.Boards, func(b cut.Board) string { return b.Tag }), used)
	v.parts(want, tags(v.p.Panels, func(q cut.Panel) string { return q.Tag }), got, missing(v.a), true)
	v.sameStrips()
	v.money(v.a, cost, false)
	v.waste(v.a.Waste, opened, cutUp)
	v.settings(v.a, have, want)
	v.steps()
	return v.faults
}

// steps checks that the list of cuts, where there is one, takes the boards apart into just their strips and offcuts. A
// layout that is wrong otherwise is not sawn.
func (v *panelCheck) steps() {
	if len(v.a.Cuts) == 0 || len(v.faults) > 0 {
		return
	}
	s := newSaw(v.p.Kerf, v.a.Cuts)
	for _, u := range v.a.Used {
		b := v.p.Boards[v.boards[u.Stock]]
		s.begin(u, b.Length, b.Width)
	}
	if !s.can() {
		v.add(CutRule, "the cuts, made in their order at their settings, do not take the boards apart into their strips and offcuts")
	}
}

// cost is the board's price less what its tail is worth.
func (v *panelCheck) cost(k int, u cut.Used) float64 {
	b := v.p.Boards[k]
	unit := float64(v.p.Unit.Size())
	price := b.Price.Value
	if !b.Price.Given {
		price = float64(b.Length) / unit * (float64(b.Width) / unit)
	}
	var end length.Length
	for _, q := range u.Parts {
		end = max(end, q.At[0]+q.Size[0])
	}
	tail := b.Length - end - v.p.Kerf
	if len(u.Parts) == 0 || tail <= 0 || tail < v.p.MinTail {
		return price
	}
	return price - v.p.Salvage*price*float64(tail)/float64(b.Length)
}

// board checks the places of the strips on one board.
func (v *panelCheck) board(u cut.Used, k int) {
	b := v.p.Boards[k]
	var strips, left []box
	for _, q := range u.Parts {
		strips = append(strips, boxOf(q.At, q.Size, q.Tag, true))
	}
	for _, o := range u.Left {
		left = append(left, boxOf(o.At, o.Size, "an offcut", false))
		if o.Size[0] < v.p.MinTail || o.Size[0] <= 0 {
			v.add(LeftRule, "an offcut of %s on %s is not worth keeping", v.text(o.Size[0]), b.Tag)
		}
	}
	from, to := v.usable(b)
	v.within(strips, cut.Rect{Y: from, Length: b.Length, Width: to - from}, b.Tag)
	v.within(left, cut.Rect{Length: b.Length, Width: b.Width}, b.Tag)
	before := len(v.faults)
	v.apart(append(slices.Clone(strips), left...), v.p.Kerf, b.Tag)
	if len(v.faults) > before {
		return
	}
	if v.p.Recut {
		v.recut(strips, b.Tag)
		return
	}
	for _, segment := range parted(strips, false, v.p.Kerf) {
		other := func(s box) bool { return s.X != segment[0].X || s.Length != segment[0].Length }
		if len(parted(segment, true, v.p.Kerf)) != len(segment) || slices.ContainsFunc(segment, other) {
			v.add(CutRule, "%s on %s can't be crosscut and then ripped", segment[0].name, b.Tag)
		}
		v.oneKind(segment, b.Tag)
	}
}

// recut checks that the strips of a board come off it by crosscuts, rips, crosscuts and rips again, each time wherever a
// saw cut fits between them: more cuts of one direction never hurt the next.
func (v *panelCheck) recut(strips []box, board string) {
	across := func(s box) length.Length { return s.X + s.Length }
	for _, segment := range parted(strips, false, v.p.Kerf) {
		for _, ripped := range parted(segment, true, v.p.Kerf) {
			for _, piece := range parted(ripped, false, v.p.Kerf) {
				end := func(s box) bool { return s.X != piece[0].X || across(s) != across(piece[0]) }
				if len(parted(piece, true, v.p.Kerf)) != len(piece) || slices.ContainsFunc(piece, end) {
					v.add(CutRule, "%s on %s can't be crosscut, ripped, crosscut again and ripped again", piece[0].name, board)
				}
			}
		}
	}
}

// oneKind checks that the strips of one segment are for panels of one length, grade and thickness.
func (v *panelCheck) oneKind(segment []box, board string) {
	first, ok := v.panels[segment[0].name]
	for _, s := range segment {
		i, known := v.panels[s.name]
		if !ok || !known {
			continue
		}
		p, q := v.p.Panels[first], v.p.Panels[i]
		if p.Length != q.Length || p.Show != q.Show || p.Thickness != q.Thickness {
			v.add(CutRule, "a segment of %s is ripped into strips for %s and %s, which differ in length, grade or thickness", board, p.Tag, q.Tag)
			return
		}
	}
}

// usable is the width that is left when the rough edges have come off; of one, the far one.
func (v *panelCheck) usable(b cut.Board) (from, to length.Length) {
	t := v.p.BoardEdgeTrim
	switch b.RoughEdges {
	case 1:
		return 0, b.Width - t
	case 2:
		return t, b.Width - t
	}
	return 0, b.Width
}

// sameStrips checks that the boards and the panels speak of the same strips.
func (v *panelCheck) sameStrips() {
	count := tally{}
	for _, u := range v.a.Used {
		for _, q := range u.Parts {
			count[fmt.Sprint(u.Stock, " ", q.Tag, " ", q.At, q.Size)]++
		}
	}
	for _, g := range v.a.Panels {
		for _, s := range g.Strips {
			key := fmt.Sprint(s.Board, " ", g.Tag, " ", s.At, s.Size)
			if count[key]--; count[key] < 0 {
				v.add(PartRule, "a strip of %s is not among the parts of board %s", g.Tag, s.Board)
			}
		}
	}
	for _, key := range sorted(count) {
		if count[key] > 0 {
			v.add(PartRule, "a board is cut into a strip that no panel has: %s", key)
		}
	}
}

// panel checks the strips of one panel.
func (v *panelCheck) panel(g cut.GluedPanel, i int) {
	q := v.p.Panels[i]
	var across length.Length
	for _, s := range g.Strips {
		k, ok := v.boards[s.Board]
		if !ok {
			v.add(StockRule, "%q is no board of the problem", s.Board)
			continue
		}
		v.strip(s, q)
		v.grade(s, v.p.Boards[k], q)
		v.keepOut(s, v.p.Boards[k], q, across)
		if q.Thickness > v.p.Boards[k].Thickness {
			v.add(StripRule, "board %s is thinner than panel %s wants", s.Board, g.Tag)
		}
		across += s.NetWidth
	}
	if want := q.Width + 2*v.p.PanelEdgeTrim; across < want {
		v.add(StripRule, "the strips of %s add up to %s, wanted %s", g.Tag, v.text(across), v.text(want))
	}
	if q.Mates {
		v.mates(g)
	}
}

// strip checks length, width and net width of a strip. Both its edges are jointed, at the sides of the panel
// too.
func (v *panelCheck) strip(s cut.Strip, q cut.Panel) {
	if want := q.Length + 2*v.p.EndTrim; s.Size[0] < want {
		v.add(StripRule, "a strip of %s is %s long, wanted %s", q.Tag, v.text(s.Size[0]), v.text(want))
	}
	if span := v.p.Strip; s.Size[1] < span.Least || span.Most > 0 && s.Size[1] > span.Most {
		v.add(StripRule, "a strip of %s is %s wide, allowed are %s to %s", q.Tag, v.text(s.Size[1]), v.text(span.Least), v.text(span.Most))
	}
	if net := s.Size[1] - 2*v.p.Jointing; s.NetWidth <= 0 || s.NetWidth != net {
		v.add(StripRule, "a strip of %s has the net width %s, right is %s", q.Tag, v.text(s.NetWidth), v.text(net))
	}
}

// turnedOver reports whether the strip shows the back of its board.
func turnedOver(s cut.Strip, b cut.Board) bool {
	return s.Ring != cut.NoRing && b.Ring != cut.NoRing && s.Ring != b.Ring
}

func (v *panelCheck) grade(s cut.Strip, b cut.Board, q cut.Panel) {
	r := cut.Rect{X: s.At[0], Y: s.At[1], Length: s.Size[0], Width: s.Size[1]}
	for _, d := range b.Defects {
		if !d.Overlaps(r) {
			continue
		}
		if !q.Show.Takes(d, turnedOver(s, b)) {
			v.add(DefectRule, "a strip of %s from %s holds a %s at %s, %s", q.Tag, b.Tag, d.Kind, v.text(d.X), v.text(d.Y))
		} else if d.Kind == cut.Void && (d.Y < r.Y || d.Y+d.Width > r.Y+r.Width) {
			v.add(DefectRule, "a joint of %s goes through the void of %s at %s, %s", q.Tag, b.Tag, v.text(d.X), v.text(d.Y))
		}
	}
}

// keepOut checks the defects of a strip against the places of the panel that must be free of them. A
// strip that is turned over about its length shows its far edge first.
func (v *panelCheck) keepOut(s cut.Strip, b cut.Board, q cut.Panel, across length.Length) {
	r := cut.Rect{X: s.At[0], Y: s.At[1], Length: s.Size[0], Width: s.Size[1]}
	for _, d := range b.Defects {
		if !d.Overlaps(r) {
			continue
		}
		y := d.Y - s.At[1]
		if turnedOver(s, b) {
			y = s.Size[1] - y - d.Width
		}
		in := cut.Rect{
			X: d.X - s.At[0] - v.p.EndTrim, Length: d.Length,
			Y: across + y - v.p.Jointing - v.p.PanelEdgeTrim, Width: d.Width,
		}
		for _, k := range q.KeepOut {
			if k.Overlaps(in) {
				v.add(DefectRule, "%s has a %s where none may be, at %s, %s", q.Tag, d.Kind, v.text(k.X), v.text(k.Y))
			}
		}
	}
}

func (v *panelCheck) mates(g cut.GluedPanel) {
	for _, s := range g.Strips[min(1, len(g.Strips)):] {
		k, ok1 := v.boards[g.Strips[0].Board]
		l, ok2 := v.boards[s.Board]
		if !ok1 || !ok2 || k == l {
			continue
		}
		if a, b := v.p.Boards[k].Mate, v.p.Boards[l].Mate; a == "" || a != b {
			v.add(MateRule, "%s wants boards of one log, %s and %s are none", g.Tag, g.Strips[0].Board, s.Board)
			return
		}
	}
}
