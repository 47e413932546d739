package server

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"slices"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/change"
	"rodwright/journal"
)

type entriesIn struct {
	PieceIn
	WriterIn
	TapeIn
	Body struct {
		Base    int64         `json:"base" minimum:"0" doc:"The number of the last entry that the writer has seen."`
		Entries []wantedEntry `json:"entries" minItems:"1" maxItems:"200" doc:"Written one after the other, all or none."`
	}
}

// wantedEntry is an entry as its writer sends it.
type wantedEntry struct {
	ID    string     `json:"id,omitempty" maxLength:"36" doc:"A UUID of version 7 that the writer makes, so that the same sent again is known."`
	At    int64      `json:"at,omitempty" minimum:"0" doc:"When it happened, in milliseconds since 1970, UTC; left out, now."`
	Kind  string     `json:"kind" enum:"edit,undo,fact,asked,answer,withdrawn"`
	Path  string     `json:"path,omitempty" maxLength:"1000" doc:"Of an edit, as in sizes and fields."`
	New   string     `json:"new,omitempty" maxLength:"10000" doc:"Of an edit: the value as it is typed."`
	Names string     `json:"names,omitempty" maxLength:"36" doc:"Of an undo, an answer and what is withdrawn: the id of the entry it is about."`
	Say   string     `json:"say,omitempty" maxLength:"10000" doc:"Of a fact: what happened, on one line: made C2.1 cut-pipe 26 1/2 in in 25 min."`
	Yes   bool       `json:"yes,omitempty" doc:"Of an answer: the change is taken."`
	Words string     `json:"words,omitempty" maxLength:"10000" doc:"Of an asked change: what the client asked for."`
	Edits []editBody `json:"edits,omitempty" maxItems:"500" doc:"Of an asked change: the values it would put in."`
}

// writtenOut is what was written.
type writtenOut struct {
	Cache string `header:"Cache-Control"`
	Body  writtenBody
}

type writtenBody struct {
	Number  int64       `json:"number" doc:"Of the last entry there is."`
	Entries []entryBody `json:"entries" doc:"As they are kept; with those that follow from an answer."`
}

func (s *Server) registerEntries(api huma.API) {
	handle(s, api, route{
		id: "write-entries", path: "/api/pieces/{id}/entries", tag: "changes", summary: "Write down what was decided and done",
		about: "All of it or none. A fact in words is filled in from the piece as it stood at the base. A change that the client asks for is weighed, and waits. " +
			"A yes to one also writes what made parts are for from then on. The same entries sent again change nothing.",
	}.operation(http.MethodPost, api), s.entries)
}

func (s *Server) entries(ctx context.Context, in *entriesIn) (*writtenOut, error) {
	s.writing.Lock()
	defer s.writing.Unlock()
	h, err := s.history(ctx, in.ID)
	if err != nil {
		return nil, err
	}
	if err := seen("base", in.Body.Base, h.Number); err != nil {
		return nil, err
	}
	w := &writer{Server: s, in: in, history: h, seen: h.until(in.Body.Base), last: h.until(h.Number)}
	for i, e := range in.Body.Entries {
		if err := w.add(ctx, fmt.Sprintf("entries[%d]", i), e); err != nil {
			return nil, inFile(err, h.Name)
		}
	}
	return s.write(ctx, h, in.WriterIn, in.TapeIn, w.wanted)
}

// write keeps entries and tells them as they are kept.
func (s *Server) write(ctx context.Context, h *history, by WriterIn, tape TapeIn, wanted []journal.Entry) (*writtenOut, error) {
	if err := h.stands(wanted); err != nil {
		return nil, err
	}
	kept, err := s.store.Append(ctx, h.ID, wanted...)
	if err != nil {
		return nil, s.wrongEntries(ctx, err, h, wanted)
	}
	after, err := s.history(ctx, h.ID)
	if err != nil {
		return nil, err
	}
	told, err := s.telling(ctx, after, by.actor(), tape.Units, func(e journal.Entry) bool {
		return slices.ContainsFunc(kept, func(k journal.Entry) bool { return k.ID == e.ID })
	})
	return &writtenOut{Cache: "no-store", Body: writtenBody{told.Number, told.Entries}}, err
}

// wrongEntries names the edit that can't be put into the document.
func (s *Server) wrongEntries(ctx context.Context, err error, h *history, wanted []journal.Entry) error {
	text, _, lost := s.store.Text(ctx, h.ID)
	if lost != nil {
		return errors.Join(err, lost)
	}
	var edits []editBody
	for _, e := range wanted {
		if e.Kind == journal.Edit {
			edits = append(edits, editBody{e.Path, e.New})
		}
	}
	err = inFile(err, h.Name)
	return s.wrongEdits(ctx, err, &change.Truth{Text: text, Log: h.whole}, edits)
}

// check refuses an entry that lacks what its kind tells, or holds what belongs to another.
func (e wantedEntry) check(path string) error {
	kind := journal.Kind(e.Kind)
	for _, m := range []struct {
		name   string
		has    bool
		needed bool
		may    bool
	}{
		{"path", e.Path != "", kind == journal.Edit, false},
		{"new", e.New != "", false, kind == journal.Edit},
		{"names", e.Names != "", kind == journal.Undo || kind == journal.Answer || kind == journal.Withdrawn, false},
		{"say", e.Say != "", kind == journal.Fact, false},
		{"yes", e.Yes, false, kind == journal.Answer},
		{"words", e.Words != "", false, kind == journal.Asked},
		{"edits", len(e.Edits) > 0, kind == journal.Asked, false},
	} {
		var p *Problem
		switch {
		case m.needed && !m.has:
			p = problem(http.StatusUnprocessableEntity, e.Kind+" needs "+m.name, "send "+m.name+" with it")
		case m.has && !m.needed && !m.may:
			p = problem(http.StatusUnprocessableEntity, e.Kind+" has no "+m.name, "leave "+m.name+" out")
		default:
			continue
		}
		p.Path = path + "." + m.name
		return p
	}
	return nil
}
