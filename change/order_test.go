package change_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rodwright/change"
	"rodwright/journal"
	"rodwright/length"
)

// A desk is agreed at 27 in; before its legs are cut the client wants 30 in. Every part that depends on the height is
// listed: the four legs, 3 in longer, and nothing else; with a price, and the day on which the piece is ready then. By
// hand: the top is 1 1/8 in thick and the feet 1 in high, so each leg bridges 27 − 1 1/8 − 1 = 24 7/8 in before and
// 27 7/8 in after. The order waits: nothing of it is in the steps until the client says yes.
func TestAClientsChangeOfHeightListsEveryPartAPriceAndADayBeforeAnyCut(t *testing.T) {
	s := begin(t, strings.Replace(benchWith(""), "height: 18 in", "height: {is: 27 in, origin: client}", 1))
	now := s.now()
	order, w, err := change.Asked(now, "3 in higher, for a taller chair", edits("sizes/height", "30 in"), "2027-01-11")
	if err != nil {
		t.Fatal(err)
	}
	legs := 0
	for _, c := range w.Ripple.Cuts {
		if math.Abs(float64(c.To-c.From)-76.2) > 1e-6 || !strings.Contains(c.Name, "post") {
			t.Errorf("%+v", c)
		}
		legs += c.Count
	}
	if legs != 4 || len(w.Ripple.Parts.Added)+len(w.Ripple.Parts.Gone) != 0 {
		t.Errorf("%d legs, %+v", legs, w.Ripple.Parts)
	}
	if order.Cents == nil || *order.Cents != *w.Ripple.Money.To-*w.Ripple.Money.From || order.Ready <= "2027-01-11" {
		t.Errorf("%+v", order)
	}
	if !slices.Contains(w.Papers, "the list of parts") || !slices.Contains(w.Papers, "the quote") {
		t.Errorf("papers: %v", w.Papers)
	}

	order.No = 1
	s.write(journal.Entry{Kind: journal.Asked, Order: &order})
	if a, b := steps(t, now), steps(t, s.now()); a != b {
		t.Error("work of an order is in the steps before the yes")
	}
	s.write(journal.Entry{Kind: journal.Answer, Names: s.log.Entries[0].ID, Yes: true})
	if got := s.now().Build.Doc.Sizes; !slices.ContainsFunc(got, sizeIs("height", 30*length.Inch)) {
		t.Errorf("%+v", got)
	}
	if a, b := steps(t, now), steps(t, s.now()); a == b {
		t.Error("after the yes the steps are the old ones")
	}
}

// The same once the legs are cut and threaded: they are 3 in too short, and the price says so.
func TestAChangeOfHeightAfterTheLegsAreCutCostsMore(t *testing.T) {
	s := begin(t, strings.Replace(benchWith(""), "height: 18 in", "height: 27 in", 1))
	before := s.weigh("sizes/height", "30 in")
	s.say("made C1.1 thread", "made C1.2 thread", "made C2.1 thread", "made C2.2 thread")
	after := s.weigh("sizes/height", "30 in")
	if *after.Cost.Total <= *before.Cost.Total || len(after.Again) != 4 && after.Cost.Parts == 0 {
		t.Errorf("before %d, after %d: %+v", *before.Cost.Total, *after.Cost.Total, after.Again)
	}
}
