package server

import (
	"context"
	"net/http"
	"slices"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/change"
	"rodwright/journal"
	"rodwright/length"
)

type yieldsIn struct {
	PieceIn
	TapeIn
	Stock string `query:"stock" required:"true" minLength:"1" maxLength:"100" doc:"The tag that is written on a board, stick or sheet that was bought."`
	Start string `query:"start" maxLength:"100" doc:"Where the first cut begins, from its end: 38 in; left out, at the end."`
}

type yieldsOut struct {
	Cache string `header:"Cache-Control"`
	Body  *change.Yield
}

func (s *Server) registerYields(api huma.API) {
	get(s, api, route{
		id: "get-yields", path: "/api/pieces/{id}/yields", tag: "pieces", summary: "What bought stock still gives",
		about: "Of each kind of part still to be made from such stock, how many come out one after the other if the first cut begins at start.",
	}, s.yields)
}

func (s *Server) yields(ctx context.Context, in *yieldsIn) (*yieldsOut, error) {
	h, err := s.history(ctx, in.ID)
	if err != nil {
		return nil, err
	}
	now, err := h.whole.Now()
	if err != nil {
		return nil, err
	}
	start := length.Length(0)
	if in.Start != "" {
		if start, err = length.Parse(in.Start, in.unit(now.Build.Doc.Unit)); err != nil {
			p := problem(http.StatusUnprocessableEntity, err.Error(), "write a length from the end of the stock, as 38 in")
			p.Path = "start"
			return nil, p
		}
	}
	wrong := "stock"
	if slices.ContainsFunc(now.Record.Goods, func(g journal.Piece) bool { return g.Tag == in.Stock }) {
		wrong = "start"
	}
	y, err := change.Yields(now, in.Stock, start)
	return &yieldsOut{ask, y}, saidProblem(err, wrong)
}
