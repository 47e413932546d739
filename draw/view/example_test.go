package view_test

import (
	"fmt"
	"os"

	"rodwright/draw"
	"rodwright/draw/view"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

func ExampleOf() {
	text, err := os.ReadFile("../../examples/low-bench.piece.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	doc, err := piece.Read("low-bench", text)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := piece.Resolve(doc, shop.Sample())
	if err != nil {
		fmt.Println(err)
		return
	}
	list, err := part.TakeOff(r, shop.Sample())
	if err != nil {
		fmt.Println(err)
		return
	}
	d := view.Of(r, list, view.Top, draw.Style{Fineness: length.Sixteenth, Width: 174, Height: 120})
	fmt.Printf("%s, 1:%d\n", d.Title, d.Per)
	// Output:
	// From above, 1:8
}
