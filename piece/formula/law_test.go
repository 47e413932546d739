package formula_test

import (
	"errors"
	"fmt"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/piece/formula"
)

// written draws a length that is a whole number of sixty-fourths, and its text.
func written(t *rapid.T, name string) (length.Length, string) {
	n := rapid.Int64Range(0, 64*100).Draw(t, name)
	l := length.Length(n) * in / 64
	if rapid.Bool().Draw(t, name+" in mm") {
		return l, fmt.Sprintf("%d.%06d mm", l/length.Millimetre, l%length.Millimetre)
	}
	return l, length.SixtyFourth.Text(l)
}

func mustEval(t *rapid.T, format string, args ...any) length.Length {
	text := fmt.Sprintf(format, args...)
	l, err := eval(text)
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return l
}

func TestLaw_SumsAndDifferencesAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, at := written(t, "a")
		b, bt := written(t, "b")
		c, ct := written(t, "c")
		if got := mustEval(t, "%s + %s - %s", at, bt, ct); got != a+b-c {
			t.Fatalf("%s + %s - %s = %d nm, want %d", at, bt, ct, got, a+b-c)
		}
		if got := mustEval(t, "%s - (%s + %s)", at, bt, ct); got != a-(b+c) {
			t.Fatalf("%s - (%s + %s) = %d nm, want %d", at, bt, ct, got, a-(b+c))
		}
		if got := mustEval(t, "min(%s; %s; %s)", at, bt, ct); got != min(a, b, c) {
			t.Fatalf("min(%s; %s; %s) = %d nm", at, bt, ct, got)
		}
		if got := mustEval(t, "max(%s; %s; %s)", at, bt, ct); got != max(a, b, c) {
			t.Fatalf("max(%s; %s; %s) = %d nm", at, bt, ct, got)
		}
	})
}

func TestLaw_DividingAndMultiplyingByTheSameNumberChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, at := written(t, "a")
		n := rapid.IntRange(1, 1000).Draw(t, "n")
		if got := mustEval(t, "%s / %d * %d", at, n, n); got != a {
			t.Fatalf("%s / %d * %d = %d nm, want %d", at, n, n, got, a)
		}
	})
}

func TestLaw_ABareNumberAloneIsInTheDocumentsUnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(0, 900).Draw(t, "n")
		unit := rapid.SampledFrom([]length.Unit{length.In, length.MM}).Draw(t, "unit")
		l, err := formula.Eval(fmt.Sprint(n), unit)
		if err != nil || l != length.Length(n)*unit.Size() {
			t.Fatalf("%d in a document in %s is %d nm, %v", n, unit, l, err)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"low level + 21 in", "min(length; depth) - 14-3/8\"", "2 * (side inset + ⅜)", "1'-2 3/8\" / 2", "((((", "---1",
		"9/0", "a - b", "6 ft - 2 in", "level 2", "max(", "\xff", "length / (1 - 1)", "999999999999999999 * 999999999999999999",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		_, err := eval(text)
		var e *formula.Error
		if err != nil && !errors.As(err, &e) {
			t.Fatalf("%q: the error is a %T", text, err)
		}
		if e != nil && (e.Offset < 0 || e.Offset > utf8.RuneCountInString(text)) {
			t.Fatalf("%q: place %d lies outside the text", text, e.Offset)
		}
	})
}
