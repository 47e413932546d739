package store

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"rodwright/journal"
)

// members are what of an entry is kept as JSON: its fact, its order and its layout. None is the empty text.
type members struct{ fact, asked, layout string }

// encode returns what of the entry is kept as JSON.
func encode(e journal.Entry) (kept members, err error) {
	for _, m := range []struct {
		name  string
		there bool
		value any
		to    *string
	}{
		{"fact", e.Fact != nil, e.Fact, &kept.fact},
		{"order", e.Order != nil, e.Order, &kept.asked},
		{"layout", e.Layout != nil, e.Layout, &kept.layout},
	} {
		if !m.there {
			continue
		}
		text, err := json.Marshal(m.value)
		if err != nil {
			return kept, &InputError{m.name, fmt.Sprintf("can't be written: %v", err)}
		}
		*m.to = string(text)
	}
	return kept, nil
}

// decode puts what was kept as JSON into the entry. What this program does not know of it is an error: it would be
// lost with the next program that reads the log from here.
func decode(e *journal.Entry, kept members) error {
	e.Fact, e.Order, e.Layout = nil, nil, nil
	if name, err := kept.into(e); err != nil {
		return fmt.Errorf("log: entry %d: its %s can't be read: %w", e.Number, name, err)
	}
	if (e.Kind == journal.Fact) != (e.Fact != nil) || (e.Kind == journal.Asked) != (e.Order != nil) || (e.Kind == journal.Accepted) != (e.Layout != nil) {
		return fmt.Errorf("log: entry %d: it is of kind %s, and what it must hold is missing, or of another kind", e.Number, e.Kind)
	}
	return nil
}

// into reads the members into the entry, and names the one that can't be read.
func (kept members) into(e *journal.Entry) (name string, err error) {
	if kept.fact != "" {
		e.Fact = new(journal.Happened)
		if err := strictly(kept.fact, e.Fact); err != nil {
			return "fact", err
		}
	}
	if kept.asked != "" {
		e.Order = new(journal.Order)
		if err := strictly(kept.asked, e.Order); err != nil {
			return "order", err
		}
	}
	if kept.layout != "" {
		e.Layout = new(journal.Layout)
		if err := strictly(kept.layout, e.Layout); err != nil {
			return "layout", err
		}
	}
	return "", nil
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
	kept, err := encode(e)
	if err != nil {
		return e, err
	}
	if name, err := kept.into(&e); err != nil {
		return e, &InputError{name, fmt.Sprintf("can't be read back: %v", err)}
	}
	return e, nil
}
