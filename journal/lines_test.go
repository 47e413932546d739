package journal_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"rodwright/journal"
)

// file returns the entries as a journal file.
func file(t testing.TB, es ...journal.Entry) string {
	t.Helper()
	var out bytes.Buffer
	for _, e := range es {
		if err := journal.WriteLine(&out, e); err != nil {
			t.Fatal(err)
		}
	}
	return out.String()
}

func TestAJournalFileIsOneEntryALine(t *testing.T) {
	e := edit(1, "anna", "sizes/width", "15 in")
	e.Old = "14 in"
	want := `{"number":1,"id":"01890000-0000-7000-8000-000000000001","actor":"anna","base":0,"at":"2026-05-04T09:01:00Z",` +
		`"kind":"edit","path":"sizes/width","old":"14 in","new":"15 in"}` + "\n" +
		`{"number":2,"id":"01890000-0000-7000-8000-000000000002","actor":"anna","base":1,"at":"2026-05-04T09:02:00Z",` +
		`"kind":"undo","names":"01890000-0000-7000-8000-000000000001"}` + "\n"
	if got := file(t, e, undo(2, "anna", 1)); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestALineThatIsNoEntryIsNamedWithWhatWouldBeRight(t *testing.T) {
	good := file(t, edit(1, "anna", "sizes/width", "15 in"))
	line := strings.TrimSuffix(good, "\n")
	for name, c := range map[string]struct{ text, want string }{
		"a gap":               {good + file(t, edit(3, "anna", "sizes/width", "16 in")), "line 2: entry: number is 3: after entry 1 it must be 2"},
		"an id twice":         {good + strings.Replace(good, `"number":1`, `"number":2`, 1), "line 2: entry: id is that of entry 1"},
		"an undo of nothing":  {good + file(t, undo(2, "anna", 7)), "line 2: entry: names names no earlier entry"},
		"cut short":           {good + "\n" + line[:40], "line 3: an entry is one JSON object"},
		"a bracket more":      {line + "}\n", "line 1: an entry is one JSON object"},
		"two on a line":       {line + line, "line 1: an entry is one JSON object"},
		"a list":              {"[" + line + "]\n", "line 1: an entry is one JSON object"},
		"a member more":       {strings.Replace(good, `"actor"`, `"colour":"red","actor"`, 1), "line 1: an entry has the members number, id"},
		"not UTF-8":           {strings.Replace(good, "anna", "ann\xe4", 1), "line 1: an entry is written in UTF-8"},
		"a newer kind":        {strings.Replace(good, `"kind":"edit"`, `"kind":"carried","load":{}`, 1), `line 1: entry: kind is "carried": it must be edit`},
		"a fact in the air":   {file(t, told(1, "anna", board("A1.1"))) + file(t, told(2, "anna", again(7, "thread"))), "line 2: entry: fact.thing names no earlier entry"},
		"work on an edit":     {good + file(t, told(2, "anna", again(1, "thread"))), "line 2: entry: fact.thing names entry 1, and must name the one that first told"},
		"an undone fact":      {file(t, told(1, "anna", finished)) + file(t, undo(2, "anna", 1)), "line 2: entry: names names entry 1, and undo can't be about fact"},
		"a withdrawn edit":    {good + file(t, withdrawn(2, "anna", 1)), "line 2: entry: names names entry 1, and withdrawn can't be about edit"},
		"an answer to a fact": {file(t, told(1, "anna", finished)) + file(t, answered(2, "anna", 1, true)), "line 2: entry: names names entry 1, and answer can't be about fact"},
		"a size in words":     {strings.Replace(file(t, told(1, "anna", board("A1.1"))), `"size":[1066.8`, `"size":["1066.8"`, 1), "line 1: an entry has the members"},
		"no end of a line":    {strings.Repeat(" ", 1<<20+1), "line 1: is longer than"},
	} {
		_, err := journal.Read(strings.NewReader(c.text))
		var bad *journal.LineError
		if !errors.As(err, &bad) || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v\nwant %s", name, err, c.want)
		}
	}
}

func TestAFileThatCantBeReadSaysWhere(t *testing.T) {
	broken := errors.New("the disk is gone")
	text := strings.NewReader(file(t, edit(1, "anna", "sizes/width", "15 in")))
	_, err := journal.Read(iotest.TimeoutReader(iotest.OneByteReader(text)))
	var bad *journal.LineError
	if !errors.As(err, &bad) || bad.Line < 1 || !errors.Is(err, iotest.ErrTimeout) {
		t.Errorf("%v", err)
	}
	if _, err := journal.Read(iotest.ErrReader(broken)); !errors.Is(err, broken) {
		t.Errorf("%v", err)
	}
}

func TestAnEntryThatCantBeIsNotWritten(t *testing.T) {
	var out bytes.Buffer
	if err := journal.WriteLine(&out, edit(0, "anna", "sizes/width", "15 in")); err == nil || out.Len() > 0 {
		t.Errorf("wrote %q, %v", out.String(), err)
	}
}

func TestTheLongestEntryIsReadBack(t *testing.T) {
	e := edit(1, strings.Repeat("<", journal.MostActor), strings.Repeat("&", journal.MostPath), strings.Repeat("\u2028", journal.MostValue))
	e.Old = strings.Repeat("\x01", journal.MostValue)
	if es, err := journal.Read(strings.NewReader(file(t, e))); err != nil || len(es) != 1 || !cmp.Equal(es[0], e) {
		t.Errorf("%d entries, %v", len(es), err)
	}
}

func TestAJournalFileReadsBackAsItWasWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, paths := starter(t)
		es := happenings(t, paths)
		for i := range es {
			if es[i].Kind == journal.Edit {
				es[i].Old = rapid.StringN(0, 20, -1).Draw(t, "old")
			}
		}
		var out bytes.Buffer
		for _, e := range es {
			if err := journal.WriteLine(&out, e); err != nil {
				t.Fatal(err)
			}
		}
		back, err := journal.Read(&out)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(es, back); diff != "" {
			t.Fatal(diff)
		}
	})
}

// FuzzRead holds that no file makes the reader panic, that what it reads is written and read again as it is,
// and that its replay is refused with an error or gives the same bytes each time.
func FuzzRead(f *testing.F) {
	f.Add([]byte(file(f, edit(1, "anna", "sizes/width", "15 in"), edit(2, "ben", "sizes/depth", "it's: # 3"), undo(3, "anna", 1))))
	f.Add([]byte("{}\n"))
	for _, es := range logs() {
		f.Add([]byte(file(f, es...)))
	}
	f.Add([]byte(strings.Replace(file(f, told(1, "anna", board("A1.1"))), `"measured":true`, `"openings":[],"profiles":null`, 1)))
	f.Add([]byte(fmt.Sprintf(`{"number":1,"id":%q,"actor":"a","at":"2026-05-04T09:01:00.5Z","kind":"edit","path":"sizes","NEW":"\ud800"}`, id(1))))
	f.Fuzz(func(t *testing.T, text []byte) {
		es, err := journal.Read(bytes.NewReader(text))
		if err != nil {
			return
		}
		back, err := journal.Read(strings.NewReader(file(t, es...)))
		if diff := cmp.Diff(es, back); err != nil || diff != "" {
			t.Fatal(err, diff)
		}
		first, err := journal.Replay([]byte(start), es)
		if err != nil {
			return
		}
		again, err := journal.Replay([]byte(start), es)
		if err != nil || !bytes.Equal(first, again) {
			t.Errorf("a replay differs: %v", err)
		}
		if diff := cmp.Diff(journal.Fold(es), journal.Fold(back)); diff != "" {
			t.Error(diff)
		}
	})
}
