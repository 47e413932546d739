package journal

import (
	"fmt"
	"math"
	"slices"

	"rodwright/piece"
)

// Replay returns the document as it stands after the entries: the start with every standing edit, and the values of
// every change that was said yes to at the place of that answer, in order.
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
	earlier := make(map[string]int, len(es))
	for i, e := range es {
		err := names(e, es, earlier)
		earlier[e.ID] = i
		if err == nil && stands[i] && e.Number > after && e.Number <= upto {
			for _, p := range taken(e, es, earlier) {
				if text, err = piece.Edit(text, p.Path, p.New); err != nil {
					break
				}
			}
		}
		if err != nil {
			return nil, fmt.Errorf("entry %d: %w", e.Number, err)
		}
	}
	return text, nil
}

// taken returns the values that a standing entry puts into the document: those of an edit, and of a change that the
// client has said yes to.
func taken(e Entry, es []Entry, earlier map[string]int) []Put {
	switch {
	case e.Kind == Edit:
		return []Put{{e.Path, e.New}}
	case e.Kind == Answer && e.Yes:
		return es[earlier[e.Names]].Order.Edits
	}
	return nil
}

// about says which kinds an entry may name: what an undo takes back, what is answered, what is withdrawn.
var about = map[Kind][]Kind{Undo: {Edit, Undo}, Answer: {Asked}, Withdrawn: {Fact, Asked, Answer, Accepted}}

// names reports an entry of a kind that can't be replayed, or one that is about what is not there. Earlier tells
// where in es each entry before it is.
func names(e Entry, es []Entry, earlier map[string]int) error {
	if err := e.Kind.check(); err != nil {
		return err
	}
	if err := e.checkOthers(); err != nil {
		return err
	}
	if e.Kind == Fact && e.Fact.Thing != "" {
		return namesThing(e.Fact.Thing, es, earlier)
	}
	kinds, ok := about[e.Kind]
	if !ok {
		return nil
	}
	i, there := earlier[e.Names]
	switch {
	case !there:
		return &EntryError{"names", "names no earlier entry"}
	case !slices.Contains(kinds, es[i].Kind):
		return &EntryError{"names", fmt.Sprintf("names entry %d, and %s can't be about %s", es[i].Number, e.Kind, es[i].Kind)}
	}
	return nil
}

// namesThing reports an id that is not that of an earlier entry which first told of a part.
func namesThing(id string, es []Entry, earlier map[string]int) error {
	i, there := earlier[id]
	switch {
	case !there:
		return &EntryError{"fact.thing", "names no earlier entry"}
	case es[i].Kind != Fact || es[i].Fact.What != Made || es[i].Fact.Thing != "":
		return &EntryError{"fact.thing", fmt.Sprintf("names entry %d, and must name the one that first told of the part", es[i].Number)}
	}
	return nil
}

// Standing reports of each entry whether it stands: nothing that stands takes it back or withdraws it. An undo that
// is itself taken back no longer counts, nor does the answer to a change that is asked for no more, or one that a
// later standing answer to the same change takes the place of.
func Standing(es []Entry) []bool {
	stands := make([]bool, len(es))
	taken, answered := make(map[string]bool), make(map[string]bool)
	for i := len(es) - 1; i >= 0; i-- { // later ones are settled first
		e := es[i]
		stands[i] = !taken[e.ID]
		switch {
		case !stands[i]:
		case e.Kind == Undo || e.Kind == Withdrawn:
			taken[e.Names] = true
		case e.Kind == Answer:
			stands[i] = !answered[e.Names]
			answered[e.Names] = true
		}
	}
	for i, e := range es { // an answer falls with what it answers
		if e.Kind == Answer && taken[e.Names] {
			stands[i] = false
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
