package lettering_test

import (
	"fmt"

	"rodwright/draw/lettering"
	"rodwright/length"
)

// Three marks at 10, 11 and 40 mm, whose words need 4 mm each.
func ExampleSpread() {
	at := []length.Length{10 * length.Millimetre, 11 * length.Millimetre, 40 * length.Millimetre}
	for _, x := range lettering.Spread(at, 4*length.Millimetre) {
		fmt.Println(length.HalfMM.Text(x))
	}
	// Output:
	// 8.5 mm
	// 12.5 mm
	// 40 mm
}
