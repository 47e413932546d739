package stability

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

var liftFormula = figure.Formula{
	Text:   "m = 23 kg · 25 cm ÷ reach",
	Source: "NIOSH revised lifting equation (1991), load constant and horizontal multiplier, from memory",
	Range:  "reach up to 63 cm, two hands, straight in front, now and then, from about knuckle height",
}

// The reaches between which the lifting limit falls: closer than the first counts as the first, and past
// the second nothing should be lifted.
const (
	closeReach = 250 * length.Millimetre
	farReach   = 630 * length.Millimetre
)

// LiftLimit returns the mass in kilograms that one person should lift with the load's centre at the given
// reach in front of the ankles: 23 kg close to the body, half of it at 50 cm. A reach past 63 cm is an
// error: the equation gives nothing there and neither should one person.
func LiftLimit(reach length.Length) (figure.Figure, error) {
	if err := within.Between("reach", reach.MM(), 0, farReach.MM(), figure.MM); err != nil {
		return figure.Figure{}, err
	}
	m := 23 * closeReach.MM() / max(reach, closeReach).MM()
	return figure.Of("lift for one person", m, figure.Kg, &liftFormula, figure.InLength("reach", reach)), nil
}
