package check

import (
	"os"
	"testing"

	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// BenchmarkLarge runs every check on the reference piece of 12 panels and 60 sticks.
func BenchmarkLarge(b *testing.B) {
	text, err := os.ReadFile("../examples/large.piece.yaml")
	if err != nil {
		b.Fatal(err)
	}
	s := shop.Sample()
	doc, err := piece.Read("large.piece.yaml", text)
	if err != nil {
		b.Fatal(err)
	}
	r, err := piece.Resolve(doc, s)
	if err != nil {
		b.Fatal(err)
	}
	l, err := part.TakeOff(r, s)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		p := Of(r, l, s)
		for _, c := range all {
			c.of(p)
		}
	}
}
