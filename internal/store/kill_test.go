package store

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/google/uuid"

	"rodwright/journal"
)

// appendsTo is the environment variable that makes this test binary a program that appends to the named shop
// until it is killed.
const appendsTo = "RODWRIGHT_TEST_APPENDS_TO"

func TestMain(m *testing.M) {
	if file := os.Getenv(appendsTo); file != "" {
		fmt.Fprintln(os.Stderr, appendForever(context.Background(), file))
		os.Exit(1)
	}
	os.Exit(m.Run())
}

// appendForever appends to the one piece of the shop, which it makes when it is missing: a fact, an edit and an
// accepted change, over and over. It prints the ids of what it wrote at once, once that was acknowledged. It returns
// only when something fails.
func appendForever(ctx context.Context, file string) error {
	s, err := Open(ctx, file)
	if err != nil {
		return err
	}
	p, err := s.Piece(ctx, "board")
	if missing := new(NotFoundError); errors.As(err, &missing) {
		p, err = s.Create(ctx, Write{Actor: "anna"}, "board", []byte(board))
	}
	for base, turn := p.Number, rand.IntN(len(turns)); err == nil; turn++ {
		var kept []journal.Entry
		if kept, err = s.Append(ctx, p.ID, turns[turn%len(turns)](base)...); err == nil {
			fmt.Println(ids(kept))
			base += int64(len(kept))
		}
	}
	return err
}

// turns are what the program appends at once, in turn.
var turns = []func(base int64) []journal.Entry{
	func(base int64) []journal.Entry { return []journal.Entry{fact("anna", base, sized(""))} },
	func(base int64) []journal.Entry {
		return []journal.Entry{edit("anna", base, "sizes/length", fmt.Sprintf("%d in", 20+base%20))}
	},
	acceptedAtOnce,
}

// accepts is who writes the edits of accepted changes, and nothing else.
const accepts = "ben"

// acceptedAtOnce is an accepted change: an edit, a part made for it, and what that is for from then on. The note of
// both facts is the id of the edit.
func acceptedAtOnce(base int64) []journal.Entry {
	e := withID(edit(accepts, base, "sizes/length", fmt.Sprintf("%d in", 20+base%20)))
	of := sized("")
	of.Why = e.ID
	made := withID(fact("anna", base, of))
	rack := meant(made.ID, "")
	rack.Why = e.ID
	return []journal.Entry{e, made, fact("anna", base, rack)}
}

func ids(es []journal.Entry) string {
	var out []string
	for _, e := range es {
		out = append(out, e.ID)
	}
	return strings.Join(out, " ")
}

// allOrNone checks that of each accepted change all entries are in the log or none.
func allOrNone(t *testing.T, log []journal.Entry) {
	t.Helper()
	facts := map[string]int{}
	for _, e := range log {
		if e.Kind == journal.Fact && e.Fact.Why != "" {
			facts[e.Fact.Why]++
		}
	}
	for _, e := range log {
		if e.Kind == journal.Edit && e.Actor == accepts {
			if n := facts[e.ID]; n != 2 {
				t.Errorf("of the change accepted in entry %d are %d facts there, want 2", e.Number, n)
			}
			delete(facts, e.ID)
		}
	}
	for id, n := range facts {
		t.Errorf("of the change of %s are %d facts there, and its edit is not", id, n)
	}
}

// killed starts a program that appends to the shop, kills it and returns the ids that it said were kept. The
// moment has no pattern: somewhere in the start for one kill in four, else somewhere after the first entry, so
// that any may be in the middle of a write. This wait is the test's subject, not a guess at how long something
// takes: whatever the moment, the same must hold.
func killed(t *testing.T, file string) (acknowledged []string) {
	t.Helper()
	program := exec.Command(os.Args[0])
	program.Env = append(os.Environ(), appendsTo+"="+file)
	program.Stderr = os.Stderr
	out, err := program.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := program.Start(); err != nil {
		t.Fatal(err)
	}
	killWithin := func(most time.Duration) {
		time.AfterFunc(rand.N(most), func() { _ = program.Process.Kill() })
	}
	early := rand.IntN(4) == 0
	if early {
		killWithin(50 * time.Millisecond)
	}
	for lines := bufio.NewScanner(out); lines.Scan(); {
		if len(acknowledged) == 0 && !early {
			killWithin(20 * time.Millisecond)
		}
		for _, id := range strings.Fields(lines.Text()) {
			if _, err := uuid.Parse(id); err == nil { // what was cut short was not heard
				acknowledged = append(acknowledged, id)
			}
		}
	}
	if err := program.Wait(); program.ProcessState.Exited() {
		t.Fatalf("the program ended by itself: %v", err)
	}
	return acknowledged
}

// survived opens the shop after a kill, with nobody else at it, and checks that all of it is there: what was
// acknowledged, no entry and no accepted change half, numbers without a gap from the one after last on. It returns the last number.
func survived(t *testing.T, file string, last int64, acknowledged []string) int64 {
	t.Helper()
	ctx := context.Background()
	s, err := Open(ctx, file)
	if err != nil {
		t.Fatalf("the next start: %v", err)
	}
	defer func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	}()
	var state string
	if err := s.read.QueryRow("pragma integrity_check").Scan(&state); err != nil || state != "ok" {
		t.Fatalf("integrity: %s, %v", state, err)
	}
	p, err := s.Piece(ctx, "board")
	if missing := new(NotFoundError); errors.As(err, &missing) && len(acknowledged) == 0 && last == 0 {
		return 0 // killed before it was made
	}
	if err != nil {
		t.Fatal(err)
	}
	log, err := s.Log(ctx, p.ID, last)
	if err != nil {
		t.Fatal(err)
	}
	want, edited := "42 in", last == 0 // as in board
	there := map[string]bool{}
	for _, e := range log {
		last++
		if err := e.Check(); err != nil || e.Number != last {
			t.Errorf("entry at place %d is %+v: %v", last, e, err)
		}
		there[e.ID] = true
		if e.Kind == journal.Edit {
			want, edited = e.New, true
		}
	}
	allOrNone(t, log)
	for _, id := range acknowledged {
		if !there[id] {
			t.Errorf("entry %s was acknowledged and is lost", id)
		}
	}
	if got := value(t, s, p.ID, "sizes/length"); edited && got != want {
		t.Errorf("the text holds %q, the log %q", got, want)
	}
	if p.Number != last {
		t.Errorf("the piece stands at entry %d, its log ends at %d", p.Number, last)
	}
	return last
}

// killsOf is the environment variable that says how many kills are to be survived. Without it there are as many of
// mostKills as fit in a short time.
const (
	killsOf   = "RODWRIGHT_KILLS"
	mostKills = 500
	shortTime = 15 * time.Second
)

func TestWhatWasAcknowledgedOutlivesAKill(t *testing.T) {
	most, err := strconv.Atoi(os.Getenv(killsOf))
	whole := err == nil
	if !whole {
		most = mostKills
	}
	file := filepath.Join(t.TempDir(), "shop.db")
	var last int64
	acknowledged, kills := 0, 0
	for began := time.Now(); kills < most && (whole || time.Since(began) < shortTime); kills++ {
		ids := killed(t, file)
		acknowledged += len(ids)
		last = survived(t, file, last, ids)
	}
	s := openFile(t, file)
	p, err := s.Piece(context.Background(), "board")
	if err != nil {
		t.Fatal(err)
	}
	allOrNone(t, logOf(t, s, p.ID))
	snapshotsAreTheReplay(t, s, p.ID)
	t.Logf("%d kills: %d entries acknowledged, %d kept", kills, acknowledged, last)
}

func TestAShopKilledWhileItIsMadeIsMadeByTheNextStart(t *testing.T) {
	for range 20 {
		file := filepath.Join(t.TempDir(), "shop.db")
		last := survived(t, file, 0, killed(t, file))
		survived(t, file, last, nil)
	}
}
