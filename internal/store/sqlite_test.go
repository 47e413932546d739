package store

import (
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"time"
)

func openFile(t testing.TB, file string) *Store {
	t.Helper()
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

// The numbers of synchronous are SQLite's, "Pragma statements supported by SQLite", PRAGMA synchronous: FULL (2).
func TestEveryConnectionWritesAheadAndSynchronisesInFull(t *testing.T) {
	s := openFile(t, filepath.Join(t.TempDir(), "shop.db"))
	for name, pool := range map[string]*sql.DB{"write": s.write, "read": s.read} {
		var held []*sql.Conn // all at once, so that each is another connection
		for range pool.Stats().MaxOpenConnections {
			c, err := pool.Conn(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			held = append(held, c)
			for pragma, want := range map[string]string{"journal_mode": "wal", "synchronous": "2", "foreign_keys": "1", "busy_timeout": "10000"} {
				var got string
				if err := c.QueryRowContext(context.Background(), "pragma "+pragma).Scan(&got); err != nil || got != want {
					t.Errorf("%s connection %d: %s is %q, want %q (%v)", name, len(held), pragma, got, want, err)
				}
			}
		}
		for _, c := range held {
			if err := c.Close(); err != nil {
				t.Error(err)
			}
		}
	}
}

func TestReadersCantWrite(t *testing.T) {
	s := openFile(t, filepath.Join(t.TempDir(), "shop.db"))
	if _, err := s.read.Exec(`delete from pieces`); err == nil {
		t.Error("a reading connection wrote")
	}
}

func TestAFileThatIsNoShopIsLeftAsItIs(t *testing.T) {
	other := filepath.Join(t.TempDir(), "other.db")
	db, err := connect(other, 1, "")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.Exec(`create table songs (title text)`); err != nil {
		t.Fatal(err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	letter := filepath.Join(t.TempDir(), "letter.txt")
	if err := os.WriteFile(letter, []byte(strings.Repeat("Dear client, ", 100)), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{other, letter} {
		before, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var foreign *ForeignError
		if _, err := Open(context.Background(), file); !errors.As(err, &foreign) {
			t.Errorf("%s: %v", filepath.Base(file), err)
		}
		if after, err := os.ReadFile(file); err != nil || string(after) != string(before) {
			t.Errorf("%s was changed (%v)", filepath.Base(file), err)
		}
	}
}

// later returns the forms of this program and one more.
func later(t *testing.T, statement string) fstest.MapFS {
	t.Helper()
	forms := fstest.MapFS{}
	names, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		text, err := fs.ReadFile(migrations, name)
		if err != nil {
			t.Fatal(err)
		}
		forms[filepath.Base(name)] = &fstest.MapFile{Data: text}
	}
	forms["00900_later.sql"] = &fstest.MapFile{Data: []byte("-- +goose Up\n" + statement + ";\n")}
	return forms
}

func TestAnOlderShopIsBroughtUpToDateAfterACopyWasMade(t *testing.T) {
	file := filepath.Join(t.TempDir(), "shop.db")
	old, err := Open(context.Background(), file)
	if err != nil {
		t.Fatal(err)
	}
	p := create(t, old)
	if err := old.Close(); err != nil {
		t.Fatal(err)
	}
	s, err := open(context.Background(), file, later(t, "alter table pieces add column note text not null default ''"), time.Now)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Piece(context.Background(), p.ID); err != nil {
		t.Errorf("after the change of form: %v", err)
	}
	if _, err := s.write.Exec(`update pieces set note = 'new' where id = $1`, p.ID); err != nil {
		t.Errorf("the new form is not there: %v", err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	copied := openFile(t, file+".before-900")
	if _, err := copied.Piece(context.Background(), p.ID); err != nil {
		t.Errorf("in the copy: %v", err)
	}
	var newer *NewerError
	if _, err := Open(context.Background(), file); !errors.As(err, &newer) {
		t.Errorf("an older program opened a newer shop: %v", err)
	}
}

func TestAChangeOfFormThatFailsLeavesTheShopAsItWas(t *testing.T) {
	file := filepath.Join(t.TempDir(), "shop.db")
	old, err := Open(context.Background(), file)
	if err != nil {
		t.Fatal(err)
	}
	p := create(t, old)
	if err := old.Close(); err != nil {
		t.Fatal(err)
	}
	broken := later(t, "delete from pieces;\ninsert into nowhere values (1)")
	if s, err := open(context.Background(), file, broken, time.Now); err == nil {
		t.Error("a broken change of form was taken", s.Close())
	}
	if _, err := openFile(t, file).Piece(context.Background(), p.ID); err != nil {
		t.Error(err)
	}
}

func TestABackupIsAShopOfItsOwn(t *testing.T) {
	dir := t.TempDir()
	s := openFile(t, filepath.Join(dir, "shop.db"))
	p := create(t, s)
	to := filepath.Join(dir, "copy.db")
	if err := s.Backup(context.Background(), to); err != nil {
		t.Fatal(err)
	}
	if got, want := text(t, openFile(t, to), p.ID), text(t, s, p.ID); got != want {
		t.Error("the copy holds another text")
	}
	if err := s.Backup(context.Background(), to); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a backup over another: %v", err)
	}
}

// statements returns the text of every SQL statement in the sources of this package, by file.
func statements(t *testing.T) map[string][]string {
	t.Helper()
	quoted := regexp.MustCompile("`((?:select|insert|update|delete)[^`]*)`")
	found := map[string][]string{}
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range quoted.FindAllStringSubmatch(string(text), -1) {
			found[file] = append(found[file], m[1])
		}
	}
	forms, err := fs.Glob(migrations, "migrations/*.sql")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range forms {
		text, err := fs.ReadFile(migrations, file)
		if err != nil {
			t.Fatal(err)
		}
		found[file] = append(found[file], string(text))
	}
	return found
}

// PostgreSQL numbers parameters by $n; this driver binds them in the order of first use. Both agree where the
// first uses ascend.
func TestStatementsAreReadByBothDatabases(t *testing.T) {
	placeholder := regexp.MustCompile(`\$(\d+)`)
	foreign := regexp.MustCompile(`(?i)autoincrement|\bstrict\b|datetime\(|\binteger\b|\breal\b|\bblob\b|insert or|rowid|ifnull|\bpragma\b|\?`)
	count := 0
	for file, texts := range statements(t) {
		for _, text := range texts {
			count++
			most := 0
			for _, m := range placeholder.FindAllStringSubmatch(text, -1) {
				n, err := strconv.Atoi(m[1])
				if err != nil || n > most+1 {
					t.Errorf("%s: $%s before $%d in %q", file, m[1], most+1, text)
				}
				most = max(most, n)
			}
			if word := foreign.FindString(text); word != "" {
				t.Errorf("%s: %q is not read by both in %q", file, word, text)
			}
		}
	}
	if count < 10 {
		t.Errorf("only %d statements found", count)
	}
}
