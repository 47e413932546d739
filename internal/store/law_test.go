package store

import (
	"context"
	"errors"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"rodwright/journal"
)

// anything draws an entry of any kind that may follow the log: what it is about is there and stands, and its writer
// has seen everything.
func anything(rt *rapid.T, log []journal.Entry, base int64) journal.Entry {
	actor := rapid.SampledFrom([]string{"anna", "ben"}).Draw(rt, "actor")
	path := func() string { return rapid.SampledFrom(boardPaths).Draw(rt, "path") }
	inches := func() string { return fmt.Sprintf("%d in", rapid.IntRange(1, 99).Draw(rt, "value")) }
	e := edit(actor, base, path(), inches())
	switch rapid.SampledFrom([]string{"edit", "edit", "undo", "redo", "bought", "made", "meant", "asked", "asked", "answer", "answer", "answer", "withdrawn", "accepted"}).Draw(rt, "what") {
	case "undo":
		if last, ok := journal.Undoable(log, actor); ok {
			e = undo(actor, base, last)
		}
	case "redo":
		if last, ok := journal.Redoable(log, actor); ok {
			e = undo(actor, base, last)
		}
	case "bought":
		e = fact(actor, base, plank())
	case "made":
		e = fact(actor, base, sized(""))
	case "meant":
		if things := journal.Fold(log).Things; len(things) > 0 {
			e = fact(actor, base, meant(rapid.SampledFrom(things).Draw(rt, "thing").ID, "shelf"))
		}
	case "asked":
		e = asks(base, path(), inches(), path(), inches())
	case "answer":
		for _, o := range journal.Fold(log).Orders {
			if !o.Answered {
				e = answer(base, journal.Entry{ID: o.ID}, rapid.Bool().Draw(rt, "yes"))
			}
		}
	case "accepted":
		e = laid(actor, base, float64(rapid.IntRange(70, 99).Draw(rt, "cost")))
	case "withdrawn":
		if stand := withdrawable(log); len(stand) > 0 {
			e = withdraw(actor, base, rapid.SampledFrom(stand).Draw(rt, "withdrawn"))
		}
	}
	return withID(e)
}

// withdrawable returns the entries that stand and can be withdrawn.
func withdrawable(log []journal.Entry) []journal.Entry {
	var out []journal.Entry
	stands := journal.Standing(log)
	for i, e := range log {
		if stands[i] && (e.Kind == journal.Fact || e.Kind == journal.Asked || e.Kind == journal.Answer || e.Kind == journal.Accepted) {
			out = append(out, e)
		}
	}
	return out
}

// Whatever is written, told, asked for, answered, withdrawn and taken back, one by one or several at once, the text
// of the store is the replay of its log, with and without what it kept on the way.
func TestTheTextIsTheReplayOfALogOfEveryKind(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		pieces, kept, refused := 0, map[journal.Kind]int{}, 0
		rapid.Check(t, func(rt *rapid.T) {
			pieces++
			ctx := context.Background()
			p, err := s.Create(ctx, Write{Actor: "anna"}, fmt.Sprint("board ", pieces), []byte(board))
			if err != nil {
				rt.Fatal(err)
			}
			for range rapid.IntRange(1, 25).Draw(rt, "writes") {
				log := logOf(t, s, p.ID)
				batch := []journal.Entry{anything(rt, log, int64(len(log)))}
				for range rapid.SampledFrom([]int{0, 0, 0, 1, 3}).Draw(rt, "more") {
					more := withID(edit("anna", int64(len(log)), rapid.SampledFrom(boardPaths).Draw(rt, "path"), fmt.Sprintf("%d in", rapid.IntRange(1, 99).Draw(rt, "value"))))
					if rapid.Bool().Draw(rt, "fact") {
						more = withID(fact("anna", int64(len(log)), sized("")))
					}
					batch = append(batch, more)
				}
				_, err := s.Append(ctx, p.ID, batch...)
				var clash *ConflictError // what stands over it, or was changed since
				if err != nil && (batch[0].Kind == journal.Edit || batch[0].Kind == journal.Fact || batch[0].Kind == journal.Asked || !errors.As(err, &clash)) {
					rt.Fatalf("%s: %v", batch[0].Kind, err)
				}
				after := logOf(t, s, p.ID)
				if want := len(log) + len(batch); err == nil && len(after) != want || err != nil && len(after) != len(log) {
					rt.Fatalf("%d entries and %d more come to %d: %v", len(log), len(batch), len(after), err)
				}
				if err != nil {
					refused++
					continue
				}
				for _, e := range batch {
					kept[e.Kind]++
				}
				replayed, err := journal.Replay([]byte(board), after)
				if got := text(t, s, p.ID); err != nil || got != string(replayed) {
					rt.Fatalf("after %d entries the store holds\n%s\nreplayed\n%s\n%v", len(after), got, replayed, err)
				}
			}
			snapshotsAreTheReplay(t, s, p.ID)
		})
		for _, kind := range []journal.Kind{journal.Edit, journal.Undo, journal.Fact, journal.Asked, journal.Answer, journal.Withdrawn, journal.Accepted} {
			if kept[kind] < 10 && !t.Failed() {
				t.Errorf("only %d of kind %s were kept", kept[kind], kind)
			}
		}
		t.Logf("%d pieces, kept %v, %d writes met a later change", pieces, kept, refused)
	})
}
