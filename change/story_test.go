package change_test

import (
	"fmt"
	"testing"
	"time"

	"rodwright/build"
	"rodwright/change"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/shop"
)

// story is a piece in a test with what is told of it.
type story struct {
	t   testing.TB
	log change.Log
}

func begin(t testing.TB, document string) *story {
	t.Helper()
	return &story{t, change.Log{Name: "piece", Start: []byte(document), Shop: shop.Sample(), Memo: build.NewMemo(64)}}
}

func (s *story) now() *change.Truth {
	s.t.Helper()
	now, err := s.log.Now()
	if err != nil {
		s.t.Fatal(err)
	}
	return now
}

// write adds entries to the log as they would be kept.
func (s *story) write(es ...journal.Entry) {
	for _, e := range es {
		n := len(s.log.Entries) + 1
		e.Number, e.Base, e.Actor = int64(n), int64(n-1), "maker"
		e.ID, e.At = fmt.Sprintf("01890000-0000-7000-8000-%012x", n), time.Date(2026, 5, 4, 9, 0, 0, 0, time.UTC)
		if err := e.Check(); err != nil {
			s.t.Fatalf("entry %d: %v", n, err)
		}
		s.log.Entries = append(s.log.Entries, e)
	}
}

// say tells facts in a maker's words.
func (s *story) say(lines ...string) *story {
	s.t.Helper()
	for _, line := range lines {
		h := s.fact(line)
		s.write(journal.Entry{Kind: journal.Fact, Fact: &h})
	}
	return s
}

// fact reads a fact in words and completes it from the plan.
func (s *story) fact(line string) journal.Happened {
	s.t.Helper()
	h, err := journal.Say(line, length.In)
	if err != nil {
		s.t.Fatalf("%s: %v", line, err)
	}
	if h, err = s.now().Complete(h); err != nil {
		s.t.Fatalf("%s: %v", line, err)
	}
	return h
}

func (s *story) weigh(pathsAndValues ...string) *change.Weighed {
	s.t.Helper()
	w, err := change.Weigh(s.now(), edits(pathsAndValues...)...)
	if err != nil {
		s.t.Fatal(err)
	}
	return w
}

func edits(pathsAndValues ...string) (out []journal.Put) {
	for i := 0; i < len(pathsAndValues); i += 2 {
		out = append(out, journal.Put{Path: pathsAndValues[i], New: pathsAndValues[i+1]})
	}
	return out
}

// take writes what taking a weighed change writes.
func (s *story) take(w *change.Weighed) {
	s.t.Helper()
	for _, e := range w.Edits {
		s.write(journal.Entry{Kind: journal.Edit, Path: e.Path, New: e.New})
	}
	for i := range w.Meant {
		s.write(journal.Entry{Kind: journal.Fact, Fact: &w.Meant[i]})
	}
}

// fateOf returns what becomes of the part with a tag written on it.
func fateOf(t testing.TB, w *change.Weighed, label string) change.Fate {
	t.Helper()
	for _, f := range w.Fates {
		if f.Label == label {
			return f
		}
	}
	t.Fatalf("nothing is said of %s: %+v", label, w.Fates)
	return change.Fate{}
}

// bench is a board on four posts, in inches. %s are further lines.
const bench = `rodwright: 1
piece: hall bench
unit: in
fineness: 1/16
place: {room: hall, humidity: 30–60 %%, temperature: 16–24 C}
wood:  {species: white-oak, cut: flat, moisture: 8 %%}
pipe:  {standard: npt, size: 3/4}
sizes:
  length: 48 in
  width:  12 in
  height: 18 in
  inset:  2 1/2 in
posts:
  front: {at: front corners of board, inset: inset, from: feet, to: board}
  back:  {at: back corners of board,  inset: inset, from: feet, to: board}
panels:
  board: {length: length, width: width, thickness: 1 1/8 in, grain: along length, level: height, sits: [on front posts, on back posts]}
feet: {levelling feet: {height: 1 in, rated: 200 lb}}
%s`

func benchWith(lines string) string { return fmt.Sprintf(bench, lines) }
