package main

import (
	"rodwright/change"
	"rodwright/journal"
)

type journalUndoVerb struct {
	journalOf
	Number int64 `arg:"" optional:"" name:"n" help:"The number of an entry; without it your last edit."`
	Dry    bool  `help:"Only show it; nothing is written."`
}

// Help shows an example.
func (journalUndoVerb) Help() string {
	return "Example: rodwright journal undo table.piece.yaml 7\n\nAn edit is undone by who wrote it; a fact, an order, an answer or an accepted layout is withdrawn, by anybody. Both stay in the journal and count as never written."
}

// Run takes back an edit, or withdraws an entry of another kind.
func (v *journalUndoVerb) Run(m *Main) error {
	return v.with(m, func(k keeper) error {
		w, err := (&pen{keeper: k, actor: v.actor(), dry: v.Dry}).write(v.entries)
		if err != nil {
			return err
		}
		return m.told(w, v.JSON, v.Dry)
	})
}

func (v *journalUndoVerb) entries(l change.Log) ([]journal.Entry, error) {
	if v.Number == 0 {
		last, ok := journal.Undoable(l.Entries, v.actor())
		if !ok {
			return nil, refuse("%s has written no edit that stands: name an entry by its number; rodwright journal list shows them", v.actor())
		}
		return []journal.Entry{{Kind: journal.Undo, Names: last.ID}}, nil
	}
	e, err := numbered(l.Entries, v.Number)
	if err != nil {
		return nil, err
	}
	switch e.Kind {
	case journal.Edit, journal.Undo:
		return []journal.Entry{{Kind: journal.Undo, Names: e.ID}}, nil
	case journal.Withdrawn:
		return nil, refuse("entry %d withdraws another, which is for good: write that one again", e.Number)
	}
	return []journal.Entry{{Kind: journal.Withdrawn, Names: e.ID}}, nil
}

// numbered returns the entry of a number.
func numbered(es []journal.Entry, number int64) (journal.Entry, error) {
	if number < 1 || number > int64(len(es)) {
		return journal.Entry{}, refuse("there is no entry %d: they are numbered 1 to %d", number, len(es))
	}
	return es[number-1], nil
}
