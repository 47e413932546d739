package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// others returns a file of each sort that is no shop.
func others(t *testing.T) map[string]string {
	t.Helper()
	dir := t.TempDir()
	files := map[string]string{"a letter": filepath.Join(dir, "letter.txt")}
	if err := os.WriteFile(files["a letter"], []byte(strings.Repeat("Dear client, ", 100)), 0o600); err != nil {
		t.Fatal(err)
	}
	for name, making := range map[string]string{
		"songs":            "create table songs (title text)",
		"songs with an id": "pragma application_id = 7; create table songs (title text)",
		"songs ahead":      "pragma journal_mode = wal; create table songs (title text)",
	} {
		files[name] = filepath.Join(dir, name+".db")
		db, err := connect(files[name], 1, nil, "")
		if err != nil {
			t.Fatal(err)
		}
		if _, err := db.Exec(making); err != nil {
			t.Fatal(err)
		}
		if err := db.Close(); err != nil {
			t.Fatal(err)
		}
	}
	return files
}

func TestAFileThatIsNoShopIsLeftAsItIs(t *testing.T) {
	for name, file := range others(t) {
		before, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var foreign *ForeignError
		if _, err := Open(context.Background(), file); !errors.As(err, &foreign) || foreign.File != file {
			t.Errorf("%s: %v", name, err)
		}
		if after, err := os.ReadFile(file); err != nil || string(after) != string(before) {
			t.Errorf("%s was changed (%v)", name, err)
		}
	}
	var foreign *ForeignError
	if _, err := Open(context.Background(), t.TempDir()); !errors.As(err, &foreign) {
		t.Errorf("a folder: %v", err)
	}
}

func TestAShopIsMadeInAFolderThatIsThere(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "attic")
	_, err := Open(context.Background(), filepath.Join(folder, "shop.db"))
	if !errors.Is(err, fs.ErrNotExist) || !strings.Contains(err.Error(), "there must be a folder "+folder) {
		t.Errorf("got %v", err)
	}
}

func TestAStartThatWasCutShortIsGoneOnWith(t *testing.T) {
	empty := filepath.Join(t.TempDir(), "empty.db")
	if err := os.WriteFile(empty, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	bare := filepath.Join(t.TempDir(), "bare.db")
	db, err := connect(bare, 1, pragmas, "")
	if err != nil {
		t.Fatal(err)
	}
	if err := db.Ping(); err != nil {
		t.Fatal(err)
	}
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{empty, bare} {
		create(t, openFile(t, file))
		ps, err := openFile(t, file).Pieces(context.Background())
		if err != nil || len(ps) != 1 {
			t.Errorf("%s: %d pieces, %v", filepath.Base(file), len(ps), err)
		}
	}
}

func TestAFileMayHaveAnyName(t *testing.T) {
	file := filepath.Join(t.TempDir(), "anna's shop ?mode=ro#50%25 ä.db")
	create(t, openFile(t, file))
	if at, err := os.Stat(file); err != nil || at.Size() == 0 {
		t.Errorf("the shop went elsewhere: %v", err)
	}
}
