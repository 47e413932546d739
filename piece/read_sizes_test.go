package piece_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/piece"
)

// sizesOf reads the bench with further sizes and returns all of them by name.
func sizesOf(t *testing.T, lines ...string) map[string]piece.Size {
	t.Helper()
	doc := read(t, "  height: 18 in\n", "  height: 18 in\n  "+strings.Join(lines, "\n  ")+"\n")
	sizes := map[string]piece.Size{}
	for _, s := range doc.Sizes {
		sizes[s.Name] = s
	}
	return sizes
}

func TestASizeHoldsItsFormulaAndWhereItComesFrom(t *testing.T) {
	sizes := sizesOf(t, "low level: 17 1/2", "high level: low level + 21 in",
		"gap: {is: 1 in, origin: client, note: for a thumb}",
		"window: {is: 42 in, measured: 41 7/8}",
		"sill: {is: window - 1 in, origin: measured, measured: 40 3/4 in}",
		"board: window - 2 in",
		"grid: {is: 32 mm, origin: standard}")
	for _, c := range []struct {
		name, formula string
		origin        piece.Origin
		formed, value length.Length
		uses          []string
	}{
		{"low level", "17 1/2", piece.Assumed, 35 * in / 2, 35 * in / 2, nil},
		{"high level", "low level + 21 in", piece.Rule, 77 * in / 2, 77 * in / 2, []string{"low level"}},
		{"gap", "1 in", piece.Client, in, in, nil},
		{"window", "42 in", piece.Measured, 42 * in, 335 * in / 8, nil},
		{"sill", "window - 1 in", piece.Measured, 327 * in / 8, 163 * in / 4, []string{"window"}},
		{"board", "window - 2 in", piece.Rule, 319 * in / 8, 319 * in / 8, []string{"window"}},
		{"grid", "32 mm", piece.Standard, 32 * length.Millimetre, 32 * length.Millimetre, nil},
	} {
		s := sizes[c.name]
		if s.Formula != c.formula || s.Origin != c.origin || s.Formed != c.formed || s.Value != c.value || !slices.Equal(s.Uses, c.uses) {
			t.Errorf("%s: got %+v, want %+v", c.name, s, c)
		}
	}
	if s := sizes["window"]; s.OnSite == nil || *s.OnSite != 335*in/8 {
		t.Errorf("the window was measured: %v", s.OnSite)
	}
	if s := sizes["gap"]; s.Note != "for a thumb" || s.Pos != (piece.Pos{Line: 14, Column: 3}) {
		t.Errorf("the gap is noted as %q at %v", s.Note, s.Pos)
	}
}

func TestASizeMayBeUsedBeforeItIsWritten(t *testing.T) {
	if got := sizesOf(t, "a: b + 1", "b: c + 1", "c: 1")["a"].Value; got != 3*in {
		t.Errorf("a is %d nm, want 3 in", got)
	}
}

// A size is a length that can be set out: it is rounded to the nanometre, and others follow from that.
func TestASizeIsRoundedOnce(t *testing.T) {
	sizes := sizesOf(t, "third: 1 in / 3", "whole: third * 3", "exact: 1 in / 3 * 3")
	for name, want := range map[string]length.Length{"third": 8_466_667, "whole": 25_400_001, "exact": 25_400_000} {
		if got := sizes[name].Value; got != want {
			t.Errorf("%s is %d nm, want %d", name, got, want)
		}
	}
}

func TestACircleOfSizesIsToldWithItsWholeChain(t *testing.T) {
	got := wrong(t, "depth: 15 in", "depth: height - 3\n  a: b\n  b: c\n  c: a", "height: 18 in", "height: 2 * depth")
	if want := "10:10: the size depth follows from itself: depth → height → depth; give one of them a length of its own"; got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
	got = wrong(t, "depth: 15 in", "depth: a\n  a: b\n  b: c\n  c: a")
	if want := "11:6: the size a follows from itself: a → b → c → a; give one of them a length of its own"; got != want {
		t.Errorf("\n got %s\nwant %s", got, want)
	}
}

func TestTheLongestNameOfASizeWins(t *testing.T) {
	sizes := sizesOf(t, "level: 5 in", "level 2: 7 in", "low-level: 3 in", "low: 9 in", "a: level 2 + 1", "b: low-level + 1", "c: level + 2")
	for name, want := range map[string]length.Length{"a": 8 * in, "b": 4 * in, "c": 7 * in} {
		if got := sizes[name].Value; got != want {
			t.Errorf("%s is %d nm, want %d", name, got, want)
		}
	}
}

func TestLaw_AChainOfSizesIsTheSumOfItsSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.SliceOfN(rapid.Int64Range(1, 64*20), 1, 30).Draw(t, "steps")
		lines := []string{}
		total := length.Length(0)
		for i, n := range steps {
			l := length.Length(n) * in / 64
			total += l
			formula := length.SixtyFourth.Text(l)
			if i > 0 {
				formula = fmt.Sprintf("s%d + %s", i-1, formula)
			}
			lines = append(lines, fmt.Sprintf("  s%d: %s", i, formula))
		}
		order := rapid.Permutation(lines).Draw(t, "order")
		text := strings.Replace(bench, "sizes:\n", "sizes:\n"+strings.Join(order, "\n")+"\n", 1)
		doc, err := piece.Read("f", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		last := fmt.Sprintf("s%d", len(steps)-1)
		for _, s := range doc.Sizes {
			if s.Name == last && s.Value != total {
				t.Fatalf("%s is %d nm, want %d", last, s.Value, total)
			}
		}
	})
}
