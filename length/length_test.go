package length_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

func TestASixtyFourthOfAnInchIsAWholeNumberOfNanometres(t *testing.T) {
	// 25.4 mm exactly: international yard and pound agreement of 1959; 25 400 000 / 64 by hand.
	if got := length.Inch / 64; got != 396_875 || length.Inch%64 != 0 {
		t.Errorf("1/64 in = %d nm, want 396875", got)
	}
}

func TestMakersWriteLengthsInManyWays(t *testing.T) {
	const in, mm = length.Inch, length.Millimetre
	for _, c := range []struct {
		text string
		bare length.Unit
		want length.Length
	}{
		{"14 3/8", length.In, 14*in + 3*in/8},
		{"14-3/8\"", length.MM, 14*in + 3*in/8},
		{"14.375 in", length.MM, 14*in + 3*in/8},
		{"1' 2 3/8\"", length.MM, 14*in + 3*in/8},
		{"1 ft 2-3/8 in", length.MM, 14*in + 3*in/8},
		{"1'-2\"", length.MM, 14 * in},
		{"2 ft", length.MM, 24 * in},
		{"365 mm", length.In, 365 * mm},
		{"36.5 cm", length.In, 365 * mm},
		{"1.2 m", length.In, 1200 * mm},
		{"⅜", length.In, 3 * in / 8},
		{"14⅜", length.In, 14*in + 3*in/8},
		{"14 ⅜ ″", length.MM, 14*in + 3*in/8},
		{"3⁄8 in", length.MM, 3 * in / 8},
		{".5", length.In, in / 2},
		{"0", length.In, 0},
		{"-1/16 in", length.MM, -in / 16},
		{"−2 mm", length.In, -2 * mm},
		{"  7 ", length.MM, 7 * mm},
		{"010", length.In, 10 * in},
		{"365\u00a0mm", length.In, 365 * mm},
		{"1/3 in", length.MM, 8_466_667},
	} {
		got, err := length.Parse(c.text, c.bare)
		if err != nil || got != c.want {
			t.Errorf("Parse(%q) = %d, %v; want %d", c.text, got, err, c.want)
		}
	}
}

func TestWhatIsNoLengthIsRefusedAtItsPlace(t *testing.T) {
	for _, c := range []struct {
		text   string
		offset int
	}{
		{"", 0},
		{"  ", 0},
		{"wide", 0},
		{"14 3/", 4},
		{"14 3/0", 4},
		{"14 9/8", 3},
		{"3 yards", 2},
		{"1_000", 1},
		{"1e3", 1},
		{"4 in 3", 5},
		{"⅜⅜", 1},
		{"5.", 2},
		{"5 . 2", 2},
		{"1' 2 mm", 3},
		{"--3", 1},
		{"2000 m", 0},
		{"1/99999999999999999999", 1},
		{"12345678901234567890", 0},
		{"14 3/8 in wide", 10},
	} {
		_, err := length.Parse(c.text, length.In)
		var pe *length.ParseError
		if !errors.As(err, &pe) {
			t.Errorf("Parse(%q): %v, want a *ParseError", c.text, err)
			continue
		}
		if pe.Offset != c.offset {
			t.Errorf("Parse(%q) points at character %d, want %d: %v", c.text, pe.Offset, c.offset, err)
		}
	}
}

func TestPrintedToTheFineness(t *testing.T) {
	const in, mm = length.Inch, length.Millimetre
	for _, c := range []struct {
		to   length.Fineness
		l    length.Length
		text string
		show string
	}{
		{length.Sixteenth, 14*in + 3*in/8, "14 3/8 in", "14 3/8 in"},
		{length.Sixteenth, length.FromInches(12.505), "12 1/2 in", "≈ 12 1/2 in"},
		{length.SixtyFourth, length.FromInches(8.09), "8 3/32 in", "≈ 8 3/32 in"},
		{length.Sixteenth, in / 32, "0 in", "≈ 0 in"}, // a tie goes to the even sixteenth
		{length.Sixteenth, 3 * in / 32, "1/8 in", "≈ 1/8 in"},
		{length.Sixteenth, -in / 2, "-1/2 in", "-1/2 in"},
		{length.WholeMM, 365 * mm, "365 mm", "365 mm"},
		{length.HalfMM, 365*mm + mm/2, "365.5 mm", "365.5 mm"},
		{length.HalfMM, 365*mm + mm/5, "365 mm", "≈ 365 mm"},
	} {
		if got := c.to.Text(c.l); got != c.text {
			t.Errorf("%v: Text(%d) = %q, want %q", c.to, c.l, got, c.text)
		}
		if got := c.to.Show(c.l); got != c.show {
			t.Errorf("%v: Show(%d) = %q, want %q", c.to, c.l, got, c.show)
		}
	}
}

func TestReasonsAreToldFinerThanPartsAreCut(t *testing.T) {
	const gap = 7 * length.Inch / 64
	for f, want := range map[length.Fineness]string{
		length.Sixteenth: "7/64 in", length.ThirtySecond: "7/64 in", length.SixtyFourth: "7/64 in",
		length.WholeMM: "2.8 mm", length.HalfMM: "2.8 mm", {length.Micrometre, length.MM}: "2.778 mm",
	} {
		if got := f.Finer().Text(gap); got != want {
			t.Errorf("%v: a gap of 7/64 in is told as %s, want %s", f, got, want)
		}
	}
}

func TestEveryFinenessReadsBackItsOwnName(t *testing.T) {
	for _, f := range length.Finenesses() {
		if got, err := length.ParseFineness(f.String()); err != nil || got != f {
			t.Errorf("ParseFineness(%q) = %v, %v", f.String(), got, err)
		}
	}
	if _, err := length.ParseFineness("1/10"); err == nil {
		t.Error("a fineness no tape has was read")
	}
}

func TestPrintingAndReadingGivesEveryMultipleOfTheFinenessBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(length.Finenesses()).Draw(t, "fineness")
		n := rapid.Int64Range(-int64(length.Max/f.Step), int64(length.Max/f.Step)).Draw(t, "steps")
		l := length.Length(n) * f.Step
		got, err := length.Parse(f.Text(l), length.MM)
		if err != nil || got != l {
			t.Fatalf("Parse(%q) = %d, %v; want %d", f.Text(l), got, err, l)
		}
		if bare, err := length.Parse(f.Number(l), f.Unit); err != nil || bare != l {
			t.Fatalf("Parse(%q) = %d, %v; want %d", f.Number(l), bare, err, l)
		}
	})
}

func TestAChainOfPrintedDimensionsAddsUpToItsPrintedTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.SampledFrom(length.Finenesses()).Draw(t, "fineness")
		raw := rapid.SliceOfN(rapid.Int64Range(0, int64(3*length.Metre)), 0, 40).Draw(t, "links")
		links := make([]length.Length, len(raw))
		for i, r := range raw {
			links[i] = length.Length(r)
		}
		printed := f.Chain(links)
		if got, want := length.Sum(printed...), f.Round(length.Sum(links...)); got != want {
			t.Fatalf("links print as %d in all, their total as %d", got, want)
		}
		for i := range links {
			if d := (printed[i] - links[i]).Abs(); d > f.Step {
				t.Fatalf("link %d is printed %d nm off, more than one step", i, d)
			}
		}
	})
}

func TestHalvesRoundToEven(t *testing.T) {
	for l, want := range map[length.Length]length.Length{4: 2, 3: 2, 1: 0, 5: 2, -3: -2, -1: 0, -5: -2, 7: 4} {
		if got := l.Half(); got != want {
			t.Errorf("half of %d nm = %d, want %d", l, got, want)
		}
		if got := l.Scale(1, 2); got != want {
			t.Errorf("%d nm × 1/2 = %d, want %d", l, got, want)
		}
	}
	if got := length.FromMM(0.0000005); got != 0 {
		t.Errorf("half a nanometre rounds to %d, want 0", got)
	}
}

func TestMillimetresKeepTheNanometreBelowAKilometre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := length.Length(rapid.Int64Range(-int64(length.Max), int64(length.Max)).Draw(t, "nm"))
		if got := length.FromMM(l.MM()); got != l {
			t.Fatalf("%d nm comes back from millimetres as %d", l, got)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"14 3/8", "1' 2 3/8\"", "365 mm", "⅜", "14⅜", "-1/16 in", "5.", "1e9", "９", "1'", "''"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l, err := length.Parse(text, length.In)
		var pe *length.ParseError
		switch {
		case err != nil && !errors.As(err, &pe):
			t.Fatalf("%q: error of another kind: %v", text, err)
		case err != nil && (pe.Offset < 0 || pe.Offset > len([]rune(text))):
			t.Fatalf("%q: error outside the text: %v", text, err)
		case l.Abs() > length.Max || l == math.MinInt64:
			t.Fatalf("%q read as %d", text, l)
		}
	})
}
