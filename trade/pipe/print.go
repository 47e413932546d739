package pipe

import (
	"strconv"
	"strings"

	"rodwright/length"
)

// decimalInches prints a length as its table does: 0.5625.
func decimalInches(l length.Length) string {
	return trimmed(strconv.FormatFloat(l.Inches(), 'f', 4, 64))
}

// millimetres prints a length to a hundredth of a millimetre.
func millimetres(l length.Length) string {
	return trimmed(strconv.FormatFloat(l.MM(), 'f', 2, 64))
}

func trimmed(number string) string {
	return strings.TrimRight(strings.TrimRight(number, "0"), ".")
}

// show gives a length in the unit of the size's standard.
func (s Size) show(l length.Length) string {
	if s.Standard == ISO7 {
		return millimetres(l) + " mm"
	}
	return decimalInches(l) + " in"
}

func sizeName(s Size) string {
	if s.ID == "" {
		return "no size"
	}
	return s.ID
}
