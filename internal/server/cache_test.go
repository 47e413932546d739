package server

import (
	"sync"
	"testing"

	"pgregory.net/rapid"

	"rodwright/piece"
	"rodwright/piece/random"
)

func TestACacheKeepsWhatWasUsedLast(t *testing.T) {
	c := newCache[int, int](2)
	made := 0
	get := func(k int) int { return c.get(k, func() int { made++; return k * 10 }) }
	for _, k := range []int{1, 2, 1, 3, 1, 2} { // 3 puts 2 out, 2 puts 3 out
		if got := get(k); got != k*10 {
			t.Errorf("%d: %d", k, got)
		}
	}
	if made != 4 || c.size() != 2 {
		t.Errorf("made %d, kept %d", made, c.size())
	}
}

func TestACacheIsBoundedHoweverManyAsk(t *testing.T) {
	c := newCache[int, int](8)
	var all sync.WaitGroup
	for g := range 8 {
		all.Go(func() {
			for i := range 200 {
				if got := c.get(i*g%37, func() int { return i * g % 37 }); got != i*g%37 {
					t.Errorf("%d for %d", got, i*g%37)
				}
			}
		})
	}
	all.Wait()
	if c.size() > 8 {
		t.Errorf("%d kept", c.size())
	}
}

// What a field says is what its path names, and putting it back changes nothing.
func TestEveryFieldIsAtItsPath(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := random.Document(rapid.Uint64Range(0, 1<<20).Draw(t, "piece"))
		doc, err := piece.Read("piece", text)
		if err != nil {
			t.Fatal(err)
		}
		fields, err := fieldsOf(doc)
		if err != nil || len(fields) == 0 {
			t.Fatalf("%d fields, %v", len(fields), err)
		}
		seen := map[string]bool{}
		for _, f := range fields {
			if seen[f.Path] || f.Label == "" || f.Group == "" {
				t.Fatalf("%+v", f)
			}
			seen[f.Path] = true
		}
		f := rapid.SampledFrom(fields).Draw(t, "field")
		value, _, err := piece.ValueAt(text, f.Path)
		if err != nil || value != f.Value {
			t.Fatalf("%+v: %q there, %v", f, value, err)
		}
		again, err := piece.Edit(text, f.Path, f.Value)
		if err != nil {
			t.Fatalf("%+v: %v", f, err)
		}
		if _, err := piece.Read("piece", again); err != nil {
			t.Fatalf("%+v: %v", f, err)
		}
	})
}
