package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"rodwright/internal/store/rules"
	"rodwright/journal"
	"rodwright/piece"
)

// ahead is how far the clock of another machine may be before ours.
const ahead = 5 * time.Minute

// Append writes entries to the log of a piece, all or none, and returns them as they are kept. What the writer
// gives of each is Actor, Base and Kind, with the members of the kind: Path and New, Names, Fact, Order, Yes, Layout; ID
// where the writer has one, At where it happened earlier. Number, Old and the number of an order that has none are
// settled here. It returns once everything is on the disk.
//
// An edit of another path than those changed since its base is merged; one of the same value is a *ConflictError.
// Entries written together are never in each other's way: the later wins. An entry whose id is there already and
// says the same is returned as it was kept. An undo takes back the last standing edit of its own actor
// (journal.Undoable), or their last undo while they have written no other edit since (journal.Redoable); it is a
// *ConflictError while a later edit of the value, or a yes to one, stands.
//
// A fact about a thing needs one that was made. A yes puts the values of its order into the text, and is a
// *ConflictError where one was changed since the base of the order. Anybody may withdraw a fact, an order, an
// answer or an accepted layout that stands; with a yes its values go, and it is a *ConflictError while a later change of one stands.
// Other errors: *NotFoundError, *InputError, *piece.Error for a value that can't be put in.
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

	entries  []journal.Entry // the whole log, once it was asked for
	read     bool
	together map[string]bool // ids of the entries that are written together
}

func (s *Store) openLog(ctx context.Context, tx *sql.Tx, id string) (*writing, error) {
	text, number, err := standing(ctx, tx, id)
	return &writing{tx: tx, piece: id, now: s.now(), text: text, number: number, together: make(map[string]bool)}, err
}

// log returns the whole log as it stands in the transaction.
func (w *writing) log(ctx context.Context) ([]journal.Entry, error) {
	if w.read {
		return w.entries, nil
	}
	es, err := entries(ctx, w.tx, w.piece, 0)
	w.entries, w.read = es, err == nil
	return es, err
}

// add checks one entry against the log and writes it.
func (w *writing) add(ctx context.Context, e journal.Entry) (journal.Entry, error) {
	var err error
	if e.ID, err = settleID(e.ID); err != nil {
		return e, err
	}
	if e, err = asRead(e); err != nil {
		return e, err
	}
	w.together[e.ID] = true
	if old, there, err := w.written(ctx, e.ID); err != nil || there {
		if err == nil && !repeats(old, e) {
			err = &InputError{"id", "was used for another entry"}
		}
		return old, err
	}
	if e, err = w.settle(ctx, e); err != nil {
		return e, err
	}
	switch e.Kind {
	case journal.Edit:
		e.Old, err = w.edit(ctx, e)
	case journal.Undo:
		err = w.takeBack(ctx, e)
	default:
		err = w.tell(ctx, e)
	}
	if err != nil {
		return e, err
	}
	return e, w.insert(ctx, e)
}

// repeats reports whether e is old sent again. An order may have been sent without its number.
func repeats(old, e journal.Entry) bool {
	if old.Kind == journal.Asked && e.Kind == journal.Asked && e.Order != nil && e.Order.No == 0 {
		e.Order.No = old.Order.No
	}
	return old.Same(e)
}

// settle gives the entry its number and time, and an order the next of its own, and reports what of it can't be.
func (w *writing) settle(ctx context.Context, e journal.Entry) (journal.Entry, error) {
	if e.Base > w.number {
		return e, &InputError{"base", fmt.Sprintf("is %d, and the last entry is %d", e.Base, w.number)}
	}
	if e.At.IsZero() {
		e.At = w.now
	}
	if e.At.After(w.now.Add(ahead)) {
		return e, &InputError{"at", fmt.Sprintf("is %s, which is still to come: mend the clock", e.At.UTC().Format(time.RFC3339))}
	}
	if e.Kind == journal.Asked && e.Order != nil && e.Order.No == 0 {
		log, err := w.log(ctx)
		if err != nil {
			return e, err
		}
		e.Order.No = rules.NextOrder(log)
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
	by, changed, err := w.changed(ctx, since, e.Base, e.Path, "")
	if err != nil {
		return "", err
	}
	if changed {
		return "", &ConflictError{Path: e.Path, Yours: e.New, Theirs: old, Number: by.Number, Actor: by.Actor}
	}
	text, err := piece.Edit(w.text, e.Path, e.New)
	if err != nil {
		return "", err
	}
	w.text = text
	return old, nil
}

// insert writes the entry after the last.
func (w *writing) insert(ctx context.Context, e journal.Entry) error {
	kept, err := encode(e)
	if err != nil {
		return err
	}
	yes := 0
	if e.Yes {
		yes = 1
	}
	_, err = w.tx.ExecContext(ctx, `insert into entries (piece, number, id, actor, base, written, kind, path, old_value, new_value, names, fact, asked, yes, layout)
		values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15)`,
		w.piece, e.Number, e.ID, e.Actor, e.Base, milliseconds(e.At), string(e.Kind), e.Path, e.Old, e.New, e.Names, kept.fact, kept.asked, yes, kept.layout)
	if err != nil {
		return fmt.Errorf("entry %d: %w", e.Number, err)
	}
	w.number = e.Number
	if w.read {
		w.entries = append(w.entries, e)
	}
	return nil
}
