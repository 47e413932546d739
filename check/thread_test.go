package check

import (
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/part"
)

// rungs are two posts with a rail between tees; the posts stand so far apart.
func rungs(t testing.TB, apart string) *Piece {
	return derive(t, `
rodwright: 1
piece: rungs
unit: in
fineness: 1/16
place: {room: studio}
pipe: {standard: npt, size: 3/4}
posts:
  legs: {at: [[0, 0], [`+apart+`, 0]], from: feet, to: {level: 30 in, end: cap}}
rails:
  rung: {joins: legs posts, level: 12 in}
feet: caps
`)
}

func rung(t testing.TB, p *Piece) finding.Finding { return only(t, Thread(p), "rung") }

// Two 3/4 NPT tees take off 2 · (1.31 − 0.5625) = 1.495 in (ASME B16.3, from memory, and the fitters' normal
// engagement); the close nipple is 1 3/8 in (ASTM A733, from memory): they can't be closer than 2.870 in.
func TestPipeBelowACloseNippleFails(t *testing.T) {
	f := rung(t, rungs(t, "2.8 in"))
	verdict(t, f, finding.Fails)
	near(t, "least", f.Limit.Value/25.4, 1.375, 1e-9)
	says(t, f.Mend, "at least 2 7/8 in apart", "1/8 in farther")
	verdict(t, rung(t, rungs(t, "2.87 in")), finding.Stands) // it is the close nipple
}

// 4 in between tees: 2.505 in of pipe, a stock nipple of 2 1/2 in.
func TestAStockNippleNeedsNoMachine(t *testing.T) {
	p := rungs(t, "4 in")
	f := rung(t, p)
	verdict(t, f, finding.Stands)
	says(t, strings.Join(f.Assumed, "; "), "stock nipple sets the joints -0.13 mm")
	if f.Caution != "" {
		t.Errorf("nothing is threaded: %q", f.Caution)
	}
}

// 4 1/4 in between tees: 2.755 in, no stock step and less than the 3 in that the machine holds (common practice):
// 0.245 in farther for a nipple of 3 in, 0.255 in closer for one of 2 1/2 in.
func TestAPipeBetweenTwoNipplesIsDesignedAway(t *testing.T) {
	p := rungs(t, "4.25 in")
	f := rung(t, p)
	verdict(t, f, finding.Fails)
	near(t, "length", f.Figure.Value/25.4, 2.755, 1e-9)
	near(t, "least", f.Limit.Value/25.4, 3, 1e-9)
	says(t, f.Mend, "1/4 in farther apart", "1/4 in closer for one of 2 1/2 in")
	for _, pt := range p.Parts.Parts {
		if pt.Kind == part.Pipe && strings.HasPrefix(pt.Name, "rung") && pt.From != part.FromNothing {
			t.Errorf("it is made from a %s", pt.From)
		}
	}
}

// 12.505 in between two tees 14 in apart.
func TestALongPipeIsThreadedInTheMachine(t *testing.T) {
	f := rung(t, rungs(t, "14 in"))
	verdict(t, f, finding.Stands)
	near(t, "length", f.Figure.Value/25.4, 12.505, 1e-9)
	says(t, f.Caution, "no gloves or loose sleeves")
	verdict(t, rung(t, rungs(t, "4.8 in")), finding.Tight) // 3.305 in
}
