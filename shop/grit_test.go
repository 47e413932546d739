package shop_test

import (
	"slices"
	"testing"

	"rodwright/shop"
	"rodwright/trade/abrasive"
)

// Public question and answer, value recomputed: where to stop before oil on hard wood: finishers say 150 to 180, as
// more is mostly wasted and may burnish; magazines say 220, general pages 320. Each grit takes out the scratches
// of the one before.
func TestSandingStopsWhereFinishersStopBeforeOil(t *testing.T) {
	s := shop.Sample().Settings
	if s.Finish != "hardwax-oil" || s.LastGrit < 150 || s.LastGrit > 180 {
		t.Errorf("before %s the last grit is %d, want 150 to 180", s.Finish, s.LastGrit)
	}
	grits, err := abrasive.Steps(s.FirstGrit, s.LastGrit)
	if err != nil || !slices.Equal(grits, []int{80, 120, 180}) {
		t.Errorf("grits %v, %v", grits, err)
	}
}
