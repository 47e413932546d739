package beside

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// unsealed stands for the first letter of lines that are not all on the disk yet. No line begins with it.
const unsealed byte = 0

// write puts the lines at the given place of the file, behind what was acknowledged, and drops what else is there.
func write(path string, at int64, lines []byte) error {
	_, err := os.Stat(path)
	fresh := errors.Is(err, fs.ErrNotExist)
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o644)
	if err != nil {
		return err
	}
	if fresh {
		err = syncFolder(path)
	}
	if err == nil {
		err = seal(f, at, lines)
	}
	if err = errors.Join(err, f.Close()); err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	return nil
}

// sheet is what of a file the writing of lines needs.
type sheet interface {
	WriteAt(text []byte, at int64) (int, error)
	Truncate(size int64) error
	Sync() error
}

// seal writes the lines so that all of them are there or none: where it fails, the file is as long as before.
func seal(f sheet, at int64, lines []byte) error {
	hidden := append([]byte{unsealed}, lines[1:]...)
	steps := []func() error{
		func() error { return f.Truncate(at) },
		func() error { _, err := f.WriteAt(hidden, at); return err },
		f.Sync,
		func() error { _, err := f.WriteAt(lines[:1], at); return err },
		f.Sync,
	}
	for _, step := range steps {
		if err := step(); err != nil {
			return errors.Join(err, f.Truncate(at), f.Sync())
		}
	}
	return nil
}

// syncFolder puts the name of a new file on the disk.
func syncFolder(path string) error {
	if runtime.GOOS == "windows" { // where folders can't be synchronised
		return nil
	}
	folder, err := os.Open(filepath.Dir(path))
	if err != nil {
		return err
	}
	return errors.Join(folder.Sync(), folder.Close())
}
