package part_test

import (
	"math"
	"strings"
	"testing"
)

const pound = 0.45359237 // kg, exact by the international pound of 1959

// ASME B36.10M: NPS 3/4 Schedule 40 weighs 1.13 lb a foot, EN 10255 medium DN25 2.41 kg a metre (both read on
// supplier pages). The table of the trade is made of these, rounded; 1 %.
func TestPipesWeighWhatTheTablesSay(t *testing.T) {
	_, l := takeOff(t, bench)
	p := named(t, l, "side rail")
	want := p.Cut.Inches() / 12 * 1.13 * pound
	near(t, "3/4 pipe", p.MassKg, want, want/100)

	_, l = takeOff(t, strings.ReplaceAll(bench, "pipe: 3/4", "pipe: DN25"))
	p = named(t, l, "side rail")
	want = p.Cut.MM() / 1000 * 2.41
	near(t, "DN25 pipe", p.MassKg, want, want/100)
}

// White oak has specific gravity 0.68 by its volume at 12 % MC (Wood Handbook FPL-GTR-282, Table 5-3b). At 8 %
// a board of 40 × 20 × 1 in weighs 1000 · 0.68 · 1.08 kg/m³ · 0.0131097 m³ = 9.628 kg; a cut-out of 6 × 5 in
// takes 3/80 of it.
func TestABoardWeighsWithoutItsCutOut(t *testing.T) {
	_, l := takeOff(t, bench)
	whole := named(t, l, "top").MassKg
	near(t, "board", whole, 9.628, 0.001)
	_, l = takeOff(t, bench+"holes:\n  well: {in: top, kind: cut-out, at: [20, 10], size: 6 × 5 in}\n")
	near(t, "board with a cut-out", named(t, l, "top").MassKg, whole*(1-30.0/800), 1e-9)
}

// Birch plywood at 680 kg/m³, from memory.
func TestASheetIsCutToItsSizeAndWeighsByItsDensity(t *testing.T) {
	_, l := takeOff(t, strings.ReplaceAll(bench, "thickness: 1,", "thickness: 18 mm, sheet: birch-plywood-18,"))
	p := named(t, l, "top")
	if !p.Sheet || p.Blank != p.Finished || p.Rough != "" || p.GlueLines != 0 || p.BoardFeet.Volume != 0 {
		t.Errorf("%+v", p)
	}
	near(t, "sheet", p.MassKg, 40*20*25.4*25.4*18*680e-9, 1e-9)
	if len(p.Assumed) == 0 {
		t.Error("a density from memory is not said to be assumed")
	}
}

// Fitting masses are from memory; screws are cylinders of their shank: No. 10 × 1 in, 0.190 in thick (ASME
// B18.6.1), 7850 kg/m³: π/4 · 4.826² · 25.4 mm³ = 3.647 g.
func TestTheWholeBenchByHand(t *testing.T) {
	_, l := takeOff(t, bench)
	screw := math.Pi / 4 * 4.826 * 4.826 * 25.4 * 7850e-9
	near(t, "screw", named(t, l, "wood screw 10 × 1 in").MassKg, screw, 1e-9)
	steel := 0.0
	for _, name := range []string{"front post 1", "front post 2", "back post 1", "back post 2", "side rail"} {
		steel += 2 * named(t, l, name).MassKg
	}
	steel += 4*0.21 + 4*0.36 + 4*named(t, l, "cap").MassKg + 16*screw
	near(t, "steel", l.Totals.SteelKg, steel, 1e-9)
	near(t, "all", l.Totals.MassKg, steel+named(t, l, "top").MassKg, 1e-9)
}

func TestWhatIsHeldIsCountedApart(t *testing.T) {
	_, l := takeOff(t, bench+"holds:\n  - {name: trays, on: top, size: 10 × 10 × 3 in, weight: 12 lb, count: 3}\n")
	near(t, "held", l.Totals.HeldKg, 36*pound, 1e-9)
	_, bare := takeOff(t, bench)
	near(t, "the piece", l.Totals.MassKg, bare.Totals.MassKg, 0)
}

// From memory: a strap for 3/4 pipe has its holes 2.5 in apart and is 0.75 in wide and 0.06 in thick; a caster
// of a 3 in wheel weighs 0.55 kg. Worked by hand: 2.5 − 1.05 + 1 + π/2 · 1.05 = 4.0993 in of strip.
func TestStrapsAndCastersByHand(t *testing.T) {
	_, l := takeOff(t, strings.Replace(wallShelf, "WALL", "studs", 1))
	near(t, "strap", named(t, l, "strap 3/4").MassKg, 4.0993*0.75*0.06*25.4*25.4*25.4*7850e-9, 1e-6)
	_, l = takeOff(t, strings.Replace(bench, "feet: caps", "feet: {casters: {kind: stem, wheel: 4 in}}", 1))
	near(t, "caster of 4 in", named(t, l, "4 in stem caster").MassKg, 0.55*16/9, 1e-9)
}
