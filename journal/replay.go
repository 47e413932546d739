package journal

import (
	"fmt"
	"math"

	"rodwright/piece"
)

// Replay returns the document as it stands after the entries: the start with every standing edit in order.
// Start is not changed. The error names the entry that can't be replayed.
//
// Promises:
//  1. The same start and entries give the same bytes.
//  2. Taking an entry back gives the text that would stand had it never been written.
func Replay(start []byte, es []Entry) ([]byte, error) {
	return Continue(start, es, 0, math.MaxInt64)
}

// Continue returns the document as it stands after the entry numbered upto, from the text as it stands after
// the one numbered after. Both are meant as of the whole log es: an entry that a later one takes back counts
// as never written.
func Continue(text []byte, es []Entry, after, upto int64) ([]byte, error) {
	text = append([]byte(nil), text...)
	stands := Standing(es)
	earlier := make(map[string]int64, len(es))
	for i, e := range es {
		err := names(e, earlier)
		if err == nil && e.Kind == Edit && stands[i] && e.Number > after && e.Number <= upto {
			text, err = piece.Edit(text, e.Path, e.New)
		}
		if err != nil {
			return nil, fmt.Errorf("entry %d: %w", e.Number, err)
		}
		earlier[e.ID] = e.Number
	}
	return text, nil
}

// names reports an entry of a kind that can't be replayed, or one that takes back what is not there.
func names(e Entry, earlier map[string]int64) error {
	if err := e.Kind.check(); err != nil {
		return err
	}
	if _, ok := earlier[e.Names]; e.Kind == Undo && !ok {
		return &EntryError{"names", "names no earlier entry"}
	}
	return nil
}

// Standing reports of each entry whether it stands: no standing undo names it. An undo that is itself taken
// back no longer counts. An undo names an earlier entry.
func Standing(es []Entry) []bool {
	stands := make([]bool, len(es))
	taken := make(map[string]bool)
	for i := len(es) - 1; i >= 0; i-- { // later ones are settled first
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

// Redoable returns the undo that the actor may take back, so that its edit stands again: their last one that
// stands, as long as they have written no other edit since. It reports false when there is none.
func Redoable(es []Entry, actor string) (Entry, bool) {
	stands := Standing(es)
	edits := make(map[string]bool)
	for _, e := range es {
		edits[e.ID] = e.Kind == Edit
	}
	for i := len(es) - 1; i >= 0; i-- {
		switch e := es[i]; {
		case e.Actor != actor:
		case e.Kind == Edit:
			return Entry{}, false
		case stands[i] && edits[e.Names]:
			return e, true
		}
	}
	return Entry{}, false
}

// Edited returns the edit that the entry with the given id makes, takes back or makes again. It reports false
// when there is no such entry.
func Edited(es []Entry, id string) (Entry, bool) {
	e, ok := edited(es)[id]
	return e, ok
}

// edited returns of each entry, by its id, the edit that it makes, takes back or makes again.
func edited(es []Entry) map[string]Entry {
	edits := make(map[string]Entry, len(es))
	for _, e := range es {
		if e.Kind == Edit {
			edits[e.ID] = e
		} else if of, ok := edits[e.Names]; ok {
			edits[e.ID] = of
		}
	}
	return edits
}
