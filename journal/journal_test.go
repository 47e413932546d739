package journal_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"rodwright/journal"
	"rodwright/piece"
)

const start = "piece: stool\nsizes:\n  width: 14 in   # of the seat\n  depth: 12 in\n  level: width + 4 in\n"

// id makes up a UUID of version 7 that differs by n.
func id(n int) string { return fmt.Sprintf("01890000-0000-7000-8000-%012x", n) }

func entry(n int, actor string) journal.Entry {
	return journal.Entry{Number: int64(n), ID: id(n), Actor: actor, Base: int64(n - 1),
		At: time.Date(2026, 5, 4, 9, n%60, 0, 0, time.UTC)}
}

func edit(n int, actor, path, value string) journal.Entry {
	e := entry(n, actor)
	e.Kind, e.Path, e.New = journal.Edit, path, value
	return e
}

func undo(n int, actor string, names int) journal.Entry {
	e := entry(n, actor)
	e.Kind, e.Names = journal.Undo, id(names)
	return e
}

func replay(t *testing.T, es ...journal.Entry) string {
	t.Helper()
	text, err := journal.Replay([]byte(start), es)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestTheDocumentIsTheReplayOfItsEdits(t *testing.T) {
	got := replay(t, edit(1, "anna", "sizes/width", "15 in"), edit(2, "anna", "sizes/level", "width + 5 in"))
	want := "piece: stool\nsizes:\n  width: 15 in   # of the seat\n  depth: 12 in\n  level: width + 5 in\n"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestAnUndoneEditLeavesTheTextAsIfNeverWritten(t *testing.T) {
	es := []journal.Entry{edit(1, "anna", "sizes/width", "15 in"), edit(2, "ben", "sizes/depth", "13 in"), undo(3, "anna", 1)}
	if got, want := replay(t, es...), replay(t, es[1]); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestAnUndoThatIsTakenBackNoLongerCounts(t *testing.T) {
	es := []journal.Entry{edit(1, "anna", "sizes/width", "15 in"), undo(2, "anna", 1), undo(3, "anna", 2)}
	if got, want := replay(t, es...), replay(t, es[0]); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestUndoTakesBackTheActorsOwnLastEditThatStands(t *testing.T) {
	es := []journal.Entry{
		edit(1, "anna", "sizes/width", "15 in"), edit(2, "anna", "sizes/depth", "13 in"),
		edit(3, "ben", "sizes/level", "20 in"), undo(4, "anna", 2),
	}
	if e, ok := journal.Undoable(es, "anna"); !ok || e.Number != 1 {
		t.Errorf("anna: entry %d, %v", e.Number, ok)
	}
	if e, ok := journal.Undoable(es, "ben"); !ok || e.Number != 3 {
		t.Errorf("ben: entry %d, %v", e.Number, ok)
	}
	if _, ok := journal.Undoable(es, "carl"); ok {
		t.Error("carl wrote nothing and can undo something")
	}
}

func TestAValueHasChangedSinceWhenItWasEditedOrTakenBack(t *testing.T) {
	es := []journal.Entry{
		edit(1, "anna", "sizes/width", "15 in"), edit(2, "ben", "sizes/depth", "13 in"), undo(3, "anna", 1),
	}
	for _, c := range []struct {
		base int64
		path string
		want int64 // 0: as it was
	}{{0, "sizes/width", 3}, {2, "sizes/width", 3}, {3, "sizes/width", 0}, {1, "sizes/depth", 2}, {2, "sizes/depth", 0}} {
		if e, ok := journal.Since(es, c.base, c.path); e.Number != c.want || ok != (c.want > 0) {
			t.Errorf("%s since %d: entry %d, want %d", c.path, c.base, e.Number, c.want)
		}
	}
}

func TestAnEditOfNothingNamesItsEntry(t *testing.T) {
	_, err := journal.Replay([]byte(start), []journal.Entry{edit(1, "anna", "sizes/height", "3 in")})
	var place *piece.Error
	if !errors.As(err, &place) || !strings.Contains(err.Error(), "entry 1") {
		t.Errorf("%v", err)
	}
}

func TestEntriesThatCantBeAreRefused(t *testing.T) {
	good := edit(2, "anna", "sizes/width", "15 in")
	for field, spoil := range map[string]func(*journal.Entry){
		"id":     func(e *journal.Entry) { e.ID = "7" },
		"actor":  func(e *journal.Entry) { e.Actor = " " },
		"number": func(e *journal.Entry) { e.Number = 0 },
		"base":   func(e *journal.Entry) { e.Base = 2 },
		"at":     func(e *journal.Entry) { e.At = e.At.Add(time.Microsecond) },
		"kind":   func(e *journal.Entry) { e.Kind = "wish" },
		"path":   func(e *journal.Entry) { e.Path = "" },
		"names":  func(e *journal.Entry) { e.Names = id(1) },
		"new":    func(e *journal.Entry) { e.New = strings.Repeat("9", journal.MostValue+1) },
	} {
		e := good
		spoil(&e)
		var bad *journal.EntryError
		if err := e.Check(); !errors.As(err, &bad) || bad.Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	if err := good.Check(); err != nil {
		t.Error(err)
	}
}

func TestAJournalFileWithAGapNamesTheLine(t *testing.T) {
	var file bytes.Buffer
	for _, e := range []journal.Entry{edit(1, "anna", "sizes/width", "15 in"), edit(3, "anna", "sizes/width", "16 in")} {
		if err := journal.WriteLine(&file, e); err != nil {
			t.Fatal(err)
		}
	}
	_, err := journal.Read(&file)
	var bad *journal.LineError
	if !errors.As(err, &bad) || bad.Line != 2 {
		t.Errorf("%v", err)
	}
}

// edits draws a log of edits and undos on the start's sizes.
func edits(t *rapid.T) []journal.Entry {
	paths := rapid.SampledFrom([]string{"sizes/width", "sizes/depth", "sizes/level"})
	actors := rapid.SampledFrom([]string{"anna", "ben"})
	n := rapid.IntRange(0, 12).Draw(t, "entries")
	var es []journal.Entry
	for i := 1; i <= n; i++ {
		if i > 1 && rapid.IntRange(0, 3).Draw(t, "undo") == 0 {
			es = append(es, undo(i, actors.Draw(t, "actor"), rapid.IntRange(1, i-1).Draw(t, "names")))
			continue
		}
		value := fmt.Sprintf("%d in", rapid.IntRange(1, 99).Draw(t, "value"))
		es = append(es, edit(i, actors.Draw(t, "actor"), paths.Draw(t, "path"), value))
	}
	return es
}

func TestTakingAnEntryBackEqualsNeverHavingWrittenIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		es := edits(t)
		if len(es) == 0 {
			return
		}
		k := rapid.IntRange(0, len(es)-1).Draw(t, "taken back")
		if !journal.Standing(es)[k] || es[k].Kind != journal.Edit {
			return
		}
		undone, err := journal.Replay([]byte(start), append(es[:len(es):len(es)], undo(len(es)+1, "anna", k+1)))
		if err != nil {
			t.Fatal(err)
		}
		without := append(append([]journal.Entry(nil), es[:k]...), es[k+1:]...)
		never, err := journal.Replay([]byte(start), without)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(undone, never) {
			t.Fatalf("taken back:\n%s\nnever written:\n%s", undone, never)
		}
	})
}

func TestAJournalFileReadsBackAsItWasWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		es := edits(t)
		var file bytes.Buffer
		for _, e := range es {
			if err := journal.WriteLine(&file, e); err != nil {
				t.Fatal(err)
			}
		}
		back, err := journal.Read(&file)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(es, back); diff != "" {
			t.Fatal(diff)
		}
	})
}

// FuzzRead holds that no file makes the reader panic, and that what it reads can be replayed or is refused
// with an error.
func FuzzRead(f *testing.F) {
	var file bytes.Buffer
	if err := journal.WriteLine(&file, edit(1, "anna", "sizes/width", "15 in")); err != nil {
		f.Fatal(err)
	}
	f.Add(file.Bytes())
	f.Add([]byte("{}\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		es, err := journal.Read(bytes.NewReader(text))
		if err != nil {
			return
		}
		first, err := journal.Replay([]byte(start), es)
		if err != nil {
			return
		}
		again, err := journal.Replay([]byte(start), es)
		if err != nil || !bytes.Equal(first, again) {
			t.Errorf("a replay differs: %v", err)
		}
	})
}

func ExampleReplay() {
	text, err := journal.Replay([]byte("sizes:\n  width: 14 in\n"), []journal.Entry{
		edit(1, "anna", "sizes/width", "15 in"),
		edit(2, "anna", "sizes/width", "16 in"),
		undo(3, "anna", 2),
	})
	fmt.Print(string(text), err)
	// Output:
	// sizes:
	//   width: 15 in
	// <nil>
}
