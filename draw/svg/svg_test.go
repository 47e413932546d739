package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/draw/svg"
	"rodwright/draw/typeface"
	"rodwright/length"
)

var update = flag.Bool("update", false, "write the golden files anew")

func at(x, y float64) draw.Point { return draw.Point{X: length.FromMM(x), Y: length.FromMM(y)} }

// shelf is an end of a shelf on a pipe, with one mark of each kind.
func shelf() *draw.Drawing {
	st := draw.Style{Fineness: length.Sixteenth, Width: 170, Height: 200}
	stations := []draw.Station{{At: 0}, {At: 4 * length.Inch}, {At: 4*length.Inch + length.Inch/4}, {At: 12 * length.Inch}}
	board := at(304.8, 31.75)
	d := &draw.Drawing{ID: "part-a1", Title: "Shelf <A1>", Alt: "A board 12 in long & 1 1/4 in thick.", Per: 4, Marks: []draw.Mark{
		draw.Area{Pen: draw.Outline, Outer: draw.Rounded(at(0, 0), board, 6*length.Millimetre), Fill: draw.LongWood},
		draw.Area{
			Pen: draw.Outline, Outer: draw.Circle(at(80, -60), 21*length.Millimetre), Fill: draw.Steel,
			Holes: []draw.Path{draw.Circle(at(80, -60), 17*length.Millimetre)},
		},
		draw.Line{Pen: draw.Centre, A: at(80, -90), B: at(80, 40)},
		draw.Arc{Pen: draw.Hidden, Centre: at(200, -60), Radius: 20 * length.Millimetre, From: 30, Sweep: 200},
		draw.Tag{Words: "A1", At: at(250, 80), Part: at(240, 20)},
		draw.Text{At: at(150, -40), Words: "bore 3/8", Height: draw.Small, Anchor: draw.Middle},
	}}
	bounds := draw.Rect{Min: at(0, -90), Max: at(304.8, 100)}
	d.Marks = append(d.Marks, draw.Dimensions(bounds, d.Per, st, draw.Below, 1, stations)...)
	return d
}

func TestADrawingIsWrittenAsItWasLookedAt(t *testing.T) {
	const golden = "testdata/shelf.svg"
	got := svg.File(shelf())
	if *update {
		if err := os.WriteFile(golden, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs; look at what is drawn now, then run with -update", golden)
	}
}

// read walks through XML and fails on what is none.
func read(t interface{ Fatalf(string, ...any) }, doc []byte, each func(xml.Token)) {
	dec := xml.NewDecoder(bytes.NewReader(doc))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("no XML: %v\n%s", err, doc)
		}
		each(tok)
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func TestADrawingIsToldToWhoCannotSeeIt(t *testing.T) {
	inside, said := "", map[string]string{}
	read(t, svg.Render(shelf()), func(tok xml.Token) {
		switch tok := tok.(type) {
		case xml.StartElement:
			inside = tok.Name.Local + " " + attribute(tok, "id")
			if tok.Name.Local == "svg" && (attribute(tok, "role") != "img" || attribute(tok, "aria-labelledby") != "part-a1-title part-a1-desc") {
				t.Errorf("the element is no picture with a name: %v", tok.Attr)
			}
		case xml.CharData:
			said[inside] += string(tok)
		case xml.EndElement:
			inside = ""
		}
	})
	if said["title part-a1-title"] != "Shelf <A1>" || said["desc part-a1-desc"] != "A board 12 in long & 1 1/4 in thick." {
		t.Errorf("title and description are %q", said)
	}
}

func TestAnyWordsMakeXML(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.String().Draw(t, "words")
		d := &draw.Drawing{ID: "a", Title: words, Alt: words, Per: 1, Marks: []draw.Mark{draw.Text{Words: words, Height: 3}}}
		read(t, svg.File(d), func(xml.Token) {})
	})
}

func TestEverythingLiesInTheViewBox(t *testing.T) {
	d := shelf()
	var w, h float64
	read(t, svg.File(d), func(tok xml.Token) {
		e, ok := tok.(xml.StartElement)
		switch {
		case !ok:
		case e.Name.Local == "svg":
			if _, err := fmt.Sscanf(attribute(e, "viewBox"), "0 0 %g %g", &w, &h); err != nil {
				t.Fatal(err)
			}
			if attribute(e, "width") != strconv.FormatFloat(w, 'f', -1, 64)+"mm" {
				t.Errorf("the file is not at its scale: %v", e.Attr)
			}
		case e.Name.Local == "path":
			numbers := strings.FieldsFunc(attribute(e, "d"), func(r rune) bool { return strings.ContainsRune("MLCZ ", r) })
			for i, n := range numbers {
				v, err := strconv.ParseFloat(n, 64)
				if limit := [2]float64{w, h}[i%2]; err != nil || v < 0 || v > limit {
					t.Errorf("%s of %q is not within 0 to %g", n, attribute(e, "d"), limit)
				}
			}
		}
	})
}

func TestTheStyleIsThatOfThePens(t *testing.T) {
	for _, p := range draw.Pens() {
		_, rule, found := strings.Cut(svg.Style, ".pen-"+p.String()+"{")
		rule, _, _ = strings.Cut(rule, "}")
		if !found || !strings.Contains(rule+";", fmt.Sprintf(";stroke-width:%g;", p.Width())) {
			t.Errorf("%s: %q is not %g mm wide", p, rule, p.Width())
		}
		dashes := strings.Trim(fmt.Sprint(p.Dashes()), "[]")
		if has := strings.Contains(rule, "dasharray"); has != (dashes != "") || !strings.HasSuffix(rule, dashes) {
			t.Errorf("%s: %q has not the dashes %q", p, rule, dashes)
		}
	}
	if !strings.Contains(svg.Style, typeface.Family) {
		t.Errorf("words are not set in %s", typeface.Family)
	}
}

func ExampleRender() {
	d := &draw.Drawing{ID: "edge", Title: "An edge", Alt: "A line 20 mm long.", Per: 2, Marks: []draw.Mark{
		draw.Line{Pen: draw.Outline, B: draw.Point{X: 20 * length.Millimetre}},
	}}
	fmt.Println(string(svg.Render(d)))
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" class="drawing" style="width:100%;max-width:11mm" viewBox="0 0 11 1" role="img" aria-labelledby="edge-title edge-desc">
	// <title id="edge-title">An edge</title>
	// <desc id="edge-desc">A line 20 mm long.</desc>
	// <path class="pen-outline" d="M0.5 0.5L10.5 0.5"/>
	// </svg>
}
