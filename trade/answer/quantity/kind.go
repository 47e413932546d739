package quantity

// Kind is what a value measures. It decides which units may follow the number.
type Kind uint8

// The kinds of values that are asked for at the bench, each with the unit its number is kept in.
const (
	Length      Kind = iota // mm; the exact length is kept beside it
	Rough                   // a length, or the quarters of an inch that rough lumber is sold by: 8/4
	Mass                    // kg
	Force                   // N; a mass stands for its weight
	Pressure                // MPa; also a modulus of elasticity
	Temperature             // °C
	Volume                  // ml
	Area                    // m²; also two lengths with an x between them
	Density                 // kg/m³
	Speed                   // m/s
	Coverage                // m² that a litre of finish covers
	Spread                  // g of adhesive on a square metre of joint
	Percent                 // percent; the sign is wanted
	Money                   // a plain number in the shop's currency
	Count                   // a whole number
	Ratio                   // a plain number, or a percent of one
	Mix                     // parts to parts, 2:1, or parts to one: the first for one of the second
	Time                    // hours
	Gauge                   // the number of a wood screw: 10 or #10
	Amount                  // whatever is bought: number, board feet, length, area, volume, mass
	Inertia                 // mm⁴, the second moment of area of a section
)

// Kinds lists every kind.
func Kinds() []Kind {
	all := make([]Kind, len(words))
	for i := range words {
		all[i] = Kind(i)
	}
	return all
}

// words holds what a kind is called, the unit its number is kept in, and how one is written.
var words = [...]struct{ name, base, example string }{
	Length:      {"a length", "mm", `20 1/4 in, 1' 2 3/8" or 365 mm`},
	Rough:       {"quarters of an inch or a length", "mm", "8/4, 1 1/4 in or 32 mm"},
	Mass:        {"a mass", "kg", "80 lb or 36 kg"},
	Force:       {"a force, or a mass for its weight", "N", "350 N, 80 lbf or 80 lb"},
	Pressure:    {"a pressure or modulus", "MPa", "200 psi, 1.4 MPa or 12.5 GPa"},
	Temperature: {"a temperature", "C", "70 F or 21 C"},
	Volume:      {"a volume", "ml", "500 ml, 1 qt or 2 gal"},
	Area:        {"an area", "m2", "17.5 sqft, 1.6 m2 or 91 in x 28 in"},
	Density:     {"a density", "kg/m3", "1100 kg/m3 or 1.1 g/ml"},
	Speed:       {"a speed", "m/s", "0.5 m/s or 20 in/s"},
	Coverage:    {"a coverage", "m2/L", "12 m2/L, 125 sqft/qt or 500 sqft/gal"},
	Spread:      {"a spread", "g/m2", "200 g/m2 or 40 lb/1000sqft"},
	Percent:     {"a percentage", "%", "45 %"},
	Money:       {"a plain number", "", "420.50"},
	Count:       {"a whole number", "", "4"},
	Ratio:       {"a plain number", "", "0.9"},
	Mix:         {"parts to parts", "", "2:1 or 2"},
	Time:        {"a time", "h", "24 h or 40 min"},
	Gauge:       {"the gauge of a wood screw", "", "10 or #10"},
	Amount:      {"a number or a quantity", "", "20 bf, 14 ft or 12"},
	Inertia:     {"a second moment of area", "mm4", "0.037 in4, 15400 mm4 or 1.54 cm4"},
}

// String returns what the kind is called, with its article: a length, a mass.
func (k Kind) String() string { return words[k].name }

// Example returns values of the kind as a maker writes them.
func (k Kind) Example() string { return words[k].example }

// Base returns the symbol of the unit that the number of a value is kept in; empty where it has none.
func (k Kind) Base() string { return words[k].base }
