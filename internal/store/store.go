// Package store keeps a shop: its pieces, the one log of each piece, and the shop's own settings.
//
// A piece is the text it began with and its numbered entries; the document is their replay, and nothing that
// is derived is kept. What was acknowledged is on the disk. Each write carries who wrote it, an id of its own,
// so that a repeat is harmless, and the last number its writer had seen, so that a value that somebody else
// changed since is never overwritten unseen.
//
// Start with Open. Statements are plain SQL that SQLite and PostgreSQL both read: placeholders $n first used in
// ascending order, the types text and bigint, times in whole milliseconds, ids made here.
package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"github.com/google/uuid"

	"rodwright/journal"
)

// Store is an open database. It may be used by several goroutines at once, and several Stores may be open on
// one file.
type Store struct {
	write *sql.DB // one connection: writers wait for each other here, not in the database
	read  *sql.DB
	now   func() time.Time
	feed  feed
}

// Piece is one piece of the shop.
type Piece struct {
	ID      string
	Name    string
	Number  int64     // of its last entry; 0 where none was written yet
	Created time.Time // UTC
	Changed time.Time // when its last entry was written
}

// Write says who writes something, under which id, and what they had seen.
type Write struct {
	Actor string
	ID    string // UUIDv7; empty where the writer has none, and one is made
	Base  int64
}

// NotFoundError says that there is no such thing in the shop.
type NotFoundError struct{ What, Name string }

// Error names what was looked for.
func (e *NotFoundError) Error() string { return fmt.Sprintf("there is no %s %q", e.What, e.Name) }

// InputError says what of a write can't be, and what would be right.
type InputError struct{ Field, Why string }

// Error names the field.
func (e *InputError) Error() string { return e.Field + " " + e.Why }

// ConflictError says that a value was changed by somebody else since the writer had seen it. Nothing was
// written.
type ConflictError struct {
	Path   string // the value both wanted to change; shop for the shop's settings
	Yours  string // what was to be written
	Theirs string // what stands there now
	Number int64  // of the entry that wrote it
	Actor  string // who did
}

// Error tells both values.
func (e *ConflictError) Error() string {
	return fmt.Sprintf("%s was changed by %s in entry %d: it is %q now, and yours is %q", e.Path, e.Actor, e.Number, e.Theirs, e.Yours)
}

// Close closes the database. Everything acknowledged is already there.
func (s *Store) Close() error {
	s.feed.close()
	return errors.Join(s.read.Close(), s.write.Close())
}

// inside runs what in one transaction on the writing connection: all of it is there afterwards or none.
func (s *Store) inside(ctx context.Context, what func(*sql.Tx) error) error {
	tx, err := s.write.BeginTx(ctx, nil)
	if err != nil {
		return fmt.Errorf("begin: %w", err)
	}
	if err := what(tx); err != nil {
		if back := tx.Rollback(); back != nil && !errors.Is(back, sql.ErrTxDone) {
			return errors.Join(err, back)
		}
		return err
	}
	if err := tx.Commit(); err != nil {
		return fmt.Errorf("commit: %w", err)
	}
	return nil
}

// settle checks who writes and returns the write with its id.
func (w Write) settle() (Write, error) {
	if err := asInput(journal.CheckActor(w.Actor)); err != nil {
		return w, err
	}
	id, err := settleID(w.ID)
	w.ID = id
	return w, err
}

// asInput says what the journal refuses as a refusal of this package.
func asInput(err error) error {
	var bad *journal.EntryError
	if errors.As(err, &bad) {
		return &InputError{bad.Field, bad.Why}
	}
	return err
}

// settleID returns the id as it is kept, or a new one where there is none.
func settleID(id string) (string, error) {
	if id == "" {
		made, err := uuid.NewV7()
		return made.String(), err
	}
	parsed, err := uuid.Parse(id)
	if err != nil || parsed.Version() != 7 {
		return "", &InputError{"id", fmt.Sprintf("is %q: it must be a UUID of version 7", id)}
	}
	return parsed.String(), nil
}

// milliseconds returns the moment as it is kept, and moment what was kept as a moment.
func milliseconds(t time.Time) int64 { return t.UnixMilli() }

func moment(ms int64) time.Time { return time.UnixMilli(ms).UTC() }
