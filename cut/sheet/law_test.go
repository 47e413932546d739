package sheet_test

import (
	"context"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/sheet"
	"rodwright/cut/verify"
	"rodwright/length"
)

func drawProblem(t *rapid.T, kinds, pieces int) *sheet.Problem {
	size := func(name string, most int) length.Length {
		return length.Length(rapid.IntRange(1, most).Draw(t, name)) * mm
	}
	p := &sheet.Problem{
		Unit: rapid.SampledFrom([]length.Unit{length.MM, length.In}).Draw(t, "unit"),
		Kerf: length.Length(rapid.IntRange(0, 3).Draw(t, "kerf")) * mm, Trim: length.Length(rapid.IntRange(0, 3).Draw(t, "trim")) * mm,
		Stages: rapid.IntRange(0, 4).Draw(t, "stages"),
	}
	p.Useful = [2]length.Length{size("useful", 20), size("useful", 20)}
	valued := rapid.Bool().Draw(t, "valued")
	for i := range rapid.IntRange(1, 3).Draw(t, "sheets") {
		least := -1
		if valued {
			least = 0
		}
		s := sheet.Sheet{
			Tag: fmt.Sprint("P", i), Length: size("length", 60), Width: size("width", 40),
			Count: cut.Count(rapid.IntRange(least, 3).Draw(t, "there")), Grain: rapid.Bool().Draw(t, "grain"),
		}
		if rapid.Bool().Draw(t, "priced") {
			s.Price = cut.Priced(float64(rapid.IntRange(0, 20).Draw(t, "price")))
		}
		for range rapid.IntRange(0, 2).Draw(t, "defects") {
			s.Defects = append(s.Defects, cut.Rect{X: size("x", 50) - mm, Y: size("y", 30) - mm, Length: size("dl", 9), Width: size("dw", 9)})
		}
		p.Sheets = append(p.Sheets, s)
	}
	for i := range rapid.IntRange(0, kinds).Draw(t, "kinds") {
		q := sheet.Part{
			Tag: fmt.Sprint("D", i), Length: size("length", 50), Width: size("width", 35), Turn: rapid.Bool().Draw(t, "turn"),
			Count: cut.Count(rapid.IntRange(0, pieces).Draw(t, "count")),
		}
		if valued {
			q.Value = cut.Priced(float64(rapid.IntRange(0, 50).Draw(t, "value")))
			if rapid.Bool().Draw(t, "any number") {
				q.Count = cut.Any
			}
		}
		p.Parts = append(p.Parts, q)
	}
	return p
}

func TestEveryAnswerPassesTheVerifier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t, 6, 5)
		a, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: rapid.SampledFrom([]int{1, 2000}).Draw(t, "nodes")})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range verify.Sheet(p, a) {
			t.Errorf("%v", f)
		}
	})
}

// tiny is a problem of one kind of sheet that can be solved by trying everything in whole millimetres.
func tiny(t *rapid.T) *sheet.Problem {
	size := func(name string, least, most int) length.Length {
		return length.Length(rapid.IntRange(least, most).Draw(t, name)) * mm
	}
	p := board(length.Length(rapid.IntRange(0, 1).Draw(t, "kerf"))*mm, 0, size("sheet", 4, 9), size("sheet", 4, 7))
	for i := range rapid.IntRange(1, 3).Draw(t, "kinds") {
		q := part(fmt.Sprint("D", i), size("length", 1, int(p.Sheets[0].Length/mm)), size("width", 1, int(p.Sheets[0].Width/mm)), cut.Count(rapid.IntRange(1, 2).Draw(t, "count")))
		q.Turn = rapid.Bool().Draw(t, "turn")
		p.Parts = append(p.Parts, q)
	}
	return p
}

// bite is a rectangle to be filled in the search for the optimum.
type bite struct{ l, w length.Length }

// fewest returns the fewest sheets that hold all parts, trying every part in the corner of every free
// rectangle with both orders of cutting. Layouts by cuts right across can be brought to this form by
// pushing every part into the corner of the piece it is cut from.
func fewest(p *sheet.Problem) int {
	var parts []int
	for i, q := range p.Parts {
		for range q.Count {
			parts = append(parts, i)
		}
	}
	best := len(parts)
	var put func(parts []int, free []bite, used int)
	put = func(parts []int, free []bite, used int) {
		if used >= best {
			return
		}
		if len(parts) == 0 {
			best = used
			return
		}
		tried := map[int]bool{}
		for n, i := range parts {
			if tried[i] {
				continue
			}
			tried[i] = true
			rest := append(append([]int{}, parts[:n]...), parts[n+1:]...)
			for f := range len(free) + 1 {
				from, count := bite{p.Sheets[0].Length, p.Sheets[0].Width}, used+1
				others := append([]bite{}, free...)
				if f < len(free) {
					from, count = free[f], used
					others = append(append([]bite{}, free[:f]...), free[f+1:]...)
				}
				q := p.Parts[i]
				for _, s := range []bite{{q.Length, q.Width}, {q.Width, q.Length}} {
					if s.l > from.l || s.w > from.w || s.l != q.Length && !q.Turn {
						continue
					}
					dl, dw := from.l-s.l-p.Kerf, from.w-s.w-p.Kerf
					put(rest, append(append([]bite{}, others...), bite{dl, from.w}, bite{s.l, dw}), count)
					put(rest, append(append([]bite{}, others...), bite{from.l, dw}, bite{dl, s.w}), count)
				}
			}
		}
	}
	put(parts, nil, 0)
	return best
}

func TestTheBoundIsNeverAboveTheOptimumNorTheCostBelow(t *testing.T) {
	best, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t)
		want := float64(60 * fewest(p))
		a, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: 5000})
		if err != nil {
			t.Fatal(err)
		}
		if a.Bound > want || a.Cost < want {
			t.Fatalf("bound %v, optimum %v, cost %v", a.Bound, want, a.Cost)
		}
		all++
		if a.Cost == want {
			best++
		}
	})
	if best*100 < all*95 {
		t.Errorf("only %d of %d tiny problems are solved to the optimum", best, all)
	}
}

func TestAValueIsNeverAboveItsBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := tiny(t)
		p.Sheets[0].Count = 1
		for i := range p.Parts {
			p.Parts[i].Value = cut.Priced(float64(rapid.IntRange(1, 30).Draw(t, "value")))
			if rapid.Bool().Draw(t, "any number") {
				p.Parts[i].Count = cut.Any
			}
		}
		a, err := sheet.Solve(context.Background(), p, cut.Limits{Nodes: 5000})
		if err != nil {
			t.Fatal(err)
		}
		if want := bestValue(p); a.Bound < want-1e-6 || a.Cost > a.Bound+1e-6 {
			t.Fatalf("value %v, possible %v, bound %v", a.Cost, want, a.Bound)
		}
	})
}

// bestValue is the greatest value of one sheet, by trying everything as fewest does.
func bestValue(p *sheet.Problem) float64 {
	best := 0.0
	left := make([]int, len(p.Parts))
	for i, q := range p.Parts {
		if left[i] = int(q.Count); q.Count == cut.Any {
			left[i] = 4 // more than four make the search too long; the bound must hold for four as well
		}
	}
	var put func(free []bite, value float64, steps int)
	put = func(free []bite, value float64, steps int) {
		best = max(best, value)
		if steps == 4 {
			return
		}
		for f, from := range free {
			others := append(append([]bite{}, free[:f]...), free[f+1:]...)
			for i, q := range p.Parts {
				for _, s := range []bite{{q.Length, q.Width}, {q.Width, q.Length}} {
					if left[i] == 0 || s.l > from.l || s.w > from.w || s.l != q.Length && !q.Turn {
						continue
					}
					left[i]--
					dl, dw := from.l-s.l-p.Kerf, from.w-s.w-p.Kerf
					put(append(append([]bite{}, others...), bite{dl, from.w}, bite{s.l, dw}), value+q.Value.Value, steps+1)
					put(append(append([]bite{}, others...), bite{from.l, dw}, bite{dl, s.w}), value+q.Value.Value, steps+1)
					left[i]++
				}
			}
		}
	}
	put([]bite{{p.Sheets[0].Length, p.Sheets[0].Width}}, 0, 0)
	return best
}
