package store

import (
	"context"
	"fmt"
	"slices"
	"sync"
	"testing"
)

func TestEveryWriteIsTold(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		changes, stop := s.Changes()
		p := create(t, s)
		write(t, s, p.ID, edit("anna", 0, sizes(t, stool(t))[0], "40 in"))
		for want := int64(0); want < 2; want++ {
			if got := <-changes; got != (Change{p.ID, want}) {
				t.Errorf("told %+v, want entry %d", got, want)
			}
		}
		stop()
		if _, open := <-changes; open {
			t.Error("the channel is open after stop")
		}
	})
}

func TestARepeatIsNoNews(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		w := Write{Actor: "anna", ID: "01890000-0000-7000-8000-000000000001"}
		p, err := s.Create(context.Background(), w, "stool", stool(t))
		if err != nil {
			t.Fatal(err)
		}
		path := sizes(t, stool(t))[0]
		first := write(t, s, p.ID, edit("anna", 0, path, "40 in"))
		write(t, s, p.ID, edit("anna", 1, path, "41 in"))
		changes, stop := s.Changes()
		if _, err := s.Create(context.Background(), w, "stool", stool(t)); err != nil {
			t.Fatal(err)
		}
		write(t, s, p.ID, first)
		if _, err := s.Append(context.Background(), p.ID); err != nil {
			t.Fatal(err)
		}
		stop()
		for c := range changes {
			t.Errorf("told %+v", c)
		}
	})
}

func TestNumbersOfAPieceAreToldRising(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		paths := sizes(t, stool(t))
		changes, stop := s.Changes()
		const writes = 10
		var done sync.WaitGroup
		for k, actor := range []string{"anna", "ben", "carl"} {
			done.Go(func() {
				for i := range writes {
					if _, err := s.Append(context.Background(), p.ID, edit(actor, lastOf(s, p.ID), paths[k], fmt.Sprintf("%d in", 20+i))); err != nil {
						t.Error(err)
					}
				}
			})
		}
		done.Wait()
		stop()
		var last int64
		for c := range changes {
			if c.Number <= last {
				t.Errorf("told %d after %d", c.Number, last)
			}
			last = c.Number
		}
		if last != 3*writes {
			t.Errorf("the last told is %d of %d", last, 3*writes)
		}
	})
}

func TestANumberThatAHigherOvertookIsNotTold(t *testing.T) {
	var f feed
	heard := make(chan Change, behind)
	f.add(heard)
	for _, c := range []Change{{"stool", 0}, {"stool", 2}, {"stool", 1}, {"bench", 1}, {"stool", 2}, {"stool", 3}} {
		f.send(c)
	}
	f.close()
	var got []Change
	for c := range heard {
		got = append(got, c)
	}
	if want := []Change{{"stool", 0}, {"stool", 2}, {"bench", 1}, {"stool", 3}}; !slices.Equal(got, want) {
		t.Errorf("told %v, want %v", got, want)
	}
}

func TestAListenerWhoFellBehindIsToldSoByTheEndOfTheirChannel(t *testing.T) {
	var f feed
	slow, quick := make(chan Change, behind), make(chan Change, behind)
	f.add(slow)
	f.add(quick)
	for n := range int64(behind + 1) {
		f.send(Change{"stool", n})
		if got := <-quick; got.Number != n {
			t.Errorf("told %d, want %d", got.Number, n)
		}
	}
	heard := 0
	for range slow {
		heard++
	}
	if heard != behind {
		t.Errorf("heard %d changes before the end, want %d", heard, behind)
	}
	f.remove(slow) // harmless
	f.close()
	if _, open := <-quick; open {
		t.Error("the channel is open after the store was closed")
	}
	late := make(chan Change)
	f.add(late)
	if _, open := <-late; open {
		t.Error("a channel of a closed store is open")
	}
}
