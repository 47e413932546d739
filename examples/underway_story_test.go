package examples_test

import (
	"bytes"
	"fmt"
	"testing"
	"time"

	"rodwright/build"
	"rodwright/change"
	"rodwright/examples"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
)

// story writes the journal of an example, day by day, as the verbs of the command line write one.
type story struct {
	t     testing.TB
	log   change.Log
	actor string
	at    time.Time
}

// memo is shared by all that is derived of one example.
var memo = build.NewMemo(1024)

// begun is the story of an example before anything happened.
func begun(t testing.TB, name string) *story {
	t.Helper()
	text, err := examples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	return &story{t: t, log: change.Log{Name: name, Start: text, Shop: shop.Sample(), Memo: memo}}
}

// on begins a day of somebody's work.
func (s *story) on(actor string, month time.Month, day int) {
	s.actor, s.at = actor, time.Date(2025, month, day, 9, 0, 0, 0, time.UTC)
}

func (s *story) now() *change.Truth {
	s.t.Helper()
	now, err := s.log.Now()
	if err != nil {
		s.t.Fatal(err)
	}
	return now
}

// write adds an entry; each is written ten minutes after the one before.
func (s *story) write(e journal.Entry) journal.Entry {
	s.t.Helper()
	n := int64(len(s.log.Entries)) + 1
	e.Number, e.Base, e.Actor, e.At = n, n-1, s.actor, s.at
	e.ID = fmt.Sprintf("%08x-%04x-7000-8000-%012x", s.at.UnixMilli()>>16, s.at.UnixMilli()&0xFFFF, n)
	s.at = s.at.Add(10 * time.Minute)
	if e.Kind == journal.Edit {
		old, _, err := piece.ValueAt(s.now().Text, e.Path)
		if err != nil {
			s.t.Fatalf("entry %d: %v", n, err)
		}
		e.Old = old
	}
	if err := e.Check(); err != nil {
		s.t.Fatalf("entry %d: %v", n, err)
	}
	s.log.Entries = append(s.log.Entries, e)
	s.now()
	return e
}

// say writes facts in a maker's words.
func (s *story) say(lines ...string) {
	s.t.Helper()
	for _, line := range lines {
		s.tell(s.said(line))
	}
}

func (s *story) said(line string) journal.Happened {
	s.t.Helper()
	h, err := journal.Say(line, length.In)
	if err != nil {
		s.t.Fatalf("%s: %v", line, err)
	}
	return h
}

// tell writes a fact, completed from the plan.
func (s *story) tell(h journal.Happened) journal.Entry {
	s.t.Helper()
	h, err := s.now().Complete(h)
	if err != nil {
		s.t.Fatalf("entry %d: %v", len(s.log.Entries)+1, err)
	}
	return s.write(journal.Entry{Kind: journal.Fact, Fact: &h})
}

func (s *story) edit(path, value string) journal.Entry {
	s.t.Helper()
	return s.write(journal.Entry{Kind: journal.Edit, Path: path, New: value})
}

// take weighs an edit and takes it: the edit, and what parts already made are for from then on.
func (s *story) take(path, value string) *change.Weighed {
	s.t.Helper()
	w, err := change.Weigh(s.now(), journal.Put{Path: path, New: value})
	if err != nil {
		s.t.Fatal(err)
	}
	s.edit(path, value)
	s.meant(w)
	return w
}

func (s *story) meant(w *change.Weighed) {
	s.t.Helper()
	for i := range w.Meant {
		s.write(journal.Entry{Kind: journal.Fact, Fact: &w.Meant[i]})
	}
}

// asked writes what the client asks for, priced as it stands that day.
func (s *story) asked(no int, words, path, value string) journal.Entry {
	s.t.Helper()
	o, _, err := change.Asked(s.now(), words, []journal.Put{{Path: path, New: value}}, s.at.Format(time.DateOnly))
	if err != nil {
		s.t.Fatal(err)
	}
	o.No = no
	return s.write(journal.Entry{Kind: journal.Asked, Order: &o})
}

// yes writes that the client takes a change.
func (s *story) yes(asked journal.Entry) *change.Weighed {
	s.t.Helper()
	w, err := change.Weigh(s.now(), asked.Order.Edits...)
	if err != nil {
		s.t.Fatal(err)
	}
	s.write(journal.Entry{Kind: journal.Answer, Names: asked.ID, Yes: true})
	s.meant(w)
	return w
}

// lines is the journal as its file has it.
func (s *story) lines() []byte {
	s.t.Helper()
	var out bytes.Buffer
	for _, e := range s.log.Entries {
		if err := journal.WriteLine(&out, e); err != nil {
			s.t.Fatal(err)
		}
	}
	return out.Bytes()
}
