package beside

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"rodwright/journal"
)

var day = time.Date(2026, 5, 4, 9, 0, 0, 123_456_789, time.UTC)

func edit(base int64, path, old, value string) journal.Entry {
	return journal.Entry{Actor: "anna", Base: base, Kind: journal.Edit, Path: path, Old: old, New: value}
}

func made() journal.Entry {
	return journal.Entry{Actor: "anna", Kind: journal.Fact, Fact: &journal.Happened{
		What: journal.Made, Part: "C1.1", Place: "board", Work: "size",
		Shape: &journal.Shape{Kind: journal.KindPanel, Material: "white-oak", Size: [3]journal.MM{1e9, 5e8, 25e6}},
	}}
}

func meant(thing, place string) journal.Entry {
	return journal.Entry{Actor: "anna", Kind: journal.Fact, Fact: &journal.Happened{What: journal.Meant, Thing: thing, Place: place}}
}

// tell appends entries that must be taken.
func tell(t *testing.T, path string, es ...journal.Entry) []journal.Entry {
	t.Helper()
	kept, err := Append(path, day, func([]journal.Entry) ([]journal.Entry, error) { return es, nil })
	if err != nil {
		t.Fatal(err)
	}
	return kept
}

func load(t *testing.T, path string) []journal.Entry {
	t.Helper()
	es, err := Load(path)
	if err != nil {
		t.Fatal(err)
	}
	return es
}

// journalAt returns the path of a journal that is not there yet.
func journalAt(t *testing.T) string { return Name(filepath.Join(t.TempDir(), "stand.piece.yaml")) }

func TestAJournalLiesBesideItsPiece(t *testing.T) {
	for piece, want := range map[string]string{
		"stand.piece.yaml": "stand.journal.jsonl", filepath.Join("a.b", "low bench.piece.yaml"): filepath.Join("a.b", "low bench.journal.jsonl"),
		"stand.yaml": "stand.yaml.journal.jsonl", // not that of stand.piece.yaml
	} {
		if got := Name(piece); got != want {
			t.Errorf("%s has %s", piece, got)
		}
	}
}

func TestAPieceWithoutAJournalHasNoEntries(t *testing.T) {
	path := journalAt(t)
	if es := load(t, path); len(es) != 0 {
		t.Errorf("%d entries", len(es))
	}
	refuse := errors.New("no")
	if _, err := Append(path, day, func([]journal.Entry) ([]journal.Entry, error) { return nil, refuse }); !errors.Is(err, refuse) {
		t.Errorf("got %v", err)
	}
	if kept := tell(t, path); len(kept) != 0 {
		t.Errorf("%d entries of none", len(kept))
	}
	if found, err := os.ReadDir(filepath.Dir(path)); err != nil || len(found) != 0 {
		t.Errorf("files made for nothing: %v, %v", found, err)
	}
}

func TestWhatIsWrittenIsReadBackAsItWasKept(t *testing.T) {
	path := journalAt(t)
	first := tell(t, path, made(), edit(0, "sizes/length", "42 in", "40 in"))
	if e := first[1]; e.Number != 2 || e.ID == "" || e.Old != "42 in" || !e.At.Equal(day.Truncate(time.Millisecond)) {
		t.Errorf("kept %+v", e)
	}
	given := meant(first[0].ID, "")
	given.ID, given.At = "01890000-0000-7000-8000-000000000001", day.Add(-time.Hour).In(time.FixedZone("", 3600))
	second := tell(t, path, given, journal.Entry{Actor: "clara", Base: 2, Kind: journal.Asked, Order: &journal.Order{Edits: []journal.Put{{Path: "sizes/length", New: "39 in"}}}})
	if e := second[0]; e.ID != given.ID || !e.At.Equal(day.Add(-time.Hour).Truncate(time.Millisecond)) {
		t.Errorf("kept %+v", e)
	}
	if no := second[1].Order.No; no != 1 {
		t.Errorf("the first change is number %d", no)
	}
	third := tell(t, path, journal.Entry{Actor: "clara", Kind: journal.Answer, Names: second[1].ID, Yes: true})
	want := append(append(append([]journal.Entry{}, first...), second...), third...)
	if diff := cmp.Diff(want, load(t, path)); diff != "" {
		t.Error(diff)
	}
	text, err := os.ReadFile(path)
	if err != nil || bytes.Count(text, []byte("\n")) != 5 || bytes.IndexByte(text, unsealed) >= 0 {
		t.Errorf("%v\n%s", err, text)
	}
	if found, err := os.ReadDir(filepath.Dir(path)); err != nil || len(found) != 1 {
		t.Errorf("files beside it: %v, %v", found, err)
	}
}

func TestTheWriterIsGivenWhatIsThere(t *testing.T) {
	path := journalAt(t)
	tell(t, path, made(), made())
	_, err := Append(path, day, func(es []journal.Entry) ([]journal.Entry, error) {
		e := meant(es[1].ID, "shelf")
		e.Base = int64(len(es))
		es[0], es[1] = journal.Entry{}, journal.Entry{} // theirs to do with
		return []journal.Entry{e}, nil
	})
	if es := load(t, path); err != nil || len(es) != 3 || es[2].Base != 2 || es[2].Fact.Thing != es[1].ID {
		t.Errorf("%v, %+v", err, es)
	}
}

func TestEntriesThatCantFollowLeaveTheFileAsItIs(t *testing.T) {
	path := journalAt(t)
	first := tell(t, path, made(), edit(0, "sizes/length", "42 in", "40 in"))
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	back := journal.Entry{Actor: "anna", Kind: journal.Undo, Names: first[1].ID}
	twice := made()
	twice.ID = first[0].ID
	for field, es := range map[string][]journal.Entry{
		"fact.thing": {made(), meant("01890000-0000-7000-8000-000000000009", "shelf")},
		"names":      {back, back}, "id": {made(), twice}, "kind": {made(), {Actor: "anna", Kind: "carried"}},
		"layout": {made(), {Actor: "anna", Kind: journal.Accepted}},
		"base":   {made(), edit(4, "sizes/length", "", "1 in")}, "actor": {{Kind: journal.Edit}},
		"order.no": {{Actor: "clara", Kind: journal.Asked, Order: &journal.Order{No: 2, Edits: []journal.Put{{Path: "sizes/length", New: "39 in"}}}}},
	} {
		_, err := Append(path, day, func([]journal.Entry) ([]journal.Entry, error) { return es, nil })
		var bad *journal.EntryError
		if !errors.As(err, &bad) || bad.Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	if after, err := os.ReadFile(path); err != nil || !bytes.Equal(after, before) {
		t.Errorf("%v, the file holds\n%s", err, after)
	}
}

// The write is cut at many bytes: whatever is there of it after a fall, none of it was acknowledged.
func TestWhateverIsLeftOfAWriteThatWasCutShortIsPassedOver(t *testing.T) {
	path := journalAt(t)
	first := tell(t, path, made())
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	tell(t, path, made(), made(), made())
	both, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	more := bytes.Clone(both[len(whole):])
	more[0] = unsealed
	zeros := bytes.Clone(more) // the end of it came to the disk before its beginning
	clear(zeros[:len(zeros)-5])
	for _, left := range [][]byte{more, zeros} {
		for n := 0; n <= len(left); n += 7 {
			if err := os.WriteFile(path, append(bytes.Clone(whole), left[:n]...), 0o600); err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(first, load(t, path)); diff != "" {
				t.Fatalf("%d bytes of it: %s", n, diff)
			}
		}
		next := tell(t, path, meant(first[0].ID, "shelf"))
		if diff := cmp.Diff(append(first[:1:1], next...), load(t, path)); diff != "" {
			t.Error(diff)
		}
	}
}

func TestALastLineWithoutAnEndIsDroppedByTheNextWrite(t *testing.T) {
	for _, torn := range []string{`{"number":2,"id":"0189`, "\x00", `{"number":2}`} {
		path := journalAt(t)
		first := tell(t, path, made())
		f, err := os.OpenFile(path, os.O_APPEND|os.O_WRONLY, 0)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := f.WriteString(torn); err != nil || f.Close() != nil {
			t.Fatal(err)
		}
		if es := load(t, path); len(es) != 1 {
			t.Fatalf("%d entries", len(es))
		}
		next := tell(t, path, made())
		if diff := cmp.Diff([]journal.Entry{first[0], next[0]}, load(t, path)); diff != "" {
			t.Error(diff)
		}
	}
}

func TestALineThatCantBeReadIsNamedAndKept(t *testing.T) {
	path := journalAt(t)
	tell(t, path, made(), made())
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	broken := strings.Replace(string(text), `"number":2`, `"number":7`, 1)
	if err := os.WriteFile(path, []byte(broken), 0o600); err != nil {
		t.Fatal(err)
	}
	var line *journal.LineError
	if _, err := Load(path); !errors.As(err, &line) || line.Line != 2 || !strings.Contains(err.Error(), path) {
		t.Errorf("got %v", err)
	}
	if _, err := Append(path, day, func([]journal.Entry) ([]journal.Entry, error) { return []journal.Entry{made()}, nil }); !errors.As(err, &line) {
		t.Errorf("got %v", err)
	}
	if after, err := os.ReadFile(path); err != nil || string(after) != broken {
		t.Errorf("%v, the file holds\n%s", err, after)
	}
}

// failing is a file in memory of which one step fails.
type failing struct {
	text []byte
	fail int // the step that fails, from 1
}

var errDisk = errors.New("the disk is full")

func (f *failing) step() error {
	if f.fail--; f.fail == 0 {
		return errDisk
	}
	return nil
}

func (f *failing) WriteAt(text []byte, at int64) (int, error) {
	err := f.step()
	if err != nil {
		text = text[:len(text)/2]
	}
	f.text = append(f.text, make([]byte, max(0, int(at)+len(text)-len(f.text)))...)
	return copy(f.text[at:], text), err
}

func (f *failing) Truncate(size int64) error {
	if err := f.step(); err != nil {
		return err
	}
	f.text = f.text[:size]
	return nil
}

func (f *failing) Sync() error { return f.step() }

func TestAWriteThatFailsIsTakenOutOfTheFile(t *testing.T) {
	const had, more = "{1}\n", "{2}\n{3}\n"
	steps := 0
	for fail := 1; ; fail++ {
		f := &failing{text: []byte(had + "{2"), fail: fail}
		err := seal(f, int64(len(had)), []byte(more))
		if err == nil {
			if string(f.text) != had+more {
				t.Errorf("the file holds %q", f.text)
			}
			break
		}
		if steps++; !errors.Is(err, errDisk) || string(f.text) != had {
			t.Errorf("step %d: %v, the file holds %q", fail, err, f.text)
		}
	}
	if steps != 5 {
		t.Errorf("%d steps can fail", steps)
	}
}

// watched is a file in memory that tells what would be read of it, were the machine to stop after any byte.
type watched struct {
	failing
	seen func(text []byte)
}

func (f *watched) WriteAt(text []byte, at int64) (int, error) {
	for n := range text {
		if _, err := f.failing.WriteAt(text[n:n+1], at+int64(n)); err != nil {
			return n, err
		}
		f.seen(f.text)
	}
	return len(text), nil
}

func TestLinesWrittenTogetherAreReadAllOrNoneWheneverTheMachineStops(t *testing.T) {
	const had, more = "{1}\n", "{2}\n{3}\n{4}\n"
	for _, before := range []string{"", had} {
		whole := 0
		f := &watched{failing{text: []byte(before)}, func(text []byte) {
			switch got := string(acknowledged(text)); got {
			case before:
			case before + more:
				whole++
			default:
				t.Errorf("of %q is read %q", text, got)
			}
		}}
		if err := seal(f, int64(len(before)), []byte(more)); err != nil || whole != 1 {
			t.Errorf("%v, all of it was read %d times", err, whole)
		}
	}
}

func TestManyWhoWriteAtOnceLoseNothing(t *testing.T) {
	path := journalAt(t)
	const writers, writes = 4, 15
	var done sync.WaitGroup
	for range writers {
		done.Go(func() {
			for range writes {
				_, err := Append(path, day, func(es []journal.Entry) ([]journal.Entry, error) {
					e := made()
					e.Base = int64(len(es))
					return []journal.Entry{e, made()}, nil
				})
				if err != nil {
					t.Error(err)
				}
			}
		})
	}
	done.Wait()
	es := load(t, path)
	if len(es) != 2*writers*writes {
		t.Fatalf("%d entries", len(es))
	}
	for i := 0; i < len(es); i += 2 {
		if es[i].Base != int64(i) {
			t.Errorf("entry %d was written on %d", i+1, es[i].Base)
		}
	}
}

// The lock file loses its name with each unlocking: whoever waits on the nameless one must not take it for the lock.
func TestOneAtATimeHoldsTheLock(t *testing.T) {
	name := journalAt(t) + ".lock"
	var held, taken atomic.Int32
	var done sync.WaitGroup
	for range 8 {
		done.Go(func() {
			for taken.Load() < 3000 && !t.Failed() {
				unlock, err := tryLock(name)
				if err != nil {
					t.Error(err)
				}
				if unlock == nil {
					continue
				}
				if n := held.Add(1); n != 1 {
					t.Errorf("%d hold the lock", n)
				}
				runtime.Gosched()
				held.Add(-1)
				taken.Add(1)
				if err := unlock(); err != nil {
					t.Error(err)
				}
			}
		})
	}
	done.Wait()
}
