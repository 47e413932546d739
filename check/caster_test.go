package check

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/piece"
	"rodwright/trade/caster"
	"rodwright/trade/stability"
)

// rectangle is four feet at the corners of a base of 1000 × 600 mm.
var rectangle = [][2]float64{{0, 0}, {1000, 0}, {0, 600}, {1000, 600}}

// 215.2 lb over the middle of four: half of it on one of a diagonal, 107.600 lb; 0.1 and 0.0625 of the wheelbase
// off the middle: 215.2 · (0.5 + 0.0625) = 121.050 lb; shared by three: 71.733 lb.
func TestLoadOnTheWorstOfFourCasters(t *testing.T) {
	share, ok := worstOfThree(rectangle, [2]float64{500, 300})
	near(t, "centred", 215.2*share, 107.600, 0.001)
	if !ok {
		t.Error("the middle lies in no triangle")
	}
	share, _ = worstOfThree(rectangle, [2]float64{600, 337.5})
	near(t, "eccentric", 215.2*share, 121.050, 0.001)

	p := block([2]float64{30, 12}, wheels, []slab{{99.2 * pound, 22}, {80 * pound, 9.375}}, slab{36 * pound, 35.525})
	f := only(t, Caster(p), "with everything")
	near(t, "divided by three", because(t, f, "load on each caster").Value/pound, 71.733, 0.001)
	near(t, "rigid", because(t, f, "load on the worst foot, no give").Value/pound, 107.600, 0.001)
	near(t, "even floor", because(t, f, "load on the worst foot, even floor").Value/pound, 215.2/4, 0.001)
	// 71.7 lb · 1.375 in on the stem, at the greater of share and even floor
	near(t, "moment", because(t, f, "moment on the plate").Value, 71.733*lbf*1.375*25.4, 10)
}

// The closed form is that of a rigid body on a rectangle of four casters (trade/caster).
func TestWorstThreeOfFourIsTheClosedForm(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		ex, ey := rapid.Float64Range(-0.49, 0.49).Draw(r, "ex"), rapid.Float64Range(-0.49, 0.49).Draw(r, "ey")
		want, err := caster.Rigid(1, ex, ey)
		if err != nil {
			r.Fatal(err)
		}
		got, ok := worstOfThree(rectangle, [2]float64{500 + 1000*ex, 300 + 600*ey})
		if !ok || math.Abs(got-want.Value) > 1e-9 {
			r.Fatalf("%v %v, the closed form gives %v", got, ok, want.Value)
		}
	})
}

// On springs at the corners of a rectangle: W·(¼ + ½|ex| + ½|ey|).
func TestEvenFloorAtTheCornersOfARectangle(t *testing.T) {
	got, ok := worstOnSprings(rectangle, []stability.Mass{asMass(100, 500+1000*0.2, 300-600*0.1, 400)})
	near(t, "worst", got, 100*(0.25+0.5*0.2+0.5*0.1), 1e-9)
	if !ok {
		t.Error("no base")
	}
}

// With three feet statics is exact: each bears its barycentric share.
func TestThreeFeetBearTheirShares(t *testing.T) {
	three := [][2]float64{{0, 0}, {900, 0}, {0, 600}}
	at := [2]float64{200, 100} // shares 1 − 2/9 − 1/6, 2/9, 1/6
	worst, _ := worstOfThree(three, at)
	near(t, "statics", worst, 1-2.0/9-1.0/6, 1e-12)
	even, _ := worstOnSprings(three, []stability.Mass{asMass(1, at[0], at[1], 10)})
	near(t, "springs", even, worst, 1e-9)
}

// A table of 225 lb on four casters rated 90 lb: three carry 75 lb each, within the rating, 15 lb to spare on
// each; more than 45 lb on the table passes it (a public answer, recomputed).
func TestCountThreeWheelsNotFour(t *testing.T) {
	feet := wheels
	feet.RatedKg = 90 * pound
	f := only(t, Caster(block([2]float64{30, 20}, feet, []slab{{225 * pound, 20}})), "with everything")
	near(t, "each", f.Figure.Value/pound, 75, 0.001)
	verdict(t, f, finding.Tight)
	if f = only(t, Caster(block([2]float64{30, 20}, feet, []slab{{225 * pound, 20}}, slab{44.9 * pound, 30})), "with everything"); f.Verdict == finding.Fails {
		t.Error(told([]finding.Finding{f}))
	}
	f = only(t, Caster(block([2]float64{30, 20}, feet, []slab{{225 * pound, 20}}, slab{46 * pound, 30})), "with everything")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "41 kg each") // 271 ÷ 3 = 90.33 lb = 40.98 kg
	f = only(t, Caster(block([2]float64{30, 20}, feet, []slab{{225 * pound, 20}}, slab{60 * pound, 30})), "with everything")
	says(t, f.Mend, "hold 7 kg less") // 285 − 270 = 15 lb = 6.8 kg
}

// 100 kg, rated 45 kg: a third is 33.3 kg; on a piece that does not give two bear it all, 50 kg each.
func TestAPieceThatDoesNotGiveIsTight(t *testing.T) {
	feet := wheels
	feet.RatedKg = 45
	f := only(t, Caster(block([2]float64{30, 20}, feet, []slab{{100, 20}})), "with everything")
	verdict(t, f, finding.Tight)
	says(t, f.Assumed[len(f.Assumed)-1], "gives enough")
}

func TestAnUnratedCasterIsUnknown(t *testing.T) {
	feet := wheels
	feet.RatedKg = 0
	f := only(t, Caster(block([2]float64{30, 20}, feet, []slab{{100, 20}})), "with everything")
	verdict(t, f, finding.Unknown)
	says(t, f.Missing, "rated")
}

// Six feet under 120 kg: 20 kg each on an even floor, 60 kg at most on the worst three.
func TestMoreThanFourFeetAreJudgedByTheirBounds(t *testing.T) {
	for rated, want := range map[float64]finding.Verdict{100: finding.Stands, 40: finding.Unknown, 19: finding.Fails} {
		feet := wheels
		feet.Kind, feet.RatedKg = piece.Leveller, rated
		p := block([2]float64{60, 20}, feet, []slab{{120, 20}})
		for _, y := range []float64{0, 20} {
			p.Feet = append(p.Feet, piece.Foot{Spec: &p.Doc.Feet, At: piece.Vec{X: 30 * in, Y: inch(y)}, Node: -1, Panel: 0})
		}
		p.Parts.FootTags = append(p.Parts.FootTags, "H1.5", "H1.6")
		p = Of(p.Resolved, p.Parts, p.Shop)
		f := only(t, Caster(p), "with everything")
		verdict(t, f, want)
		if want == finding.Unknown {
			says(t, f.Missing, "20 kg", "60 kg")
		}
	}
}

func TestTwoLocksAtLeast(t *testing.T) {
	p := block([2]float64{30, 20}, wheels, []slab{{20, 20}})
	p.Feet[0].Locked = true
	f := only(t, Caster(p), "locked")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "2 of the casters")
	p.Feet[1].Locked = true
	verdict(t, only(t, Caster(p), "locked"), finding.Stands)
}

func TestCapsAndFlangesAreNoCasters(t *testing.T) {
	if fs := Caster(derive(t, table)); len(fs) != 0 {
		t.Error(told(fs))
	}
}

func TestAHeavierThingNeverImprovesTheLoadOnCasters(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		feet := wheels
		feet.RatedKg = rapid.Float64Range(10, 60).Draw(r, "rated")
		own := []slab{{rapid.Float64Range(5, 80).Draw(r, "own"), 20}}
		kg, more := rapid.Float64Range(0, 60).Draw(r, "thing"), rapid.Float64Range(0, 60).Draw(r, "more")
		x, y := rapid.Float64Range(-5, 35).Draw(r, "x"), rapid.Float64Range(-5, 25).Draw(r, "y")
		of := func(kg float64) finding.Finding {
			p := block([2]float64{30, 20}, feet, own, slab{kg, 30})
			size := piece.Vec{X: in, Y: in, Z: in}
			at := piece.Vec{X: inch(x), Y: inch(y), Z: 30 * in}
			p.Held[0].Min, p.Held[0].Max = at, piece.Vec{X: at.X + size.X, Y: at.Y + size.Y, Z: at.Z + size.Z}
			return only(t, Caster(p), "with everything")
		}
		light, heavy := of(kg), of(kg+more)
		if heavy.Figure.Value < light.Figure.Value-1e-9 || light.Verdict == finding.Fails && heavy.Verdict != finding.Fails {
			r.Fatalf("%v kg: %v %s; %v kg more: %v %s", kg, light.Figure.Value, light.Verdict, more, heavy.Figure.Value, heavy.Verdict)
		}
	})
}

// A thing out past the right end lifts the left feet: 20 kg at x = 1200 on 1000 × 600 mm give each left foot
// 20·(¼ − ½·0.7) = −2 kg. As it may be missing, it takes nothing off their load.
func TestAThingThatRelievesAFootMayBeMissing(t *testing.T) {
	own := asMass(60, 100, 300, 100) // 0.4 to the left: each left foot 60·(¼ + ½·0.4) = 27 kg
	worst, _ := worstOnSprings(rectangle, []stability.Mass{own, asMass(20, 1200, 300, 100)})
	near(t, "worst", worst, 27, 1e-9)
}
