package check

import (
	"testing"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/shop"
)

// flat is a shop whose boards bow and twist by so much over any length.
func flat(bow, twist length.Length) *shop.Shop {
	s := shop.Sample()
	s.Panel.Bow, s.Panel.BowOver, s.Panel.Twist = bow, 0, twist
	return s
}

// 5/4 surfaced on two sides is 1 1/16 in (NHLA): 1 1/16 − 1/64 − 0 − 1/16 − 15/16 = 3/64 in.
func TestStockMustBeThickEnoughAfterFlattening(t *testing.T) {
	p := deriveWith(t, flat(in/64, 0), table, "thickness: 1 1/8 in,", "thickness: 15/16 in, stock: 5/4,")
	f := only(t, Thickness(p), "top")
	near(t, "left", f.Figure.Value/25.4, 3.0/64, 1e-9)
	verdict(t, f, finding.Stands)
}

// A top of 3/4 in from 4/4 stock of 13/16 in has 1/16 in to lose; truing alone takes it, so any bow is too much, and
// the next stock is 5/4. A bowed and twisted board of 8/4 (1 3/4 in) near 4 ft does not give 2 in: it takes 10/4 (public
// answers).
func TestStockThatBowsIsTooThin(t *testing.T) {
	f := only(t, Thickness(deriveWith(t, flat(0, 0), table, "thickness: 1 1/8 in,", "thickness: 3/4 in, stock: 4/4,")), "top")
	verdict(t, f, finding.Stands)
	f = only(t, Thickness(deriveWith(t, flat(in/32, 0), table, "thickness: 1 1/8 in,", "thickness: 3/4 in, stock: 4/4,")), "top")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "take 5/4 stock")
	f = only(t, Thickness(deriveWith(t, flat(in/16, in/32), table, "thickness: 1 1/8 in,", "thickness: 2 in, stock: 8/4,")), "top")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "take 10/4 stock", "cut the parts short")
}

func TestWhatNoStockGivesIsGluedUpInLayers(t *testing.T) {
	f := only(t, Thickness(derive(t, table, "thickness: 1 1/8 in", "thickness: 5 in")), "top")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "two layers of 2 1/2 in")
}

func TestSheetGoodsAreNotFlattened(t *testing.T) {
	if fs := Thickness(derive(t, table, "thickness: 1 1/8 in, grain: along length", "sheet: birch-plywood-18")); len(fs) != 0 {
		t.Error(told(fs))
	}
}

// Bow goes with the square of the length: 1/8 in over 8 ft is 1/32 in over 4 ft and 9/32 in over 12 ft.
func TestBowGoesWithTheSquareOfTheLength(t *testing.T) {
	w := shop.PanelWork{Bow: in / 8, BowOver: 96 * in}
	near(t, "4 ft", bowOf(w, 48*in).Inches(), 1.0/32, 1e-9)
	near(t, "12 ft", bowOf(w, 144*in).Inches(), 9.0/32, 1e-9)
}
