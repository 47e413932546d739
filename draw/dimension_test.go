package draw_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/length"
)

var edges = []draw.Edge{draw.Below, draw.Above, draw.LeftOf, draw.RightOf}

// board is what chains are laid around: 600 mm by 400 mm.
var board = draw.Rect{Max: draw.Point{X: 600 * length.Millimetre, Y: 400 * length.Millimetre}}

func dimensions(marks []draw.Mark) (out []draw.Dimension) {
	for _, m := range marks {
		out = append(out, m.(draw.Dimension))
	}
	return out
}

func overlap(a, b draw.Rect) bool {
	return a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y
}

// someChains draws up to three chains of stations on an edge: wide ones, and very tight ones.
func someChains(t *rapid.T, edge draw.Edge) (out [][]draw.Station) {
	for range rapid.IntRange(1, 3).Draw(t, "chains") {
		var chain []draw.Station
		at := length.Length(rapid.Int64Range(0, 100).Draw(t, "first")) * length.Millimetre
		for range rapid.IntRange(2, 25).Draw(t, "stations") {
			off := length.Length(rapid.Int64Range(0, 400).Draw(t, "off")) * length.Millimetre
			chain = append(chain, draw.Station{At: at, Off: off})
			at += length.Length(rapid.OneOf(
				rapid.Int64Range(0, 20_000_000), rapid.Int64Range(0, 200_000_000), rapid.Just(int64(0)),
			).Draw(t, "link"))
		}
		out = append(out, chain)
	}
	return out
}

func someStyle(t *rapid.T) draw.Style {
	return draw.Style{Fineness: rapid.SampledFrom(length.Finenesses()).Draw(t, "fineness"), Width: 180, Height: 250}
}

func TestWordsOfChainsNeverOverlap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := rapid.SampledFrom(edges).Draw(t, "edge")
		per := rapid.SampledFrom([]int64{1, 2, 5, 8, 10, 25}).Draw(t, "per")
		d := &draw.Drawing{Per: per, Marks: draw.Dimensions(board, per, someStyle(t), edge, 1, someChains(t, edge)...)}
		boxes := draw.Boxes(d)
		for i, a := range boxes {
			if overlap(a, board) {
				t.Errorf("words %d, %v, stand on the board", i, a)
			}
			for j, b := range boxes[:i] {
				if overlap(a, b) {
					t.Errorf("words %d, %v, and %d, %v, overlap", i, a, j, b)
				}
			}
		}
	})
}

func TestNoLeaderRunsThroughWordsOfItsChain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := rapid.SampledFrom(edges).Draw(t, "edge")
		per := rapid.SampledFrom([]int64{1, 5, 10}).Draw(t, "per")
		ds := dimensions(draw.Dimensions(board, per, someStyle(t), edge, 1, someChains(t, edge)[0]))
		for _, a := range ds {
			if a.Leader == nil {
				continue
			}
			l := draw.Rect{
				Min: draw.Point{X: min(a.Leader.A.X, a.Leader.B.X), Y: min(a.Leader.A.Y, a.Leader.B.Y)},
				Max: draw.Point{X: max(a.Leader.A.X, a.Leader.B.X) + 1, Y: max(a.Leader.A.Y, a.Leader.B.Y) + 1},
			}
			for _, b := range ds {
				if overlap(l, b.Text.Box(per)) {
					t.Errorf("the leader of %s, %v, runs through %s", a.Words, l, b.Words)
				}
			}
		}
	})
}

// A chain is exact in steps: what is written adds up to the rounded distance of its ends.
func TestAChainAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		st := someStyle(t)
		edge := rapid.SampledFrom(edges).Draw(t, "edge")
		chain := someChains(t, edge)[0]
		ds := dimensions(draw.Dimensions(board, 10, st, edge, 7, chain))
		var sum length.Length
		for i, d := range ds {
			read, err := length.Parse(d.Words, st.Fineness.Unit)
			if err != nil || read != d.Value {
				t.Errorf("%q reads as %v (%v), want %v", d.Words, read, err, d.Value)
			}
			if d.Chain != 7 || d.Whole != (len(ds) == 1) || i > 0 && d.From != ds[i-1].To {
				t.Errorf("link %d is no link of chain 7: %+v", i, d)
			}
			sum += read
		}
		if whole := st.Fineness.Round(chain[len(chain)-1].At - chain[0].At); sum != whole {
			t.Errorf("the links add up to %v, the whole is %v", sum, whole)
		}
	})
}

func TestEveryPlaceIsMeasuredFromItsStation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := rapid.SampledFrom(edges).Draw(t, "edge")
		chain := someChains(t, edge)[0]
		stands := map[draw.Point]bool{}
		for _, s := range chain {
			p := draw.Point{X: s.At, Y: s.Off}
			if edge == draw.LeftOf || edge == draw.RightOf {
				p = draw.Point{X: s.Off, Y: s.At}
			}
			stands[p] = true
		}
		for _, d := range dimensions(draw.Dimensions(board, 10, someStyle(t), edge, 1, chain)) {
			if !stands[d.From] || !stands[d.To] {
				t.Errorf("%v to %v is no distance between stations %v", d.From, d.To, chain)
			}
		}
	})
}

func TestExtensionLinesBeginBesideWhatIsMeasured(t *testing.T) {
	const per, gap, past = 10, 8 * length.Millimetre, 15 * length.Millimetre // 0.8 and 1.5 mm of paper
	for _, edge := range edges {
		chain := []draw.Station{{At: 0, Off: 30 * length.Millimetre}, {At: 300 * length.Millimetre, Off: 50 * length.Millimetre}}
		d := draw.Drawing{Per: per, Marks: draw.Dimensions(board, per, draw.Style{}, edge, 1, chain)}
		dim := dimensions(d.Marks)[0]
		begins := map[draw.Point]draw.Point{}
		for _, m := range d.Flat() {
			if l, ok := m.(draw.Line); ok {
				begins[l.A] = l.B
			}
		}
		for _, p := range []draw.Point{dim.From, dim.To} {
			out := map[draw.Edge]draw.Point{draw.Below: {Y: -1}, draw.Above: {Y: 1}, draw.LeftOf: {X: -1}, draw.RightOf: {X: 1}}[edge]
			from := draw.Point{X: p.X + out.X*gap, Y: p.Y + out.Y*gap}
			to := draw.Point{X: p.X, Y: dim.Line + out.Y*past}
			if out.X != 0 {
				to = draw.Point{X: dim.Line + out.X*past, Y: p.Y}
			}
			if begins[from] != to {
				t.Errorf("edge %d: no line runs from %v to %v", edge, from, to)
			}
		}
	}
}

// TestChainsStandOutsideEachOther holds the order: the first chain nearest.
func TestChainsStandOutsideEachOther(t *testing.T) {
	ends := []draw.Station{{}, {At: 600 * length.Millimetre}}
	ds := dimensions(draw.Dimensions(board, 10, draw.Style{Fineness: length.WholeMM}, draw.Below, 3, ends, nil, ends))
	if len(ds) != 2 || ds[0].Chain != 3 || ds[1].Chain != 5 || !ds[0].Whole {
		t.Fatalf("want chains 3 and 5 with one link each, got %+v", ds)
	}
	if ds[0].Line >= 0 || ds[1].Line >= ds[0].Line {
		t.Errorf("lines stand at %v and %v", ds[0].Line, ds[1].Line)
	}
}

func TestStationsAtOnePlaceAreTheOneNearestToTheEdge(t *testing.T) {
	mm := length.Millimetre
	chain := []draw.Station{{At: 0, Off: 10 * mm}, {At: 0, Off: 5 * mm}, {At: 0, Off: 20 * mm}, {At: 100 * mm}}
	for edge, want := range map[draw.Edge]length.Length{draw.Below: 5 * mm, draw.Above: 20 * mm} {
		ds := dimensions(draw.Dimensions(board, 1, draw.Style{}, edge, 1, chain))
		if len(ds) != 1 || ds[0].From.Y != want {
			t.Errorf("edge %d: %+v, want one link from %v", edge, ds, want)
		}
	}
}

// TestTightLinksHangInLanes shows where words go that do not fit, in paper millimetres at 1 : 1.
func TestTightLinksHangInLanes(t *testing.T) {
	var chain []draw.Station
	for _, at := range []float64{0, 40, 42, 44, 46, 90} {
		chain = append(chain, draw.Station{At: length.FromMM(at)})
	}
	var got []string
	for _, d := range dimensions(draw.Dimensions(board, 1, draw.Style{Fineness: length.WholeMM}, draw.Below, 1, chain)) {
		hangs := map[bool]string{false: "on its link", true: "hangs"}[d.Leader != nil]
		side := [...]string{draw.Start: "behind", draw.Middle: "in the middle", draw.End: "before"}[d.Text.Anchor]
		got = append(got, d.Words+" "+hangs+" "+side)
	}
	want := "40 on its link in the middle, 2 hangs before, 2 hangs behind, 2 hangs behind, 44 on its link in the middle"
	if s := strings.Join(got, ", "); s != want {
		t.Errorf("got %s, want %s", s, want)
	}
}

// Two pairs of tight links stand so near each other that words hanging inwards would meet.
func TestPairsOfTightLinksNearEachOtherAreOneCluster(t *testing.T) {
	chain, at := []draw.Station{{}}, length.Length(0)
	for _, link := range []length.Length{length.Inch / 16, length.Inch / 16, length.Inch / 4, length.Inch / 16, length.Inch / 16} {
		at += link
		chain = append(chain, draw.Station{At: at})
	}
	for _, edge := range edges {
		boxes := draw.Boxes(&draw.Drawing{Per: 1, Marks: draw.Dimensions(board, 1, draw.Style{Fineness: length.Sixteenth}, edge, 1, chain)})
		for i, a := range boxes {
			for j, b := range boxes[:i] {
				if overlap(a, b) {
					t.Errorf("edge %d: words %d, %v, and %d, %v, overlap", edge, i, a, j, b)
				}
			}
		}
	}
}
