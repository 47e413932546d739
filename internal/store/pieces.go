package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/google/uuid"

	"rodwright/piece"
)

// mostName bounds a piece's name, in letters.
const mostName = 200

const pieceColumns = `p.id, p.name, p.created,
	coalesce((select max(e.number) from entries e where e.piece = p.id), 0),
	coalesce((select e.written from entries e where e.piece = p.id order by e.number desc limit 1), p.created)`

// Create puts a new piece into the shop, which begins with the given document. The same write sent again
// returns the piece that it made. Errors: an *InputError for a name that is taken or can't be, a *piece.Error
// for a text that is no document.
func (s *Store) Create(ctx context.Context, w Write, name string, text []byte) (Piece, error) {
	w, err := w.settle()
	if err != nil {
		return Piece{}, err
	}
	name = strings.TrimSpace(name)
	if err := checkName(name); err != nil {
		return Piece{}, err
	}
	if _, err := piece.Read(name, text); err != nil {
		return Piece{}, err
	}
	var made Piece
	var there bool
	err = s.inside(ctx, func(tx *sql.Tx) error {
		if made, there, err = created(ctx, tx, w, name, text); err != nil || there {
			return err
		}
		made, err = s.create(ctx, tx, w, name, text)
		return err
	})
	if err != nil {
		return Piece{}, err
	}
	if !there {
		s.feed.send(Change{made.ID, made.Number})
	}
	return made, nil
}

// checkName reports a name that a piece can't have. An id would be mistaken for that of another piece.
func checkName(name string) error {
	_, notID := uuid.Parse(name)
	switch {
	case name == "" || utf8.RuneCountInString(name) > mostName:
		return &InputError{"name", fmt.Sprintf("must have 1 to %d letters", mostName)}
	case !utf8.ValidString(name) || strings.ContainsFunc(name, unicode.IsControl):
		return &InputError{"name", "must be one line of plain text"}
	case notID == nil:
		return &InputError{"name", fmt.Sprintf("is %s, which reads as an id: take a word", name)}
	}
	return nil
}

// created returns the piece that the same write made already, if it did.
func created(ctx context.Context, tx *sql.Tx, w Write, name string, text []byte) (Piece, bool, error) {
	var id, actor, has, start string
	err := tx.QueryRowContext(ctx, `select id, actor, name, start_text from pieces where entry = $1`, w.ID).Scan(&id, &actor, &has, &start)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return Piece{}, false, nil
	case err != nil:
		return Piece{}, false, fmt.Errorf("piece %q: %w", name, err)
	case actor != w.Actor || has != name || start != string(text):
		return Piece{}, false, &InputError{"id", "was used for another piece"}
	}
	p, err := onePiece(ctx, tx, `p.id = $1`, id)
	return p, err == nil, err
}

func (s *Store) create(ctx context.Context, tx *sql.Tx, w Write, name string, text []byte) (Piece, error) {
	var taken int
	if err := tx.QueryRowContext(ctx, `select count(*) from pieces where name = $1`, name).Scan(&taken); err != nil {
		return Piece{}, fmt.Errorf("piece %q: %w", name, err)
	}
	if taken > 0 {
		return Piece{}, &InputError{"name", fmt.Sprintf("%q is that of another piece: take another", name)}
	}
	id, err := settleID("")
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
	return standing(ctx, tx, id)
}

// Start returns the document that the piece with the given id began with.
func (s *Store) Start(ctx context.Context, id string) ([]byte, error) {
	var text string
	err := s.read.QueryRowContext(ctx, `select start_text from pieces where id = $1`, id).Scan(&text)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, &NotFoundError{"piece", id}
	}
	if err != nil {
		return nil, fmt.Errorf("start: %w", err)
	}
	return []byte(text), nil
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
