package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"rodwright/journal"
	"rodwright/piece"
)

// Append writes entries to the log of a piece, all or none, and returns them as they are kept. What the writer
// gives of each is Actor, Base and Kind, with Path and New of an edit and Names of an undo; ID where the
// writer has one, At where it happened earlier. Number and Old are settled here. It returns once everything is
// on the disk.
//
// An edit of another path than those changed since its base is merged; one of the same path is a
// *ConflictError. An entry whose id is there already and says the same is returned as it was kept. An undo
// takes back a standing edit of its own actor, or an undo of theirs, whose value nobody changed since. Other
// errors: *NotFoundError, *InputError, *piece.Error for an edit that can't be made.
func (s *Store) Append(ctx context.Context, id string, wanted ...journal.Entry) ([]journal.Entry, error) {
	var kept []journal.Entry
	err := s.inside(ctx, func(tx *sql.Tx) error {
		w, err := s.openLog(ctx, tx, id)
		if err != nil {
			return err
		}
		for _, e := range wanted {
			e, err := w.add(ctx, e)
			if err != nil {
				return err
			}
			kept = append(kept, e)
		}
		return w.keep(ctx)
	})
	if err != nil {
		return nil, err
	}
	if n := len(kept); n > 0 {
		s.feed.send(Change{id, kept[n-1].Number})
	}
	return kept, nil
}

// writing is the log of one piece while a transaction adds to it.
type writing struct {
	tx    *sql.Tx
	piece string
	start []byte
	log   []journal.Entry
	text  []byte
	now   int64
}

func (s *Store) openLog(ctx context.Context, tx *sql.Tx, id string) (*writing, error) {
	st, err := standing(ctx, tx, id)
	if err != nil {
		return nil, err
	}
	w := &writing{tx: tx, piece: id, text: st.text, now: milliseconds(s.now())}
	if w.log, err = entries(ctx, tx, id, 0); err != nil {
		return nil, err
	}
	var start string
	if err := tx.QueryRowContext(ctx, `select start_text from pieces where id = $1`, id).Scan(&start); err != nil {
		return nil, fmt.Errorf("piece: %w", err)
	}
	w.start = []byte(start)
	return w, nil
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
	last := int64(len(w.log))
	e.Number = last + 1
	if e.Base > last {
		return e, &InputError{"base", fmt.Sprintf("is %d, and the last entry is %d", e.Base, last)}
	}
	if e.At.IsZero() {
		e.At = moment(w.now)
	}
	e.At = moment(milliseconds(e.At))
	if e.Kind == journal.Undo {
		err = w.takeBack(&e)
	} else {
		err = w.edit(&e)
	}
	if err != nil {
		return e, err
	}
	w.log = append(w.log, e)
	return e, w.insert(ctx, e)
}

// written returns the entry with the given id, if the piece has one already.
func (w *writing) written(ctx context.Context, id string) (journal.Entry, bool, error) {
	var owner string
	var number int64
	err := w.tx.QueryRowContext(ctx, `select piece, number from entries where id = $1`, id).Scan(&owner, &number)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return journal.Entry{}, false, nil
	case err != nil:
		return journal.Entry{}, false, fmt.Errorf("entry %s: %w", id, err)
	case owner != w.piece:
		return journal.Entry{}, false, &InputError{"id", "was used for an entry of another piece"}
	}
	return w.log[number-1], true, nil
}

func (w *writing) edit(e *journal.Entry) error {
	if err := e.Check(); err != nil {
		return err
	}
	old, _, err := piece.ValueAt(w.text, e.Path)
	if err != nil {
		return err
	}
	if since, changed := journal.Since(w.log, e.Base, e.Path); changed {
		return &ConflictError{Path: e.Path, Yours: e.New, Theirs: old, Number: since.Number, Actor: since.Actor}
	}
	text, err := piece.Edit(w.text, e.Path, e.New)
	if err != nil {
		return err
	}
	e.Old, w.text = old, text
	return nil
}

func (w *writing) takeBack(e *journal.Entry) error {
	if err := e.Check(); err != nil {
		return err
	}
	named := -1
	for i, old := range w.log {
		if old.ID == e.Names {
			named = i
		}
	}
	switch {
	case named < 0:
		return &NotFoundError{"entry", e.Names}
	case w.log[named].Actor != e.Actor:
		return &InputError{"names", fmt.Sprintf("is an entry of %s: each takes back their own", w.log[named].Actor)}
	case !journal.Standing(w.log)[named]:
		return &InputError{"names", fmt.Sprintf("is entry %d, which was taken back already", named+1)}
	}
	if err := w.untouched(e, w.log[named]); err != nil {
		return err
	}
	text, err := journal.Replay(w.start, append(w.log[:len(w.log):len(w.log)], *e))
	w.text = text
	return err
}

// untouched refuses to take back an entry whose value somebody else changed later.
func (w *writing) untouched(e *journal.Entry, named journal.Entry) error {
	edit := named
	for edit.Kind == journal.Undo {
		for _, old := range w.log {
			if old.ID == edit.Names {
				edit = old
				break
			}
		}
	}
	since, changed := journal.Since(w.log, named.Number, edit.Path)
	if !changed || since.Actor == e.Actor {
		return nil
	}
	now, _, err := piece.ValueAt(w.text, edit.Path)
	if err != nil {
		return err
	}
	return &ConflictError{Path: edit.Path, Yours: edit.Old, Theirs: now, Number: since.Number, Actor: since.Actor}
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

// keep stores the text as it stands now, so that reading it needs no replay.
func (w *writing) keep(ctx context.Context) error {
	_, err := w.tx.ExecContext(ctx, `insert into standing (piece, number, body) values ($1, $2, $3)
		on conflict (piece) do update set number = excluded.number, body = excluded.body`,
		w.piece, len(w.log), string(w.text))
	if err != nil {
		return fmt.Errorf("text: %w", err)
	}
	return nil
}
