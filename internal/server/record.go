package server

import (
	"context"

	"rodwright/journal"
)

// recordKey names what the log of a piece says up to an entry.
type recordKey struct {
	piece  string
	number int64
}

// told is what was made, bought and measured of a piece, and which layouts were accepted; the record is nil where nothing was.
type told struct {
	key    recordKey
	record *journal.Record
}

// told returns what the log of a piece says up to an entry of what was made of it.
func (s *Server) told(ctx context.Context, id string, number int64) (told, error) {
	if number == 0 {
		return told{}, nil
	}
	key := recordKey{id, number}
	rec, ok := s.records.kept(key)
	if !ok {
		entries, err := s.store.Log(ctx, id, 0)
		if err != nil {
			return told{}, err
		}
		fresh := journal.Fold(entries[:min(number, int64(len(entries)))])
		rec = s.records.get(key, func() *journal.Record { return fresh })
	}
	if !rec.Tells() {
		return told{}, nil
	}
	return told{key, rec}, nil
}
