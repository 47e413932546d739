package book_test

import (
	"testing"

	"rodwright/book"
	"rodwright/build"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
)

// Books of made-up pieces: both standards of pipe, wood and sheet goods, walls and casters.
func TestAnyPieceIsABookWithoutALengthOfTheOtherSystem(t *testing.T) {
	memo := build.NewMemo(512)
	for seed := range uint64(16) {
		doc, err := piece.Read("random.piece.yaml", random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, memo)
		if err != nil {
			t.Fatal(err)
		}
		for _, units := range []string{"inch", "metric"} {
			to, err := book.Units(units, doc.Fineness)
			if err != nil {
				t.Fatal(err)
			}
			d, err := book.Of(b, book.Options{Paper: book.A4, Fineness: to, Memo: memo})
			if err != nil {
				t.Fatalf("seed %d: %v", seed, err)
			}
			seen := map[string]bool{}
			for _, s := range d.Sections {
				for _, bl := range s.Blocks {
					sound(t, s.ID, bl, seen)
				}
			}
			if found := foreign(d.Text(), units); len(found) > 0 {
				t.Errorf("seed %d in %s: %q", seed, units, found)
			}
		}
	}
}
