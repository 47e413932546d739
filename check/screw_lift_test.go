package check

import (
	"strings"
	"testing"

	"rodwright/finding"
)

// By hand: the top lifts all but itself; its four flanges stand at the corners of a rectangle with the frame in their
// middle, so that each of the four screws of a flange bears a sixteenth.
func TestATopThatIsLiftedPullsAtEveryScrewAlike(t *testing.T) {
	p := derive(t, table)
	f := only(t, Screw(p), "lifted by top")
	verdict(t, f, finding.Stands)
	rest := 0.0
	for _, b := range p.bodies(p.standing[0])[1:] {
		rest += b.Kg
	}
	near(t, "pull", f.Figure.Value, rest*9.80665/16, 1e-6)
}

// The pull to design for is the National Design Specification's, 2850·G²·D·L.
func TestTheLimitIsTheDesignValueNotWhatDrawsItOut(t *testing.T) {
	f := only(t, Screw(derive(t, table)), "lifted by top")
	draws := because(t, f, "pull that draws it out")
	near(t, "ultimate ÷ design", draws.Value/f.Limit.Value, 15700.0/2850, 1e-9)
}

func TestMoreSteelNeverPullsLess(t *testing.T) {
	last := 0.0
	for _, level := range []string{"20 in", "29 in", "40 in", "60 in"} {
		f := only(t, Screw(derive(t, table, "level: 29 in", "level: "+level)), "lifted by top")
		if f.Figure.Value < last {
			t.Errorf("at %s the pull is %v N, lower down %v", level, f.Figure.Value, last)
		}
		last = f.Figure.Value
	}
}

func TestAHeadThatSlipsThroughItsHoleWantsAWasher(t *testing.T) {
	p := derive(t, table, "feet: caps", "feet: caps\njoints: {flange: {screw: 10 × 1 in, hole: 1/2 in}}")
	f := only(t, Screw(p), "into top")
	verdict(t, f, finding.Tight)
	says(t, f.Mend, "washer wider than 1/2 in")
	slotted := derive(t, table, "feet: caps", "feet: caps\njoints: {flange: {screw: 10 × 1 in, hole: 1/2 in, slotted: yes}}")
	verdict(t, only(t, Screw(slotted), "into top"), finding.Stands)
}

// Wood Handbook ch. 8, from memory: 90 % of the root in hardwood; No. 10: 0.152 in. The bit stops where the point does.
func TestThePilotAndItsStopAreTold(t *testing.T) {
	f := only(t, Screw(derive(t, table, "feet: caps", "feet: caps\njoints: {flange: {screw: 10 × 1 in}}")), "into top")
	near(t, "pilot", because(t, f, "pilot").Value/25.4, 0.9*0.152, 1e-6)
	near(t, "stop", because(t, f, "depth of the pilot").Value, because(t, f, "bite in the wood").Value, 0)
}

func TestWhatScrewsHoldInASheetIsNotKnown(t *testing.T) {
	f := only(t, Screw(derive(t, table, "thickness: 1 1/8 in", "sheet: birch-plywood-18")), "lifted by top")
	verdict(t, f, finding.Unknown)
	says(t, f.Missing, "birch-plywood-18")
}

func TestSetsInOneLineBearTwiceTheirShare(t *testing.T) {
	h := hung{kg: 10}
	for x := range 4 {
		h.sets = append(h.sets, hanger{screwSet{at: [2]float64{float64(100 * x), 1e-9 * float64(x%2)}}, 0})
	}
	near(t, "worst set", h.worstSet(), 5, 1e-9)
}

func TestAPieceOnAWallIsNotLiftedByItsShelf(t *testing.T) {
	for _, f := range Screw(derive(t, wallShelf)) {
		if strings.HasPrefix(f.Place, "lifted") {
			t.Error(told([]finding.Finding{f}))
		}
	}
}
