package change_test

import (
	"testing"

	"rodwright/build"
	"rodwright/change"
	"rodwright/fate"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/shop"
)

// largeMade is the largest example with every panel and pipe made and finished.
func largeMade(b testing.TB) *change.Truth {
	s := &story{b, change.Log{Name: "large", Start: example(b, "large"), Shop: shop.Sample(), Memo: build.NewMemo(64)}}
	now := s.now()
	for _, n := range fate.Needs(now.Build.Resolved, now.Build.Parts) {
		h, err := now.Complete(journal.Happened{What: journal.Made, Part: n.Tag, Work: "finished"})
		if err != nil {
			b.Fatal(err)
		}
		s.write(journal.Entry{Kind: journal.Fact, Fact: &h})
	}
	return s.now()
}

// BenchmarkWeighLarge weighs an edit of one panel of the largest example with all its parts made; the edit is another
// each time. Reference: deriving the same piece, run side by side, so that their ratio does not depend on the machine.
func BenchmarkWeighLarge(b *testing.B) {
	now := largeMade(b)
	size := now.Build.Doc.Sizes[0]
	b.Run("weigh", func(b *testing.B) {
		for i := range b.N {
			put := journal.Put{Path: "sizes/" + size.Name, New: length.SixtyFourth.Text(size.Value + length.Length(i%64+1)*length.Inch/64)}
			if _, err := change.Weigh(now, put); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("derive", func(b *testing.B) {
		for range b.N {
			if _, err := build.Derive(build.Input{Document: now.Build.Doc, Shop: now.Log.Shop, Record: now.Record}, nil); err != nil {
				b.Fatal(err)
			}
		}
	})
}
