package journal_test

import (
	"testing"

	"rodwright/journal"
)

func TestAValueHasChangedSinceWhenItWasEditedOrTakenBack(t *testing.T) {
	es := []journal.Entry{
		edit(1, "anna", "sizes/width", "15 in"), edit(2, "ben", "sizes/depth", "13 in"), undo(3, "anna", 1),
	}
	for _, c := range []struct {
		base int64
		path string
		want int64 // 0: as it was
	}{{0, "sizes/width", 3}, {2, "sizes/width", 3}, {3, "sizes/width", 0}, {1, "sizes/depth", 2}, {2, "sizes/depth", 0}} {
		if e, ok := journal.Since([]byte(start), es, c.base, c.path); e.Number != c.want || ok != (c.want > 0) {
			t.Errorf("%s since %d: entry %d, want %d", c.path, c.base, e.Number, c.want)
		}
	}
}

func TestTwoPathsOfOneValueAreKnownAsOne(t *testing.T) {
	text := []byte("sizes:\n  width: {is: 14 in, from: client}\nholds:\n  - {name: trays, count: 3}\n  - {name: cans, count: 2}\n")
	for _, c := range []struct {
		edited, asked string
		want          bool
	}{
		{"holds/1/count", "holds/trays/count", true},
		{"holds/trays/count", "holds/1/count", true},
		{"holds/2/count", "holds/trays/count", false},
		{"sizes/width", "sizes/width/is", true},
		{"sizes/width/from", "sizes/width", false},
		{"holds/gone/count", "holds/gone/count", true}, // compared as text once it leads nowhere
		{"holds/gone/count", "holds/trays/count", false},
	} {
		es := []journal.Entry{edit(1, "anna", c.edited, "4")}
		if _, ok := journal.Since(text, es, 0, c.asked); ok != c.want {
			t.Errorf("%s after an edit of %s: changed %v", c.asked, c.edited, ok)
		}
	}
}

func TestAnEditIsWrittenOverWhileALaterOneOfItsValueStands(t *testing.T) {
	es := []journal.Entry{
		edit(1, "anna", "sizes/width", "15 in"), edit(2, "ben", "sizes/width", "16 in"),
		edit(3, "ben", "sizes/depth", "13 in"), undo(4, "ben", 2),
	}
	for upto, want := range map[int]int64{1: 0, 2: 2, 3: 2, 4: 0} {
		if e, ok := journal.Over([]byte(start), es[:upto], es[0]); e.Number != want || ok != (want > 0) {
			t.Errorf("after entry %d: written over by %d, want %d", upto, e.Number, want)
		}
	}
}
