package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"rodwright/journal"
)

// A snapshot is the text after an entry as of the whole log, as journal.Continue means it. Snapshots are a
// cache: the last one saves reading a piece the replay, those on the way to it save an undo the replay from
// the start. One that holds an entry that is taken back later, made again or withdrawn, is dropped with it.

// every is how many entries lie between two snapshots that stay.
const every = 20

// snapshot returns the last snapshot of a piece up to the given entry: in the beginning the start, after 0.
func snapshot(ctx context.Context, q querier, id string, upto int64) (text []byte, number int64, err error) {
	var body string
	err = q.QueryRowContext(ctx, `select number, body from snapshots where piece = $1 and number <= $2
		order by number desc limit 1`, id, upto).Scan(&number, &body)
	if errors.Is(err, sql.ErrNoRows) {
		err = q.QueryRowContext(ctx, `select start_text from pieces where id = $1`, id).Scan(&body)
	}
	if err != nil {
		return nil, 0, fmt.Errorf("text: %w", err)
	}
	return []byte(body), number, nil
}

// standing returns the text of a piece as it stands, and the number of its last entry.
func standing(ctx context.Context, q querier, id string) (text []byte, number int64, err error) {
	p, err := onePiece(ctx, q, `p.id = $1`, id)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, 0, &NotFoundError{"piece", id}
	}
	if err != nil {
		return nil, 0, fmt.Errorf("text: %w", err)
	}
	text, at, err := snapshot(ctx, q, id, p.Number)
	if err != nil || at == p.Number {
		return text, p.Number, err
	}
	log, err := entries(ctx, q, id, 0)
	if err != nil {
		return nil, 0, err
	}
	text, err = journal.Continue(text, log, at, p.Number)
	return text, p.Number, err
}

// keep stores the text as it stands now. The one that stood last before is dropped unless it is far enough
// from the one before that to stay.
func (w *writing) keep(ctx context.Context) error {
	last, err := w.lastSnapshot(ctx, w.number)
	if err != nil {
		return err
	}
	before, err := w.lastSnapshot(ctx, last-1)
	if err != nil {
		return err
	}
	if last-before < every {
		if err := w.drop(ctx, last); err != nil {
			return err
		}
	}
	return w.store(ctx, w.number, w.text)
}

// rebuild makes the text anew as of the given log, whose last entry takes back or makes again the edit of the
// given number, or withdraws the yes of that number.
func (w *writing) rebuild(ctx context.Context, log []journal.Entry, changed int64) error {
	if err := w.drop(ctx, changed); err != nil {
		return err
	}
	text, at, err := snapshot(ctx, w.tx, w.piece, changed)
	if err != nil {
		return err
	}
	for last := log[len(log)-1].Number; at < last; {
		next := min(at+every, last)
		if text, err = journal.Continue(text, log, at, next); err != nil {
			return err
		}
		if at = next; at < last {
			if err := w.store(ctx, at, text); err != nil {
				return err
			}
		}
	}
	w.text = text
	return nil
}

// lastSnapshot returns the number of the last snapshot up to the given entry, or 0: the start.
func (w *writing) lastSnapshot(ctx context.Context, upto int64) (number int64, err error) {
	err = w.tx.QueryRowContext(ctx, `select coalesce(max(number), 0) from snapshots where piece = $1 and number <= $2`,
		w.piece, upto).Scan(&number)
	if err != nil {
		return 0, fmt.Errorf("text: %w", err)
	}
	return number, nil
}

// drop drops every snapshot from the given entry on.
func (w *writing) drop(ctx context.Context, from int64) error {
	if _, err := w.tx.ExecContext(ctx, `delete from snapshots where piece = $1 and number >= $2`, w.piece, from); err != nil {
		return fmt.Errorf("text: %w", err)
	}
	return nil
}

func (w *writing) store(ctx context.Context, number int64, text []byte) error {
	_, err := w.tx.ExecContext(ctx, `insert into snapshots (piece, number, body) values ($1, $2, $3)`, w.piece, number, string(text))
	if err != nil {
		return fmt.Errorf("text: %w", err)
	}
	return nil
}
