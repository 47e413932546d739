package store

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"path/filepath"
	"time"
)

//go:embed migrations/*.sql
var migrations embed.FS

// mark is SQLite's application id of our files, so that another program's database is never written to:
// the letters RodW.
const mark = 0x526f6457

// pragmas hold on every connection: what is committed is on the disk before it is acknowledged, readers do not
// wait for the writer, and a second process waits for the first.
var pragmas = []string{"journal_mode(wal)", "synchronous(full)", "busy_timeout(10000)", "foreign_keys(1)"}

// NewerError says that a database was written by a newer version of this program.
type NewerError struct {
	File              string
	Version, Greatest int64
}

// Error says what to do.
func (e *NewerError) Error() string {
	return fmt.Sprintf("%s was written by a newer version of this program (its form is %d, this program knows %d): take the newer program", e.File, e.Version, e.Greatest)
}

// ForeignError says that a file is no database of this program.
type ForeignError struct {
	File  string
	Cause error
}

// Error names the file.
func (e *ForeignError) Error() string {
	return fmt.Sprintf("%s is no shop of this program: name another file; it was left as it is", e.File)
}

// Unwrap returns what reading it came to.
func (e *ForeignError) Unwrap() error { return e.Cause }

// Open opens the shop in the given SQLite file, and makes the file when there is none. A file of an older form
// is brought up to date, after a copy was put beside it: of shop.db as shop.before-N.db, N being the form it
// gets. Errors: a *ForeignError for a file that is no shop, a *NewerError for one of a newer program.
func Open(ctx context.Context, file string) (*Store, error) {
	forms, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return nil, err
	}
	return open(ctx, file, forms, time.Now)
}

func open(ctx context.Context, file string, forms fs.FS, now func() time.Time) (*Store, error) {
	fresh, err := recognise(ctx, file)
	if err != nil {
		return nil, err
	}
	s := &Store{now: now}
	if s.write, err = connect(file, 1, pragmas, "_txlock=immediate"); err != nil {
		return nil, err
	}
	if s.read, err = connect(file, 4, pragmas, "_pragma=query_only(1)"); err != nil {
		return nil, errors.Join(err, s.write.Close())
	}
	err = patiently(ctx, func() error { return s.prepare(ctx, file, fresh, forms) })
	if err != nil {
		return nil, errors.Join(err, s.Close())
	}
	return s, nil
}

// Whoever changes the journal mode, or writes on what has just been written over, is told at once that the
// database is busy, whatever the busy_timeout: such work is tried again for as long as that would wait.
const (
	patience = 10 * time.Second
	between  = 10 * time.Millisecond
)

// patiently does what until the database is not busy with another program that opens it.
func patiently(ctx context.Context, what func() error) error {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	for {
		err := what()
		if !isBusy(err) {
			return err
		}
		select {
		case <-ctx.Done():
			return err
		case <-time.After(between):
		}
	}
}

// prepare marks a fresh file as ours and brings the database to the newest form.
func (s *Store) prepare(ctx context.Context, file string, fresh bool, forms fs.FS) error {
	if fresh {
		if _, err := s.write.ExecContext(ctx, fmt.Sprintf("pragma application_id = %d", mark)); err != nil {
			return fmt.Errorf("make %s: %w", file, err)
		}
	}
	return s.migrate(ctx, file, forms)
}

// connect returns a pool of at most the given number of connections to the file, each with the given pragmas and
// the further parameters of the driver.
func connect(file string, most int, pragmas []string, more string) (*sql.DB, error) {
	path, err := filepath.Abs(file)
	if err != nil {
		return nil, err
	}
	query := more
	for _, p := range pragmas {
		query += "&_pragma=" + p
	}
	db, err := sql.Open("sqlite", (&url.URL{Scheme: "file", Path: filepath.ToSlash(path), RawQuery: query}).String())
	if err != nil {
		return nil, fmt.Errorf("open %s: %w", file, err)
	}
	db.SetMaxOpenConns(most)
	db.SetMaxIdleConns(most)
	return db, nil
}
