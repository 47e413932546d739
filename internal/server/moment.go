package server

import (
	"context"

	"github.com/danielgtaylor/huma/v2"
)

type momentIn struct {
	PieceIn
	TapeIn
	Number int64 `path:"number" minimum:"0" doc:"The number of an entry; 0, the piece as it began."`
}

// momentBody is a piece as it stood after an entry.
type momentBody struct {
	Number int64       `json:"number"`
	Text   string      `json:"text" doc:"The document as it stood."`
	Build  derivedJSON `json:"build"`
	Views  viewsBody   `json:"views"`
}

type momentOut struct {
	Cache string `header:"Cache-Control"`
	Body  momentBody
}

func (s *Server) registerMoment(api huma.API) {
	get(s, api, route{
		id: "moment", path: "/api/pieces/{id}/moments/{number}", tag: "changes", summary: "A piece as it stood after an entry",
		about: "With its document, everything derived from it and its views. What was taken back or withdrawn later stands yet.",
	}, s.moment)
}

func (s *Server) moment(ctx context.Context, in *momentIn) (*momentOut, error) {
	h, err := s.history(ctx, in.ID)
	if err != nil {
		return nil, err
	}
	if err := seen("number", in.Number, h.Number); err != nil {
		return nil, err
	}
	if in.Units != "" {
		if h.whole.Shown, err = h.fineness(in.Units, h.whole.Start); err != nil {
			return nil, err
		}
	}
	then, err := h.whole.At(in.Number)
	if err != nil {
		return nil, err
	}
	text, err := then.Build.JSON()
	return &momentOut{ask, momentBody{in.Number, string(then.Text), text, viewsOf(then.Build)}}, err
}
