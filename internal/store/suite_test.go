package store

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"rodwright/journal"
	"rodwright/piece"
	"rodwright/shop"
)

// databases are the databases that every statement of this suite holds for.
var databases = map[string]func(t *testing.T) (open func() *Store){
	"sqlite": func(t *testing.T) func() *Store {
		file := filepath.Join(t.TempDir(), "shop.db")
		return func() *Store {
			s, err := Open(context.Background(), file)
			if err != nil {
				t.Fatal(err)
			}
			t.Cleanup(func() {
				if err := s.Close(); err != nil {
					t.Error(err)
				}
			})
			return s
		}
	},
}

// each runs what on every database. Open may be called again for a second Store on the same shop.
func each(t *testing.T, what func(t *testing.T, open func() *Store)) {
	for name, database := range databases {
		t.Run(name, func(t *testing.T) { what(t, database(t)) })
	}
}

// stool is a document that edits of its sizes leave readable.
func stool(t testing.TB) []byte {
	t.Helper()
	text, err := piece.Starter(piece.Starters()[0])
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// board is a small document in which two values have two paths each: sizes/level and sizes/level/is,
// holds/1/count and holds/trays/count.
const board = `rodwright: 1
piece: board
unit: in
fineness: 1/16
place: {room: greenhouse, humidity: 45–75 %, temperature: 10–32 C}
wood: {species: white-oak, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
sizes:
  length: 42 in
  depth: 19 in
  level: {is: 17 in, origin: client}
holds:
  - {name: trays, on: board, size: 13 × 15 × 3 in, weight: 12 lb, count: 3}
panels:
  board: {length: length, width: depth, thickness: 1 in, grain: along length, level: level, sits: by place, at: [0, 0]}
`

// boardPaths are those of its values that tests edit.
var boardPaths = []string{"sizes/length", "sizes/depth", "sizes/level", "sizes/level/is", "holds/1/count", "holds/trays/count"}

// sizes returns the paths of the sizes that a document names.
func sizes(t testing.TB, text []byte) []string {
	t.Helper()
	doc, err := piece.Read("stool", text)
	if err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, s := range doc.Sizes {
		paths = append(paths, "sizes/"+s.Name)
	}
	if len(paths) < 2 {
		t.Fatal("the starter names too few sizes")
	}
	return paths
}

func create(t testing.TB, s *Store) Piece {
	t.Helper()
	p, err := s.Create(context.Background(), Write{Actor: "anna"}, "stool", stool(t))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// createBoard puts the small document into the shop.
func createBoard(t testing.TB, s *Store) Piece {
	t.Helper()
	p, err := s.Create(context.Background(), Write{Actor: "anna"}, "board", []byte(board))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func edit(actor string, base int64, path, value string) journal.Entry {
	return journal.Entry{Actor: actor, Base: base, Kind: journal.Edit, Path: path, New: value}
}

// write appends one entry that must be taken.
func write(t testing.TB, s *Store, id string, e journal.Entry) journal.Entry {
	t.Helper()
	kept, err := s.Append(context.Background(), id, e)
	if err != nil {
		t.Fatal(err)
	}
	return kept[0]
}

func text(t testing.TB, s *Store, id string) string {
	t.Helper()
	got, _, err := s.Text(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	return string(got)
}

func value(t testing.TB, s *Store, id, path string) string {
	t.Helper()
	v, _, err := piece.ValueAt([]byte(text(t, s, id)), path)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestAPieceIsThereWhenTheShopIsOpenedAgain(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		first := open()
		p := create(t, first)
		path := sizes(t, stool(t))[0]
		e := write(t, first, p.ID, edit("anna", 0, path, "40 in"))

		again := open()
		if got := value(t, again, p.ID, path); got != "40 in" {
			t.Errorf("%s is %q", path, got)
		}
		log, err := again.Log(context.Background(), p.ID, 0)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff([]journal.Entry{e}, log); diff != "" {
			t.Error(diff)
		}
		if err := e.Check(); err != nil {
			t.Error(err)
		}
		byName, err := again.Piece(context.Background(), "stool")
		if err != nil || byName.ID != p.ID || byName.Number != 1 {
			t.Errorf("by name: %+v, %v", byName, err)
		}
	})
}

func TestAnEditKeepsWhatStoodThereBefore(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		path := sizes(t, stool(t))[0]
		old := value(t, s, p.ID, path)
		if e := write(t, s, p.ID, edit("anna", 0, path, "40 in")); e.Old != old || e.Number != 1 {
			t.Errorf("entry %d keeps %q, want %q", e.Number, e.Old, old)
		}
	})
}

func TestOtherPathsMergeAndTheSamePathConflicts(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		one, two := open(), open()
		p := create(t, one)
		paths := sizes(t, stool(t))
		write(t, one, p.ID, edit("anna", 0, paths[0], "40 in"))
		write(t, two, p.ID, edit("ben", 0, paths[1], "20 in"))

		_, err := two.Append(context.Background(), p.ID, edit("ben", 0, paths[0], "41 in"))
		var clash *ConflictError
		if !errors.As(err, &clash) {
			t.Fatalf("got %v", err)
		}
		want := ConflictError{Path: paths[0], Yours: "41 in", Theirs: "40 in", Number: 1, Actor: "anna"}
		if diff := cmp.Diff(want, *clash); diff != "" {
			t.Error(diff)
		}
		if got := value(t, one, p.ID, paths[0]); got != "40 in" {
			t.Errorf("a refused edit was written: %q", got)
		}
		write(t, two, p.ID, edit("ben", 2, paths[0], "41 in")) // seen, and meant
	})
}

func TestOneValueConflictsByWhicheverPath(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		write(t, s, p.ID, edit("anna", 0, "holds/1/count", "4"))
		var clash *ConflictError
		if _, err := s.Append(context.Background(), p.ID, edit("ben", 0, "holds/trays/count", "5")); !errors.As(err, &clash) || clash.Theirs != "4" {
			t.Errorf("got %v", err)
		}
	})
}

func TestAValueTakenBackSinceConflicts(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		paths := sizes(t, stool(t))
		e := write(t, s, p.ID, edit("anna", 0, paths[0], "40 in"))
		write(t, s, p.ID, edit("anna", 1, paths[1], "20 in"))
		second := write(t, s, p.ID, undo("anna", 2, journal.Entry{ID: lastID(t, s, p.ID)}))
		write(t, s, p.ID, undo("anna", 3, e)) // entry 4 takes back entry 1
		var clash *ConflictError
		_, err := s.Append(context.Background(), p.ID, edit("ben", second.Number, paths[0], "41 in"))
		if !errors.As(err, &clash) || clash.Number != 4 || clash.Theirs != e.Old {
			t.Errorf("got %v", err)
		}
	})
}

// lastID returns the id of the last entry of a piece.
func lastID(t testing.TB, s *Store, id string) string {
	t.Helper()
	log, err := s.Log(context.Background(), id, 0)
	if err != nil || len(log) == 0 {
		t.Fatal(len(log), err)
	}
	return log[len(log)-1].ID
}

func TestARepeatedEntryIsHarmless(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		paths := sizes(t, stool(t))
		sent := edit("anna", 0, paths[0], "40 in")
		sent.ID = "01890000-0000-7000-8000-000000000001"
		first := write(t, s, p.ID, sent)
		second := write(t, s, p.ID, sent)
		if diff := cmp.Diff(first, second); diff != "" {
			t.Error(diff)
		}
		sent.New = "41 in"
		var bad *InputError
		if _, err := s.Append(context.Background(), p.ID, sent); !errors.As(err, &bad) || bad.Field != "id" {
			t.Errorf("an id used twice: %v", err)
		}
	})
}

func TestARepeatedCreationMakesOnePiece(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		w := Write{Actor: "anna", ID: "01890000-0000-7000-8000-000000000001"}
		first, err := s.Create(context.Background(), w, "stool", stool(t))
		if err != nil {
			t.Fatal(err)
		}
		second, err := s.Create(context.Background(), w, "stool", stool(t))
		if diff := cmp.Diff(first, second); err != nil || diff != "" {
			t.Error(err, diff)
		}
		ps, err := s.Pieces(context.Background())
		if err != nil || len(ps) != 1 {
			t.Errorf("%d pieces, %v", len(ps), err)
		}
	})
}

func TestEntriesAreWrittenTogetherOrNotAtAll(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		path := sizes(t, stool(t))[0]
		_, err := s.Append(context.Background(), p.ID, edit("anna", 0, path, "40 in"), edit("anna", 1, "sizes/nowhere", "1 in"))
		if err == nil {
			t.Fatal("an edit of nothing was taken")
		}
		if log, err := s.Log(context.Background(), p.ID, 0); err != nil || len(log) != 0 {
			t.Errorf("%d entries, %v", len(log), err)
		}
	})
}

func TestWhatCantBeWrittenIsRefusedWithItsField(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		path := sizes(t, stool(t))[0]
		ctx := context.Background()
		for want, try := range map[string]func() error{
			"actor": func() error { _, err := s.Create(ctx, Write{}, "bench", stool(t)); return err },
			"id":    func() error { _, err := s.Create(ctx, Write{Actor: "a", ID: "7"}, "bench", stool(t)); return err },
			"name":  func() error { _, err := s.Create(ctx, Write{Actor: "a"}, " stool ", stool(t)); return err },
			"new":   func() error { _, err := s.Append(ctx, p.ID, edit("a", 0, path, "1 in\n")); return err },
			"path":  func() error { _, err := s.Append(ctx, p.ID, edit("a", 0, "", "1 in")); return err },
			"kind": func() error {
				_, err := s.Append(ctx, p.ID, journal.Entry{Actor: "a", Kind: "carried"})
				return err
			},
			"layout": func() error {
				_, err := s.Append(ctx, p.ID, journal.Entry{Actor: "a", Kind: journal.Accepted})
				return err
			},
			"layout.answer": func() error {
				e := laid("a", 0, 78)
				e.Layout.Cost = 77
				_, err := s.Append(ctx, p.ID, e)
				return err
			},
			"fact": func() error { _, err := s.Append(ctx, p.ID, journal.Entry{Actor: "a", Kind: journal.Fact}); return err },
			"order": func() error {
				_, err := s.Append(ctx, p.ID, journal.Entry{Actor: "a", Kind: journal.Asked})
				return err
			},
			"at": func() error {
				e := edit("a", 0, path, "1 in")
				e.At = time.Now().Add(time.Hour)
				_, err := s.Append(ctx, p.ID, e)
				return err
			},
			"base": func() error {
				_, err := s.SaveShop(ctx, Write{Actor: "a", Base: 3}, shop.SampleText())
				return err
			},
		} {
			var bad *InputError
			if err := try(); !errors.As(err, &bad) || bad.Field != want {
				t.Errorf("%s: %v", want, err)
			}
		}
		var place *piece.Error
		if _, err := s.Create(ctx, Write{Actor: "a"}, "bench", []byte("piece: [")); !errors.As(err, &place) {
			t.Errorf("a text that is no document: %v", err)
		}
		var missing *NotFoundError
		if _, err := s.Log(ctx, "nowhere", 0); !errors.As(err, &missing) {
			t.Errorf("a log of nothing: %v", err)
		}
		if _, _, err := s.Text(ctx, "nowhere"); !errors.As(err, &missing) {
			t.Errorf("a text of nothing: %v", err)
		}
	})
}

func TestANameIsOneLineThatIsNoID(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		for _, name := range []string{"", " ", "two\nlines", p.ID, strings.Repeat("ä", mostName+1), "\xff"} {
			var bad *InputError
			if _, err := s.Create(context.Background(), Write{Actor: "anna"}, name, stool(t)); !errors.As(err, &bad) || bad.Field != "name" {
				t.Errorf("%q: %v", name, err)
			}
		}
		if _, err := s.Create(context.Background(), Write{Actor: "anna"}, strings.Repeat("ä", mostName), stool(t)); err != nil {
			t.Error(err)
		}
	})
}

func TestAnEntryKeepsTheTimeItHappenedAt(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		e := edit("anna", 0, sizes(t, stool(t))[0], "40 in")
		e.At = time.Date(2026, 5, 4, 9, 0, 0, 1_234_567, time.FixedZone("", 3600))
		if kept := write(t, s, p.ID, e); !kept.At.Equal(time.Date(2026, 5, 4, 8, 0, 0, 1_000_000, time.UTC)) {
			t.Errorf("kept %s", kept.At)
		}
	})
}

func TestTheShopIsSavedOnTheLastThatWasSeen(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		ctx := context.Background()
		if text, number, err := s.Shop(ctx); err != nil || number != 0 || len(text) != 0 {
			t.Errorf("an empty shop: %q, %d, %v", text, number, err)
		}
		w := Write{Actor: "anna", ID: "01890000-0000-7000-8000-000000000001"}
		for range 2 { // the repeat is harmless
			if n, err := s.SaveShop(ctx, w, shop.SampleText()); err != nil || n != 1 {
				t.Fatalf("write %d, %v", n, err)
			}
		}
		var clash *ConflictError
		if _, err := s.SaveShop(ctx, Write{Actor: "ben"}, shop.SampleText()); !errors.As(err, &clash) || clash.Actor != "anna" {
			t.Errorf("got %v", err)
		}
		var bad *shop.Error
		if _, err := s.SaveShop(ctx, Write{Actor: "ben", Base: 1}, []byte("prices: 7\n")); !errors.As(err, &bad) {
			t.Errorf("a shop that can't be read: %v", err)
		}
		if text, number, err := s.Shop(ctx); err != nil || number != 1 || string(text) != string(shop.SampleText()) {
			t.Errorf("write %d, %v", number, err)
		}
	})
}

func TestTwoWritersAtOnceLoseNothing(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		p := create(t, open())
		paths := sizes(t, stool(t))
		const writes = 20
		var done sync.WaitGroup
		for k, s := range []*Store{open(), open()} {
			done.Add(1)
			go func() {
				defer done.Done()
				for i := range writes {
					// Each has a path of its own, so any base merges.
					if _, err := s.Append(context.Background(), p.ID, journal.Entry{
						Actor: fmt.Sprint("writer ", k), Kind: journal.Edit,
						Base: lastOf(s, p.ID), Path: paths[k], New: fmt.Sprintf("%d in", 20+i),
					}); err != nil {
						t.Error(err)
					}
				}
			}()
		}
		done.Wait()
		log, err := open().Log(context.Background(), p.ID, 0)
		if err != nil || len(log) != 2*writes {
			t.Fatalf("%d entries, %v", len(log), err)
		}
		for i, e := range log {
			if e.Number != int64(i+1) {
				t.Errorf("entry %d stands at place %d", e.Number, i+1)
			}
		}
	})
}

func lastOf(s *Store, id string) int64 {
	_, n, err := s.Text(context.Background(), id)
	if err != nil {
		return -1
	}
	return n
}

func TestPiecesChangedLastComeFirst(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		at := time.Date(2026, 5, 4, 9, 0, 0, 0, time.UTC)
		s.now = func() time.Time { at = at.Add(time.Second); return at }
		old := create(t, s)
		if _, err := s.Create(context.Background(), Write{Actor: "anna"}, "bench", stool(t)); err != nil {
			t.Fatal(err)
		}
		write(t, s, old.ID, edit("anna", 0, sizes(t, stool(t))[0], "40 in"))
		ps, err := s.Pieces(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, p := range ps {
			names = append(names, p.Name)
		}
		if got := strings.Join(names, ", "); got != "stool, bench" {
			t.Error(got)
		}
	})
}
