package wire

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/verify"
	"rodwright/length"
)

// laidOut is a problem with its layout, as they are written and read.
type laidOut struct {
	kind    Kind
	problem File
	layout  File
	cut.Problem
	followed bool // the list of cuts is followed to its end: where several sheets of a kind are cut that may be too much work
}

// layOut lays a random problem of up to most pieces out, half of them with a part that no stock is long enough for.
func layOut(t *rapid.T, most int) laidOut {
	c := rapid.SampledFrom(randomProblems).Draw(t, "kind")
	text := c.draw(cut.NewDice(rapid.Uint64().Draw(t, "problem")), min(c.large, most))
	if tooLong := map[Kind]string{Stick: "", Panel: `, "width": 5, "show": "clear"`, Sheet: `, "width": 5`}; rapid.Bool().Draw(t, "one too long") {
		list := map[Kind]string{Stick: `"parts": [`, Panel: `"panels": [`, Sheet: `"parts": [`}[c.kind]
		text = strings.Replace(text, list, list+`{"tag": "long", "length": 20000`+tooLong[c.kind]+"},", 1)
	}
	l := laidOut{kind: c.kind, problem: File{"problem", []byte(text)}}
	out, err := Run(context.Background(), c.kind, l.problem, Options{JSON: true, Limits: cut.Limits{Nodes: 2000}})
	if err != nil {
		t.Fatal(err)
	}
	l.layout = File{"layout", out}
	if _, l.Problem, err = solver(c.kind, l.problem); err != nil {
		t.Fatal(err)
	}
	return l
}

func (l laidOut) answer(t *rapid.T) *cut.Answer {
	a, err := ReadLayout(l.layout, l.Unit(), l.kind != Stick)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func (l laidOut) faults(a *cut.Answer) []verify.Fault { return verify.Layout(l.Problem, a) }

// damage does one thing to a layout that makes it wrong, whatever the layout; false where there is nothing to do it to.
type damage struct {
	name string
	do   func(d *cut.Dice, l laidOut, a *cut.Answer) bool
}

// used is one piece of stock with parts on it.
func used(d *cut.Dice, a *cut.Answer) *cut.Used {
	var some []*cut.Used
	for i := range a.Used {
		if len(a.Used[i].Parts) > 0 {
			some = append(some, &a.Used[i])
		}
	}
	if len(some) == 0 {
		return nil
	}
	return some[d.N(len(some))]
}

// onPart does something to one part.
func onPart(do func(d *cut.Dice, l laidOut, u *cut.Used, i int) bool) func(*cut.Dice, laidOut, *cut.Answer) bool {
	return func(d *cut.Dice, l laidOut, a *cut.Answer) bool {
		u := used(d, a)
		return u != nil && do(d, l, u, d.N(len(u.Parts)))
	}
}

// onLeft does something to one offcut.
func onLeft(do func(d *cut.Dice, u *cut.Used, i int) bool) func(*cut.Dice, laidOut, *cut.Answer) bool {
	return func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		for i := range a.Used {
			if n := len(a.Used[i].Left); n > 0 {
				return do(d, &a.Used[i], d.N(n))
			}
		}
		return false
	}
}

// onCut does something to one step at the machine.
func onCut(do func(d *cut.Dice, l laidOut, c *cut.Setting) bool) func(*cut.Dice, laidOut, *cut.Answer) bool {
	return func(d *cut.Dice, l laidOut, a *cut.Answer) bool {
		return len(a.Cuts) > 0 && do(d, l, &a.Cuts[d.N(len(a.Cuts))])
	}
}

// wasteOfA names the kinds of waste.
func kindsOfWaste(w *cut.Waste) []*float64 {
	return []*float64{&w.Kerf, &w.Trim, &w.Defect, &w.LeftoverUseful, &w.LeftoverLost}
}

// much is an amount that no rounding hides.
func much(w cut.Waste, l laidOut, a *cut.Answer) float64 {
	return 1 + l.Opened(a)*1e-4 + w.Total()*1e-4
}

var damages = []damage{
	{"a lower cost", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool { a.Cost -= 0.01 + d.Share(); return true }},
	{"cost and bound higher", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		more := 0.01 + d.Share()
		a.Cost, a.Bound = a.Cost+more, a.Bound+more
		return true
	}},
	{"a bound on the wrong side", func(d *cut.Dice, l laidOut, a *cut.Answer) bool {
		a.Proven = false
		a.Bound = a.Cost + 1e-6 + d.Share()
		return l.kind != Sheet || !l.Sheets.Valued()
	}},
	{"proven, and the bound is another", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		if a.Bound == a.Cost {
			a.Bound -= 1e-6 + d.Share()
		}
		a.Proven = true
		return true
	}},
	{"no number for the bound", func(_ *cut.Dice, _ laidOut, a *cut.Answer) bool { a.Bound = math.NaN(); return true }},
	{"more waste", func(d *cut.Dice, l laidOut, a *cut.Answer) bool {
		*kindsOfWaste(&a.Waste)[d.N(5)] += much(a.Waste, l, a)
		return true
	}},
	{"trim told as saw cuts", func(_ *cut.Dice, l laidOut, a *cut.Answer) bool {
		by := much(a.Waste, l, a)
		a.Waste.Trim, a.Waste.Kerf = a.Waste.Trim-by, a.Waste.Kerf+by
		return l.kind != Panel
	}},
	{"useful leftover told as lost", func(_ *cut.Dice, l laidOut, a *cut.Answer) bool {
		by := much(a.Waste, l, a)
		a.Waste.LeftoverUseful, a.Waste.LeftoverLost = a.Waste.LeftoverUseful-by, a.Waste.LeftoverLost+by
		return l.kind != Panel
	}},
	{"stock that is not there", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		u := used(d, a)
		if u != nil {
			u.Stock = "another"
		}
		return u != nil
	}},
	{"stock with parts forgotten", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		u := used(d, a)
		if u != nil {
			*u = a.Used[len(a.Used)-1]
			a.Used = a.Used[:len(a.Used)-1]
		}
		return u != nil && len(a.Used) > 0
	}},
	{"stock twice", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		u := used(d, a)
		if u != nil {
			a.Used = append(a.Used, *u)
		}
		return u != nil
	}},
	{"a part forgotten", onPart(func(_ *cut.Dice, _ laidOut, u *cut.Used, i int) bool {
		u.Parts = slices.Delete(u.Parts, i, i+1)
		return true
	})},
	{"a part twice", onPart(func(_ *cut.Dice, _ laidOut, u *cut.Used, i int) bool {
		u.Parts = append(u.Parts, u.Parts[i])
		return true
	})},
	{"a part of another size", onPart(func(d *cut.Dice, l laidOut, u *cut.Used, i int) bool {
		u.Parts[i].Size[d.N(l.ways())] += length.Length(1 - 2*d.N(2))
		return true
	})},
	{"a part that nobody wants", onPart(func(_ *cut.Dice, _ laidOut, u *cut.Used, i int) bool {
		u.Parts[i].Tag = "another"
		return true
	})},
	{"one part called another", onPart(func(_ *cut.Dice, _ laidOut, u *cut.Used, i int) bool {
		for j := range u.Parts {
			if u.Parts[j].Tag != u.Parts[i].Tag {
				u.Parts[i].Tag = u.Parts[j].Tag
				return true
			}
		}
		return false
	})},
	{"a part on another", onPart(func(_ *cut.Dice, l laidOut, u *cut.Used, i int) bool {
		j := (i + 1) % len(u.Parts)
		u.Parts[i].At = u.Parts[j].At
		return j != i
	})},
	{"a part beyond the stock", onPart(func(d *cut.Dice, l laidOut, u *cut.Used, i int) bool {
		size, _ := l.Size(u.Stock)
		way := d.N(l.ways())
		u.Parts[i].At[way] = []length.Length{-1, size[way] - u.Parts[i].Size[way] + 1}[d.N(2)]
		return true
	})},
	{"an offcut twice", onLeft(func(_ *cut.Dice, u *cut.Used, i int) bool { u.Left = append(u.Left, u.Left[i]); return true })},
	{"an offcut grown", onLeft(func(d *cut.Dice, u *cut.Used, i int) bool {
		o := &u.Left[i]
		by := o.Size[0]/10 + length.Millimetre
		o.Size[0] += by
		if d.N(2) == 0 {
			o.At[0] -= by
		}
		return true
	})},
	{"an offcut on a part", onLeft(func(_ *cut.Dice, u *cut.Used, i int) bool {
		if len(u.Parts) == 0 {
			return false
		}
		u.Left[i].At = u.Parts[0].At
		return true
	})},
	{"an offcut forgotten", func(d *cut.Dice, l laidOut, a *cut.Answer) bool {
		return l.kind != Panel && onLeft(func(_ *cut.Dice, u *cut.Used, i int) bool {
			u.Left = slices.Delete(u.Left, i, i+1)
			return true
		})(d, l, a)
	}},
	{"not placed, and forgotten", func(_ *cut.Dice, _ laidOut, a *cut.Answer) bool {
		n := len(a.NotPlaced)
		a.NotPlaced = a.NotPlaced[:max(0, n-1)]
		return n > 0
	}},
	{"not placed, and wanted less often", func(_ *cut.Dice, _ laidOut, a *cut.Answer) bool {
		if len(a.NotPlaced) == 0 {
			return false
		}
		a.NotPlaced = append(a.NotPlaced, a.NotPlaced[0])
		return true
	}},
	{"not placed, and nothing says why", func(_ *cut.Dice, l laidOut, a *cut.Answer) bool {
		if len(a.NotPlaced) == 0 || l.kind == Panel {
			return false
		}
		a.NotPlaced[0].Why = ""
		return true
	}},
	{"placed, and told as not placed", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		u := used(d, a)
		if u != nil {
			a.NotPlaced = append(a.NotPlaced, cut.NotPlaced{Tag: u.Parts[0].Tag, Why: "no room"})
		}
		return u != nil
	}},
	{"a cut on stock that is not there", onCut(func(_ *cut.Dice, _ laidOut, c *cut.Setting) bool { c.On = "another"; return true })},
	{"a cut of another number", onCut(func(_ *cut.Dice, _ laidOut, c *cut.Setting) bool { c.N++; return true })},
	{"a cut that makes what nobody wants", onCut(func(_ *cut.Dice, _ laidOut, c *cut.Setting) bool {
		c.Makes = append(c.Makes, "another")
		return true
	})},
	{"a cut without a machine", onCut(func(_ *cut.Dice, _ laidOut, c *cut.Setting) bool { c.Machine = ""; return true })},
	{"a cut at another setting", onCut(func(d *cut.Dice, l laidOut, c *cut.Setting) bool {
		c.Setting += length.Length(1 - 2*d.N(2))
		return l.followed
	})},
	{"a cut that makes one part less", onCut(func(d *cut.Dice, l laidOut, c *cut.Setting) bool {
		n := len(c.Makes)
		c.Makes = c.Makes[:max(0, n-1)]
		return n > 0 && l.followed
	})},
	{"a panel forgotten", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		n := len(a.Panels)
		a.Panels = a.Panels[:max(0, n-1)]
		return n > 0
	}},
	{"a panel twice", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		if len(a.Panels) > 0 {
			a.Panels = append(a.Panels, a.Panels[0])
		}
		return len(a.Panels) > 0
	}},
	{"a strip forgotten", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		if len(a.Panels) == 0 {
			return false
		}
		g := &a.Panels[d.N(len(a.Panels))]
		g.Strips = g.Strips[1:]
		return true
	}},
	{"a strip of another net width", func(d *cut.Dice, _ laidOut, a *cut.Answer) bool {
		if len(a.Panels) == 0 {
			return false
		}
		a.Panels[d.N(len(a.Panels))].Strips[0].NetWidth++
		return true
	}},
	{"a strip from another board", func(d *cut.Dice, l laidOut, a *cut.Answer) bool {
		if len(a.Panels) == 0 || len(l.Boards.Boards) < 2 {
			return false
		}
		s := &a.Panels[d.N(len(a.Panels))].Strips[0]
		k := slices.IndexFunc(l.Boards.Boards, func(b cut.Board) bool { return b.Tag != s.Board })
		s.Board = l.Boards.Boards[k].Tag
		return true
	}},
}

// ways is how many numbers say where a piece lies.
func (l laidOut) ways() int {
	if l.kind == Stick {
		return 1
	}
	return 2
}

func TestEveryLayoutPassesTheVerifier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := layOut(t, 200)
		for _, f := range l.faults(l.answer(t)) {
			t.Errorf("%v\n%s", f, l.problem.Text)
		}
	})
}

func TestALayoutWithOneDamageIsRefused(t *testing.T) {
	done := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		l := layOut(t, 24)
		if faults := l.faults(l.answer(t)); len(faults) > 0 {
			t.Fatalf("the right layout is refused: %v", faults)
		}
		seed := rapid.Uint64().Draw(t, "damage")
		for _, c := range damages {
			a := l.answer(t)
			l.followed = l.kind == Stick || l.kind == Sheet && len(a.Used) == 1 && len(a.Used[0].Parts) <= 12
			if !c.do(cut.NewDice(seed), l, a) {
				continue
			}
			done[fmt.Sprint(c.name, " of ", l.kind)]++
			if len(l.faults(a)) == 0 {
				t.Errorf("%s: %s is not refused\n%s\n%s", l.kind, c.name, l.problem.Text, l.layout.Text)
			}
		}
	})
	for _, c := range damages {
		if done[c.name+" of stick"]+done[c.name+" of panel"]+done[c.name+" of sheet"] == 0 {
			t.Errorf("%s was never done", c.name)
		}
	}
}
