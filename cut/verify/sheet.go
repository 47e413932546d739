package verify

import (
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// Sheet returns the faults of a layout of sheets; none when it is right.
func Sheet(p *cut.SheetProblem, a *cut.Answer) []Fault {
	v := &sheetCheck{report: report{unit: p.Unit}, p: p, a: a, sheets: map[string]int{}, parts: map[string]int{}}
	for i, s := range p.Sheets {
		v.sheets[s.Tag] = i
	}
	for i, q := range p.Parts {
		v.parts[q.Tag] = i
	}
	return v.run()
}

type sheetCheck struct {
	report
	p             *cut.SheetProblem
	a             *cut.Answer
	sheets, parts map[string]int
}

func (v *sheetCheck) run() []Fault {
	used, got := tally{}, tally{}
	var cost, value, opened, cutUp float64
	valued := false
	for _, q := range v.p.Parts {
		valued = valued || q.Value.Given
	}
	for _, u := range v.a.Used {
		used[u.Stock]++
		for _, q := range u.Parts {
			got[q.Tag]++
			cutUp += area(q.Size[0], q.Size[1])
			if i, ok := v.parts[q.Tag]; ok {
				value += v.p.Parts[i].Value.Value
			}
		}
		i, ok := v.sheets[u.Stock]
		if !ok {
			continue
		}
		cost += v.cost(i)
		opened += area(v.p.Sheets[i].Length, v.p.Sheets[i].Width)
		v.sheet(u, i)
	}
	if valued {
		cost = value
	}
	have, want := v.counts()
	v.stockUse(have, tags(v.p.Sheets, func(s cut.Sheet) string { return s.Tag }), used)
	v.report.parts(want, tags(v.p.Parts, func(q cut.SheetPart) string { return q.Tag }), got, missing(v.a), !valued)
	v.money(v.a, cost, valued)
	v.reasons(v.a)
	v.waste(v.a.Waste, opened, cutUp)
	v.shares()
	v.report.settings(v.a, have, want)
	v.steps()
	return v.faults
}

func (v *sheetCheck) cost(i int) float64 {
	s := v.p.Sheets[i]
	if s.Price.Given {
		return s.Price.Value
	}
	u := float64(v.p.Unit.Size())
	return float64(s.Length) / u * (float64(s.Width) / u)
}

func (v *sheetCheck) counts() (have, want map[string]cut.Count) {
	have, want = map[string]cut.Count{}, map[string]cut.Count{}
	for _, s := range v.p.Sheets {
		have[s.Tag] = s.Count
	}
	for _, q := range v.p.Parts {
		want[q.Tag] = q.Count
	}
	return have, want
}

// shares reckons the kinds of waste anew that do not depend on how the rest is cut up: the trim of the four edges and
// the offcuts that are kept. Defects take at most their own area.
func (v *sheetCheck) shares() {
	var trim, useful, defect float64
	for _, u := range v.a.Used {
		i, ok := v.sheets[u.Stock]
		if !ok {
			continue
		}
		s, t := v.p.Sheets[i], 2*v.p.Trim
		trim += area(s.Length, s.Width) - area(max(0, s.Length-t), max(0, s.Width-t))
		for _, o := range u.Left {
			useful += area(o.Size[0], o.Size[1])
		}
		for _, d := range s.Defects {
			defect += area(d.Length, d.Width)
		}
	}
	w := v.a.Waste
	v.share(w, "the trim", w.Trim, trim)
	v.share(w, "the useful leftover", w.LeftoverUseful, useful)
	v.share(w, "what defects take, and they are not as large,", max(w.Defect, defect), defect)
}

func (v *sheetCheck) sheet(u cut.Used, i int) {
	s := v.p.Sheets[i]
	var boxes []box
	for _, q := range u.Parts {
		b := boxOf(q.At, q.Size, q.Tag, true)
		boxes = append(boxes, b)
		v.part(q, s)
		for _, d := range s.Defects {
			if d.Overlaps(b.Rect) {
				v.add(DefectRule, "%s on %s holds the defect at %s, %s", q.Tag, s.Tag, v.text(d.X), v.text(d.Y))
			}
		}
	}
	for _, o := range u.Left {
		boxes = append(boxes, boxOf(o.At, o.Size, "an offcut", false))
		if !v.p.Keeps(o.Size[0], o.Size[1], s.Grain) {
			v.add(LeftRule, "an offcut of %s × %s on %s is not worth keeping", v.text(o.Size[0]), v.text(o.Size[1]), s.Tag)
		}
	}
	t := v.p.Trim
	v.within(boxes, cut.Rect{X: t, Y: t, Length: s.Length - 2*t, Width: s.Width - 2*t}, s.Tag)
	before := len(v.faults)
	v.apart(boxes, v.p.Kerf, s.Tag)
	if len(v.faults) == before {
		v.acrossCuts(boxes, s.Tag)
	}
}

// part checks one part's size and turning.
func (v *sheetCheck) part(q cut.Placed, s cut.Sheet) {
	i, ok := v.parts[q.Tag]
	if !ok {
		return
	}
	w := v.p.Parts[i]
	size := [2]length.Length{w.Length, w.Width}
	if q.Turned {
		size[0], size[1] = size[1], size[0]
		if !w.Turn || s.Grain {
			v.add(SizeRule, "%s on %s is turned and may not be", q.Tag, s.Tag)
		}
	}
	if q.Size != size {
		v.add(SizeRule, "%s on %s is %s × %s, wanted %s × %s", q.Tag, s.Tag,
			v.text(q.Size[0]), v.text(q.Size[1]), v.text(size[0]), v.text(size[1]))
	}
}

// steps checks that the list of cuts, where there is one, takes the sheets apart into just their parts and offcuts. A
// layout that is wrong otherwise is not sawn.
func (v *sheetCheck) steps() {
	if len(v.a.Cuts) == 0 || len(v.faults) > 0 {
		return
	}
	s := newSaw(v.p.Kerf, v.a.Cuts)
	for _, u := range v.a.Used {
		sheet := v.p.Sheets[v.sheets[u.Stock]]
		s.begin(u, sheet.Length, sheet.Width)
	}
	if !s.can() {
		v.add(CutRule, "the cuts, made in their order at their settings, do not take the sheets apart into their parts and offcuts")
	}
}

// acrossCuts checks that the pieces come apart by cuts right across, and the parts within the stages.
func (v *sheetCheck) acrossCuts(boxes []box, sheet string) {
	if min(stages(boxes, false, v.p.Kerf), stages(boxes, true, v.p.Kerf)) >= never {
		v.add(CutRule, "the pieces of %s can't be parted by cuts right across", sheet)
		return
	}
	parts := slices.DeleteFunc(slices.Clone(boxes), func(b box) bool { return !b.part })
	n := min(stages(parts, false, v.p.Kerf), stages(parts, true, v.p.Kerf))
	if v.p.Stages > 0 && n > v.p.Stages {
		v.add(CutRule, "%s needs %d stages of cuts, allowed are %d", sheet, n, v.p.Stages)
	}
}

// never is more stages than any layout needs.
const never = 1 << 30

// stages returns how many stages of cuts part the boxes when the first goes across x (along y when
// alongY), never when they can't be parted so. Cuts in one direction are made wherever there is room for
// one: more of them never hurt. A piece with a single part needs no further stage; the last trim of a part
// is not counted.
func stages(boxes []box, alongX bool, kerf length.Length) int {
	if len(boxes) <= 1 {
		return 0
	}
	groups := parted(boxes, alongX, kerf)
	if len(groups) == 1 {
		return never
	}
	worst := 0
	for _, g := range groups {
		worst = max(worst, stages(g, !alongX, kerf))
	}
	return min(never, worst+1)
}

// parted divides the boxes wherever a saw cut fits between them.
func parted(boxes []box, alongX bool, kerf length.Length) (groups [][]box) {
	span := func(b box) (from, to length.Length) {
		if alongX {
			return b.Y, b.Y + b.Width
		}
		return b.X, b.X + b.Length
	}
	s := slices.Clone(boxes)
	slices.SortStableFunc(s, func(a, b box) int {
		x, _ := span(a)
		y, _ := span(b)
		return int(min(1, max(-1, x-y)))
	})
	var end length.Length
	for i, b := range s {
		from, to := span(b)
		if i == 0 || from >= end+kerf {
			groups = append(groups, nil)
			end = to
		}
		groups[len(groups)-1] = append(groups[len(groups)-1], b)
		end = max(end, to)
	}
	return groups
}
