package steps

import (
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/shop"
)

// Span is when a step is done, in hours from the morning of the first day, 24 to a day.
type Span struct {
	Start float64 // hands begin
	End   float64 // hands are done
	Ready float64 // the wait is over: what follows may begin
	Who   int     // which pair of hands, from 0
}

// Capacity is what the shop can do at once.
type Capacity struct {
	HandsPerDay float64 // hours of handwork in a day
	People      int     // pairs of hands
	Clamps      int
}

// Schedule gives every step its time. Hands work HandsPerDay hours from the beginning of each day, one pair
// of hands on one step; a step may run over into the next day. Waits run on day and night and need no
// hands, so they run beside other work; clamps in use are not there for the next glue-up. Of the steps that can begin at the same time the one with the longest
// way to the end comes first, of equals the earlier one; every day is a working day.
//
// This is list scheduling by critical path: a sound plan, not a proven shortest one.
func Schedule(steps []Step, c Capacity) []Span {
	s := &scheduler{steps: steps, day: min(max(c.HandsPerDay, 0.25), 24), clamps: c.Clamps, spans: make([]Span, len(steps))}
	s.free = make([]float64, max(c.People, 1))
	s.tails()
	done := make([]bool, len(steps))
	for range steps {
		i, who, start := s.next(done)
		s.put(i, who, start)
		done[i] = true
	}
	return s.spans
}

type scheduler struct {
	steps []Step
	day   float64   // hours of handwork in a day
	free  []float64 // when each pair of hands is free
	tail  []float64 // hours from the start of a step to the end of all that follows it
	spans []Span

	clamps int    // the shop's
	holds  []hold // of clamps, by steps that are placed
}

// hold is a number of clamps in use for a time.
type hold struct {
	from, to float64
	clamps   int
}

// tails works out the longest way to the end from each step, from behind, as After points backwards.
func (s *scheduler) tails() {
	s.tail = make([]float64, len(s.steps))
	for i := len(s.steps) - 1; i >= 0; i-- {
		// A working hour takes 24 ÷ day hours of the calendar.
		s.tail[i] += s.steps[i].HandsH*24/s.day + s.steps[i].WaitH
		for _, n := range s.steps[i].After {
			s.tail[n-1] = max(s.tail[n-1], s.tail[i])
		}
	}
}

// next chooses the step to do now: the earliest start, then the longest tail, then the lowest number.
func (s *scheduler) next(done []bool) (step, who int, start float64) {
	step, start = -1, math.Inf(1)
	for i := range s.steps {
		if done[i] || !s.can(i, done) {
			continue
		}
		w, at := s.earliest(i)
		if at < start || at == start && s.tail[i] > s.tail[step] {
			step, who, start = i, w, at
		}
	}
	return step, who, start
}

// can reports whether all steps that must come first are placed.
func (s *scheduler) can(i int, done []bool) bool {
	return !slices.ContainsFunc(s.steps[i].After, func(n int) bool { return !done[n-1] })
}

// earliest returns when a step could begin, and with which hands. A step without handwork takes none.
func (s *scheduler) earliest(i int) (who int, at float64) {
	ready := 0.0
	for _, n := range s.steps[i].After {
		ready = max(ready, s.spans[n-1].Ready)
	}
	if s.steps[i].HandsH == 0 {
		return 0, s.unclamped(ready, s.steps[i])
	}
	for w := range s.free {
		if s.free[w] < s.free[who] {
			who = w
		}
	}
	return who, s.unclamped(s.working(max(ready, s.free[who])), s.steps[i])
}

// unclamped returns the first moment from t on at which hands work and enough clamps are free for good.
func (s *scheduler) unclamped(t float64, st Step) float64 {
	if st.Clamps == 0 {
		return t
	}
	for {
		used, next := 0, math.Inf(1)
		for _, h := range s.holds {
			if h.to > t+slack {
				used += h.clamps
				next = min(next, h.to)
			}
		}
		if used == 0 || used+st.Clamps <= s.clamps {
			return t
		}
		t = next
		if st.HandsH > 0 {
			t = s.working(next)
		}
	}
}

// slack is the part of an hour within which the end of a day counts as reached: a minute's sixtieth.
const slack = 1. / 3600

// working returns the first moment from t on at which hands work.
func (s *scheduler) working(t float64) float64 {
	day := math.Floor(t / 24)
	if t-day*24 < s.day-slack {
		return t
	}
	return (day + 1) * 24
}

// put places a step.
func (s *scheduler) put(i, who int, start float64) {
	end := start
	for left := s.steps[i].HandsH; left > slack; {
		end = s.working(end)
		today := math.Floor(end/24)*24 + s.day - end
		do := min(left, today)
		end += do
		left -= do
	}
	if s.steps[i].HandsH > 0 {
		s.free[who] = end
	}
	if n := s.steps[i].Clamps; n > 0 {
		s.holds = append(s.holds, hold{start, end + s.steps[i].ClampH, n})
	}
	s.spans[i] = Span{Start: start, End: end, Ready: end + s.steps[i].WaitH, Who: who}
}

// Days returns how many calendar days the spans take, begun days counted whole.
func Days(spans []Span) int {
	end := 0.0
	for _, s := range spans {
		end = max(end, s.Ready)
	}
	return int(math.Ceil(end/24 - slack))
}

// promise is how a date is reckoned.
var promise = figure.Formula{
	Text:   "days = (backlog + own days) × (1 + slack); own days = the schedule of hands and waits",
	Source: "public workshop advice: promise = real backlog + own hours + cure times + slack",
	Range:  "every day a working day",
}

// Promise returns in how many days the piece may be promised: the backlog, the piece's own calendar days
// with its glue and finish waits, and the shop's slack on both. Whole days, rounded up.
func Promise(w *Work, s *shop.Shop) figure.Figure {
	t := s.Settings
	days := math.Ceil((t.Backlog+float64(w.Days))*(1+t.Slack) - slack)
	f := figure.Of("days to promise", days, figure.Count, &promise,
		figure.In("backlog", t.Backlog, figure.Count), figure.In("own days", float64(w.Days), figure.Count), figure.In("slack", t.Slack*100, figure.Percent))
	if len(w.Unknown) > 0 {
		f = f.Assuming("at least: some times are unknown")
	}
	return f
}
