package store

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/journal"
)

// snapshotsAreTheReplay checks every snapshot of a piece against the replay of its log from the start.
func snapshotsAreTheReplay(t testing.TB, s *Store, id string) {
	t.Helper()
	ctx := context.Background()
	log, err := s.Log(ctx, id, 0)
	if err != nil {
		t.Fatal(err)
	}
	replayed, at, err := snapshot(ctx, s.read, id, 0)
	if err != nil {
		t.Fatal(err)
	}
	for next := int64(1); next <= int64(len(log)); next++ {
		kept, number, err := snapshot(ctx, s.read, id, next)
		if err != nil {
			t.Fatal(err)
		}
		if number < next { // none was kept after this entry
			continue
		}
		if replayed, err = journal.Continue(replayed, log, at, number); err != nil {
			t.Fatal(err)
		}
		if at = number; string(kept) != string(replayed) {
			t.Errorf("after entry %d is kept\n%s\nreplayed\n%s", number, kept, replayed)
		}
	}
	if at != int64(len(log)) {
		t.Errorf("the text after the last entry, %d, is not kept", len(log))
	}
}

func TestTheTextIsTheReplayOfTheLogWithAndWithoutWhatWasKept(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		for i, path := range sizes(t, stool(t)) {
			write(t, s, p.ID, edit("anna", int64(i), path, fmt.Sprintf("%d in", 20+i)))
		}
		kept := text(t, s, p.ID)
		if _, err := s.write.Exec(`delete from snapshots`); err != nil {
			t.Fatal(err)
		}
		if replayed := text(t, s, p.ID); replayed != kept {
			t.Errorf("kept\n%s\nreplayed\n%s", kept, replayed)
		}
	})
}

func TestSnapshotsStayEveryTwentyEntriesAndAfterTheLast(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		for i := range int64(3*every + 5) {
			e := write(t, s, p.ID, edit("anna", i, "sizes/length", fmt.Sprintf("%d in", 20+i)))
			write(t, s, p.ID, e) // a repeat changes nothing
		}
		var got []int64
		for at := int64(3*every + 5); at > 0; at-- {
			_, number, err := snapshot(context.Background(), s.read, p.ID, at)
			if err != nil {
				t.Fatal(err)
			}
			if number == at {
				got = append(got, at)
			}
		}
		if want := []int64{3*every + 5, 3 * every, 2 * every, every}; !slices.Equal(got, want) {
			t.Errorf("snapshots after entries %v, want %v", got, want)
		}
		snapshotsAreTheReplay(t, s, p.ID)
	})
}

// Whatever two people write and take back, in whatever order, the store says the same as the replay.
func TestTheStoreSaysWhatTheReplaySays(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		pieces := 0
		rapid.Check(t, func(rt *rapid.T) {
			pieces++
			ctx := context.Background()
			p, err := s.Create(ctx, Write{Actor: "anna"}, fmt.Sprint("board ", pieces), []byte(board))
			if err != nil {
				rt.Fatal(err)
			}
			for range rapid.IntRange(1, 30).Draw(rt, "steps") {
				log, err := s.Log(ctx, p.ID, 0)
				if err != nil {
					rt.Fatal(err)
				}
				actor := rapid.SampledFrom([]string{"anna", "ben"}).Draw(rt, "actor")
				e := edit(actor, int64(len(log)), rapid.SampledFrom(boardPaths).Draw(rt, "path"), fmt.Sprintf("%d in", rapid.IntRange(1, 99).Draw(rt, "value")))
				switch rapid.SampledFrom([]string{"edit", "edit", "undo", "redo"}).Draw(rt, "what") {
				case "undo":
					if last, ok := journal.Undoable(log, actor); ok {
						e = undo(actor, int64(len(log)), last)
					}
				case "redo":
					if last, ok := journal.Redoable(log, actor); ok {
						e = undo(actor, int64(len(log)), last)
					}
				}
				var clash *ConflictError // what somebody else wrote over
				if _, err := s.Append(ctx, p.ID, e); err != nil && (e.Kind == journal.Edit || !errors.As(err, &clash)) {
					rt.Fatal(err)
				}
			}
			snapshotsAreTheReplay(t, s, p.ID)
		})
	})
}
