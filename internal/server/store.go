package server

import (
	"context"

	"rodwright/internal/store"
	"rodwright/journal"
)

// Store is what the server asks of a shop's database; *store.Store has it. Errors are those of package store.
type Store interface {
	// Pieces returns the pieces of the shop, those changed last first.
	Pieces(ctx context.Context) ([]store.Piece, error)
	// Piece returns the piece with the given id or name.
	Piece(ctx context.Context, idOrName string) (store.Piece, error)
	// Text returns the document of the piece with the given id, and the number of its last entry.
	Text(ctx context.Context, id string) (text []byte, number int64, err error)
	// Start returns the document that the piece with the given id began with.
	Start(ctx context.Context, id string) ([]byte, error)
	// Append writes entries to the log of a piece, all or none, and returns them as they are kept.
	Append(ctx context.Context, id string, wanted ...journal.Entry) ([]journal.Entry, error)
	// Log returns the entries of a piece after the given number, in order.
	Log(ctx context.Context, id string, after int64) ([]journal.Entry, error)
	// Shop returns the shop's own settings and the number of their last write, 0 when there are none.
	Shop(ctx context.Context) (text []byte, number int64, err error)
	// Changes tells of every write from now on, until stop is called or the database is closed.
	Changes() (changes <-chan store.Change, stop func())
}
