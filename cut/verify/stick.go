package verify

import (
	"math"

	"rodwright/cut"
	"rodwright/length"
)

// Stick returns the faults of a layout of sticks; none when it is right.
func Stick(p *cut.StickProblem, a *cut.Answer) []Fault {
	v := &stickCheck{report: report{unit: p.Unit}, p: p, a: a, stock: map[string]int{}, parts: map[string]int{}}
	for i, s := range p.Stock {
		v.stock[s.Tag] = i
	}
	for i, q := range p.Parts {
		v.parts[q.Tag] = i
	}
	return v.run()
}

type stickCheck struct {
	report
	p            *cut.StickProblem
	a            *cut.Answer
	stock, parts map[string]int
}

func (v *stickCheck) run() []Fault {
	used, got := tally{}, tally{}
	var cost, opened, cutUp float64
	for _, u := range v.a.Used {
		used[u.Stock]++
		for _, q := range u.Parts {
			got[q.Tag]++
			cutUp += q.Size[0].MM()
		}
		i, ok := v.stock[u.Stock]
		if !ok {
			continue
		}
		cost += v.cost(i)
		opened += v.p.Stock[i].Length.MM()
		v.stick(u, v.p.Stock[i])
	}
	have, want := v.counts()
	v.stockUse(have, tags(v.p.Stock, func(s cut.StickStock) string { return s.Tag }), used)
	v.report.parts(want, tags(v.p.Parts, func(q cut.StickPart) string { return q.Tag }), got, missing(v.a), true)
	v.money(v.a, cost, false)
	v.waste(v.a.Waste, opened, cutUp)
	v.report.settings(v.a, have, want)
	v.steps(got)
	return v.faults
}

func tags[T any](list []T, tag func(T) string) (out []string) {
	for _, e := range list {
		out = append(out, tag(e))
	}
	return out
}

func (v *stickCheck) counts() (have, want map[string]cut.Count) {
	have, want = map[string]cut.Count{}, map[string]cut.Count{}
	for _, s := range v.p.Stock {
		have[s.Tag] = s.Count
	}
	for _, q := range v.p.Parts {
		want[q.Tag] = q.Count
	}
	return have, want
}

func (v *stickCheck) cost(i int) float64 {
	s := v.p.Stock[i]
	if s.Price.Given {
		return s.Price.Value
	}
	return float64(s.Length) / float64(v.p.Unit.Size())
}

func (v *stickCheck) stick(u cut.Used, s cut.StickStock) {
	var boxes []box
	for _, q := range u.Parts {
		boxes = append(boxes, thick(q.At, q.Size, q.Tag, true))
		i, ok := v.parts[q.Tag]
		if ok && q.Size[0] != v.p.Parts[i].Length {
			v.add(SizeRule, "%s on %s is %s long, wanted %s", q.Tag, s.Tag, v.text(q.Size[0]), v.text(v.p.Parts[i].Length))
		}
	}
	for _, o := range u.Left {
		boxes = append(boxes, thick(o.At, o.Size, "an offcut", false))
		if o.Size[0] < v.p.Useful || o.Size[0] <= 0 {
			v.add(LeftRule, "an offcut of %s on %s is not worth keeping", v.text(o.Size[0]), s.Tag)
		}
	}
	v.within(boxes, cut.Rect{X: v.p.Trim, Length: s.Length - 2*v.p.Trim, Width: 1}, s.Tag)
	v.apart(boxes, v.p.Kerf, s.Tag)
}

// thick gives a piece of a stick some width, so that pieces can be compared as rectangles.
func thick(at, size [2]length.Length, name string, part bool) box {
	return boxOf([2]length.Length{at[0], 0}, [2]length.Length{size[0], 1}, name, part)
}

// steps checks that the cuts make every part once, at its own length. A layout without cuts has none.
func (v *stickCheck) steps(got tally) {
	if len(v.a.Cuts) == 0 {
		return
	}
	made := tally{}
	for _, c := range v.a.Cuts {
		for _, tag := range c.Makes {
			made[tag]++
			if i, ok := v.parts[tag]; ok && v.p.Parts[i].Length != c.Setting {
				v.add(CutRule, "cut %d makes %s at the setting %s, wanted %s", c.N, tag, v.text(c.Setting), v.text(v.p.Parts[i].Length))
			}
		}
	}
	for _, tag := range sorted(got) {
		if made[tag] != got[tag] {
			v.add(CutRule, "the cuts make %s %d times, the layout has it %d times", tag, made[tag], got[tag])
		}
	}
}

// area returns a rectangle's area in square millimetres.
func area(l, w length.Length) float64 { return math.Abs(l.MM() * w.MM()) }
