//go:build unix

package wire

import (
	"context"
	"flag"
	"slices"
	"syscall"
	"testing"
	"time"

	"rodwright/cut"
)

// byProcessor measures by the time that this program used, for a machine with other work on it.
var byProcessor = flag.Bool("processor", false, "deadlines by the processor's time of this program instead of the clock")

// processor is the time that this program has used, as a clock.
func processor() time.Time {
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		panic(err)
	}
	return time.Unix(0, used.Utime.Nano()+used.Stime.Nano())
}

// answered lays a random problem out by a deadline, has the layout verified, and tells how long the answer took.
func answered(t testing.TB, kind Kind, text string, within time.Duration) time.Duration {
	t.Helper()
	clock := time.Now
	if *byProcessor {
		clock = processor
	}
	problem := File{Name: "problem", Text: []byte(text)}
	start := clock()
	out, err := Run(context.Background(), kind, problem, Options{JSON: true, Within: within, Now: clock})
	took := clock().Sub(start)
	if err != nil {
		t.Fatal(err)
	}
	faults, err := Verify(kind, problem, File{Name: "layout", Text: out})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range faults {
		t.Errorf("%v", f)
	}
	return took
}

// The time is not asserted closely: other work on the machine would fail it. BenchmarkDeadline tells it.
func TestByADeadlineAValidLayoutIsThere(t *testing.T) {
	for _, c := range randomProblems {
		for seed := range 8 {
			if took := answered(t, c.kind, c.draw(cut.NewDice(uint64(seed)), c.large), 20*time.Millisecond); took > 2*time.Second {
				t.Errorf("%s %d: answered after %v", c.kind, seed, took)
			}
		}
	}
}

// BenchmarkDeadline tells when answers come that were wanted within 50 ms, over problems from tiny to large: half of
// them, 99 of 100, and the longest. For example
//
//	go test -run '^$' -bench Deadline -benchtime 300x ./cut/wire
func BenchmarkDeadline(b *testing.B) {
	for _, c := range randomProblems {
		b.Run(string(c.kind), func(b *testing.B) {
			took := make([]time.Duration, b.N)
			for i := range took {
				b.StopTimer()
				text := c.draw(cut.NewDice(uint64(1000+i)), c.large)
				b.StartTimer()
				took[i] = answered(b, c.kind, text, 50*time.Millisecond)
			}
			slices.Sort(took)
			for name, at := range map[string]int{"p50-ms": b.N / 2, "p99-ms": b.N * 99 / 100, "longest-ms": b.N - 1} {
				b.ReportMetric(took[at].Seconds()*1000, name)
			}
		})
	}
}
