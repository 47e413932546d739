package server

import (
	"bytes"
	"context"
	"fmt"
	"mime"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/book"
	"rodwright/book/html"
	"rodwright/book/pdf"
)

type bookIn struct {
	ShownIn
	Paper string `query:"paper" enum:"a4,letter" doc:"Left out, A4."`
}

// bookForm is a form in which the plan is had.
type bookForm struct {
	name, about, media string
	set                func(*book.Document) ([]byte, error)
}

var bookForms = []bookForm{
	{"book.pdf", "The plan as a PDF file", "application/pdf", func(d *book.Document) ([]byte, error) {
		var file bytes.Buffer
		err := pdf.Write(&file, d)
		return file.Bytes(), err
	}},
	{"book.html", "The plan as a page of its own", "text/html; charset=utf-8", func(d *book.Document) ([]byte, error) { return html.Page(d), nil }},
	{"book/article", "The plan to put into a page", "text/html; charset=utf-8", func(d *book.Document) ([]byte, error) { return html.Article(d), nil }},
}

func (s *Server) registerBooks(api huma.API) {
	for _, f := range bookForms {
		media, _, _ := strings.Cut(f.media, ";")
		get(s, api, route{
			id: "get-" + strings.NewReplacer("/", "-", ".", "-").Replace(f.name), path: "/api/pieces/{id}/" + f.name, tag: "drawings",
			summary: f.about, about: "For a stranger who builds the piece; without prices.", media: media, mediaAbout: "The plan.",
		}, func(ctx context.Context, in *bookIn) (*content, error) { return s.book(ctx, in, f) })
	}
}

func (s *Server) book(ctx context.Context, in *bookIn, f bookForm) (*content, error) {
	o, err := s.open(ctx, in.ID, in.Units)
	if err != nil {
		return nil, err
	}
	out, err := s.bytes(o, in.Match, f.media, func() ([]byte, error) {
		d, err := book.Of(o.build, book.Options{Paper: book.Paper(in.Paper), Memo: s.memo})
		if err != nil {
			return nil, fmt.Errorf("book of %s: %w", o.Name, err)
		}
		return f.set(d)
	})
	if err == nil && f.media == "application/pdf" {
		out.Name = mime.FormatMediaType("inline", map[string]string{"filename": o.Name + ".pdf"})
	}
	return out, err
}

// attached marks an answer as a file to keep, under a name.
func attached(name string) string {
	return mime.FormatMediaType("attachment", map[string]string{"filename": name})
}
