package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// Backup writes a copy of the whole shop to a new file, while others may read and write. The copy appears under
// its name when it is whole and on the disk. The error for a name that is taken wraps fs.ErrExist.
func (s *Store) Backup(ctx context.Context, to string) (err error) {
	if _, err := os.Stat(to); err == nil {
		return fmt.Errorf("back up to %s: %w", to, fs.ErrExist)
	}
	part, err := os.CreateTemp(filepath.Dir(to), filepath.Base(to)+".*.part")
	if err != nil {
		return fmt.Errorf("back up to %s: %w", to, err)
	}
	defer func() {
		if gone := os.Remove(part.Name()); gone != nil && !errors.Is(gone, fs.ErrNotExist) {
			err = errors.Join(err, gone)
		}
	}()
	_, err = s.write.ExecContext(ctx, "vacuum into $1", part.Name())
	// SQLite leaves it to us to have the copy on the disk: "VACUUM", VACUUM with an INTO clause.
	if err = errors.Join(err, part.Sync(), part.Close()); err == nil {
		err = appear(part.Name(), to)
	}
	if err != nil {
		return fmt.Errorf("back up to %s: %w", to, err)
	}
	return nil
}

// appear gives a whole file its name, which must not be taken.
func appear(part, to string) error {
	err := os.Link(part, to)
	if err != nil && !errors.Is(err, fs.ErrExist) { // a file system without links
		err = os.Rename(part, to)
	}
	if err != nil || runtime.GOOS == "windows" { // where folders can't be synchronised
		return err
	}
	folder, err := os.Open(filepath.Dir(to))
	if err != nil {
		return err
	}
	return errors.Join(folder.Sync(), folder.Close())
}
