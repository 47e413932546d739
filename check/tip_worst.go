package check

import (
	"math"

	"rodwright/piece"
	"rodwright/trade/stability"
)

// worstHeld says which of the held things are there in the combination that tips soonest over side s.
//
// The tilt falls with the ratio of Σ m·d to Σ m·h, d the distance inside the side and h the height. The
// least ratio over all choices is found by Dinkelbach's method (Management Science 13 (1967) 492–498): with
// the ratio λ found so far a thing makes it worse exactly when d − λ·h is below zero. It ends after a
// few steps as λ only falls and there are only so many combinations.
func worstHeld(s side, own stability.Mass, held []piece.Held) []bool {
	there := make([]bool, len(held))
	lambda := tiltRatio(s, own, held, there)
	for {
		next := make([]bool, len(held))
		for i, h := range held {
			m := heldMass(h)
			next[i] = m.Kg > 0 && s.inside(m.X.MM(), m.Y.MM()) < lambda*m.Z.MM()
		}
		ratio := tiltRatio(s, own, held, next)
		if !(ratio < lambda-1e-12) { // so written, a ratio that is no number ends it too
			return there
		}
		there, lambda = next, ratio
	}
}

// tiltRatio returns the tangent of the tilt at which the piece goes over with the things that are there.
func tiltRatio(s side, own stability.Mass, held []piece.Held, there []bool) float64 {
	inside, height := own.Kg*s.inside(own.X.MM(), own.Y.MM()), own.Kg*own.Z.MM()
	for i, h := range held {
		if there[i] {
			m := heldMass(h)
			inside += m.Kg * s.inside(m.X.MM(), m.Y.MM())
			height += m.Kg * m.Z.MM()
		}
	}
	return inside / height
}

// stillLacks returns how far, in mm, the side must move out so that the piece stands on a tilt with the
// given tangent, whatever of the things is there. A wider base changes which combination is the worst, so
// the move grows until no combination lacks anything more.
func stillLacks(s side, own stability.Mass, held []piece.Held, tangent float64) float64 {
	move := 0.0
	for range len(held) + 2 {
		// what the piece and every thing that lacks more than the move adds up to
		kg, lacks := own.Kg, own.Kg*(own.Z.MM()*tangent-s.inside(own.X.MM(), own.Y.MM()))
		for _, h := range held {
			m := heldMass(h)
			if l := m.Z.MM()*tangent - s.inside(m.X.MM(), m.Y.MM()); l > move {
				kg, lacks = kg+m.Kg, lacks+m.Kg*l
			}
		}
		next := math.Max(0, lacks/kg)
		if next <= move {
			break
		}
		move = next
	}
	return move
}
