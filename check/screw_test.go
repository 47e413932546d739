package check

import (
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// A plate of 1 1/4 in and a board of 3/4 in are 2 in thick together: 2 1/2 in comes through, 2 in too, 1 1/4 in grips
// nothing, 1 3/4 in is right (a public answer; grip + panel − 1/8 in is common practice).
func TestOnlyOneLengthOfScrewIsRight(t *testing.T) {
	s := shop.Sample()
	s.Fittings = append(s.Fittings, shop.MeasuredFitting{Pipe: "3/4", Kind: pipe.Flange, PlateThick: inch(1.25)})
	for long, want := range map[string]finding.Verdict{"2 1/2": finding.Fails, "2": finding.Fails, "1 3/4": finding.Tight /* it bites 1/2 in only */, "1 1/4": finding.Fails} {
		p := deriveWith(t, s, table, "thickness: 1 1/8 in", "thickness: 3/4 in", "feet: caps", "feet: caps\njoints: {flange: {screw: 10 × "+long+" in}}")
		f := only(t, Screw(p), "into top")
		verdict(t, f, want)
		if want == finding.Fails {
			says(t, f.Mend, "1 3/4 in")
		}
		if long == "1 1/4" && f.Figure.Name != "bite in the wood" {
			t.Errorf("it fails by its %s", f.Figure.Name)
		}
		if len(f.Parts) != 6 { // the screws, the top and four flanges
			t.Errorf("parts %v", f.Parts)
		}
	}
}

func TestTheLongestScrewThatFitsIsTaken(t *testing.T) {
	f := only(t, Screw(derive(t, table)), "into top")
	if f.Verdict == finding.Fails {
		t.Error(told([]finding.Finding{f}))
	}
	near(t, "left and grip", f.Figure.Value, because(t, f, "wood left beyond the point").Value, 0)
}

// 10 gauge is 0.190 in thick: below 4 diameters, 0.76 in, of penetration the handbook gives no lateral load.
func TestAShortScrewIsTightForItBearsNothingSideways(t *testing.T) {
	p := derive(t, table, "feet: caps", "feet: caps\njoints: {flange: {screw: 10 × 3/4 in}}")
	f := only(t, Screw(p), "into top")
	verdict(t, f, finding.Tight)
	says(t, strings.Join(f.Assumed, "; "), "less than four of its diameters")
	near(t, "four diameters", p.leastBite(10).Inches(), 0.76, 1e-9)
}

func TestTheShopsOwnAllowanceIsKept(t *testing.T) {
	s := shop.Sample()
	s.Settings.ScrewAllowance = inch(0.5)
	p := deriveWith(t, s, table, "feet: caps", "feet: caps\njoints: {flange: {screw: 10 × 1 in}}")
	f := only(t, Screw(p), "into top")
	verdict(t, f, finding.Fails)
	near(t, "limit", f.Limit.Value, 12.7, 1e-9)
	says(t, f.Mend, "take a screw of 3/4 in") // grip 1/8 in, from memory: 1/8 + 1 1/8 − 1/2 = 3/4 in
}

// A post ends on the board from above where another ends under it: their screws come from both faces of a board
// of 1 1/8 in.
func TestScrewsFromBothFacesMustNotMeet(t *testing.T) {
	const tower = `
rodwright: 1
piece: tower
unit: in
fineness: 1/16
place: {room: studio}
wood: {species: white-oak}
pipe: {standard: npt, size: 3/4}
posts:
  lower: {at: corners of deck, inset: 3 in, from: feet, to: deck}
  upper: {at: corners of deck, inset: 3 in, from: deck, to: {level: 40 in, end: cap}}
panels:
  deck: {length: 40 in, width: 20 in, thickness: 1 1/8 in, grain: along length, level: 20 in, sits: [on lower posts, under upper posts]}
feet: caps
`
	f := only(t, Screw(derive(t, tower)), "both faces", "back left")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "shorter on one face")
	thick := derive(t, tower, "thickness: 1 1/8 in", "thickness: 3 in", "feet: caps", "feet: caps\njoints: {flange: {screw: 10 × 1 in}}")
	verdict(t, only(t, Screw(thick), "both faces", "back left"), finding.Stands)
}

func TestScrewsIntoTheWallAreNotJudgedByThePanel(t *testing.T) {
	for _, f := range Screw(derive(t, wallShelf)) {
		if !strings.Contains(f.Place, "into shelf") {
			t.Error(told([]finding.Finding{f}))
		}
	}
}

func TestTheBiteOfAnUnknownGaugeAsksForNothing(t *testing.T) {
	if l := (&Piece{}).leastBite(99); l != length.Length(0) {
		t.Errorf("%v", l)
	}
}
