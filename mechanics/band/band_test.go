package band

import (
	"errors"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// chain is a row of springs of stiffness k between n loose points; the first hangs on a spring of wall.
func chain(n int, k, wall float64, name func(int) int) *Matrix {
	m := New(n)
	m.Add(name(0), name(0), wall)
	for i := range n - 1 {
		m.AddBlock([]int{name(i), name(i + 1)}, []float64{k, -k, -k, k})
	}
	return m
}

func straight(i int) int { return i }

func TestSpringsInARowAddTheirStretches(t *testing.T) {
	f, err := chain(4, 100, 50, straight).Factor()
	if err != nil {
		t.Fatal(err)
	}
	// 10 N at the end: the wall gives 10/50 = 0.2, each of the three springs 10/100 = 0.1 more.
	got := f.Solve([]float64{0, 0, 0, 10})
	for i, want := range []float64{0.2, 0.3, 0.4, 0.5} {
		if math.Abs(got[i]-want) > 1e-12 {
			t.Errorf("point %d moves %v, not %v", i, got[i], want)
		}
	}
}

func TestAHeldUnknownIsLeftOut(t *testing.T) {
	m := New(1)
	m.AddBlock([]int{-1, 0}, []float64{7, -7, -7, 7})
	f, err := m.Factor()
	if err != nil {
		t.Fatal(err)
	}
	if got := f.Solve([]float64{14}); math.Abs(got[0]-2) > 1e-12 {
		t.Errorf("moves %v, not 2", got[0])
	}
}

func TestAFloatingChainIsUnstable(t *testing.T) {
	for _, n := range []int{2, 3, 50, 1000} {
		_, err := chain(n, 3, 0, straight).Factor()
		var loose *Unstable
		if !errors.As(err, &loose) {
			t.Fatalf("%d points: %v", n, err)
		}
		if loose.Unknown < 0 || loose.Unknown >= n || math.Abs(loose.Motion[loose.Unknown]) != 1 {
			t.Errorf("%d points: %d moves %v", n, loose.Unknown, loose.Motion[loose.Unknown])
		}
	}
}

func TestTheLoosePartIsNamed(t *testing.T) {
	// Points 0 to 4 hang on the wall, 5 to 7 on each other only.
	m := chain(8, 10, 10, straight)
	m.Add(5, 4, 10)
	m.Add(4, 4, -10)
	m.Add(5, 5, -10)
	_, err := m.Factor()
	var loose *Unstable
	if !errors.As(err, &loose) || loose.Unknown < 5 {
		t.Fatalf("%v", err)
	}
	for i := range 5 {
		if math.Abs(loose.Motion[i]) > 1e-6 {
			t.Errorf("point %d is said to move %v", i, loose.Motion[i])
		}
	}
}

func TestAnUnknownWithNothingOnItIsNamed(t *testing.T) {
	m := New(3)
	m.Add(0, 0, 1)
	m.Add(2, 2, 1)
	_, err := m.Factor()
	var loose *Unstable
	if !errors.As(err, &loose) || loose.Unknown != 1 || loose.Error() == "" {
		t.Fatalf("%v", err)
	}
}

func TestALongSoundChainStands(t *testing.T) {
	// The smallest eigenvalue of n equal springs scaled to 1 is about (π/2n)²/2, of 20 000 springs 3e-9: softer
	// than any frame, and it stands.
	n := 20_000
	f, err := chain(n, 1, 1, straight).Factor()
	if err != nil {
		t.Fatal(err)
	}
	b := make([]float64, n)
	b[n-1] = 1
	if got := f.Solve(b)[n-1]; math.Abs(got-float64(n)) > 1e-3 {
		t.Errorf("the end moves %v, not %d", got, n)
	}
}

func TestNonsenseIsAnError(t *testing.T) {
	for name, m := range map[string]*Matrix{
		"none": New(0), "too many": New(MaxUnknowns + 1), "outside": with(New(2), 2, 0, 1),
		"nan": with(New(1), 0, 0, math.NaN()), "infinite": with(New(1), 0, 0, math.Inf(1)),
		"negative": with(New(1), 0, 0, -1), "block": block(New(2)),
	} {
		if _, err := m.Factor(); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func with(m *Matrix, i, j int, v float64) *Matrix {
	m.Add(i, j, v)
	return m
}

func block(m *Matrix) *Matrix {
	m.AddBlock([]int{0, 1}, []float64{1})
	return m
}

func TestAnswersAgreeWithADenseSolver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 30).Draw(t, "n")
		m, dense := New(n), mat.NewSymDense(n, nil)
		add := func(i, j int, v float64) {
			m.Add(i, j, v)
			dense.SetSym(i, j, dense.At(i, j)+v)
		}
		for i := range n {
			add(i, i, rapid.Float64Range(0.1, 10).Draw(t, "ground"))
		}
		for range rapid.IntRange(0, 80).Draw(t, "springs") {
			i, j := rapid.IntRange(0, n-1).Draw(t, "i"), rapid.IntRange(0, n-1).Draw(t, "j")
			if i != j {
				k := rapid.Float64Range(0, 1000).Draw(t, "k")
				add(i, i, k)
				add(j, j, k)
				add(i, j, -k)
			}
		}
		b := rapid.SliceOfN(rapid.Float64Range(-100, 100), n, n).Draw(t, "b")
		f, err := m.Factor()
		if err != nil {
			t.Fatal(err)
		}
		var c mat.Cholesky
		c.Factorize(dense)
		want := mat.NewVecDense(n, nil)
		if err := c.SolveVecTo(want, mat.NewVecDense(n, b)); err != nil {
			t.Fatal(err)
		}
		for i, got := range f.Solve(b) {
			if math.Abs(got-want.AtVec(i)) > 1e-6 {
				t.Errorf("unknown %d: %v, dense says %v", i, got, want.AtVec(i))
			}
		}
	})
}

// mesh is a w × h net of springs, each point numbered by name and held softly.
func mesh(w, h int, name func(int) int) *Matrix {
	m := New(w * h)
	for i := range w * h {
		m.Add(name(i), name(i), 0.01)
		if i%w < w-1 {
			m.AddBlock([]int{name(i), name(i + 1)}, []float64{1, -1, -1, 1})
		}
		if i/w < h-1 {
			m.AddBlock([]int{name(i), name(i + w)}, []float64{1, -1, -1, 1})
		}
	}
	return m
}

func TestAScrambledMeshIsPutInOrder(t *testing.T) {
	const w, h = 40, 6
	scrambled := func(i int) int { return i * 77 % (w * h) } // 77 and 240 have no common factor
	l := lower(mesh(w, h, scrambled).rows)
	place, k := l.order()
	if k > 2*h {
		t.Errorf("a mesh of %d rows has a band of %d", h, k)
	}
	sorted := slices.Clone(place)
	slices.Sort(sorted)
	for i, p := range sorted {
		if int(p) != i {
			t.Fatalf("place %d is given to none or to two", i)
		}
	}
	f, err := mesh(w, h, scrambled).Factor()
	g, err2 := mesh(w, h, straight).Factor()
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	b, c := make([]float64, w*h), make([]float64, w*h)
	b[scrambled(7)], c[7] = 1, 1
	x, y := f.Solve(b), g.Solve(c)
	for i := range w * h {
		if math.Abs(x[scrambled(i)]-y[i]) > 1e-9 {
			t.Fatalf("point %d moves %v, in order %v", i, x[scrambled(i)], y[i])
		}
	}
}

func TestTheSameEntriesGiveTheSameBits(t *testing.T) {
	b := make([]float64, 600)
	b[300] = 1
	var first []float64
	for range 3 {
		f, err := mesh(30, 20, func(i int) int { return i * 77 % 600 }).Factor()
		if err != nil {
			t.Fatal(err)
		}
		x := f.Solve(b)
		if first != nil && !slices.Equal(first, x) {
			t.Fatal("two answers to the same question")
		}
		first = x
	}
}

func BenchmarkFactor(b *testing.B) {
	m := mesh(60, 60, straight)
	for b.Loop() {
		if _, err := m.Factor(); err != nil {
			b.Fatal(err)
		}
	}
}

// A spring to the wall a hundred million million times softer than the rest is rounding, not a support; one a
// million times softer is soft.
func TestASpringLostInRoundingHoldsNothing(t *testing.T) {
	for wall, stands := range map[float64]bool{1e-14: false, 1e-13: false, 1e-6: true} {
		_, err := chain(40, 1, wall, straight).Factor()
		var loose *Unstable
		if stands == errors.As(err, &loose) {
			t.Errorf("held by %v: %v", wall, err)
		}
	}
}

// A matrix whose band is given answers as one that seeks its own order, and is as unstable.
func TestABandThatIsGivenChangesNoAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 40).Draw(t, "n")
		k := rapid.IntRange(0, n-1).Draw(t, "k")
		a, b := New(n), NewBanded(n, k)
		for i := range n {
			for j := max(0, i-k); j <= i; j++ {
				v := rapid.Float64Range(-1, 1).Draw(t, "v")
				if i == j {
					v = float64(2*k+2) + v // so that it stands: its diagonal outweighs its row
				}
				a.Add(i, j, v)
				b.Add(j, i, v)
			}
		}
		f, err := a.Factor()
		g, err2 := b.Factor()
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		load := make([]float64, n)
		for i := range load {
			load[i] = float64(i%7) - 3
		}
		x, y := f.Solve(load), g.Solve(load)
		for i := range x {
			if math.Abs(x[i]-y[i]) > 1e-12 {
				t.Fatalf("unknown %d: %v, with its band given %v", i, x[i], y[i])
			}
		}
	})
}

func TestABandIsHeldTo(t *testing.T) {
	m := NewBanded(5, 1)
	m.Add(3, 1, 1)
	if _, err := m.Factor(); err == nil {
		t.Error("an entry outside the band is taken")
	}
	for _, size := range [][2]int{{0, 0}, {3, 3}, {3, -1}, {200_000, 100_000}} {
		if _, err := NewBanded(size[0], size[1]).Factor(); err == nil {
			t.Errorf("%v is taken", size)
		}
	}
	loose := NewBanded(3, 1)
	loose.AddBlock([]int{0, 1}, []float64{1, -1, -1, 1})
	loose.AddBlock([]int{1, 2}, []float64{1, -1, -1, 1})
	var u *Unstable
	if _, err := loose.Factor(); !errors.As(err, &u) {
		t.Errorf("a floating chain: %v", err)
	}
}
