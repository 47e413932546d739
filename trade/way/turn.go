package way

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

var (
	turnFormula = figure.Formula{
		Text:   "l = max(a, b, min over θ of (a·cos θ + b·sin θ − w) ÷ (sin θ·cos θ)), none where w > min(a, b)",
		Source: "geometry: the ladder round a corner, with a width",
		Range:  "a rectangle w wide, 0 < θ < 90°, round a right-angled corner of passages a and b wide, upright walls",
	}
	pitchFormula = figure.Formula{
		Text:   "l = long·cos φ + high·sin φ, at long·sin φ + high·cos φ = ceiling",
		Source: "geometry", Range: "a box pitched up until it touches the ceiling; 'high' where it can be stood up",
	}
)

// turnSteps is into how many steps the quarter turn is parted before the least is sought between two of them.
const turnSteps = 180

// LongestRound returns, in mm, the longest rectangle of the given width that goes round a right-angled corner of two
// passages. It slides with its outer side's ends on the two outer walls; the inner corner then stays clear of its inner
// side at every angle θ when
//
//	a·cos θ + b·sin θ − l·sin θ·cos θ ≥ w
//
// What is no longer than one passage is wide goes round without turning. A thing as wide as nothing is the classical
// ladder, (a^⅔ + b^⅔)^(3/2). One wider than the narrower passage does not pass: the figure is 0.
func LongestRound(a, b, wide length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("width of the passage from", a), within.Length("width of the passage to", b), within.Room("width", wide)); err != nil {
		return figure.Figure{}, err
	}
	longest := 0.0
	if wide <= min(a, b) {
		longest = max(a.MM(), b.MM(), leastRound(a.MM(), b.MM(), wide.MM()))
	}
	return figure.Of("longest that goes round", longest, figure.MM, &turnFormula,
		figure.InLength("a", a), figure.InLength("b", b), figure.InLength("w", wide)), nil
}

// leastRound is the least of (a·cos θ + b·sin θ − w) ÷ (sin θ·cos θ) between 0 and 90°: the best of equal steps, then
// narrowed by thirds.
func leastRound(a, b, w float64) float64 {
	at := func(theta float64) float64 {
		s, c := math.Sincos(theta)
		return (a*c + b*s - w) / (s * c)
	}
	const step = math.Pi / 2 / turnSteps
	best := 1
	for i := 2; i < turnSteps; i++ {
		if at(float64(i)*step) < at(float64(best)*step) {
			best = i
		}
	}
	lo, hi := max(float64(best-1)*step, step/1000), min(float64(best+1)*step, math.Pi/2-step/1000)
	for range 60 {
		third := (hi - lo) / 3
		if at(lo+third) < at(hi-third) {
			hi -= third
		} else {
			lo += third
		}
	}
	return at((lo + hi) / 2)
}

// Pitched returns, in mm, how long a box is in plan when it is pitched up until it touches the ceiling: its end rises,
// and the floor it takes grows shorter. One that can be stood up under the ceiling takes its height only, one that is
// as high as the ceiling, or lower when pitched, keeps its length.
func Pitched(long, high, ceiling length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("length", long), within.Length("height", high), within.Length("ceiling", ceiling)); err != nil {
		return figure.Figure{}, err
	}
	l, h, c := long.MM(), high.MM(), ceiling.MM()
	plan := l
	switch d := math.Hypot(l, h); {
	case d <= c:
		plan = min(l, h)
	case h < c:
		phi := math.Asin(c/d) - math.Atan2(h, l)
		plan = min(l, l*math.Cos(phi)+h*math.Sin(phi))
	}
	return figure.Of("length in plan", plan, figure.MM, &pitchFormula,
		figure.InLength("long", long), figure.InLength("high", high), figure.InLength("ceiling", ceiling)), nil
}
