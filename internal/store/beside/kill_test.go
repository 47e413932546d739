package beside

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"sync"
	"testing"
	"time"

	"github.com/google/uuid"

	"rodwright/journal"
)

// appendsTo is the environment variable that makes this test binary a program that appends to the named journal
// until it is killed.
const appendsTo = "RODWRIGHT_TEST_APPENDS_TO_JOURNAL"

func TestMain(m *testing.M) {
	if path := os.Getenv(appendsTo); path != "" {
		fmt.Fprintln(os.Stderr, appendForever(path))
		os.Exit(1)
	}
	os.Exit(m.Run())
}

// together is how many entries the program writes at once. They have one note, by which they are known.
const together = 3

// appendForever appends entries and prints their note once they were acknowledged. It returns only when something
// fails.
func appendForever(path string) error {
	for {
		note := uuid.Must(uuid.NewV7()).String()
		_, err := Append(path, time.Now(), func(es []journal.Entry) ([]journal.Entry, error) {
			first := made()
			first.ID, first.Fact.Why = uuid.Must(uuid.NewV7()).String(), note
			again, later := meant(first.ID, ""), meant(first.ID, "shelf")
			again.Fact.Why, later.Fact.Why = note, note
			return []journal.Entry{first, again, later}, nil
		})
		if err != nil {
			return err
		}
		fmt.Println(note)
	}
}

// killed starts a program that appends to the journal, kills it at a moment without a pattern and returns the notes
// that it said were kept.
func killed(t *testing.T, path string) (acknowledged []string) {
	program := exec.Command(os.Args[0])
	program.Env = append(os.Environ(), appendsTo+"="+path)
	program.Stderr = os.Stderr
	out, err := program.StdoutPipe()
	if err != nil {
		t.Error(err)
		return nil
	}
	if err := program.Start(); err != nil {
		t.Error(err)
		return nil
	}
	for lines := bufio.NewScanner(out); lines.Scan(); {
		if len(acknowledged) == 0 {
			time.AfterFunc(rand.N(30*time.Millisecond), func() { _ = program.Process.Kill() })
		}
		if _, err := uuid.Parse(lines.Text()); err == nil { // a line cut short was not heard
			acknowledged = append(acknowledged, lines.Text())
		}
	}
	if err := program.Wait(); program.ProcessState.Exited() {
		t.Errorf("the program ended by itself: %v", err)
	}
	return acknowledged
}

// Two programs append to one journal at once and are killed: what either acknowledged is there, and of what was
// written together all or none.
func TestWhatTwoProgramsWroteOutlivesTheirKills(t *testing.T) {
	path := journalAt(t)
	acknowledged := 0
	for range 25 {
		var mu sync.Mutex
		var notes []string
		var done sync.WaitGroup
		for range 2 {
			done.Go(func() {
				ns := killed(t, path)
				mu.Lock()
				defer mu.Unlock()
				notes = append(notes, ns...)
			})
		}
		done.Wait()
		there := map[string]int{}
		for _, e := range load(t, path) {
			there[e.Fact.Why]++
		}
		for note, n := range there {
			if n != together {
				t.Errorf("%d of %d entries of %s are there", n, together, note)
			}
		}
		for _, note := range notes {
			if there[note] == 0 {
				t.Errorf("%s was acknowledged and is lost", note)
			}
		}
		acknowledged += len(notes)
	}
	t.Logf("50 kills: %d writes acknowledged, %d kept", acknowledged, len(load(t, path))/together)
}
