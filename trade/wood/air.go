package wood

import (
	"fmt"
	"math"

	"rodwright/figure"
)

var indoorFormula = figure.Formula{
	Text:   "RH_in = RH_out·ps(T_out)/ps(T_in) + 100·(m/1000)·R_v·(T_in + 273.15)/ps(T_in)",
	Source: "common practice, no source: outdoor air warmed at the same vapour pressure; ps by the Magnus formula, from memory",
	Range:  "RH in %, T in °C, m in g/m³, ps in Pa, R_v 461.5 J/(kg·K); −40 to 60 °C",
}

// IndoorRH returns the relative humidity in percent of a room at inC whose air comes from outdoors at outC and
// outRH, all °C and percent, and takes up addedGrams of water per m³ of room air from people, plants and
// washing:
//
//	RH_in = RH_out · ps(T_out) ÷ ps(T_in) + added vapour pressure ÷ ps(T_in)
//
// What comes to more than 100 % condenses; the figure is then 100 and says so.
func IndoorRH(outRH, outC, inC, addedGrams float64) (figure.Figure, error) {
	if err := air(outRH, outC, inC, addedGrams); err != nil {
		return figure.Figure{}, err
	}
	rh := warmed(outRH, outC, inC) + addedGrams*perGram(inC)
	f := figure.Of("indoor relative humidity", min(rh, 100), figure.Percent, &indoorFormula,
		figure.In("RH_out", outRH, figure.Percent), figure.In("T_out", outC, figure.Celsius),
		figure.In("T_in", inC, figure.Celsius), figure.InText("m", figure.Digits(addedGrams, 3)+" g/m³"))
	if rh > 100 {
		f = f.Assuming("the air can hold no more: water condenses on cold surfaces")
	}
	return f, nil
}

// warmed is the relative humidity in percent of outdoor air at another temperature and the same vapour pressure.
func warmed(outRH, outC, inC float64) float64 { return outRH * saturation(outC) / saturation(inC) }

// perGram is how many percent of relative humidity a gram of water in a m³ of air at inC is.
func perGram(inC float64) float64 {
	const vapourGas = 461.5 // J/(kg·K), the gas constant of water vapour
	return 100 * vapourGas * (inC + 273.15) / 1000 / saturation(inC)
}

func air(outRH, outC, inC, addedGrams float64) error {
	if !(outRH >= 0 && outRH <= 100) {
		return fmt.Errorf("the relative humidity outdoors is %s %%; write 0 to 100 %%", figure.Digits(outRH, 4))
	}
	for _, t := range []float64{outC, inC} {
		if !(t >= -40 && t <= 60) {
			return fmt.Errorf("the temperature of the air is %s °C; write −40 to 60 °C", figure.Digits(t, 4))
		}
	}
	if !(addedGrams >= 0 && addedGrams <= 100) {
		return fmt.Errorf("the moisture added indoors is %s g/m³; write 0 to 100 g/m³", figure.Digits(addedGrams, 4))
	}
	return nil
}

// saturation is the vapour pressure in Pa of saturated air over water at t °C, by the Magnus formula with the
// constants 610.94 Pa, 17.625 and 243.04 °C, from memory.
func saturation(t float64) float64 { return 610.94 * math.Exp(17.625*t/(t+243.04)) }
