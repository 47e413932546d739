package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"rodwright/journal"
	"rodwright/piece"
)

// mostName bounds a piece's name, in letters.
const mostName = 200

const pieceColumns = `p.id, p.name, p.created,
	coalesce((select max(e.number) from entries e where e.piece = p.id), 0),
	coalesce((select max(e.written) from entries e where e.piece = p.id), p.created)`

// Create puts a new piece into the shop, which begins with the given document. The same write sent again
// returns the piece that it made. Errors: an *InputError for a name that is taken or can't be, a *piece.Error
// for a text that is no document.
func (s *Store) Create(ctx context.Context, w Write, name string, text []byte) (Piece, error) {
	w, err := w.settle()
	if err != nil {
		return Piece{}, err
	}
	name = strings.TrimSpace(name)
	if name == "" || utf8.RuneCountInString(name) > mostName {
		return Piece{}, &InputError{"name", fmt.Sprintf("must have 1 to %d letters", mostName)}
	}
	if _, err := piece.Read(name, text); err != nil {
		return Piece{}, err
	}
	var made Piece
	err = s.inside(ctx, func(tx *sql.Tx) error {
		made, err = s.create(ctx, tx, w, name, text)
		return err
	})
	if err != nil {
		return Piece{}, err
	}
	s.feed.send(Change{made.ID, made.Number})
	return made, nil
}

func (s *Store) create(ctx context.Context, tx *sql.Tx, w Write, name string, text []byte) (Piece, error) {
	var id, has, start string
	err := tx.QueryRowContext(ctx, `select id, name, start_text from pieces where entry = $1`, w.ID).Scan(&id, &has, &start)
	if err == nil {
		if has != name || start != string(text) {
			return Piece{}, &InputError{"id", "was used for another piece"}
		}
		return onePiece(ctx, tx, `p.id = $1`, id)
	}
	if !errors.Is(err, sql.ErrNoRows) {
		return Piece{}, err
	}
	var taken int
	if err := tx.QueryRowContext(ctx, `select count(*) from pieces where name = $1`, name).Scan(&taken); err != nil {
		return Piece{}, err
	}
	if taken > 0 {
		return Piece{}, &InputError{"name", fmt.Sprintf("%q is that of another piece: take another", name)}
	}
	id, err = settleID("")
	if err != nil {
		return Piece{}, err
	}
	now := milliseconds(s.now())
	_, err = tx.ExecContext(ctx, `insert into pieces (id, name, start_text, entry, actor, created) values ($1, $2, $3, $4, $5, $6)`,
		id, name, string(text), w.ID, w.Actor, now)
	if err != nil {
		return Piece{}, fmt.Errorf("piece %q: %w", name, err)
	}
	return Piece{ID: id, Name: name, Created: moment(now), Changed: moment(now)}, nil
}

// Pieces returns the pieces of the shop, those changed last first.
func (s *Store) Pieces(ctx context.Context) ([]Piece, error) {
	rows, err := s.read.QueryContext(ctx, `select `+pieceColumns+` from pieces p order by 5 desc, p.id desc`)
	if err != nil {
		return nil, fmt.Errorf("pieces: %w", err)
	}
	defer rows.Close()
	var ps []Piece
	for rows.Next() {
		p, err := scanPiece(rows)
		if err != nil {
			return nil, fmt.Errorf("pieces: %w", err)
		}
		ps = append(ps, p)
	}
	return ps, rows.Err()
}

// Piece returns the piece with the given id or name. The error for neither is a *NotFoundError.
func (s *Store) Piece(ctx context.Context, idOrName string) (Piece, error) {
	p, err := onePiece(ctx, s.read, `p.id = $1 or p.name = $1`, idOrName)
	if errors.Is(err, sql.ErrNoRows) {
		return p, &NotFoundError{"piece", idOrName}
	}
	return p, err
}

// Text returns the document of a piece as it stands, and the number of its last entry.
func (s *Store) Text(ctx context.Context, id string) (text []byte, number int64, err error) {
	tx, err := s.read.BeginTx(ctx, &sql.TxOptions{ReadOnly: true})
	if err != nil {
		return nil, 0, fmt.Errorf("text: %w", err)
	}
	defer func() { err = errors.Join(err, tx.Rollback()) }()
	st, err := standing(ctx, tx, id)
	return st.text, st.number, err
}

// Log returns the entries of a piece after the given number, in order.
func (s *Store) Log(ctx context.Context, id string, after int64) ([]journal.Entry, error) {
	if _, err := s.Piece(ctx, id); err != nil {
		return nil, err
	}
	return entries(ctx, s.read, id, after)
}

// querier is a database or a transaction on one.
type querier interface {
	QueryContext(context.Context, string, ...any) (*sql.Rows, error)
	QueryRowContext(context.Context, string, ...any) *sql.Row
}

func onePiece(ctx context.Context, q querier, where, value string) (Piece, error) {
	return scanPiece(q.QueryRowContext(ctx, `select `+pieceColumns+` from pieces p where `+where, value))
}

func scanPiece(row interface{ Scan(...any) error }) (Piece, error) {
	var p Piece
	var created, changed int64
	err := row.Scan(&p.ID, &p.Name, &created, &p.Number, &changed)
	p.Created, p.Changed = moment(created), moment(changed)
	return p, err
}

func entries(ctx context.Context, q querier, id string, after int64) ([]journal.Entry, error) {
	rows, err := q.QueryContext(ctx, `select number, id, actor, base, written, kind, path, old_value, new_value, names
		from entries where piece = $1 and number > $2 order by number`, id, after)
	if err != nil {
		return nil, fmt.Errorf("log: %w", err)
	}
	defer rows.Close()
	var es []journal.Entry
	for rows.Next() {
		var e journal.Entry
		var at int64
		if err := rows.Scan(&e.Number, &e.ID, &e.Actor, &e.Base, &at, &e.Kind, &e.Path, &e.Old, &e.New, &e.Names); err != nil {
			return nil, fmt.Errorf("log: %w", err)
		}
		e.At = moment(at)
		es = append(es, e)
	}
	return es, rows.Err()
}

// state is a piece as it stands after its last entry.
type state struct {
	text   []byte
	number int64
}

// standing returns a piece as it stands: as it was kept, or by replay when that is missing or behind.
func standing(ctx context.Context, q querier, id string) (state, error) {
	var start string
	var last, kept sql.NullInt64
	var body sql.NullString
	err := q.QueryRowContext(ctx, `select p.start_text, (select max(e.number) from entries e where e.piece = p.id), s.number, s.body
		from pieces p left join standing s on s.piece = p.id where p.id = $1`, id).Scan(&start, &last, &kept, &body)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return state{}, &NotFoundError{"piece", id}
	case err != nil:
		return state{}, fmt.Errorf("text: %w", err)
	case kept.Valid && kept.Int64 == last.Int64:
		return state{[]byte(body.String), last.Int64}, nil
	}
	es, err := entries(ctx, q, id, 0)
	if err != nil {
		return state{}, err
	}
	text, err := journal.Replay([]byte(start), es)
	return state{text, last.Int64}, err
}
