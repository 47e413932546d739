package store

import (
	"bufio"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
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
		appendForever(file)
	}
	os.Exit(m.Run())
}

// appendForever appends entries to the one piece of the shop and prints the id of each once it was
// acknowledged.
func appendForever(file string) {
	ctx := context.Background()
	fail := func(err error) {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	s, err := Open(ctx, file)
	if err != nil {
		fail(err)
	}
	p, err := s.Piece(ctx, "stool")
	if err != nil {
		fail(err)
	}
	for i := int64(0); ; i++ {
		id, err := uuid.NewV7()
		if err != nil {
			fail(err)
		}
		base, err := s.Piece(ctx, p.ID)
		if err != nil {
			fail(err)
		}
		e := journal.Entry{ID: id.String(), Actor: "anna", Base: base.Number, Kind: journal.Edit, Path: os.Getenv("RODWRIGHT_TEST_PATH"),
			New: fmt.Sprintf("%d in", 20+i%20)}
		if _, err := s.Append(ctx, p.ID, e); err != nil {
			fail(err)
		}
		fmt.Println(id)
	}
}

// A program is killed 200 times while it appends. Every entry that it was told is kept must be there, none
// half, and the next start needs no repair.
func TestWhatWasAcknowledgedOutlivesAKill(t *testing.T) {
	file := filepath.Join(t.TempDir(), "shop.db")
	s := openFile(t, file)
	p := create(t, s)
	path := sizes(t, stool(t))[0]
	acknowledged := map[string]bool{}
	for range 200 {
		killWhileAppending(t, file, path, acknowledged)
	}
	log, err := openFile(t, file).Log(context.Background(), p.ID, 0)
	if err != nil {
		t.Fatal(err)
	}
	for i, e := range log {
		if err := e.Check(); err != nil || e.Number != int64(i+1) {
			t.Errorf("entry at place %d is %+v: %v", i+1, e, err)
		}
		delete(acknowledged, e.ID)
	}
	for id := range acknowledged {
		t.Errorf("entry %s was acknowledged and is lost", id)
	}
	var state string
	if err := s.read.QueryRow("pragma integrity_check").Scan(&state); err != nil || state != "ok" {
		t.Errorf("integrity: %s, %v", state, err)
	}
	if got := value(t, s, p.ID, path); got != log[len(log)-1].New {
		t.Errorf("the text holds %q, the last entry %q", got, log[len(log)-1].New)
	}
	t.Logf("%d entries written under 200 kills", len(log))
}

// killWhileAppending starts a program that appends, kills it at a moment of no pattern, and notes what it said
// was kept.
func killWhileAppending(t *testing.T, file, path string, acknowledged map[string]bool) {
	t.Helper()
	program := exec.Command(os.Args[0])
	program.Env = append(os.Environ(), appendsTo+"="+file, "RODWRIGHT_TEST_PATH="+path)
	program.Stderr = os.Stderr
	out, err := program.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := program.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	after := time.Duration(rand.IntN(20_000)) * time.Microsecond
	for n := 0; lines.Scan(); n++ {
		if n == 0 { // at work: from now on any moment may be in the middle of a write
			time.AfterFunc(after, func() { _ = program.Process.Kill() })
		}
		if _, err := uuid.Parse(lines.Text()); err == nil { // a line cut short was not heard
			acknowledged[lines.Text()] = true
		}
	}
	if err := program.Wait(); program.ProcessState.Exited() {
		t.Fatalf("the program ended by itself: %v", err)
	}
}
