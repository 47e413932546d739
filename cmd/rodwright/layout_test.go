package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rodwright/build"
	"rodwright/cut"
	"rodwright/internal/store"
	"rodwright/internal/store/beside"
	"rodwright/journal"
	"rodwright/layout"
	"rodwright/piece"
	"rodwright/shop"
)

// aBench returns the file of a low bench in a folder of its own.
func aBench(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../../examples/low-bench.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "bench.piece.yaml")
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
	return file
}

// lavish is an entry that accepts a layout of the bench's pipe that opens a stick more than it needs, at 28 of the sample
// shop; least is what the derived one costs.
func lavish(t *testing.T, file string) (e journal.Entry, least float64) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := piece.Read(file, text)
	if err != nil {
		t.Fatal(err)
	}
	b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
	if err != nil {
		t.Fatal(err)
	}
	l, _, _ := b.LayoutOf(layout.OfSticks, "3/4")
	a := *l.Answer
	a.Used = append(a.Used[:len(a.Used):len(a.Used)], cut.Used{Stock: a.Used[0].Stock})
	a.Cost, a.Bound, a.Proven, a.Waste = a.Cost+28, a.Cost-1, false, cut.Waste{}
	kept, err := build.Acceptable(l.Task, &a)
	if err != nil {
		t.Fatal(err)
	}
	return journal.Entry{Actor: "ben", Kind: journal.Accepted, Layout: &kept}, l.Answer.Cost
}

// done runs what must end well, and returns what it prints.
func done(t *testing.T, args ...string) string {
	t.Helper()
	code, out, errs := run("", args...)
	if code != exitDone || errs != "" {
		t.Fatalf("%q: exit %d, %s", args, code, errs)
	}
	return out
}

func printed(t *testing.T, text string, wanted ...string) {
	t.Helper()
	for _, want := range wanted {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
}

func TestALayoutIsLookedDeeperForAndAccepted(t *testing.T) {
	file := aBench(t)
	e, least := lavish(t, file)
	if _, err := beside.Append(beside.Name(file), time.Now(), func([]journal.Entry) ([]journal.Entry, error) { return []journal.Entry{e}, nil }); err != nil {
		t.Fatal(err)
	}
	printed(t, done(t, "derive", file), "accepted by ben in entry 1; another that costs")

	out := done(t, "layout", file)
	printed(t, out, "LAYOUT  3/4\n", fmt.Sprintf("before  cost %.2f, at most ", least+28), fmt.Sprintf("now     cost %.2f, proven: no layout costs less", least),
		"the same, nothing can be better", "nothing is written; --accept takes what is better")
	if list := done(t, "journal", "list", file); !strings.Contains(list, ", 1 entry") {
		t.Errorf("something was written:\n%s", list)
	}

	printed(t, done(t, "layout", file, "--accept", "--actor", "anna"), "accepted: entry 2")
	printed(t, done(t, "journal", "list", file), "anna  layout of pipe 3/4 accepted, cost ", ", none costs less\n")
	printed(t, done(t, "derive", file), "accepted by anna in entry 2\n")
	if out := done(t, "layout", file, "--accept"); strings.Contains(out, "accepted: entry") || strings.Contains(out, "nothing is written") {
		t.Errorf("what can't be better is accepted again:\n%s", out)
	}

	done(t, "journal", "add", file, "--actor", "anna", "edit", "sizes/length", "50 in")
	printed(t, done(t, "derive", file), "accepted by anna in entry 2 for an earlier state, and no longer fits: ", "look deeper again")
	printed(t, done(t, "layout", file, "--accept", "--material", "3/4"), "accepted: entry 4") // it takes the place of the one out of date
	done(t, "journal", "undo", file, "4")
	done(t, "journal", "undo", file, "3", "--actor", "anna")
	printed(t, done(t, "derive", file), "accepted by anna in entry 2\n") // with the old length it fits again
}

func TestALayoutOfAPieceOfAShopIsAcceptedThere(t *testing.T) {
	file := aBench(t)
	e, least := lavish(t, file)
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	db, ctx := filepath.Join(t.TempDir(), "shop.db"), context.Background()
	s, err := store.Open(ctx, db)
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Create(ctx, store.Write{Actor: "ben"}, "bench", text)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Append(ctx, p.ID, e); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	var got struct {
		Piece   string
		Number  int64
		Stopped bool
		Layouts []struct {
			Kind, Material, Key string
			Before, After       struct{ Cost, Bound, Gap float64 }
			Better              bool
			Accepted            *int64
			Layout              struct{ Cost float64 }
		}
	}
	if err := json.Unmarshal([]byte(done(t, "layout", "bench", "--shop", db, "--material", "3/4", "--accept", "--json")), &got); err != nil {
		t.Fatal(err)
	}
	if len(got.Layouts) != 1 || got.Number != 1 || got.Stopped {
		t.Fatalf("%+v", got)
	}
	if l := got.Layouts[0]; l.Before.Cost != least+28 || l.After.Cost != least || l.After.Bound != least || l.Layout.Cost != least || !l.Better || l.Accepted == nil || *l.Accepted != 2 || l.Key != e.Layout.Key {
		t.Errorf("%+v", l)
	}
	printed(t, done(t, "journal", "list", "bench", "--shop", db), "layout of pipe 3/4 accepted")
}

func TestALookDeeperThatCanNotBeIsRefused(t *testing.T) {
	file := aBench(t)
	for want, args := range map[string][]string{
		`nothing of "ebony" is cut for this piece; there are 3/4, white-ash 8/4`: {"layout", file, "--material", "ebony"},
		"there is no time to look in":                                            {"layout", file, "--within", "0s"},
		"standard input has no journal":                                          {"layout", "-"},
	} {
		code, out, errs := run("", args...)
		if code != exitInput || out != "" || !strings.Contains(errs, want) {
			t.Errorf("%q: exit %d, %q, %q", args, code, out, errs)
		}
	}
}

// The signal comes again and again, so that it comes while the search runs too; this test hears it itself, which keeps the
// first from ending it.
func TestASignalEndsTheLookWithTheBestSoFar(t *testing.T) {
	heard := make(chan os.Signal, 1)
	signal.Notify(heard, os.Interrupt)
	defer signal.Stop(heard)
	over := make(chan struct{})
	sending := make(chan struct{})
	go func() {
		defer close(sending)
		own, err := os.FindProcess(os.Getpid())
		for err == nil {
			select {
			case <-over:
				return
			case <-time.After(20 * time.Millisecond):
				if err = own.Signal(os.Interrupt); err == nil {
					<-heard // none is on its way when this test ends
				}
			}
		}
	}()
	began := time.Now()
	out := done(t, "layout", "../../examples/large.piece.yaml", "--within", "10m")
	close(over)
	<-sending
	if time.Since(began) > 5*time.Minute {
		t.Error("it looked to the end")
	}
	printed(t, out, "LAYOUT  white-oak 6/4", "stopped: the best so far is told")
}

func TestNoMoreIsPromisedThanIsProven(t *testing.T) {
	for share, want := range map[float64]string{0.0004: "0.1", 0.05: "5.0", 0.0526: "5.3", 0.1103: "11.1"} {
		if got := percent(share); got != want {
			t.Errorf("%v: %s, want %s", share, got, want)
		}
	}
}
