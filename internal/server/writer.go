package server

import (
	"context"
	"slices"
	"time"

	"rodwright/change"
	"rodwright/internal/store"
	"rodwright/journal"
)

// writer makes entries out of what is sent.
type writer struct {
	*Server
	*history
	in     *entriesIn
	seen   *unfolding // what the writer had seen, with what they write now
	last   *unfolding // the piece as it stands, with what they write now
	wanted []journal.Entry
}

// add makes one entry, and what follows from it. Path is the name that it was sent by.
func (w *writer) add(ctx context.Context, path string, sent wantedEntry) error {
	if err := sent.check(path); err != nil {
		return err
	}
	e := journal.Entry{
		ID: sent.ID, Actor: w.in.actor(), Base: w.in.Body.Base, Kind: journal.Kind(sent.Kind), Path: sent.Path, New: sent.New, Names: sent.Names, Yes: sent.Yes,
	}
	if sent.At > 0 {
		e.At = time.UnixMilli(sent.At).UTC()
	}
	var err error
	if e.ID, err = idOf(sent.ID, path+".id"); err != nil {
		return err
	}
	kept, again := w.entry(e.ID)
	var meant []journal.Happened
	switch {
	case e.Kind == journal.Fact && again:
		e.Fact, err = w.toldAgain(sent.Say, w.in.TapeIn, kept, path+".say")
	case e.Kind == journal.Fact:
		e.Fact, err = w.fact(sent.Say, path+".say")
	case e.Kind == journal.Asked:
		e.Order, err = w.order(ctx, sent, kept)
	case e.Kind == journal.Answer && e.Yes:
		meant, err = w.meant(ctx, e, again)
	}
	if err != nil {
		return err
	}
	w.put(e, again)
	for i := range meant { // what follows from a yes
		w.put(journal.Entry{ID: following(e.ID, i), Actor: e.Actor, Base: e.Base, At: e.At, Kind: journal.Fact, Fact: &meant[i]}, again)
	}
	return nil
}

// put adds an entry to what is written.
func (w *writer) put(e journal.Entry, again bool) {
	w.wanted = append(w.wanted, e)
	w.seen.add(e)
	if !again {
		w.last.add(e)
	}
}

func (w *writer) fact(line, path string) (*journal.Happened, error) {
	h, err := w.seen.said(line, w.in.TapeIn, path)
	return &h, err
}

// order weighs what the client asks for, unless it was weighed when it was sent before.
func (w *writer) order(ctx context.Context, sent wantedEntry, kept journal.Entry) (*journal.Order, error) {
	edits := puts(sent.Edits)
	if o := kept.Order; o != nil && o.Words == sent.Words && slices.Equal(o.Edits, edits) {
		return o, nil
	}
	if kept.ID != "" {
		return nil, &store.InputError{Field: "id", Why: "was used for another entry"}
	}
	now, err := w.last.now()
	if err != nil {
		return nil, err
	}
	o, _, err := change.Asked(now, sent.Words, edits, w.now().Format(time.DateOnly))
	if err != nil {
		return nil, w.wrongEdits(ctx, err, now, sent.Edits)
	}
	return &o, nil
}

// meant weighs the change that is taken on the piece as it stands: it returns what made parts are for from then on. Of
// a yes that was sent before it is what was written then.
func (w *writer) meant(ctx context.Context, yes journal.Entry, again bool) ([]journal.Happened, error) {
	if again {
		return w.followed(yes.ID), nil
	}
	i := slices.IndexFunc(w.last.log.Entries, func(e journal.Entry) bool { return e.ID == yes.Names && e.Kind == journal.Asked })
	if i < 0 {
		return nil, nil // the store says so
	}
	now, err := w.last.now()
	if err != nil {
		return nil, err
	}
	weighed, err := w.weighed(ctx, now, sentAs(w.last.log.Entries[i].Order.Edits))
	if err != nil {
		return nil, err
	}
	return weighed.Meant, nil
}
