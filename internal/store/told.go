package store

import (
	"context"

	"rodwright/internal/store/rules"
	"rodwright/journal"
	"rodwright/piece"
)

// tell checks a fact, an asked change, an answer, a layout or what is withdrawn against the log, and makes in the text what
// comes of it.
func (w *writing) tell(ctx context.Context, e journal.Entry) error {
	if e.Kind == journal.Accepted || e.Kind == journal.Fact && e.Fact.Thing == "" { // nothing before it matters
		return nil
	}
	log, err := w.log(ctx)
	if err != nil {
		return err
	}
	if err := asInput(rules.Check(log, e)); err != nil {
		return err
	}
	switch {
	case e.Kind == journal.Answer && e.Yes:
		return w.take(ctx, log, e)
	case e.Kind == journal.Withdrawn:
		return w.withdraw(ctx, log, e)
	}
	return nil
}

// take puts the values of the order that is answered into the text, unless one was changed since it was asked for:
// what the client was told of it holds for the piece as it was then.
func (w *writing) take(ctx context.Context, log []journal.Entry, answer journal.Entry) error {
	asked := byID(log)[answer.Names]
	for _, p := range asked.Order.Edits {
		now, _, err := piece.ValueAt(w.text, p.Path)
		if err != nil {
			return err
		}
		by, changed, err := w.changed(ctx, log, asked.Base, p.Path, asked.ID)
		if err != nil {
			return err
		}
		if changed {
			return &ConflictError{Path: p.Path, Yours: p.New, Theirs: now, Number: by.Number, Actor: by.Actor}
		}
		if w.text, err = piece.Edit(w.text, p.Path, p.New); err != nil {
			return err
		}
	}
	return nil
}

// withdraw makes the text as it stands once the entry that e names does not hold. Only a yes is in the text.
func (w *writing) withdraw(ctx context.Context, log []journal.Entry, e journal.Entry) error {
	yes, order, ok := rules.Yes(log, e.Names)
	if !ok {
		return nil
	}
	for _, p := range order.Edits {
		of := journal.Entry{Number: yes.Number, Path: p.Path}
		if by, ok := journal.Over(w.text, log, of); ok {
			return w.takenOver(ctx, log, of, by)
		}
	}
	return w.rebuild(ctx, append(log[:len(log):len(log)], e), yes.Number)
}

// takenOver says which later entry stands over the value that a yes put in.
func (w *writing) takenOver(ctx context.Context, log []journal.Entry, of, by journal.Entry) error {
	now, _, err := piece.ValueAt(w.text, of.Path)
	if err != nil {
		return err
	}
	before, at, err := snapshot(ctx, w.tx, w.piece, of.Number-1)
	if err != nil {
		return err
	}
	if before, err = journal.Continue(before, log, at, of.Number-1); err != nil {
		return err
	}
	old, _, err := piece.ValueAt(before, of.Path)
	if err != nil {
		return err
	}
	return &ConflictError{Path: of.Path, Yours: old, Theirs: now, Number: by.Number, Actor: by.Actor}
}

// changed returns the last entry after the number base that changed the value at path, as journal.Since does, but
// for what can't be in the way: the entries written together with this one, what was said to the order with the id
// about, and the withdrawal of an order that was in no text.
func (w *writing) changed(ctx context.Context, es []journal.Entry, base int64, path, about string) (journal.Entry, bool, error) {
	known := byID(es)
	for {
		by, ok := journal.Since(w.text, es, base, path)
		if !ok {
			return by, false, nil
		}
		of := known[by.Names]
		pass := w.together[by.ID] || about != "" && (by.Names == about || of.Names == about)
		if !pass && by.Kind == journal.Withdrawn && of.Kind == journal.Asked {
			var err error
			if pass, err = w.changedNothing(ctx, by); err != nil {
				return by, false, err
			}
		}
		if !pass {
			return by, true, nil
		}
		es = before(es, by.Number)
	}
}

// changedNothing reports whether an order was withdrawn while no yes to it stood.
func (w *writing) changedNothing(ctx context.Context, withdrawn journal.Entry) (bool, error) {
	log, err := w.log(ctx)
	if err != nil {
		return false, err
	}
	_, _, yes := rules.Yes(before(log, withdrawn.Number), withdrawn.Names)
	return !yes, nil
}

// before returns the entries before the given number.
func before(es []journal.Entry, number int64) []journal.Entry {
	for i, e := range es {
		if e.Number >= number {
			return es[:i]
		}
	}
	return es
}

func byID(es []journal.Entry) map[string]journal.Entry {
	known := make(map[string]journal.Entry, len(es))
	for _, e := range es {
		known[e.ID] = e
	}
	return known
}
