package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"

	"rodwright/examples"
	"rodwright/journal"
	"rodwright/piece"
)

type demoVerb struct {
	Port   int    `default:"0" help:"Port of this machine to listen on, 127.0.0.1 only; 0 takes any that is free."`
	Dir    string `placeholder:"DIR" help:"Folder for the demonstration's shop, demo.db; without it one among the caches of this account."`
	Fresh  bool   `help:"Begin anew: what was tried before is removed."`
	NoOpen bool   `help:"Do not open a browser."`
}

// Help shows an example.
func (demoVerb) Help() string {
	return "Example: rodwright demo\n\nA shop with invented pieces in it, on this machine alone. What is tried in it is kept until --fresh."
}

// Run serves a shop with the examples in it.
func (v *demoVerb) Run(m *Main) error {
	file, err := v.file()
	if err != nil {
		return err
	}
	s := &session{Main: m, file: file, port: v.Port}
	if s.pieces, err = demonstrated(); err != nil {
		return err
	}
	if !v.NoOpen && terminal(m.Stdout) {
		s.ready = func(address string) {
			if err := openBrowser(address); err != nil {
				fmt.Fprintln(m.Stderr, "no browser was opened:", err)
			}
		}
	}
	return s.run()
}

// demonstrated are the examples, and those that are under way once more with what happened to them.
func demonstrated() ([]document, error) {
	var out []document
	for _, name := range examples.Names() {
		text, err := examples.Text(name)
		if err != nil {
			return nil, err
		}
		out = append(out, document{file: name, text: text})
		lines, ok := examples.Journal(name)
		if !ok {
			continue
		}
		read, err := piece.Read(name, text)
		if err != nil {
			return nil, err
		}
		es, err := journal.Read(bytes.NewReader(lines))
		if err != nil {
			return nil, err
		}
		out = append(out, document{name, text, read.Name + " under way", es})
	}
	return out, nil
}

// file returns the demonstration's database, in a folder that is there.
func (v *demoVerb) file() (string, error) {
	dir := v.Dir
	if dir == "" {
		caches, err := os.UserCacheDir()
		if err != nil {
			return "", badInput(fmt.Errorf("%w; name a folder with --dir DIR", err))
		}
		dir = filepath.Join(caches, "rodwright")
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return "", err
	}
	file := filepath.Join(dir, "demo.db")
	if !v.Fresh {
		return file, nil
	}
	for _, part := range []string{"", "-wal", "-shm"} { // SQLite's own names beside a database
		if err := os.Remove(file + part); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return "", fmt.Errorf("begin anew: %w", err)
		}
	}
	return file, nil
}

// terminal reports whether a person reads what is written there.
func terminal(w any) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	null, err := os.Stat(os.DevNull)
	return err != nil || !os.SameFile(info, null)
}

// openBrowser opens the desktop's browser; where there is no desktop it does nothing.
func openBrowser(address string) error {
	words := browser(runtime.GOOS, os.Getenv)
	if words == nil {
		return nil
	}
	c := exec.Command(words[0], append(words[1:], address)...)
	if err := c.Start(); err != nil {
		return err
	}
	go c.Wait() // what it says is of no use here; it must only not stay behind
	return nil
}

// browser returns the command that opens an address on a system, or nil where there is no desktop.
func browser(system string, env func(string) string) []string {
	switch system {
	case "darwin":
		return []string{"open"}
	case "windows":
		return []string{"rundll32", "url.dll,FileProtocolHandler"}
	}
	if env("DISPLAY") == "" && env("WAYLAND_DISPLAY") == "" {
		return nil
	}
	return []string{"xdg-open"}
}
