// Package html writes a book as HTML: Page for a file that is whole by itself, with its type and style and the
// rules by which it prints; Article for a page that brings its own, which then holds Style.
//
// Headings, tables, figures, notes and steps keep their meaning for who has the page read aloud. A table that
// is wider than the screen scrolls in its own box. Nothing is computed here: package book writes the document.
package html

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"html/template"

	"rodwright/book"
	"rodwright/draw/svg"
	"rodwright/draw/typeface"
)

// Page returns the document as a complete page: nothing is fetched when it is opened.
func Page(d *book.Document) []byte {
	var out bytes.Buffer
	write(&out, "page", page{
		Document: d, Article: template.HTML(Article(d)),
		Style: template.CSS(typeFaces() + ground + Style + svg.Style + sheetOf(d.Paper)),
	})
	return out.Bytes()
}

// Article returns the document as one article element, for a page that holds Style and the style of package
// svg. The ids of its sections are those of the document.
func Article(d *book.Document) []byte {
	var out bytes.Buffer
	write(&out, "article", newArticle(d))
	return out.Bytes()
}

// page is what the template of a page is filled with.
type page struct {
	*book.Document
	Article template.HTML
	Style   template.CSS
}

// write fills a template of this package. It can fail only where a template does not fit its value, which the
// tests hold; a buffer takes everything.
func write(out *bytes.Buffer, name string, v any) {
	if err := templates.ExecuteTemplate(out, name, v); err != nil {
		fmt.Fprintf(out, "<p>%s</p>", template.HTMLEscapeString(err.Error()))
	}
}

// typeFaces embeds the type of the book.
func typeFaces() string {
	face := func(weight int, ttf []byte) string {
		return fmt.Sprintf("@font-face{font-family:%q;font-weight:%d;src:url(data:font/ttf;base64,%s) format(\"truetype\")}\n",
			typeface.Family, weight, base64.StdEncoding.EncodeToString(ttf))
	}
	return face(400, typeface.Regular()) + face(600, typeface.SemiBold())
}

// sheetOf sets the size of the sheets that the page is printed on.
func sheetOf(p book.Paper) string {
	w, h := p.Size()
	rw, rh := p.Room()
	return fmt.Sprintf("@page{size:%gmm %gmm;margin:%gmm %gmm}\n", w, h, (h-rh)/2, (w-rw)/2)
}
