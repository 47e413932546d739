package change_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"rodwright/change"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/piece"
)

// steps are the titles of what is left to do.
func steps(t *testing.T, now *change.Truth) string {
	t.Helper()
	var out []string
	for _, s := range now.Build.Work.Steps {
		out = append(out, fmt.Sprint(s.Work, " ", s.Parts, s.Title))
	}
	return strings.Join(out, "\n")
}

func sizeIs(name string, want length.Length) func(piece.Size) bool {
	return func(s piece.Size) bool { return s.Name == name && s.Value == want }
}

func has(now *change.Truth, work, tag string) bool {
	for _, s := range now.Build.Work.Steps {
		if s.Work == work && slices.Contains(s.Parts, tag) {
			return true
		}
	}
	return false
}

// What is done leaves the steps, part by part; what it has cost stays in the price, which is that of the whole piece.
func TestWhatIsMadeLeavesTheStepsAndStaysInThePrice(t *testing.T) {
	s := begin(t, benchWith(""))
	drawn := s.now()
	s.say("made C1.1 cut-pipe", "made C1.1 thread", "made A1.1 size")
	now := s.now()
	if has(now, "cut-pipe", "C1.1") || has(now, "thread", "C1.1") || has(now, "size", "A1.1") || has(now, "glue", "A1.1") {
		t.Errorf("what is done is still to do:\n%s", steps(t, now))
	}
	if !has(now, "cut-pipe", "C1.2") || !has(now, "sand", "A1.1") || !has(now, "frame", "C1.1") && !has(now, "wrench", "C1.1") {
		t.Errorf("what is not done is left out:\n%s", steps(t, now))
	}
	if a, b := drawn.Build.Quote.Total, now.Build.Quote.Total; a != b {
		t.Errorf("the price was %v and is %v", a, b)
	}
	if now.Build.Work.HandsH >= drawn.Build.Work.HandsH {
		t.Errorf("%.2f h are left of %.2f", now.Build.Work.HandsH, drawn.Build.Work.HandsH)
	}
}

// A board and a stick that were bought need not be bought again; what is cut from them, and the tools, is told by tag.
func TestWhatIsBoughtIsLaidOutFirstAndNotBoughtAgain(t *testing.T) {
	s := begin(t, benchWith(""))
	before := money(t, s.now(), "pipe 3/4")
	s.say("bought stick 3/4 21 ft as S1 for 41", "bought 4 × flange 3/4 for 20")
	now := s.now()
	if before == 0 || money(t, now, "pipe 3/4") != 0 {
		t.Errorf("pipe to buy: %g before, %g after", before, money(t, now, "pipe 3/4"))
	}
	if n := money(t, now, "flange 3/4"); n != 0 {
		t.Errorf("%g flanges to buy", n)
	}
	for _, p := range now.Build.Parts.Parts {
		if p.Kind == "pipe" && p.State(0) != journal.InHand {
			t.Errorf("%s is %s", p.Tag, p.State(0))
		}
	}
}

// money is how many are to be bought of what begins so.
func money(t *testing.T, now *change.Truth, item string) (n float64) {
	t.Helper()
	for _, l := range now.Build.Buy.Lines {
		if strings.HasPrefix(l.Item, item) {
			n += l.Count
		}
	}
	return n
}

// Made to another size than drawn a part is what it is: the board planed to 1 in instead of 1 1/8 in is lighter by a
// ninth, and no screw longer than it may be is driven into it.
func TestAMeasuredSizeReplacesTheDrawnOneInWeightAndScrews(t *testing.T) {
	s := begin(t, benchWith(""))
	drawn := s.now().Build.Parts
	s.say("made A1.1 size 48 × 12 × 1 in")
	now := s.now().Build
	if ratio := now.Parts.Totals.WoodKg / drawn.Totals.WoodKg; math.Abs(ratio-8.0/9) > 1e-6 {
		t.Errorf("wood weighs %.5f of the drawn", ratio)
	}
	for _, f := range now.Parts.Fasteners {
		if f.Fits && f.Length-f.Grip > length.Inch-now.Shop.Settings.ScrewAllowance {
			t.Errorf("a screw of %s bites %s into 1 in", length.SixtyFourth.Text(f.Length), length.SixtyFourth.Text(f.Length-f.Grip))
		}
	}
}

// Every part passes through its states, and what is finished or delivered has nothing left to do but that.
func TestAFinishedPieceIsOnlyToBeDelivered(t *testing.T) {
	s := begin(t, benchWith("")).say("made A1.1 finished", "finished")
	for _, st := range s.now().Build.Work.Steps {
		if st.Work != "deliver" && st.Work != "cure" {
			t.Errorf("still to do: %s", st.Title)
		}
	}
	if n := len(s.say("delivered").now().Build.Work.Steps); n != 0 {
		t.Errorf("%d steps are left", n)
	}
}
