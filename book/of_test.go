package book_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"rodwright/book"
	"rodwright/build"
	"rodwright/examples"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

var update = flag.Bool("update", false, "write the golden files anew")

// built derives an example with the built-in shop.
func built(t testing.TB, name string) *build.Build {
	t.Helper()
	text, err := examples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	return derived(t, name, text)
}

func derived(t testing.TB, name string, text []byte) *build.Build {
	t.Helper()
	doc, err := piece.Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// written writes the book of a build for a reader of the units.
func written(t testing.TB, b *build.Build, units string, paper book.Paper) *book.Document {
	t.Helper()
	f, err := book.Units(units, b.Doc.Fineness)
	if err != nil {
		t.Fatal(err)
	}
	d, err := book.Of(b, book.Options{Paper: paper, Fineness: f})
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// all are the books of every example in both units on both papers, with the builds they were made from.
var all = sync.OnceValues(func() (out []edition, err error) {
	for _, name := range examples.Names() {
		text, err := examples.Text(name)
		if err != nil {
			return nil, err
		}
		doc, err := piece.Read(name, text)
		if err != nil {
			return nil, err
		}
		b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
		if err != nil {
			return nil, err
		}
		for _, units := range []string{"inch", "metric"} {
			for _, paper := range []book.Paper{book.A4, book.Letter} {
				to, err := book.Units(units, doc.Fineness)
				if err != nil {
					return nil, err
				}
				d, err := book.Of(b, book.Options{Paper: paper, Fineness: to})
				if err != nil {
					return nil, fmt.Errorf("%s in %s on %s: %w", name, units, paper, err)
				}
				out = append(out, edition{fmt.Sprintf("%s/%s/%s", name, units, paper), units, b, d})
			}
		}
	}
	return out, nil
})

// edition is one book of one example.
type edition struct {
	name, units string
	b           *build.Build
	d           *book.Document
}

// every calls f for every example in both units on both papers.
func every(t *testing.T, f func(t *testing.T, b *build.Build, d *book.Document, units string)) {
	t.Helper()
	editions, err := all()
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range editions {
		t.Run(e.name, func(t *testing.T) { f(t, e.b, e.d, e.units) })
	}
}

func TestTheBookReadsAsAgreed(t *testing.T) {
	for _, c := range []struct{ name, units string }{{"packing-table", "inch"}, {"stepped-stand", "metric"}} {
		got := written(t, built(t, c.name), c.units, book.A4).Text()
		golden := filepath.Join("testdata", c.name+".txt")
		if *update {
			if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s differs from %s at %s", c.name, golden, firstDifference(got, string(want)))
		}
	}
}

func firstDifference(got, want string) string {
	a, b := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return fmt.Sprintf("line %d:\n got %q\nwant %q", i+1, a[i], b[i])
		}
	}
	return fmt.Sprintf("its end: %d lines, want %d", len(a), len(b))
}

func TestEveryExampleIsABookInBothUnitsOnBothPapers(t *testing.T) {
	id := regexp.MustCompile(`^[a-z0-9-]+$`)
	every(t, func(t *testing.T, b *build.Build, d *book.Document, units string) {
		if len(d.Sections) < 10 {
			t.Errorf("%d sections", len(d.Sections))
		}
		seen := map[string]bool{}
		for _, s := range d.Sections {
			if !id.MatchString(s.ID) || seen[s.ID] || s.Title == "" || len(s.Blocks) == 0 {
				t.Errorf("section %q %q with %d blocks", s.ID, s.Title, len(s.Blocks))
			}
			seen[s.ID] = true
			for _, bl := range s.Blocks {
				sound(t, s.ID, bl, seen)
			}
		}
		if want := map[string]string{"inch": "inches", "metric": "millimetres"}[units]; !strings.HasPrefix(d.Units, want) {
			t.Errorf("measured in %q", d.Units)
		}
	})
}

// sound checks one block by itself: rows as long as the head, figures named once, nothing empty.
func sound(t *testing.T, where string, b book.Block, seen map[string]bool) {
	switch b := b.(type) {
	case book.Table:
		rows := b.Rows
		if b.Foot != nil {
			rows = append(slices.Clone(rows), b.Foot)
		}
		for _, r := range rows {
			if len(r) != len(b.Columns) {
				t.Errorf("%s: %q has a row of %d cells under %d heads: %q", where, b.Caption, len(r), len(b.Columns), r)
			}
		}
		if b.Caption == "" || len(b.Rows) == 0 {
			t.Errorf("%s: table %q has %d rows", where, b.Caption, len(b.Rows))
		}
		for _, c := range b.Columns {
			if c.Head == "" || c.Share <= 0 {
				t.Errorf("%s: %q has column %q with share %g", where, b.Caption, c.Head, c.Share)
			}
		}
	case book.Figure:
		if b.Drawing.Alt == "" || b.Caption == "" || seen[b.Drawing.ID] {
			t.Errorf("%s: figure %q, %q, %q", where, b.Drawing.ID, b.Caption, b.Drawing.Alt)
		}
		seen[b.Drawing.ID] = true
	case book.Note:
		if b.Title == "" || len(b.Items) == 0 || slices.Contains(b.Items, "") {
			t.Errorf("%s: note %q %q", where, b.Title, b.Items)
		}
	case book.Paragraph:
		if strings.TrimSpace(b.Words) == "" || strings.Contains(b.Words, "  ") {
			t.Errorf("%s: paragraph %q", where, b.Words)
		}
	}
}

func TestEveryPartIsInTheBook(t *testing.T) {
	every(t, func(t *testing.T, b *build.Build, d *book.Document, _ string) {
		text := d.Text()
		for _, p := range b.Parts.Parts {
			if !regexp.MustCompile(`(?m)^\s+` + p.Tag + `\s`).MatchString(text) {
				t.Errorf("%s %s stands in no list", p.Tag, p.Name)
			}
		}
		worked := stepTags(d)
		for _, p := range b.Parts.Parts {
			for _, tag := range p.Tags {
				if !worked[tag] && !worked[p.Tag] {
					t.Errorf("%s is in no step", tag)
				}
			}
		}
	})
}

// stepTags are the tags that steps name, runs such as C1.1–C1.3 told one by one.
func stepTags(d *book.Document) map[string]bool {
	out := map[string]bool{}
	for _, s := range stepsOf(d) {
		for _, word := range strings.Split(s.Parts, ", ") {
			from, to, run := strings.Cut(word, "–")
			out[from] = true
			kind, first, _ := strings.Cut(from, ".")
			_, last, _ := strings.Cut(to, ".")
			var a, z int
			fmt.Sscan(first, &a)
			fmt.Sscan(last, &z)
			for n := a; run && n <= z; n++ {
				out[fmt.Sprintf("%s.%d", kind, n)] = true
			}
		}
	}
	return out
}

func stepsOf(d *book.Document) (out []book.Step) {
	for _, s := range d.Sections {
		for _, b := range s.Blocks {
			if st, ok := b.(book.Step); ok {
				out = append(out, st)
			}
		}
	}
	return out
}

func notesOf(d *book.Document, tone book.Tone) (out []book.Note) {
	for _, s := range d.Sections {
		for _, b := range s.Blocks {
			if n, ok := b.(book.Note); ok && n.Tone == tone {
				out = append(out, n)
			}
		}
	}
	return out
}

func TestEveryCautionStandsAtItsStepAndInTheGatheredOnes(t *testing.T) {
	every(t, func(t *testing.T, b *build.Build, d *book.Document, _ string) {
		steps := stepsOf(d)
		if len(steps) != len(b.Work.Steps) {
			t.Fatalf("%d steps of %d", len(steps), len(b.Work.Steps))
		}
		var gathered []string
		for _, n := range notesOf(d, book.Caution) {
			gathered = append(gathered, n.Items...)
		}
		for i, s := range steps {
			if len(s.Cautions) != len(b.Work.Steps[i].Cautions) {
				t.Errorf("step %d has %d cautions of %d", s.Number, len(s.Cautions), len(b.Work.Steps[i].Cautions))
			}
			for _, c := range s.Cautions {
				if !slices.ContainsFunc(gathered, func(g string) bool { return strings.HasPrefix(g, c+" (step") }) {
					t.Errorf("step %d: %q is not gathered", s.Number, c)
				}
			}
		}
	})
}

func TestEveryOpenFindingIsTold(t *testing.T) {
	every(t, func(t *testing.T, b *build.Build, d *book.Document, _ string) {
		told := 0
		for _, n := range notesOf(d, book.Wrong) {
			told += len(n.Items)
		}
		open := len(b.Layout.Missing)
		for _, f := range b.Findings {
			if f.Verdict != finding.Stands {
				open++
			}
		}
		if told != open {
			t.Errorf("%d open findings told, want %d", told, open)
		}
	})
}

func TestWhatFailsIsToldWithItsMend(t *testing.T) {
	for _, n := range notesOf(written(t, built(t, "stepped-stand"), "metric", book.A4), book.Wrong) {
		if n.Title == "What fails in this design" {
			if want := "must be at least 10°. To mend it: move the feet"; len(n.Items) != 2 || !strings.Contains(n.Items[0], want) {
				t.Errorf("%q, want %q", n.Items, want)
			}
			return
		}
	}
	t.Error("what fails is not told")
}

func TestAPlanForStrangersHasNoMoneyInIt(t *testing.T) {
	money := regexp.MustCompile(`(?i)\b(EUR|price|margin|tax|invented)\b`)
	every(t, func(t *testing.T, b *build.Build, d *book.Document, _ string) {
		if found := money.FindString(d.Text()); found != "" {
			t.Errorf("the book says %q", found)
		}
	})
}

func TestAnotherFinenessIsDerivedAnewAndThePiecesOwnIsNot(t *testing.T) {
	b := built(t, "wall-shelf")
	if own := b.Doc.Fineness; own != length.WholeMM {
		t.Fatalf("the shelf is shown to %v", own)
	}
	memo := build.NewMemo(64)
	d, err := book.Of(b, book.Options{Fineness: length.HalfMM, Memo: memo})
	if err != nil || d.Units != "millimetres to 0.5" || memo.Len() == 0 {
		t.Errorf("%v, measured in %q, %d results kept", err, d.Units, memo.Len())
	}
	if d, err = book.Of(b, book.Options{}); err != nil || d.Units != "millimetres" || d.Paper != book.A4 {
		t.Errorf("%v, measured in %q on %q", err, d.Units, d.Paper)
	}
	if _, err = book.Of(b, book.Options{Paper: "a9"}); err == nil {
		t.Error("paper a9 was taken")
	}
}

func TestDrawingsComeInTheOrderOfTheBookEachWithItsOwnName(t *testing.T) {
	rank := map[string]int{"view": 0, "part": 1, "cut": 2, "glue": 2}
	for _, name := range examples.Names() {
		b := built(t, name)
		seen, last := map[string]bool{}, 0
		var ids []string
		for _, p := range book.Drawings(b, book.A4.Style(b.Doc.Fineness)) {
			r, known := rank[p.Kind]
			if !known || r < last || seen[p.Drawing.ID] {
				t.Errorf("%s: %s %s after %v", name, p.Kind, p.Drawing.ID, ids)
			}
			last, seen[p.Drawing.ID] = r, true
			ids = append(ids, p.Drawing.ID)
		}
		if len(ids) < 5 || ids[0] != "front" || ids[1] != "right" || ids[2] != "top" {
			t.Errorf("%s: %v", name, ids)
		}
	}
}

func TestEveryPanelThatIsMoreThanARectangleHasASheetToMarkItOut(t *testing.T) {
	b := built(t, "stepped-stand")
	d := written(t, b, "inch", book.A4)
	for _, p := range b.Parts.Parts {
		if p.Kind != part.Panel {
			continue
		}
		i := slices.IndexFunc(d.Sections, func(s book.Section) bool { return s.ID == "mark-out-"+strings.ToLower(p.Tag) })
		if i < 0 || !d.Sections[i].NewPage {
			t.Errorf("%s has no sheet of its own", p.Tag)
		}
	}
}
