// Command bundle builds the page: the TypeScript and styles of ui become the scripts, styles and index.html of
// dist, with the licences of what is bundled. The same sources give the same bytes.
//
//	go run ./internal/web/bundle          builds
//	go run ./internal/web/bundle --check  fails when dist is not what a fresh build gives
//
// The packages of the page must be fetched first: npm ci --prefix internal/web.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

func main() {
	check := flag.Bool("check", false, "compare dist with a fresh build and write nothing")
	flag.Parse()
	if err := run(*check, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

func run(check bool, out io.Writer) error {
	dir, err := home()
	if err != nil {
		return err
	}
	page, err := build(dir)
	if err != nil {
		return err
	}
	dist := filepath.Join(dir, "dist")
	if check {
		return compare(dist, page)
	}
	if err := write(dist, page); err != nil {
		return err
	}
	return report(out, page)
}

// home finds the folder of the page from anywhere inside the module.
func home() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return filepath.Join(dir, "internal", "web"), nil
		}
		above := filepath.Dir(dir)
		if above == dir {
			return "", errors.New("no go.mod here or above: run this inside the repository")
		}
		dir = above
	}
}
