package wire

import (
	"strconv"
	"strings"
)

// nearest suggests the known key that is nearest to a mistyped one.
func nearest(key string, known []string) string {
	best, dist := "", 1+len(key)/2
	for _, k := range known {
		d := edits(key, k)
		if d < dist || d == dist && (best == "" || alike(key, k) > alike(key, best)) {
			best, dist = k, d
		}
	}
	if best == "" {
		return "one of " + strings.Join(known, ", ")
	}
	return strconv.Quote(best)
}

// alike is how many letters two words begin with alike.
func alike(a, b string) int {
	n := 0
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	return n
}

// edits is the number of letters to insert, delete or replace between two words (Levenshtein).
func edits(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diag := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diag
			if a[i] != b[j] {
				cost++
			}
			diag = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
