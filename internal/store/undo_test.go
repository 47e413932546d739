package store

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"rodwright/journal"
)

func undo(actor string, base int64, named journal.Entry) journal.Entry {
	return journal.Entry{Actor: actor, Base: base, Kind: journal.Undo, Names: named.ID}
}

func TestEachTakesBackTheirOwn(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		before := text(t, s, p.ID)
		e := write(t, s, p.ID, edit("anna", 0, sizes(t, stool(t))[0], "40 in"))
		undo := journal.Entry{Actor: "ben", Base: 1, Kind: journal.Undo, Names: e.ID}
		var bad *InputError
		if _, err := s.Append(context.Background(), p.ID, undo); !errors.As(err, &bad) {
			t.Errorf("ben took back what anna wrote: %v", err)
		}
		undo.Actor = "anna"
		taken := write(t, s, p.ID, undo)
		if got := text(t, s, p.ID); got != before {
			t.Errorf("after the undo:\n%s", got)
		}
		write(t, s, p.ID, journal.Entry{Actor: "anna", Base: 2, Kind: journal.Undo, Names: taken.ID})
		if got := value(t, s, p.ID, e.Path); got != "40 in" {
			t.Errorf("after the undo was taken back: %q", got)
		}
	})
}

func TestAnEditThatSomebodyWroteOverIsNotTakenBackUnseen(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		path := sizes(t, stool(t))[0]
		e := write(t, s, p.ID, edit("anna", 0, path, "40 in"))
		write(t, s, p.ID, edit("ben", 1, path, "41 in"))
		var clash *ConflictError
		_, err := s.Append(context.Background(), p.ID, journal.Entry{Actor: "anna", Base: 2, Kind: journal.Undo, Names: e.ID})
		if !errors.As(err, &clash) || clash.Theirs != "41 in" {
			t.Errorf("got %v", err)
		}
	})
}

func TestUndoGoesBackFromTheLastOn(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		path := sizes(t, stool(t))[0]
		first := write(t, s, p.ID, edit("anna", 0, path, "40 in"))
		second := write(t, s, p.ID, edit("anna", 1, path, "41 in"))
		refused := func(of journal.Entry, base int64, want string) {
			t.Helper()
			var bad *InputError
			if _, err := s.Append(context.Background(), p.ID, undo("anna", base, of)); !errors.As(err, &bad) || !strings.Contains(bad.Why, want) {
				t.Errorf("got %v, want %s", err, want)
			}
		}
		refused(first, 2, "take back entry 2 first")
		back := write(t, s, p.ID, undo("anna", 2, second))
		if got := value(t, s, p.ID, path); got != "40 in" {
			t.Errorf("after one undo: %q", got)
		}
		refused(second, 3, "was taken back already")
		write(t, s, p.ID, edit("anna", 3, path, "42 in"))
		refused(back, 4, "an undo before a later edit")
	})
}

func TestAnEditIsTakenBackOnceWhatWasWrittenOverItIsGone(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		before := text(t, s, p.ID)
		path := sizes(t, stool(t))[0]
		annas := write(t, s, p.ID, edit("anna", 0, path, "40 in"))
		bens := write(t, s, p.ID, edit("ben", 1, path, "41 in"))
		write(t, s, p.ID, undo("ben", 2, bens))
		write(t, s, p.ID, undo("anna", 3, annas))
		if got := text(t, s, p.ID); got != before {
			t.Errorf("after both undos:\n%s", got)
		}
	})
}

func TestAnEditIsNotMadeAgainOverSomebodyElses(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		path := sizes(t, stool(t))[0]
		annas := write(t, s, p.ID, edit("anna", 0, path, "40 in"))
		back := write(t, s, p.ID, undo("anna", 1, annas))
		write(t, s, p.ID, edit("ben", 2, path, "41 in"))
		var clash *ConflictError
		if _, err := s.Append(context.Background(), p.ID, undo("anna", 3, back)); !errors.As(err, &clash) {
			t.Fatalf("got %v", err)
		}
		if want := (ConflictError{Path: path, Yours: "40 in", Theirs: "41 in", Number: 3, Actor: "ben"}); *clash != want {
			t.Errorf("got %+v, want %+v", *clash, want)
		}
	})
}

func TestAnUndoOfWhatIsNotThereIsRefused(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		var missing *NotFoundError
		_, err := s.Append(context.Background(), p.ID, undo("anna", 0, journal.Entry{ID: "01890000-0000-7000-8000-000000000001"}))
		if !errors.As(err, &missing) {
			t.Errorf("got %v", err)
		}
		var bad *InputError
		if _, err := s.Append(context.Background(), p.ID, undo("anna", 0, journal.Entry{ID: "7"})); !errors.As(err, &bad) || bad.Field != "names" {
			t.Errorf("got %v", err)
		}
	})
}

func TestEveryEditIsTakenBackAndMadeAgainStepByStep(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		texts := []string{text(t, s, p.ID)}
		const edits = 2*every + 3
		for i := range int64(edits) {
			write(t, s, p.ID, edit("anna", i, boardPaths[int(i)%len(boardPaths)], fmt.Sprintf("%d in", 20+i)))
			texts = append(texts, text(t, s, p.ID))
		}
		step := func(next func([]journal.Entry, string) (journal.Entry, bool), want string) {
			t.Helper()
			log, err := s.Log(context.Background(), p.ID, 0)
			if err != nil {
				t.Fatal(err)
			}
			e, ok := next(log, "anna")
			if !ok {
				t.Fatalf("after entry %d there is nothing to take back", len(log))
			}
			write(t, s, p.ID, undo("anna", int64(len(log)), e))
			if got := text(t, s, p.ID); got != want {
				t.Fatalf("after entry %d:\n%s\nwant\n%s", len(log)+1, got, want)
			}
		}
		for i := edits - 1; i >= 0; i-- {
			step(journal.Undoable, texts[i])
		}
		for i := 1; i <= edits; i++ {
			step(journal.Redoable, texts[i])
		}
		snapshotsAreTheReplay(t, s, p.ID)
	})
}
