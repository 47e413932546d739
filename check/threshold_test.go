package check

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/stability"
)

// Worked by hand: 99.2 lb at 22 in and 36 lb at 35.525 in: centre 25.601 in up, 4.625 in inside wheels 12 in apart that
// swing in by 1.375 in: √(2·9.80665·(√(0.65027² + 0.11748²) − 0.65027)) = 0.454 m/s.
func TestTheSpeedAtWhichAStandGoesOver(t *testing.T) {
	f := only(t, Threshold(block([2]float64{30, 12}, wheels, []slab{{99.2 * pound, 22}, {36 * pound, 35.525}})), "stop dead")
	near(t, "speed", f.Figure.Value, 0.454, 0.454*0.005)
	near(t, "slow walk", f.Limit.Value, 0.89408, 1e-9) // 2 mph
	verdict(t, f, finding.Tight)                       // 30 in one way, it need not be rolled the other
	says(t, f.Mend, "0.45 m/s", "roll it to the")
	// the same where the trays may be missing: with them the centre is higher
	with := block([2]float64{30, 12}, wheels, []slab{{99.2 * pound, 22}}, slab{36 * pound, 35.525})
	near(t, "speed", only(t, Threshold(with), "stop dead", "with everything").Figure.Value, 0.454, 0.454*0.005)
}

func TestANarrowStandOnCastersMustBeRolledSlowly(t *testing.T) {
	f := only(t, Threshold(block([2]float64{12, 12}, wheels, []slab{{20, 25.6}})), "stop dead")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "no faster than 0.45 m/s")
	verdict(t, only(t, Threshold(block([2]float64{40, 40}, wheels, []slab{{20, 10}})), "stop dead"), finding.Stands)
}

func TestWhatDoesNotRollHasNoSpeed(t *testing.T) {
	if fs := Threshold(derive(t, table)); len(fs) != 0 {
		t.Error(told(fs))
	}
}

// The least speed is that of the worst of all choices, though it is no ratio of sums.
func TestTheLeastSpeedIsThatOfAllSubsets(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		p := block([2]float64{30, 20}, wheels, []slab{{rapid.Float64Range(2, 40).Draw(r, "own"), rapid.Float64Range(5, 30).Draw(r, "high")}})
		s := p.standing[0]
		for range rapid.IntRange(0, 9).Draw(r, "things") {
			at := piece.Vec{X: 15 * in, Y: inch(rapid.Float64Range(0, 20).Draw(r, "y")), Z: inch(rapid.Float64Range(1, 50).Draw(r, "z"))}
			p.Held = append(p.Held, piece.Held{Spec: &piece.Hold{}, MassKg: rapid.Float64Range(0, 40).Draw(r, "kg"), Min: at, Max: at})
			s.held = append(s.held, len(p.Held)-1)
		}
		own, _ := p.own(s)
		sides := p.base(s.feet)[:1]
		ts, all := p.tippings(s, own, sides, func(w *tipping) (err error) {
			w.figure, err = stability.GoOver(w.centre.Z, w.inside)
			return err
		})
		least := math.Inf(1)
		for _, there := range subsets(len(p.Held)) {
			c, _ := stability.Centre(with(own, p.Held, there)...)
			f, _ := stability.GoOver(c.Z, length.FromMM(sides[0].inside(c.X.MM(), c.Y.MM())))
			least = math.Min(least, f.Value)
		}
		if !all || math.Abs(ts[0].figure.Value-least) > 1e-9 {
			r.Fatalf("%v, %v; the least is %v", ts[0].figure.Value, all, least)
		}
	})
}

// Many of one kind in a row count as few combinations; many kinds are told to be too many.
func TestLikeThingsAreTriedByTheirNumber(t *testing.T) {
	var held []piece.Held
	for range 40 {
		at := piece.Vec{Y: 4 * in, Z: 30 * in}
		held = append(held, piece.Held{MassKg: 2, Min: at, Max: at})
	}
	over, own := side{at: [2]float64{0, 300}, out: [2]float64{0, 1}}, asMass(10, 0, 100, 500)
	if sets, all := combinations(over, own, held); !all || len(sets) != 41 {
		t.Errorf("%d combinations, %v", len(sets), all)
	}
	for i := range held {
		held[i].MassKg = float64(i + 1)
	}
	if sets, all := combinations(over, own, held); all || len(sets) > 10 {
		t.Errorf("%d combinations, %v", len(sets), all)
	}
}

// A wheel of 3 in at a step of 1/8 in: √(2·1.5·0.125 − 0.125²) ÷ 1.375 = 0.43596. 100 kg with its middle 10 in inside wheels
// that swing in by 1.375 in: 427.5 N to climb; pushed at 20 in it tips at 980.665 · 8.625 ÷ 20 = 422.9 N, lower down later.
// 5 % of the wheel are 0.15 in.
func TestAPieceThatTipsBeforeItsWheelsClimb(t *testing.T) {
	p := block([2]float64{20, 20}, wheels, []slab{{100, 19}})
	p.Doc.Place.Threshold = in / 8
	f := only(t, Threshold(p), "over a step of 1/8 in")
	near(t, "climbs", f.Figure.Value, 427.5, 0.1)
	near(t, "tips", f.Limit.Value, 422.9, 0.1)
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "1 1/2 in long", "no higher than 19 13/16 in") // 8.625 ÷ 0.43596 = 19.78 in
	p = block([2]float64{60, 60}, wheels, []slab{{100, 19}})
	p.Doc.Place.Threshold = in / 8
	verdict(t, only(t, Threshold(p), "over a step"), finding.Stands)
	p.Doc.Place.Threshold = in / 4 // more than 5 % of the wheel
	f = only(t, Threshold(p), "over a step")
	verdict(t, f, finding.Tight)
	says(t, f.Mend, "wheels of 5 in")
	p.Doc.Place.Threshold = 2 * in
	f = only(t, Threshold(p), "over a step")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "a ramp 24 in long")
}

// As the piece begins to tip, the wheels at the step bear all its weight: a push that grows from nothing climbs first just
// when the push over the step by the whole weight is the smaller. By moments about the wheels at the step: they bear
// (W·(b − d) + F·z) ÷ b.
func TestItClimbsFirstJustWhenThePushIsBelowTheTippingPush(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		b := rapid.Float64Range(100, 1000).Draw(r, "base")
		d := b * rapid.Float64Range(0.05, 0.95).Draw(r, "inside")
		z, share := rapid.Float64Range(200, 2000).Draw(r, "push at"), rapid.Float64Range(0.05, 3).Draw(r, "share")
		tips, first := d/z, math.Inf(1)
		for i := range 2001 {
			f := tips * float64(i) / 2000
			if f >= share*((b-d)+f*z)/b {
				first = f
				break
			}
		}
		if math.Abs(share-tips) < 1e-3 {
			return
		}
		if climbs := first <= tips; climbs != (share < tips) {
			r.Fatalf("climbs at %v, tips at %v, the step asks %v", first, tips, share)
		}
	})
}

// 100 kg in the middle of wheels 60 in apart that swing in by 1.375 in, and 100 kg at their front edge: the centre lies
// (28.625 − 1.375) ÷ 2 = 13.625 in inside, and 200 kg pushed at 20 in tip at 1961.33 · 13.625 ÷ 20 = 1336.2 N.
func TestAStepIsTriedWithTheWorstCombination(t *testing.T) {
	p := block([2]float64{60, 60}, wheels, []slab{{100, 19}}, slab{100, 19})
	at := piece.Vec{X: 30 * in, Z: 19 * in}
	p.Held[0].Min, p.Held[0].Max = at, at
	p.Doc.Place.Threshold = in / 8
	f := only(t, Threshold(p), "over a step", "to the front", "with everything")
	near(t, "tips", f.Limit.Value, 1336.2, 0.1)
}
