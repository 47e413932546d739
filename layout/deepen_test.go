package layout_test

import (
	"context"
	"testing"
	"time"

	"rodwright/cut"
	"rodwright/layout"
	"rodwright/length"
)

// pipes is a task of eight pipes of 30 in; a stick of 100 in holds three, one of 130 in four. By hand: two of the
// longer hold all of them for 52; no eight pipes of 240 in together fit into less than two sticks of 130 in.
func pipes() layout.Task {
	p := &cut.StickProblem{Unit: length.In, Kerf: length.Inch / 8, Useful: length.Foot, Stock: []cut.StickStock{
		{Tag: "long", Length: 130 * length.Inch, Count: cut.Any, Price: cut.Priced(26)}, {Tag: "short", Length: 100 * length.Inch, Count: cut.Any, Price: cut.Priced(22)},
	}}
	for _, tag := range []string{"C1.1", "C1.2", "C1.3", "C1.4", "C1.5", "C1.6", "C1.7", "C1.8"} {
		p.Parts = append(p.Parts, cut.StickPart{Tag: tag, Length: 30 * length.Inch, Count: 1})
	}
	return layout.Task{Kind: layout.OfSticks, Material: "3/4", Sticks: p}
}

// lavish cuts each pipe from a stick of its own.
func lavish(t layout.Task) *cut.Answer {
	a := &cut.Answer{Bound: 40}
	for _, tag := range t.Tags() {
		a.Used = append(a.Used, cut.Used{Stock: "short", Parts: []cut.Placed{{Tag: tag, Size: [2]length.Length{30 * length.Inch, 0}}}})
		a.Cost += 22
	}
	return a
}

func TestADeeperLookFindsTheBestAndProvesIt(t *testing.T) {
	task := pipes()
	told := []*cut.Answer{}
	best, err := task.Deepen(context.Background(), lavish(task), func(a *cut.Answer) { told = append(told, a) })
	if err != nil || best.Cost != 52 || !best.Proven || best.Bound != 52 {
		t.Fatalf("%+v, %v", best, err)
	}
	if len(told) == 0 || told[len(told)-1] != best {
		t.Errorf("told %d times, last of another than the best", len(told))
	}
	again, err := task.Deepen(context.Background(), best, func(*cut.Answer) { t.Error("of what is proven something better is told") })
	if err != nil || again != best {
		t.Errorf("%+v, %v", again, err)
	}
}

func TestALookThatIsOverLeavesWhatIsAtHand(t *testing.T) {
	task := pipes()
	ctx, cancel := context.WithDeadline(context.Background(), time.Unix(0, 0))
	defer cancel()
	have := lavish(task)
	if best, err := task.Deepen(ctx, have, func(*cut.Answer) { t.Error("something is told") }); err != nil || best != have {
		t.Errorf("%+v, %v", best, err)
	}
}

// A stick of 100 in holds no pipe of 120 in, however long one looks.
func TestWhatCanNotBePlacedEndsTheLookToo(t *testing.T) {
	task := pipes()
	task.Sticks.Stock = task.Sticks.Stock[1:]
	task.Sticks.Parts = append(task.Sticks.Parts, cut.StickPart{Tag: "C2", Length: 120 * length.Inch, Count: 1})
	best, err := task.Deepen(context.Background(), nil, func(*cut.Answer) {})
	if err != nil || len(best.NotPlaced) != 1 || best.Cost != 66 {
		t.Errorf("%+v, %v", best, err)
	}
}

func TestAGainIsMorePlacedAnotherCostOrACloserBound(t *testing.T) {
	was := &cut.Answer{Cost: 90, Bound: 80}
	for _, c := range []struct {
		is   cut.Answer
		want bool
	}{
		{cut.Answer{Cost: 90, Bound: 80}, false}, {cut.Answer{Cost: 89, Bound: 80}, true}, {cut.Answer{Cost: 90, Bound: 81}, true},
		{cut.Answer{Cost: 90, Bound: 80, NotPlaced: []cut.NotPlaced{{Tag: "C1"}}}, true},
	} {
		if got := layout.Gains(was, &c.is); got != c.want {
			t.Errorf("%+v: %v", c.is, got)
		}
	}
}

func TestWhyALayoutOfAnEarlierStateNoLongerFits(t *testing.T) {
	for want, change := range map[string]func(*cut.StickProblem){
		"C1.9 is to be cut now": func(p *cut.StickProblem) {
			p.Parts = append(p.Parts, cut.StickPart{Tag: "C1.9", Length: 30 * length.Inch, Count: 1})
		},
		"C1.8 is not to be cut any more":                                              func(p *cut.StickProblem) { p.Parts = p.Parts[:7] },
		"C1.5, C1.6, C1.7 and 1 more are not to be cut any more":                      func(p *cut.StickProblem) { p.Parts = p.Parts[:4] },
		"C1.7 and C1.8 are not to be cut any more":                                    func(p *cut.StickProblem) { p.Parts = p.Parts[:6] },
		"C1.1 on short is 30 in long, wanted 31 in":                                   func(p *cut.StickProblem) { p.Parts[0].Length = 31 * length.Inch },
		`"short" is no stock of the problem`:                                          func(p *cut.StickProblem) { p.Stock = p.Stock[:1] },
		"prices, what is there to cut from or the settings of the saw are others now": func(p *cut.StickProblem) { p.Stock[0].Price = cut.Priced(30) },
	} {
		a, task := lavish(pipes()), pipes()
		change(task.Sticks)
		if got := task.Misfit(a); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}
