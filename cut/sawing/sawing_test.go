package sawing_test

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/cut/sawing"
	"rodwright/cut/sheet"
	"rodwright/cut/stick"
	"rodwright/cut/verify"
	"rodwright/length"
)

const mm = length.Millimetre

// sawUp follows a list with nothing but rectangles: each cut must run right across a piece that is there and
// take off what its setting says. It returns what lies on the bench at the end, by piece of stock.
func sawUp(p cut.Problem, used []cut.Used, l *sawing.List) ([][]cut.Rect, error) {
	bench := make([][]cut.Rect, len(used))
	for i, u := range used {
		size, _ := p.Size(u.Stock)
		bench[i] = []cut.Rect{{Length: size[0], Width: size[1]}}
	}
	n := 0
	for _, r := range l.Runs {
		for _, s := range r.Steps {
			if n++; s.N != n {
				return nil, fmt.Errorf("step %d is numbered %d", n, s.N)
			}
			for _, i := range s.Cuts {
				c := l.Cuts[i]
				if c.Machine != r.Machine || c.Setting != r.Setting || c.Piece != s.Piece {
					return nil, fmt.Errorf("cut %+v is in the run %s at %d", c, r.Machine, r.Setting)
				}
				left, err := sawOne(bench[c.Piece], c, p.Kerf())
				if err != nil {
					return nil, err
				}
				bench[c.Piece] = left
			}
		}
	}
	return bench, nil
}

func sawOne(bench []cut.Rect, c sawing.Cut, kerf length.Length) ([]cut.Rect, error) {
	for k, r := range bench {
		off, blade := c.Setting, kerf
		if c.Why == sawing.Square || c.Why == sawing.Off { // the setting is all that goes
			blade = min(kerf, off)
			off -= blade
		}
		near, stays := r, r
		var rest length.Length
		along, from, to := [2]length.Length{c.A[1], c.B[1]}, r.X, r.X+r.Length
		ends, at := [2]length.Length{r.Y, r.Y + r.Width}, c.A[0]
		if c.Machine == cut.Rip {
			along, from, to = [2]length.Length{c.A[0], c.B[0]}, r.Y, r.Y+r.Width
			ends, at = [2]length.Length{r.X, r.X + r.Length}, c.A[1]
		}
		if along != ends || at < from+off || at > from+off+blade || to <= from+off {
			continue
		}
		rest = max(0, to-from-off-blade)
		if near.Length, stays.X, stays.Length = off, to-rest, rest; c.Machine == cut.Rip {
			near, stays = r, r
			near.Width, stays.Y, stays.Width = off, to-rest, rest
		}
		if c.Left != rest {
			return nil, fmt.Errorf("cut %+v leaves %d", c, rest)
		}
		out := append(slices.Delete(slices.Clone(bench), k, k+1), near)
		if rest > 0 {
			out = append(out, stays)
		}
		return out, nil
	}
	return nil, fmt.Errorf("no piece on the bench can be cut like %+v: %v", c, bench)
}

// lawful checks that the list can be followed and ends with every part on the bench, and every kept offcut in
// one piece.
func lawful(p cut.Problem, used []cut.Used) error {
	l := sawing.Of(p, used)
	bench, err := sawUp(p, used, l)
	if err != nil {
		return err
	}
	var want, made []string
	for i, u := range used {
		for _, q := range u.Parts {
			want = append(want, q.Tag)
			r := cut.Rect{X: q.At[0], Y: q.At[1], Length: q.Size[0], Width: q.Size[1]}
			if !slices.Contains(bench[i], r) {
				return fmt.Errorf("%s is not on the bench: %v, %v", q.Tag, r, bench[i])
			}
		}
		for _, o := range u.Left {
			whole := slices.ContainsFunc(bench[i], func(r cut.Rect) bool {
				return r.X <= o.At[0] && r.Y <= o.At[1] && r.X+r.Length >= o.At[0]+o.Size[0] && r.Y+r.Width >= o.At[1]+o.Size[1]
			})
			if !whole {
				return fmt.Errorf("offcut %v is not in one piece: %v", o, bench[i])
			}
		}
	}
	for _, c := range l.Cuts {
		if c.Whole {
			made = append(made, c.Makes...)
		}
	}
	for _, tag := range made {
		if !slices.Contains(want, tag) {
			return fmt.Errorf("%s is made and not wanted", tag)
		}
	}
	if l.AtLeast > l.Settings+l.Walks {
		return fmt.Errorf("at least %d, but %d and %d", l.AtLeast, l.Settings, l.Walks)
	}
	return nil
}

// drawSheet draws a layout by cutting a sheet right across again and again: what is left over at the end is a
// part, an offcut or waste.
func drawSheet(t *rapid.T, tag string, parts *int) (cut.Sheet, cut.Used) {
	const kerf = 3
	size := [2]int{rapid.IntRange(100, 400).Draw(t, "length"), rapid.IntRange(100, 300).Draw(t, "width")}
	u := cut.Used{Stock: tag}
	var split func(x, y, l, w, deep int, across bool)
	split = func(x, y, l, w, deep int, across bool) {
		side := l
		if !across {
			side = w
		}
		if deep == 0 || side < 20 {
			at, size := [2]length.Length{length.Length(x) * mm, length.Length(y) * mm}, [2]length.Length{length.Length(l) * mm, length.Length(w) * mm}
			switch rapid.IntRange(0, 5).Draw(t, "becomes") {
			case 0: // waste
			case 1:
				u.Left = append(u.Left, cut.Offcut{At: at, Size: size})
			default:
				*parts++
				u.Parts = append(u.Parts, cut.Placed{Tag: fmt.Sprint("D", *parts), At: at, Size: size})
			}
			return
		}
		from := 0
		for side-from > 20 {
			n := rapid.IntRange(1, (side-from)/8).Draw(t, "cut at") * 8
			n = min(n, side-from)
			if across {
				split(x+from, y, n, w, deep-1, false)
			} else {
				split(x, y+from, l, n, deep-1, true)
			}
			from += n + kerf
		}
	}
	split(rapid.IntRange(0, 12).Draw(t, "off"), rapid.IntRange(0, 12).Draw(t, "off"), size[0]-24, size[1]-24, rapid.IntRange(1, 3).Draw(t, "deep"), rapid.Bool().Draw(t, "across"))
	return cut.Sheet{Tag: tag, Length: length.Length(size[0]) * mm, Width: length.Length(size[1]) * mm, Count: 1}, u
}

func TestEveryLayoutOfCutsRightAcrossCanBeSawnUpByItsList(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &cut.SheetProblem{Unit: length.MM, Kerf: 3 * mm}
		var used []cut.Used
		parts := 0
		for i := range rapid.IntRange(1, 3).Draw(t, "sheets") {
			s, u := drawSheet(t, fmt.Sprint("P", i+1), &parts)
			p.Sheets = append(p.Sheets, s)
			used = append(used, u)
		}
		if err := lawful(cut.Problem{Sheets: p}, used); err != nil {
			t.Fatal(err)
		}
	})
}

func TestLayoutsThatWereFoundCanBeSawnUp(t *testing.T) {
	limits := cut.Limits{Nodes: 2000}
	rapid.Check(t, func(t *rapid.T) {
		n := func(from, to int, what string) length.Length {
			return length.Length(rapid.IntRange(from, to).Draw(t, what)) * mm
		}
		p := &cut.SheetProblem{
			Unit: length.MM, Kerf: n(0, 4, "kerf"), Trim: n(0, 12, "trim"), Stages: 3, Useful: [2]length.Length{200 * mm, 100 * mm},
			Sheets: []cut.Sheet{{Tag: "P", Length: 1000 * mm, Width: 600 * mm, Count: cut.Any}},
		}
		for i := range rapid.IntRange(1, 6).Draw(t, "kinds") {
			p.Parts = append(p.Parts, cut.SheetPart{Tag: fmt.Sprint("D", i), Length: n(60, 500, "l"), Width: n(60, 300, "w"), Count: cut.Count(rapid.IntRange(1, 3).Draw(t, "n")), Turn: true})
		}
		a, err := sheet.Solve(context.Background(), p, limits)
		if err != nil {
			t.Fatal(err)
		}
		if err := lawful(cut.Problem{Sheets: p}, a.Used); err != nil {
			t.Fatal(err)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		n := func(from, to int, what string) length.Length {
			return length.Length(rapid.IntRange(from, to).Draw(t, what)) * mm
		}
		p := &cut.PanelProblem{
			Unit: length.MM, Kerf: n(0, 4, "kerf"), Jointing: mm, BoardEdgeTrim: n(0, 8, "edge"), MinTail: 200 * mm, Strip: cut.Span{Least: 30 * mm, Most: 120 * mm},
		}
		for i := range 6 {
			b := cut.Board{Tag: fmt.Sprint("B", i), Length: n(900, 1800, "length"), Width: n(90, 200, "width"), RoughEdges: rapid.IntRange(0, 2).Draw(t, "rough")}
			if rapid.Bool().Draw(t, "knot") {
				b.Defects = append(b.Defects, cut.Defect{Kind: cut.Knot, Face: cut.BothFaces, Rect: cut.Rect{X: n(0, 800, "x"), Y: n(0, 80, "y"), Length: 40 * mm, Width: 30 * mm}})
			}
			p.Boards = append(p.Boards, b)
		}
		for i := range rapid.IntRange(1, 3).Draw(t, "kinds") {
			p.Panels = append(p.Panels, cut.Panel{Tag: fmt.Sprint("A", i), Length: n(200, 700, "l"), Width: n(100, 300, "w"), Count: 1, Show: cut.Clear})
		}
		a, err := panel.Solve(context.Background(), p, limits)
		if err != nil {
			t.Fatal(err)
		}
		if err := lawful(cut.Problem{Boards: p}, a.Used); err != nil {
			t.Fatal(err)
		}
	})
}

// sticks is two sticks of 1 m, the saw takes 3 mm and 5 mm come off each end.
func sticks() (*cut.StickProblem, []cut.Used) {
	p := &cut.StickProblem{
		Unit: length.MM, Kerf: 3 * mm, Trim: 5 * mm, Useful: 100 * mm,
		Stock: []cut.StickStock{{Tag: "S", Length: 1000 * mm, Count: cut.Any}},
		Parts: []cut.StickPart{{Tag: "C1", Length: 400 * mm, Count: 3}, {Tag: "C2", Length: 100 * mm, Count: 2}, {Tag: "C3", Length: 100 * mm, Count: 1}},
	}
	at := func(tag string, x, l length.Length) cut.Placed {
		return cut.Placed{Tag: tag, At: [2]length.Length{x * mm}, Size: [2]length.Length{l * mm}}
	}
	return p, []cut.Used{
		{Stock: "S", Parts: []cut.Placed{at("C1", 5, 400), at("C1", 408, 400), at("C2", 811, 100)}},
		{Stock: "S", Parts: []cut.Placed{at("C1", 5, 400), at("C2", 408, 100), at("C3", 511, 100)}},
	}
}

// By hand: 1000 − 5 = 995; − 403 = 592; − 403 = 189; − 103 = 86. The second: 995, 592, 489, 386.
func TestSticksAreCutLengthByLengthFromASquareEnd(t *testing.T) {
	p, used := sticks()
	l := sawing.Of(cut.Problem{Sticks: p}, used)
	type row struct {
		why     sawing.Why
		setting length.Length
		piece   int
		cuts    int
		left    length.Length
		n       int
	}
	var got []row
	for _, r := range l.Runs {
		for _, s := range r.Steps {
			got = append(got, row{r.Why, r.Setting / mm, s.Piece, len(s.Cuts), s.Left / mm, s.N})
		}
	}
	want := []row{
		{sawing.Square, 5, 0, 1, 995, 0}, {sawing.Square, 5, 1, 1, 995, 0},
		{sawing.Part, 400, 0, 2, 189, 1}, {sawing.Part, 400, 1, 1, 592, 2},
		{sawing.Part, 100, 0, 1, 86, 3}, {sawing.Part, 100, 1, 2, 386, 4},
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, by hand %v", got, want)
	}
	if l.Settings != 2 || !l.Fewest() {
		t.Errorf("%d settings, at least %d; by hand 2", l.Settings, l.AtLeast)
	}
	a := &cut.Answer{Used: used, Cuts: l.Order(used), Cost: 2000, Bound: 2000}
	for _, f := range verify.Stick(p, a) {
		t.Error(f)
	}
}

func TestTheListOfALayoutThatWasFoundIsItsOrderOfCuts(t *testing.T) {
	p, _ := sticks()
	a, err := stick.Solve(context.Background(), p, cut.Limits{})
	if err != nil {
		t.Fatal(err)
	}
	a.Cuts = sawing.Of(cut.Problem{Sticks: p}, a.Used).Order(a.Used)
	for _, f := range verify.Stick(p, a) {
		t.Error(f)
	}
}

// An offcut that is kept at the far edge keeps that edge: nothing is trimmed off it.
func TestAKeptOffcutIsNotTrimmed(t *testing.T) {
	p := &cut.SheetProblem{Unit: length.MM, Kerf: 4 * mm, Trim: 10 * mm, Sheets: []cut.Sheet{{Tag: "P", Length: 1000 * mm, Width: 500 * mm, Count: 1}}}
	pair := func(a, b length.Length) [2]length.Length { return [2]length.Length{a * mm, b * mm} }
	used := []cut.Used{{
		Stock: "P", Parts: []cut.Placed{{Tag: "D1", At: pair(10, 10), Size: pair(400, 480)}},
		Left: []cut.Offcut{{At: pair(414, 10), Size: pair(576, 480)}},
	}}
	l := sawing.Of(cut.Problem{Sheets: p}, used)
	// square the near end, cut 400 off, then both edges of that
	if len(l.Cuts) != 4 {
		t.Errorf("%d cuts: %+v", len(l.Cuts), l.Cuts)
	}
	if err := lawful(cut.Problem{Sheets: p}, used); err != nil {
		t.Error(err)
	}
}

// Two settings that a tape shows alike are told finer, or nobody would move the stop.
func TestSettingsThatReadAlikeAreToldFiner(t *testing.T) {
	p, used := sticks()
	p.Parts[0].Length += 3 * mm / 10
	used[0].Parts[0].Size[0] += 3 * mm / 10
	s := sawing.Speech{Length: length.WholeMM.Show, Fine: length.WholeMM.Finer().Show, Noun: "stick"}
	got := s.Heads(sawing.Of(cut.Problem{Sticks: p}, used))
	want := []string{"square the end: 5 mm off, saw cut and all", "stop at 400.3 mm", "stop at 400 mm", "stop at 100 mm"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q", got)
	}
}

// What is taken off saw cut and all and a part of the same length are two settings: a saw cut lies between them.
func TestTakingOffIsNoSettingForParts(t *testing.T) {
	p := &cut.SheetProblem{Unit: length.MM, Kerf: 4 * mm, Sheets: []cut.Sheet{{Tag: "P", Length: 1000 * mm, Width: 100 * mm, Count: 1}}}
	used := []cut.Used{{Stock: "P", Parts: []cut.Placed{{
		Tag: "D1", At: [2]length.Length{20 * mm}, Size: [2]length.Length{20 * mm, 100 * mm},
	}}}}
	l := sawing.Of(cut.Problem{Sheets: p}, used)
	if len(l.Runs) != 2 || l.Settings != 2 || l.Runs[0].Why != sawing.Square || l.Runs[1].Why != sawing.Part {
		t.Errorf("%d settings: %+v", l.Settings, l.Runs)
	}
}

// The steps of an answer are those of the list, number by number.
func TestAnAnswerIsCutByItsList(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := &cut.SheetProblem{Unit: length.MM, Kerf: 3 * mm}
		var used []cut.Used
		parts := 0
		for i := range rapid.IntRange(1, 3).Draw(t, "sheets") {
			s, u := drawSheet(t, fmt.Sprint("P", i+1), &parts)
			p.Sheets, used = append(p.Sheets, s), append(used, u)
		}
		problem := cut.Problem{Sheets: p}
		l := sawing.Of(problem, used)
		told := map[int][]string{}
		for i, n := range l.Numbers() {
			told[n] = append(told[n], fmt.Sprint(used[l.Cuts[i].Piece].Stock, l.Cuts[i].Machine, l.Cuts[i].Setting))
		}
		cuts := sawing.Finish(problem, &cut.Answer{Used: used}).Cuts
		for i, c := range cuts {
			if c.N != i+1 || len(told[c.N]) == 0 || slices.Compact(told[c.N])[0] != fmt.Sprint(c.On, c.Machine, c.Setting) {
				t.Fatalf("step %d is %+v, in the list %q", i+1, c, told[c.N])
			}
		}
		if len(cuts) != len(told) {
			t.Fatalf("%d steps, in the list %d", len(cuts), len(told))
		}
	})
}

// Of very many cuts one sheet is sawn up before the next is fetched, and the bound is still true: of two settings
// of the stop and three of the fence, with one way to the other saw, none can be spared.
func TestOfVeryManyCutsOneSheetFollowsTheOther(t *testing.T) {
	p := &cut.SheetProblem{Unit: length.MM, Sheets: []cut.Sheet{{Tag: "P", Length: 1000 * mm, Width: 600 * mm, Count: cut.Any}}}
	one := cut.Used{Stock: "P"}
	for i, x := range []length.Length{0, 600, 800} {
		for k, y := range []length.Length{0, 100, 300} {
			one.Parts = append(one.Parts, cut.Placed{
				Tag: fmt.Sprint("D", i, k), At: [2]length.Length{x * mm, y * mm},
				Size: [2]length.Length{[]length.Length{600, 200, 200}[i] * mm, []length.Length{100, 200, 300}[k] * mm},
			})
		}
	}
	used := slices.Repeat([]cut.Used{one}, 60)
	l := sawing.Of(cut.Problem{Sheets: p}, used)
	if len(l.Cuts) != 60*8 { // 2 across, 2 along in each of the three lengths
		t.Fatalf("%d cuts", len(l.Cuts))
	}
	at := 0
	for _, r := range l.Runs {
		for _, s := range r.Steps {
			if s.Piece < at {
				t.Fatalf("sheet %d is taken up again after sheet %d", s.Piece+1, at+1)
			}
			at = s.Piece
		}
	}
	if l.AtLeast != 5 {
		t.Errorf("at least %d changes, by hand 2 + 2 + 1", l.AtLeast)
	}
	if err := lawful(cut.Problem{Sheets: p}, used); err != nil {
		t.Error(err)
	}
}

// Boards are flattened between crosscutting and ripping, so that a rip is never made before a crosscut that could
// come first: B1 is as long as its strips, B2 is crosscut for a strip as wide as it is. A crosscut of what falls off
// B3 waits for the rips, and no crosscut of another board waits with it, though both are at 300.
func TestBoardsAreCrosscutThenRippedThenCutAgain(t *testing.T) {
	p := &cut.PanelProblem{Unit: length.MM}
	board := func(tag string, l, w length.Length, parts ...cut.Placed) cut.Used {
		p.Boards = append(p.Boards, cut.Board{Tag: tag, Length: l * mm, Width: w * mm})
		return cut.Used{Stock: tag, Parts: parts}
	}
	strip := func(x, y, l, w length.Length) cut.Placed {
		return cut.Placed{Tag: "A", At: [2]length.Length{x * mm, y * mm}, Size: [2]length.Length{l * mm, w * mm}}
	}
	used := []cut.Used{
		board("B1", 500, 100, strip(0, 0, 500, 60), strip(0, 60, 500, 40)),
		board("B2", 400, 60, strip(0, 0, 300, 60)),
		board("B3", 900, 100, strip(0, 0, 700, 60), strip(0, 60, 300, 40)),
	}
	problem := cut.Problem{Boards: p}
	var got []string
	for _, c := range sawing.Finish(problem, &cut.Answer{Used: used}).Cuts {
		got = append(got, fmt.Sprintf("%s %s %d", c.On, c.Machine, c.Setting/mm))
	}
	want := []string{"B3 crosscut 700", "B2 crosscut 300", "B1 rip 60", "B3 rip 60", "B3 crosscut 300"}
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if err := lawful(problem, used); err != nil {
		t.Error(err)
	}
	used = []cut.Used{board("B4", 500, 100, strip(0, 0, 500, 50), strip(0, 50, 500, 50)), board("B5", 500, 150, strip(0, 0, 500, 50), strip(0, 50, 500, 50), strip(0, 100, 500, 50)), used[1]}
	if first := sawing.Finish(problem, &cut.Answer{Used: used}).Cuts[0]; first.On != "B2" {
		t.Errorf("%s on %s comes before the crosscut of B2", first.Machine, first.On)
	}
}

func BenchmarkTheListOfTenThousandParts(b *testing.B) {
	p := &cut.SheetProblem{Unit: length.MM, Kerf: 3 * mm, Sheets: []cut.Sheet{{Tag: "P", Length: 2440 * mm, Width: 1220 * mm, Count: cut.Any}}}
	one := cut.Used{Stock: "P"}
	for x := range length.Length(10) {
		for y := range length.Length(10) {
			one.Parts = append(one.Parts, cut.Placed{
				Tag: fmt.Sprint("D", x, y), At: [2]length.Length{10*mm + x*240*mm, 10*mm + y*120*mm}, Size: [2]length.Length{(200 + x) * mm, (90 + y) * mm},
			})
		}
	}
	used := slices.Repeat([]cut.Used{one}, 100)
	for b.Loop() {
		sawing.Of(cut.Problem{Sheets: p}, used).Order(used)
	}
}
