// Package beside keeps the log of a piece for the command line: a journal file NAME.journal.jsonl beside
// NAME.piece.yaml, one entry a line as package journal reads it. What was acknowledged is on the disk, and several
// programs may write to one file.
//
// Entries written together are there all or none, whatever the moment at which the program or the machine stops: they
// are written behind a byte of zero in place of their first letter, and that letter is put in once all of them are
// on the disk. What stands behind such a byte, or has no end of line, was never acknowledged, and is passed over.
package beside

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/google/uuid"

	"rodwright/internal/store/rules"
	"rodwright/journal"
)

// The ends of the names of piece files and of journals.
const (
	pieceEnd   = ".piece.yaml"
	journalEnd = ".journal.jsonl"
)

// Name returns the path of the journal beside a piece file.
func Name(piece string) string { return strings.TrimSuffix(piece, pieceEnd) + journalEnd }

// Load reads a journal file: no entries where there is none. The error for a line that can't be read wraps a
// *journal.LineError.
func Load(path string) ([]journal.Entry, error) {
	_, es, err := read(path)
	return es, err
}

// read returns what of a journal file was acknowledged, as it is written and as it is read.
func read(path string) ([]byte, []journal.Entry, error) {
	text, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil, nil
	}
	if err != nil {
		return nil, nil, err
	}
	text = acknowledged(text)
	es, err := journal.Read(bytes.NewReader(text))
	if err != nil {
		return nil, nil, fmt.Errorf("%s: %w", path, err)
	}
	return text, es, nil
}

// acknowledged returns the lines that are finished and before any that were still being written.
func acknowledged(text []byte) []byte {
	text = text[:bytes.LastIndexByte(text, '\n')+1]
	if bytes.HasPrefix(text, []byte{unsealed}) {
		return nil
	}
	if at := bytes.Index(text, []byte{'\n', unsealed}); at >= 0 {
		return text[:at+1]
	}
	return text
}

// Append writes to a journal file the entries that wanted returns, all or none, and returns them as they are kept. It
// makes the file when there is none. While it runs no other program writes to the file: wanted is given the entries
// that are there, and returns of each new one Actor, Base, Kind and the members of the kind; Old of an edit as it
// is to be kept. Number is settled here, ID and At where there is none, and the number of an order that has none.
//
// Errors: those of wanted, a *journal.EntryError for an entry that can't follow, a *BusyError where another program
// keeps the file to itself.
func Append(path string, now time.Time, wanted func(es []journal.Entry) ([]journal.Entry, error)) (kept []journal.Entry, err error) {
	unlock, err := lock(path)
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, unlock()) }()
	text, es, err := read(path)
	if err != nil {
		return nil, err
	}
	more, err := wanted(slices.Clone(es))
	if err != nil || len(more) == 0 {
		return nil, err
	}
	lines, err := settle(es, more, now)
	if err != nil {
		return nil, err
	}
	all, err := journal.Read(bytes.NewReader(slices.Concat(text, lines))) // what is written can be read
	if err != nil {
		return nil, refusal(err)
	}
	if err := write(path, int64(len(text)), lines); err != nil {
		return nil, err
	}
	return all[len(es):], nil
}

// settle returns the new entries as lines, each checked against the log before it.
func settle(log, more []journal.Entry, now time.Time) ([]byte, error) {
	var lines bytes.Buffer
	log = slices.Clone(log)
	for _, e := range more {
		e, err := complete(log, e, now)
		if err != nil {
			return nil, err
		}
		if err := journal.WriteLine(&lines, e); err != nil {
			return nil, fmt.Errorf("entry %d: %w", e.Number, err)
		}
		if err := rules.Check(log, e); err != nil {
			return nil, fmt.Errorf("entry %d: %w", e.Number, err)
		}
		log = append(log, e)
	}
	return lines.Bytes(), nil
}

// complete gives the entry what its writer left open.
func complete(log []journal.Entry, e journal.Entry, now time.Time) (journal.Entry, error) {
	e.Number = int64(len(log)) + 1
	if e.ID == "" {
		id, err := uuid.NewV7()
		if err != nil {
			return e, err
		}
		e.ID = id.String()
	}
	if e.At.IsZero() {
		e.At = now
	}
	e.At = time.UnixMilli(e.At.UnixMilli()).UTC()
	if e.Kind == journal.Asked && e.Order != nil && e.Order.No == 0 {
		order := *e.Order
		order.No = rules.NextOrder(log)
		e.Order = &order
	}
	return e, nil
}

// refusal says of which entry it is that it can't follow: one entry is one line, but for lines without any.
func refusal(err error) error {
	var line *journal.LineError
	if errors.As(err, &line) {
		return fmt.Errorf("a new entry can't be read back: %w", line.Cause)
	}
	return err
}
