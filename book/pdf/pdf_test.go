package pdf_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"rodwright/book"
	"rodwright/book/pdf"
	"rodwright/build"
	"rodwright/draw"
	"rodwright/examples"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
)

// built derives an example.
func built(t testing.TB, name string) *build.Build {
	t.Helper()
	text, err := examples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
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

// written prints a document into a file.
func written(t testing.TB, d *book.Document) (file string, size int) {
	t.Helper()
	var out bytes.Buffer
	if err := pdf.Write(&out, d); err != nil {
		t.Fatal(err)
	}
	file = filepath.Join(t.TempDir(), "book.pdf")
	if err := os.WriteFile(file, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return file, out.Len()
}

// run runs a reader of PDF files, which has to succeed in silence on its standard error, and returns what it
// says.
func run(t testing.TB, name string, args ...string) string {
	t.Helper()
	c := exec.Command(name, args...)
	var out, wrong bytes.Buffer
	c.Stdout, c.Stderr = &out, &wrong
	err := c.Run()
	if errors.Is(err, exec.ErrNotFound) {
		t.Fatalf("%s is not installed; the tests of the PDF file need qpdf and poppler-utils", name)
	}
	if err != nil || wrong.Len() > 0 {
		t.Fatalf("%s %v: %v, %s%s", name, args, err, wrong.String(), out.String())
	}
	return out.String()
}

func TestEveryExampleIsPrintedOnBothPapersInBothUnits(t *testing.T) {
	for _, name := range examples.Names() {
		b, memo := built(t, name), build.NewMemo(2000)
		for _, paper := range []book.Paper{book.A4, book.Letter} {
			for _, units := range []string{"inch", "metric"} {
				t.Run(fmt.Sprint(name, " ", paper, " ", units), func(t *testing.T) {
					t.Parallel()
					fine, err := book.Units(units, b.Doc.Fineness)
					if err != nil {
						t.Fatal(err)
					}
					d, err := book.Of(b, book.Options{Paper: paper, Fineness: fine, Memo: memo})
					if err != nil {
						t.Fatal(err)
					}
					file, _ := written(t, d)
					readByOthers(t, file)
					words := wordsOf(t, file)
					if len(words) < len(d.Sections)/3 {
						t.Errorf("%d sections stand on %d sheets", len(d.Sections), len(words))
					}
					keepApart(t, words, paper)
					holdsEveryTag(t, words, b)
				})
			}
		}
	}
}

// readByOthers checks a file with readers that share no code with the writer.
func readByOthers(t *testing.T, file string) {
	t.Helper()
	if out := run(t, "qpdf", "--check", file); !strings.Contains(out, "No syntax or stream encoding errors found") {
		t.Errorf("qpdf: %s", out)
	}
	run(t, "pdftoppm", "-r", "30", file, filepath.Join(t.TempDir(), "sheet"))
	fonts := strings.Split(strings.TrimSpace(run(t, "pdffonts", file)), "\n")[2:]
	if len(fonts) != 2 {
		t.Errorf("the file has %d fonts, want the regular and the semi-bold: %q", len(fonts), fonts)
	}
	for _, f := range fonts {
		fields := strings.Fields(f) // … emb sub uni object generation
		if n := len(fields); n < 5 || !slices.Equal(fields[n-5:n-2], []string{"yes", "yes", "yes"}) {
			t.Errorf("a font is not embedded as a subset that gives its letters: %s", f)
		}
	}
}

// word is a word as another reader finds it, in points from the upper left corner of its sheet.
type word struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Said string  `xml:",chardata"`
}

// wordsOf returns the words on each sheet.
func wordsOf(t *testing.T, file string) [][]word {
	t.Helper()
	var layout struct {
		Pages []struct {
			Words []word `xml:"flow>block>line>word"`
		} `xml:"body>doc>page"`
	}
	if err := xml.Unmarshal([]byte(run(t, "pdftotext", "-bbox-layout", file, "-")), &layout); err != nil {
		t.Fatal(err)
	}
	var out [][]word
	for _, p := range layout.Pages {
		out = append(out, p.Words)
	}
	return out
}

// tolerance is how far the boxes of two words may cover each other, as a share of the lower one's height. The
// reader's boxes are as high as a line, 1.3 of the type's size: above and below the letters is clear space of
// nearly half of it.
const tolerance = 0.45

func keepApart(t *testing.T, sheets [][]word, paper book.Paper) {
	t.Helper()
	width, height := paper.Size()
	room, _ := paper.Room()
	k := 72 / 25.4
	side := (width - room) / 2 * k
	for i, words := range sheets {
		if len(words) == 0 {
			t.Errorf("sheet %d is empty", i+1)
		}
		for n, w := range words {
			if w.XMin < side-2 || w.XMax > width*k-side+2 || w.YMin < 0 || w.YMax > height*k {
				t.Errorf("sheet %d: %q stands outside the margins, %.0f to %.0f across", i+1, w.Said, w.XMin, w.XMax)
			}
			if strings.ContainsAny(w.Said, "\uFFFD\u25A1") {
				t.Errorf("sheet %d: %q has a letter that was not found", i+1, w.Said)
			}
			for _, o := range words[:n] {
				across := math.Min(w.XMax, o.XMax) - math.Max(w.XMin, o.XMin)
				down := math.Min(w.YMax, o.YMax) - math.Max(w.YMin, o.YMin)
				thin := func(w word) float64 { return math.Min(w.XMax-w.XMin, w.YMax-w.YMin) }
				if limit := tolerance * math.Min(thin(w), thin(o)); across > limit && down > limit {
					t.Errorf("sheet %d: %q stands on %q", i+1, w.Said, o.Said)
				}
			}
		}
	}
}

func holdsEveryTag(t *testing.T, sheets [][]word, b *build.Build) {
	t.Helper()
	said := map[string]bool{}
	for _, words := range sheets {
		for _, w := range words {
			for _, tag := range strings.FieldsFunc(w.Said, func(r rune) bool { return strings.ContainsRune(",;:()–", r) }) {
				said[tag] = true
			}
		}
	}
	for _, p := range b.Parts.Parts {
		if !said[p.Tag] {
			t.Errorf("the tag %s of %s stands nowhere", p.Tag, p.Name)
		}
	}
}

// small is a document with a sheet of each kind of thing.
func small() *book.Document {
	side := length.FromMM(400)
	shelf := &draw.Drawing{ID: "front", Title: "Shelf", Alt: "A shelf seen from the front", Per: 10, Marks: []draw.Mark{
		draw.Line{Pen: draw.Hidden, B: draw.Point{X: side, Y: side}},
		draw.Text{Words: "14 3/8", Height: 2.6},
	}}
	return &book.Document{
		Title: "Shelf for seedlings", Subtitle: "40 × 40 cm", Language: "en", Paper: book.A4, Units: "inches to 1/16",
		Sections: []book.Section{
			{ID: "parts", Title: "Parts", NewPage: true, Blocks: []book.Block{
				book.Table{Columns: []book.Column{{Head: "Tag", Share: 1}, {Head: "Long", Share: 1}}, Rows: [][]string{{"A1", "14 3/8 in"}}},
				book.Note{Tone: book.Caution, Title: "Mind the saw", Items: []string{"Keep its guard on."}},
				book.List{Ticks: true, Items: []string{"bought"}},
				book.Figure{Drawing: shelf, Caption: "From the front, 1 : 10"},
			}},
			{ID: "steps", Title: "Steps", NewPage: true, Blocks: []book.Block{
				book.Step{Number: 7, Title: "Saw the shelf", Parts: "A1", Measures: []string{"to 14 3/8 in"}},
			}},
		},
	}
}

func TestTheStructureTreeSaysWhatStandsOnTheSheets(t *testing.T) {
	file, _ := written(t, small())
	tree := strings.Join(strings.Fields(run(t, "pdfinfo", "-struct-text", file)), " ")
	for _, want := range []string{
		`H1 (block) "Shelf for seedlings"`, `H2 (block) "Parts"`, `TH "Tag" TH "Long"`, `TD "A1" TD "14 ³⁄₈ in"`, `TOCI "Parts 2"`, `P (block) "Mind the saw"`,
		`LBody (block) "bought"`, `Caption "From the front, 1 : 10"`, `H3 (block) "7 Saw the shelf"`, `LBody (block) "to 14 ³⁄₈ in"`,
	} {
		if !strings.Contains(tree, want) {
			t.Errorf("the tree lacks %s: %s", want, tree)
		}
	}
	if n := strings.Count(tree, "Saw the shelf"); n != 1 {
		t.Errorf("the tree says a step %d times", n)
	}
	if plain := run(t, "qpdf", "--qdf", "--object-streams=disable", file, "-"); !strings.Contains(plain, "/Alt (A shelf seen from the front)") {
		t.Error("the figure has no alternative text")
	}
}

func TestTheFileSaysWhatItIs(t *testing.T) {
	file, _ := written(t, small())
	info := run(t, "pdfinfo", file)
	for _, want := range []string{"Shelf for seedlings", "40 × 40 cm", "Tagged:          yes", "Pages:           3"} {
		if !strings.Contains(info, want) {
			t.Errorf("the file lacks %q: %s", want, info)
		}
	}
	if strings.Contains(info, "Date") {
		t.Errorf("the file has a date, so that it differs from day to day: %s", info)
	}
	plain := run(t, "qpdf", "--qdf", "--object-streams=disable", file, "-")
	for _, want := range []string{"/Lang (en)", "/DisplayDocTitle true", "/Title (Parts)", "/Title (7  Saw the shelf)", "/Subtype /Link"} {
		if !strings.Contains(plain, want) {
			t.Errorf("the file lacks %s", want)
		}
	}
}

func TestTheSameBookIsTheSameBytes(t *testing.T) {
	var first, second bytes.Buffer
	b := built(t, "low-bench")
	for _, out := range []*bytes.Buffer{&first, &second} {
		d, err := book.Of(b, book.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if err := pdf.Write(out, d); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("two prints of one book differ")
	}
}

// full is a disk without room.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no room") }

func TestWhatCannotBePrintedIsAnErrorAndNothingIsWritten(t *testing.T) {
	d := small()
	d.Sections[1].Title = "桌"
	var out bytes.Buffer
	if err := pdf.Write(&out, d); err == nil || !strings.Contains(err.Error(), "U+684C") || out.Len() > 0 {
		t.Errorf("the error is %v and %d bytes were written", err, out.Len())
	}
	if err := pdf.Write(full{}, small()); err == nil || !strings.Contains(err.Error(), "no room") {
		t.Errorf("the error of a full disk is %v", err)
	}
}

func BenchmarkBook(b *testing.B) {
	table := built(b, "packing-table")
	for b.Loop() {
		d, err := book.Of(table, book.Options{})
		if err != nil {
			b.Fatal(err)
		}
		var out bytes.Buffer
		if err := pdf.Write(&out, d); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleWrite() {
	var file bytes.Buffer
	err := pdf.Write(&file, &book.Document{
		Title: "Shelf", Language: "en", Paper: book.A4, Units: "millimetres",
		Sections: []book.Section{{ID: "wood", Title: "Wood", Blocks: []book.Block{book.Paragraph{Words: "One board."}}}},
	})
	fmt.Println(file.String()[:8], err)
	// Output: %PDF-1.7 <nil>
}
