package store

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/uuid"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/piece"
)

// mm returns whole millimetres.
func mm(n int64) journal.MM { return journal.MM(length.Length(n) * length.Millimetre) }

func fact(actor string, base int64, h journal.Happened) journal.Entry {
	return journal.Entry{Actor: actor, Base: base, Kind: journal.Fact, Fact: &h}
}

// sized is a board of the piece that was cut to its size.
func sized(thing string) journal.Happened {
	return journal.Happened{
		What: journal.Made, Thing: thing, Part: "C1.1", Place: "board", Work: "size", HandsH: 0.75, From: "B3", Took: mm(1100),
		Shape: &journal.Shape{
			Kind: journal.KindPanel, Material: "white-oak", Size: [3]journal.MM{mm(1067), mm(483), mm(25)},
			Openings: []journal.Opening{{Kind: "notch", Size: [2]journal.MM{mm(40), mm(40)}, Radius: mm(6), Opens: "near edge"}},
		},
	}
}

// plank is a board that was bought.
func plank() journal.Happened {
	cents := int64(4250)
	return journal.Happened{What: journal.Bought, Goods: &journal.Goods{
		Kind: journal.BoardGoods, Tag: "B3", Material: "white-oak", Quarters: "5/4", Size: [3]journal.MM{mm(2440), mm(230), mm(32)}, Rough: 2, Cents: &cents,
		Defects: []journal.Defect{{Kind: "knot", Face: "good", At: [2]journal.MM{mm(300), mm(90)}, Size: [2]journal.MM{mm(25), mm(30)}}},
	}}
}

func meant(thing, place string) journal.Happened {
	return journal.Happened{What: journal.Meant, Thing: thing, Place: place}
}

// asks is a change that the client asks for: each pair is a path and its new value.
func asks(base int64, pairs ...string) journal.Entry {
	o := &journal.Order{Words: "a longer one, please", Ready: "2027-01-15"}
	for i := 0; i < len(pairs); i += 2 {
		o.Edits = append(o.Edits, journal.Put{Path: pairs[i], New: pairs[i+1]})
	}
	return journal.Entry{Actor: "clara", Base: base, Kind: journal.Asked, Order: o}
}

func answer(base int64, asked journal.Entry, yes bool) journal.Entry {
	return journal.Entry{Actor: "clara", Base: base, Kind: journal.Answer, Names: asked.ID, Yes: yes}
}

func withdraw(actor string, base int64, named journal.Entry) journal.Entry {
	return journal.Entry{Actor: actor, Base: base, Kind: journal.Withdrawn, Names: named.ID}
}

// laid is an entry that accepts a layout of boards of that cost.
func laid(actor string, base int64, cost float64) journal.Entry {
	return journal.Entry{Actor: actor, Base: base, Kind: journal.Accepted, Layout: &journal.Layout{
		Kind: "panel", Material: "white-oak 5/4", Key: "sha256:" + strings.Repeat("0a", 32), Cost: cost, Bound: 70,
		Answer: json.RawMessage(fmt.Sprintf(`{"unit": "mm", "cost": %v, "bound": 70, "used": [{"stock": "B<3>", "parts": []}]}`, cost)),
	}}
}

// withID gives the entry an id of its writer's.
func withID(e journal.Entry) journal.Entry {
	e.ID = uuid.Must(uuid.NewV7()).String()
	return e
}

func logOf(t testing.TB, s *Store, id string) []journal.Entry {
	t.Helper()
	log, err := s.Log(context.Background(), id, 0)
	if err != nil {
		t.Fatal(err)
	}
	return log
}

// refused appends what must be refused for the given field, with a word of why.
func refused(t testing.TB, s *Store, id, field, why string, es ...journal.Entry) {
	t.Helper()
	had := len(logOf(t, s, id))
	var bad *InputError
	if _, err := s.Append(context.Background(), id, es...); !errors.As(err, &bad) || bad.Field != field || !strings.Contains(bad.Why, why) {
		t.Errorf("got %v, want %s: %s", err, field, why)
	}
	if has := len(logOf(t, s, id)); has != had {
		t.Errorf("%d entries of a refused write were kept", has-had)
	}
}

// clashes appends what must meet a later change.
func clashes(t testing.TB, s *Store, id string, want ConflictError, es ...journal.Entry) {
	t.Helper()
	had := text(t, s, id)
	var clash *ConflictError
	if _, err := s.Append(context.Background(), id, es...); !errors.As(err, &clash) {
		t.Fatalf("got %v", err)
	}
	if diff := cmp.Diff(want, *clash); diff != "" {
		t.Error(diff)
	}
	if has := text(t, s, id); has != had {
		t.Errorf("a refused write changed the text to\n%s", has)
	}
}

func TestWhatIsToldIsReadBackAsItWasGiven(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		var told []journal.Entry
		tell := func(e journal.Entry) journal.Entry {
			told = append(told, write(t, s, p.ID, e))
			return told[len(told)-1]
		}
		tell(fact("anna", 0, plank()))
		made := tell(fact("anna", 1, sized("")))
		tell(fact("ben", 1, meant(made.ID, "")))
		tell(fact("ben", 3, journal.Happened{What: journal.Spoiled, Thing: made.ID, Why: "split at the notch"}))
		tell(fact("ben", 4, journal.Happened{What: journal.Measured, Distance: &journal.Distance{From: "left post", To: "right post", Value: mm(905), Over: journal.OverInside}}))
		asked := tell(asks(5, "sizes/length", "40 in"))
		tell(withdraw("ben", 6, tell(answer(6, asked, true))))
		tell(fact("anna", 0, journal.Happened{What: journal.Finished}))
		if diff := cmp.Diff(told, logOf(t, open(), p.ID)); diff != "" {
			t.Error(diff)
		}
		if sent := sized(""); made.Base != 1 || !cmp.Equal(*made.Fact, sent) {
			t.Errorf("kept on base %d: %s", made.Base, cmp.Diff(sent, *made.Fact))
		}
		for _, e := range told {
			if err := e.Check(); err != nil {
				t.Errorf("entry %d: %v", e.Number, err)
			}
		}
		if got := text(t, s, p.ID); got != board {
			t.Errorf("facts changed the text to\n%s", got)
		}
		snapshotsAreTheReplay(t, s, p.ID)
	})
}

func TestAFactIsAboutAPartThatWasMade(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		bought := write(t, s, p.ID, fact("anna", 0, plank()))
		first := write(t, s, p.ID, fact("anna", 1, sized("")))
		second := write(t, s, p.ID, fact("anna", 2, sized(first.ID)))
		for _, thing := range []string{bought.ID, second.ID, "01890000-0000-7000-8000-000000000009"} {
			refused(t, s, p.ID, "fact.thing", "first told of", fact("ben", 3, meant(thing, "shelf")))
			refused(t, s, p.ID, "fact.thing", "first told of", fact("ben", 3, sized(thing)))
		}
		write(t, s, p.ID, withdraw("ben", 3, first)) // the second still tells of it
		write(t, s, p.ID, fact("ben", 4, meant(first.ID, "shelf")))
		write(t, s, p.ID, withdraw("ben", 5, second))
		refused(t, s, p.ID, "fact.thing", "first told of", fact("ben", 6, meant(first.ID, "shelf")))
		refused(t, s, p.ID, "names", "withdrawn", withdraw("anna", 6, second))
	})
}

func TestOrdersAreNumberedAsTheyAreAskedFor(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		first := withID(asks(0, "sizes/length", "40 in"))
		for range 2 { // the repeat too, without its number
			if kept := write(t, s, p.ID, first); kept.Order.No != 1 || kept.Number != 1 {
				t.Errorf("entry %d is change %d", kept.Number, kept.Order.No)
			}
		}
		if first.Order.No != 0 {
			t.Error("the writer's own order was numbered")
		}
		write(t, s, p.ID, withdraw("anna", 1, first))
		late := asks(2, "sizes/depth", "20 in")
		late.Order.No = 1
		refused(t, s, p.ID, "order.no", "number 2", late)
		late.Order.No = 2
		write(t, s, p.ID, late)
		both, err := s.Append(context.Background(), p.ID, asks(3, "sizes/depth", "21 in"), asks(3, "sizes/depth", "22 in"))
		if err != nil || both[0].Order.No != 3 || both[1].Order.No != 4 {
			t.Errorf("%v, %v", both, err)
		}
		if got := text(t, s, p.ID); got != board {
			t.Errorf("what is only asked for is in the text:\n%s", got)
		}
	})
}

func TestAYesPutsTheOrderIntoTheTextAndItsWithdrawalTakesItOut(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		asked := write(t, s, p.ID, asks(0, "sizes/length", "40 in", "sizes/depth", "20 in", "sizes/length", "39 in"))
		write(t, s, p.ID, edit("anna", 1, "holds/1/count", "4"))
		yes := write(t, s, p.ID, answer(2, asked, true))
		want := strings.NewReplacer("length: 42 in", "length: 39 in", "depth: 19 in", "depth: 20 in", "count: 3", "count: 4").Replace(board)
		if got := text(t, s, p.ID); got != want {
			t.Errorf("after the yes:\n%s", got)
		}
		write(t, s, p.ID, edit("anna", 3, "holds/1/count", "5")) // of another value: not in the way
		write(t, s, p.ID, withdraw("ben", 4, yes))
		if got := text(t, s, p.ID); got != strings.Replace(board, "count: 3", "count: 5", 1) {
			t.Errorf("after it was withdrawn:\n%s", got)
		}
		again := write(t, s, p.ID, answer(5, asked, true)) // what was said to it before is not in its way
		write(t, s, p.ID, withdraw("ben", 6, asked))
		if got := text(t, s, p.ID); got != strings.Replace(board, "count: 3", "count: 5", 1) {
			t.Errorf("after the order was withdrawn:\n%s", got)
		}
		refused(t, s, p.ID, "names", "withdrawn", answer(7, asked, true))
		refused(t, s, p.ID, "names", "withdrawn", withdraw("ben", 7, again))
		snapshotsAreTheReplay(t, s, p.ID)
	})
}

func TestAnOrderIsAnsweredOnce(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		bought := write(t, s, p.ID, fact("anna", 0, plank()))
		asked := write(t, s, p.ID, asks(0, "sizes/length", "40 in"))
		refused(t, s, p.ID, "names", "can't be about that", answer(1, bought, true))
		refused(t, s, p.ID, "names", "no entry", answer(1, withID(asked), true))
		no := write(t, s, p.ID, answer(2, asked, false))
		refused(t, s, p.ID, "names", "entry 3 answered", answer(3, asked, true))
		if got := text(t, s, p.ID); got != board {
			t.Errorf("after a no:\n%s", got)
		}
		write(t, s, p.ID, withdraw("ben", 3, no))
		write(t, s, p.ID, answer(4, asked, true))
		if got := value(t, s, p.ID, "sizes/length"); got != "40 in" {
			t.Errorf("after the yes: %q", got)
		}
	})
}

func TestAYesToWhatWasChangedSinceItWasAskedForConflicts(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		write(t, s, p.ID, edit("anna", 0, "sizes/level", "16 in"))
		asked := write(t, s, p.ID, asks(1, "sizes/depth", "20 in", "sizes/level/is", "18 in"))
		by := write(t, s, p.ID, edit("anna", 1, "sizes/level", "15 in"))
		clashes(t, s, p.ID, ConflictError{Path: "sizes/level/is", Yours: "18 in", Theirs: "15 in", Number: by.Number, Actor: "anna"}, answer(3, asked, true))
		write(t, s, p.ID, answer(3, asked, false))

		other := write(t, s, p.ID, asks(4, "sizes/depth", "20 in"))
		third := write(t, s, p.ID, asks(4, "sizes/depth", "21 in"))
		yes := write(t, s, p.ID, answer(6, other, true))
		clashes(t, s, p.ID, ConflictError{Path: "sizes/depth", Yours: "21 in", Theirs: "20 in", Number: yes.Number, Actor: "clara"}, answer(7, third, true))
		clashes(t, s, p.ID, ConflictError{Path: "sizes/depth", Yours: "30 in", Theirs: "20 in", Number: yes.Number, Actor: "clara"}, edit("ben", 6, "sizes/depth", "30 in"))
	})
}

func TestAYesThatCantBeMadeSaysWhereInTheText(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		asked := write(t, s, p.ID, asks(0, "sizes/depth", "20 in", "sizes/nowhere", "18 in"))
		var place *piece.Error
		if _, err := s.Append(context.Background(), p.ID, answer(1, asked, true)); !errors.As(err, &place) {
			t.Errorf("got %v", err)
		}
		if got := text(t, s, p.ID); got != board || len(logOf(t, s, p.ID)) != 1 {
			t.Errorf("half an order is in the text:\n%s", got)
		}
	})
}

func TestAYesIsNotWithdrawnFromUnderALaterChange(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		write(t, s, p.ID, edit("anna", 0, "sizes/length", "41 in"))
		asked := write(t, s, p.ID, asks(1, "sizes/depth", "20 in", "sizes/length", "40 in"))
		yes := write(t, s, p.ID, answer(2, asked, true))
		over := write(t, s, p.ID, edit("anna", 3, "sizes/length", "39 in"))
		want := ConflictError{Path: "sizes/length", Yours: "41 in", Theirs: "39 in", Number: over.Number, Actor: "anna"}
		clashes(t, s, p.ID, want, withdraw("ben", 4, yes))
		clashes(t, s, p.ID, want, withdraw("ben", 4, asked))
		write(t, s, p.ID, undo("anna", 4, over))

		second := write(t, s, p.ID, asks(5, "sizes/depth", "22 in"))
		later := write(t, s, p.ID, answer(6, second, true))
		clashes(t, s, p.ID, ConflictError{Path: "sizes/depth", Yours: "19 in", Theirs: "22 in", Number: later.Number, Actor: "clara"}, withdraw("ben", 7, yes))
		write(t, s, p.ID, withdraw("ben", 7, later))
		write(t, s, p.ID, withdraw("ben", 8, yes))
		if got := text(t, s, p.ID); got != strings.Replace(board, "42 in", "41 in", 1) {
			t.Errorf("after all was taken back:\n%s", got)
		}
		snapshotsAreTheReplay(t, s, p.ID)
	})
}

func TestAnEditUnderAYesIsNotTakenBackUnseen(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		e := write(t, s, p.ID, edit("anna", 0, "sizes/length", "41 in"))
		asked := write(t, s, p.ID, asks(1, "sizes/length", "40 in"))
		yes := write(t, s, p.ID, answer(2, asked, true))
		clashes(t, s, p.ID, ConflictError{Path: "sizes/length", Yours: "42 in", Theirs: "40 in", Number: yes.Number, Actor: "clara"}, undo("anna", 3, e))
		refused(t, s, p.ID, "names", "withdrawn, not undone", undo("clara", 3, yes))
		write(t, s, p.ID, withdraw("anna", 3, yes))
		write(t, s, p.ID, undo("anna", 4, e))
		if got := text(t, s, p.ID); got != board {
			t.Errorf("after both:\n%s", got)
		}
	})
}

func TestAnOrderWithdrawnUnansweredIsInNobodysWay(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		idle := write(t, s, p.ID, asks(0, "sizes/length", "40 in"))
		write(t, s, p.ID, withdraw("ben", 1, idle))
		write(t, s, p.ID, edit("anna", 1, "sizes/length", "41 in")) // had not seen it
		taken := write(t, s, p.ID, asks(3, "sizes/depth", "20 in"))
		write(t, s, p.ID, answer(4, taken, true))
		gone := write(t, s, p.ID, withdraw("ben", 5, taken))
		clashes(t, s, p.ID, ConflictError{Path: "sizes/depth", Yours: "21 in", Theirs: "19 in", Number: gone.Number, Actor: "ben"}, edit("anna", 5, "sizes/depth", "21 in"))
	})
}

func TestOnlyWhatIsToldOrAnsweredIsWithdrawn(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		e := write(t, s, p.ID, edit("anna", 0, "sizes/length", "41 in"))
		refused(t, s, p.ID, "names", "can't be about that", withdraw("anna", 1, e))
		refused(t, s, p.ID, "names", "no entry", withdraw("anna", 1, withID(e)))
		bought := write(t, s, p.ID, fact("anna", 1, plank()))
		gone := write(t, s, p.ID, withdraw("ben", 2, bought))
		refused(t, s, p.ID, "names", "can't be about that", withdraw("ben", 3, gone))
		refused(t, s, p.ID, "names", "withdrawn, not undone", undo("anna", 3, bought))
	})
}

// A change is accepted as one write: the edits it comes to, and what the parts already made are for from then on.
func accepted(base int64, thing string) []journal.Entry {
	return []journal.Entry{
		withID(edit("anna", base, "sizes/length", "40 in")), withID(edit("anna", base, "sizes/depth", "20 in")),
		withID(fact("anna", base, meant(thing, ""))), withID(edit("anna", base, "sizes/length", "39 in")),
		withID(fact("anna", base, meant(thing, "shelf"))),
	}
}

func TestAnAcceptedChangeIsWrittenWholeAndItsRepeatIsHarmless(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		one, two := open(), open()
		p := createBoard(t, one)
		made := write(t, one, p.ID, fact("anna", 0, sized("")))
		batch := accepted(1, made.ID)
		first, err := one.Append(context.Background(), p.ID, batch...)
		if err != nil {
			t.Fatal(err)
		}
		if got := value(t, one, p.ID, "sizes/length"); got != "39 in" || first[3].Old != "40 in" {
			t.Errorf("the length is %q and was %q before: the later of one write wins", got, first[3].Old)
		}
		for _, s := range []*Store{one, two} {
			again, err := s.Append(context.Background(), p.ID, batch...)
			if diff := cmp.Diff(first, again); err != nil || diff != "" {
				t.Error(err, diff)
			}
		}
		if log := logOf(t, two, p.ID); len(log) != 6 {
			t.Errorf("%d entries", len(log))
		}
		changed := batch[4]
		changed.Fact = &journal.Happened{What: journal.Meant, Thing: made.ID, Place: "another shelf"}
		refused(t, two, p.ID, "id", "another entry", changed)

		unknown := accepted(6, "01890000-0000-7000-8000-000000000009")
		refused(t, two, p.ID, "fact.thing", "first told of", unknown...)
		if got := value(t, two, p.ID, "sizes/length"); got != "39 in" {
			t.Errorf("half a refused change is in the text: %q", got)
		}
		clashes(t, two, p.ID, ConflictError{Path: "sizes/length", Yours: "40 in", Theirs: "39 in", Number: 5, Actor: "anna"}, accepted(1, made.ID)...)
		snapshotsAreTheReplay(t, one, p.ID)
	})
}

func TestTwoWhoTellAndAskAtOnceLoseNothing(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		made := write(t, s, p.ID, fact("anna", 0, sized("")))
		const writes = 15
		var done sync.WaitGroup
		for _, s := range []*Store{s, open()} {
			done.Go(func() {
				for range writes {
					if _, err := s.Append(context.Background(), p.ID, asks(0, "sizes/depth", "20 in"), fact("ben", 1, meant(made.ID, "shelf"))); err != nil {
						t.Error(err)
					}
				}
			})
		}
		done.Wait()
		log := logOf(t, s, p.ID)
		if len(log) != 1+2*2*writes {
			t.Fatalf("%d entries", len(log))
		}
		for i := 1; i < len(log); i += 2 {
			if no := log[i].Order.No; no != i/2+1 || log[i+1].Kind != journal.Fact {
				t.Errorf("entry %d is change %d, and %s follows", i+1, no, log[i+1].Kind)
			}
		}
	})
}

func TestARepeatedFactIsHarmlessWhateverItsEmptyLists(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := createBoard(t, s)
		h := sized("")
		h.Shape.Openings = []journal.Opening{} // as a browser sends none
		sent := withID(fact("anna", 0, h))
		first := write(t, s, p.ID, sent)
		if again := write(t, s, p.ID, sent); !cmp.Equal(first, again) || len(logOf(t, s, p.ID)) != 1 {
			t.Error(cmp.Diff(first, again))
		}
		for name, e := range map[string]journal.Entry{
			"asked": asks(1, "sizes/length", "40 in"), "withdrawn": withdraw("ben", 1, first),
		} {
			e = withID(e)
			if one, two := write(t, s, p.ID, e), write(t, s, p.ID, e); !cmp.Equal(one, two) {
				t.Errorf("%s: %s", name, cmp.Diff(one, two))
			}
		}
		said := logOf(t, s, p.ID)
		for _, e := range said {
			if e.Kind == journal.Asked {
				yes := withID(answer(3, e, true))
				if one, two := write(t, s, p.ID, yes), write(t, s, p.ID, yes); !cmp.Equal(one, two) {
					t.Errorf("answer: %s", cmp.Diff(one, two))
				}
			}
		}
		if n := len(logOf(t, s, p.ID)); n != 4 {
			t.Errorf("%d entries, want 4", n)
		}
	})
}

func TestARowThatCantBeReadNamesItsEntry(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		for i, row := range []struct{ column, text string }{
			{"fact", `{"what":"finished","colour":"red"}`},
			{"fact", `{"what":"finished"} {}`},
			{"fact", `{"what":`},
			{"fact", ``},
			{"asked", `{"no":1,"edits":[],"sums":2}`},
			{"asked", `{"no":1}`},
		} {
			s := open()
			p, err := s.Create(context.Background(), Write{Actor: "anna"}, fmt.Sprint("board ", i), []byte(board))
			if err != nil {
				t.Fatal(err)
			}
			write(t, s, p.ID, edit("anna", 0, "sizes/length", "41 in"))
			write(t, s, p.ID, fact("anna", 1, journal.Happened{What: journal.Finished}))
			if _, err := s.write.Exec(`update entries set `+row.column+` = $1 where piece = $2 and number = 2`, row.text, p.ID); err != nil {
				t.Fatal(err)
			}
			if _, err := s.Log(context.Background(), p.ID, 0); err == nil || !strings.Contains(err.Error(), "entry 2") {
				t.Errorf("%s %s: %v", row.column, row.text, err)
			}
		}
	})
}

func TestAnAcceptedLayoutIsKeptAsItWasSaidAndCanBeWithdrawn(t *testing.T) {
	each(t, func(t *testing.T, open func() *Store) {
		s := open()
		p := create(t, s)
		ctx := context.Background()
		first := withID(laid("anna", 0, 78))
		kept, err := s.Append(ctx, p.ID, first)
		if err != nil {
			t.Fatal(err)
		}
		before := text(t, s, p.ID)
		again, err := s.Append(ctx, p.ID, first)
		if err != nil || len(again) != 1 || again[0].Number != 1 || !again[0].Same(first) {
			t.Errorf("sent again: %+v, %v", again, err)
		}
		other := first
		other.Layout = laid("anna", 0, 79).Layout
		var bad *InputError
		if _, err := s.Append(ctx, p.ID, other); !errors.As(err, &bad) || bad.Field != "id" {
			t.Errorf("another layout under its id: %v", err)
		}
		if diff := cmp.Diff(kept, logOf(t, s, p.ID)); diff != "" {
			t.Error(diff)
		}
		if _, err := s.Append(ctx, p.ID, withdraw("ben", 1, kept[0])); err != nil {
			t.Fatal(err)
		}
		if r := journal.Fold(logOf(t, s, p.ID)); len(r.Layouts) != 0 || text(t, s, p.ID) != before {
			t.Errorf("%+v, and the text is\n%s", r.Layouts, text(t, s, p.ID))
		}
	})
}
