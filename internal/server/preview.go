package server

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/book"
	"rodwright/build"
	"rodwright/change"
	"rodwright/draw/svg"
	"rodwright/draw/view"
	"rodwright/piece"
)

// editBody is one value to try. The greatest sizes are those of a log's entry.
type editBody struct {
	Path  string `json:"path" minLength:"1" maxLength:"1000" doc:"As in sizes and fields: sizes/low level."`
	Value string `json:"value" maxLength:"10000" doc:"As it is typed: 14 3/8."`
}

type previewIn struct {
	PieceIn
	Units string `query:"units" enum:"inch,metric" doc:"The tape to show lengths by; left out, the piece's own."`
	Body  struct {
		Base  int64      `json:"base" minimum:"0" doc:"The number of the last entry that the asker has seen."`
		Edits []editBody `json:"edits" maxItems:"500" doc:"Made one after the other."`
	}
}

// previewBody is what edits would make of a piece.
type previewBody struct {
	Number int64         `json:"number" doc:"Of the last entry of the piece that the edits were tried on."`
	Build  derivedJSON   `json:"build"`
	Ripple change.Ripple `json:"ripple" doc:"What differs from the piece as it stands."`
	Views  viewsBody     `json:"views"`
	Solids solidsBody    `json:"solids"`
}

type viewsBody struct {
	Front string `json:"front" doc:"SVG, to put into a page."`
	Side  string `json:"side" doc:"From the right."`
	Top   string `json:"top"`
}

// derivedJSON is a build that was written already.
type derivedJSON []byte

// MarshalJSON returns the build as it is.
func (d derivedJSON) MarshalJSON() ([]byte, error) { return json.RawMessage(d).MarshalJSON() }

// Schema says that it is an object; package build writes it.
func (derivedJSON) Schema(huma.Registry) *huma.Schema {
	return &huma.Schema{Type: huma.TypeObject, Description: "As in get-build."}
}

type previewOut struct {
	Cache string `header:"Cache-Control"`
	Body  previewBody
}

func (s *Server) registerPreview(api huma.API) {
	handle(s, api, route{
		id: "preview", path: "/api/pieces/{id}/preview", tag: "changes", summary: "What edits would do",
		about: "Makes the edits on the piece as it stands and derives it anew. Nothing is stored.",
	}.operation(http.MethodPost, api), s.preview)
}

func (s *Server) preview(ctx context.Context, in *previewIn) (*previewOut, error) {
	now, err := s.open(ctx, in.ID, in.Units)
	if err != nil {
		return nil, err
	}
	if err := seen("base", in.Body.Base, now.Number); err != nil {
		return nil, err
	}
	text, err := made(now.text, now.Name, in.Body.Edits)
	if err != nil {
		return nil, err
	}
	tried := s.derive(text, now.told, now.rules, in.Units)
	b, err := tried.build()
	if err != nil {
		return nil, s.wrongEdit(ctx, inFile(err, now.Name), text, in.Body.Edits)
	}
	out := &previewOut{Cache: "no-store"}
	out.Body = previewBody{Number: now.Number, Ripple: change.Compare(now.build, b), Views: viewsOf(b), Solids: solidsOf(b)}
	out.Body.Build, err = tried.json()
	return out, err
}

// seen refuses the number of an entry that nobody has written.
func seen(name string, number, last int64) error {
	if number <= last {
		return nil
	}
	p := problem(http.StatusUnprocessableEntity, fmt.Sprintf("%s is %d, and the last entry of the piece is %d", name, number, last), "read the piece again")
	p.Path = name
	return p
}

// made returns the document of a name with the edits in it. The error of an edit that can't be made names its path.
func made(text []byte, name string, edits []editBody) ([]byte, error) {
	for _, e := range edits {
		next, err := piece.Edit(text, e.Path, e.Value)
		var wrong *piece.Error
		if errors.As(inFile(err, name), &wrong) {
			p := documentProblem(wrong)
			p.Path = e.Path
			return nil, p
		}
		if err != nil {
			return nil, err
		}
		text = next
	}
	return text, nil
}

// wrongEdit names the edit that an error of the edited document is about: the only one, or the last one that begins
// before the error in its line.
func (s *Server) wrongEdit(ctx context.Context, err error, text []byte, edits []editBody) *Problem {
	p := s.problemOf(ctx, err)
	if len(edits) == 1 {
		p.Path = edits[0].Path
	}
	if p.Place == nil {
		return p
	}
	nearest := 0
	for _, e := range edits {
		_, at, err := piece.ValueAt(text, e.Path)
		if err == nil && at.Line == p.Place.Line && at.Column <= p.Place.Column && at.Column > nearest {
			nearest, p.Path = at.Column, e.Path
		}
	}
	return p
}

// viewsOf draws the three views of a build, each as large as a sheet of the book allows.
func viewsOf(b *build.Build) viewsBody {
	style := book.A4.Style(b.Doc.Fineness)
	shown := func(side view.Side) string { return string(svg.Render(view.Of(b.Resolved, b.Parts, side, style))) }
	return viewsBody{Front: shown(view.Front), Side: shown(view.Right), Top: shown(view.Top)}
}
