package table

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// UnknownError says that an id names nothing, and what was perhaps meant.
type UnknownError struct {
	Kind string   // what was looked up: species, pipe size, fitting …
	ID   string   // as it was written
	Near []string // the nearest ids, best first
}

// Error gives the id and the near ones: unknown species "whit-oak"; near: white-oak.
func (e *UnknownError) Error() string {
	text := fmt.Sprintf("unknown %s %q", e.Kind, clip(e.ID))
	if len(e.Near) > 0 {
		text += "; near: " + strings.Join(e.Near, ", ")
	}
	return text
}

// Unknown returns the error for an id that is not among the known ones.
func Unknown(kind, id string, known []string) *UnknownError {
	return &UnknownError{Kind: kind, ID: id, Near: Near(id, known)}
}

// maxID is how many characters of an id are compared and shown, so that a hostile one costs nothing.
const maxID = 60

// maxNear is how many ids are suggested.
const maxNear = 3

// Near returns at most three of the known ids, the nearest by edit distance first, equals in alphabetical
// order. An id that holds the written one whole, or is held by it, counts as near as one slip of the
// pen, the shorter first: oak finds red-oak, then white-oak.
func Near(id string, known []string) []string {
	id = strings.ToLower(clip(id))
	ranked := slices.Clone(known)
	slices.Sort(ranked)
	ranked = slices.Compact(ranked)
	apart := make(map[string]int, len(ranked))
	rank := make(map[string]int, len(ranked))
	for _, k := range ranked {
		apart[k] = distance(id, strings.ToLower(clip(k)))
		rank[k] = apart[k]
		if id != "" && k != "" && (strings.Contains(k, id) || strings.Contains(id, k)) {
			rank[k] = min(rank[k], 1)
		}
	}
	slices.SortStableFunc(ranked, func(a, b string) int {
		return cmp.Or(rank[a]-rank[b], apart[a]-apart[b])
	})
	return ranked[:min(maxNear, len(ranked))]
}

// distance is the Levenshtein distance: the fewest characters to put in, take out or change.
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	row := make([]int, len(t)+1)
	for j := range row {
		row[j] = j
	}
	for i, c := range s {
		diagonal := row[0]
		row[0] = i + 1
		for j, d := range t {
			change := diagonal
			if c != d {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(t)]
}

func clip(id string) string {
	if r := []rune(id); len(r) > maxID {
		return string(r[:maxID]) + "…"
	}
	return id
}
