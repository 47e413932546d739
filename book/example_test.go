package book_test

import (
	"fmt"
	"strings"

	"rodwright/book"
	"rodwright/build"
	"rodwright/piece"
	"rodwright/shop"
)

// The book of a starter piece, for a reader of millimetres, as plain text.
func ExampleOf() {
	text, err := piece.Starter("low-bench")
	if err != nil {
		fmt.Println(err)
		return
	}
	doc, err := piece.Read("low-bench.piece.yaml", text)
	if err != nil {
		fmt.Println(err)
		return
	}
	b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	metric, err := book.Units("metric", doc.Fineness)
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := book.Of(b, book.Options{Paper: book.Letter, Fineness: metric})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range strings.SplitN(d.Text(), "\n", 4)[:3] {
		fmt.Println(line)
	}
	// Output:
	// LOW BENCH
	// 1219 mm long × 381 mm deep × 444 mm high, 19.3 kg
	// LETTER, en, measured in millimetres
}
