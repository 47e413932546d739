package check

import (
	"bytes"
	"os"
	"testing"

	"rodwright/finding"
	"rodwright/shop"
)

// large derives the reference piece of 12 panels and 60 sticks, with one text in place of another where both are given.
func large(b *testing.B, changes ...string) func() *Piece {
	b.Helper()
	text, err := os.ReadFile("../examples/large.piece.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for i := 0; i < len(changes); i += 2 {
		edited := bytes.Replace(text, []byte(changes[i]), []byte(changes[i+1]), 1)
		if bytes.Equal(edited, text) {
			b.Fatalf("the document lacks %q", changes[i])
		}
		text = edited
	}
	p, err := tryDerive(shop.Sample(), text)
	if err != nil {
		b.Fatal(err)
	}
	return func() *Piece { return Of(p.Resolved, p.Parts, p.Shop) }
}

// BenchmarkAllChecksOfLarge runs every check on the reference piece: cold, and with what was kept before one board got
// other loads. The aims are 80 and 25 ms.
func BenchmarkAllChecksOfLarge(b *testing.B) {
	judge := func(p *Piece) (fs []finding.Finding) {
		for _, c := range all {
			fs = append(fs, c.of(p)...)
		}
		return fs
	}
	whole, edited := large(b), large(b, "weight: 9 lb", "weight: 10 lb")
	b.Run("cold", func(b *testing.B) {
		for b.Loop() {
			judge(whole())
		}
	})
	b.Run("after one edit", func(b *testing.B) {
		before := keeping{}
		p := whole()
		p.Keep = before.keep
		judge(p)
		for b.Loop() {
			now := before.copied()
			p := edited()
			p.Keep = now.keep
			judge(p)
		}
	})
	for _, c := range all {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				c.of(whole())
			}
		})
	}
}
