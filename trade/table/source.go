package table

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"
)

// Source is where a number comes from, fit to be shown beside it. The zero Source means that none is known.
type Source struct {
	Key    string // of the publication, for example B16.3; several are joined by +
	Title  string // the publication in words
	Memory bool   // the row or cell was written from memory
}

// String returns the source in words: ASME B16.3 Malleable Iron Threaded Fittings, from memory.
func (s Source) String() string {
	title := s.Title
	if title == "" {
		title = "no source"
	}
	if s.Memory && title != fromMemory {
		return title + ", " + fromMemory
	}
	return title
}

const fromMemory = "from memory"

//go:embed sources.csv
var sourcesCSV string

// titles maps every key to its publication in words.
var titles = sync.OnceValue(func() map[string]string {
	out := map[string]string{}
	for _, r := range Read(sourcesCSV) {
		out[r.Text("key")] = r.Text("title")
	}
	return out
})

// Keys returns the keys of all publications known here, sorted.
func Keys() []string {
	var keys []string
	for k := range titles() {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// Known reports whether key names a publication.
func Known(key string) bool { return titles()[key] != "" }

// Cite returns the source with the given keys, joined by +. A key without a title stands for itself.
func Cite(keys string, memory bool) Source {
	var words []string
	for key := range strings.SplitSeq(keys, "+") {
		if title := titles()[key]; title != "" {
			key = title
		}
		if key != "" && !slices.Contains(words, key) {
			words = append(words, key)
		}
	}
	return Source{Key: keys, Title: strings.Join(words, "; "), Memory: memory}
}

// Source returns where the row, or the given cells of it, come from. It is from memory if any of the cells
// is; without cells if the row is.
func (r Row) Source(columns ...string) Source {
	return r.SourceIn(r.Text("source"), columns...)
}

// SourceIn is [Row.Source] for cells that come from one of the row's publications only, for example
// B1.20.1 for the thread in a row that also cites the pipe's standard.
func (r Row) SourceIn(keys string, columns ...string) Source {
	memory := r.Text("how") != "read"
	if len(columns) > 0 {
		memory = slices.ContainsFunc(columns, r.FromMemory)
	}
	return Cite(keys, memory)
}

// Sourced returns an error if the row does not say where it comes from: its source names no known
// publication, how is neither read nor memory, or a column it excepts is not there. For the test of a
// table.
func (r Row) Sourced() error {
	if how := r.Text("how"); how != "read" && how != "memory" {
		return fmt.Errorf("line %d: how is %q, not read or memory", r.Line, how)
	}
	for key := range strings.SplitSeq(r.Text("source"), "+") {
		if !Known(key) {
			return fmt.Errorf("line %d: source %q is no known publication", r.Line, key)
		}
	}
	for _, c := range append(r.List("read_columns"), r.List("memory_columns")...) {
		if _, ok := r.columns[c]; !ok {
			return fmt.Errorf("line %d: column %q is excepted but not there", r.Line, c)
		}
	}
	return nil
}
