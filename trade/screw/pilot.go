package screw

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/wood"
)

var (
	pilotHandbook = figure.Formula{
		Text:   "pilot = root · 0.90 hardwood, 0.70 softwood",
		Source: "Wood Handbook FPL-GTR-282 (2021) ch. 8, lead holes for wood screws, from memory",
		Range:  "side grain, seasoned wood",
	}
	pilotSuppliers = figure.Formula{
		Text:   "pilot = root · 1.00 hardwood, 0.85 softwood",
		Source: "a screw supplier's chart",
		Range:  "side grain",
	}
	pilotTested = figure.Formula{
		Text:   "pilot = shank · 0.50 side grain, 0.70 end grain",
		Source: "laboratory pull tests in red lauan and a softwood, abstracts only",
		Range:  "smaller pilots held no better; above the root diameter holding fell sharply",
	}
)

// Boring is the pilot for one screw, as those who should know have it.
type Boring struct {
	Pilot     figure.Figure // mm, 90 % of the root in hardwood, 70 % in softwood: the handbook
	Suppliers figure.Figure // mm, 100 and 85 % of the root
}

// Pilot returns the diameter to bore for the thread of a wood screw in side grain: 90 % of the root
// diameter in hardwood, 70 % in softwood, beside what screw suppliers say.
func Pilot(gauge int, s wood.Species) (Boring, error) {
	sc, err := Lookup(gauge)
	if err != nil {
		return Boring{}, err
	}
	handbook, suppliers := int64(70), int64(85)
	if s.Hardwood {
		handbook, suppliers = 90, 100
	}
	of := func(percent int64, f *figure.Formula) figure.Figure {
		return figure.OfLength("pilot", sc.Root.Scale(percent, 100), f, figure.InLength("root", sc.Root)).From(sc.RootSource.String())
	}
	return Boring{of(handbook, &pilotHandbook), of(suppliers, &pilotSuppliers)}, nil
}

// TestedPilot returns the pilot in mm that held best in published pull tests: half the shank in side grain,
// 70 % of it in end grain. It is a check on [Pilot], not a rule of its own.
func TestedPilot(gauge int, grain Grain) (figure.Figure, error) {
	sc, err := Lookup(gauge)
	if err != nil {
		return figure.Figure{}, err
	}
	if _, err := ParseGrain(string(grain)); err != nil {
		return figure.Figure{}, err
	}
	percent := int64(50)
	if grain == End {
		percent = 70
	}
	return figure.OfLength("pilot", sc.Shank.Scale(percent, 100), &pilotTested, figure.InLength("shank", sc.Shank)), nil
}

// Bit returns the drill bit to take for a pilot: the nearest 1/64 in step, or the nearest half millimetre
// for makers who have metric bits.
func Bit(pilot length.Length, metric bool) length.Length {
	if metric {
		return length.HalfMM.Round(pilot)
	}
	return length.SixtyFourth.Round(pilot)
}
