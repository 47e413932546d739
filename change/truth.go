package change

import (
	"fmt"

	"rodwright/build"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
)

// Log is a piece with everything that was written of it, and what it is derived with.
type Log struct {
	Name    string // that errors give the document
	Start   []byte // the text it began with
	Entries []journal.Entry
	Shop    *shop.Shop
	Memo    *build.Memo     // may be nil
	Shown   length.Fineness // to which lengths are said; zero: the document's own
}

// Truth is a piece as it stands after an entry: its text, what was made of it, and what is derived from both.
type Truth struct {
	Log    Log // the entries up to Number
	Number int64
	Text   []byte
	Record *journal.Record
	Build  *build.Build
}

// Now returns the piece as it stands after its last entry.
func (l Log) Now() (*Truth, error) { return l.At(int64(len(l.Entries))) }

// At returns the piece as it stood after the entry of that number: what was taken back or withdrawn later stands yet.
// The error is a *piece.Error where the document that stood then can't be derived.
func (l Log) At(number int64) (*Truth, error) {
	if number < 0 || number > int64(len(l.Entries)) {
		return nil, fmt.Errorf("there is no entry %d: the last one is %d", number, len(l.Entries))
	}
	l.Entries = l.Entries[:number:number]
	text, err := journal.Replay(l.Start, l.Entries)
	if err != nil {
		return nil, err
	}
	t := &Truth{Log: l, Number: number, Text: text, Record: journal.Fold(l.Entries)}
	t.Build, err = l.derive(text, t.Record)
	return t, err
}

func (l Log) derive(text []byte, rec *journal.Record) (*build.Build, error) {
	in, err := l.input(text, rec)
	if err != nil {
		return nil, err
	}
	return build.Derive(in, l.Memo)
}

// setOut sets out a text with a record, with nothing derived from its parts.
func (l Log) setOut(text []byte, rec *journal.Record) (*build.Build, error) {
	in, err := l.input(text, rec)
	if err != nil {
		return nil, err
	}
	return build.SetOut(in)
}

func (l Log) input(text []byte, rec *journal.Record) (build.Input, error) {
	doc, err := piece.Read(l.Name, text)
	if err != nil {
		return build.Input{}, err
	}
	if l.Shown != (length.Fineness{}) {
		doc = doc.Shown(l.Shown)
	}
	return build.Input{Document: doc, Shop: l.Shop, Record: rec}, nil
}

// then returns the piece as it would stand with more entries, which are numbered after those that are there.
func (t *Truth) then(more []journal.Entry) (*Truth, error) {
	l := t.Log
	l.Entries = append(l.Entries[:len(l.Entries):len(l.Entries)], numbered(more, t.Number)...)
	return l.Now()
}

// numbered gives entries that are only tried the numbers and ids that they would have. An id is never part of what is
// derived, but for that of a thing first told of, which only facts have that are really written.
func numbered(es []journal.Entry, last int64) []journal.Entry {
	out := make([]journal.Entry, len(es))
	for i, e := range es {
		e.Number, e.Base = last+int64(i)+1, last
		if e.ID == "" {
			e.ID = fmt.Sprintf("00000000-0000-7000-8000-%012x", e.Number)
		}
		out[i] = e
	}
	return out
}

// puts are the entries that put values into the document.
func puts(edits []journal.Put) []journal.Entry {
	out := make([]journal.Entry, 0, len(edits))
	for _, e := range edits {
		out = append(out, journal.Entry{Kind: journal.Edit, Path: e.Path, New: e.New})
	}
	return out
}

func facts(hs []journal.Happened) []journal.Entry {
	out := make([]journal.Entry, 0, len(hs))
	for i := range hs {
		out = append(out, journal.Entry{Kind: journal.Fact, Fact: &hs[i]})
	}
	return out
}
