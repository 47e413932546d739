package book

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"rodwright/steps"
)

// work tells the steps in their order.
func (a *author) work() []Section {
	s := Section{ID: "steps", Title: "Steps", NewPage: true}
	for _, st := range a.b.Work.Steps {
		s.Blocks = append(s.Blocks, Step{
			Number: st.N, Title: a.w.say(st.Title), Parts: spans(st.Parts), Tool: a.w.say(toolWords(st)), Time: timeWords(st),
			Measures: a.w.says(strangers(st.Measures)), Cautions: a.w.says(st.Cautions), After: afterWords(st),
		})
	}
	return []Section{s}
}

// strangers tells measures to who has another shop: how many clamps this one has is left out.
func strangers(measures []string) []string {
	out := slices.Clone(measures)
	for i, m := range out {
		if strings.HasPrefix(m, "the shop has ") {
			_, out[i], _ = strings.Cut(m, ": ")
		}
	}
	return once(out)
}

func toolWords(s steps.Step) string {
	return strings.Join(append([]string{s.Tool}, s.Substitutes...), "; or ")
}

// timeWords tells how long hands and waiting take.
func timeWords(s steps.Step) string {
	var words []string
	if s.HandsH > 0 {
		words = append(words, duration(s.HandsH)+" of work")
	}
	if s.WaitH > 0 {
		words = append(words, "wait "+duration(s.WaitH))
	}
	return strings.Join(words, ", then ")
}

// afterWords names the steps that must be done first, unless that is the one before alone.
func afterWords(s steps.Step) string {
	if len(s.After) == 0 || slices.Equal(s.After, []int{s.N - 1}) {
		return ""
	}
	return numbered(s.After)
}

// time tells how long it all takes, and when each step can begin.
func (a *author) time() []Section {
	w := a.b.Work
	set := a.b.Shop.Settings
	words := fmt.Sprintf("%s hours of work and %s from the first hour to the finished piece, with %s at it %s hours a day, every day a working day. "+
		"Waits run on day and night beside other work. The hours are those of somebody who has done such work before: allow more for a first piece.",
		digits(w.HandsH), several(w.Days, "day"), people(set.People), digits(set.HandsPerDay))
	s := Section{ID: "time", Title: "Time", Blocks: []Block{Paragraph{words}}}
	s.note(Remark, "Not counted, for no time is known", w.Unknown)
	t := Table{
		Caption: "When each step can begin",
		Columns: []Column{{Head: "Day", Share: 0.6, Align: Right}, {Head: "Step", Share: 0.6, Align: Right}, {Head: "What", Share: 5}, {Head: "Work", Share: 1.1, Align: Right}, {Head: "Wait", Share: 1, Align: Right}},
	}
	order := make([]int, len(w.Steps))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(w.Spans[i].Start, w.Spans[j].Start) })
	for _, i := range order {
		st := w.Steps[i]
		wait := ""
		if st.WaitH > 0 {
			wait = duration(st.WaitH)
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(day(w.Spans[i])), strconv.Itoa(st.N), a.w.say(st.Title), duration(st.HandsH), wait})
	}
	s.table(t)
	return []Section{s}
}

func people(n int) string {
	if n <= 1 {
		return "one pair of hands"
	}
	return fmt.Sprintf("%d pairs of hands", n)
}

// day is the day, from 1, on which a step begins.
func day(s steps.Span) int { return int(math.Floor(s.Start/24)) + 1 }
