package store

import (
	"context"
	"fmt"
	"path/filepath"
	"testing"

	"rodwright/journal"
)

// worked returns a shop with one piece of that many edits.
func worked(b *testing.B, edits int64) (s *Store, id, path string) {
	b.Helper()
	s = openFile(b, filepath.Join(b.TempDir(), "shop.db"))
	id, path = create(b, s).ID, sizes(b, stool(b))[0]
	for n := int64(0); n < edits; {
		var batch []journal.Entry
		for ; n < edits && len(batch) < every; n++ {
			batch = append(batch, edit("anna", n, path, fmt.Sprintf("%d in", 20+n%20)))
		}
		if _, err := s.Append(context.Background(), id, batch...); err != nil {
			b.Fatal(err)
		}
	}
	return s, id, path
}

// BenchmarkAppend writes one edit to a piece that has few entries, and to one of 1 000.
func BenchmarkAppend(b *testing.B) {
	for _, edits := range []int64{0, 1000} {
		b.Run(fmt.Sprint(edits), func(b *testing.B) {
			s, id, path := worked(b, edits)
			for n := edits; b.Loop(); n++ {
				write(b, s, id, edit("anna", n, path, fmt.Sprintf("%d in", 20+n%20)))
			}
		})
	}
}

// BenchmarkAppendFact tells of a part of a piece that has few entries, and of one of 1 000 facts.
func BenchmarkAppendFact(b *testing.B) {
	for _, facts := range []int{1, 1000} {
		b.Run(fmt.Sprint(facts), func(b *testing.B) {
			s := openFile(b, filepath.Join(b.TempDir(), "shop.db"))
			id := create(b, s).ID
			batch := make([]journal.Entry, facts)
			for i := range batch {
				batch[i] = fact("anna", 0, sized(""))
			}
			kept, err := s.Append(context.Background(), id, batch...)
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				write(b, s, id, fact("anna", 0, meant(kept[0].ID, "shelf")))
			}
		})
	}
}

// BenchmarkUndo takes the last edit of a piece of 1 000 entries back and makes it again.
func BenchmarkUndo(b *testing.B) {
	const edits = 1000
	s, id, _ := worked(b, edits)
	named := journal.Entry{ID: lastID(b, s, id)}
	for n := int64(edits); b.Loop(); n += 2 {
		back := write(b, s, id, undo("anna", n, named))
		write(b, s, id, undo("anna", n+1, back))
	}
}

// BenchmarkText reads a piece of 1 000 entries as it was kept, and by replay from the start.
func BenchmarkText(b *testing.B) {
	s, id, _ := worked(b, 1000)
	for _, how := range []string{"kept", "replayed"} {
		b.Run(how, func(b *testing.B) {
			if how == "replayed" {
				if _, err := s.write.ExecContext(context.Background(), `delete from snapshots`); err != nil {
					b.Fatal(err)
				}
			}
			for b.Loop() {
				text(b, s, id)
			}
		})
	}
}
