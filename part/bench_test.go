package part_test

import (
	"os"
	"testing"

	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// BenchmarkTakeOff takes off the reference piece of every budget: 12 panels, 60 sticks.
func BenchmarkTakeOff(b *testing.B) {
	text, err := os.ReadFile("../examples/large.piece.yaml")
	if err != nil {
		b.Fatal(err)
	}
	doc, err := piece.Read("large.piece.yaml", text)
	if err != nil {
		b.Fatal(err)
	}
	s := shop.Sample()
	r, err := piece.Resolve(doc, s)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := part.TakeOff(r, s); err != nil {
			b.Fatal(err)
		}
	}
}
