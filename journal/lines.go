package journal

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
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

// mostLine bounds a line that is read: an entry of the greatest sizes, every letter of it escaped.
const mostLine = 8 * (MostPath + 2*MostValue + MostActor + 1000)

// Read reads a journal file: one entry a line, as JSON, numbered from 1 without a gap. Empty lines are passed
// over. An error is a *LineError, or that of r.
func Read(r io.Reader) ([]Entry, error) {
	var es []Entry
	seen := make(map[string]int64)
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
			err = follows(e, int64(len(es)), seen)
		}
		if err != nil {
			return nil, &LineError{line, err}
		}
		seen[e.ID] = e.Number
		es = append(es, e)
	}
	if err := in.Err(); err != nil {
		return nil, &LineError{line + 1, err}
	}
	return es, nil
}

func parse(text []byte) (Entry, error) {
	var e Entry
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&e); err != nil {
		return e, fmt.Errorf("an entry is one JSON object a line: %w", err)
	}
	if d.More() {
		return e, fmt.Errorf("something follows the entry: each stands on a line of its own")
	}
	return e, e.Check()
}

// follows reports why e can't stand after that many entries.
func follows(e Entry, last int64, seen map[string]int64) error {
	if e.Number != last+1 {
		return &EntryError{"number", fmt.Sprintf("is %d: after entry %d it must be %d", e.Number, last, last+1)}
	}
	if n, ok := seen[e.ID]; ok {
		return &EntryError{"id", fmt.Sprintf("is that of entry %d", n)}
	}
	if _, ok := seen[e.Names]; e.Kind == Undo && !ok {
		return &EntryError{"names", "names no earlier entry"}
	}
	return nil
}

// WriteLine writes the entry as one line of a journal file.
func WriteLine(w io.Writer, e Entry) error {
	if err := e.Check(); err != nil {
		return err
	}
	line, err := json.Marshal(e)
	if err != nil {
		return fmt.Errorf("entry %d: %w", e.Number, err)
	}
	_, err = w.Write(append(line, '\n'))
	return err
}
