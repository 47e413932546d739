package steps_test

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/steps"
)

// resolved reads a document and takes it off, as the shop would make it.
func resolved(t testing.TB, text []byte, s *shop.Shop) (*piece.Resolved, *part.List) {
	t.Helper()
	doc, err := piece.Read("test.piece.yaml", text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := piece.Resolve(doc, s)
	if err != nil {
		t.Fatal(err)
	}
	list, err := part.TakeOff(r, s)
	if err != nil {
		t.Fatal(err)
	}
	return r, list
}

func starter(t testing.TB, name string) []byte {
	t.Helper()
	text, err := piece.Starter(name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// planned plans a starter in the given shop.
func planned(t testing.TB, name string, s *shop.Shop) *steps.Work {
	t.Helper()
	return plannedFrom(t, starter(t, name), s)
}

func plannedFrom(t testing.TB, text []byte, s *shop.Shop) *steps.Work {
	t.Helper()
	r, list := resolved(t, text, s)
	w, err := steps.Plan(r, list, nil, s)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// step returns the first step whose title holds the words.
func step(t testing.TB, w *steps.Work, words string) steps.Step {
	t.Helper()
	for _, s := range w.Steps {
		if strings.Contains(s.Title, words) {
			return s
		}
	}
	t.Fatalf("no step says %q", words)
	return steps.Step{}
}

// ofWork returns all steps of a kind of work.
func ofWork(w *steps.Work, work string) []steps.Step {
	return slices.DeleteFunc(slices.Clone(w.Steps), func(s steps.Step) bool { return s.Work != work })
}

// follows reports whether step b can only begin after step a.
func follows(w *steps.Work, a, b int) bool {
	for _, n := range w.Steps[b-1].After {
		if n == a || follows(w, a, n) {
			return true
		}
	}
	return false
}

// lawful checks the promises of Plan.
func lawful(t fataler, w *steps.Work, list *part.List) {
	seen := map[string]bool{}
	for i, s := range w.Steps {
		if s.N != i+1 {
			t.Fatalf("step %d is numbered %d", i+1, s.N)
		}
		for _, n := range s.After {
			if n < 1 || n >= s.N {
				t.Fatalf("step %d comes after step %d", s.N, n)
			}
		}
		if s.HandsH < 0 || s.WaitH < 0 || s.Units < 0 {
			t.Fatalf("step %d takes %g h, waits %g h, has %g units", s.N, s.HandsH, s.WaitH, s.Units)
		}
		if s.Title == "" || s.Tool == "" {
			t.Fatalf("step %d has title %q and tool %q", s.N, s.Title, s.Tool)
		}
		if strings.Contains(s.Title, "%!") || strings.Contains(strings.Join(s.Measures, ""), "%!") {
			t.Fatalf("step %d is badly written: %q %q", s.N, s.Title, s.Measures)
		}
		for _, tag := range s.Parts {
			seen[tag] = true
		}
	}
	for _, q := range list.Parts {
		for _, tag := range q.Tags {
			if !seen[tag] && !seen[q.Tag] {
				t.Fatalf("%s, %s, is in no step", tag, q.Name)
			}
		}
	}
}

type fataler interface{ Fatalf(string, ...any) }

func TestEveryPartIsWorkedOnAndEveryStepFollowsEarlierOnes(t *testing.T) {
	for _, name := range piece.Starters() {
		t.Run(name, func(t *testing.T) {
			s := shop.Sample()
			r, list := resolved(t, starter(t, name), s)
			w, err := steps.Plan(r, list, nil, s)
			if err != nil {
				t.Fatal(err)
			}
			lawful(t, w, list)
			if len(w.Unknown) > 0 {
				t.Errorf("the sample shop has no time for %v", w.Unknown)
			}
			again, _ := steps.Plan(r, list, nil, s)
			if !reflect.DeepEqual(w, again) {
				t.Error("planned twice, the plans differ")
			}
		})
	}
}

func TestPlansAreLawfulInEveryShop(t *testing.T) {
	names := piece.Starters()
	grits := []int{60, 80, 100, 120, 150, 180, 220, 320}
	rapid.Check(t, func(r *rapid.T) {
		s := shop.Sample()
		s.Settings.Coats = rapid.IntRange(1, 5).Draw(r, "coats")
		s.Settings.People = rapid.IntRange(1, 4).Draw(r, "people")
		s.Settings.HandsPerDay = rapid.Float64Range(0.5, 16).Draw(r, "hours a day")
		s.Settings.FirstGrit = rapid.SampledFrom(grits[:3]).Draw(r, "first grit")
		s.Settings.LastGrit = rapid.SampledFrom(grits[3:]).Draw(r, "last grit")
		s.Settings.Finish = rapid.SampledFrom([]string{"hardwax-oil", "shellac", "film-varnish"}).Draw(r, "finish")
		s.Settings.Adhesive = rapid.SampledFrom([]string{"pva", "polyurethane", "epoxy"}).Draw(r, "adhesive")
		s.Settings.MetalFinish = rapid.SampledFrom([]string{"paste-wax", "enamel"}).Draw(r, "metal finish")
		s.Pipe.ThreadsAtShop = rapid.Bool().Draw(r, "own threads")
		n := rapid.IntRange(0, len(s.Tools)).Draw(r, "tools owned")
		s.Tools = s.Tools[:n]
		res, list := resolved(t, starter(t, rapid.SampledFrom(names).Draw(r, "piece")), s)
		w, err := steps.Plan(res, list, nil, s)
		if err != nil {
			r.Fatalf("%s", err)
		}
		lawful(r, w, list)
		// The end of a day counts as reached within a second, so that each step may end as much early.
		hands := w.HandsH - float64(len(w.Steps))/3600
		if least := hands / s.Settings.HandsPerDay / float64(s.Settings.People); float64(w.Days) < least {
			r.Fatalf("%g h of hands are done in %d days", w.HandsH, w.Days)
		}
	})
}

func TestPartsOfAnotherPieceAreRefused(t *testing.T) {
	s := shop.Sample()
	r, _ := resolved(t, starter(t, "stepped-stand"), s)
	_, list := resolved(t, starter(t, "low-bench"), s)
	if _, err := steps.Plan(r, list, nil, s); err == nil {
		t.Error("the parts of a bench make a stand")
	}
}

func TestGritsThatNobodySellsAreRefused(t *testing.T) {
	s := shop.Sample()
	r, list := resolved(t, starter(t, "low-bench"), s)
	s.Settings.FirstGrit = 81
	if _, err := steps.Plan(r, list, nil, s); err == nil || !strings.Contains(err.Error(), "81") {
		t.Errorf("sanded with grit 81: %v", err)
	}
}

func TestATimeTheShopDoesNotKnowIsNamed(t *testing.T) {
	s := shop.Sample()
	s.Operations = slices.DeleteFunc(s.Operations, func(o shop.Operation) bool { return o.ID == "thread" })
	w := planned(t, "low-bench", s)
	if !slices.Contains(w.Unknown, "time for thread") {
		t.Errorf("unknown are %v", w.Unknown)
	}
}

func TestHandsAreSetUpsAndUnits(t *testing.T) {
	s := shop.Sample()
	for i, o := range s.Operations {
		if o.ID == "cut-pipe" {
			s.Operations[i].SetUpH, s.Operations[i].UnitH = 0.1, 0.05
		}
	}
	// By hand: the stand has 13 pipes of six lengths, 6 × 0.1 + 13 × 0.05 = 1.25 h.
	cut := step(t, planned(t, "stepped-stand", s), "Cut 13 pipes")
	if cut.Settings != 6 || cut.Units != 13 || cut.HandsH < 1.2499 || cut.HandsH > 1.2501 {
		t.Errorf("%d settings and %g cuts take %g h, want 6, 13 and 1.25 h", cut.Settings, cut.Units, cut.HandsH)
	}
}

func ExamplePlan() {
	s := shop.Sample()
	text, _ := piece.Starter("wall-shelf")
	doc, _ := piece.Read("wall-shelf.piece.yaml", text)
	r, _ := piece.Resolve(doc, s)
	list, _ := part.TakeOff(r, s)
	w, err := steps.Plan(r, list, nil, s)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, st := range w.Steps[len(w.Steps)-3:] {
		fmt.Println(st.Title)
	}
	// Output:
	// Screw 2 flanges to the wall, level: 8 screws
	// Lay shelf A1.1 in its place, on rails
	// Screw shelf A1.1 to its 2 straps: 4 screws
}
