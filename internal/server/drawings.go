package server

import (
	"bytes"
	"context"
	"net/http"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/book"
	"rodwright/draw"
	"rodwright/draw/dxf"
	"rodwright/draw/svg"
)

// DrawnIn is what a request for drawings says.
type DrawnIn struct {
	ShownIn
	Width float64 `query:"width" minimum:"40" maximum:"2000" doc:"The width there is on paper, in millimetres; left out, that of a book's sheet."`
}

type oneDrawingIn struct {
	DrawnIn
	File string `path:"drawing" maxLength:"100" doc:"The drawing's id, with .svg (to put into a page) or .dxf (R12, full size in millimetres) behind it."`
}

type drawingsBody struct {
	Drawings []drawingLine `json:"drawings" doc:"In the book's order."`
}

type drawingLine struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Kind  string `json:"kind" enum:"view,part,cut,glue"`
	Alt   string `json:"alt" doc:"What it shows, for who can't see it."`
	Per   int64  `json:"per" doc:"1 : per is its scale on paper."`
}

// The kinds of file that a drawing is had as. DXF's media type is registered with IANA.
const (
	svgType = "image/svg+xml"
	dxfType = "image/vnd.dxf"
)

func (s *Server) registerDrawings(api huma.API) {
	get(s, api, route{
		id: "list-drawings", path: "/api/pieces/{id}/drawings", tag: "drawings", summary: "The drawings of a piece",
		about: "The views, then every part that is marked out, then how stock is cut and panels are glued up.",
	}, func(ctx context.Context, in *DrawnIn) (*valued[drawingsBody], error) {
		o, err := s.open(ctx, in.ID, in.Units)
		if err != nil {
			return nil, err
		}
		return value(s, o, in.Match, func() (drawingsBody, error) {
			out := drawingsBody{Drawings: []drawingLine{}}
			for _, p := range o.drawings(in.Width) {
				d := p.Drawing
				out.Drawings = append(out.Drawings, drawingLine{d.ID, d.Title, p.Kind, d.Alt, d.Per})
			}
			return out, nil
		})
	})
	get(s, api, route{
		id: "get-drawing", path: "/api/pieces/{id}/drawings/{drawing}", tag: "drawings", summary: "One drawing",
		about: "As SVG or as DXF, by the ending of its name.", media: svgType, mediaAbout: "The drawing; " + dxfType + " where it is asked for.",
	}, s.drawing)
}

// drawings returns the drawings of the piece for paper of the given width, or for a book's sheet.
func (o *opened) drawings(width float64) []book.Plate {
	style := book.A4.Style(o.build.Doc.Fineness)
	if width > 0 {
		style.Width, style.Height = width, width*style.Height/style.Width
	}
	return o.shared.drawings(o.build, style)
}

func (s *Server) drawing(ctx context.Context, in *oneDrawingIn) (*content, error) {
	id, isSVG := strings.CutSuffix(in.File, ".svg")
	id, isDXF := strings.CutSuffix(id, ".dxf")
	if isSVG == isDXF {
		return nil, problem(http.StatusNotFound, "there is no "+quoted(in.File), "ask for the drawing's id with .svg or .dxf behind it")
	}
	o, err := s.open(ctx, in.ID, in.Units)
	if err != nil {
		return nil, err
	}
	plates := o.drawings(in.Width)
	d := drawingOf(plates, id)
	if d == nil {
		return nil, problem(http.StatusNotFound, "the piece has no drawing "+quoted(id), "it has "+strings.Join(ids(plates), ", "))
	}
	if isSVG {
		return s.bytes(o, in.Match, svgType, func() ([]byte, error) { return svg.Render(d), nil })
	}
	out, err := s.bytes(o, in.Match, dxfType, func() ([]byte, error) {
		var file bytes.Buffer
		err := dxf.Write(&file, d)
		return file.Bytes(), err
	})
	if err == nil {
		out.Name = attached(o.Name + " " + d.ID + ".dxf")
	}
	return out, err
}

func drawingOf(plates []book.Plate, id string) *draw.Drawing {
	for _, p := range plates {
		if p.Drawing.ID == id {
			return p.Drawing
		}
	}
	return nil
}

func ids(plates []book.Plate) []string {
	out := make([]string, len(plates))
	for i, p := range plates {
		out[i] = p.Drawing.ID
	}
	return out
}
