package journal_test

import (
	"testing"

	"rodwright/journal"
	"rodwright/length"
)

func TestTheLogShowsEveryFactInASentence(t *testing.T) {
	cents := int64(3850)
	noted := finished
	noted.Why = "oiled once more"
	drawn := pipe("C2.1", 26*inch) // nobody measured it
	drawn.From, drawn.HandsH = "S1", 0
	for _, c := range []struct {
		fact journal.Happened
		want string
	}{
		{board("A1.1"), "made A1.1 size 42 × 18 1/4 × 1 in in 30 min"},
		{drawn, "made C2.1 cut-pipe from S1"},
		{journal.Happened{What: journal.Made, Work: "size"}, "made part size"},
		{measured(24*inch + 3*inch/32), "measured front left post to back left post 24 1/8 in"}, // 3/32 is a tie, to the even 2/16
		{bought("P1"), "bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1 1 rough edge for 38.50 EUR"},
		{*logs()[0][0].Fact, "bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1 1 rough edge for 38.50 EUR with 1 defect"},
		{goods(*tees(8).Goods, cents), "bought 8 × tee 1 for 38.50 EUR"},
		{wrong(1, 25*inch), "wrong C2.1: cut too short"},
		{spoiled(1, "split"), "spoiled C2.1 split"},
		{meant(1, "back left post 1"), "meant C2.1 for back left post 1"},
		{meant(1, ""), "meant C2.1 for the rack"},
		{noted, "finished (oiled once more)"},
		{journal.Happened{What: journal.Delivered}, "delivered"},
		{journal.Happened{What: journal.Bought}, "bought"},
		{journal.Happened{What: journal.Measured}, "measured"},
	} {
		if got := c.fact.Words(length.Sixteenth, "EUR"); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
	if got, want := board("A1.1").Words(length.WholeMM, "EUR"), "made A1.1 size 1067 × 464 × 25 mm in 30 min"; got != want { // 1066.8, 463.55 and 25.4 mm
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestTheLogShowsEveryEntryInALine(t *testing.T) {
	more, less := int64(12000), int64(-550)
	dearer, cheaper := wider, deeper
	dearer.Cents, cheaper.Cents = &more, &less
	height := edit(1, "anna", "sizes/height", "36 in")
	height.Old = "35 in"
	lost := withdrawn(11, "anna", 99)
	es := []journal.Entry{
		height, edit(2, "anna", "sizes/width", "15 in"), undo(3, "anna", 2), asked(4, "cleo", dearer), answered(5, "cleo", 4, true),
		asked(6, "cleo", cheaper), answered(7, "cleo", 6, false), told(8, "anna", tees(8)), withdrawn(9, "anna", 8), withdrawn(10, "cleo", 5), lost,
		withdrawn(12, "anna", 11), answered(13, "cleo", 1, true), undo(14, "anna", 99), edit(15, "anna", "sizes/height", ""), entryOf(16, journal.Fact), entryOf(17, journal.Accepted),
		withdrawn(18, "cleo", 4), accepted(19, "anna", 78.5, 72.128), accepted(20, "anna", 78.5, 78.5), withdrawn(21, "anna", 19),
	}
	for i, want := range []string{
		"sizes/height: 35 in → 36 in", "sizes/width: 15 in", "undo of entry 2",
		"change 1 asked: a little wider (sizes/width: 16 in), 120.00 EUR more, ready 2027-01-15", "yes to change 1",
		"change 2 asked (sizes/depth: 13 in; sizes/level: 19 in), 5.50 EUR less", "no to change 2", "bought 8 × tee 1",
		"withdrawn: entry 8, bought 8 × tee 1", "withdrawn: entry 5, yes to change 1", "withdrawn: an entry that is not here",
		"withdrawn: entry 11", "yes to entry 1", "undo of an entry that is not here", "sizes/height: nothing", "fact", "accepted",
		"withdrawn: entry 4, change 1 asked: a little wider (sizes/width: 16 in), 120.00 EUR more, ready 2027-01-15",
		"layout of pipe 3/4 accepted, cost 78.5, none costs less than 72.12", "layout of pipe 3/4 accepted, cost 78.5, none costs less",
		"withdrawn: entry 19, layout of pipe 3/4 accepted, cost 78.5, none costs less than 72.12",
	} {
		if got := journal.Words(es, i, length.Sixteenth, "EUR"); got != want {
			t.Errorf("entry %d: got  %s\nwant %s", i+1, got, want)
		}
	}
	for _, i := range []int{-1, len(es)} {
		if got := journal.Words(es, i, length.Sixteenth, "EUR"); got != "" {
			t.Errorf("no entry is told as %s", got)
		}
	}
}
