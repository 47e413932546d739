package sheet_test

import (
	"fmt"

	"rodwright/book"
	"rodwright/book/pdf/sheet"
)

func ExampleOf() {
	set, err := sheet.Of(&book.Document{
		Title: "Shelf", Paper: book.Letter, Units: "inches to 1/16",
		Sections: []book.Section{
			{ID: "wood", Title: "Wood", Blocks: []book.Block{book.Paragraph{Words: "One board."}}},
			{ID: "work", Title: "Work", NewPage: true, Blocks: []book.Block{book.Step{Number: 1, Title: "Saw"}}},
		},
	})
	fmt.Printf("%d sheets of %.0f × %.0f pt, %v\n", len(set.Sheets), set.Width, set.Height, err)
	// Output: 3 sheets of 612 × 792 pt, <nil>
}
