package frame_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/mechanics/frame"
)

// sticks draws a frame that stands: sticks grow one from another out of a clamped first node, some more close
// rings, and some nodes are held or stand on a spring.
func sticks(t *rapid.T) frame.Frame {
	f := frame.Frame{Nodes: []frame.Node{node("0", 0, 0, 0, frame.Clamped)}}
	n := rapid.IntRange(2, 9).Draw(t, "nodes")
	taken := map[[3]int]bool{{}: true}
	for i := 1; i < n; i++ {
		at := rapid.Custom(func(t *rapid.T) [3]int {
			g := rapid.IntRange(-3, 3)
			return [3]int{g.Draw(t, "x"), g.Draw(t, "y"), g.Draw(t, "z")}
		}).Filter(func(p [3]int) bool { return !taken[p] }).Draw(t, "at")
		taken[at] = true
		f.Nodes = append(f.Nodes, node(fmt.Sprint(i), 210*float64(at[0]), 190*float64(at[1]), 230*float64(at[2])))
		if rapid.IntRange(0, 3).Draw(t, "held") == 0 {
			for j := range 6 {
				f.Nodes[i].Hold[j] = rapid.SampledFrom([]float64{0, 500, 1e6, frame.Rigid}).Draw(t, "hold")
			}
		}
		f.Members = append(f.Members, someStick(t, fmt.Sprint("grown ", i), rapid.IntRange(0, i-1).Draw(t, "from"), i))
	}
	for i := range rapid.IntRange(0, 4).Draw(t, "rings") {
		a, b := rapid.IntRange(0, n-1).Draw(t, "a"), rapid.IntRange(0, n-1).Draw(t, "b")
		if a != b {
			f.Members = append(f.Members, someStick(t, fmt.Sprint("ring ", i), a, b))
		}
	}
	return f
}

func someStick(t *rapid.T, name string, from, to int) frame.Member {
	m := frame.Member{Name: name, From: fmt.Sprint(from), To: fmt.Sprint(to), Up: frame.Vec{0.3, 0.5, 0.7}}
	wide := rapid.Float64Range(10, 60)
	m.Section = frame.Rectangle(11000, 700, wide.Draw(t, "wide"), wide.Draw(t, "deep"))
	if rapid.Bool().Draw(t, "pipe") {
		m.Section = frame.Pipe(2e5, 8e4, 26.7, 21)
	}
	spring := rapid.SampledFrom([]float64{1e4, 1e6, 1e8, frame.Rigid})
	for _, e := range []*frame.End{&m.Start, &m.End} {
		e.Springs = frame.Springs{Twist: spring.Draw(t, "twist"), Y: spring.Draw(t, "y"), Z: spring.Draw(t, "z")}
	}
	return m
}

func vec(t *rapid.T, most float64) frame.Vec {
	g := rapid.Float64Range(-most, most)
	return frame.Vec{g.Draw(t, "x"), g.Draw(t, "y"), g.Draw(t, "z")}
}

// loads draws a case of all kinds of load.
func loads(t *rapid.T, f frame.Frame, name string) frame.Case {
	c := frame.Case{Name: name}
	for range rapid.IntRange(1, 3).Draw(t, "pushes") {
		n := rapid.SampledFrom(f.Nodes).Draw(t, "node")
		c.Pushes = append(c.Pushes, frame.Push{Node: n.Name, Force: vec(t, 300), Moment: vec(t, 1e4)})
	}
	for range rapid.IntRange(0, 2).Draw(t, "points") {
		m := rapid.SampledFrom(f.Members).Draw(t, "member")
		c.Points = append(c.Points, frame.Point{Member: m.Name, At: rapid.Float64Range(0, long(f, m)).Draw(t, "at"), Force: vec(t, 300)})
	}
	for range rapid.IntRange(0, 2).Draw(t, "evens") {
		m := rapid.SampledFrom(f.Members).Draw(t, "member")
		from := rapid.Float64Range(0, long(f, m)*0.8).Draw(t, "from")
		c.Evens = append(c.Evens, frame.Even{Member: m.Name, From: from, To: from + long(f, m)/10, PerMM: vec(t, 2)})
	}
	return c
}

func place(f frame.Frame, name string) frame.Vec {
	for _, n := range f.Nodes {
		if n.Name == name {
			return n.At
		}
	}
	return frame.Vec{}
}

func long(f frame.Frame, m frame.Member) float64 {
	a, b := place(f, m.From), place(f, m.To)
	return math.Sqrt((a[0]-b[0])*(a[0]-b[0])+(a[1]-b[1])*(a[1]-b[1])+(a[2]-b[2])*(a[2]-b[2])) * (1 - 1e-12)
}

func cross(a, b frame.Vec) frame.Vec {
	return frame.Vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func TestReactionsBalanceTheLoads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := sticks(t)
		c := loads(t, f, "any")
		balance(t, f, c, worked(t, f, c)[0])
	})
}

func TestReactionsBalanceTheLoadsOfAPanelToo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := roof(vec(t, 1000))
		for i := 1; i < 8; i += 2 {
			for j := range 3 {
				f.Nodes[i].Hold[j] = rapid.SampledFrom([]float64{0, 0, 30, frame.Rigid}).Draw(t, "hold")
			}
		}
		if rapid.Bool().Draw(t, "back") {
			f.Panels = append(f.Panels, frame.Panel{Name: "back", Normal: frame.Vec{0, 1, 0}, Nodes: []string{"foot 3", "foot 4", "head 3", "head 4"}})
		}
		if rapid.Bool().Draw(t, "side") {
			f.Panels = append(f.Panels, frame.Panel{Name: "side", Normal: frame.Vec{1, 0, 0}, Nodes: []string{"foot 1", "foot 4", "head 1", "head 4"}})
		}
		for i := range f.Members {
			f.Members[i].End.Springs = frame.Springs{Twist: 1e6, Y: 1e6, Z: 1e7}
		}
		c := loads(t, f, "any")
		balance(t, f, c, worked(t, f, c)[0])
	})
}

// balance adds up all forces and all moments about the origin.
func balance(t *rapid.T, f frame.Frame, c frame.Case, a frame.Answer) {
	var force, moment frame.Vec
	size, far := 1.0, 1.0
	add := func(at, p frame.Vec) {
		turn := cross(at, p)
		for i := range force {
			force[i] += p[i]
			moment[i] += turn[i]
			size, far = math.Max(size, math.Abs(p[i])), math.Max(far, math.Abs(at[i]))
		}
	}
	for _, p := range c.Pushes {
		add(place(f, p.Node), p.Force)
		for i, m := range p.Moment {
			moment[i] += m
		}
	}
	on := func(member string, x float64) frame.Vec {
		var v frame.Vec
		for _, m := range f.Members {
			if m.Name == member {
				a, b := place(f, m.From), place(f, m.To)
				for i := range v {
					v[i] = a[i] + (b[i]-a[i])*x/long(f, m)
				}
			}
		}
		return v
	}
	for _, p := range c.Points {
		add(on(p.Member, p.At), p.Force)
	}
	for _, e := range c.Evens {
		by := e.To - e.From
		add(on(e.Member, (e.From+e.To)/2), frame.Vec{e.PerMM[0] * by, e.PerMM[1] * by, e.PerMM[2] * by})
	}
	for _, n := range a.Nodes {
		add(place(f, n.Node), frame.Vec{n.Push[0], n.Push[1], n.Push[2]})
		for i := range moment {
			moment[i] += n.Push[3+i]
			size = math.Max(size, math.Abs(n.Push[3+i])/far)
		}
	}
	for i := range force {
		if math.Abs(force[i]) > 1e-7*size || math.Abs(moment[i]) > 1e-7*size*far {
			t.Fatalf("out of balance along or about axis %d: %g N, %g N·mm beside %g N, %g mm", i, force[i], moment[i], size, far)
		}
	}
}

// worked solves a drawn frame; a frame that is loose or unsolvable is no counterexample.
func worked(t *rapid.T, f frame.Frame, cases ...frame.Case) []frame.Answer {
	m, err := frame.New(f)
	if err != nil {
		t.Fatal(err)
	}
	a, err := m.Solve(cases...)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestCasesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := sticks(t)
		one, two := loads(t, f, "one"), loads(t, f, "two")
		p, q := rapid.Float64Range(-3, 3).Draw(t, "p"), rapid.Float64Range(-3, 3).Draw(t, "q")
		a := worked(t, f, one, two, frame.Combine("sum", frame.Term{By: p, Case: one}, frame.Term{By: q, Case: two}))
		most := top(a[0])*math.Abs(p) + top(a[1])*math.Abs(q) + 1e-9
		for i := range a[2].Nodes {
			for j := range 3 {
				want := p*a[0].Nodes[i].Move[j] + q*a[1].Nodes[i].Move[j]
				if got := a[2].Nodes[i].Move[j]; math.Abs(got-want) > 1e-7*most {
					t.Fatalf("node %d along %d: %g, the parts say %g", i, j, got, want)
				}
			}
		}
	})
}

// top is the farthest that any node moves.
func top(a frame.Answer) float64 {
	most := 0.0
	for _, n := range a.Nodes {
		for j := range 3 {
			most = math.Max(most, math.Abs(n.Move[j]))
		}
	}
	return most
}

// TestASofterJointNeverShrinksTheSway looks along the load: what a load yields in its own direction is the
// work it does, and that never shrinks when something gives more (the theorem of least work).
func TestASofterJointNeverShrinksTheSway(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := sticks(t)
		c := frame.Case{Pushes: []frame.Push{{Node: rapid.SampledFrom(f.Nodes).Draw(t, "node").Name, Force: vec(t, 300)}}}
		before := yields(worked(t, f, c)[0], c)
		m := &f.Members[rapid.IntRange(0, len(f.Members)-1).Draw(t, "member")]
		e := rapid.SampledFrom([]*frame.End{&m.Start, &m.End}).Draw(t, "end")
		s := rapid.SampledFrom([]*float64{&e.Springs.Twist, &e.Springs.Y, &e.Springs.Z}).Draw(t, "spring")
		*s = math.Min(*s, 1e9) * rapid.Float64Range(0.01, 1).Draw(t, "softer")
		if after := yields(worked(t, f, c)[0], c); after < before*(1-1e-7)-1e-9 {
			t.Fatalf("the sway shrank from %g to %g", before, after)
		}
	})
}

func TestASofterJointNeverShrinksTheSwayOfAStoolOnItsFloor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := stool()
		for i := range f.Members {
			f.Members[i].Section = bar
		}
		f.Nodes[0].Gap = rapid.SampledFrom([]float64{0, 0.5}).Draw(t, "gap")
		c := frame.Case{Pushes: []frame.Push{{Node: "top 1", Force: frame.Vec{rapid.Float64Range(1, 30).Draw(t, "push"), 0, 0}}}}
		for i := range 4 {
			c.Pushes = append(c.Pushes, frame.Push{Node: fmt.Sprint("top ", i+1), Force: frame.Vec{0, 0, -25}})
		}
		before := worked(t, f, c)[0]
		m := &f.Members[rapid.IntRange(0, 7).Draw(t, "member")]
		m.Start.Springs.Y, m.End.Springs.Z = 1e6, 1e6
		after := worked(t, f, c)[0]
		balance(t, f, c, after)
		// On a floor the loads and the gaps are there from the start: the work of the loads less the energy that
		// closing the gaps let in grows; without a gap that is the yield itself.
		if f.Nodes[0].Gap == 0 && yields(after, c) < yields(before, c)*(1-1e-7)-1e-9 {
			t.Fatalf("the sway shrank from %g to %g", yields(before, c), yields(after, c))
		}
	})
}

func yields(a frame.Answer, c frame.Case) float64 {
	work := 0.0
	for _, p := range c.Pushes {
		n, _ := a.Node(p.Node)
		for i, f := range p.Force {
			work += f * n.Move[i]
		}
	}
	return work
}

// TestTurningTheWholeFrameTurnsTheAnswer turns a frame that is clamped or free at every node, with its loads.
func TestTurningTheWholeFrameTurnsTheAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := sticks(t)
		for i := range f.Nodes {
			if f.Nodes[i].Hold != frame.Clamped {
				f.Nodes[i].Hold = [6]float64{}
			}
		}
		if rapid.Bool().Draw(t, "panel") {
			f.Nodes = append(f.Nodes, node("p", 1000, 0, 0), node("q", 1000, 900, 0), node("r", 1000, 0, 800))
			f.Members = append(f.Members, someStick(t, "to p", 0, 0), someStick(t, "to q", 0, 0), someStick(t, "to r", 0, 0))
			for i, name := range []string{"p", "q", "r"} {
				f.Members[len(f.Members)-3+i].To = name
			}
			f.Panels = []frame.Panel{{Name: "panel", Normal: frame.Vec{2, 0, 0}, Nodes: []string{"p", "q", "r"}}}
		}
		c := loads(t, f, "any")
		turn := turning(rapid.Float64Range(-3, 3).Draw(t, "a"), rapid.Float64Range(-3, 3).Draw(t, "b"))
		g, d := turned(f, c, turn)
		was, is := worked(t, f, c)[0], worked(t, g, d)[0]
		most := top(was) + 1e-9
		for i := range was.Nodes {
			m := was.Nodes[i].Move
			want := turn(frame.Vec{m[0], m[1], m[2]})
			for j := range want {
				if math.Abs(is.Nodes[i].Move[j]-want[j]) > 1e-6*most {
					t.Fatalf("node %d moves %v, turned back %v", i, is.Nodes[i].Move, m)
				}
			}
		}
		for i := range was.Members {
			if a, b := was.Members[i].Bending, is.Members[i].Bending; math.Abs(a-b) > 1e-6*(1+a) {
				t.Fatalf("member %d bears %g MPa, turned %g", i, a, b)
			}
		}
	})
}

// turning turns about z, then about x.
func turning(a, b float64) func(frame.Vec) frame.Vec {
	return func(v frame.Vec) frame.Vec {
		x, y, z := v[0]*math.Cos(a)-v[1]*math.Sin(a), v[0]*math.Sin(a)+v[1]*math.Cos(a), v[2]
		return frame.Vec{x, y*math.Cos(b) - z*math.Sin(b), y*math.Sin(b) + z*math.Cos(b)}
	}
}

func turned(f frame.Frame, c frame.Case, turn func(frame.Vec) frame.Vec) (frame.Frame, frame.Case) {
	g := frame.Frame{}
	for _, n := range f.Nodes {
		n.At = turn(n.At)
		g.Nodes = append(g.Nodes, n)
	}
	for _, m := range f.Members {
		m.Up = turn(m.Up)
		g.Members = append(g.Members, m)
	}
	for _, p := range f.Panels {
		p.Normal = turn(p.Normal)
		g.Panels = append(g.Panels, p)
	}
	d := frame.Case{Name: c.Name}
	for _, p := range c.Pushes {
		d.Pushes = append(d.Pushes, frame.Push{Node: p.Node, Force: turn(p.Force), Moment: turn(p.Moment)})
	}
	for _, p := range c.Points {
		d.Points = append(d.Points, frame.Point{Member: p.Member, At: p.At, Force: turn(p.Force)})
	}
	for _, e := range c.Evens {
		d.Evens = append(d.Evens, frame.Even{Member: e.Member, From: e.From, To: e.To, PerMM: turn(e.PerMM)})
	}
	return g, d
}

func TestTheSameFrameIsAnsweredToTheBit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := sticks(t)
		c := loads(t, f, "any")
		if a, b := worked(t, f, c)[0], worked(t, f, c)[0]; fmt.Sprint(a) != fmt.Sprint(b) {
			t.Fatal("two answers to one frame")
		}
	})
}

// FuzzAnyFrameIsFiniteOrRefused builds a frame out of any bytes: numbers of every size stand anywhere.
func FuzzAnyFrameIsFiniteOrRefused(f *testing.F) {
	f.Add([]byte("a table of four legs and a top, more or less"))
	f.Add([]byte{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 255, 254, 128, 127, 64, 32, 16, 3, 3, 3, 3, 9, 9, 9})
	f.Add(make([]byte, 300))
	f.Fuzz(func(t *testing.T, data []byte) {
		m, err := frame.New(anyFrame(&data))
		if err != nil {
			var loose *frame.Mechanism
			if errors.As(err, &loose) && loose.Node == "" {
				t.Fatalf("a mechanism without a node: %v", err)
			}
			return
		}
		answers, err := m.Solve(anyCase(&data))
		if err != nil {
			return
		}
		for _, n := range answers[0].Nodes {
			for j := range 6 {
				if math.IsNaN(n.Move[j]-n.Push[j]) || math.IsInf(n.Move[j]-n.Push[j], 0) {
					t.Fatalf("node %+v", n)
				}
			}
		}
		for _, m := range answers[0].Members {
			if math.IsNaN(m.Bending+m.Axial) || math.IsInf(m.Bending+m.Axial, 0) || m.Bending < 0 {
				t.Fatalf("member %+v", m)
			}
		}
	})
}

func bite(data *[]byte) int {
	if len(*data) == 0 {
		return 7
	}
	b := (*data)[0]
	*data = (*data)[1:]
	return int(b)
}

// sizes are what a number may be: most are of the trade, some are absurd.
var sizes = []float64{
	0, 1, 1, 2, 10, 20, 100, 300, 500, 1000, 1e4, 1e5, 1e6, -1, -10, -100, -500, 1e-3, 1e-6, 1e-9, 1e-12, 1e9, 1e12, 1e15, 1e20, 1e300,
	math.Inf(1), math.Inf(1), math.Inf(-1), math.NaN(), 12.5, 0.3,
}

func number(data *[]byte) float64   { return sizes[bite(data)%len(sizes)] }
func place3(data *[]byte) frame.Vec { return frame.Vec{number(data), number(data), number(data)} }

func positive(data *[]byte) float64 {
	if b := bite(data); b < 240 {
		return []float64{1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e-9, 1e15, 1e9}[b%10]
	}
	return number(data)
}

func anyFrame(data *[]byte) frame.Frame {
	f := frame.Frame{}
	n := bite(data)%6 + 1
	for i := range n {
		at := frame.Vec{float64(bite(data)%5) * 100, float64(bite(data)%5) * 100, float64(bite(data)%5) * 100}
		if bite(data) > 230 {
			at = place3(data)
		}
		nd := node(fmt.Sprint(i), at[0], at[1], at[2])
		switch bite(data) % 4 {
		case 0:
			nd.Hold = frame.Clamped
		case 1:
			nd.Hold, nd.Floor = frame.Pinned, true
			nd.Gap = math.Max(0, number(data))
		case 2:
			for j := range nd.Hold {
				nd.Hold[j] = math.Abs(number(data))
			}
		}
		f.Nodes = append(f.Nodes, nd)
	}
	for i := range bite(data) % 8 {
		m := frame.Member{Name: fmt.Sprint(i), From: fmt.Sprint(bite(data) % n), To: fmt.Sprint(bite(data) % n)}
		m.Section = frame.Section{E: positive(data), G: positive(data), Area: positive(data), J: positive(data), IY: positive(data), IZ: positive(data)}
		m.Section.ShearY, m.Section.WY, m.Section.WZ = positive(data), positive(data), positive(data)
		m.Section.Round = bite(data)%2 == 0
		m.Start.Springs, m.End.Springs = frame.Stiff, frame.Stiff
		if bite(data)%3 == 0 {
			m.Start.Springs = frame.Springs{Twist: number(data), Y: number(data), Z: number(data)}
		}
		f.Members = append(f.Members, m)
	}
	if bite(data)%3 == 0 {
		p := frame.Panel{Name: "panel", Normal: frame.Vec{float64(bite(data) % 2), float64(bite(data) % 2), float64(bite(data) % 2)}}
		for i := range bite(data)%n + 1 {
			p.Nodes = append(p.Nodes, fmt.Sprint(i))
		}
		f.Panels = append(f.Panels, p)
	}
	return f
}

func anyCase(data *[]byte) frame.Case {
	name := func() string { return fmt.Sprint(bite(data) % 6) }
	return frame.Case{
		Pushes: []frame.Push{{Node: name(), Force: place3(data), Moment: place3(data)}},
		Points: []frame.Point{{Member: name(), At: number(data), Force: place3(data)}}[:bite(data)%2],
		Evens:  []frame.Even{{Member: name(), To: number(data), PerMM: place3(data)}}[:bite(data)%2],
		Shifts: []frame.Shift{{Node: name(), Freedom: frame.Freedom(bite(data) % 6), By: number(data)}}[:bite(data)%2],
	}
}
