package journal

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf8"
)

// Put is one value to put into the document.
type Put struct {
	Path string `json:"path"` // as in piece.Edit
	New  string `json:"new"`
}

// Order is a change that the client asked for: what it would change, and what the client was told that it costs and
// when the piece is ready then. It waits for an answer; before the yes none of it is in the document.
type Order struct {
	No    int    `json:"no"`              // from 1, in the order they were asked for
	Words string `json:"words,omitempty"` // what was asked for, in the client's words
	Edits []Put  `json:"edits"`
	Cents *int64 `json:"cents,omitempty"` // more or less to pay, in hundredths; left out where it is not known
	Ready string `json:"ready,omitempty"` // the new day, 2027-01-15
}

// The most values that one order puts in, the most letters of all their paths and values together, so that an order
// is read back as one line, and the most that it costs.
const (
	mostEdits   = 500
	mostLetters = 4 * MostValue
	mostCents   = 100_000_000_00
)

func (o *Order) check() error {
	switch {
	case o.No < 1:
		return &EntryError{"order.no", "must be a number from 1"}
	case !oneLine(o.Words, MostValue):
		return &EntryError{"order.words", fmt.Sprintf("must be one line of at most %d letters", MostValue)}
	case len(o.Edits) == 0 || len(o.Edits) > mostEdits:
		return &EntryError{"order.edits", fmt.Sprintf("must be 1 to %d values", mostEdits)}
	case o.Cents != nil && (*o.Cents > mostCents || *o.Cents < -mostCents):
		return &EntryError{"order.cents", "must be an amount in hundredths"}
	}
	letters := 0
	for _, p := range o.Edits {
		letters += utf8.RuneCountInString(p.Path) + utf8.RuneCountInString(p.New)
		if strings.TrimSpace(p.Path) == "" || !oneLine(p.Path, MostPath) || !oneLine(p.New, MostValue) {
			return &EntryError{"order.edits", fmt.Sprintf("must each name a value and give it in one line of at most %d letters", MostValue)}
		}
	}
	if letters > mostLetters {
		return &EntryError{"order.edits", fmt.Sprintf("must have at most %d letters in all", mostLetters)}
	}
	if _, err := time.Parse(time.DateOnly, o.Ready); o.Ready != "" && err != nil {
		return &EntryError{"order.ready", "must be a day, as 2027-01-15"}
	}
	return nil
}
