package check

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/piece"
	"rodwright/shop"
)

// By hand: |0.00365 − 0.0018| · 4 · 3 · atan(6/8) = 0.0143 in for 6 in of white oak over four points, rings of 4 in
// (coefficients Wood Handbook FPL-GTR-282 (2021) table 13-5); 6 in in a foot of 1/32 are 0.0156 in.
func TestAStripOfSixInchesOverFourPointsIsTight(t *testing.T) {
	p := derive(t, table)
	p.Air.DryMC, p.Air.WetMC = 8, 12
	f := only(t, Cup(p), "top")
	near(t, "cup", f.Figure.Value/25.4, 0.0143, 0.0001)
	near(t, "allowed", f.Limit.Value/25.4, 1.0/64, 1e-9)
	verdict(t, f, finding.Tight)
	if f.Mend != "" {
		t.Errorf("within its limit it is mended: %s", f.Mend)
	}
	says(t, strings.Join(f.Assumptions(), ";"), "ring sides alternate", "both faces are coated in one session", "rings of 4 in")
}

// By hand: 0.00365 · 20.5² ÷ (8 · 1.125) = 0.170 in for each point between the faces.
func TestOneCoatedFaceBowsTheWholePanel(t *testing.T) {
	f := because(t, only(t, Cup(derive(t, table)), "top"), "bow of the whole panel for each point of moisture between its faces, were it free")
	near(t, "bow", f.Value/25.4, 0.1704, 0.0005)
}

func TestTheEndOfTheYearThatCupsMoreCounts(t *testing.T) {
	p := derive(t, table)
	p.Air.DryMC, p.Air.WetMC = 6, 9
	f := only(t, Cup(p), "top")
	near(t, "cup", f.Figure.Value/25.4, 0.0143/2, 0.0001)
	says(t, strings.Join(f.Figure.Assumed, ";"), "bark face")
}

func TestNarrowerStripsMendTheCup(t *testing.T) {
	p := derive(t, table)
	p.Air.DryMC, p.Air.WetMC = 8, 14
	f := only(t, Cup(p), "top")
	verdict(t, f, finding.Tight)
	// by hand: 2 · 4 · tan(2 ÷ (384 · 0.00185 · 6)) = 4.04 in
	says(t, f.Mend, "no wider than 4 in", "alternate")
	s := *p.Shop
	s.Panel.StripMost = inch(4)
	narrow := only(t, Cup(Of(p.Resolved, p.Parts, &s)), "top")
	if narrow.Figure.Value > narrow.Limit.Value {
		t.Errorf("strips as the mend wants them cup %v of %v mm", narrow.Figure.Value, narrow.Limit.Value)
	}
}

func TestQuarterSawnStripsDoNotCupByTheirRings(t *testing.T) {
	f := only(t, Cup(derive(t, table, "cut: flat", "cut: quarter", "30–60 %", "20–95 %")), "top")
	verdict(t, f, finding.Stands)
	near(t, "cup", f.Figure.Value, 0, 0)
}

func TestABoardThatNothingHoldsFails(t *testing.T) {
	s := *shop.Sample()
	s.Panel.StripMost = inch(40)
	p := deriveWith(t, &s, bearers, "30–60 %", "20–85 %")
	f := only(t, Cup(p), "board")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "no wider than")
	p = deriveWith(t, shop.Sample(), bearers, "30–60 %", "20–85 %")
	verdict(t, only(t, Cup(p), "board"), finding.Tight)
}

func TestSheetGoodsDoNotCup(t *testing.T) {
	if fs := Cup(derive(t, table, "thickness: 1 1/8 in, grain: along length", "sheet: birch-plywood-18")); len(fs) != 0 {
		t.Error(told(fs))
	}
}

// The cup of a strip grows with its width, about with the square while it is narrow against the rings, and with the
// span of the year.
func TestWiderStripsAndALongerSpanNeverCupLess(t *testing.T) {
	p := derive(t, table)
	rapid.Check(t, func(r *rapid.T) {
		s := *p.Shop
		wide := rapid.Float64Range(1, 9).Draw(r, "strip")
		wet := rapid.Float64Range(8, 13).Draw(r, "wet")
		of := func(w, wet float64) float64 {
			s.Panel.StripMost = inch(w)
			res := *p.Resolved
			res.Air = piece.Air{BuildMC: 8, DryMC: 8, WetMC: wet}
			q := Of(&res, p.Parts, &s)
			return only(t, Cup(q), "top").Figure.Value
		}
		a := of(wide, wet)
		if b := of(wide*rapid.Float64Range(1, 2).Draw(r, "wider"), wet); b < a-1e-9 {
			r.Errorf("wider: %v, then %v", a, b)
		}
		if b := of(wide, wet+rapid.Float64Range(0, 1).Draw(r, "damper")); b < a-1e-9 {
			r.Errorf("damper: %v, then %v", a, b)
		}
		if math.IsNaN(a) {
			r.Error("NaN")
		}
	})
}
