package journal_test

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/journal"
	"rodwright/piece"
)

func TestAYesPutsTheValuesInAtItsPlace(t *testing.T) {
	order, before, after := asked(1, "cleo", wider), edit(2, "anna", "sizes/width", "15 in"), edit(4, "anna", "sizes/width", "17 in")
	for name, c := range map[string]struct {
		es   []journal.Entry
		want string
	}{
		"asked and not answered":  {[]journal.Entry{order}, "14 in"},
		"said no to":              {[]journal.Entry{order, answered(2, "cleo", 1, false)}, "14 in"},
		"said yes to":             {[]journal.Entry{order, answered(2, "cleo", 1, true)}, "16 in"},
		"over an earlier edit":    {[]journal.Entry{order, before, answered(3, "cleo", 1, true)}, "16 in"},
		"under a later edit":      {[]journal.Entry{order, before, answered(3, "cleo", 1, true), after}, "17 in"},
		"the yes withdrawn":       {[]journal.Entry{order, before, answered(3, "cleo", 1, true), withdrawn(4, "cleo", 3)}, "15 in"},
		"the order withdrawn":     {[]journal.Entry{order, before, answered(3, "cleo", 1, true), withdrawn(4, "cleo", 1)}, "15 in"},
		"a no after the yes":      {[]journal.Entry{order, answered(2, "cleo", 1, true), answered(3, "cleo", 1, false)}, "14 in"},
		"a yes after the no":      {[]journal.Entry{order, answered(2, "cleo", 1, false), answered(3, "cleo", 1, true)}, "16 in"},
		"a no that is withdrawn":  {[]journal.Entry{order, answered(2, "cleo", 1, true), answered(3, "cleo", 1, false), withdrawn(4, "cleo", 3)}, "16 in"},
		"facts change no value":   {[]journal.Entry{told(1, "anna", board("A1.1")), told(2, "anna", finished)}, "14 in"},
		"a yes after a withdrawn": {[]journal.Entry{order, withdrawn(2, "cleo", 1), answered(3, "cleo", 1, true)}, "14 in"},
	} {
		want := strings.Replace(start, "14 in", c.want, 1)
		if got := replay(t, c.es...); got != want {
			t.Errorf("%s: got\n%s\nwant\n%s", name, got, want)
		}
	}
	both := replay(t, asked(1, "cleo", deeper), answered(2, "cleo", 1, true))
	if want := strings.Replace(strings.Replace(start, "12 in", "13 in", 1), "width + 4 in", "19 in", 1); both != want {
		t.Errorf("got\n%s\nwant\n%s", both, want)
	}
}

func TestAnOrderOfWhatIsNotThereIsNamedByItsAnswer(t *testing.T) {
	o := journal.Order{No: 1, Edits: []journal.Put{{Path: "sizes/width", New: "16 in"}, {Path: "sizes/height", New: "3 in"}}}
	if got := replay(t, asked(1, "cleo", o)); got != start {
		t.Errorf("an order that nobody said yes to gives\n%s", got)
	}
	_, err := journal.Replay([]byte(start), []journal.Entry{asked(1, "cleo", o), answered(2, "cleo", 1, true)})
	if err == nil || !strings.HasPrefix(err.Error(), "entry 2: ") {
		t.Errorf("%v", err)
	}
}

func TestAValueHasChangedSinceWhenAYesPutItInOrItWasTakenOut(t *testing.T) {
	es := []journal.Entry{
		asked(1, "cleo", wider), asked(2, "cleo", deeper), withdrawn(3, "cleo", 2), answered(4, "cleo", 1, false),
		answered(5, "cleo", 1, true), withdrawn(6, "cleo", 4), answered(7, "cleo", 1, false), withdrawn(8, "cleo", 7), withdrawn(9, "cleo", 1),
	}
	for upto, want := range []int64{0, 0, 0, 0, 0, 5, 5, 7, 8, 9} {
		if e, ok := journal.Since([]byte(start), es[:upto], 0, "sizes/width"); e.Number != want || ok != (want > 0) {
			t.Errorf("after entry %d: changed by %d, want %d", upto, e.Number, want)
		}
	}
	if e, ok := journal.Since([]byte(start), es, 0, "sizes/depth"); ok {
		t.Errorf("an order without a yes changed a value by entry %d", e.Number)
	}
}

func TestAnEditIsWrittenOverByAYes(t *testing.T) {
	es := []journal.Entry{
		edit(1, "anna", "sizes/width", "15 in"), asked(2, "cleo", wider), answered(3, "cleo", 2, true), withdrawn(4, "cleo", 3),
	}
	for upto, want := range []int64{0, 0, 0, 3, 0} {
		if e, ok := journal.Over([]byte(start), es[:upto], es[0]); e.Number != want || ok != (want > 0) {
			t.Errorf("after entry %d: written over by %d, want %d", upto, e.Number, want)
		}
	}
}

func TestOrdersThatCantBeAreRefused(t *testing.T) {
	cents := func(n int64) *int64 { return &n }
	long := strings.Repeat("9", journal.MostValue)
	for _, c := range []struct {
		field string
		spoil func(*journal.Order)
	}{
		{"order.no", func(o *journal.Order) { o.No = 0 }},
		{"order.words", func(o *journal.Order) { o.Words = "wider\nand higher" }},
		{"order.words", func(o *journal.Order) { o.Words = long + "9" }},
		{"order.edits", func(o *journal.Order) { o.Edits = nil }},
		{"order.edits", func(o *journal.Order) { o.Edits = make([]journal.Put, 501) }},
		{"order.edits", func(o *journal.Order) { o.Edits[0].Path = " " }},
		{"order.edits", func(o *journal.Order) { o.Edits[0].New = "16 in\nlevel: 3 in" }},
		{"order.edits", func(o *journal.Order) { // 5 × 10 001 letters, and 40 000 at most
			for range 4 {
				o.Edits = append(o.Edits, journal.Put{Path: "p", New: long})
			}
			o.Edits[0] = o.Edits[1]
		}},
		{"order.cents", func(o *journal.Order) { o.Cents = cents(100_000_000_01) }},
		{"order.cents", func(o *journal.Order) { o.Cents = cents(-100_000_000_01) }},
		{"order.ready", func(o *journal.Order) { o.Ready = "15.1.2027" }},
		{"order.ready", func(o *journal.Order) { o.Ready = "2027-02-30" }},
	} {
		e := asked(1, "cleo", journal.Order{No: 1, Edits: []journal.Put{{Path: "sizes/width", New: "16 in"}}, Cents: cents(-500), Ready: "2027-01-15"})
		if err := e.Check(); err != nil {
			t.Fatal(err)
		}
		c.spoil(e.Order)
		refused(t, e, c.field)
	}
}

func TestAYesIsEachEditOfItsOrderInItsPlaceWithTheSameBytesEachTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, paths := starter(t)
		es := happenings(t, paths)
		first, err := journal.Replay(text, es)
		if err != nil {
			t.Fatal(err)
		}
		want, stands, orders := text, journal.Standing(es), map[string]*journal.Order{}
		for i, e := range es {
			var puts []journal.Put
			switch {
			case e.Kind == journal.Asked:
				orders[e.ID] = e.Order
			case e.Kind == journal.Edit && stands[i]:
				puts = []journal.Put{{Path: e.Path, New: e.New}}
			case e.Kind == journal.Answer && stands[i] && e.Yes:
				puts = orders[e.Names].Edits
			}
			for _, p := range puts {
				if want, err = piece.Edit(want, p.Path, p.New); err != nil {
					t.Fatal(err)
				}
			}
		}
		again, err := journal.Replay(text, es)
		if err != nil || !bytes.Equal(first, want) || !bytes.Equal(first, again) {
			t.Fatalf("replayed:\n%s\nedited:\n%s\n%v", first, want, err)
		}
	})
}

func TestTheDocumentHoldsTheOrdersThatTheRecordSaysYesTo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		es := happenings(t, []string{"sizes/width"})
		yes := map[string]bool{}
		for _, o := range journal.Fold(es).Orders {
			yes[o.ID] = o.Yes
		}
		put := map[string]bool{}
		for i, stands := range journal.Standing(es) {
			if e := es[i]; stands && e.Kind == journal.Answer && e.Yes {
				if put[e.Names] || !yes[e.Names] {
					t.Fatalf("entry %d puts in an order that has no yes, or has it twice", e.Number)
				}
				put[e.Names] = true
			}
		}
		for id, said := range yes {
			if said != put[id] {
				t.Fatalf("order %s: yes %v, put in %v", id, said, put[id])
			}
		}
	})
}

func TestWithdrawingAYesEqualsNeverHavingSaidIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, paths := starter(t)
		es := happenings(t, paths)
		for k, e := range es {
			if e.Kind != journal.Answer {
				continue
			}
			gone, err := journal.Replay(text, append(es[:len(es):len(es)], withdrawn(len(es)+1, "anna", k+1)))
			if err != nil {
				t.Fatal(err)
			}
			var without []journal.Entry
			for _, o := range es {
				if o.ID != e.ID && o.Names != e.ID {
					without = append(without, o)
				}
			}
			never, err := journal.Replay(text, without)
			if err != nil || !bytes.Equal(gone, never) {
				t.Fatalf("withdrawn:\n%s\nnever said:\n%s\n%v", gone, never, err)
			}
		}
	})
}
