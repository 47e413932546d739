package server

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/change"
	"rodwright/journal"
)

type wrongIn struct {
	PieceIn
	TapeIn
	Body struct {
		Base int64  `json:"base" minimum:"0" doc:"The number of the last entry that the asker has seen."`
		Say  string `json:"say" minLength:"1" maxLength:"10000" doc:"What went wrong, on one line: wrong C2.1 25 3/4 in: cut too short."`
	}
}

type wrongOut struct {
	Cache string `header:"Cache-Control"`
	Body  wrongBody
}

// wrongBody is what went wrong and the ways out.
type wrongBody struct {
	Number int64           `json:"number" doc:"Of the last entry of the piece as it was taken to stand."`
	Fact   string          `json:"fact" doc:"What went wrong, as it was understood."`
	Ways   []change.WayOut `json:"ways" doc:"The cheapest first."`
}

func (s *Server) registerWrong(api huma.API) {
	handle(s, api, route{
		id: "ways-out", path: "/api/pieces/{id}/wrong", tag: "changes", summary: "The ways out when something went wrong",
		about: "Each with what it costs, the cheapest first. Nothing is stored: take writes the one that is chosen, with what went wrong.",
	}.operation(http.MethodPost, api), s.wrong)
}

func (s *Server) wrong(ctx context.Context, in *wrongIn) (*wrongOut, error) {
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
	fact, ways, err := waysOut(now, in.Body.Say, in.TapeIn)
	if err != nil {
		return nil, err
	}
	fine, err := h.fineness(in.Units, now.Text)
	out := &wrongOut{Cache: "no-store"}
	out.Body = wrongBody{h.Number, fact.Words(fine, h.rules.shop.Currency), append([]change.WayOut{}, ways...)}
	return out, err
}

// waysOut reads what went wrong and lists the ways out of it.
func waysOut(now *change.Truth, line string, tape TapeIn) (journal.Happened, []change.WayOut, error) {
	u := &unfolding{log: now.Log, truth: now}
	fact, err := u.said(line, tape, "say")
	if err != nil {
		return fact, nil, err
	}
	if fact.What != journal.Wrong && fact.What != journal.Spoiled {
		p := problem(http.StatusUnprocessableEntity, "this tells of nothing that went wrong", "write wrong C2.1 25 3/4 in: cut too short, or spoiled A1.1 and why")
		p.Path = "say"
		return fact, nil, p
	}
	ways, err := change.WaysOut(now, fact)
	return fact, ways, saidProblem(err, "say")
}
