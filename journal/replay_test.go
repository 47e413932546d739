package journal_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/journal"
	"rodwright/piece"
)

const start = "piece: stool\nsizes:\n  width: 14 in   # of the seat\n  depth: 12 in\n  level: width + 4 in\n"

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

func TestWhatWasTakenBackIsMadeAgainFromTheLastOnUntilAnotherEdit(t *testing.T) {
	es := []journal.Entry{
		edit(1, "anna", "sizes/width", "15 in"), edit(2, "anna", "sizes/depth", "13 in"),
		undo(3, "anna", 2), undo(4, "anna", 1), undo(5, "anna", 4), edit(6, "ben", "sizes/level", "20 in"),
		undo(7, "anna", 3), undo(8, "anna", 2), edit(9, "anna", "sizes/level", "21 in"),
	}
	for upto, want := range map[int]int64{2: 0, 3: 3, 4: 4, 5: 3, 6: 3, 7: 0, 8: 8, 9: 0} {
		if e, ok := journal.Redoable(es[:upto], "anna"); e.Number != want || ok != (want > 0) {
			t.Errorf("after entry %d: entry %d, want %d", upto, e.Number, want)
		}
	}
	if _, ok := journal.Redoable(es, "ben"); ok {
		t.Error("ben took nothing back and can make something again")
	}
}

func TestWhatCantBeReplayedNamesItsEntry(t *testing.T) {
	wish := entry(1, "anna")
	wish.Kind = "wish"
	for name, es := range map[string][]journal.Entry{
		"an edit of nothing":   {edit(1, "anna", "sizes/height", "3 in")},
		"an undo of nothing":   {undo(1, "anna", 7)},
		"an undo of the later": {undo(1, "anna", 2), edit(2, "anna", "sizes/width", "15 in")},
		"an unknown kind":      {wish},
		"a fact of nothing":    {entryOf(1, journal.Fact)},
		"an order of nothing":  {entryOf(1, journal.Asked)},
		"an early answer":      {answered(1, "cleo", 2, true), asked(2, "cleo", wider)},
	} {
		if _, err := journal.Replay([]byte(start), es); err == nil || !strings.HasPrefix(err.Error(), "entry 1: ") {
			t.Errorf("%s: %v", name, err)
		}
	}
	var place *piece.Error
	if _, err := journal.Replay([]byte(start), []journal.Entry{edit(1, "anna", "sizes/height", "3 in")}); !errors.As(err, &place) {
		t.Errorf("the place is lost: %v", err)
	}
}

// starter draws a document that a piece begins from, and the paths of its sizes.
func starter(t *rapid.T) (text []byte, paths []string) {
	name := rapid.SampledFrom(piece.Starters()).Draw(t, "starter")
	text, err := piece.Starter(name)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := piece.Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range doc.Sizes {
		paths = append(paths, "sizes/"+s.Name)
	}
	return text, paths
}

// edits draws a log of edits of those values, and of undos.
func edits(t *rapid.T, at []string) []journal.Entry {
	paths := rapid.SampledFrom(at)
	actors := rapid.SampledFrom([]string{"anna", "ben"})
	n := rapid.IntRange(0, 12).Draw(t, "entries")
	var es []journal.Entry
	for i := 1; i <= n; i++ {
		if i > 1 && rapid.IntRange(0, 3).Draw(t, "undo") == 0 {
			es = append(es, undo(i, actors.Draw(t, "actor"), rapid.IntRange(1, i-1).Draw(t, "names")))
			continue
		}
		value := rapid.SampledFrom([]string{"%d in", "%d mm", "%d 3/8", "it's %d: # not", ""}).Draw(t, "form")
		if strings.Contains(value, "%") {
			value = fmt.Sprintf(value, rapid.IntRange(1, 99).Draw(t, "value"))
		}
		es = append(es, edit(i, actors.Draw(t, "actor"), paths.Draw(t, "path"), value))
	}
	return es
}

func TestAReplayIsEachEditInOrderWithTheSameBytesEachTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, paths := starter(t)
		es := edits(t, paths)
		first, err := journal.Replay(text, es)
		if err != nil {
			t.Fatal(err)
		}
		want := text
		for i, e := range es {
			if e.Kind != journal.Edit || !journal.Standing(es)[i] {
				continue
			}
			if want, err = piece.Edit(want, e.Path, e.New); err != nil {
				t.Fatal(err)
			}
		}
		again, err := journal.Replay(text, es)
		if err != nil || !bytes.Equal(first, want) || !bytes.Equal(first, again) {
			t.Fatalf("replayed:\n%s\nedited:\n%s\n%v", first, want, err)
		}
	})
}

func TestTakingAnEntryBackEqualsNeverHavingWrittenIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, paths := starter(t)
		es := edits(t, paths)
		if len(es) == 0 {
			return
		}
		k := rapid.IntRange(0, len(es)-1).Draw(t, "taken back")
		if !journal.Standing(es)[k] || es[k].Kind != journal.Edit {
			return
		}
		undone, err := journal.Replay(text, append(es[:len(es):len(es)], undo(len(es)+1, "anna", k+1)))
		if err != nil {
			t.Fatal(err)
		}
		var without []journal.Entry // neither it nor any undo of it
		for _, e := range es {
			if edit, ok := journal.Edited(es, e.ID); !ok || edit.ID != es[k].ID {
				without = append(without, e)
			}
		}
		never, err := journal.Replay(text, without)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(undone, never) {
			t.Fatalf("taken back:\n%s\nnever written:\n%s", undone, never)
		}
	})
}

func TestAReplayMayPauseAnywhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, paths := starter(t)
		es := happenings(t, paths)
		whole, err := journal.Replay(text, es)
		if err != nil {
			t.Fatal(err)
		}
		last := int64(len(es))
		pause := rapid.Int64Range(0, last).Draw(t, "pause")
		half, err := journal.Continue(text, es, 0, pause)
		if err != nil {
			t.Fatal(err)
		}
		rest, err := journal.Continue(half, es, pause, last)
		if err != nil || !bytes.Equal(rest, whole) {
			t.Fatalf("in two parts:\n%s\nin one:\n%s\n%v", rest, whole, err)
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
