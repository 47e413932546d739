package cut_test

import (
	"testing"

	"rodwright/cut"
	"rodwright/length"
)

func TestWhatFindsNoPlaceSaysWhy(t *testing.T) {
	mm := length.Millimetre
	not := func(tags ...string) *cut.Answer {
		a := &cut.Answer{}
		for _, tag := range tags {
			a.NotPlaced = append(a.NotPlaced, cut.NotPlaced{Tag: tag})
		}
		return a
	}
	sticks := func(count cut.Count) *cut.StickProblem {
		return &cut.StickProblem{
			Trim:  5 * mm,
			Stock: []cut.StickStock{{Tag: "S1", Length: 1000 * mm, Count: count}, {Tag: "S2", Length: 6400 * mm}},
			Parts: []cut.StickPart{{Tag: "C1", Length: 990 * mm, Count: 5}, {Tag: "C2", Length: 991 * mm, Count: 1}},
		}
	}
	sheets := func(sheets ...cut.Sheet) *cut.SheetProblem {
		return &cut.SheetProblem{
			Trim: 10 * mm, Sheets: sheets,
			Parts: []cut.SheetPart{
				{Tag: "long", Length: 2421 * mm, Width: 100 * mm, Count: 1}, {Tag: "wide", Length: 100 * mm, Width: 2421 * mm, Count: 1},
				{Tag: "across", Length: 600 * mm, Width: 1500 * mm, Count: 1}, {Tag: "turns", Length: 600 * mm, Width: 1500 * mm, Count: 1, Turn: true},
				{Tag: "fits", Length: 600 * mm, Width: 500 * mm, Count: 8},
			},
		}
	}
	plain := cut.Sheet{Tag: "P1", Length: 2440 * mm, Width: 1220 * mm, Count: 1}
	grained, any, long, wide := plain, plain, plain, plain
	grained.Grain, any.Count = true, cut.Any
	long.Width = 300 * mm
	wide.Tag, wide.Length, wide.Width = "P2", 400*mm, 2000*mm
	for _, c := range []struct {
		name string
		tell func(*cut.Answer)
		a    *cut.Answer
		want string
	}{
		{"too long", sticks(1).TellWhy, not("C2"), "longer than any stock (991 mm; S1 gives 990 mm)"},
		{"no stock", sticks(0).TellWhy, not("C1"), "no stock is there"},
		{"too few", sticks(2).TellWhy, not("C1", "C1", "C1"), "no stock left that takes 990 mm: 3 of 5 are missing, 2970 mm in all"},
		{"no sheet", sheets().TellWhy, not("fits"), "no sheet is there"},
		{"too long for a sheet", sheets(plain).TellWhy, not("long"), "longer than any sheet within its trim (2421 mm; P1 gives 2420 mm)"},
		{"too wide for a sheet", sheets(plain).TellWhy, not("wide"), "wider than any sheet within its trim (2421 mm; P1 gives 1200 mm)"},
		{"long and wide at once", sheets(long, wide).TellWhy, not("fits"), "larger than any sheet within its trim (600 mm × 500 mm)"},
		{"may not turn", sheets(plain).TellWhy, not("across"), "600 mm × 1500 mm fits only turned on P1, and it may not be turned"},
		{"grain", sheets(grained).TellWhy, not("turns"), "600 mm × 1500 mm fits only turned on P1, and its grain forbids that"},
		{"too few sheets", sheets(plain).TellWhy, &cut.Answer{
			Used: []cut.Used{{Stock: "P1"}}, NotPlaced: []cut.NotPlaced{{Tag: "fits"}, {Tag: "fits"}},
		}, "no sheet left that takes 600 mm × 500 mm: 2 of 8 are missing, 0.6 m² in all"},
		{"defects", sheets(any).TellWhy, not("fits"), "wherever a sheet takes 600 mm × 500 mm it has a defect"},
	} {
		c.tell(c.a)
		for _, n := range c.a.NotPlaced {
			if n.Why != c.want {
				t.Errorf("%s: %q, want %q", c.name, n.Why, c.want)
			}
		}
	}
}
