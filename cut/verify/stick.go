package verify

import (
	"maps"
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
	made := maps.Clone(got)
	for _, tag := range sorted(made) {
		cost += float64(made[tag]) * v.making(tag)
	}
	for _, tag := range v.a.Bought {
		got[tag]++
		cost += v.bought(tag)
	}
	have, want := v.counts()
	v.stockUse(have, tags(v.p.Stock, func(s cut.StickStock) string { return s.Tag }), used)
	v.report.parts(want, tags(v.p.Parts, func(q cut.StickPart) string { return q.Tag }), got, missing(v.a), true)
	v.money(v.a, cost, false)
	v.reasons(v.a)
	v.waste(v.a.Waste, opened, cutUp)
	v.shares()
	v.report.settings(v.a, have, want)
	v.steps()
	return v.faults
}

// making is what the work on one part that is cut costs.
func (v *stickCheck) making(tag string) float64 {
	i, ok := v.parts[tag]
	if !ok || !v.p.Parts[i].Making.Given {
		return 0
	}
	return v.p.Parts[i].Making.Value
}

// bought is what a part costs ready made, and a fault where it can't be had.
func (v *stickCheck) bought(tag string) float64 {
	i, ok := v.parts[tag]
	if !ok {
		return 0
	}
	if !v.p.Parts[i].Bought.Given {
		v.add(PartRule, "%s is bought, and can't be had ready made", tag)
	}
	return v.p.Parts[i].Bought.Value
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
		v.straight(q.Tag, s.Tag, q.At, q.Size)
		if q.Turned {
			v.add(SizeRule, "%s on %s is turned, and a stick has one way only", q.Tag, s.Tag)
		}
		i, ok := v.parts[q.Tag]
		if ok && q.Size[0] != v.p.Parts[i].Length {
			v.add(SizeRule, "%s on %s is %s long, wanted %s", q.Tag, s.Tag, v.text(q.Size[0]), v.text(v.p.Parts[i].Length))
		}
	}
	for _, o := range u.Left {
		boxes = append(boxes, thick(o.At, o.Size, "an offcut", false))
		v.straight("an offcut", s.Tag, o.At, o.Size)
		if o.Size[0] < v.p.Useful || o.Size[0] <= 0 {
			v.add(LeftRule, "an offcut of %s on %s is not worth keeping", v.text(o.Size[0]), s.Tag)
		}
	}
	v.within(boxes, cut.Rect{X: v.p.Trim, Length: s.Length - 2*v.p.Trim, Width: 1}, s.Tag)
	v.apart(boxes, v.p.Kerf, s.Tag)
}

// straight checks that a piece of a stick has no place and size across.
func (v *stickCheck) straight(name, stick string, at, size [2]length.Length) {
	if at[1] != 0 || size[1] != 0 {
		v.add(SizeRule, "%s on %s lies at %s across and is %s wide, and a stick has no width", name, stick, v.text(at[1]), v.text(size[1]))
	}
}

// thick gives a piece of a stick some width, so that pieces can be compared as rectangles.
func thick(at, size [2]length.Length, name string, part bool) box {
	return boxOf([2]length.Length{at[0], 0}, [2]length.Length{size[0], 1}, name, part)
}

// shares reckons each kind of waste anew: the trim of both ends, a saw cut behind every part as far as it meets
// wood, and the offcuts that are kept. The rest is lost.
func (v *stickCheck) shares() {
	var trim, kerf, useful float64
	for _, u := range v.a.Used {
		i, ok := v.stock[u.Stock]
		if !ok {
			continue
		}
		end := v.p.Stock[i].Length - v.p.Trim
		trim += (2 * v.p.Trim).MM()
		for _, q := range u.Parts {
			kerf += min(v.p.Kerf, end-q.At[0]-q.Size[0]).MM()
		}
		for _, o := range u.Left {
			useful += o.Size[0].MM()
		}
	}
	w := v.a.Waste
	v.share(w, "the trim", w.Trim, trim)
	v.share(w, "what the saw cuts take", w.Kerf, kerf)
	v.share(w, "the useful leftover", w.LeftoverUseful, useful)
	v.share(w, "what defects take of sticks", w.Defect, 0)
}

// steps checks that the cuts make every part once, at its own length and from the stock it lies on. A layout without
// cuts has none.
func (v *stickCheck) steps() {
	if len(v.a.Cuts) == 0 {
		return
	}
	laid, made := tally{}, tally{}
	name := func(tag, stock string) string { return tag + " from " + stock }
	for _, u := range v.a.Used {
		for _, q := range u.Parts {
			laid[name(q.Tag, u.Stock)]++
		}
	}
	for _, c := range v.a.Cuts {
		if c.Machine == cut.Rip {
			v.add(CutRule, "cut %d rips a stick", c.N)
		}
		for _, tag := range c.Makes {
			made[name(tag, c.On)]++
			if i, ok := v.parts[tag]; ok && v.p.Parts[i].Length != c.Setting {
				v.add(CutRule, "cut %d makes %s at the setting %s, wanted %s", c.N, tag, v.text(c.Setting), v.text(v.p.Parts[i].Length))
			}
		}
	}
	for _, t := range []tally{laid, made} {
		for _, key := range sorted(t) {
			if made[key] != laid[key] {
				v.add(CutRule, "the cuts make %s %d times, the layout has it %d times", key, made[key], laid[key])
			}
		}
	}
}

// area returns a rectangle's area in square millimetres.
func area(l, w length.Length) float64 { return math.Abs(l.MM() * w.MM()) }
