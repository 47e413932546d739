package server

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/change"
	"rodwright/journal"
)

type weighIn struct {
	PieceIn
	TapeIn
	Body struct {
		Base  int64      `json:"base" minimum:"0" doc:"The number of the last entry that the asker has seen."`
		Edits []editBody `json:"edits" maxItems:"500" doc:"Made one after the other."`
	}
}

type weighOut struct {
	Cache string `header:"Cache-Control"`
	Body  weighedBody
}

// weighedBody is what edits do to a piece under way.
type weighedBody struct {
	Number int64 `json:"number" doc:"Of the last entry of the piece that they were weighed on."`
	*change.Weighed
}

func (s *Server) registerWeigh(api huma.API) {
	handle(s, api, route{
		id: "weigh", path: "/api/pieces/{id}/weigh", tag: "changes", summary: "What edits do to what is made already",
		about: "Says what becomes of every part that is made, what is to be made again, and what it costs. Nothing is stored.",
	}.operation(http.MethodPost, api), s.weigh)
}

func (s *Server) weigh(ctx context.Context, in *weighIn) (*weighOut, error) {
	h, err := s.history(ctx, in.ID)
	if err != nil {
		return nil, err
	}
	if err := seen("base", in.Body.Base, h.Number); err != nil {
		return nil, err
	}
	now, err := h.standing(in.TapeIn)
	if err != nil {
		return nil, err
	}
	w, err := s.weighed(ctx, now, in.Body.Edits)
	return &weighOut{"no-store", weighedBody{h.Number, w}}, err
}

// weighed weighs edits. The error of one that can't be made names its path.
func (s *Server) weighed(ctx context.Context, now *change.Truth, edits []editBody) (*change.Weighed, error) {
	w, err := change.Weigh(now, puts(edits)...)
	if err != nil {
		return nil, s.wrongEdits(ctx, err, now, edits)
	}
	return w, nil
}

func puts(edits []editBody) []journal.Put {
	out := make([]journal.Put, 0, len(edits))
	for _, e := range edits {
		out = append(out, journal.Put{Path: e.Path, New: e.Value})
	}
	return out
}

// sentAs returns values to put in as they are sent.
func sentAs(edits []journal.Put) []editBody {
	out := make([]editBody, 0, len(edits))
	for _, p := range edits {
		out = append(out, editBody{p.Path, p.New})
	}
	return out
}
