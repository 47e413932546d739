// Package journal holds the one log of a piece: numbered entries of what was decided and done, and their
// replay into the document as it stands.
//
// The words: the start is the text a piece began with; an edit changes the value at one path of it; an undo
// takes back the entry it names; an entry stands while no standing undo names it. The base of an entry is the
// number its writer had seen when it was written. Begin with Replay.
//
// The package is pure: it reads no clock and keeps nothing. Where entries are stored is package store's to say.
package journal

import (
	"fmt"
	"strings"
	"time"

	"github.com/google/uuid"
)

// Kind says what an entry is.
type Kind string

// The kinds.
const (
	Edit Kind = "edit" // the value at Path becomes New
	Undo Kind = "undo" // the entry named by Names is taken back
)

// The greatest sizes of what an entry holds, far above what anybody types.
const (
	MostPath  = 1000
	MostValue = 10_000
	MostActor = 100
)

// Entry is one line of a piece's log.
type Entry struct {
	Number int64     `json:"number"` // from 1, without a gap
	ID     string    `json:"id"`     // UUIDv7, made by who writes it, so that a repeat is known
	Actor  string    `json:"actor"`
	Base   int64     `json:"base"` // the last number its writer had seen
	At     time.Time `json:"at"`   // UTC, whole milliseconds
	Kind   Kind      `json:"kind"`
	Path   string    `json:"path,omitempty"`  // of an edit, as in piece.Edit
	Old    string    `json:"old,omitempty"`   // of an edit: what stood there
	New    string    `json:"new,omitempty"`   // of an edit: what stands there now
	Names  string    `json:"names,omitempty"` // of an undo: the id of the entry it takes back
}

// EntryError says what of an entry can't be, and what would be right.
type EntryError struct {
	Field string // as in JSON
	Why   string
}

// Error names the field and what would be right.
func (e *EntryError) Error() string { return "entry: " + e.Field + " " + e.Why }

// Check reports the first value of the entry that can't be.
func (e Entry) Check() error {
	if err := e.checkWriter(); err != nil {
		return err
	}
	switch e.Kind {
	case Edit:
		return e.checkEdit()
	case Undo:
		if _, err := uuid.Parse(e.Names); err != nil {
			return &EntryError{"names", "must be the id of the entry to take back"}
		}
		if e.Path != "" || e.Old != "" || e.New != "" {
			return &EntryError{"path", "belongs to an edit: an undo names an entry and nothing else"}
		}
		return nil
	default:
		return &EntryError{"kind", fmt.Sprintf("is %q: it must be edit or undo", e.Kind)}
	}
}

func (e Entry) checkWriter() error {
	id, err := uuid.Parse(e.ID)
	switch {
	case err != nil || id.Version() != 7 || id.String() != e.ID:
		return &EntryError{"id", "must be a UUID of version 7 (RFC 9562) in small letters"}
	case strings.TrimSpace(e.Actor) == "" || len(e.Actor) > MostActor:
		return &EntryError{"actor", fmt.Sprintf("must say who writes, in at most %d letters", MostActor)}
	case e.Number < 1:
		return &EntryError{"number", "must be 1 or more"}
	case e.Base < 0 || e.Base >= e.Number:
		return &EntryError{"base", "must be a number before the entry's own"}
	case e.At.IsZero() || e.At.Nanosecond()%int(time.Millisecond) != 0:
		return &EntryError{"at", "must be a time in whole milliseconds"}
	}
	return nil
}

func (e Entry) checkEdit() error {
	switch {
	case e.Path == "" || len(e.Path) > MostPath:
		return &EntryError{"path", fmt.Sprintf("must name a value of the document, in at most %d letters", MostPath)}
	case e.Names != "":
		return &EntryError{"names", "belongs to an undo"}
	case len(e.New) > MostValue || len(e.Old) > MostValue:
		return &EntryError{"new", fmt.Sprintf("must be at most %d letters", MostValue)}
	}
	return nil
}

// Same reports whether two entries say the same thing, whoever numbered and dated them: a repeat of an entry
// that was sent twice.
func (e Entry) Same(o Entry) bool {
	return e.ID == o.ID && e.Actor == o.Actor && e.Kind == o.Kind && e.Path == o.Path && e.New == o.New && e.Names == o.Names
}
