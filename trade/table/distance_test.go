package table

import (
	"testing"

	"pgregory.net/rapid"
)

// Levenshtein's distance with the examples of any textbook, from memory.
func TestDistanceIsLevenshteins(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"kitten", "sitting", 3},
		{"flaw", "lawn", 2},
		{"", "oak", 3},
		{"oak", "", 3},
		{"oak", "oak", 0},
		{"ahorn", "åhorn", 1},
		{"saturday", "sunday", 3},
	} {
		if got := distance(c.a, c.b); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func TestDistanceIsAMetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[ab]{0,6}`)
		a, b, c := word.Draw(t, "a"), word.Draw(t, "b"), word.Draw(t, "c")
		if distance(a, b) != distance(b, a) {
			t.Fatalf("%q and %q: one way is longer", a, b)
		}
		if (distance(a, b) == 0) != (a == b) || distance(a, c) > distance(a, b)+distance(b, c) {
			t.Fatalf("%q, %q, %q: a detour is shorter", a, b, c)
		}
	})
}
