package change_test

import (
	"fmt"

	"rodwright/build"
	"rodwright/change"
	"rodwright/examples"
	"rodwright/piece"
	"rodwright/shop"
)

func ExampleCompare() {
	derive := func(text []byte) (*build.Build, error) {
		doc, err := piece.Read("table", text)
		if err != nil {
			return nil, err
		}
		return build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
	}
	try := func() error {
		text, err := examples.Text("packing-table")
		if err != nil {
			return err
		}
		higher, err := piece.Edit(text, "sizes/height", "36 in")
		if err != nil {
			return err
		}
		from, err := derive(text)
		if err != nil {
			return err
		}
		to, err := derive(higher)
		if err != nil {
			return err
		}
		for _, c := range change.Compare(from, to).Cuts {
			fmt.Printf("%s %s, %d of them: %.1f → %.1f mm\n", c.Tag, c.Name, c.Count, c.From, c.To)
		}
		return nil
	}
	if err := try(); err != nil {
		fmt.Println(err)
	}
	// Output:
	// C2 front post 2, 2 of them: 673.1 → 698.5 mm
	// C4 back post 2, 2 of them: 673.1 → 698.5 mm
}
