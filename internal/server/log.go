package server

import (
	"context"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/journal"
)

type logIn struct {
	PieceIn
	WriterIn
	TapeIn
	After int64 `query:"after" minimum:"0" doc:"The number of the last entry that the asker has."`
}

type logOut struct {
	Cache string `header:"Cache-Control"`
	Body  logBody
}

// logBody is what was decided and done.
type logBody struct {
	Number    int64       `json:"number" doc:"Of the last entry there is."`
	Entries   []entryBody `json:"entries"`
	Orders    []orderBody `json:"orders" doc:"The changes that the client asked for and that were not withdrawn, in order."`
	Finished  bool        `json:"finished" doc:"The piece is ready."`
	Delivered bool        `json:"delivered"`
}

// entryBody is one entry as it is told. Members that do not belong to its kind are empty.
type entryBody struct {
	Number  int64      `json:"number"`
	ID      string     `json:"id"`
	Actor   string     `json:"actor"`
	At      int64      `json:"at" doc:"When, in milliseconds since 1970, UTC."`
	Base    int64      `json:"base" doc:"The number of the last entry that its writer had seen."`
	Kind    string     `json:"kind" enum:"edit,undo,fact,asked,answer,withdrawn,accepted"`
	Stands  bool       `json:"stands" doc:"Nothing takes it back."`
	Words   string     `json:"words" doc:"The whole in a sentence."`
	Path    string     `json:"path"`
	Old     string     `json:"old"`
	New     string     `json:"new"`
	Names   string     `json:"names" doc:"The id of the entry that it is about."`
	MayUndo bool       `json:"mayUndo" doc:"An undo by the asker takes exactly this."`
	What    string     `json:"what" doc:"What a fact tells: made, bought, measured."`
	Order   *orderBody `json:"order,omitempty" doc:"Of a change that was asked for."`
}

// orderBody is a change that the client asked for, and how it stands.
type orderBody struct {
	No       int        `json:"no"`
	ID       string     `json:"id" doc:"Of its entry; an answer names it."`
	Number   int64      `json:"number" doc:"Of its entry."`
	Words    string     `json:"words"`
	Edits    []editBody `json:"edits"`
	Cents    *int64     `json:"cents" doc:"More or less to pay, as the client was told; null where it is not known."`
	Ready    string     `json:"ready" doc:"The new day, as the client was told: 2027-01-15."`
	Answered bool       `json:"answered"`
	Yes      bool       `json:"yes"`
}

func (s *Server) registerLog(api huma.API) {
	get(s, api, route{
		id: "get-log", path: "/api/pieces/{id}/log", tag: "changes", summary: "The log of a piece",
		about: "Its numbered entries after the given number, in order, each in words.",
	}, func(ctx context.Context, in *logIn) (*logOut, error) {
		h, err := s.history(ctx, in.ID)
		if err != nil {
			return nil, err
		}
		out := &logOut{Cache: ask}
		out.Body, err = s.telling(ctx, h, in.actor(), in.Units, func(e journal.Entry) bool { return e.Number > in.After })
		return out, err
	})
}

// telling tells entries of a log.
func (s *Server) telling(ctx context.Context, h *history, actor, units string, wanted func(journal.Entry) bool) (logBody, error) {
	text, _, err := s.store.Text(ctx, h.ID)
	if err != nil {
		return logBody{}, err
	}
	fine, err := h.fineness(units, text)
	if err != nil {
		return logBody{}, err
	}
	entries, stands, rec := h.whole.Entries, journal.Standing(h.whole.Entries), journal.Fold(h.whole.Entries)
	undo, _ := journal.Undoable(entries, actor)
	redo, _ := journal.Redoable(entries, actor)
	out := logBody{Number: h.Number, Entries: []entryBody{}, Orders: []orderBody{}, Finished: rec.Finished, Delivered: rec.Delivered}
	for i, e := range entries {
		if !wanted(e) {
			continue
		}
		b := entryOf(e, rec)
		b.Stands, b.Words = stands[i], journal.Words(entries, i, fine, h.rules.shop.Currency)
		b.MayUndo = e.ID == undo.ID || e.ID == redo.ID
		out.Entries = append(out.Entries, b)
	}
	for _, o := range rec.Orders {
		out.Orders = append(out.Orders, orderOf(o))
	}
	return out, nil
}

func entryOf(e journal.Entry, rec *journal.Record) entryBody {
	out := entryBody{
		Number: e.Number, ID: e.ID, Actor: e.Actor, At: e.At.UnixMilli(), Base: e.Base, Kind: string(e.Kind),
		Path: e.Path, Old: e.Old, New: e.New, Names: e.Names,
	}
	if e.Fact != nil {
		out.What = string(e.Fact.What)
	}
	if e.Order != nil {
		asking := journal.Asking{Order: *e.Order, ID: e.ID, Number: e.Number}
		for _, o := range rec.Orders {
			if o.ID == e.ID {
				asking = o
			}
		}
		order := orderOf(asking)
		out.Order = &order
	}
	return out
}

func orderOf(o journal.Asking) orderBody {
	return orderBody{
		No: o.No, ID: o.ID, Number: o.Number, Words: o.Words, Edits: sentAs(o.Edits), Cents: o.Cents, Ready: o.Ready, Answered: o.Answered, Yes: o.Yes,
	}
}
