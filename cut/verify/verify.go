// Package verify checks layouts against the problems they answer, and knows nothing of how they were
// found: it imports no algorithm and reckons everything anew from the rules of package cut.
//
// A layout is right when every part is cut once or told as not placed, has its size, lies inside what the
// trim leaves of its stock, a saw cut away from its neighbours and clear of defects; when no more stock is
// opened than is there; when the cuts can be made (for sheets by cuts right across, in the stages allowed;
// for boards by crosscuts and then rips); when cost and waste add up, and the bound is on the right side of
// the cost. Start with [Layout], or [Stick], [Panel] or [Sheet]; each returns every fault it finds.
package verify

import (
	"fmt"
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// Rule names what a layout broke.
type Rule string

// The rules.
const (
	StockRule  Rule = "stock"  // stock that is not in the problem, or more of it than there is
	PartRule   Rule = "part"   // a part that is not in the problem, missing, or cut too often
	SizeRule   Rule = "size"   // a part of another size, or turned where it may not be
	InsideRule Rule = "inside" // a part or offcut beyond its stock or in the trim
	KerfRule   Rule = "kerf"   // less than a saw cut between two pieces
	DefectRule Rule = "defect" // a part that holds a defect it may not hold
	CutRule    Rule = "cut"    // cuts that can't be made, or too many stages
	StripRule  Rule = "strip"  // a strip too narrow, too wide or too short, or a panel too narrow
	MateRule   Rule = "mate"   // strips of one panel from boards that are no mates
	LeftRule   Rule = "left"   // an offcut that is not worth keeping
	WasteRule  Rule = "waste"  // waste that does not add up
	CostRule   Rule = "cost"   // another cost than the stock opened has
	BoundRule  Rule = "bound"  // a bound on the wrong side, or a proof that is none
)

// Fault is one broken rule.
type Fault struct {
	Rule Rule
	Text string
}

// Error gives the rule and what broke it.
func (f Fault) Error() string { return string(f.Rule) + ": " + f.Text }

// Layout returns the faults of an answer to a problem of any kind; none when it is right.
func Layout(p cut.Problem, a *cut.Answer) []Fault {
	switch {
	case p.Sticks != nil:
		return Stick(p.Sticks, a)
	case p.Boards != nil:
		return Panel(p.Boards, a)
	}
	return Sheet(p.Sheets, a)
}

// report collects faults.
type report struct {
	unit   length.Unit
	faults []Fault
}

func (r *report) add(rule Rule, format string, args ...any) {
	r.faults = append(r.faults, Fault{rule, fmt.Sprintf(format, args...)})
}

func (r *report) text(l length.Length) string { return cut.Text(l, r.unit) }

// tally counts how often tags occur.
type tally map[string]int

// parts compares how often each part was cut or told as not placed with how often it is wanted. Where
// least is false fewer are right as well.
func (r *report) parts(want map[string]cut.Count, order []string, got, missing tally, least bool) {
	for _, tag := range order {
		n, all := want[tag], got[tag]+missing[tag]
		switch {
		case n == cut.Any:
		case all > int(n):
			r.add(PartRule, "%s is there %d times, wanted %d times", tag, all, n)
		case least && all < int(n):
			r.add(PartRule, "%s is there %d times, wanted %d times, and not told as not placed", tag, all, n)
		}
	}
	for _, t := range []tally{got, missing} {
		for _, tag := range sorted(t) {
			if _, ok := want[tag]; !ok {
				r.add(PartRule, "%q is no part of the problem", tag)
			}
		}
	}
}

func sorted(t tally) []string {
	out := make([]string, 0, len(t))
	for k := range t {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

func missing(a *cut.Answer) tally {
	t := tally{}
	for _, n := range a.NotPlaced {
		t[n.Tag]++
	}
	return t
}

// reasons checks that what is not placed says why.
func (r *report) reasons(a *cut.Answer) {
	for _, n := range a.NotPlaced {
		if n.Why == "" {
			r.add(PartRule, "%s is not placed, and nothing says why", n.Tag)
		}
	}
}

// stockUse compares the stock opened with what there is.
func (r *report) stockUse(have map[string]cut.Count, order []string, used tally) {
	for _, tag := range order {
		if n := have[tag]; n != cut.Any && used[tag] > int(n) {
			r.add(StockRule, "%s is opened %d times, there are %d", tag, used[tag], n)
		}
	}
	for _, tag := range sorted(used) {
		if _, ok := have[tag]; !ok {
			r.add(StockRule, "%q is no stock of the problem", tag)
		}
	}
}

// money compares cost and bound with the cost reckoned anew.
func (r *report) money(a *cut.Answer, cost float64, upper bool) {
	eps := 1e-5 + 1e-9*math.Abs(cost)
	if !(math.Abs(a.Cost-cost) <= eps) {
		r.add(CostRule, "the cost is %v, said is %v", cut.RoundMoney(cost), a.Cost)
	}
	if !upper && !(a.Bound <= a.Cost) || upper && !(a.Bound >= a.Cost) {
		r.add(BoundRule, "bound %v is on the wrong side of cost %v", a.Bound, a.Cost)
	}
	if a.Proven && a.Bound != a.Cost {
		r.add(BoundRule, "said to be proven, but bound %v is not cost %v", a.Bound, a.Cost)
	}
}

// waste compares the waste said with what was opened less the parts, both in millimetres or square
// millimetres. Waste that is nowhere said is not compared.
func (r *report) waste(w cut.Waste, opened, parts float64) {
	if w == (cut.Waste{}) {
		return
	}
	for _, v := range []float64{w.Kerf, w.Trim, w.Defect, w.LeftoverUseful, w.LeftoverLost} {
		if !(v >= -1e-6*(1+opened)) {
			r.add(WasteRule, "waste can't be negative, is %v", v)
		}
	}
	if math.Abs(w.Total()+parts-opened) > 1e-6*(1+opened) {
		r.add(WasteRule, "parts %v and waste %v are not the stock opened, %v", parts, w.Total(), opened)
	}
}

// share compares one kind of waste, where any is said, with what it is. Written down, waste is rounded to a millionth
// of a unit, at most 0.0004 mm².
func (r *report) share(w cut.Waste, what string, said, is float64) {
	if w != (cut.Waste{}) && !(math.Abs(said-is) <= 1e-3+1e-6*math.Abs(is)) {
		r.add(WasteRule, "%s is %v, said is %v", what, is, said)
	}
}

// settings checks that each step at the machine names known stock and parts at a possible setting.
func (r *report) settings(a *cut.Answer, stock, parts map[string]cut.Count) {
	for i, c := range a.Cuts {
		if c.N != i+1 {
			r.add(CutRule, "cut %d stands in place %d", c.N, i+1)
		}
		if c.Machine != cut.Crosscut && c.Machine != cut.Rip {
			r.add(CutRule, "cut %d is at the machine %q", c.N, c.Machine)
		}
		if _, ok := stock[c.On]; !ok {
			r.add(CutRule, "cut %d is on %q, which is no stock of the problem", c.N, c.On)
		}
		if c.Setting <= 0 {
			r.add(CutRule, "cut %d has the setting %s", c.N, r.text(c.Setting))
		}
		for _, tag := range c.Makes {
			if _, ok := parts[tag]; !ok {
				r.add(CutRule, "cut %d makes %q, which is no part of the problem", c.N, tag)
			}
		}
	}
}

// box is a rectangle with what lies in it, for comparing pieces of one piece of stock.
type box struct {
	cut.Rect
	name string
	part bool
}

func boxOf(at, size [2]length.Length, name string, part bool) box {
	return box{cut.Rect{X: at[0], Y: at[1], Length: size[0], Width: size[1]}, name, part}
}

// within reports pieces that reach beyond the inside of their stock.
func (r *report) within(boxes []box, inside cut.Rect, stock string) {
	for _, b := range boxes {
		if b.Length < 0 || b.Width < 0 || b.X < inside.X || b.Y < inside.Y ||
			b.X+b.Length > inside.X+inside.Length || b.Y+b.Width > inside.Y+inside.Width {
			r.add(InsideRule, "%s on %s lies at %s, %s and does not stay inside", b.name, stock, r.text(b.X), r.text(b.Y))
		}
	}
}

// apart reports pieces with less than a saw cut between them.
func (r *report) apart(boxes []box, kerf length.Length, stock string) {
	sortedBoxes := slices.Clone(boxes)
	slices.SortStableFunc(sortedBoxes, func(a, b box) int { return int(min(1, max(-1, a.X-b.X))) })
	for i, a := range sortedBoxes {
		grown := cut.Rect{X: a.X - kerf, Y: a.Y - kerf, Length: a.Length + 2*kerf, Width: a.Width + 2*kerf}
		for _, b := range sortedBoxes[i+1:] {
			if b.X >= grown.X+grown.Length {
				break
			}
			if grown.Overlaps(b.Rect) {
				r.add(KerfRule, "%s and %s on %s are less than a saw cut apart", a.name, b.name, stock)
			}
		}
	}
}
