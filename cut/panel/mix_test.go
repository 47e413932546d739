package panel

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/cut/master"
)

// drawnMix is a random program: ways in sets, each way with its yields.
type drawnMix struct {
	needs   int
	right   []float64
	room    []float64
	must    []bool // by set: all its room is used
	set     []int
	cost    []float64
	yields  [][]float64
	penalty float64
}

func drawMix(t *rapid.T) drawnMix {
	d := drawnMix{needs: rapid.IntRange(1, 5).Draw(t, "needs"), penalty: 1e5}
	for range rapid.IntRange(1, 6).Draw(t, "sets") {
		d.room = append(d.room, 0)
		d.must = append(d.must, false)
	}
	d.right = make([]float64, d.needs)
	d.change(t)
	for range rapid.IntRange(0, 14).Draw(t, "ways") {
		d.set = append(d.set, rapid.IntRange(0, len(d.room)-1).Draw(t, "set"))
		d.cost = append(d.cost, float64(rapid.IntRange(1, 12).Draw(t, "cost")))
		y := make([]float64, d.needs)
		for i := range y {
			y[i] = float64(rapid.IntRange(0, 4).Draw(t, "yield"))
		}
		d.yields = append(d.yields, y)
	}
	return d
}

// change draws needs and rooms anew.
func (d *drawnMix) change(t *rapid.T) {
	for i := range d.right {
		d.right[i] = float64(rapid.IntRange(0, 9).Draw(t, "need"))
	}
	for g := range d.room {
		d.room[g] = float64(rapid.IntRange(0, 3).Draw(t, "room"))
		d.must[g] = rapid.IntRange(0, 4).Draw(t, "must") == 0
	}
}

// fill gives the program its right sides, rooms and what may be used.
func (d *drawnMix) fill(m *mix) {
	copy(m.right, d.right)
	copy(m.room, d.room)
	for g := range d.must {
		m.off[m.of[g][0]] = d.must[g]
	}
	m.reset()
}

func (d *drawnMix) open() *mix {
	m := newMix(d.needs, len(d.room), d.penalty, func() bool { return true })
	for j := range d.cost {
		m.add(d.set[j], d.cost[j], d.yields[j])
	}
	d.fill(m)
	return m
}

// reference solves the program by package master, whose every row is a row of its own and which is checked by a
// simplex method from elsewhere.
func (d *drawnMix) reference() float64 {
	sense, right := []master.Sense{}, []float64{}
	for _, r := range d.right {
		sense, right = append(sense, master.Need), append(right, r)
	}
	for g, r := range d.room {
		sense, right = append(sense, master.Limit, master.Need), append(right, r, 0)
		if d.must[g] {
			right[len(right)-1] = r
		}
	}
	m := master.New(sense, right, d.penalty)
	for j := range d.cost {
		c := master.Column{Cost: d.cost[j], Entries: []master.Entry{{Row: d.needs + 2*d.set[j], Value: 1}, {Row: d.needs + 2*d.set[j] + 1, Value: 1}}}
		for i, y := range d.yields[j] {
			c.Entries = append(c.Entries, master.Entry{Row: i, Value: y})
		}
		m.Add(c)
	}
	m.Solve(10_000)
	return m.Value()
}

func TestTheMixIsThatOfAnotherSolver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawMix(t)
		m := d.open()
		for n := range 4 {
			if !m.solve(10_000) {
				t.Fatalf("solve %d: not the best", n)
			}
			want := d.reference()
			if short := want >= d.penalty/100; short && m.value() < d.penalty/100 || !short && math.Abs(m.value()-want) > 1e-5*(1+want) {
				t.Fatalf("solve %d: cost %v, the other solver %v", n, m.value(), want)
			}
			d.change(t)
			d.fill(m)
		}
	})
}

// By duality (any text on linear programming): the duals price needs and rooms at exactly the least cost, and no way
// costs less than its duals.
func TestPricesAndFeesProveTheMix(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawMix(t)
		m := d.open()
		m.solve(10_000)
		worth := 0.0
		for i, r := range d.right {
			worth += m.price[i] * r
		}
		for g, r := range d.room {
			worth += m.fee[g] * r
		}
		if math.Abs(worth-m.value()) > 1e-9*d.penalty {
			t.Fatalf("duals are worth %v, the cost is %v", worth, m.value())
		}
		for j := range m.cost {
			if g := m.set[j]; m.room[g] > 0 && !m.off[j] && m.below(int32(j)) < -1e-6 {
				t.Fatalf("way %d costs %v less than its duals", j, -m.below(int32(j)))
			}
		}
	})
}

func TestTheInverseIsThatOfTheBasis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawMix(t)
		m := d.open()
		m.solve(10_000)
		before := append([]float64(nil), m.inv...)
		m.renew()
		for i, v := range before {
			if math.Abs(v-m.inv[i]) > 1e-6*(1+math.Abs(v)) {
				t.Fatalf("inverse %v, made anew %v", before, m.inv)
			}
		}
	})
}
