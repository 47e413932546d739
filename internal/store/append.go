package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"rodwright/journal"
	"rodwright/piece"
)

// ahead is how far the clock of another machine may be before ours.
const ahead = 5 * time.Minute

// Append writes entries to the log of a piece, all or none, and returns them as they are kept. What the writer
// gives of each is Actor, Base and Kind, with Path and New of an edit and Names of an undo; ID where the
// writer has one, At where it happened earlier. Number and Old are settled here. It returns once everything is
// on the disk.
//
// An edit of another path than those changed since its base is merged; one of the same value is a
// *ConflictError. An entry whose id is there already and says the same is returned as it was kept. An undo
// takes back the last standing edit of its own actor (journal.Undoable), or their last undo while they have
// written no other edit since (journal.Redoable); it is a *ConflictError while somebody's later edit of the
// value stands. Other errors: *NotFoundError, *InputError, *piece.Error for an edit that can't be made.
func (s *Store) Append(ctx context.Context, id string, wanted ...journal.Entry) ([]journal.Entry, error) {
	var kept []journal.Entry
	var before, after int64
	err := s.inside(ctx, func(tx *sql.Tx) error {
		w, err := s.openLog(ctx, tx, id)
		if err != nil {
			return err
		}
		before = w.number
		for _, e := range wanted {
			e, err := w.add(ctx, e)
			if err != nil {
				return err
			}
			kept = append(kept, e)
		}
		if after = w.number; after == before {
			return nil
		}
		return w.keep(ctx)
	})
	if err != nil {
		return nil, err
	}
	if after > before {
		s.feed.send(Change{id, after})
	}
	return kept, nil
}

// writing is the log of one piece while a transaction adds to it.
type writing struct {
	tx     *sql.Tx
	piece  string
	now    time.Time
	text   []byte
	number int64 // of the last entry
}

func (s *Store) openLog(ctx context.Context, tx *sql.Tx, id string) (*writing, error) {
	text, number, err := standing(ctx, tx, id)
	return &writing{tx, id, s.now(), text, number}, err
}

// add checks one entry against the log and writes it.
func (w *writing) add(ctx context.Context, e journal.Entry) (journal.Entry, error) {
	var err error
	if e.ID, err = settleID(e.ID); err != nil {
		return e, err
	}
	if old, there, err := w.written(ctx, e.ID); err != nil || there {
		if err == nil && !old.Same(e) {
			err = &InputError{"id", "was used for another entry"}
		}
		return old, err
	}
	if e, err = w.settle(e); err != nil {
		return e, err
	}
	if e.Kind == journal.Undo {
		err = w.takeBack(ctx, e)
	} else {
		e.Old, err = w.edit(ctx, e)
	}
	if err != nil {
		return e, err
	}
	w.number = e.Number
	return e, w.insert(ctx, e)
}

// settle gives the entry its number and time, and reports what of it can't be.
func (w *writing) settle(e journal.Entry) (journal.Entry, error) {
	if e.Base > w.number {
		return e, &InputError{"base", fmt.Sprintf("is %d, and the last entry is %d", e.Base, w.number)}
	}
	if e.At.IsZero() {
		e.At = w.now
	}
	if e.At.After(w.now.Add(ahead)) {
		return e, &InputError{"at", fmt.Sprintf("is %s, which is still to come: mend the clock", e.At.UTC().Format(time.RFC3339))}
	}
	e.Number, e.Old, e.At = w.number+1, "", moment(milliseconds(e.At))
	return e, asInput(e.Check())
}

// written returns the entry with the given id, if the piece has one already.
func (w *writing) written(ctx context.Context, id string) (journal.Entry, bool, error) {
	var owner string
	err := w.tx.QueryRowContext(ctx, `select piece from entries where id = $1`, id).Scan(&owner)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return journal.Entry{}, false, nil
	case err != nil:
		return journal.Entry{}, false, fmt.Errorf("entry %s: %w", id, err)
	case owner != w.piece:
		return journal.Entry{}, false, &InputError{"id", "was used for an entry of another piece"}
	}
	e, err := entryOf(ctx, w.tx, w.piece, id)
	return e, err == nil, err
}

// edit makes the edit in the text, unless its value was changed since its base, and returns what stood there.
func (w *writing) edit(ctx context.Context, e journal.Entry) (old string, err error) {
	if old, _, err = piece.ValueAt(w.text, e.Path); err != nil {
		return "", err
	}
	since, err := entriesSince(ctx, w.tx, w.piece, e.Base)
	if err != nil {
		return "", err
	}
	if by, changed := journal.Since(w.text, since, e.Base, e.Path); changed {
		return "", &ConflictError{Path: e.Path, Yours: e.New, Theirs: old, Number: by.Number, Actor: by.Actor}
	}
	text, err := piece.Edit(w.text, e.Path, e.New)
	if err != nil {
		return "", err
	}
	w.text = text
	return old, nil
}

func (w *writing) insert(ctx context.Context, e journal.Entry) error {
	_, err := w.tx.ExecContext(ctx, `insert into entries (piece, number, id, actor, base, written, kind, path, old_value, new_value, names)
		values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)`,
		w.piece, e.Number, e.ID, e.Actor, e.Base, milliseconds(e.At), string(e.Kind), e.Path, e.Old, e.New, e.Names)
	if err != nil {
		return fmt.Errorf("entry %d: %w", e.Number, err)
	}
	return nil
}
