package store

import (
	"context"
	"fmt"

	"rodwright/journal"
	"rodwright/piece"
)

// takeBack makes the text as it stands once the entry that e names is taken back.
func (w *writing) takeBack(ctx context.Context, e journal.Entry) error {
	log, err := w.log(ctx)
	if err != nil {
		return err
	}
	if err := mayTakeBack(log, e); err != nil {
		return err
	}
	edit, _ := journal.Edited(log, e.Names) // what mayTakeBack lets pass makes an edit or takes one back
	if over, ok := journal.Over(w.text, log, edit); ok {
		return w.writtenOver(log, e, edit, over)
	}
	return w.rebuild(ctx, append(log[:len(log):len(log)], e), edit.Number)
}

// mayTakeBack refuses an undo of what is not there, is another's, or is not the last.
func mayTakeBack(log []journal.Entry, e journal.Entry) error {
	at := -1
	for i := range log {
		if log[i].ID == e.Names {
			at = i
		}
	}
	if at < 0 {
		return &NotFoundError{"entry", e.Names}
	}
	named := log[at]
	last, ok := journal.Undoable(log, e.Actor)
	if named.Kind == journal.Undo {
		last, ok = journal.Redoable(log, e.Actor)
	}
	switch {
	case named.Kind != journal.Edit && named.Kind != journal.Undo:
		return &InputError{"names", fmt.Sprintf("is entry %d, of kind %s: that is withdrawn, not undone", named.Number, named.Kind)}
	case named.Actor != e.Actor:
		return &InputError{"names", fmt.Sprintf("is an entry of %s: each takes back their own", named.Actor)}
	case !journal.Standing(log)[at]:
		return &InputError{"names", fmt.Sprintf("is entry %d, which was taken back already", named.Number)}
	case !ok:
		return &InputError{"names", fmt.Sprintf("is entry %d, an undo before a later edit: make its edit anew", named.Number)}
	case last.ID != named.ID:
		return &InputError{"names", fmt.Sprintf("is entry %d: take back entry %d first, the last of yours", named.Number, last.Number)}
	}
	return nil
}

// writtenOver says which later edit stands over the one that e takes back or makes again.
func (w *writing) writtenOver(log []journal.Entry, e, edit, over journal.Entry) error {
	now, _, err := piece.ValueAt(w.text, edit.Path)
	if err != nil {
		return err
	}
	yours := edit.Old
	for _, named := range log {
		if named.ID == e.Names && named.Kind == journal.Undo {
			yours = edit.New
		}
	}
	return &ConflictError{Path: edit.Path, Yours: yours, Theirs: now, Number: over.Number, Actor: over.Actor}
}
