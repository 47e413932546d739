package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"rodwright/journal"
)

// formsUpTo returns the first n forms of this program, and all when n is 0.
func formsUpTo(t *testing.T, n int) fstest.MapFS {
	t.Helper()
	names, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		t.Fatal(err)
	}
	if n == 0 {
		n = len(names)
	}
	forms := fstest.MapFS{}
	for _, name := range names[:n] { // in the order of their names, which is theirs
		text, err := fs.ReadFile(migrations, name)
		if err != nil {
			t.Fatal(err)
		}
		forms[filepath.Base(name)] = &fstest.MapFile{Data: text}
	}
	return forms
}

// later returns the forms of this program and one more.
func later(t *testing.T, statement string) fstest.MapFS {
	t.Helper()
	forms := formsUpTo(t, 0)
	forms["00900_later.sql"] = &fstest.MapFile{Data: []byte("-- +goose Up\n" + statement + ";\n")}
	return forms
}

// withForms opens a shop of the given forms, runs what and closes it.
func withForms(t *testing.T, file string, forms fs.FS, what func(s *Store)) {
	t.Helper()
	s, err := open(context.Background(), file, forms, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	what(s)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
}

// firstForm fills a shop of the first form: a piece, an edit, and the text that was kept after it.
func firstForm(t *testing.T, file string) (id, text string) {
	t.Helper()
	id = "01890000-0000-7000-8000-000000000001"
	path := sizes(t, stool(t))[0]
	e := journal.Entry{Number: 1, Kind: journal.Edit, ID: id, Path: path, New: "40 in"}
	edited, err := journal.Replay(stool(t), []journal.Entry{e})
	if err != nil {
		t.Fatal(err)
	}
	withForms(t, file, formsUpTo(t, 1), func(s *Store) {
		for _, row := range []struct {
			into   string
			values []any
		}{
			{
				`insert into pieces (id, name, start_text, entry, actor, created) values ($1, $2, $3, $4, $5, $6)`,
				[]any{id, "stool", string(stool(t)), "01890000-0000-7000-8000-000000000002", "anna", 1_777_885_200_000},
			},
			{
				`insert into entries (piece, number, id, actor, base, written, kind, path, old_value, new_value, names)
				values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)`,
				[]any{id, 1, "01890000-0000-7000-8000-000000000003", "anna", 0, 1_777_885_260_000, "edit", path, "42 in", "40 in", ""},
			},
			{`insert into standing (piece, number, body) values ($1, $2, $3)`, []any{id, 1, string(edited)}},
		} {
			if _, err := s.write.Exec(row.into, row.values...); err != nil {
				t.Fatal(err)
			}
		}
	})
	return id, string(edited)
}

func TestAShopOfTheFirstFormKeepsWhatItHoldsAndLeavesACopy(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "shop.db")
	id, want := firstForm(t, file)
	s := openFile(t, file)
	if got := text(t, s, id); got != want {
		t.Errorf("the text is\n%s\nwant\n%s", got, want)
	}
	log, err := s.Log(context.Background(), id, 0)
	if err != nil || len(log) != 1 {
		t.Fatalf("%d entries, %v", len(log), err)
	}
	write(t, s, id, undo("anna", 1, log[0]))
	if got := text(t, s, id); got != string(stool(t)) {
		t.Errorf("after an undo:\n%s", got)
	}
	copied := filepath.Join(dir, fmt.Sprintf("shop.before-%d.db", len(formsUpTo(t, 0))))
	withForms(t, copied, formsUpTo(t, 1), func(old *Store) { // refused if it is not of that form
		var body string
		if err := old.read.QueryRow(`select body from standing where piece = $1`, id).Scan(&body); err != nil || body != want {
			t.Errorf("the copy holds\n%s\n%v", body, err)
		}
	})
}

func TestAShopGoesBackAFormAndForthAgain(t *testing.T) {
	file := filepath.Join(t.TempDir(), "shop.db")
	id, want := firstForm(t, file)
	s := openFile(t, file)
	for _, form := range []string{"00003_facts.sql", "00002_snapshots.sql"} {
		down := strings.SplitAfter(string(formsUpTo(t, 0)[form].Data), "-- +goose Down\n")[1]
		if _, err := s.write.Exec(down); err != nil {
			t.Fatal(err)
		}
	}
	var body string
	if err := s.read.QueryRow(`select body from standing where piece = $1 and number = 1`, id).Scan(&body); err != nil || body != want {
		t.Errorf("back in the first form:\n%s\n%v", body, err)
	}
}

func TestANewShopNeedsNoCopy(t *testing.T) {
	dir := t.TempDir()
	openFile(t, filepath.Join(dir, "shop.db"))
	openFile(t, filepath.Join(dir, "shop.db"))
	if found, err := filepath.Glob(filepath.Join(dir, "*before*")); err != nil || len(found) > 0 {
		t.Errorf("%v, %v", found, err)
	}
}

func TestACopyThatIsThereAlreadyIsKept(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "shop.db")
	withForms(t, file, formsUpTo(t, 0), func(s *Store) { create(t, s) })
	earlier := filepath.Join(dir, "shop.before-900.db")
	if err := os.WriteFile(earlier, []byte("of an earlier day"), 0o600); err != nil {
		t.Fatal(err)
	}
	withForms(t, file, later(t, "alter table pieces add column note text not null default ''"), func(*Store) {})
	if kept, err := os.ReadFile(earlier); err != nil || string(kept) != "of an earlier day" {
		t.Errorf("the earlier copy holds %d bytes, %v", len(kept), err)
	}
	if _, err := openFile(t, filepath.Join(dir, "shop.before-900-2.db")).Piece(context.Background(), "stool"); err != nil {
		t.Errorf("in the copy: %v", err)
	}
}

func TestAnOlderProgramRefusesANewerShop(t *testing.T) {
	file := filepath.Join(t.TempDir(), "shop.db")
	withForms(t, file, later(t, "alter table pieces add column note text not null default ''"), func(*Store) {})
	var newer *NewerError
	if _, err := Open(context.Background(), file); !errors.As(err, &newer) || newer.Version != 900 || newer.File != file {
		t.Errorf("got %v", err)
	}
}

func TestAChangeOfFormThatFailsLeavesTheShopAsItWas(t *testing.T) {
	file := filepath.Join(t.TempDir(), "shop.db")
	withForms(t, file, formsUpTo(t, 0), func(s *Store) { create(t, s) })
	broken := later(t, "delete from pieces;\ninsert into nowhere values (1)")
	if s, err := open(context.Background(), file, broken, time.Now); err == nil {
		t.Error("a broken change of form was taken", s.Close())
	}
	if _, err := openFile(t, file).Piece(context.Background(), "stool"); err != nil {
		t.Error(err)
	}
}

func TestAShopMayBeOpenedForTheFirstTimeByManyAtOnce(t *testing.T) {
	for range 5 {
		file := filepath.Join(t.TempDir(), "shop.db")
		var done sync.WaitGroup
		for range 4 {
			done.Go(func() {
				s, err := Open(context.Background(), file)
				if err != nil {
					t.Error(err)
					return
				}
				if err := s.Close(); err != nil {
					t.Error(err)
				}
			})
		}
		done.Wait()
	}
}
