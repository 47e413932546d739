package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"github.com/pressly/goose/v3"
)

// migrate brings the database to the newest form. Where another program does the same at this moment, what it
// did counts.
func (s *Store) migrate(ctx context.Context, file string, forms fs.FS) error {
	provider, err := goose.NewProvider(goose.DialectSQLite3, s.write, forms)
	if err != nil {
		return fmt.Errorf("migrations: %w", err)
	}
	var failed error
	for tried := int64(-1); ; {
		have, want, err := provider.GetVersions(ctx)
		switch {
		case err != nil:
			return fmt.Errorf("form of %s: %w", file, err)
		case have > want:
			return &NewerError{file, have, want}
		case have == want:
			return nil
		case have <= tried:
			return fmt.Errorf("bring %s from form %d to %d: %w", file, have, want, failed)
		case have > 0:
			if err := s.copyBefore(ctx, file, want); err != nil {
				return err
			}
		}
		tried = have
		_, failed = provider.Up(ctx)
	}
}

// copyBefore makes the copy before the database gets the given form. One that is there already, of a start that
// was cut short or of a shop that was put back since, is kept too.
func (s *Store) copyBefore(ctx context.Context, file string, form int64) error {
	ending := filepath.Ext(file)
	name := fmt.Sprintf("%s.before-%d", strings.TrimSuffix(file, ending), form)
	to := name + ending
	for n := 2; ; n++ {
		if err := s.Backup(ctx, to); !errors.Is(err, fs.ErrExist) {
			return err
		}
		to = fmt.Sprintf("%s-%d%s", name, n, ending)
	}
}
