package draw

import "rodwright/length"

// scales returns the scales that a reader's rule shows, 1 to each, for as far as they are wanted: metric ones
// after ISO 5455 with 15, 25 and 30 between (from memory); for inches those that make a foot a round number of
// quarters of an inch.
func scales(u length.Unit) (first []int64, again []int64, by int64) {
	if u.Metric() {
		return []int64{1, 2, 5}, []int64{10, 15, 20, 25, 30, 50}, 10
	}
	return []int64{1, 2}, []int64{4, 6}, 2
}

// ScaleFor returns the least scale 1 : n at which something of a width and height keeps within the style's
// room: 1, 2, 5, 10, 15, 20, 25, 30, 50, 100, 150 … in millimetres, 1, 2, 4, 6, 8, 12, 16, 24 … in inches. A
// room of 0 or less in one direction sets no limit there.
func ScaleFor(width, height length.Length, st Style) int64 {
	fits := func(per int64) bool {
		return within(width, st.Width, per) && within(height, st.Height, per)
	}
	first, again, by := scales(st.Fineness.Unit)
	for _, per := range first {
		if fits(per) {
			return per
		}
	}
	for times := int64(1); ; times *= by {
		for _, per := range again {
			// a greater scale than this draws any length that is read as less than a dot
			if per *= times; fits(per) || per > int64(length.Max) {
				return per
			}
		}
	}
}

func within(full length.Length, room float64, per int64) bool {
	return room <= 0 || full.MM() <= room*float64(per)
}
