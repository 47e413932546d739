package store

import (
	"context"
	"fmt"
	"path/filepath"
	"testing"
)

func BenchmarkAppend(b *testing.B) {
	s := openFile(b, filepath.Join(b.TempDir(), "shop.db"))
	p := create(b, s)
	path := sizes(b, stool(b))[0]
	for i := int64(0); b.Loop(); i++ {
		write(b, s, p.ID, edit("anna", i, path, fmt.Sprintf("%d in", 20+i%20)))
	}
}

// BenchmarkText reads a piece of 1 000 entries as it was kept, and by replay.
func BenchmarkText(b *testing.B) {
	s := openFile(b, filepath.Join(b.TempDir(), "shop.db"))
	p := create(b, s)
	path := sizes(b, stool(b))[0]
	for i := range int64(1000) {
		write(b, s, p.ID, edit("anna", i, path, fmt.Sprintf("%d in", 20+i%20)))
	}
	for _, how := range []string{"kept", "replayed"} {
		b.Run(how, func(b *testing.B) {
			if how == "replayed" {
				if _, err := s.write.ExecContext(context.Background(), `delete from standing`); err != nil {
					b.Fatal(err)
				}
			}
			for b.Loop() {
				text(b, s, p.ID)
			}
		})
	}
}
