package wood

import (
	"fmt"

	"rodwright/figure"
)

// The air for which [EMC] is given: the temperatures of Wood Handbook Table 4-2, 30 to 210 °F.
const (
	LowestEMCTemp  = (30 - 32) / 1.8  // °C
	HighestEMCTemp = (210 - 32) / 1.8 // °C
)

var emcFormula = figure.Formula{
	Text:   "EMC = 1800/W · [KH/(1 − KH) + (K1·KH + 2·K1·K2·K²H²)/(1 + K1·KH + K1·K2·K²H²)]",
	Source: "Wood Handbook FPL-GTR-282 (2021) eq. 4-5, Fahrenheit form",
	Range:  "30 to 210 °F, 0 to 100 % RH; Table 4-2 is printed for 5 to 95 %",
}

// EMC returns the moisture content in percent that wood comes to in air of the given temperature in degrees
// Celsius and relative humidity in percent. Wood Handbook eq. 4-5 in its Fahrenheit form:
//
//	EMC = 1800/W · [KH/(1 − KH) + (K1·KH + 2·K1·K2·K²H²)/(1 + K1·KH + K1·K2·K²H²)]
//	W  = 330 + 0.452 T + 0.00415 T²
//	K  = 0.791 + 0.000463 T − 0.000000844 T²
//	K1 = 6.34 + 0.000775 T − 0.0000935 T²
//	K2 = 1.09 + 0.0284 T − 0.0000904 T²
//
// H is the relative humidity as a share. It lies within 0.07 points of every value of Table 4-2, and is the
// same for all species to about a point. Air outside the formula's range is an error.
func EMC(tempC, rh float64) (figure.Figure, error) {
	// A temperature given in °F may come back from °C a hair outside the range.
	const slack = 1e-9
	if !(tempC >= LowestEMCTemp-slack && tempC <= HighestEMCTemp+slack) {
		return figure.Figure{}, fmt.Errorf("the temperature is %s °C; equilibrium moisture content is known from −1.1 to 98.9 °C (30 to 210 °F)", figure.Digits(tempC, 4))
	}
	if !(rh >= 0 && rh <= 100) {
		return figure.Figure{}, fmt.Errorf("the relative humidity is %s %%; write 0 to 100 %%", figure.Digits(rh, 4))
	}
	f := tempC*1.8 + 32
	return figure.Of("equilibrium moisture content", emc(f, rh/100), figure.Percent, &emcFormula,
		figure.In("T", f, figure.Fahrenheit), figure.In("H", rh, figure.Percent)), nil
}

// emc is eq. 4-5 with t in °F and h as a share.
func emc(t, h float64) float64 {
	w := 330 + 0.452*t + 0.00415*t*t
	k := 0.791 + 0.000463*t - 0.000000844*t*t
	k1 := 6.34 + 0.000775*t - 0.0000935*t*t
	k2 := 1.09 + 0.0284*t - 0.0000904*t*t
	kh := k * h
	return 1800 / w * (kh/(1-kh) + (k1*kh+2*k1*k2*kh*kh)/(1+k1*kh+k1*k2*kh*kh))
}

// MoistureContent returns the moisture content in percent of a sample that was weighed wet and oven dry:
// (wet − dry) ÷ dry.
func MoistureContent(wet, dry float64) (float64, error) {
	if !(dry > 0 && wet >= dry) {
		return 0, fmt.Errorf("a sample of %s wet and %s dry can't be; the dry weight is above zero and no more than the wet", figure.Digits(wet, 4), figure.Digits(dry, 4))
	}
	return (wet - dry) / dry * 100, nil
}
