package part_test

import (
	"fmt"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

func ExampleTakeOff() {
	text, err := piece.Starter("stepped-stand")
	if err != nil {
		fmt.Println(err)
		return
	}
	doc, err := piece.Read("stepped-stand.piece.yaml", text)
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
	list, err := part.TakeOff(r, s)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range list.Parts {
		switch p.Kind {
		case part.Panel:
			fmt.Printf("%s %s, %s %s\n", p.Tag, p.Name, p.Material, length.Sixteenth.Text(p.Finished[0]))
		case part.Pipe:
			fmt.Printf("%s %d × %s, cut %s\n", p.Tag, p.Count, p.Name, length.Sixteenth.Show(p.Cut))
		}
	}
	// Output:
	// A1 deep board, white-oak 42 in
	// A2 high board, white-oak 41 in
	// C1 2 × front post 1, cut ≈ 3 3/8 in
	// C2 2 × front post 2, cut ≈ 6 7/8 in
	// C3 2 × back post 1, cut ≈ 3 3/8 in
	// C4 2 × back post 2, cut ≈ 5 15/16 in
	// C5 2 × back post 3, cut ≈ 20 1/2 in
	// C6 2 × side rail, cut ≈ 12 in
	// C7 1 × back rail, cut ≈ 35 in
}
