package lumber

import "rodwright/length"

// KeepOffcut tells whether an offcut is worth a place on the rack, by one maker's written rule: under 6 in
// long: burn; 4 in or wider: keep; 3/4 in thick and 2 in wide: keep; else burn what has under 1 1/4 in² of
// section. Common practice, no source; a shop has its own.
func KeepOffcut(thickness, width, long length.Length) (keep bool, why string) {
	const in = length.Inch
	switch {
	case long < 6*in:
		return false, "under 6 in long"
	case width >= 4*in:
		return true, "4 in wide or more"
	case thickness >= 3*in/4 && width >= 2*in:
		return true, "3/4 in thick and 2 in wide"
	case thickness.Inches()*width.Inches() < 1.25:
		return false, "under 1 1/4 square inches of section"
	}
	return true, "1 1/4 square inches of section or more"
}
