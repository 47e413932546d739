package journal

import (
	"slices"
	"strings"

	"rodwright/piece"
)

// Since returns the last entry after the number base that changed the value at path: by an edit or a yes to a change
// asked for, by taking one back or by making it again. It reports false when the value is as it was. Text is the document as it stands
// after the entries: one value may have two paths, and they are known as one by the place they lead to. Entries
// up to base are needed only where a later one names them, and where one that is needed does.
func Since(text []byte, es []Entry, base int64, path string) (Entry, bool) {
	same, paths := sameValue(text, path), touched(es)
	for i := len(es) - 1; i >= 0 && es[i].Number > base; i-- {
		if slices.ContainsFunc(paths[es[i].ID], same) {
			return es[i], true
		}
	}
	return Entry{}, false
}

// Over returns the last standing edit of the same value, or yes to a change of it, that was written after the given
// edit: while there is one, taking the given one back, or making it again, would change nothing that can be seen. It reports false
// when there is none. Text is the document as it stands.
func Over(text []byte, es []Entry, edit Entry) (Entry, bool) {
	same := sameValue(text, edit.Path)
	stands, paths := Standing(es), touched(es)
	for i := len(es) - 1; i >= 0 && es[i].Number > edit.Number; i-- {
		puts := es[i].Kind == Edit || es[i].Kind == Answer && es[i].Yes
		if stands[i] && puts && slices.ContainsFunc(paths[es[i].ID], same) {
			return es[i], true
		}
	}
	return Entry{}, false
}

// sameValue returns a test of whether another path leads to the same value as the given one. A thing in a list
// is named by its number or its name, and a size by itself or its is: entry. A path that leads nowhere any more
// is compared as text.
func sameValue(text []byte, path string) func(other string) bool {
	known := make(map[string]bool) // each path costs a reading of the document
	top, _, _ := strings.Cut(path, "/")
	_, place, lost := piece.ValueAt(text, path)
	return func(other string) bool {
		if other == path {
			return true
		}
		if begins, _, _ := strings.Cut(other, "/"); lost != nil || begins != top {
			return false
		}
		same, ok := known[other]
		if !ok {
			_, at, err := piece.ValueAt(text, other)
			same = err == nil && at == place
			known[other] = same
		}
		return same
	}
}
