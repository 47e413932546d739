package check

import (
	"math"

	"rodwright/piece"
	"rodwright/trade/stability"
)

// addend is what a body adds above and below the line of a ratio.
type addend struct{ above, below float64 }

// leastRatio says which of the things are there in the combination with the least ratio of Σ above to Σ below, and that
// ratio. The piece itself is always there; what is below the line is never negative.
//
// It is exact for any number of things, by Dinkelbach's method (Management Science 13 (1967) 492–498). With the ratio λ
// of some combination, another has a lower one exactly when its Σ (above − λ·below) is below zero. That sum is
// separable: each thing adds its own term or nothing, so it is least with just those things whose own term is below
// zero. Where even that sum is not below zero no combination has a lower ratio than λ; else its ratio is the next λ. As
// λ only falls and there are only so many combinations it ends, in practice after two or three steps.
func leastRatio(own addend, things []addend) (there []bool, ratio float64) {
	there = make([]bool, len(things))
	ratio = own.above / own.below
	for {
		next, sum := make([]bool, len(things)), own
		for i, t := range things {
			if next[i] = t.above < ratio*t.below; next[i] {
				sum.above, sum.below = sum.above+t.above, sum.below+t.below
			}
		}
		lower := sum.above / sum.below
		if !(lower < ratio-1e-12) { // so written, a ratio that is no number ends it too
			return there, ratio
		}
		there, ratio = next, lower
	}
}

// worstHeld says which of the held things are there in the combination that tips soonest over side s: the tilt falls
// with the ratio of Σ m·d to Σ m·h, d the distance inside the side and h the height.
func worstHeld(s side, own stability.Mass, held []piece.Held) []bool {
	of := func(m stability.Mass) addend {
		return addend{m.Kg * s.inside(m.X.MM(), m.Y.MM()), m.Kg * m.Z.MM()}
	}
	there, _ := leastRatio(of(own), each(held, of))
	return there
}

// each returns what every thing held adds.
func each[T any](held []piece.Held, of func(stability.Mass) T) []T {
	out := make([]T, len(held))
	for i, h := range held {
		out[i] = of(heldMass(h))
	}
	return out
}

// leastMoment says which things are there in the combination that steadies side s least: each of those that lie outside
// it. What a push or a load must overcome is a sum, Σ m·d, so each thing counts for itself.
func leastMoment(s side, held []piece.Held) []bool {
	return each(held, func(m stability.Mass) bool { return m.Kg > 0 && s.inside(m.X.MM(), m.Y.MM()) < 0 })
}

// lightest says which things are there in the combination whose centre lies nearest to side s.
func lightest(s side, own stability.Mass, held []piece.Held) []bool {
	of := func(m stability.Mass) addend { return addend{m.Kg * s.inside(m.X.MM(), m.Y.MM()), m.Kg} }
	there, _ := leastRatio(of(own), each(held, of))
	return there
}

// lack is by how many mm a mass lies too near to a side, or outside it, for what is asked.
type lack struct{ kg, mm float64 }

// stillLacks returns how far, in mm, the side must move out so that the piece stands on a tilt with the
// given tangent, whatever of the things is there.
func stillLacks(s side, own stability.Mass, held []piece.Held, tangent float64) float64 {
	of := func(m stability.Mass) lack { return lack{m.Kg, m.Z.MM()*tangent - s.inside(m.X.MM(), m.Y.MM())} }
	return leastMove(of(own), each(held, of))
}

// leastMove returns how far, in mm, a side must move out so that nothing is lacking in any combination. A wider base
// changes which combination is the worst, so the move grows until no combination lacks anything more.
func leastMove(own lack, things []lack) (move float64) {
	for range len(things) + 2 {
		// what the piece and every thing that lacks more than the move adds up to
		kg, lacks := own.kg, own.kg*own.mm
		for _, t := range things {
			if t.mm > move {
				kg, lacks = kg+t.kg, lacks+t.kg*t.mm
			}
		}
		next := math.Max(0, lacks/kg)
		if !(next > move) {
			break
		}
		move = next
	}
	return move
}
