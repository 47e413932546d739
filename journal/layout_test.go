package journal_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rodwright/journal"
)

func TestAnAcceptedLayoutThatCantBeIsRefused(t *testing.T) {
	answer := func(text string) func(*journal.Layout) {
		return func(l *journal.Layout) { l.Answer = json.RawMessage(text) }
	}
	for _, c := range []struct {
		field string
		spoil func(*journal.Layout)
	}{
		{"layout.kind", func(l *journal.Layout) { l.Kind = "rod" }},
		{"layout.material", func(l *journal.Layout) { l.Material = " " }},
		{"layout.material", func(l *journal.Layout) { l.Material = "3/4\n1" }},
		{"layout.key", func(l *journal.Layout) { l.Key = l.Key[1:] }},
		{"layout.key", func(l *journal.Layout) { l.Key = strings.Replace(l.Key, "0", "A", 1) }},
		{"layout.bound", func(l *journal.Layout) { l.Bound = 79 }}, // above the cost of 78
		{"layout.bound", func(l *journal.Layout) { l.Bound = -1 }},
		{"layout.answer", func(l *journal.Layout) { l.Cost = 77 }}, // the layout says 78
		{"layout.answer", func(l *journal.Layout) { l.Bound = 71 }},
		{"layout.answer", answer(``)},
		{"layout.answer", answer(`null`)},
		{"layout.answer", answer(`[78]`)},
		{"layout.answer", answer(`{"unit":"mm","cost":78,"bound":72}`)},
		{"layout.answer", answer(`{"unit":"in","cost":78,"bound":72,"used":[]}`)},
		{"layout.answer", answer(fmt.Sprintf(`{"unit":"mm","cost":78,"bound":72,"used":[],"stock":%q}`, strings.Repeat("x", journal.MostLayout)))},
	} {
		e := accepted(1, "anna", 78, 72)
		if err := e.Check(); err != nil {
			t.Fatal(err)
		}
		c.spoil(e.Layout)
		var bad *journal.EntryError
		if err := e.Check(); !errors.As(err, &bad) || bad.Field != c.field {
			t.Errorf("%s: %v", c.field, err)
		}
	}
}

func TestTheLongestLayoutIsReadBack(t *testing.T) {
	e := accepted(1, "anna", 78, 72)
	long := strings.Repeat("<", (journal.MostLayout-200)/6) // each is written as six letters
	e.Layout.Answer = json.RawMessage(`{"unit":"mm","cost":78,"bound":72,"used":[{"stock":"` + long + `"}]}`)
	es, err := journal.Read(strings.NewReader(file(t, e)))
	if err != nil || len(es) != 1 || !es[0].Same(e) {
		t.Errorf("%d entries, %v", len(es), err)
	}
}

func TestALayoutIsTheSameHoweverItIsSpaced(t *testing.T) {
	e, spaced := accepted(1, "anna", 78, 72), accepted(1, "anna", 78, 72)
	spaced.Layout.Answer = json.RawMessage("{ \"unit\": \"mm\",\n \"cost\": 78, \"bound\": 72, \"used\": [{\"stock\":\"S1\",\"parts\":[]}] }")
	if !e.Same(spaced) {
		t.Error("white space makes a repeat another layout")
	}
	if !e.Same(accepted(1, "anna", 78, 72)) || e.Same(accepted(1, "anna", 79, 72)) || e.Same(edit(1, "anna", "sizes/width", "15 in")) {
		t.Error("layouts are not known by what they say")
	}
}

func TestOfLayoutsOfOneProblemTheLastThatStandsCounts(t *testing.T) {
	es := []journal.Entry{accepted(1, "anna", 78, 72), accepted(2, "ben", 90, 80), accepted(3, "ben", 76, 72), withdrawn(4, "anna", 3)}
	costs := func(es []journal.Entry) (out []float64) {
		r := journal.Fold(es)
		if !r.Empty() {
			t.Error("a layout that was accepted is something done")
		}
		for _, l := range r.Layouts {
			out = append(out, l.Cost)
		}
		return out
	}
	for n, want := range [][]float64{nil, {78}, {78, 90}, {90, 76}, {78, 90}} {
		if diff := cmp.Diff(want, costs(es[:n])); diff != "" {
			t.Errorf("after entry %d: %s", n, diff)
		}
	}
	last := journal.Fold(es[:3]).Layouts[1]
	if last.Number != 3 || last.ID != id(3) || last.Actor != "ben" || !last.At.Equal(es[2].At) {
		t.Errorf("%+v", last)
	}
}
