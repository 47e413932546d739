package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
)

func TestABackupIsAShopOfItsOwn(t *testing.T) {
	dir := t.TempDir()
	s := openFile(t, filepath.Join(dir, "shop.db"))
	p := create(t, s)
	to := filepath.Join(dir, "copy.db")
	if err := s.Backup(context.Background(), to); err != nil {
		t.Fatal(err)
	}
	copied := openFile(t, to)
	write(t, copied, p.ID, edit("anna", 0, sizes(t, stool(t))[0], "40 in"))
	if got := text(t, s, p.ID); got != string(stool(t)) {
		t.Errorf("a write to the copy reached the shop:\n%s", got)
	}
}

func TestABackupIsNotWrittenOverAnythingAndLeavesNothingElse(t *testing.T) {
	s := openFile(t, filepath.Join(t.TempDir(), "shop.db"))
	dir := t.TempDir()
	to := filepath.Join(dir, "copy.db")
	if err := s.Backup(context.Background(), to); err != nil {
		t.Fatal(err)
	}
	if err := s.Backup(context.Background(), to); !errors.Is(err, fs.ErrExist) {
		t.Errorf("a backup over another: %v", err)
	}
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	if err := s.Backup(gone, filepath.Join(dir, "cancelled.db")); !errors.Is(err, context.Canceled) {
		t.Errorf("a backup that was broken off: %v", err)
	}
	if err := s.Backup(context.Background(), filepath.Join(dir, "nowhere", "copy.db")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a backup into no folder: %v", err)
	}
	files, err := os.ReadDir(dir)
	if err != nil || len(files) != 1 {
		t.Errorf("beside the copy stand %v, %v", files, err)
	}
}

// A copy gets its name at the end; another program may have taken it meanwhile.
func TestANameTakenMeanwhileIsLeft(t *testing.T) {
	dir := t.TempDir()
	part, to := filepath.Join(dir, "part"), filepath.Join(dir, "copy.db")
	for _, name := range []string{part, to} {
		if err := os.WriteFile(name, []byte(name), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := appear(part, to); !errors.Is(err, fs.ErrExist) {
		t.Errorf("got %v", err)
	}
	if kept, err := os.ReadFile(to); err != nil || string(kept) != to {
		t.Errorf("it holds %q, %v", kept, err)
	}
}
