package shop

import (
	"fmt"

	"rodwright/figure"
	"rodwright/trade/finish"
)

// DampRH is the relative humidity, in percent, above which a room counts as damp for the coat on its steel.
// Common practice, no source.
const DampRH = 60

// DampCoat is the class of finish that steel gets in a damp room where the shop usually takes none that lies
// on as a film: wax in dry rooms, a film in damp ones. Common practice, no source.
const DampCoat = "film-varnish"

// SteelCoat returns the class of finish that the steel of a piece is coated with in a place with the given
// highest relative humidity, in percent, and in words why when that is not the shop's usual one. A shop that
// coats no steel coats none in a damp room either: the class is then empty.
func (s Settings) SteelCoat(highRH float64) (class, why string) {
	if s.MetalFinish == "" || highRH <= DampRH || finish.Film(s.MetalFinish) {
		return s.MetalFinish, ""
	}
	return DampCoat, fmt.Sprintf("the place comes to %s %% relative humidity: the steel gets a film instead of the shop's %s",
		figure.Digits(highRH, 3), finish.Words(s.MetalFinish))
}
