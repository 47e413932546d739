package sheet

import (
	"testing"

	"rodwright/book"
	"rodwright/build"
	"rodwright/examples"
	document "rodwright/piece"
	"rodwright/shop"
)

func TestNoWordsOfAnExampleStandOnOthers(t *testing.T) {
	for _, name := range examples.Names() {
		text, err := examples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := document.Read(name, text)
		if err != nil {
			t.Fatal(err)
		}
		b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, paper := range []book.Paper{book.A4, book.Letter} {
			t.Run(name+" "+string(paper), func(t *testing.T) {
				d, err := book.Of(b, book.Options{Paper: paper})
				if err != nil {
					t.Fatal(err)
				}
				set(t, d)
			})
		}
	}
}
