package sheet_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"runtime/debug"
	"slices"
	"testing"
	"time"

	"rodwright/cut"
	"rodwright/cut/sheet"
	"rodwright/cut/verify"
	"rodwright/length"
)

// job is a problem of some thousand parts or few, made by chance: boards of a shop with their offcuts, parts of many
// kinds or of few.
func job(dice *rand.Rand, pieces int) *sheet.Problem {
	size := func(least, most int) length.Length { return length.Length(least+dice.IntN(most-least+1)) * mm }
	p := &sheet.Problem{
		Unit: length.MM, Kerf: size(0, 4), Trim: size(0, 12), Stages: []int{0, 2, 3, 3, 4}[dice.IntN(5)],
		Useful: [2]length.Length{300 * mm, 150 * mm},
		Sheets: []sheet.Sheet{
			{Tag: "P1", Length: 2440 * mm, Width: 1220 * mm, Count: cut.Any, Price: cut.Priced(60)},
			{Tag: "P2", Length: 3050 * mm, Width: 1525 * mm, Count: cut.Any, Price: cut.Priced(95), Grain: dice.IntN(2) == 0},
		},
	}
	for i := range dice.IntN(12) {
		s := sheet.Sheet{Tag: fmt.Sprint("R", i), Length: size(500, 1800), Width: size(300, 1000), Count: 1, Price: cut.Priced(float64(dice.IntN(20)))}
		if dice.IntN(2) == 0 {
			s.Defects = []cut.Rect{{X: size(0, 400), Y: size(0, 200), Length: size(10, 60), Width: size(10, 60)}}
		}
		p.Sheets = append(p.Sheets, s)
	}
	kinds := min(pieces, []int{5, 40, 300, 2000, pieces}[dice.IntN(5)])
	valued := dice.IntN(5) == 0
	for i := range kinds {
		q := part(fmt.Sprint("D", i), size(60, 1100), size(40, 700), cut.Count(pieces/kinds))
		if i == 0 {
			q.Count += cut.Count(pieces % kinds)
		}
		if q.Turn = dice.IntN(2) == 0; valued {
			q.Value = cut.Priced(float64(1 + dice.IntN(50)))
		}
		p.Parts = append(p.Parts, q)
	}
	if valued {
		for i := range p.Sheets {
			p.Sheets[i].Count = max(p.Sheets[i].Count, 3)
		}
	}
	return p
}

// jobSizes are the pieces of the jobs that are asked for by a deadline.
var jobSizes = []int{10, 30, 100, 300, 1000, 3000, cut.MaxPieces / 2}

// BenchmarkDeadline answers jobs of 10 to 10 000 pieces within 50 ms: p99-ms is the time within which 99 of 100
// answers came, worst-ms that of the slowest.
func BenchmarkDeadline(b *testing.B) {
	for _, n := range jobSizes {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			dice := rand.New(rand.NewPCG(1, uint64(n)))
			var took []time.Duration
			for b.Loop() {
				p := job(dice, n)
				debug.FreeOSMemory() // what the verifier left of the last one
				start := time.Now()
				ctx, stop := context.WithTimeout(context.Background(), 50*time.Millisecond)
				a, err := sheet.Solve(ctx, p, cut.Limits{Nodes: 1 << 60})
				stop()
				took = append(took, time.Since(start))
				if err != nil {
					b.Fatal(err)
				}
				for _, f := range verify.Sheet(p, a) {
					b.Errorf("%v", f)
				}
			}
			slices.Sort(took)
			b.ReportMetric(float64(took[len(took)*99/100].Microseconds())/1e3, "p99-ms")
			b.ReportMetric(float64(took[len(took)-1].Microseconds())/1e3, "worst-ms")
		})
	}
}
