package journal

import (
	"fmt"

	"rodwright/piece"
)

// Replay returns the document as it stands after the entries: the start with every standing edit in order.
// Start is not changed. The error names the entry whose edit can't be made.
//
// Promises:
//  1. The same start and entries give the same bytes.
//  2. Taking an entry back gives the text that would stand had it never been written.
func Replay(start []byte, es []Entry) ([]byte, error) {
	text := append([]byte(nil), start...)
	stands := Standing(es)
	for i, e := range es {
		if e.Kind != Edit || !stands[i] {
			continue
		}
		next, err := piece.Edit(text, e.Path, e.New)
		if err != nil {
			return nil, fmt.Errorf("entry %d: %w", e.Number, err)
		}
		text = next
	}
	return text, nil
}

// Standing reports of each entry whether it stands: no standing undo names it. An undo that is itself taken
// back no longer counts.
func Standing(es []Entry) []bool {
	stands := make([]bool, len(es))
	taken := make(map[string]bool)
	for i := len(es) - 1; i >= 0; i-- { // an undo names an earlier entry, so later ones are settled first
		stands[i] = !taken[es[i].ID]
		if stands[i] && es[i].Kind == Undo {
			taken[es[i].Names] = true
		}
	}
	return stands
}

// Undoable returns the entry that an undo by the actor takes back: the last edit of theirs that stands. It
// reports false when there is none.
func Undoable(es []Entry, actor string) (Entry, bool) {
	stands := Standing(es)
	for i := len(es) - 1; i >= 0; i-- {
		if stands[i] && es[i].Kind == Edit && es[i].Actor == actor {
			return es[i], true
		}
	}
	return Entry{}, false
}

// Since returns the last entry after the number base that changed the value at path, by an edit or by taking
// one back. It reports false when the value is as it was.
func Since(es []Entry, base int64, path string) (Entry, bool) {
	paths := make(map[string]string, len(es)) // of each entry, through what it names
	for _, e := range es {
		paths[e.ID] = e.Path
		if e.Kind == Undo {
			paths[e.ID] = paths[e.Names]
		}
	}
	for i := len(es) - 1; i >= 0 && es[i].Number > base; i-- {
		if paths[es[i].ID] == path {
			return es[i], true
		}
	}
	return Entry{}, false
}
