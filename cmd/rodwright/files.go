package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// mostInput is the most that is read from any file: far above any piece.
const mostInput = 16 << 20

// read returns the contents of a named file, or of standard input for "-".
func (m *Main) read(name string) ([]byte, error) {
	if name == "-" {
		return readMost(m.Stdin, "standard input")
	}
	f, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, badInput(fmt.Errorf("%s: there is no such file", name))
	}
	if err != nil {
		return nil, badInput(err)
	}
	defer f.Close()
	return readMost(f, name)
}

func readMost(r io.Reader, name string) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, mostInput+1))
	if err != nil {
		return nil, badInput(fmt.Errorf("%s: %w", name, err))
	}
	if len(text) > mostInput {
		return nil, badInput(fmt.Errorf("%s: more than %d MB; a piece is some kilobytes", name, mostInput>>20))
	}
	return text, nil
}

// write stores what was made in a named file, whole or not at all, or prints it for "" and "-". An
// existing file is replaced only when replace says so.
func (m *Main) write(name string, content []byte, replace bool) error {
	if name == "" || name == "-" {
		_, err := m.Stdout.Write(content)
		return err
	}
	if _, err := os.Stat(name); err == nil && !replace {
		return badInput(fmt.Errorf("%s: there is such a file already; it was left as it is", name))
	}
	if folder := filepath.Dir(name); !isFolder(folder) {
		return badInput(fmt.Errorf("%s: there is no folder %s; make it first", name, folder))
	}
	part, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+".*")
	if err != nil {
		return err
	}
	defer os.Remove(part.Name())
	if _, err := part.Write(content); err != nil {
		return errors.Join(err, part.Close())
	}
	if err := errors.Join(part.Chmod(0o644), part.Sync(), part.Close()); err != nil {
		return err
	}
	return os.Rename(part.Name(), name)
}

func isFolder(name string) bool {
	info, err := os.Stat(name)
	return err == nil && info.IsDir()
}
