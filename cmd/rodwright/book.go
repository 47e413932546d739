package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"rodwright/book"
	"rodwright/book/html"
	"rodwright/book/pdf"
)

type bookVerb struct {
	Piece string `arg:"" help:"The piece document, NAME.piece.yaml, or - for standard input."`
	Out   string `short:"o" placeholder:"FILE" required:"" help:"File to write: NAME.pdf or NAME.html."`
	Paper string `default:"a4" help:"Paper to print on: a4 or letter."`
	Units string `help:"Lengths in inch or metric; without it as the piece is written."`
	Drawn bool   `help:"As it began: the journal beside it is left out."`
	Force bool   `help:"Replace an existing file."`
}

// Help shows an example.
func (bookVerb) Help() string {
	return "Example: rodwright book examples/packing-table.piece.yaml -o table.pdf --units metric" + withJournal
}

// Run writes the plan of one document. What the checks find is told in the plan and is no failure.
func (v *bookVerb) Run(m *Main) error {
	print, err := printer(v.Out)
	if err != nil {
		return badInput(err)
	}
	if _, err := os.Stat(v.Out); err == nil && !v.Force {
		return badInput(fmt.Errorf("%s: there is such a file already; it was left as it is: --force replaces it", v.Out))
	}
	paper, err := book.ParsePaper(v.Paper)
	if err != nil {
		return badInput(err)
	}
	b, err := m.derive(v.Piece, v.Drawn)
	if err != nil {
		return err
	}
	to, err := book.Units(v.Units, b.Doc.Fineness)
	if err != nil {
		return badInput(err)
	}
	d, err := book.Of(b, book.Options{Paper: paper, Fineness: to})
	if err != nil {
		return err
	}
	content, err := print(d)
	if err != nil {
		return fmt.Errorf("%s: %w", v.Out, err)
	}
	if err := m.write(v.Out, content, v.Force); err != nil {
		return err
	}
	fmt.Fprintf(m.Stderr, "wrote %s\n", v.Out)
	return nil
}

// printer returns what prints a book to a file of that name.
func printer(name string) (func(*book.Document) ([]byte, error), error) {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".pdf":
		return func(d *book.Document) ([]byte, error) {
			var out bytes.Buffer
			err := pdf.Write(&out, d)
			return out.Bytes(), err
		}, nil
	case ".html":
		return func(d *book.Document) ([]byte, error) { return html.Page(d), nil }, nil
	}
	return nil, fmt.Errorf("%s: a plan is written to a file named NAME.pdf or NAME.html", name)
}
