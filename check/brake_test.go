package check

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/piece"
)

// 20 kg in the middle, 20 in up, on wheels 20 in apart of which the front two lock. On a slope of 12° that falls to the back
// they bear ½ − 20·tan 12° ÷ 20 = 0.2874 of the load and hold, at a friction of 0.5, atan(0.1437) = 8.178°: too little. On
// 2°: ½ − 0.0349 = 0.4651, atan(0.2325) = 13.091°. On 9°: ½ − 0.1584 = 0.3416,
// atan(0.1708) = 9.693°. By hand.
func TestLocksHoldOnASlope(t *testing.T) {
	for _, c := range []struct {
		slope, holds float64
		want         finding.Verdict
	}{{2, 13.091, finding.Stands}, {9, 9.693, finding.Tight}, {12, 8.178, finding.Fails}} {
		p := block([2]float64{30, 20}, wheels, []slab{{20, 20}})
		p.Feet[0].Locked, p.Feet[1].Locked = true, true
		p.Doc.Place.Slope = c.slope
		f := only(t, Caster(p), "slopes")
		near(t, "held", f.Figure.Value, c.holds, 0.002)
		verdict(t, f, c.want)
		near(t, "down the slope", because(t, f, "force down the slope").Value, 20*9.80665*math.Sin(c.slope*math.Pi/180), 1e-9)
	}
}

// All four locked bear the whole load: atan 0.5 = 26.565°.
func TestAllWheelsLockedHoldByFriction(t *testing.T) {
	p := block([2]float64{30, 20}, wheels, []slab{{20, 20}})
	for i := range p.Feet {
		p.Feet[i].Locked = true
	}
	p.Doc.Place.Slope = 10
	near(t, "held", only(t, Caster(p), "slopes").Figure.Value, 26.565, 0.001)
}

func TestWithNoWheelLockedItRollsAwayByItself(t *testing.T) {
	p := block([2]float64{30, 20}, wheels, []slab{{20, 20}})
	p.Doc.Place.Slope = 1
	f := only(t, Caster(p), "slopes")
	verdict(t, f, finding.Fails)
	near(t, "held", f.Figure.Value, 0, 0)
	says(t, f.Caution, "rolls away by itself")
}

// Of what is held, the least share on the locked wheels is that of the worst of all choices.
func TestTheShareOnLockedWheelsIsTheWorstOfAllSubsets(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		p := block([2]float64{30, 20}, wheels, []slab{{20, 20}})
		p.Feet[0].Locked, p.Feet[1].Locked = true, true
		for range rapid.IntRange(0, 8).Draw(r, "things") {
			at := piece.Vec{X: inch(rapid.Float64Range(0, 30).Draw(r, "x")), Y: inch(rapid.Float64Range(0, 20).Draw(r, "y")), Z: 30 * in}
			p.Held = append(p.Held, piece.Held{Spec: &piece.Hold{}, MassKg: rapid.Float64Range(0, 40).Draw(r, "kg"), Min: at, Max: at})
		}
		p.standing = p.apart()
		got, _, ok := p.lockedShare(p.standing[0], []int{0, 1, 2, 3}, []int{0, 1}, 3)
		least := 1.0
		for _, there := range subsets(len(p.Held)) {
			own, _ := p.own(p.standing[0])
			sum, kg := 0.0, 0.0
			for _, m := range with(own, p.Held, there) { // the front pair by moments about the back one, on a slope of 3°
				sum += m.Kg * (20*25.4 - m.Y.MM() - m.Z.MM()*math.Tan(3*math.Pi/180)) / (20 * 25.4)
				kg += m.Kg
			}
			least = math.Min(least, sum/kg)
		}
		if !ok || math.Abs(got-math.Max(0, least)) > 1e-6 {
			r.Fatalf("%v, the least is %v", got, least)
		}
	})
}
