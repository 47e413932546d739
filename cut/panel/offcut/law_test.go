package offcut_test

import (
	"context"
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/cut/panel/offcut"
	"rodwright/cut/sawing"
	"rodwright/cut/verify"
	"rodwright/length"
)

func size(t *rapid.T, name string, least, most int) length.Length {
	return length.Length(rapid.IntRange(least, most).Draw(t, name)) * mm
}

func drawBoard(t *rapid.T, i int) cut.Board {
	b := cut.Board{
		Tag: fmt.Sprint("B", i), Length: size(t, "length", 40, 120), Width: size(t, "width", 8, 30), Thickness: size(t, "thickness", 2, 3),
		RoughEdges: rapid.IntRange(0, 2).Draw(t, "rough"), Mate: rapid.SampledFrom([]string{"", "a", "b"}).Draw(t, "mate"),
		Ring: rapid.SampledFrom([]cut.Ring{cut.NoRing, cut.RingUp, cut.RingDown}).Draw(t, "ring"),
	}
	if rapid.Bool().Draw(t, "priced") {
		b.Price = cut.Priced(float64(rapid.IntRange(1, 40).Draw(t, "price")))
	}
	for range rapid.IntRange(0, 3).Draw(t, "defects") {
		b.Defects = append(b.Defects, cut.Defect{
			Kind: rapid.SampledFrom([]cut.DefectKind{cut.Knot, cut.Knot, cut.Split, cut.Wane, cut.Sap, cut.Void}).Draw(t, "kind"),
			Face: rapid.SampledFrom([]cut.Face{cut.BothFaces, cut.GoodFace, cut.BackFace}).Draw(t, "face"),
			Rect: cut.Rect{X: size(t, "x", 0, 110), Y: size(t, "y", 0, 28), Length: size(t, "dl", 1, 20), Width: size(t, "dw", 1, 6)},
		})
	}
	return b
}

func drawProblem(t *rapid.T) *cut.PanelProblem {
	p := &cut.PanelProblem{
		Unit: length.MM, Kerf: size(t, "kerf", 0, 2), Jointing: size(t, "jointing", 0, 2) / 4, EndTrim: size(t, "end", 0, 2),
		PanelEdgeTrim: size(t, "edge", 0, 1), BoardEdgeTrim: size(t, "rough", 0, 2), MinTail: size(t, "tail", 0, 40), Recut: true,
		Salvage: rapid.SampledFrom([]float64{0, 0.5, 1}).Draw(t, "salvage"), Strip: cut.Span{Least: size(t, "least", 0, 4)},
	}
	if rapid.Bool().Draw(t, "limited") {
		p.Strip.Most = p.Strip.Least + size(t, "most", 2, 10)
	}
	for i := range rapid.IntRange(1, 6).Draw(t, "boards") {
		p.Boards = append(p.Boards, drawBoard(t, i))
	}
	for i := range rapid.IntRange(1, 5).Draw(t, "panels") {
		q := cut.Panel{
			Tag: fmt.Sprint("A", i), Length: size(t, "length", 10, 60), Width: size(t, "width", 2, 30), Count: cut.Count(rapid.IntRange(0, 3).Draw(t, "count")),
			Show:  rapid.SampledFrom([]cut.Show{cut.Clear, cut.SmallKnots, cut.Character}).Draw(t, "show"),
			Mates: rapid.IntRange(0, 5).Draw(t, "mates") == 0, Thickness: size(t, "thickness", 0, 2),
		}
		if rapid.IntRange(0, 3).Draw(t, "kept out") == 0 {
			q.KeepOut = []cut.Rect{{X: size(t, "x", 0, 20), Y: size(t, "y", 0, 20), Length: size(t, "kl", 1, 9), Width: size(t, "kw", 1, 9)}}
		}
		p.Panels = append(p.Panels, q)
	}
	return p
}

// Whatever falls off is used right: every layout passes the verifier, none costs more than without it, or makes fewer
// panels, and none has a bound above its cost.
func TestEveryLayoutPassesTheVerifierAndIsNotDearer(t *testing.T) {
	all, cheaper, more := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		p.Recut = false
		before, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: 800})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range verify.Panel(p, before) {
			t.Errorf("crosscut, then ripped: %v", f)
		}
		p.Recut = true
		after := offcut.Use(p, before, cut.NewBudget(context.Background(), cut.Limits{Nodes: rapid.SampledFrom([]int{1, 200, offcut.Nodes}).Draw(t, "nodes")}))
		for _, f := range verify.Panel(p, sawing.Finish(cut.Problem{Boards: p}, after)) {
			t.Errorf("recut: %v", f)
		}
		all++
		switch {
		case len(after.Panels) < len(before.Panels):
			t.Errorf("%d panels became %d", len(before.Panels), len(after.Panels))
		case len(after.Panels) > len(before.Panels):
			more++
		case after.Cost > before.Cost:
			t.Errorf("cost %v became %v", before.Cost, after.Cost)
		case after.Cost < before.Cost:
			cheaper++
		}
	})
	t.Logf("of %d layouts %d became cheaper, %d have more panels", all, cheaper, more)
	if cheaper*50 < all || more*50 < all {
		t.Errorf("of %d layouts %d became cheaper, %d have more panels: the law is hardly tried", all, cheaper, more)
	}
}

// Boards and strips of a layout that is written anew are those that the search wrote, and as much is lost and kept.
func TestALayoutWrittenAnewIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		p.Recut = false
		a, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: 100})
		if err != nil {
			t.Fatal(err)
		}
		b := offcut.Anew(p, a)
		if !reflect.DeepEqual(a.Used, b.Used) || !reflect.DeepEqual(a.Panels, b.Panels) || a.Cost != b.Cost {
			t.Fatalf("%+v became %+v", a, b)
		}
		for _, x := range [][2]float64{{a.Waste.LeftoverUseful, b.Waste.LeftoverUseful}, {a.Waste.Total(), b.Waste.Total()}} {
			if d := x[0] - x[1]; d > 1e-6 || d < -1e-6 {
				t.Fatalf("waste %+v became %+v", a.Waste, b.Waste)
			}
		}
	})
}

// saw cuts boards at random, across, along and across again, and asks for panels of just the strips that come off: so
// a layout is known that costs what those boards cost.
func saw(t *rapid.T, p *cut.PanelProblem) (cost float64) {
	p.Panels = nil
	for k := range p.Boards {
		if rapid.IntRange(0, 3).Draw(t, "left") == 0 {
			continue
		}
		from, to := p.Usable(k)
		end := length.Length(0)
		sawPiece(t, p, k, cut.Rect{Y: from, Length: p.Boards[k].Length, Width: to - from}, 1, &end)
		if end > 0 {
			cost += p.Cost(k) - p.TailCredit(k, p.Boards[k].Length-end-p.Kerf)
		}
	}
	return cost
}

func sawPiece(t *rapid.T, p *cut.PanelProblem, k int, r cut.Rect, stage int, end *length.Length) {
	if r.Length <= 2*p.EndTrim || r.Width <= p.Joint()+2*p.PanelEdgeTrim {
		return
	}
	if stage == 5 {
		sawStrip(p, k, r, end)
		return
	}
	rest := &r.X
	long := &r.Length
	if stage%2 == 0 {
		rest, long = &r.Y, &r.Width
	}
	for stop := *rest + *long; *rest < stop; {
		*long = min(size(t, "piece", 3, 60), stop-*rest)
		if rapid.IntRange(0, 4).Draw(t, "waste") > 0 {
			sawPiece(t, p, k, r, stage+1, end)
		}
		*rest += *long + p.Kerf
	}
}

// sawStrip asks for a panel of one strip that lies at r, if it can be a strip.
func sawStrip(p *cut.PanelProblem, k int, r cut.Rect, end *length.Length) {
	if r.Width < p.Strip.Least || p.Strip.Most > 0 && r.Width > p.Strip.Most {
		return
	}
	for _, show := range []cut.Show{cut.Clear, cut.SmallKnots, cut.Character} {
		takes := true
		for _, d := range p.Boards[k].Defects {
			if d.Overlaps(r) && (!show.Takes(d, false) || d.Kind == cut.Void && (d.Y < r.Y || d.Y+d.Width > r.Y+r.Width)) {
				takes = false
			}
		}
		if takes {
			p.Panels = append(p.Panels, cut.Panel{
				Tag: fmt.Sprint("A", len(p.Panels)), Length: r.Length - 2*p.EndTrim, Width: r.Width - p.Joint() - 2*p.PanelEdgeTrim, Count: 1, Show: show,
			})
			*end = max(*end, r.X+r.Length)
			return
		}
	}
}

// A layout that is known costs no less than a bound that is said to be true of every layout.
func TestTheBoundIsNotAboveALayoutThatIsKnown(t *testing.T) {
	all, recut, proven := 0, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		known := saw(t, p)
		if len(p.Panels) == 0 || len(p.Panels) > 40 {
			return
		}
		a, err := panel.Solve(context.Background(), p, cut.Limits{Nodes: 400})
		if err != nil {
			t.Fatal(err)
		}
		if len(a.NotPlaced) > 0 {
			return
		}
		for _, f := range verify.Panel(p, a) {
			t.Errorf("%v", f)
		}
		all++
		if a.Of != cut.EveryLayout {
			return
		}
		recut++
		if a.Proven {
			proven++
		}
		if a.Bound > known+1e-6 {
			t.Fatalf("bound %v, a layout costs %v", a.Bound, known)
		}
	})
	t.Logf("of %d layouts %d have a bound of every layout, %d are proven", all, recut, proven)
}
