package html_test

import (
	"bytes"
	"fmt"
	"strings"
	"sync"
	"testing"

	parser "golang.org/x/net/html"

	"rodwright/book"
	"rodwright/book/html"
	"rodwright/build"
	"rodwright/draw"
	"rodwright/examples"
	"rodwright/piece"
	"rodwright/shop"
)

// plans are the books of all examples in their own units.
var plans = sync.OnceValues(func() (out map[string]*book.Document, err error) {
	out = map[string]*book.Document{}
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
		if out[name], err = book.Of(b, book.Options{Paper: book.Letter}); err != nil {
			return nil, err
		}
	}
	return out, nil
})

// every parses the page of every example.
func every(t *testing.T, f func(t *testing.T, d *book.Document, root *parser.Node)) {
	t.Helper()
	ds, err := plans()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range examples.Names() {
		t.Run(name, func(t *testing.T) { f(t, ds[name], parsed(t, html.Page(ds[name]))) })
	}
}

func parsed(t *testing.T, page []byte) *parser.Node {
	t.Helper()
	root, err := parser.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	return root
}

// each calls f for every element under a node.
func each(n *parser.Node, f func(*parser.Node)) {
	if n.Type == parser.ElementNode {
		f(n)
	}
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		each(c, f)
	}
}

// the returns every element of a kind under a node.
func the(n *parser.Node, kind string) (out []*parser.Node) {
	each(n, func(e *parser.Node) {
		if e.Data == kind {
			out = append(out, e)
		}
	})
	return out
}

func attribute(n *parser.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

// words is the text under a node.
func words(n *parser.Node) string {
	if n.Type == parser.TextNode {
		return n.Data
	}
	var out strings.Builder
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		out.WriteString(words(c))
	}
	return out.String()
}

func TestEveryIDIsUniqueAndEveryLinkAndLabelFindsItsOwn(t *testing.T) {
	every(t, func(t *testing.T, d *book.Document, root *parser.Node) {
		ids := map[string]int{}
		each(root, func(e *parser.Node) {
			if id := attribute(e, "id"); id != "" {
				ids[id]++
			}
		})
		for id, n := range ids {
			if n > 1 {
				t.Errorf("%d elements are called %q", n, id)
			}
		}
		links := 0
		each(root, func(e *parser.Node) {
			if to, ok := strings.CutPrefix(attribute(e, "href"), "#"); ok {
				links++
				if ids[to] != 1 {
					t.Errorf("a link to %q leads nowhere", to)
				}
			}
			for _, to := range strings.Fields(attribute(e, "aria-labelledby")) {
				if ids[to] != 1 {
					t.Errorf("<%s> is labelled by %q, which is not there", e.Data, to)
				}
			}
		})
		if links != len(d.Sections) {
			t.Errorf("%d links in the contents of %d sections", links, len(d.Sections))
		}
	})
}

func TestEveryTableHasItsCaptionAndHeads(t *testing.T) {
	every(t, func(t *testing.T, _ *book.Document, root *parser.Node) {
		boxes := map[string]bool{}
		for _, table := range the(root, "table") {
			if len(the(table, "caption")) != 1 || len(the(table, "thead")) != 1 {
				t.Error("a table without caption or head")
			}
			for _, th := range the(table, "th") {
				if s := attribute(th, "scope"); s != "col" && s != "row" || strings.TrimSpace(words(th)) == "" {
					t.Errorf("a head %q of scope %q", words(th), s)
				}
			}
			box := table.Parent
			name := attribute(box, "aria-label")
			if attribute(box, "role") != "region" || attribute(box, "tabindex") != "0" || name == "" || boxes[name] {
				t.Errorf("the box that scrolls is called %q", name)
			}
			boxes[name] = true
		}
		if len(boxes) == 0 {
			t.Error("no tables")
		}
	})
}

func TestHeadingsGoDownOneLevelAtATime(t *testing.T) {
	every(t, func(t *testing.T, _ *book.Document, root *parser.Node) {
		last := byte('0')
		each(root, func(e *parser.Node) {
			if len(e.Data) != 2 || e.Data[0] != 'h' || e.Data[1] < '1' || e.Data[1] > '6' {
				return
			}
			if e.Data[1] > last+1 {
				t.Errorf("%s %q follows h%c", e.Data, words(e), last)
			}
			last = e.Data[1]
		})
		if n := len(the(root, "h1")); n != 1 {
			t.Errorf("%d main headings", n)
		}
	})
}

func TestEveryStepIsAnItemWithItsNumber(t *testing.T) {
	every(t, func(t *testing.T, d *book.Document, root *parser.Node) {
		want := 0
		for _, s := range d.Sections {
			for _, b := range s.Blocks {
				if st, ok := b.(book.Step); ok {
					want = st.Number
				}
			}
		}
		n := 0
		for _, li := range the(root, "li") {
			if attribute(li, "class") != "book-step" {
				continue
			}
			if n++; attribute(li, "value") != fmt.Sprint(n) {
				t.Errorf("step %d is counted as %s", n, attribute(li, "value"))
			}
		}
		if n != want {
			t.Errorf("%d steps, want %d", n, want)
		}
	})
}

func TestAPageIsWholeByItself(t *testing.T) {
	every(t, func(t *testing.T, d *book.Document, root *parser.Node) {
		each(root, func(e *parser.Node) {
			for _, a := range e.Attr {
				if (a.Key == "src" || a.Key == "href") && !strings.HasPrefix(a.Val, "#") {
					t.Errorf("<%s> fetches %s", e.Data, a.Val)
				}
			}
			if e.Data == "script" || e.Data == "link" {
				t.Errorf("<%s> in a page that needs none", e.Data)
			}
		})
		style := words(the(root, "style")[0])
		for _, want := range []string{"@font-face", "data:font/ttf;base64,", "@page{size:215.9mm 279.4mm;margin:20mm 18mm}", "prefers-color-scheme: dark", ".pen-outline"} {
			if !strings.Contains(style, want) {
				t.Errorf("the style lacks %q", want)
			}
		}
		if rest := strings.ReplaceAll(style, "url(data:", ""); strings.Contains(rest, "url(") || strings.Contains(rest, "ZgotmplZ") {
			t.Error("the style fetches something")
		}
	})
}

func TestTheSameDocumentGivesTheSameBytes(t *testing.T) {
	ds, err := plans()
	if err != nil {
		t.Fatal(err)
	}
	d := ds["packing-table"]
	if !bytes.Equal(html.Page(d), html.Page(d)) || !bytes.Contains(html.Page(d), html.Article(d)) {
		t.Error("a page differs from itself or from its article")
	}
}

// line is the least drawing.
func line(id string) *draw.Drawing {
	return &draw.Drawing{ID: id, Title: "A <line>", Alt: "a line", Per: 1, Marks: []draw.Mark{draw.Line{B: draw.Point{X: 1e9}}}}
}

func TestWordsAreNeverMarkup(t *testing.T) {
	const evil = `</title><script>alert(1)</script>"'&`
	d := &book.Document{Title: evil, Subtitle: evil, Language: "en", Paper: book.A4, Units: "inches to 1/16", Sections: []book.Section{{
		ID: "one", Title: evil, Blocks: []book.Block{
			book.Paragraph{Words: evil},
			book.Table{Caption: evil, Columns: []book.Column{{Head: evil, Share: 1}}, Rows: [][]string{{evil}}, Foot: []string{evil}},
			book.Figure{Drawing: line("a"), Caption: evil},
			book.Note{Tone: book.Remark, Title: evil, Items: []string{evil}},
			book.List{Ticks: true, Items: []string{evil}}, book.List{Items: []string{evil}},
			book.Step{Number: 1, Title: evil, Parts: evil, Tool: evil, Time: evil, Measures: []string{evil}, Cautions: []string{evil}, After: evil},
		},
	}}}
	root := parsed(t, html.Page(d))
	if n := len(the(root, "script")); n > 0 {
		t.Errorf("%d scripts", n)
	}
	if n := strings.Count(words(the(root, "article")[0]), evil); n < 18 {
		t.Errorf("the words stand %d times in the article", n)
	}
}

func TestFractionsAreSetAsFractions(t *testing.T) {
	d := &book.Document{Title: "A board", Language: "en", Sections: []book.Section{{ID: "one", Title: "One", Blocks: []book.Block{
		book.Paragraph{Words: "14 3/8 in of 5/4 stock"},
	}}}}
	p := the(parsed(t, html.Article(d)), "section")[0]
	if got := words(the(p, "p")[0]); !strings.Contains(got, "³⁄₈ in of 5/4 stock") {
		t.Errorf("%q", got)
	}
	if n := len(the(p, "span")); n != 1 {
		t.Errorf("%d fractions are set large", n)
	}
}

// Every rule of the article's style stands within the class book, so that it changes nothing around it.
func TestTheStyleKeepsWithinTheArticle(t *testing.T) {
	depth := 0
	for _, line := range strings.Split(html.Style, "\n") {
		selector, _, rule := strings.Cut(line, "{")
		if at := strings.TrimSpace(selector); rule && !strings.HasPrefix(at, "@") && depth < 2 {
			for _, s := range strings.Split(selector, ",") {
				if !strings.HasPrefix(strings.TrimSpace(s), ".book") {
					t.Errorf("a rule for %q", s)
				}
			}
		}
		depth += strings.Count(line, "{") - strings.Count(line, "}")
	}
	if depth != 0 {
		t.Errorf("%d braces are open at the end", depth)
	}
}

func ExampleArticle() {
	d := &book.Document{Title: "Stool", Subtitle: "12 in high", Language: "en", Units: "inches to 1/16", Sections: []book.Section{{
		ID: "steps", Title: "Steps", Blocks: []book.Block{book.Paragraph{Words: "Begin with the seat."}},
	}}}
	for _, line := range strings.Split(string(html.Article(d)), "\n") {
		if strings.HasPrefix(line, "<section") || strings.HasPrefix(line, "<p>") {
			fmt.Println(line)
		}
	}
	// Output:
	// <section id="steps" aria-labelledby="steps-head">
	// <p>Begin with the seat.</p>
}
