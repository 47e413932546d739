package store

import (
	"context"
	"database/sql"
	"path/filepath"
	"testing"
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
