package server

import (
	"context"
	"net/http"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/book"
	"rodwright/draw"
	"rodwright/draw/plot"
	"rodwright/draw/svg"
	"rodwright/finding"
)

type pictureIn struct {
	DrawnIn
	File string `path:"picture" maxLength:"100" doc:"The picture's name, as the build's finding tells it, with .svg behind it."`
}

func (s *Server) registerPictures(api huma.API) {
	get(s, api, route{
		id: "get-finding-picture", path: "/api/pieces/{id}/findings/{picture}", tag: "drawings", summary: "The picture of a finding",
		about: "As SVG to put into a page: the tilt in every direction, lengths over the year, the sag of a panel, the sway of a frame. " +
			"Findings that have one tell its name in the build.",
		media: svgType, mediaAbout: "The picture.",
	}, s.picture)
}

// picture answers with the picture of one finding.
func (s *Server) picture(ctx context.Context, in *pictureIn) (*content, error) {
	name, isSVG := strings.CutSuffix(in.File, ".svg")
	if !isSVG {
		return nil, problem(http.StatusNotFound, "there is no "+quoted(in.File), "ask for the picture's name with .svg behind it")
	}
	o, err := s.open(ctx, in.ID, in.Units)
	if err != nil {
		return nil, err
	}
	f, all := pictured(o.build.Findings, name)
	if f == nil {
		right := "no finding of it has a picture"
		if len(all) > 0 {
			right = "it has " + strings.Join(all, ", ")
		}
		return nil, problem(http.StatusNotFound, "the piece has no picture "+quoted(name), right)
	}
	return s.bytes(o, in.Match, svgType, func() ([]byte, error) {
		style := book.A4.Style(o.build.Doc.Fineness)
		if in.Width > 0 {
			style.Width = in.Width
		}
		return svg.Render(plot.Of(*f, plot.ID(name), draw.Style{Fineness: style.Fineness, Width: style.Width})), nil
	})
}

// pictured returns the finding whose picture has a name, or nil and the names that there are.
func pictured(fs []finding.Finding, name string) (*finding.Finding, []string) {
	var all []string
	for i, n := range finding.Names(fs) {
		if fs[i].Picture == (finding.Picture{}) {
			continue
		}
		if n == name {
			return &fs[i], nil
		}
		all = append(all, n)
	}
	return nil, all
}
