package journal

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"
)

// LineError says which line of a journal file can't be read, and why.
type LineError struct {
	Line  int // from 1
	Cause error
}

// Error names the line.
func (e *LineError) Error() string { return fmt.Sprintf("line %d: %v", e.Line, e.Cause) }

// Unwrap returns why the line can't be read.
func (e *LineError) Unwrap() error { return e.Cause }

// mostLine bounds a line that is read: an edit of the greatest sizes, every letter of it escaped as two of JSON's
// escapes, is a quarter of that, an order, a fact or a layout of the greatest sizes two thirds.
const mostLine = 1 << 20

// Read reads a journal file: one entry a line, as JSON, numbered from 1 without a gap. Empty lines are passed
// over. An error is a *LineError.
func Read(r io.Reader) ([]Entry, error) {
	var es []Entry
	seen := make(map[string]int)
	in := bufio.NewScanner(r)
	in.Buffer(nil, mostLine)
	line := 0
	for in.Scan() {
		line++
		text := bytes.TrimSpace(in.Bytes())
		if len(text) == 0 {
			continue
		}
		e, err := parse(text)
		if err == nil {
			err = follows(e, es, seen)
		}
		if cut := in.Err(); cut != nil { // the reading failed within this line: that it is no entry follows
			err = cut
		}
		if err != nil {
			return nil, &LineError{line, err}
		}
		seen[e.ID] = len(es)
		es = append(es, e)
	}
	switch err := in.Err(); {
	case errors.Is(err, bufio.ErrTooLong):
		return nil, &LineError{line + 1, fmt.Errorf("is longer than %d bytes, and no entry is: each stands on a line of its own", mostLine)}
	case err != nil:
		return nil, &LineError{line + 1, err}
	}
	return es, nil
}

func parse(text []byte) (Entry, error) {
	if !utf8.Valid(text) {
		return Entry{}, errors.New("an entry is written in UTF-8, and this line is not")
	}
	var first struct{ Kind Kind }
	if err := json.Unmarshal(text, &first); err != nil {
		return Entry{}, fmt.Errorf("an entry is one JSON object on a line of its own: %w", err)
	}
	if err := first.Kind.check(); err != nil { // before its other members, which are unknown too
		return Entry{}, err
	}
	var e Entry
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&e); err != nil {
		return Entry{}, fmt.Errorf("an entry has the members number, id, actor, base, at, kind, path, old, new, names, fact, order, yes and layout: %w", err)
	}
	e.Fact.settle()
	e.Layout.settle()
	return e, e.Check()
}

// settle leaves out lists without anything in them, as they are left out where they are written.
func (h *Happened) settle() {
	if h == nil {
		return
	}
	if s := h.Shape; s != nil {
		if len(s.Openings) == 0 {
			s.Openings = nil
		}
		if len(s.Profiles) == 0 {
			s.Profiles = nil
		}
	}
	if g := h.Goods; g != nil && len(g.Defects) == 0 {
		g.Defects = nil
	}
}

// follows reports why e can't stand after the entries; seen tells where each of them is.
func follows(e Entry, es []Entry, seen map[string]int) error {
	last := int64(len(es))
	if e.Number != last+1 {
		return &EntryError{"number", fmt.Sprintf("is %d: after entry %d it must be %d", e.Number, last, last+1)}
	}
	if i, ok := seen[e.ID]; ok {
		return &EntryError{"id", fmt.Sprintf("is that of entry %d: each has its own", es[i].Number)}
	}
	return names(e, es, seen)
}

// WriteLine writes the entry as one line of a journal file. An entry that can't be is not written.
func WriteLine(w io.Writer, e Entry) error {
	if err := e.Check(); err != nil {
		return err
	}
	line, err := json.Marshal(e)
	if err != nil {
		return fmt.Errorf("entry %d: %w", e.Number, err)
	}
	if _, err := w.Write(append(line, '\n')); err != nil {
		return fmt.Errorf("entry %d: %w", e.Number, err)
	}
	return nil
}
