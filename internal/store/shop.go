package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"rodwright/shop"
)

// shopPath is what a conflict over the shop's settings names.
const shopPath = "shop"

// Shop returns the shop's own file as it was saved last, and the number of that write; nothing and 0 when none
// was.
func (s *Store) Shop(ctx context.Context) (text []byte, number int64, err error) {
	last, err := lastShop(ctx, s.read)
	return []byte(last.body), last.number, err
}

// SaveShop saves the shop's own file. The same write sent again returns the number it got. Errors: a
// *shop.Error for a text that can't be read, a *ConflictError when somebody saved one since the base.
func (s *Store) SaveShop(ctx context.Context, w Write, text []byte) (number int64, err error) {
	w, err = w.settle()
	if err != nil {
		return 0, err
	}
	if _, err := shop.Read(shopPath, text); err != nil {
		return 0, err
	}
	err = s.inside(ctx, func(tx *sql.Tx) error {
		number, err = s.saveShop(ctx, tx, w, string(text))
		return err
	})
	return number, err
}

type shopRow struct {
	number      int64
	actor, body string
}

func lastShop(ctx context.Context, q querier) (shopRow, error) {
	var r shopRow
	err := q.QueryRowContext(ctx, `select number, actor, body from shop order by number desc limit 1`).Scan(&r.number, &r.actor, &r.body)
	if errors.Is(err, sql.ErrNoRows) {
		return r, nil
	}
	if err != nil {
		return r, fmt.Errorf("shop: %w", err)
	}
	return r, nil
}

func (s *Store) saveShop(ctx context.Context, tx *sql.Tx, w Write, text string) (int64, error) {
	var number int64
	var body string
	err := tx.QueryRowContext(ctx, `select number, body from shop where id = $1`, w.ID).Scan(&number, &body)
	switch {
	case err == nil && body != text:
		return 0, &InputError{"id", "was used for another write"}
	case err == nil:
		return number, nil
	case !errors.Is(err, sql.ErrNoRows):
		return 0, fmt.Errorf("shop: %w", err)
	}
	last, err := lastShop(ctx, tx)
	switch {
	case err != nil:
		return 0, err
	case w.Base > last.number || w.Base < 0:
		return 0, &InputError{"base", fmt.Sprintf("is %d, and the last write is %d", w.Base, last.number)}
	case w.Base < last.number:
		return 0, &ConflictError{Path: shopPath, Yours: text, Theirs: last.body, Number: last.number, Actor: last.actor}
	}
	_, err = tx.ExecContext(ctx, `insert into shop (number, id, actor, base, written, body) values ($1, $2, $3, $4, $5, $6)`,
		last.number+1, w.ID, w.Actor, w.Base, milliseconds(s.now()), text)
	if err != nil {
		return 0, fmt.Errorf("shop: %w", err)
	}
	return last.number + 1, nil
}
