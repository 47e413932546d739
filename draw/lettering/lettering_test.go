package lettering

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/length"
)

const mm = length.Millimetre

func text(words string, x, y length.Length) draw.Text {
	return draw.Text{Words: words, Height: 3, At: draw.Point{X: x * mm, Y: y * mm}}
}

func TestSpreadWordsStandApartAndMoveLittle(t *testing.T) {
	for _, c := range []struct{ in, want []length.Length }{
		{[]length.Length{0, 100}, []length.Length{0, 100}},
		{[]length.Length{10, 10}, []length.Length{5, 15}},                // each gives way by half of 10
		{[]length.Length{0, 10, 12}, []length.Length{-3, 7, 17}},         // moves −3, −3 and 5: less i·10 their mean is −8/3
		{[]length.Length{0, 50, 51, 90}, []length.Length{0, 46, 56, 90}}, // 50.5 ∓ 5, rounded
		{[]length.Length{5, 5, 5, 100}, []length.Length{-5, 5, 15, 100}}, // the fourth stays
		{[]length.Length{0, 8, 16, 24}, []length.Length{-3, 7, 17, 27}},  // all in one
		{nil, []length.Length{}},
	} {
		if got := Spread(c.in, 10); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, by hand %v", c.in, got, c.want)
		}
	}
}

func TestSpreadKeepsOrderAndGap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var in []length.Length
		for _, v := range rapid.SliceOf(rapid.Int64Range(0, 1000)).Draw(t, "places") {
			in = append(in, length.Length(v))
		}
		slices.Sort(in)
		gap := length.Length(rapid.Int64Range(1, 60).Draw(t, "gap"))
		out := Spread(in, gap)
		for i := range out[:max(0, len(out)-1)] {
			if out[i+1]-out[i] < gap-1 { // each pool is rounded by itself
				t.Fatalf("%v: %v", in, out)
			}
		}
		for i, v := range Within(out, gap, 0, length.Max) {
			if v < length.Length(i)*gap {
				t.Fatalf("place %d at %d is before the stretch", i, v)
			}
		}
	})
}

func TestWordsThatDoNotFitStandWithinTheStretch(t *testing.T) {
	if got := Within([]length.Length{-5, 5, 95, 105}, 10, 0, 100); !slices.Equal(got, []length.Length{0, 10, 90, 100}) {
		t.Error(got)
	}
}

func TestLinesAreBrokenAtSpacesButNotInMeasures(t *testing.T) {
	got := measures("rip each 14 3/8 in wider, 5 mm. A 3/4 in pipe, 1 : 48")
	want := []string{"rip", "each", "14 3/8 in", "wider,", "5 mm.", "A", "3/4 in", "pipe,", "1", ":", "48"}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	lines := Wrap(draw.Text{Words: "one two three", Height: 3}, mm, 1)
	if !slices.Equal(lines, []string{"one", "two", "three"}) {
		t.Errorf("%q", lines)
	}
}

func TestWordsKeepOffWhatIsTaken(t *testing.T) {
	r := New(1)
	if _, ok := r.Put(text("here", 0, 0)); !ok {
		t.Fatal("an empty sheet has no room")
	}
	q, ok := r.Put(text("there", 1, 1), text("there", 0, 20))
	if !ok || q.At.Y != 20*mm {
		t.Errorf("put at %v, not in the second place", q.At)
	}
	r.KeepLine(draw.Point{X: -10 * mm, Y: 40 * mm}, draw.Point{X: 50 * mm, Y: 42 * mm})
	if _, ok := r.Put(text("across a line", 0, 40)); ok {
		t.Error("words stand across a line")
	}
	// a half circle of 10 mm round (100, 0) passes through (100, 10), its chord does not
	r.KeepPath(draw.Path{{Point: draw.Point{X: 110 * mm}, Bulge: 1}, {Point: draw.Point{X: 90 * mm}}})
	if r.Free(draw.Rect{Min: draw.Point{X: 99 * mm, Y: 9 * mm}, Max: draw.Point{X: 101 * mm, Y: 11 * mm}}) {
		t.Error("words stand on an arc")
	}
	if !r.Free(draw.Rect{Min: draw.Point{X: 98 * mm, Y: 2 * mm}, Max: draw.Point{X: 102 * mm, Y: 6 * mm}}) {
		t.Error("there is no room within a half circle")
	}
}

func TestALeaderReachesWhatHasNoRoom(t *testing.T) {
	r := New(1)
	on := draw.Point{}
	r.Keep(draw.Rect{Min: draw.Point{X: -5 * mm, Y: -5 * mm}, Max: draw.Point{X: 5 * mm, Y: 5 * mm}})
	all := draw.Rect{Min: draw.Point{X: -99 * mm, Y: -99 * mm}, Max: draw.Point{X: 99 * mm, Y: 99 * mm}}
	if _, _, ok := r.Beside(draw.Text{Words: "a", Height: 3}, draw.Point{X: 6 * mm}, all); !ok {
		t.Error("no room beside a box")
	}
	if _, _, ok := r.Beside(draw.Text{Words: "a", Height: 3}, on, draw.Rect{}); ok {
		t.Error("words stand outside the bounds")
	}
}

func TestAScaleIsNotMadeSmallerForWordsAlone(t *testing.T) {
	st := draw.Style{Fineness: length.WholeMM, Width: 100, Height: 100}
	board := func(per int64) []draw.Mark {
		return []draw.Mark{draw.Line{B: draw.Point{X: 1500 * mm}}}
	}
	if per, marks := Fit(st, 1, board); per != 15 || !Fits(st, per, marks) { // 1500 ÷ 15 = 100
		t.Errorf("1500 mm on 100 mm of paper at 1 : %d", per)
	}
	wordy := func(per int64) []draw.Mark {
		return []draw.Mark{draw.Line{B: draw.Point{Y: Full(140, per)}}}
	}
	if per, marks := Fit(st, 5, wordy); per != 5 || Fits(st, per, marks) {
		t.Errorf("140 mm of words at 1 : %d", per)
	}
	if per, _ := Fit(draw.Style{Fineness: length.WholeMM}, 1, board); per != 1 {
		t.Errorf("a room without limits asks for 1 : %d", per)
	}
}
