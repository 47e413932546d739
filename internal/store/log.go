package store

import (
	"cmp"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"

	"rodwright/journal"
)

// Log returns the entries of a piece after the given number, in order. The error for a piece that is not there
// is a *NotFoundError.
func (s *Store) Log(ctx context.Context, id string, after int64) ([]journal.Entry, error) {
	if _, err := onePiece(ctx, s.read, `p.id = $1`, id); errors.Is(err, sql.ErrNoRows) {
		return nil, &NotFoundError{"piece", id}
	} else if err != nil {
		return nil, fmt.Errorf("log: %w", err)
	}
	return entries(ctx, s.read, id, after)
}

const entryColumns = `number, id, actor, base, written, kind, path, old_value, new_value, names, fact, asked, yes, layout`

// entries returns the entries of a piece after the given number, in order.
func entries(ctx context.Context, q querier, id string, after int64) ([]journal.Entry, error) {
	return scanEntries(q.QueryContext(ctx, `select `+entryColumns+` from entries where piece = $1 and number > $2 order by number`, id, after))
}

func scanEntries(rows *sql.Rows, err error) ([]journal.Entry, error) {
	if err != nil {
		return nil, fmt.Errorf("log: %w", err)
	}
	defer rows.Close()
	var es []journal.Entry
	for rows.Next() {
		e, err := scanEntry(rows)
		if err != nil {
			return nil, err
		}
		es = append(es, e)
	}
	if err := rows.Err(); err != nil {
		return nil, fmt.Errorf("log: %w", err)
	}
	return es, nil
}

// entriesSince returns the entries of a piece after the given number, and before them those up to it that they are
// about: what they take back, make again, answer or withdraw, and of an order what else was said to it, in order.
func entriesSince(ctx context.Context, q querier, id string, base int64) ([]journal.Entry, error) {
	es, err := entries(ctx, q, id, base)
	if err != nil {
		return nil, err
	}
	there := make(map[string]bool, len(es))
	for _, e := range es {
		there[e.ID] = true
	}
	for i := 0; i < len(es); i++ {
		if there[es[i].Names] {
			continue
		}
		earlier, err := about(ctx, q, id, es[i], base)
		if err != nil {
			return nil, err
		}
		for _, e := range earlier {
			if !there[e.ID] {
				there[e.ID] = true
				es = append(es, e)
			}
		}
	}
	slices.SortFunc(es, func(a, b journal.Entry) int { return cmp.Compare(a.Number, b.Number) })
	return es, nil
}

// about returns the entries up to the number base that e is about, and of an order of then the answers up to it.
func about(ctx context.Context, q querier, id string, e journal.Entry, base int64) ([]journal.Entry, error) {
	switch {
	case e.Names != "":
		named, err := entryOf(ctx, q, id, e.Names)
		return []journal.Entry{named}, err
	case e.Kind == journal.Asked && e.Number <= base:
		return scanEntries(q.QueryContext(ctx, `select `+entryColumns+` from entries where piece = $1 and number <= $2 and names = $3`, id, base, e.ID))
	}
	return nil, nil
}

// entryOf returns the entry of a piece with the given id.
func entryOf(ctx context.Context, q querier, piece, id string) (journal.Entry, error) {
	return scanEntry(q.QueryRowContext(ctx, `select `+entryColumns+` from entries where piece = $1 and id = $2`, piece, id))
}

func scanEntry(row interface{ Scan(...any) error }) (journal.Entry, error) {
	var e journal.Entry
	var at, yes int64
	var kept members
	err := row.Scan(&e.Number, &e.ID, &e.Actor, &e.Base, &at, &e.Kind, &e.Path, &e.Old, &e.New, &e.Names, &kept.fact, &kept.asked, &yes, &kept.layout)
	if err != nil {
		return e, fmt.Errorf("log: %w", err)
	}
	e.At, e.Yes = moment(at), yes != 0
	return e, decode(&e, kept)
}
