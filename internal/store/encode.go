package store

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"rodwright/journal"
)

// The members of an entry that are kept as JSON: its fact and its order. None is the empty text.

// encode returns what of the entry is kept as JSON.
func encode(e journal.Entry) (fact, asked string, err error) {
	if e.Fact != nil {
		text, err := json.Marshal(e.Fact)
		if err != nil {
			return "", "", &InputError{"fact", fmt.Sprintf("can't be written: %v", err)}
		}
		fact = string(text)
	}
	if e.Order != nil {
		text, err := json.Marshal(e.Order)
		if err != nil {
			return "", "", &InputError{"order", fmt.Sprintf("can't be written: %v", err)}
		}
		asked = string(text)
	}
	return fact, asked, nil
}

// decode puts what was kept as JSON into the entry. What this program does not know of it is an error: it would be
// lost with the next program that reads the log from here.
func decode(e *journal.Entry, fact, asked string) error {
	e.Fact, e.Order = nil, nil
	if fact != "" {
		e.Fact = new(journal.Happened)
		if err := strictly(fact, e.Fact); err != nil {
			return fmt.Errorf("log: entry %d: its fact can't be read: %w", e.Number, err)
		}
	}
	if asked != "" {
		e.Order = new(journal.Order)
		if err := strictly(asked, e.Order); err != nil {
			return fmt.Errorf("log: entry %d: its order can't be read: %w", e.Number, err)
		}
	}
	if (e.Kind == journal.Fact) != (e.Fact != nil) || (e.Kind == journal.Asked) != (e.Order != nil) {
		return fmt.Errorf("log: entry %d: it is of kind %s, and what it must hold is missing, or of another kind", e.Number, e.Kind)
	}
	return nil
}

// strictly reads one JSON object without members that are not known.
func strictly(text string, into any) error {
	d := json.NewDecoder(strings.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		return err
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return errors.New("something follows the object")
	}
	return nil
}

// asRead returns the entry as it is read back: an empty list is none, so that a repeat is known by what it says. The
// caller's own is not shared.
func asRead(e journal.Entry) (journal.Entry, error) {
	fact, asked, err := encode(e)
	if err != nil {
		return e, err
	}
	if e.Fact != nil {
		e.Fact = new(journal.Happened)
		if err := strictly(fact, e.Fact); err != nil {
			return e, &InputError{"fact", fmt.Sprintf("can't be read back: %v", err)}
		}
	}
	if e.Order != nil {
		e.Order = new(journal.Order)
		if err := strictly(asked, e.Order); err != nil {
			return e, &InputError{"order", fmt.Sprintf("can't be read back: %v", err)}
		}
	}
	return e, nil
}
