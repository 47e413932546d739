package journal_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"rodwright/journal"
)

// one folds the entries and returns the only thing they tell of.
func one(t *testing.T, es ...journal.Entry) journal.Thing {
	t.Helper()
	r := journal.Fold(es)
	if len(r.Things) != 1 {
		t.Fatalf("%d things, want 1", len(r.Things))
	}
	return r.Things[0]
}

func TestAPartKeepsItsIdentityThroughEverythingDoneToIt(t *testing.T) {
	sanded := again(1, "clean-pipe")
	sanded.Part, sanded.Place, sanded.Shape.Size[0] = "C3.4", "back left post 1", 25*inch // the plan has other tags by now
	got := one(t, told(1, "anna", pipe("C2.1", 26*inch)), told(2, "anna", sanded))
	want := journal.Thing{ID: id(1), Label: "C2.1", Place: "back left post 1", State: journal.Sanded, Works: []string{"cut-pipe", "clean-pipe"}, HandsH: 0.5, Since: 2, Shape: *sanded.Shape}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if r := journal.Fold([]journal.Entry{told(1, "anna", pipe("C2.1", 26*inch)), told(2, "anna", pipe("C2.1", 26*inch))}); len(r.Things) != 2 {
		t.Errorf("two pipes cut after one another are %d things", len(r.Things))
	}
}

func TestAPartIsAsFarAsTheFurthestWorkDoneToIt(t *testing.T) {
	es := []journal.Entry{told(1, "anna", pipe("C2.1", 26*inch))}
	for i, c := range []struct {
		work  string
		again bool
		want  journal.State
	}{
		{"thread", false, journal.Sized}, {"coat-pipe", false, journal.Coated}, {"deburr", false, journal.Coated},
		{"wrench", false, journal.Fitted}, {"clean-pipe", false, journal.Fitted},
		{"thread", true, journal.Coated}, // taken out of the piece, cut shorter and threaded again
		{"wrench", true, journal.Fitted}, {"thread", false, journal.Fitted},
	} {
		h := again(1, c.work)
		h.Again = c.again
		es = append(es, told(i+2, "anna", h))
		if got := one(t, es...); got.State != c.want {
			t.Errorf("after %s it is %v, want %v", c.work, got.State, c.want)
		}
	}
	// By hand: 9 facts of 0.25 h each, two of them again.
	got := one(t, es...)
	if got.HandsH != 2.25 || got.AgainH != 0.5 {
		t.Errorf("%v h, of them %v again; want 2.25 and 0.5", got.HandsH, got.AgainH)
	}
	if diff := cmp.Diff([]string{"cut-pipe", "thread", "coat-pipe", "deburr", "wrench", "clean-pipe"}, got.Works); diff != "" {
		t.Error(diff)
	}
}

func TestAPartThatGetsAnotherPlaceIsTakenOutOfItsOld(t *testing.T) {
	made, fitted := told(1, "anna", pipe("C2.1", 26*inch)), told(2, "anna", again(1, "wrench"))
	moved := again(1, "deburr")
	moved.Place = "back left post 1"
	for name, c := range map[string]struct {
		last  journal.Happened
		place string
		state journal.State
	}{
		"meant for another":     {meant(1, "back left post 1"), "back left post 1", journal.Coated},
		"meant for the rack":    {meant(1, ""), "", journal.Coated},
		"meant for where it is": {meant(1, "front left post 1"), "front left post 1", journal.Fitted},
		"worked for another":    {moved, "back left post 1", journal.Coated},
	} {
		got := one(t, made, fitted, told(3, "anna", c.last))
		if got.Place != c.place || got.State != c.state || got.Since != 3 || !got.Live() {
			t.Errorf("%s: for %q, %v, since %d", name, got.Place, got.State, got.Since)
		}
	}
}

func TestASpoiledPartCanNotBeUsedUntilThatIsWithdrawn(t *testing.T) {
	es := []journal.Entry{told(1, "anna", pipe("C2.1", 26*inch)), told(2, "anna", spoiled(1, "split")), withdrawn(3, "anna", 2)}
	if got := one(t, es[:2]...); got.Live() || got.Spoiled != "split" || got.Since != 2 || got.State != journal.BlankCut {
		t.Errorf("spoiled: %+v", got)
	}
	if got := one(t, es...); !got.Live() || got.Since != 1 {
		t.Errorf("withdrawn: %+v", got)
	}
}

func TestWhatWentWrongChangesWhatAPartIsLikeAndNotHowFarItIs(t *testing.T) {
	es := []journal.Entry{told(1, "anna", pipe("C2.1", 26*inch)), told(2, "anna", again(1, "thread")), told(3, "anna", wrong(1, 25*inch)), withdrawn(4, "anna", 3)}
	got := one(t, es[:3]...)
	if got.Shape.Size[0] != 25*inch || got.State != journal.Sized || !got.Live() || got.Since != 3 || got.HandsH != 0.5 || len(got.Works) != 2 {
		t.Errorf("cut too short: %+v", got)
	}
	if got = one(t, es...); got.Shape.Size[0] != 26*inch || got.Since != 2 {
		t.Errorf("withdrawn: %+v", got)
	}
	if r := journal.Fold([]journal.Entry{told(1, "anna", pipe("C2.1", 26*inch)), told(2, "anna", wrong(1, 25*inch)), withdrawn(3, "anna", 1)}); !r.Empty() {
		t.Errorf("what was never made went wrong: %+v", r.Things)
	}
}

func TestAWithdrawnFactCountsAsNeverWritten(t *testing.T) {
	es := []journal.Entry{told(1, "anna", pipe("C2.1", 26*inch)), told(2, "anna", again(1, "thread")), withdrawn(3, "anna", 1)}
	if got := one(t, es...); got.ID != id(1) || got.HandsH != 0.25 || got.State != journal.Sized {
		t.Errorf("the cut withdrawn: %+v", got)
	}
	es = append(es, withdrawn(4, "anna", 2))
	if r := journal.Fold(es); !r.Empty() || r.Last != 4 {
		t.Errorf("both withdrawn: %+v", r)
	}
	es = []journal.Entry{told(1, "anna", pipe("C2.1", 26*inch)), told(2, "anna", spoiled(1, "split")), withdrawn(3, "anna", 1)}
	if r := journal.Fold(es); !r.Empty() {
		t.Errorf("what was never made is spoiled: %+v", r.Things)
	}
}

func TestABoughtBoardHasLeftWhatTheCutsDidNotUse(t *testing.T) {
	cut := func(n int, from string, took journal.MM) journal.Entry {
		h := board("A1.1")
		h.From, h.Took = from, took
		return told(n, "anna", h)
	}
	left := func(es ...journal.Entry) (out []journal.MM) {
		for _, g := range journal.Fold(es).Goods {
			out = append(out, g.Left)
		}
		return out
	}
	p1, s1 := told(1, "anna", bought("P1")), told(2, "anna", stick("S1"))
	for name, c := range map[string]struct {
		got  []journal.MM
		want []journal.MM
	}{
		// By hand: 118 − 42 1/8 − 42 1/8 = 33 3/4 in.
		"two cuts of one board":    {left(p1, s1, cut(3, "P1", 42*inch+inch/8), cut(4, "P1", 42*inch+inch/8)), []journal.MM{33*inch + 3*inch/4, 21 * foot}},
		"one of them withdrawn":    {left(p1, s1, cut(3, "P1", 42*inch), cut(4, "P1", 42*inch), withdrawn(5, "anna", 3)), []journal.MM{76 * inch, 21 * foot}},
		"more than there is":       {left(p1, cut(2, "P1", 200*inch)), []journal.MM{0}},
		"of what nobody bought":    {left(p1, cut(2, "P9", 42*inch)), []journal.MM{118 * inch}},
		"told before the buying":   {left(cut(3, "P1", 42*inch), told(4, "anna", bought("P1"))), []journal.MM{76 * inch}},
		"of the later of a tag":    {left(p1, cut(2, "P1", 100*inch), told(3, "anna", bought("P1")), cut(4, "P1", 42*inch)), []journal.MM{18 * inch, 76 * inch}},
		"things sold by the piece": {left(told(1, "anna", tees(8)), cut(2, "P1", 42*inch)), []journal.MM{0}},
	} {
		if diff := cmp.Diff(c.want, c.got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
	if got := one(t, p1, cut(2, "P1", 42*inch)); got.Stock != "P1" {
		t.Errorf("cut from %q, want P1", got.Stock)
	}
}

func TestDistancesOrdersAndTheEndOfAPieceAreFolded(t *testing.T) {
	es := []journal.Entry{
		told(1, "anna", measured(24*inch)), asked(2, "cleo", wider), asked(3, "cleo", deeper), answered(4, "cleo", 2, true),
		answered(5, "cleo", 3, false), told(6, "anna", finished), told(7, "anna", journal.Happened{What: journal.Delivered}),
	}
	want := &journal.Record{
		Distances: []journal.Taken{{Distance: *measured(24 * inch).Distance, Number: 1}},
		Orders:    []journal.Asking{{Order: wider, ID: id(2), Number: 2, Answered: true, Yes: true}, {Order: deeper, ID: id(3), Number: 3, Answered: true}},
		Finished:  true, Delivered: true, Last: 7,
	}
	if diff := cmp.Diff(want, journal.Fold(es)); diff != "" {
		t.Error(diff)
	}
	for n := range es {
		if got := journal.Fold(append(es[:n+1:n+1], withdrawn(n+2, "anna", n+1))); n > 0 && len(got.Orders)+len(got.Distances) == 0 {
			t.Errorf("withdrawing entry %d takes away the others", n+1)
		}
	}
	if r := journal.Fold(nil); !r.Empty() || r.Last != 0 {
		t.Errorf("a log of nothing tells %+v", r)
	}
}

func TestTheLastAnswerThatStandsCounts(t *testing.T) {
	es := []journal.Entry{asked(1, "cleo", wider), answered(2, "cleo", 1, true), answered(3, "cleo", 1, false), withdrawn(4, "cleo", 3), withdrawn(5, "cleo", 2), withdrawn(6, "cleo", 1)}
	for upto, want := range []struct{ there, answered, yes bool }{{}, {true, false, false}, {true, true, true}, {true, true, false}, {true, true, true}, {true, false, false}, {}} {
		orders := journal.Fold(es[:upto]).Orders
		if (len(orders) == 1) != want.there || want.there && (orders[0].Answered != want.answered || orders[0].Yes != want.yes) {
			t.Errorf("after %d entries: %+v", upto, orders)
		}
	}
}

func TestWhatCantBeTellsNothing(t *testing.T) {
	lame := pipe("C2.1", 26*inch)
	lame.Shape = nil
	es := []journal.Entry{entryOf(1, journal.Fact), entryOf(2, journal.Asked), told(3, "anna", lame), told(4, "anna", journal.Happened{What: journal.Bought}), told(5, "anna", journal.Happened{What: journal.Measured}), answered(6, "anna", 2, true)}
	if r := journal.Fold(es); !r.Empty() {
		t.Errorf("%+v", r)
	}
	if _, ok := journal.Since([]byte(start), es, 0, "sizes/width"); ok {
		t.Error("an order of nothing changes a value")
	}
}

func TestAnAbsentRecordIsEmpty(t *testing.T) {
	var r *journal.Record
	if _, ok := r.Thing(id(1)); ok || !r.Empty() {
		t.Error("a record that is not there tells of something")
	}
	if got, ok := journal.Fold([]journal.Entry{told(1, "anna", pipe("C2.1", 26*inch))}).Thing(id(1)); !ok || got.Label != "C2.1" {
		t.Errorf("the pipe is not found by its id: %+v", got)
	}
}

func TestFoldingIsTheSameEachTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		es := happenings(t, []string{"sizes/width", "sizes/depth"})
		if diff := cmp.Diff(journal.Fold(es), journal.Fold(es)); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestWithdrawingAFactEqualsNeverHavingWrittenIt(t *testing.T) {
	numbers := cmp.Options{
		cmpopts.IgnoreFields(journal.Thing{}, "Since"), cmpopts.IgnoreFields(journal.Record{}, "Last"),
		cmpopts.IgnoreFields(journal.Taken{}, "Number"), cmpopts.IgnoreFields(journal.Asking{}, "Number"),
	}
	rapid.Check(t, func(t *rapid.T) {
		es := happenings(t, []string{"sizes/width", "sizes/depth"})
		var may []int
		for i, e := range es {
			if e.Kind == journal.Fact || e.Kind == journal.Asked || e.Kind == journal.Answer {
				may = append(may, i)
			}
		}
		if len(may) == 0 {
			return
		}
		k := rapid.SampledFrom(may).Draw(t, "withdrawn")
		gone := journal.Fold(append(es[:len(es):len(es)], withdrawn(len(es)+1, "anna", k+1)))
		var without []journal.Entry // neither it nor what is about it
		for _, e := range es {
			if e.ID != es[k].ID && e.Names != es[k].ID {
				without = append(without, e)
			}
		}
		if diff := cmp.Diff(journal.Fold(without), gone, numbers); diff != "" {
			t.Fatal(diff)
		}
	})
}
