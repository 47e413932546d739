// Command cutting lays out open problems of cutting and says how far its layouts and bounds are from what is
// known. Every layout goes through the independent verifier; a bound above a known cost, or a cost below a
// known bound, fails the run.
//
//	go run ./bench/cutting --data DIR [--set NAME] [--within 1s] [--long]
//	go run ./bench/cutting --data DIR --programs DIR
//
// The times are those of the clock; with --processor, and GOMAXPROCS=1, those of one processor, which other work on
// the machine changes less.
//
// With --programs it lays nothing out: it writes the problems of hard28, of several lengths and of glued-up panels as
// integer programs in the free MPS format, which any general solver reads. To compare:
//
//	go run ./bench/cutting --data DIR --programs P
//	for f in P/*.mps; do cbc $f -timeMode cpu -seconds 60 -solve -quit; done
//	GOMAXPROCS=1 go run ./bench/cutting --data DIR --set 1d --only Hard28 --within 1s --processor -v
//	GOMAXPROCS=1 go run ./bench/cutting --data DIR --set multi --within 1s --processor -v
//	GOMAXPROCS=1 go run ./bench/cutting --data DIR --set glue-up --within 1s --processor -v
//
// Sticks are written as a flow along the stick, see [arcFlow], panels as the model that comes with the data.
package main

import (
	"cmp"
	"context"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"time"

	"rodwright/cut"
	"rodwright/cut/verify"
)

// set is a family of open problems.
type set struct {
	name   string
	about  string
	within time.Duration // by default
	run    func(*run) error
}

var sets = []set{
	{"1d", "sticks of one length, 1 615 problems", time.Second, runOneLength},
	{"multi", "sticks of several lengths with prices, 20 problems", 100 * time.Millisecond, runManyLengths},
	{"glue-up", "panels glued from boards with knots and splits, 20 problems", 100 * time.Millisecond, runGlueUps},
	{"guillotine", "single sheets filled for value, gcut1 to gcut12 and cgcut1 to cgcut3", time.Second, runGuillotine},
	{"bins", "rectangles on equal sheets, three stages, 500 problems", 100 * time.Millisecond, runBins},
	{"glass", "the glass challenge: stacks in turn, flaws, three stages and a trim", 30 * time.Second, runGlass},
}

// run is one run over one set.
type run struct {
	data    string
	within  time.Duration
	only    string
	verbose bool
	long    bool             // the slow ones too
	clock   func() time.Time // that the time of each problem goes by
	wrong   int              // layouts refused or claims refuted
}

func main() {
	names := make([]string, len(sets))
	for i, s := range sets {
		names[i] = s.name
	}
	data := flag.String("data", "", "folder of the open data")
	which := flag.String("set", "", "one of "+strings.Join(names, ", ")+"; all where it is not given")
	within := flag.Duration("within", 0, "time for each problem; the set's own where it is not given")
	only := flag.String("only", "", "only problems whose name begins with this")
	long := flag.Bool("long", false, "the slow ones too, with more time")
	programs := flag.String("programs", "", "instead: folder to write integer programs into, for a general solver")
	processor := flag.Bool("processor", false, "time for each problem by the processor's time of this program, for a machine with other work on it")
	verbose := flag.Bool("v", false, "a line for every problem")
	flag.Parse()
	if *data == "" {
		fmt.Fprintln(os.Stderr, "error: --data DIR is missing: the folder with the open data")
		os.Exit(2)
	}
	if *programs != "" {
		r := &run{data: *data, only: *only}
		if err := r.writePrograms(*programs); err != nil {
			fmt.Fprintln(os.Stderr, "error:", err)
			os.Exit(1)
		}
		return
	}
	clock, ok := time.Now, true
	if *processor {
		if clock, ok = processorClock(); !ok {
			fmt.Fprintln(os.Stderr, "error: --processor: the processor's time is not known on this system; leave it out")
			os.Exit(2)
		}
	}
	for _, s := range sets {
		if *which != "" && s.name != *which {
			continue
		}
		r := &run{data: *data, within: cmp.Or(*within, s.within), only: *only, verbose: *verbose, long: *long, clock: clock}
		fmt.Printf("== %s: %s, %v each\n", s.name, s.about, r.within)
		if err := s.run(r); err != nil {
			fmt.Fprintln(os.Stderr, "error:", err)
			os.Exit(1)
		}
		if r.wrong > 0 {
			fmt.Fprintf(os.Stderr, "error: %d layouts or claims are wrong\n", r.wrong)
			os.Exit(1)
		}
	}
}

// known is what is known of a problem's least cost.
type known struct {
	set, name   string
	least, most float64
}

// outcome is one answer with its time.
type outcome struct {
	known
	answer *cut.Answer
	took   time.Duration
}

// timed lays one problem out within the time of the run, as rodwright cut --within does: one search with no other end.
func (r *run) timed(k known, solve func(context.Context) (*cut.Answer, error), check func(*cut.Answer) []verify.Fault) (outcome, error) {
	start := r.clock()
	a, err := solve(cut.Until(context.Background(), r.clock, start.Add(r.within)))
	if err != nil {
		return outcome{}, fmt.Errorf("%s: %w", k.name, err)
	}
	o := outcome{k, a, r.clock().Sub(start)}
	for _, f := range check(a) {
		r.refute("%s: %v", k.name, f)
	}
	const eps = 1e-6
	if a.Bound > k.most+eps {
		r.refute("%s: bound %v above the known cost %v", k.name, a.Bound, k.most)
	}
	if a.Cost < k.least-eps {
		r.refute("%s: cost %v below the known bound %v", k.name, a.Cost, k.least)
	}
	if r.verbose {
		fmt.Printf("%-24s cost %-10v bound %-10v known %v to %v  proven %-5v %v\n", k.name, a.Cost, a.Bound, k.least, k.most, a.Proven, o.took.Round(time.Millisecond))
	}
	return o, nil
}

func (r *run) refute(format string, args ...any) {
	r.wrong++
	fmt.Printf("WRONG "+format+"\n", args...)
}

// wants reports whether a problem is asked for.
func (r *run) wants(name string) bool { return strings.HasPrefix(name, r.only) }

// percentile is the time below which a share of the answers came.
func percentile(all []outcome, share float64) time.Duration {
	if len(all) == 0 {
		return 0
	}
	took := make([]time.Duration, len(all))
	for i, o := range all {
		took[i] = o.took
	}
	slices.Sort(took)
	return took[min(len(took)-1, int(share*float64(len(took))))].Round(time.Millisecond)
}
