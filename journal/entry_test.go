package journal_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"rodwright/journal"
)

// id makes up a UUID of version 7 that differs by n.
func id(n int) string { return fmt.Sprintf("01890000-0000-7000-8000-%012x", n) }

func entry(n int, actor string) journal.Entry {
	return journal.Entry{Number: int64(n), ID: id(n), Actor: actor, Base: int64(n - 1),
		At: time.Date(2026, 5, 4, 9, n%60, 0, 0, time.UTC)}
}

func edit(n int, actor, path, value string) journal.Entry {
	e := entry(n, actor)
	e.Kind, e.Path, e.New = journal.Edit, path, value
	return e
}

func undo(n int, actor string, names int) journal.Entry {
	e := entry(n, actor)
	e.Kind, e.Names = journal.Undo, id(names)
	return e
}

func TestEntriesThatCantBeAreRefused(t *testing.T) {
	type spoil func(*journal.Entry)
	for _, c := range []struct {
		field string
		of    journal.Entry
		spoil spoil
	}{
		{"id", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.ID = "7" }},
		{"id", edit(171, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.ID = strings.ToUpper(e.ID) }},
		{"actor", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Actor = " " }},
		{"actor", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Actor = "anna\nben" }},
		{"number", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Number = 0 }},
		{"base", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Base = 2 }},
		{"at", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.At = e.At.Add(time.Microsecond) }},
		{"at", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.At = e.At.In(time.FixedZone("", 3600)) }},
		{"at", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.At = time.Time{} }},
		{"at", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.At = e.At.AddDate(9000, 0, 0) }},
		{"kind", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Kind = "wish" }},
		{"path", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Kind = journal.Accepted }},
		{"layout", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Layout = accepted(2, "anna", 96, 90).Layout }},
		{"layout", accepted(2, "anna", 96, 90), func(e *journal.Entry) { e.Layout = nil }},
		{"names", accepted(2, "anna", 96, 90), func(e *journal.Entry) { e.Names = id(1) }},
		{"path", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Kind = journal.Fact }},
		{"path", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Path = "" }},
		{"names", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Names = id(1) }},
		{"new", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.New = strings.Repeat("9", journal.MostValue+1) }},
		{"new", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.New = "15 in\nlevel: 3 in" }},
		{"new", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.New = "15 \xff" }},
		{"old", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Old = "14 \xff" }},
		{"names", undo(3, "anna", 2), func(e *journal.Entry) { e.Names = "" }},
		{"names", undo(3, "anna", 171), func(e *journal.Entry) { e.Names = strings.ToUpper(e.Names) }},
		{"names", undo(3, "anna", 2), func(e *journal.Entry) { e.Names = e.ID }},
		{"path", undo(3, "anna", 2), func(e *journal.Entry) { e.New = "15 in" }},
		{"yes", undo(3, "anna", 2), func(e *journal.Entry) { e.Yes = true }},
		{"fact", undo(3, "anna", 2), func(e *journal.Entry) { e.Fact = &journal.Happened{What: journal.Finished} }},
		{"order", edit(2, "anna", "sizes/width", "15 in"), func(e *journal.Entry) { e.Order = &journal.Order{No: 1} }},
		{"fact", told(2, "anna", finished), func(e *journal.Entry) { e.Fact = nil }},
		{"names", told(2, "anna", finished), func(e *journal.Entry) { e.Names = id(1) }},
		{"path", told(2, "anna", finished), func(e *journal.Entry) { e.Path = "sizes/width" }},
		{"fact.what", told(2, "anna", finished), func(e *journal.Entry) { e.Fact = &journal.Happened{What: "dreamt"} }},
		{"order", asked(2, "cleo", wider), func(e *journal.Entry) { e.Order = nil }},
		{"names", asked(2, "cleo", wider), func(e *journal.Entry) { e.Names = id(1) }},
		{"names", answered(3, "cleo", 2, true), func(e *journal.Entry) { e.Names = "2" }},
		{"order", answered(3, "cleo", 2, true), func(e *journal.Entry) { e.Order = &journal.Order{No: 1} }},
		{"names", withdrawn(3, "cleo", 2), func(e *journal.Entry) { e.Names = "" }},
		{"yes", withdrawn(3, "cleo", 2), func(e *journal.Entry) { e.Yes = true }},
	} {
		if err := c.of.Check(); err != nil {
			t.Fatalf("before it was spoilt: %v", err)
		}
		c.spoil(&c.of)
		var bad *journal.EntryError
		if err := c.of.Check(); !errors.As(err, &bad) || bad.Field != c.field {
			t.Errorf("%s: %v", c.field, err)
		}
	}
}

func TestAKindThatIsNotKnownIsRefusedWithThoseThereAre(t *testing.T) {
	e := entry(1, "anna")
	e.Kind = "wish"
	if err := e.Check(); err == nil || !strings.Contains(err.Error(), "edit, undo, fact, asked, answer, withdrawn or accepted") {
		t.Error(err)
	}
}

func TestTheGreatestSizesCountLettersNotBytes(t *testing.T) {
	e := edit(1, strings.Repeat("ä", journal.MostActor), strings.Repeat("ö", journal.MostPath), strings.Repeat("ü", journal.MostValue))
	if err := e.Check(); err != nil {
		t.Error(err)
	}
}

func TestARepeatSaysTheSameWhoeverNumberedIt(t *testing.T) {
	first, again := edit(2, "anna", "sizes/width", "15 in"), edit(2, "anna", "sizes/width", "15 in")
	first.Number, first.Old, first.At = 9, "14 in", first.At.Add(time.Hour)
	if !again.Same(first) {
		t.Error("a repeat is taken for another entry")
	}
	if again.New = "16 in"; again.Same(first) {
		t.Error("another value is taken for a repeat")
	}
}

func TestARepeatOfAFactOrAnOrderIsKnownByWhatItTells(t *testing.T) {
	same := func(a, b journal.Entry) bool { return a.Same(b) && b.Same(a) }
	first, again := told(2, "anna", board("A1.1")), told(2, "anna", board("A1.1"))
	again.Fact.Shape.Openings, again.Fact.Shape.Profiles = []journal.Opening{}, []journal.Profile{} // as a page may send it
	if !same(first, again) {
		t.Error("a list without anything in it makes a repeat another fact")
	}
	if again.Fact.Shape.Size[0]++; same(first, again) {
		t.Error("a board one nanometre longer is taken for a repeat")
	}
	if !same(asked(2, "cleo", wider), asked(2, "cleo", wider)) || same(asked(2, "cleo", wider), asked(2, "cleo", deeper)) {
		t.Error("orders are not known by their values")
	}
	if same(answered(3, "cleo", 2, true), answered(3, "cleo", 2, false)) {
		t.Error("a no is taken for a repeat of a yes")
	}
}
