package steps_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/shop"
	"rodwright/steps"
)

// chained makes steps that follow each other.
func chained(hours ...[2]float64) []steps.Step {
	var out []steps.Step
	for i, h := range hours {
		s := steps.Step{N: i + 1, HandsH: h[0], WaitH: h[1]}
		if i > 0 {
			s.After = []int{i}
		}
		out = append(out, s)
	}
	return out
}

func TestHandsWorkInTheirHoursAndWaitsRunDayAndNight(t *testing.T) {
	one := steps.Capacity{HandsPerDay: 6, People: 1}
	cases := []struct {
		name  string
		steps []steps.Step
		ready float64 // worked out by hand, in hours from the first morning
		days  int
	}{
		{"an hour", chained([2]float64{1, 0}), 1, 1},
		{"a day", chained([2]float64{6, 0}), 6, 1},
		{"a day and an hour", chained([2]float64{7, 0}), 25, 2},
		{"two days of work", chained([2]float64{6, 0}, [2]float64{6, 0}), 30, 2},
		{"glue sets overnight", chained([2]float64{1, 24}, [2]float64{1, 0}), 26, 2},
		{"glue that sets in the night waits for the morning", chained([2]float64{5, 10}, [2]float64{1, 0}), 25, 2},
		{"a wait needs no hands", chained([2]float64{0, 168}), 168, 7},
		{"work and then three days of cure", chained([2]float64{2, 72}), 74, 4},
		{"nothing", nil, 0, 0},
	}
	for _, c := range cases {
		spans := steps.Schedule(c.steps, one)
		end := 0.0
		for _, s := range spans {
			end = max(end, s.Ready)
		}
		if math.Abs(end-c.ready) > 1e-6 || steps.Days(spans) != c.days {
			t.Errorf("%s: ready after %g h on day %d, want %g h and day %d", c.name, end, steps.Days(spans), c.ready, c.days)
		}
	}
}

func TestOtherWorkGoesOnWhileGlueSets(t *testing.T) {
	// Pipe work of 4 h goes into the 24 h in which the panel is in the clamps: 1 + 24 + 1, not 1 + 4 + 24 + 1.
	work := []steps.Step{{N: 1, HandsH: 1, WaitH: 24}, {N: 2, HandsH: 4}, {N: 3, HandsH: 1, After: []int{1, 2}}}
	spans := steps.Schedule(work, steps.Capacity{HandsPerDay: 6, People: 1})
	if spans[0].Start != 0 || spans[1].Start != 1 || spans[2].Ready != 26 {
		t.Errorf("glue at %g, pipe at %g, done at %g; want 0, 1 and 26", spans[0].Start, spans[1].Start, spans[2].Ready)
	}
}

func TestTheLongestWayComesFirst(t *testing.T) {
	work := []steps.Step{{N: 1, HandsH: 2}, {N: 2, HandsH: 1, WaitH: 48}}
	spans := steps.Schedule(work, steps.Capacity{HandsPerDay: 6, People: 1})
	if spans[1].Start != 0 || spans[0].Start != 1 {
		t.Errorf("what must cure begins at %g, the rest at %g", spans[1].Start, spans[0].Start)
	}
}

func TestClampsInUseAreNotThereForTheNextGlueUp(t *testing.T) {
	glueUp := func(n int) steps.Step { return steps.Step{N: n, HandsH: 0.5, WaitH: 24, Clamps: 6, ClampH: 1} }
	work := []steps.Step{glueUp(1), glueUp(2)}
	few := steps.Schedule(work, steps.Capacity{HandsPerDay: 6, People: 1, Clamps: 10})
	if few[1].Start != 1.5 {
		t.Errorf("with 10 clamps the second begins at %g h, want 1.5 h, when the first are off", few[1].Start)
	}
	many := steps.Schedule(work, steps.Capacity{HandsPerDay: 6, People: 1, Clamps: 12})
	if many[1].Start != 0.5 {
		t.Errorf("with 12 clamps the second begins at %g h, want 0.5 h", many[1].Start)
	}
}

func TestMoreHandsWorkAtOnce(t *testing.T) {
	work := []steps.Step{{N: 1, HandsH: 3}, {N: 2, HandsH: 3}, {N: 3, HandsH: 1, After: []int{1, 2}}}
	two := steps.Schedule(work, steps.Capacity{HandsPerDay: 6, People: 2})
	if two[0].Who == two[1].Who || two[2].Ready != 4 {
		t.Errorf("hands %d and %d are ready at %g h, want two and 4 h", two[0].Who, two[1].Who, two[2].Ready)
	}
}

// someSteps draws a random plan.
func someSteps(r *rapid.T) []steps.Step {
	n := rapid.IntRange(1, 14).Draw(r, "steps")
	out := make([]steps.Step, n)
	for i := range out {
		out[i] = steps.Step{N: i + 1, HandsH: rapid.Float64Range(0, 20).Draw(r, "hands"), WaitH: rapid.Float64Range(0, 100).Draw(r, "wait")}
		out[i].Clamps = rapid.IntRange(0, 5).Draw(r, "clamps")
		out[i].ClampH = rapid.Float64Range(0, 30).Draw(r, "clamped")
		for a := 1; a <= i; a++ {
			if rapid.IntRange(0, 3).Draw(r, "after") == 0 {
				out[i].After = append(out[i].After, a)
			}
		}
	}
	return out
}

func TestASchedulePutsNothingBeforeItsTime(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		work := someSteps(r)
		c := steps.Capacity{HandsPerDay: rapid.Float64Range(1, 24).Draw(r, "day"), People: rapid.IntRange(1, 3).Draw(r, "people"), Clamps: 6}
		spans := steps.Schedule(work, c)
		for i, s := range spans {
			for _, n := range work[i].After {
				if s.Start < spans[n-1].Ready {
					r.Fatalf("step %d begins at %g, before step %d is ready at %g", i+1, s.Start, n, spans[n-1].Ready)
				}
			}
			if s.End-s.Start < work[i].HandsH-1e-3 || math.Abs(s.Ready-s.End-work[i].WaitH) > 1e-9 {
				r.Fatalf("step %d of %g h is done from %g to %g", i+1, work[i].HandsH, s.Start, s.End)
			}
			for k := range i {
				overlap(r, work, spans, k, i)
			}
			clampsFree(r, work, spans, i, c.Clamps)
		}
	})
}

// overlap checks that one pair of hands does one thing at a time.
func overlap(r *rapid.T, work []steps.Step, spans []steps.Span, a, b int) {
	if work[a].HandsH == 0 || work[b].HandsH == 0 || spans[a].Who != spans[b].Who {
		return
	}
	if spans[a].Start < spans[b].End-1e-6 && spans[b].Start < spans[a].End-1e-6 {
		r.Fatalf("steps %d and %d are done by the same hands at once", a+1, b+1)
	}
}

// clampsFree checks that no more clamps are in use than there are when step i begins.
func clampsFree(r *rapid.T, work []steps.Step, spans []steps.Span, i, owned int) {
	used := 0
	for k, s := range spans {
		if s.Start <= spans[i].Start+1e-6 && s.End+work[k].ClampH > spans[i].Start+2e-3 {
			used += work[k].Clamps
		}
	}
	if used > owned {
		r.Fatalf("%d clamps are in use when step %d begins, of %d", used, i+1, owned)
	}
}

func TestAPromiseHoldsBacklogOwnDaysCuresAndSlack(t *testing.T) {
	// Public workshop advice: a backlog of 3 to 4 weeks became 5 as the new piece's own time was left out; promise =
	// real backlog + own hours + cure times + slack. By hand: (20 + 10) × 1.15 = 34.5, so 35 days.
	s := shop.Sample()
	s.Settings.Backlog, s.Settings.Slack = 20, 0.15
	w := &steps.Work{Days: 10}
	if f := steps.Promise(w, s); f.Value != 35 || len(f.Assumed) > 0 {
		t.Errorf("promised in %g days, want 35", f.Value)
	}
	s.Settings.Slack = 0
	if f := steps.Promise(w, s); f.Value != 30 {
		t.Errorf("without slack promised in %g days, want 30", f.Value)
	}
	w.Unknown = []string{"time for thread"}
	if f := steps.Promise(w, s); len(f.Assumed) == 0 {
		t.Error("a promise with unknown hours does not say so")
	}
}

func TestThePiecesOwnDaysHoldItsGlueAndItsCure(t *testing.T) {
	// Boards 7 days, glue 1 day, coats and 21 days of cure: no stand is in use before a month is over.
	w := planned(t, "stepped-stand", shop.Sample())
	if waits := 7 + 1 + 21; w.Days <= waits {
		t.Errorf("in use after %d days, and boards, glue and cure alone take %d", w.Days, waits)
	}
	if w.HandsH > 24*float64(w.Days) {
		t.Error("more hours of hands than there are")
	}
}
