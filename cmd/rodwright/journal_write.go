package main

import (
	"errors"
	"fmt"
	"time"

	"github.com/google/uuid"

	"rodwright/change"
	"rodwright/internal/store/rules"
	"rodwright/journal"
	"rodwright/piece"
)

// pen writes to the log of one piece.
type pen struct {
	keeper
	actor string
	at    time.Time // of what happened earlier; else zero
	dry   bool      // only say what would be written
}

// written is what was written to a log, and what came of it.
type written struct {
	log     change.Log // up to the last entry written
	entries []journal.Entry
	before  *change.Truth // nil where the piece could not be derived
	after   *change.Truth
}

// write writes the entries that wanted returns of the log, all or none. The piece must be derivable with them.
func (p *pen) write(wanted func(change.Log) ([]journal.Entry, error)) (*written, error) {
	out := &written{}
	plan := func(l change.Log) ([]journal.Entry, error) {
		es, err := wanted(l)
		if err != nil || len(es) == 0 {
			return nil, err
		}
		return p.plan(out, l, es)
	}
	if !p.dry {
		var err error
		out.entries, err = p.append(plan)
		return out, err
	}
	l, err := p.load()
	if err == nil {
		out.entries, err = plan(l)
	}
	return out, err
}

// plan settles the entries, each against the log before it, and derives what comes of them.
func (p *pen) plan(out *written, l change.Log, es []journal.Entry) ([]journal.Entry, error) {
	if before, err := l.Now(); err == nil {
		out.before = before
	}
	base := int64(len(l.Entries))
	log := l.Entries[:base:base]
	for i := range es {
		e, err := p.settle(l.Start, log, es[i], base)
		if err != nil {
			return nil, err
		}
		log, es[i] = append(log, e), e
	}
	l.Entries = log
	out.log = l
	var err error
	out.after, err = l.Now()
	return es, err
}

// settle gives an entry what its writer leaves open, and refuses what can't follow the log.
func (p *pen) settle(start []byte, log []journal.Entry, e journal.Entry, base int64) (journal.Entry, error) {
	id, err := uuid.NewV7()
	if err != nil {
		return e, err
	}
	now := p.at
	if now.IsZero() {
		now = time.Now()
	}
	e.ID, e.Actor, e.Base, e.Number, e.At = id.String(), p.actor, base, int64(len(log))+1, time.UnixMilli(now.UnixMilli()).UTC()
	if e.Order != nil && e.Order.No == 0 {
		order := *e.Order
		order.No = rules.NextOrder(log)
		e.Order = &order
	}
	text, err := journal.Replay(start, log)
	if err != nil {
		return e, err
	}
	if e.Kind == journal.Edit {
		if e.Old, _, err = piece.ValueAt(text, e.Path); err != nil {
			return e, err
		}
		if _, err = piece.Edit(text, e.Path, e.New); err != nil {
			return e, err
		}
	}
	return e, errors.Join(e.Check(), rules.Check(log, e), inTheWay(text, log, e))
}

// inTheWay refuses what would take back or put in a value that somebody changed since.
func inTheWay(text []byte, log []journal.Entry, e journal.Entry) error {
	switch e.Kind {
	case journal.Undo:
		return mayTakeBack(text, log, e)
	case journal.Answer:
		return mayAnswer(text, log, e)
	case journal.Withdrawn:
		return mayWithdraw(text, log, e)
	}
	return nil
}

// mayTakeBack refuses an undo of what is another's or is not their last, and of a value that was changed since.
func mayTakeBack(text []byte, log []journal.Entry, e journal.Entry) error {
	named, _ := byID(log, e.Names)
	last, ok := journal.Undoable(log, e.Actor)
	if named.Kind == journal.Undo {
		last, ok = journal.Redoable(log, e.Actor)
	}
	switch {
	case named.Actor != e.Actor:
		return refuse("entry %d is of %s: each takes back their own; write the value anew, with an edit", named.Number, named.Actor)
	case !ok:
		return refuse("entry %d is an undo before a later edit: write its value anew, with an edit", named.Number)
	case last.ID != named.ID:
		return refuse("entry %d is not the last of yours: take back entry %d first", named.Number, last.Number)
	}
	edit, _ := journal.Edited(log, e.Names)
	if over, ok := journal.Over(text, log, edit); ok {
		return refuse("entry %d of %s changed %s since: write the value anew, with an edit", over.Number, over.Actor, edit.Path)
	}
	return nil
}

// mayAnswer refuses a yes where a value of the order was changed since it was asked for: what the client was told holds
// for the piece as it was.
func mayAnswer(text []byte, log []journal.Entry, e journal.Entry) error {
	asked, ok := byID(log, e.Names)
	if !e.Yes || !ok || asked.Order == nil {
		return nil
	}
	for _, p := range asked.Order.Edits {
		if by, ok := changedSince(text, log, asked, p.Path); ok {
			return refuse("entry %d of %s changed %s after change %d was asked for: ask again, so that its price holds", by.Number, by.Actor, p.Path, asked.Order.No)
		}
	}
	return nil
}

// changedSince returns the last entry that changed a value after it was asked for, but for what was said to the order
// itself.
func changedSince(text []byte, log []journal.Entry, asked journal.Entry, path string) (journal.Entry, bool) {
	for {
		by, ok := journal.Since(text, log, asked.Number, path)
		if !ok {
			return by, false
		}
		of, _ := byID(log, by.Names)
		if by.Names != asked.ID && of.Names != asked.ID {
			return by, true
		}
		log = log[:by.Number-1]
	}
}

// mayWithdraw refuses to withdraw a yes while a later change of one of its values stands.
func mayWithdraw(text []byte, log []journal.Entry, e journal.Entry) error {
	yes, order, ok := rules.Yes(log, e.Names)
	if !ok {
		return nil
	}
	for _, p := range order.Edits {
		if by, ok := journal.Over(text, log, journal.Entry{Number: yes.Number, Path: p.Path}); ok {
			return refuse("entry %d of %s changed %s since the yes: take that back first", by.Number, by.Actor, p.Path)
		}
	}
	return nil
}

// refuse is an error about what can't be written.
func refuse(format string, args ...any) error { return badInput(fmt.Errorf(format, args...)) }

// byID returns the entry with the given id.
func byID(log []journal.Entry, id string) (journal.Entry, bool) {
	for _, e := range log {
		if e.ID == id {
			return e, true
		}
	}
	return journal.Entry{}, false
}
