package server

import (
	"context"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/journal"
)

type logIn struct {
	PieceIn
	After int64 `query:"after" minimum:"0" doc:"The number of the last entry that the asker has."`
}

type logOut struct {
	Cache string `header:"Cache-Control"`
	Body  struct {
		Entries []journal.Entry `json:"entries"`
		Number  int64           `json:"number" doc:"Of the last entry there is."`
	}
}

func (s *Server) registerLog(api huma.API) {
	get(s, api, route{
		id: "get-log", path: "/api/pieces/{id}/log", tag: "changes", summary: "The log of a piece",
		about: "Its numbered entries after the given number, in order.",
	}, func(ctx context.Context, in *logIn) (*logOut, error) {
		_, number, err := s.store.Text(ctx, in.ID)
		if err != nil {
			return nil, err
		}
		entries, err := s.store.Log(ctx, in.ID, in.After)
		if err != nil {
			return nil, err
		}
		out := &logOut{Cache: ask}
		out.Body.Entries = append([]journal.Entry{}, entries...)
		if n := len(entries); n > 0 {
			number = max(number, entries[n-1].Number)
		}
		out.Body.Number = number
		return out, nil
	})
}
