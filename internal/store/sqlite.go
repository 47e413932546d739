package store

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"time"

	"github.com/pressly/goose/v3"
	_ "modernc.org/sqlite" // the driver named sqlite
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
// is brought up to date, after a copy was put beside it as FILE.before-N, N being the form it gets.
func Open(ctx context.Context, file string) (*Store, error) {
	forms, err := fs.Sub(migrations, "migrations")
	if err != nil {
		return nil, err
	}
	return open(ctx, file, forms, time.Now)
}

func open(ctx context.Context, file string, forms fs.FS, now func() time.Time) (*Store, error) {
	s := &Store{now: now}
	var err error
	if s.write, err = connect(file, 1, "_txlock=immediate"); err != nil {
		return nil, err
	}
	if s.read, err = connect(file, 4, "_pragma=query_only(1)"); err != nil {
		return nil, errors.Join(err, s.write.Close())
	}
	if err := s.prepare(ctx, file, forms); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	return s, nil
}

// connect returns a pool of at most the given number of connections to the file.
func connect(file string, most int, more string) (*sql.DB, error) {
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

// prepare makes sure that the file is ours and of the form that this program knows.
func (s *Store) prepare(ctx context.Context, file string, forms fs.FS) error {
	before, err := os.Stat(file)
	fresh := errors.Is(err, fs.ErrNotExist) || err == nil && before.Size() == 0
	if err != nil && !fresh {
		return fmt.Errorf("open %s: %w", file, err)
	}
	if !fresh {
		if err := s.recognise(ctx, file); err != nil {
			return err
		}
	} else if _, err := s.write.ExecContext(ctx, fmt.Sprintf("pragma application_id = %d", mark)); err != nil {
		return fmt.Errorf("make %s: %w", file, err)
	}
	return s.migrate(ctx, file, forms)
}

// recognise reports a file that is no database, or another program's.
func (s *Store) recognise(ctx context.Context, file string) error {
	var id, tables int64
	err := s.write.QueryRowContext(ctx, "pragma application_id").Scan(&id)
	if err == nil && id == 0 {
		err = s.write.QueryRowContext(ctx, "select count(*) from sqlite_master").Scan(&tables)
	}
	switch {
	case err != nil:
		return &ForeignError{file, err}
	case id == 0 && tables == 0: // made a moment ago, by a start that was cut short
		_, err := s.write.ExecContext(ctx, fmt.Sprintf("pragma application_id = %d", mark))
		return err
	case id != mark:
		return &ForeignError{file, fmt.Errorf("its application id is %#x", id)}
	}
	return nil
}

// migrate brings the database to the newest form.
func (s *Store) migrate(ctx context.Context, file string, forms fs.FS) error {
	provider, err := goose.NewProvider(goose.DialectSQLite3, s.write, forms)
	if err != nil {
		return fmt.Errorf("migrations: %w", err)
	}
	have, want, err := provider.GetVersions(ctx)
	switch {
	case err != nil:
		return fmt.Errorf("form of %s: %w", file, err)
	case have > want:
		return &NewerError{file, have, want}
	case have == want:
		return nil
	case have > 0:
		if err := s.copyOnce(ctx, fmt.Sprintf("%s.before-%d", file, want)); err != nil {
			return err
		}
	}
	if _, err := provider.Up(ctx); err != nil {
		return fmt.Errorf("bring %s from form %d to %d: %w", file, have, want, err)
	}
	return nil
}

// copyOnce makes the copy before a migration. One that is there already came from a start that was cut short,
// and is as good.
func (s *Store) copyOnce(ctx context.Context, to string) error {
	if _, err := os.Stat(to); err == nil {
		return nil
	}
	return s.Backup(ctx, to)
}

// Backup writes a copy of the whole shop to a new file, while others may read and write. The copy appears under
// its name only when it is whole.
func (s *Store) Backup(ctx context.Context, to string) error {
	if _, err := os.Stat(to); err == nil {
		return fmt.Errorf("back up to %s: %w", to, fs.ErrExist)
	}
	part := to + ".part"
	if err := os.Remove(part); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("back up: %w", err)
	}
	if _, err := s.write.ExecContext(ctx, "vacuum into $1", part); err != nil {
		return fmt.Errorf("back up to %s: %w", to, err)
	}
	if err := os.Rename(part, to); err != nil {
		return fmt.Errorf("back up: %w", err)
	}
	return nil
}
