package check_test

import (
	"fmt"

	"rodwright/check"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// A plant stand, narrow for its height, on caps.
const plantStand = `
rodwright: 1
piece: plant stand
unit: in
fineness: 1/16
place: {room: studio}
wood: {species: hard-maple, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 1/2}
holds:
  - {name: fern, on: top, size: 10 × 10 × 24 in, weight: 18 lb}
posts:
  legs: {at: corners of top, inset: 3 in, from: feet, to: top}
rails:
  ring: {joins: legs posts, level: 6 in}
panels:
  top: {length: 14 in, width: 12 in, thickness: 1 in, grain: along length, level: 36 in, sits: on legs posts}
feet: caps
`

// Example reads a piece, takes it off and asks one check what it says.
func Example() {
	doc, err := piece.Read("plant-stand.piece.yaml", []byte(plantStand))
	if err != nil {
		fmt.Println(err)
		return
	}
	s := shop.Sample()
	r, err := piece.Resolve(doc, s)
	if err != nil {
		fmt.Println(err)
		return
	}
	parts, err := part.TakeOff(r, s)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range check.Tip(check.Of(r, parts, s)) {
		fmt.Printf("%s %s: %s, at least %s\n", f.Verdict, f.Place, f.Figure.Show(length.Sixteenth), f.Limit.Show(length.Sixteenth))
		if f.Mend != "" {
			fmt.Println("  mend:", f.Mend)
		}
	}
	// Output:
	// fails to the front, with everything it holds: 5.02°, at least 10°
	//   mend: move the feet on that side 3 in out, to the front; or anchor it to a wall
	// fails to the right, with everything it holds: 6.75°, at least 10°
	//   mend: move the feet on that side 2 in out, to the right; or anchor it to a wall
	// fails to the back, with everything it holds: 5.12°, at least 10°
	//   mend: move the feet on that side 2 15/16 in out, to the back; or anchor it to a wall
	// fails to the left, with everything it holds: 6.75°, at least 10°
	//   mend: move the feet on that side 2 in out, to the left; or anchor it to a wall
}
