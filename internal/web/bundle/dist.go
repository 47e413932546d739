package main

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
)

// write replaces what is in the folder by the page.
func write(dist string, page files) error {
	if err := os.RemoveAll(dist); err != nil {
		return err
	}
	if err := os.MkdirAll(dist, 0o755); err != nil {
		return err
	}
	for name, content := range page {
		if err := os.WriteFile(filepath.Join(dist, name), content, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// compare says in what the folder differs from a fresh build.
func compare(dist string, page files) error {
	const mend = "; build it anew with go run ./internal/web/bundle and keep the result"
	there, err := os.ReadDir(dist)
	if err != nil {
		return fmt.Errorf("the built page can't be read: %w%s", err, mend)
	}
	for _, f := range there {
		if _, ok := page[f.Name()]; !ok {
			return fmt.Errorf("dist is stale: %s no longer belongs to the page%s", f.Name(), mend)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(page)) {
		old, err := os.ReadFile(filepath.Join(dist, name))
		if err != nil {
			return fmt.Errorf("dist is stale: %w%s", err, mend)
		}
		if !bytes.Equal(old, page[name]) {
			return fmt.Errorf("dist is stale: %s differs%s", name, mend)
		}
	}
	return nil
}

// report prints the size of each file, plain and as it travels.
func report(out io.Writer, page files) error {
	for _, name := range slices.Sorted(maps.Keys(page)) {
		var packed bytes.Buffer
		z := gzip.NewWriter(&packed)
		if _, err := z.Write(page[name]); err != nil {
			return err
		}
		if err := z.Close(); err != nil {
			return err
		}
		if _, err := fmt.Fprintf(out, "%-24s %7d bytes, %6d packed\n", name, len(page[name]), packed.Len()); err != nil {
			return err
		}
	}
	return nil
}
