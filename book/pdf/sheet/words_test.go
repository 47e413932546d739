package sheet

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// said returns the words of lines without their blanks.
func said(lines []line) string {
	var s strings.Builder
	for _, l := range lines {
		for _, p := range l.pieces {
			s.WriteString(strings.Join(strings.FieldsFunc(p.words, blank), ""))
		}
	}
	return s.String()
}

func TestWrappedWordsAreAllThereAndFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[a-zA-Z⌀☐-]{1,40}|[0-9]{1,3}|in|mm|≈`)
		words := rapid.SliceOfN(word, 0, 30).Draw(t, "words")
		width := rapid.Float64Range(40, 400).Draw(t, "width")
		cut := rapid.IntRange(0, len(words)).Draw(t, "strong to")
		lines := wrap([]span{{strings.Join(words[:cut], " "), true}, {strings.Join(words[cut:], " "), false}}, 10, width)
		if got, want := said(lines), strings.Join(words, ""); got != want {
			t.Fatalf("set %q, got %q", want, got)
		}
		for _, l := range lines {
			if l.width > width+1e-3 {
				t.Fatalf("a line is %g wide in a column of %g", l.width, width)
			}
			wide := 0.0
			for _, p := range l.pieces {
				wide = math.Max(wide, p.x+measure(strings.TrimRight(p.words, " "), 10, p.strong))
			}
			if math.Abs(wide-l.width) > 1e-6 {
				t.Fatalf("a line says it is %g wide and is %g", l.width, wide)
			}
		}
	})
}

func TestANumberStaysWithItsFractionAndUnit(t *testing.T) {
	for _, words := range []string{"14 3/8 in", "≈ 14 mm", "3 × 20 mm", "12 of"} {
		lines := wrap([]span{{words: "cut " + words}}, 10, measure("cut 14", 10, false)+1)
		if len(lines) < 2 || said(lines[:1]) != "cut" {
			t.Errorf("%q is parted: %v", words, lines)
		}
	}
}

func TestAWordWiderThanItsLineIsBrokenAfterAMark(t *testing.T) {
	lines := wrap([]span{{words: "beech-and-maple-and-cherry"}}, 10, measure("beech-and-map", 10, false))
	if got := lines[0].pieces[0].words; got != "beech-and-" {
		t.Errorf("the first line is %q, want it to end after a hyphen", got)
	}
}

func TestSignsAreAsWideAsTheyAreDrawn(t *testing.T) {
	for _, r := range signs {
		if got := measure(string(r), 10, false); got != signAdvance*10 {
			t.Errorf("%c is measured %g wide, want %g", r, got, signAdvance*10)
		}
		p := &recorder{}
		show(p, "a"+string(r)+"b", 0, 0, 10, false, graphite)
		if p.paths != 1 || len(p.words) != 2 || math.Abs(p.words[1].left-p.words[0].right-signAdvance*10) > 1e-9 {
			t.Errorf("%c is drawn as %d paths between %v", r, p.paths, p.words)
		}
	}
}
