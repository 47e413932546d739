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
	"unicode/utf8"

	"github.com/google/uuid"
)

// Kind says what an entry is.
type Kind string

// The kinds that are written and replayed.
const (
	Edit Kind = "edit" // the value at Path becomes New
	Undo Kind = "undo" // the entry named by Names is taken back
)

// The kinds of the log that this program knows by name and refuses: what they say can't be heard yet, and
// passing over it would build another piece than was meant.
const (
	Fact      Kind = "fact"      // something was measured or made
	Accepted  Kind = "accepted"  // a layout was accepted
	Answer    Kind = "answer"    // the client answered
	Withdrawn Kind = "withdrawn" // a fact was withdrawn
)

// check reports a kind that can't be replayed.
func (k Kind) check() error {
	switch k {
	case Edit, Undo:
		return nil
	case Fact, Accepted, Answer, Withdrawn:
		return &EntryError{"kind", fmt.Sprintf("is %s, which this program can't read: take a newer one", k)}
	default:
		return &EntryError{"kind", fmt.Sprintf("is %q: it must be edit or undo", string(k))}
	}
}

// The greatest sizes of what an entry holds, in letters, far above what anybody types.
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

// Check reports the first value of the entry that can't be, as an *EntryError.
func (e Entry) Check() error {
	if err := e.checkWriter(); err != nil {
		return err
	}
	if err := e.Kind.check(); err != nil {
		return err
	}
	if e.Kind == Edit {
		return e.checkEdit()
	}
	return e.checkUndo()
}

func (e Entry) checkWriter() error {
	if !isID(e.ID) {
		return &EntryError{"id", "must be a UUID of version 7 (RFC 9562) in small letters"}
	}
	if err := CheckActor(e.Actor); err != nil {
		return err
	}
	switch {
	case e.Number < 1:
		return &EntryError{"number", "must be 1 or more"}
	case e.Base < 0 || e.Base >= e.Number:
		return &EntryError{"base", "must be a number before the entry's own"}
	case e.At.Location() != time.UTC || e.At.Nanosecond()%int(time.Millisecond) != 0:
		return &EntryError{"at", "must be a time in whole milliseconds, in UTC, which is written with a Z"}
	case e.At.Year() < 1970 || e.At.Year() > 9999:
		return &EntryError{"at", "must be a time from the year 1970 to 9999"}
	}
	return nil
}

// CheckActor reports a name that nobody can write under, as an *EntryError.
func CheckActor(name string) error {
	if strings.TrimSpace(name) == "" || !oneLine(name, MostActor) {
		return &EntryError{"actor", fmt.Sprintf("must say who writes, in one line of at most %d letters", MostActor)}
	}
	return nil
}

func (e Entry) checkEdit() error {
	switch {
	case e.Path == "" || !oneLine(e.Path, MostPath):
		return &EntryError{"path", fmt.Sprintf("must name a value of the document, in one line of at most %d letters", MostPath)}
	case e.Names != "":
		return &EntryError{"names", "belongs to an undo"}
	case !oneLine(e.New, MostValue):
		return &EntryError{"new", fmt.Sprintf("must be one line of at most %d letters", MostValue)}
	case !utf8.ValidString(e.Old) || utf8.RuneCountInString(e.Old) > MostValue:
		return &EntryError{"old", fmt.Sprintf("must be a text of at most %d letters", MostValue)}
	}
	return nil
}

func (e Entry) checkUndo() error {
	switch {
	case !isID(e.Names):
		return &EntryError{"names", "must be the id of the entry to take back"}
	case e.Names == e.ID:
		return &EntryError{"names", "is the entry's own id: an undo takes back an earlier entry"}
	case e.Path != "" || e.Old != "" || e.New != "":
		return &EntryError{"path", "belongs to an edit: an undo names an entry and nothing else"}
	}
	return nil
}

// isID reports whether the text is an id as it is kept: there is one way to write it, so that ids are compared
// as texts.
func isID(text string) bool {
	id, err := uuid.Parse(text)
	return err == nil && id.Version() == 7 && id.String() == text
}

// oneLine reports whether the text is one line of at most that many letters, without characters that don't
// print.
func oneLine(text string, most int) bool {
	unprintable := func(r rune) bool { return r < ' ' || r == 0x7F }
	return utf8.ValidString(text) && utf8.RuneCountInString(text) <= most && !strings.ContainsFunc(text, unprintable)
}

// Same reports whether two entries say the same thing, whoever numbered and dated them: a repeat of an entry
// that was sent twice.
func (e Entry) Same(o Entry) bool {
	return e.ID == o.ID && e.Actor == o.Actor && e.Kind == o.Kind && e.Path == o.Path && e.New == o.New && e.Names == o.Names
}
