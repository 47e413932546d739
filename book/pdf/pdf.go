// Package pdf prints a book as a PDF file: tagged, with bookmarks, embedded type, and the same bytes every
// time. Package sheet sets the book; this one only writes what stands on the sheets, and alone knows the
// library that writes files. Start with Write.
package pdf

import (
	"bytes"
	"fmt"
	"io"

	"github.com/carlos7ags/folio/document"
	"github.com/carlos7ags/folio/layout"

	"rodwright/book"
	"rodwright/book/pdf/sheet"
)

// Write prints the document. It fails when the document can't be set: no sections, a table whose rows are not
// as long as its head, a letter that the embedded type lacks; the error names the place. Nothing is written
// then.
func Write(w io.Writer, d *book.Document) error {
	set, err := sheet.Of(d)
	if err != nil {
		return fmt.Errorf("setting the book: %w", err)
	}
	p, err := newPress()
	if err != nil {
		return err
	}
	file := document.NewDocument(document.PageSize{Width: set.Width, Height: set.Height})
	file.SetMargins(layout.Margins{})
	file.SetTagged(true)
	file.SetAutoBookmarks(true)
	file.SetViewerPreferences(document.ViewerPreferences{DisplayDocTitle: true})
	file.Info = document.Info{Title: d.Title, Subject: d.Subtitle, Creator: "Rodwright", Language: d.Language}
	for i, s := range set.Sheets {
		if i > 0 {
			file.Add(layout.NewAreaBreak())
		}
		file.Add(page{p.block(s)})
	}
	var out bytes.Buffer
	if _, err := file.WriteToWithOptions(&out, document.WriteOptions{Deterministic: true}); err != nil {
		return fmt.Errorf("printing the book: %w", err)
	}
	if _, err := w.Write(out.Bytes()); err != nil {
		return fmt.Errorf("writing the book: %w", err)
	}
	return nil
}

// page is a whole sheet as an element of the library's.
type page struct{ block layout.PlacedBlock }

// PlanLayout implements layout.Element; a sheet takes all of its page.
func (p page) PlanLayout(area layout.LayoutArea) layout.LayoutPlan {
	return layout.LayoutPlan{Status: layout.LayoutFull, Consumed: area.Height, Blocks: []layout.PlacedBlock{p.block}}
}
