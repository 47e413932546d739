package server

import (
	"context"
	"net/http"
	"time"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/adapters/humago"
	"github.com/danielgtaylor/huma/v2/sse"

	"rodwright/internal/store"
)

// pieceEvent is word of a piece that changed. It carries numbers only: who wants to know more asks.
type pieceEvent struct {
	Piece  string `json:"piece" doc:"Its id."`
	Number int64  `json:"number" doc:"Of its last entry."`
}

// beat is how often a silent stream shows that it is alive.
const beat = 15 * time.Second

func (s *Server) registerEvents(api huma.API) {
	op := route{
		id: "listen", path: "/api/events", tag: "changes", summary: "Word of changes",
		about: "Server-sent events (HTML Living Standard, 9.2): the number of every piece at first, then of each that changes. Comments keep a silent stream open.",
	}.operation(http.MethodGet, api)
	op.Middlewares = huma.Middlewares{writable}
	sse.Register(api, op, map[string]any{"piece": pieceEvent{}}, s.events)
}

type lineKey struct{}

// writable lets the stream write comments, and makes sure that nobody keeps it back.
func writable(ctx huma.Context, next func(huma.Context)) {
	_, w := humago.Unwrap(ctx)
	w.Header().Set("Cache-Control", "no-store")
	next(huma.WithValue(ctx, lineKey{}, w))
}

// events sends numbers until the asker, the server or the shop is gone.
func (s *Server) events(ctx context.Context, _ *struct{}, send sse.Sender) {
	changes, stop := s.store.Changes()
	defer stop()
	w := ctx.Value(lineKey{}).(http.ResponseWriter)
	if comment(w, "open") != nil || s.numbers(ctx, send) != nil {
		return
	}
	alive := time.NewTicker(beat)
	defer alive.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-s.ending:
			return
		case <-alive.C:
			if comment(w, "alive") != nil {
				return
			}
		case c, open := <-changes:
			if !open || tell(send, c) != nil {
				return
			}
		}
	}
}

// numbers tells the number of every piece, so that who was cut off learns what they missed.
func (s *Server) numbers(ctx context.Context, send sse.Sender) error {
	ps, err := s.store.Pieces(ctx)
	if err != nil {
		s.problemOf(ctx, err)
		return err
	}
	for _, p := range ps {
		if err := tell(send, store.Change{Piece: p.ID, Number: p.Number}); err != nil {
			return err
		}
	}
	return nil
}

func tell(send sse.Sender, c store.Change) error {
	return send.Data(pieceEvent{c.Piece, c.Number})
}

// comment writes a line that readers of the stream pass over.
func comment(w http.ResponseWriter, words string) error {
	c := http.NewResponseController(w)
	if err := c.SetWriteDeadline(time.Now().Add(sse.WriteTimeout)); err != nil {
		return err
	}
	if _, err := w.Write([]byte(": " + words + "\n\n")); err != nil {
		return err
	}
	return c.Flush()
}
