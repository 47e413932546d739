package book

import (
	"fmt"

	"rodwright/length"
)

// Units returns the fineness in which a reader sees lengths: the piece's own for "" and where the word names
// its own system, else 1/16 in for inch and 1 mm for metric.
func Units(word string, own length.Fineness) (length.Fineness, error) {
	switch word {
	case "":
		return own, nil
	case "inch":
		if !own.Unit.Metric() {
			return own, nil
		}
		return length.Sixteenth, nil
	case "metric":
		if own.Unit.Metric() {
			return own, nil
		}
		return length.WholeMM, nil
	}
	return length.Fineness{}, fmt.Errorf("units %q are not known: inch or metric", word)
}

// unitWords tells a fineness: inches to 1/16, millimetres, millimetres to 0.5.
func unitWords(f length.Fineness) string {
	switch {
	case !f.Unit.Metric():
		return "inches to " + f.String()
	case f == length.WholeMM:
		return "millimetres"
	}
	return "millimetres to " + f.Number(f.Step)
}
