// Package examples holds pieces to begin from and to try the program on, embedded in it. They are invented, and
// the same files are read by the tests of every room.
package examples

import (
	"embed"
	"fmt"
	"strings"
)

//go:embed *.piece.yaml
var pieces embed.FS

//go:embed under-way/*.journal.jsonl
var journals embed.FS

const ending = ".piece.yaml"

// Names returns the names of the examples in order: low-bench, packing-table …
func Names() []string {
	files, err := pieces.ReadDir(".")
	if err != nil {
		panic(fmt.Sprintf("examples: the embedded folder can be read: %v", err))
	}
	names := make([]string, len(files))
	for i, f := range files {
		names[i] = strings.TrimSuffix(f.Name(), ending)
	}
	return names
}

// Text returns the document of an example. The error for another name lists those there are.
func Text(name string) ([]byte, error) {
	text, err := pieces.ReadFile(name + ending)
	if err != nil {
		return nil, fmt.Errorf("there is no example %q; there are %s", name, strings.Join(Names(), ", "))
	}
	return text, nil
}

// Journal returns what happened to an example that was begun to be built, as a journal file has it. It reports false
// where nothing did.
func Journal(name string) ([]byte, bool) {
	lines, err := journals.ReadFile("under-way/" + name + ".journal.jsonl")
	return lines, err == nil
}
