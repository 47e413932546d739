package check

import (
	"testing"

	"rodwright/finding"
	"rodwright/length"
)

// The table's legs are two pipes each, a cap below and a flange above, a tee between: four joints by 1/14 in and four
// fitting ends by 1/16 in, no pipe must point. By hand 0.5357 in a leg at worst, and four legs 2.1429 in; root of the
// squares √(16·(0.0714² + 0.0625²)) = 0.3797 in.
func TestFourLegsRockByTheSumOfWhatTheirJointsGive(t *testing.T) {
	f := only(t, Level(derive(t, table)), "on its legs")
	near(t, "worst", because(t, f, "off at worst").Value/25.4, 2.1429, 1e-3)
	near(t, "root sum of squares", because(t, f, "root sum of squares").Value/25.4, 0.3797, 1e-3)
	// two legs of a diagonal, (0.471 + 1.629) turns of 1/14 in: 0.3 in
	near(t, "limit", f.Limit.Value/25.4, 0.3, 1e-3)
	verdict(t, f, finding.Tight)
	says(t, f.Mend, "set every pipe of the legs by measure", "longer diagonal", "0.47 turns tighter")
}

// Four feet of 3/8 in either way (from memory) take up 1 1/2 in.
func TestLevellingFeetTakeUpTheRock(t *testing.T) {
	f := only(t, Level(derive(t, table, "feet: caps", "feet:\n  levelling feet: {height: 1 1/2 in, rated: 300 lb}")), "on its legs")
	verdict(t, f, finding.Stands)
	near(t, "limit", f.Limit.Value, (3 * length.Inch / 2).MM(), 1e-9)
}

func TestNothingOnTwoFeetOrOnAWallIsLevelled(t *testing.T) {
	for _, text := range []string{wallShelf, hoop} {
		for _, f := range Level(derive(t, text)) {
			if len(f.Parts) == 0 {
				t.Error(told([]finding.Finding{f}))
			}
		}
	}
}
