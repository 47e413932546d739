package frame_test

import (
	"fmt"
	"testing"
	"time"

	"rodwright/mechanics/frame"
)

// rack is a row of bays of four sticks each: two posts, a rail across and one along.
func rack(bays int) frame.Frame {
	f := frame.Frame{}
	for i := range bays {
		x := 500 * float64(i)
		for j, side := range []string{"front", "back"} {
			foot, head := fmt.Sprint(side, " foot ", i), fmt.Sprint(side, " head ", i)
			f.Nodes = append(f.Nodes, node(foot, x, 400*float64(j), 0, frame.Clamped), node(head, x, 400*float64(j), 900))
			f.Members = append(f.Members, rigid(fmt.Sprint(side, " post ", i), foot, head))
		}
		f.Members = append(f.Members, rigid(fmt.Sprint("across ", i), fmt.Sprint("front head ", i), fmt.Sprint("back head ", i)))
		from, to := fmt.Sprint("front head ", max(0, i-1)), fmt.Sprint("front head ", i)
		if i == 0 {
			from, to = "back foot 0", "front head 0"
		}
		f.Members = append(f.Members, rigid(fmt.Sprint("along ", i), from, to))
	}
	for i := range f.Members {
		f.Members[i].Section = bar
	}
	return f
}

func rackLoad(f frame.Frame) frame.Case {
	c := frame.Case{Pushes: []frame.Push{{Node: "front head 0", Force: frame.Vec{100, 50, -200}}}}
	for _, m := range f.Members {
		c.Evens = append(c.Evens, frame.Even{Member: m.Name, PerMM: frame.Vec{0, 0, -0.1}})
	}
	return c
}

func work(t testing.TB, f frame.Frame, c frame.Case) {
	m, err := frame.New(f)
	if err != nil {
		t.Fatal(err)
	}
	if _, err = m.Solve(c); err != nil {
		t.Fatal(err)
	}
}

func BenchmarkSticks(b *testing.B) {
	for _, sticks := range []int{4, 40, 60, 400, 4000} {
		b.Run(fmt.Sprint(sticks), func(b *testing.B) {
			f := rack(sticks / 4)
			c := rackLoad(f)
			for b.Loop() {
				work(b, f, c)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*sticks), "ns/stick")
		})
	}
}

// BenchmarkMoreCases is what another case costs once the frame is factored.
func BenchmarkMoreCases(b *testing.B) {
	f := rack(15)
	c := rackLoad(f)
	m, err := frame.New(f)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := m.Solve(c); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkAPanelOverTheWholeRack binds every head: without a border every node would stand in every row.
func BenchmarkAPanelOverTheWholeRack(b *testing.B) {
	for _, sticks := range []int{40, 400} {
		b.Run(fmt.Sprint(sticks), func(b *testing.B) {
			f := panelled(sticks / 4)
			c := rackLoad(f)
			for b.Loop() {
				work(b, f, c)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*sticks), "ns/stick")
		})
	}
}

func panelled(bays int) frame.Frame {
	f := rack(bays)
	top := frame.Panel{Name: "top", Normal: frame.Vec{0, 0, 1}}
	for i := range bays {
		top.Nodes = append(top.Nodes, fmt.Sprint("front head ", i), fmt.Sprint("back head ", i))
	}
	f.Panels = []frame.Panel{top}
	return f
}

func TestTheWorkGrowsWithTheSticks(t *testing.T) {
	if sixty := quickest(t, rack(15)); sixty > 3*time.Millisecond {
		t.Errorf("60 sticks take %v, not under 3 ms", sixty)
	}
	for _, kind := range []func(int) frame.Frame{rack, panelled} {
		few, many := quickest(t, kind(10)), quickest(t, kind(100))
		// About ten times is right and a hundred would be the square; between them lie memory and other work.
		if many > 45*few {
			t.Errorf("40 sticks take %v, ten times as many %v: it should be about ten times", few, many)
		}
	}
}

// quickest is the shortest of several runs: what the work takes when nothing else is going on.
func quickest(t *testing.T, f frame.Frame) time.Duration {
	c, best := rackLoad(f), time.Hour
	for range 15 {
		start := time.Now()
		work(t, f, c)
		best = min(best, time.Since(start))
	}
	return best
}
