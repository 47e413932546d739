package server

import (
	"context"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/book"
	"rodwright/change"
)

type compareIn struct {
	PieceIn
	TapeIn
	From int64 `query:"from" minimum:"0" doc:"The number of an entry; 0, the piece as it began."`
	To   int64 `query:"to" minimum:"-1" default:"-1" doc:"The number of an entry; left out, the last."`
}

type compareOut struct {
	Cache string `header:"Cache-Control"`
	Body  compareBody
}

// compareBody is what differs between two moments of a piece.
type compareBody struct {
	From   int64         `json:"from"`
	To     int64         `json:"to"`
	Words  []string      `json:"words" doc:"A sentence for each thing that differs."`
	Ripple change.Ripple `json:"ripple"`
}

func (s *Server) registerCompare(api huma.API) {
	get(s, api, route{
		id: "compare", path: "/api/pieces/{id}/compare", tag: "changes", summary: "Two moments of a piece, side by side",
		about: "As it stood after each of two entries: what was taken back or withdrawn later stands yet.",
	}, s.compare)
}

func (s *Server) compare(ctx context.Context, in *compareIn) (*compareOut, error) {
	h, err := s.history(ctx, in.ID)
	if err != nil {
		return nil, err
	}
	if in.To < 0 {
		in.To = h.Number
	}
	moments := [2]*change.Truth{}
	for i, number := range []int64{in.From, in.To} {
		if err := seen([]string{"from", "to"}[i], number, h.Number); err != nil {
			return nil, err
		}
		if moments[i], err = h.whole.At(number); err != nil {
			return nil, err
		}
	}
	from, to := moments[0].Build, moments[1].Build
	fine, err := book.Units(in.Units, to.Doc.Fineness)
	if err != nil {
		return nil, err
	}
	ripple := change.Compare(from, to)
	words := append(change.Progress(moments[0], moments[1]), ripple.Words(fine)...)
	return &compareOut{ask, compareBody{in.From, in.To, append([]string{}, words...), ripple}}, nil
}
