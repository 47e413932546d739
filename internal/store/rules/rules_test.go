package rules

import (
	"errors"
	"fmt"
	"testing"

	"rodwright/journal"
)

// id returns the id of the entry with the given number.
func id(n int) string { return fmt.Sprintf("01890000-0000-7000-8000-%012d", n) }

func entry(n int, e journal.Entry) journal.Entry {
	e.Number, e.ID, e.Actor = int64(n), id(n), "anna"
	return e
}

// told is a log with one entry of each kind: an edit and its undo, a fact withdrawn, one that stands, an order
// withdrawn, one with a yes and one without an answer, an accepted layout.
func told() []journal.Entry {
	order := func(no int) *journal.Order {
		return &journal.Order{No: no, Edits: []journal.Put{{Path: "sizes/length", New: "40 in"}}}
	}
	size := &journal.Happened{
		What: journal.Made, Place: "board", Work: "size",
		Shape: &journal.Shape{Kind: journal.KindPanel, Material: "white-oak", Size: [3]journal.MM{1e9, 5e8, 25e6}},
	}
	return []journal.Entry{
		entry(1, journal.Entry{Kind: journal.Edit, Path: "sizes/length", New: "41 in"}),
		entry(2, journal.Entry{Kind: journal.Undo, Names: id(1)}),
		entry(3, journal.Entry{Kind: journal.Fact, Fact: size}),
		entry(4, journal.Entry{Kind: journal.Withdrawn, Names: id(3)}),
		entry(5, journal.Entry{Kind: journal.Fact, Fact: size}),
		entry(6, journal.Entry{Kind: journal.Asked, Order: order(1)}),
		entry(7, journal.Entry{Kind: journal.Withdrawn, Names: id(6)}),
		entry(8, journal.Entry{Kind: journal.Asked, Order: order(2)}),
		entry(9, journal.Entry{Kind: journal.Answer, Names: id(8), Yes: true}),
		entry(10, journal.Entry{Kind: journal.Asked, Order: order(3)}),
		entry(11, journal.Entry{Kind: journal.Accepted, Layout: &journal.Layout{}}),
	}
}

func TestAnEntryIsAboutWhatStands(t *testing.T) {
	may := map[journal.Kind][]int{journal.Undo: {2}, journal.Answer: {10}, journal.Withdrawn: {5, 8, 9, 10, 11}}
	for kind, these := range may {
		for n := 1; n <= 12; n++ {
			want := false
			for _, m := range these {
				want = want || m == n
			}
			err := Check(told(), entry(12, journal.Entry{Kind: kind, Names: id(n)}))
			var bad *journal.EntryError
			if want != (err == nil) || err != nil && (!errors.As(err, &bad) || bad.Field != "names") {
				t.Errorf("%s of entry %d: %v", kind, n, err)
			}
		}
	}
}

func TestAThingIsOneThatWasMade(t *testing.T) {
	for n := 1; n <= 12; n++ {
		err := Check(told(), entry(12, journal.Entry{Kind: journal.Fact, Fact: &journal.Happened{What: journal.Meant, Thing: id(n)}}))
		if (err == nil) != (n == 5) {
			t.Errorf("of entry %d: %v", n, err)
		}
	}
}

func TestAWithdrawnOrderKeepsItsNumber(t *testing.T) {
	if no := NextOrder(told()[:7]); no != 2 {
		t.Errorf("after one that was withdrawn comes %d", no)
	}
	if no := NextOrder(nil); no != 1 {
		t.Errorf("the first is %d", no)
	}
}

func TestAYesIsFoundByItselfAndByWhatItAnswers(t *testing.T) {
	for n := 1; n <= 12; n++ {
		yes, order, ok := Yes(told(), id(n))
		if want := n == 8 || n == 9; ok != want || ok && (yes.Number != 9 || order.No != 2) {
			t.Errorf("of entry %d: %+v, %t", n, yes, ok)
		}
	}
}
