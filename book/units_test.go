package book_test

import (
	"math"
	"regexp"
	"testing"

	"rodwright/book"
	"rodwright/build"
	"rodwright/length"
)

func TestAReadersUnitsKeepThePiecesOwnFinenessWhereTheyCan(t *testing.T) {
	for _, c := range []struct {
		word      string
		own, want length.Fineness
	}{
		{"", length.SixtyFourth, length.SixtyFourth},
		{"inch", length.SixtyFourth, length.SixtyFourth},
		{"inch", length.HalfMM, length.Sixteenth},
		{"metric", length.HalfMM, length.HalfMM},
		{"metric", length.Sixteenth, length.WholeMM},
	} {
		if got, err := book.Units(c.word, c.own); err != nil || got != c.want {
			t.Errorf("%q of a piece in %v: %v %v, want %v", c.word, c.own, got, err, c.want)
		}
	}
	if _, err := book.Units("cubits", length.Sixteenth); err == nil {
		t.Error("cubits are taken")
	}
}

// A4 is 210 × 297 mm by ISO 216:2007, Table 1; Letter is size A of ANSI/ASME Y14.1, 8 1/2 × 11 in, both from
// memory.
func TestPapersAreTheSizesOfTheirStandards(t *testing.T) {
	for _, c := range []struct {
		word          string
		want          book.Paper
		width, height float64
	}{{"a4", book.A4, 210, 297}, {"", book.A4, 210, 297}, {"Letter", book.Letter, 8.5 * 25.4, 11 * 25.4}} {
		p, err := book.ParsePaper(c.word)
		w, h := p.Size()
		if err != nil || p != c.want || math.Abs(w-c.width) > 1e-9 || math.Abs(h-c.height) > 1e-9 {
			t.Errorf("%q: %v, %v × %v, %v", c.word, p, w, h, err)
		}
		if rw, rh := p.Room(); rw != w-36 || rh != h-40 {
			t.Errorf("%q has room for %v × %v", c.word, rw, rh)
		}
	}
	if _, err := book.ParsePaper("a9"); err == nil {
		t.Error("paper a9 is taken")
	}
}

// tradeNames are what keeps a unit of another system, for it is a name that is asked for at the counter.
var tradeNames = regexp.MustCompile(`\d+ (ft|mm) stick|[Ww]ood screws? (No\. )?\d+ × [\d /]+ in|[\d /]+ in (stem|plate) caster|` +
	`[Nn]ipple [\dDN/-]+ [\d /]+ (in|mm)|(?i:plywood|mdf|particleboard) \d+ mm|\d+ mm\)`)

// inches and millimetres find lengths of one system. "In its place" and "4 in all" are no inches.
var (
	inches      = regexp.MustCompile(`(?:^|[^.\d])\d[\d /.]* (?:in|ft)\b( its| the| all)?`)
	millimetres = regexp.MustCompile(`\d (?:mm|cm|m)(?:\b[^/²³]|$)`)
)

// foreign returns the lengths that a reader of the units does not measure by.
func foreign(text, units string) (out []string) {
	text = tradeNames.ReplaceAllString(text, "…")
	if units == "inch" {
		return millimetres.FindAllString(text, -1)
	}
	for _, found := range inches.FindAllStringSubmatch(text, -1) {
		if found[1] == "" {
			out = append(out, found[0])
		}
	}
	return out
}

// The laws of a reader's units: in a metric book no length is in inches, in an inch book none in millimetres,
// but for trade names.
func TestNoLengthIsInTheOtherSystem(t *testing.T) {
	every(t, func(t *testing.T, b *build.Build, d *book.Document, units string) {
		if found := foreign(d.Text(), units); len(found) > 0 {
			t.Errorf("%q", found)
		}
	})
}

func TestAnInchReaderSeesPoundsBesideKilograms(t *testing.T) {
	kg := regexp.MustCompile(`\d kg.{0,2}`)
	b := built(t, "packing-table")
	for _, found := range kg.FindAllString(written(t, b, "inch", book.A4).Text(), -1) {
		if found[len(found)-2:] != " (" {
			t.Errorf("%q has no pounds beside it", found)
		}
	}
	if found := regexp.MustCompile(`\d lb\b`).FindString(written(t, b, "metric", book.A4).Text()); found != "" {
		t.Errorf("a metric reader is told pounds: %q", found)
	}
}
