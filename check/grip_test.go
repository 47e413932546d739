package check

import (
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

func TestAPanelBroaderThanArmsReachHasNoGripButHandHoles(t *testing.T) {
	verdict(t, only(t, Grip(derive(t, table)), "as a part"), finding.Stands)
	wide := derive(t, table)
	wide.Panels[0].Max.X, wide.Panels[0].Max.Y = 2*length.Metre, 1300*length.Millimetre
	f := only(t, Grip(wide), "as a part")
	verdict(t, f, finding.Tight)
	says(t, f.Mend, "slings", "hand holes")
	hand := piece.Feature{Max: [2]length.Length{120 * length.Millimetre, 40 * length.Millimetre}, Stick: -1}
	wide.Panels[0].Features = []piece.Feature{hand, hand}
	for _, f := range Grip(wide) {
		if strings.Contains(f.Place, "as a part") {
			t.Errorf("hands go through: %s", told([]finding.Finding{f}))
		}
	}
}

func TestAPieceIsLiftedByRailsAndHeldPanelsNotByLooseOnes(t *testing.T) {
	p := derive(t, table)
	f := only(t, Grip(p), "where it is lifted") // its top at 29 in is screwed to flanges, its rails at 6 in are below knuckles
	near(t, "holds", f.Figure.Value, 2, 0)
	verdict(t, f, finding.Stands)
	p.Panels[0].Fixed = false
	f = only(t, Grip(p), "where it is lifted")
	verdict(t, f, finding.Tight)
	says(t, f.Caution, "top", "loose")
}

// A table's top of 40 × 20.5 in and about 15 kg: held flat its middle lies 20 cm + 10.25 in = 46.0 cm out (NIOSH 94-110, from
// memory), where one lifts 23 · 25/46.03 = 12.5 kg.
func TestADeepPartIsHeldFarOut(t *testing.T) {
	p := derive(t, table)
	f := only(t, Lift(p), "heaviest part, top")
	near(t, "reach", because(t, f, "reach").Value, 200+20.5*25.4/2, 5)
	alone := because(t, f, "one with it held flat before the body").Value
	near(t, "alone", alone, 12.5, 0.2)
	if f.Figure.Value > alone {
		says(t, strings.Join(f.Assumed, "; "), "two carry it")
	}
}
