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
	"testing"
	"time"

	"github.com/google/uuid"
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

// appendForever appends entries to the one piece of the shop, which it makes when it is missing, and prints the
// id of each once it was acknowledged. It returns only when something fails.
func appendForever(ctx context.Context, file string) error {
	s, err := Open(ctx, file)
	if err != nil {
		return err
	}
	p, err := s.Piece(ctx, "board")
	if missing := new(NotFoundError); errors.As(err, &missing) {
		p, err = s.Create(ctx, Write{Actor: "anna"}, "board", []byte(board))
	}
	for base := p.Number; err == nil; base++ {
		e := edit("anna", base, "sizes/length", fmt.Sprintf("%d in", 20+base%20))
		e.ID = uuid.Must(uuid.NewV7()).String()
		if _, err = s.Append(ctx, p.ID, e); err == nil {
			fmt.Println(e.ID)
		}
	}
	return err
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
		if _, err := uuid.Parse(lines.Text()); err == nil { // a line cut short was not heard
			acknowledged = append(acknowledged, lines.Text())
		}
	}
	if err := program.Wait(); program.ProcessState.Exited() {
		t.Fatalf("the program ended by itself: %v", err)
	}
	return acknowledged
}

// survived opens the shop after a kill, with nobody else at it, and checks that all of it is there: what was
// acknowledged, no entry half, numbers without a gap from the one after last on. It returns the last number.
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
	want := "42 in" // as in board
	there := map[string]bool{}
	for _, e := range log {
		last++
		if err := e.Check(); err != nil || e.Number != last {
			t.Errorf("entry at place %d is %+v: %v", last, e, err)
		}
		there[e.ID], want = true, e.New
	}
	for _, id := range acknowledged {
		if !there[id] {
			t.Errorf("entry %s was acknowledged and is lost", id)
		}
	}
	if got := value(t, s, p.ID, "sizes/length"); (len(log) > 0 || last == 0) && got != want {
		t.Errorf("the text holds %q, the log %q", got, want)
	}
	if p.Number != last {
		t.Errorf("the piece stands at entry %d, its log ends at %d", p.Number, last)
	}
	return last
}

func TestWhatWasAcknowledgedOutlivesAKill(t *testing.T) {
	file := filepath.Join(t.TempDir(), "shop.db")
	var last int64
	acknowledged, kills := 0, 200
	for range kills {
		ids := killed(t, file)
		acknowledged += len(ids)
		last = survived(t, file, last, ids)
	}
	s := openFile(t, file)
	p, err := s.Piece(context.Background(), "board")
	if err != nil {
		t.Fatal(err)
	}
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
