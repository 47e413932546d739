package check

import (
	"testing"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

// relieved is a board 40 in long on two rails across it, with one pocket over each.
func relieved(t testing.TB, deep length.Length) *Piece {
	p := derive(t, table)
	panel := &p.Panels[0]
	panel.Features = []piece.Feature{
		{Kind: piece.ReliefFeature, Why: "over a band", Depth: deep, Min: [2]length.Length{2 * in, 2 * in}, Max: [2]length.Length{4 * in, 6 * in}, Stick: -1},
	}
	return p
}

// The top is 20.5 in wide and 1 1/8 in thick, the pocket 4 in wide and 1/2 in deep: A = 16.5·1.125 + 4·0.625·(0.625/1.125)² =
// 19.334 in² (NDS 2018 3.4.3.2, from memory). Its own weight, on two lines 34 in apart,
// is half on each, and what hangs over one is not taken off the other: ∫ x/34 from 0 to 3 in of 20 in, 0.66 %.
func TestThePocketTakesMoreOfTheSectionThanItsDepth(t *testing.T) {
	p := relieved(t, in/2)
	f := only(t, Section(p), "support 3 in")
	v := because(t, f, "the support bears")
	near(t, "half the panel", v.Value, 1.0066*p.panels[0].MassKg*gravity/2, 1e-3*v.Value)
	near(t, "net section", because(t, f, "net section").Value/25.4/25.4, 19.334, 1e-3)
	near(t, "shear", f.Figure.Value, 1.5*v.Value/(19.334*25.4*25.4), 1e-5)
	verdict(t, f, finding.Stands)
}

func TestADeeperPocketIsShearedMore(t *testing.T) {
	shallow, deep := only(t, Section(relieved(t, in/4)), "support"), only(t, Section(relieved(t, in)), "support")
	if deep.Figure.Value <= shallow.Figure.Value {
		t.Errorf("%v MPa, %v over a deeper one", shallow.Figure.Value, deep.Figure.Value)
	}
}

func TestAWholePanelHasNoNetSection(t *testing.T) {
	if fs := Section(derive(t, table)); len(fs) != 0 {
		t.Error(told(fs))
	}
}

// Statics: 2/3 and 1/3 of a load a third of the span from one end; past the end of a span of 3 by 1, 4/3 and nothing.
func TestALoadIsSharedByTheSupportsBesideIt(t *testing.T) {
	lines := []length.Length{0, 3 * length.Millimetre, 9 * length.Millimetre}
	for _, c := range []struct {
		at   float64
		want [3]float64
	}{{1, [3]float64{2.0 / 3, 1.0 / 3, 0}}, {6, [3]float64{0, 0.5, 0.5}}, {-1, [3]float64{4.0 / 3, 0, 0}}, {9, [3]float64{0, 0, 1}}} {
		for n, want := range c.want {
			near(t, "share", shareOf(lines, n, c.at), want, 1e-12)
		}
	}
}

func TestASectionWithNoWoodLeftIsUnknown(t *testing.T) {
	p := relieved(t, in/2)
	p.Panels[0].Features[0].Depth = 0
	p.Panels[0].Features[0].Min[1], p.Panels[0].Features[0].Max[1] = 0, size(p.Panels[0])[1]
	verdict(t, only(t, Section(p), "support"), finding.Unknown)
}
