package random_test

import (
	"bytes"
	"testing"

	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
)

// pieces is how many seeds are tried: together they must have every feature.
const pieces = 1000

func TestAThousandRandomPiecesAreValid(t *testing.T) {
	s := shop.Sample()
	seen := random.Coverage{}
	failed := 0
	for seed := range uint64(pieces) {
		text := random.Document(seed)
		doc, err := piece.Read("random.piece.yaml", text)
		if err == nil {
			var r *piece.Resolved
			if r, err = piece.Resolve(doc, s); err == nil {
				seen.Add(r)
				checkBounds(t, seed, r)
				continue
			}
		}
		t.Errorf("seed %d: %v\n%s", seed, err, text)
		if failed++; failed == 5 {
			t.FailNow()
		}
	}
	t.Logf("features of %d pieces:\n%s", pieces-failed, seen)
	for _, f := range seen.Missing() {
		t.Errorf("no piece has: %s", f)
	}
}

func checkBounds(t *testing.T, seed uint64, r *piece.Resolved) {
	t.Helper()
	if n := len(r.Panels); n < 1 || n > random.MostPanels {
		t.Errorf("seed %d: %d panels", seed, n)
	}
	if n := len(r.Sticks); n < random.LeastStick || n > random.MostSticks {
		t.Errorf("seed %d: %d sticks\n%s", seed, n, r.Doc.Text)
	}
}

func TestTheSameSeedGivesTheSamePiece(t *testing.T) {
	for seed := range uint64(50) {
		if !bytes.Equal(random.Document(seed), random.Document(seed)) {
			t.Fatalf("seed %d gives two pieces", seed)
		}
	}
}

func TestSeedsDiffer(t *testing.T) {
	seen := map[string]uint64{}
	for seed := range uint64(200) {
		text := string(random.Document(seed))
		if other, twice := seen[text]; twice {
			t.Fatalf("seeds %d and %d give the same piece", other, seed)
		}
		seen[text] = seed
	}
}
