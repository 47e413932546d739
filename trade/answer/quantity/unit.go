package quantity

import "strings"

// The conversions are exact by the definitions of the international pound and inch of 1959, of standard
// gravity and of the gallon of 231 cubic inches; only the floating-point arithmetic rounds them.
const (
	pound  = 0.45359237          // kg
	g0     = 9.80665             // m/s²
	inch   = 25.4                // mm
	foot2  = 0.09290304          // m²
	gallon = 3785.411784         // ml
	quart  = gallon / 4          // ml
	psi    = pound * g0 / 645.16 // MPa; a square inch has 645.16 mm²
	fahr   = 5.0 / 9             // °C to one degree Fahrenheit
)

// unit is a way to write values of one kind.
type unit struct {
	kind     Kind
	symbols  string  // as written, the usual one first, parted by |; empty for a bare number
	size     float64 // base units to one of it
	zero     float64 // base units at its nought
	imperial bool
}

// units lists every way to write a number of a kind, the commonest first. Lengths are read by package
// length; an amount takes besides its own the units of length, area, volume and mass.
var units = [...]unit{
	{Mass, "kg", 1, 0, false}, {Mass, "g", 0.001, 0, false}, {Mass, "t", 1000, 0, false},
	{Mass, "lb|lbs", pound, 0, true}, {Mass, "oz", pound / 16, 0, true},

	{Force, "N", 1, 0, false}, {Force, "kN", 1000, 0, false}, {Force, "lbf", pound * g0, 0, true},
	{Force, "kg|kgf", g0, 0, false}, {Force, "g", g0 / 1000, 0, false}, {Force, "t", 1000 * g0, 0, false},
	{Force, "lb|lbs", pound * g0, 0, true}, {Force, "oz", pound * g0 / 16, 0, true},

	{Pressure, "psi|lbf/in2", psi, 0, true}, {Pressure, "ksi", 1000 * psi, 0, true}, {Pressure, "Pa", 1e-6, 0, false},
	{Pressure, "kPa", 1e-3, 0, false}, {Pressure, "MPa|N/mm2|N/mm²", 1, 0, false}, {Pressure, "GPa", 1000, 0, false}, {Pressure, "bar", 0.1, 0, false},

	{Temperature, "C|°C", 1, 0, false}, {Temperature, "F|°F", fahr, -32 * fahr, true},

	{Volume, "ml|mL", 1, 0, false}, {Volume, "L|l", 1000, 0, false}, {Volume, "floz|fl oz", gallon / 128, 0, true},
	{Volume, "pt", quart / 2, 0, true}, {Volume, "qt", quart, 0, true}, {Volume, "gal", gallon, 0, true},

	{Area, "m2|m²", 1, 0, false}, {Area, "cm2|cm²", 1e-4, 0, false}, {Area, "mm2|mm²", 1e-6, 0, false},
	{Area, "sqft|sq ft|ft2|ft²", foot2, 0, true}, {Area, "sqin|sq in|in2|in²", foot2 / 144, 0, true},

	{Density, "kg/m3|kg/m³", 1, 0, false}, {Density, "g/ml|g/mL|g/cm3|g/cm³|kg/L", 1000, 0, false}, {Density, "lb/ft3|lb/ft³", pound / (foot2 * 0.3048), 0, true},

	{Speed, "m/s", 1, 0, false}, {Speed, "in/s", inch / 1000, 0, true}, {Speed, "ft/s", 12 * inch / 1000, 0, true}, {Speed, "km/h", 1 / 3.6, 0, false},

	{Coverage, "m2/L|m²/L|m2/l|m²/l", 1, 0, false}, {Coverage, "sqft/qt", 1000 * foot2 / quart, 0, true}, {Coverage, "sqft/gal", 1000 * foot2 / gallon, 0, true},

	{Spread, "g/m2|g/m²", 1, 0, false}, {Spread, "lb/1000sqft", pound / foot2, 0, true},

	{Time, "h|hours", 1, 0, false}, {Time, "min", 1.0 / 60, 0, false}, {Time, "s", 1.0 / 3600, 0, false}, {Time, "d|days", 24, 0, false},

	{Inertia, "in4|in⁴", inch * inch * inch * inch, 0, true}, {Inertia, "mm4|mm⁴", 1, 0, false}, {Inertia, "cm4|cm⁴", 1e4, 0, false},

	{Percent, "%|percent", 1, 0, false},
	{Money, "", 1, 0, false}, {Count, "", 1, 0, false}, {Gauge, "", 1, 0, false},
	{Ratio, "", 1, 0, false}, {Ratio, "%|percent", 0.01, 0, false},
	{Amount, "", 1, 0, false}, {Amount, "bf|board feet|boardfeet", 1, 0, true},
}

// unitOf returns the unit of kind k that is written as symbol.
func unitOf(k Kind, symbol string) (unit, bool) {
	for _, u := range units {
		if u.kind != k {
			continue
		}
		for s := range strings.SplitSeq(u.symbols, "|") {
			if s == symbol {
				return u, true
			}
		}
	}
	return unit{}, false
}

// kindOf returns the first kind that has a unit written as symbol, for telling what was given instead.
func kindOf(symbol string) (Kind, bool) {
	for _, s := range []string{"in", `"`, "ft", "'", "mm", "cm", "m"} {
		if s == symbol {
			return Length, true
		}
	}
	for _, u := range units {
		if _, ok := unitOf(u.kind, symbol); ok && symbol != "" {
			return u.kind, true
		}
	}
	return 0, false
}

// Units returns the units that a value of kind k may carry, for a message: psi, ksi, Pa.
func Units(k Kind) string {
	switch k {
	case Length:
		return "in, ft, mm, cm, m"
	case Rough:
		return "quarters such as 8/4, in, mm"
	case Mix:
		return "none"
	case Amount:
		return "none, bf, or any unit of length, area, volume or mass"
	}
	var all []string
	for _, u := range units {
		if first, _, _ := strings.Cut(u.symbols, "|"); u.kind == k {
			if first == "" {
				first = "none"
			}
			all = append(all, first)
		}
	}
	return strings.Join(all, ", ")
}
