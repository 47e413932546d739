// Package journal holds the one log of a piece: numbered entries of what was decided and done, and their
// replay into the document as it stands.
//
// The words: the start is the text a piece began with; an edit changes the value at one path of it; an undo
// takes back the entry it names; a fact is withdrawn, never undone; an accepted layout says how stock is to be cut; an
// entry stands while nothing that stands takes it back. The base of an entry is the number its writer had seen when it was written. A thing is a part that was
// made, as it is now. Begin with Replay for the document, and with Fold for what was done;
// Say reads a fact as a maker writes it, and Words shows the log.
//
// The package is pure: it reads no clock and keeps nothing. Where entries are stored is package store's to say.
package journal

import (
	"encoding/json"
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
	Edit      Kind = "edit"      // the value at Path becomes New
	Undo      Kind = "undo"      // the edit, or the undo, named by Names is taken back
	Fact      Kind = "fact"      // something was bought, made or measured
	Asked     Kind = "asked"     // the client asked for a change, which waits for an answer
	Answer    Kind = "answer"    // the client answered the change named by Names
	Withdrawn Kind = "withdrawn" // the fact, the asked change, the answer or the accepted layout named by Names does not hold
	Accepted  Kind = "accepted"  // the stock of one material is to be cut by Layout, as long as the parts and the stock are those
)

// check reports a kind that can't be replayed.
func (k Kind) check() error {
	switch k {
	case Edit, Undo, Fact, Asked, Answer, Withdrawn, Accepted:
		return nil
	default:
		return &EntryError{"kind", fmt.Sprintf("is %q: it must be edit, undo, fact, asked, answer, withdrawn or accepted", string(k))}
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
	Names  string    `json:"names,omitempty"` // of an undo, an answer and what is withdrawn: the id of the entry it is about

	Fact   *Happened `json:"fact,omitempty"`   // of a fact
	Order  *Order    `json:"order,omitempty"`  // of an asked change
	Yes    bool      `json:"yes,omitempty"`    // of an answer: it is taken
	Layout *Layout   `json:"layout,omitempty"` // of an accepted layout
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
	if err := e.checkOthers(); err != nil {
		return err
	}
	switch e.Kind {
	case Edit:
		return e.checkEdit()
	case Fact:
		return e.Fact.Check()
	case Asked:
		return e.Order.check()
	case Accepted:
		return e.Layout.check()
	}
	return e.checkNames()
}

// checkOthers reports a member that belongs to another kind.
func (e Entry) checkOthers() error {
	switch {
	case e.Kind != Edit && (e.Path != "" || e.Old != "" || e.New != ""):
		return &EntryError{"path", "belongs to an edit: " + string(e.Kind) + " changes no value by itself"}
	case (e.Kind == Edit || e.Kind == Fact || e.Kind == Asked || e.Kind == Accepted) && e.Names != "":
		return &EntryError{"names", "belongs to an undo, an answer or what is withdrawn"}
	case (e.Kind == Fact) != (e.Fact != nil):
		return &EntryError{"fact", "belongs to a fact, and every fact has one"}
	case (e.Kind == Asked) != (e.Order != nil):
		return &EntryError{"order", "belongs to an asked change, and every one has it"}
	case (e.Kind == Accepted) != (e.Layout != nil):
		return &EntryError{"layout", "belongs to an accepted layout, and every one has it"}
	case e.Kind != Answer && e.Yes:
		return &EntryError{"yes", "belongs to an answer"}
	}
	return nil
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
	case !oneLine(e.New, MostValue):
		return &EntryError{"new", fmt.Sprintf("must be one line of at most %d letters", MostValue)}
	case !utf8.ValidString(e.Old) || utf8.RuneCountInString(e.Old) > MostValue:
		return &EntryError{"old", fmt.Sprintf("must be a text of at most %d letters", MostValue)}
	}
	return nil
}

func (e Entry) checkNames() error {
	switch {
	case !isID(e.Names):
		return &EntryError{"names", "must be the id of the entry that this is about"}
	case e.Names == e.ID:
		return &EntryError{"names", "is the entry's own id: it must be that of an earlier entry"}
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
	return e.ID == o.ID && e.Actor == o.Actor && e.Kind == o.Kind && e.Path == o.Path && e.New == o.New && e.Names == o.Names &&
		e.Yes == o.Yes && written(e.Fact) == written(o.Fact) && written(e.Order) == written(o.Order) && written(e.Layout) == written(o.Layout)
}

// written returns what is told as it is kept: a list without anything in it and one left out read alike then.
func written(told any) string {
	text, err := json.Marshal(told)
	if err != nil {
		return err.Error() // of what Check refuses
	}
	return string(text)
}
