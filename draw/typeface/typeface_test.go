package typeface_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"pgregory.net/rapid"

	"rodwright/draw/typeface"
)

// letters are those that words of drawings and books are made of, besides ASCII.
const letters = "⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉⁄″′×≈°±≤≥Δ·–—→…½¼¾⅛⅜⅝⅞−÷√πµÖÜäöüéåØø“”’\u00a0\u2009\u202f"

func ascii() string {
	var b strings.Builder
	for r := ' '; r <= '~'; r++ {
		b.WriteRune(r)
	}
	return b.String()
}

func TestTheTypefaceHasEveryLetterOfOurWords(t *testing.T) {
	if got := typeface.Missing(ascii() + letters); len(got) > 0 {
		t.Errorf("missing: %q", got)
	}
}

func TestMissingLettersAreNamedOnce(t *testing.T) {
	if got := string(typeface.Missing("⌀ 3 ⌀ ☐")); got != "⌀☐" {
		t.Errorf("missing: %q, want ⌀☐", got)
	}
}

func TestWordsKeepBetweenAscentAndDescent(t *testing.T) {
	small := strings.NewReplacer("Ö", "", "Ü", "", "Ø", "").Replace(letters) // accents on capitals stand higher
	for name, ttf := range map[string][]byte{"regular": typeface.Regular(), "semi-bold": typeface.SemiBold()} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		for _, r := range ascii() + small {
			g, _ := f.GlyphIndex(&buf, r)
			b, _, err := f.GlyphBounds(&buf, g, fixed.I(1000), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			if up, down := -b.Min.Y.Floor(), b.Max.Y.Ceil(); float64(up) > 1000*typeface.Ascent || float64(down) > 1000*typeface.Descent {
				t.Errorf("%s %c reaches from -%d to %d thousandths", name, r, down, up)
			}
		}
	}
}

// The reference is the text measure of golang.org/x/image/font, which adds kerning; letters are measured one
// by one for that reason.
func TestWidthIsThatOfTheLetters(t *testing.T) {
	for _, strong := range []bool{false, true} {
		ttf := typeface.Regular()
		if strong {
			ttf = typeface.SemiBold()
		}
		f, err := opentype.Parse(ttf)
		if err != nil {
			t.Fatal(err)
		}
		face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: 1000, DPI: 72, Hinting: font.HintingNone})
		if err != nil {
			t.Fatal(err)
		}
		want := 0.0
		for _, r := range "14 3/8 in × Δ" {
			want += float64(font.MeasureString(face, string(r))) / 64 / 1000 * 3.5
		}
		if got := typeface.Width("14 3/8 in × Δ", 3.5, strong); math.Abs(got-want) > 1e-6 {
			t.Errorf("strong %v: %g mm wide, want %g", strong, got, want)
		}
	}
}

func TestWidthsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.String().Draw(t, "a"), rapid.String().Draw(t, "b")
		sum := typeface.Width(a, 3, true) + typeface.Width(b, 3, true)
		if whole := typeface.Width(a+b, 3, true); math.Abs(whole-sum) > 1e-9*(1+sum) {
			t.Errorf("%q and %q are %g wide together, %g apart", a, b, whole, sum)
		}
	})
}

func TestFractionsAreSetAsFractions(t *testing.T) {
	for words, want := range map[string]string{
		"14 3/8 in":           "14\u202f³⁄₈ in",
		"3/8":                 "³⁄₈",
		"(15/16)":             "(¹⁵⁄₁₆)",
		"1/2 x 3/4, 2 63/64.": "¹⁄₂ x ³⁄₄, 2\u202f⁶³⁄₆₄.",
		"1-1/4 pipe":          "1-¹⁄₄ pipe",
		"ends in 3/4":         "ends in ³⁄₄",
		"3/4\"":               "³⁄₄\"",
		"no. 8 1/2":           "no. 8\u202f¹⁄₂",
		"5/4 x 6 boards":      "5/4 x 6 boards",
		"1/x, m/s, kg/m³":     "1/x, m/s, kg/m³",
		"3/8/2027":            "3/8/2027",
		"03/08":               "03/08",
		"10/2027":             "10/2027",
		"1.5/2 and 1/2.5":     "1.5/2 and 1/2.5",
		"R2/3":                "R2/3",
		"2/3rd":               "2/3rd",
		"a/b":                 "a/b",
		"/":                   "/",
		"1//2":                "1//2",
		"":                    "",
	} {
		if got := typeface.Fractions(words); got != want {
			t.Errorf("%q is set %q, want %q", words, got, want)
		}
	}
}

func TestFractionsChangeNothingElse(t *testing.T) {
	back := strings.NewReplacer("⁄", "/", "\u202f", " ", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9",
		"₀", "0", "₁", "1", "₂", "2", "₃", "3", "₄", "4", "₅", "5", "₆", "6", "₇", "7", "₈", "8", "₉", "9")
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.StringOfN(rapid.SampledFrom([]rune("0123/ .,-xm\"é")), 0, 20, -1).Draw(t, "words")
		set := typeface.Fractions(words)
		if back.Replace(set) != words {
			t.Errorf("%q became %q", words, set)
		}
		if again := typeface.Fractions(set); again != set {
			t.Errorf("%q, set once more, became %q", set, again)
		}
	})
}

func ExampleFractions() {
	words := typeface.Fractions("cut at 14 3/8 in")
	fmt.Printf("%q\n", words)
	fmt.Printf("%.1f mm wide at 3 mm\n", typeface.Width(words, 3, false))
	// Output:
	// "cut at 14\u202f³⁄₈ in"
	// 18.1 mm wide at 3 mm
}
