package server

import (
	"context"
	"errors"

	"rodwright/book"
	"rodwright/change"
	"rodwright/internal/store"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/piece"
)

// WriterIn is what a request says of who sends it.
type WriterIn struct {
	Actor string `header:"X-Actor" doc:"Who writes or asks, 1 to 100 letters; left out, maker."`
}

// actor is the name to write under: a shop is one maker's unless a request names somebody.
func (w WriterIn) actor() string {
	if w.Actor == "" {
		return "maker"
	}
	return w.Actor
}

// TapeIn is what a request says of the tape.
type TapeIn struct {
	Units string `query:"units" enum:"inch,metric" doc:"The tape to show lengths by, and to read those that are said without a unit; left out, the piece's own."`
}

// unit is what a length without a unit means in words.
func (t TapeIn) unit(own length.Unit) length.Unit {
	switch t.Units {
	case "inch":
		return length.In
	case "metric":
		return length.MM
	}
	return own
}

// history is a piece with everything that was written of it.
type history struct {
	store.Piece
	rules settings
	whole change.Log
}

// history reads a piece from its start on.
func (s *Server) history(ctx context.Context, id string) (*history, error) {
	start, err := s.store.Start(ctx, id)
	if err != nil {
		return nil, err
	}
	p, err := s.store.Piece(ctx, id)
	if err != nil {
		return nil, err
	}
	rules, err := s.settings(ctx)
	if err != nil {
		return nil, err
	}
	entries, err := s.store.Log(ctx, id, 0)
	if err != nil {
		return nil, err
	}
	p.Number = int64(len(entries))
	return &history{p, rules, change.Log{Name: p.Name, Start: start, Entries: entries, Shop: rules.shop, Memo: s.memo}}, nil
}

// entry returns the entry with the given id.
func (h *history) entry(id string) (journal.Entry, bool) {
	if id != "" {
		for _, e := range h.whole.Entries {
			if e.ID == id {
				return e, true
			}
		}
	}
	return journal.Entry{}, false
}

// fineness is to what lengths are told: by the tape that was asked for, else as the document has it. A document that
// can't be read is told of as it began.
func (h *history) fineness(units string, text []byte) (length.Fineness, error) {
	doc, err := piece.Read(h.Name, text)
	if err != nil {
		if doc, err = piece.Read(h.Name, h.whole.Start); err != nil {
			return length.Fineness{}, err
		}
	}
	return book.Units(units, doc.Fineness)
}

// standing returns the piece as it stands, its lengths said by the tape that was asked for.
func (h *history) standing(t TapeIn) (*change.Truth, error) {
	whole := h.whole
	if t.Units != "" {
		fine, err := h.fineness(t.Units, whole.Start)
		if err != nil {
			return nil, err
		}
		whole.Shown = fine
	}
	return whole.Now()
}

// unfolding is a piece at a moment, to which entries are added that are not kept yet. It is derived only when it is
// asked for.
type unfolding struct {
	log   change.Log
	truth *change.Truth
}

// until is the piece as it stood after the entry of that number.
func (h *history) until(number int64) *unfolding {
	log := h.whole
	log.Entries = log.Entries[:number:number]
	return &unfolding{log: log}
}

// add writes an entry behind the others, on this paper alone.
func (u *unfolding) add(e journal.Entry) {
	e.Number = int64(len(u.log.Entries)) + 1
	u.log.Entries = append(u.log.Entries[:e.Number-1:e.Number-1], e)
	u.truth = nil
}

// now returns the piece with everything that was added.
func (u *unfolding) now() (*change.Truth, error) {
	if u.truth != nil {
		return u.truth, nil
	}
	var err error
	u.truth, err = u.log.Now()
	if err != nil {
		u.truth = nil
	}
	return u.truth, err
}

// said reads a fact in words, and fills in from the piece as it stands what a maker does not say.
func (u *unfolding) said(line string, tape TapeIn, path string) (journal.Happened, error) {
	now, err := u.now()
	if err != nil {
		return journal.Happened{}, err
	}
	fact, err := journal.Say(line, tape.unit(now.Build.Doc.Unit))
	if err != nil {
		return fact, saidProblem(err, path)
	}
	fact, err = now.Complete(fact)
	return fact, saidProblem(err, path)
}

// wrongEdits says which of edits an error is about that came of them.
func (s *Server) wrongEdits(ctx context.Context, err error, now *change.Truth, edits []editBody) error {
	var document *piece.Error
	if !errors.As(err, &document) {
		return err
	}
	text, bad := made(now.Text, now.Log.Name, edits)
	if bad != nil {
		return bad
	}
	return s.wrongEdit(ctx, inFile(err, now.Log.Name), text, edits)
}
