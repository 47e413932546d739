package dxf_test

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/draw/dxf"
	"rodwright/length"
)

func somePoint(t *rapid.T) draw.Point {
	c := rapid.Int64Range(-int64(length.Max), int64(length.Max))
	return draw.Point{X: length.Length(c.Draw(t, "x")), Y: length.Length(c.Draw(t, "y"))}
}

func somePath(t *rapid.T) (p draw.Path) {
	for range rapid.IntRange(2, 8).Draw(t, "corners") {
		bulge := rapid.OneOf(rapid.Just(0.0), rapid.Just(draw.Quarter()), rapid.Float64Range(-3, 3)).Draw(t, "bulge")
		p = append(p, draw.Vertex{Point: somePoint(t), Bulge: bulge})
	}
	return p
}

// Corners come back to the nanometre, bulges to a part in 10¹², which moves no arc below a kilometre's chord
// by more than that.
func TestOutlinesComeBackAsTheyWere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := &draw.Drawing{ID: "a", Per: rapid.Int64Range(1, 50).Draw(t, "per")}
		var want []draw.Path
		var pens []string
		for range rapid.IntRange(1, 4).Draw(t, "areas") {
			pen := rapid.SampledFrom(draw.Pens()).Draw(t, "pen")
			a := draw.Area{Pen: pen, Outer: somePath(t), Fill: rapid.SampledFrom([]draw.Fill{draw.Empty, draw.LongWood, draw.EndWood, draw.Steel}).Draw(t, "fill")}
			want, pens = append(want, a.Outer), append(pens, pen.String())
			for range rapid.IntRange(0, 2).Draw(t, "holes") {
				a.Holes = append(a.Holes, somePath(t))
				want, pens = append(want, a.Holes[len(a.Holes)-1]), append(pens, pen.String())
			}
			d.Marks = append(d.Marks, a)
		}
		got, layers := outlines(t, written(t, d)["ENTITIES"])
		same := slices.EqualFunc(got, want, func(a, b draw.Path) bool {
			return slices.EqualFunc(a, b, func(v, w draw.Vertex) bool {
				return v.Point == w.Point && math.Abs(v.Bulge-w.Bulge) < 1e-12
			})
		})
		if !same || !slices.Equal(layers, pens) {
			t.Errorf("read %v on %v,\nwrote %v on %v", got, layers, want, pens)
		}
	})
}

func TestLinesArcsAndCirclesComeBackAsTheyWere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := draw.Line{Pen: draw.Hidden, A: somePoint(t), B: somePoint(t)}
		a := draw.Arc{
			Pen: draw.Centre, Centre: somePoint(t), Radius: length.Length(rapid.Int64Range(1, int64(length.Max)).Draw(t, "radius")),
			From: rapid.Float64Range(-400, 400).Draw(t, "from"), Sweep: rapid.Float64Range(0.1, 359).Draw(t, "sweep"),
		}
		c := draw.Arc{Pen: draw.Outline, Centre: somePoint(t), Radius: a.Radius, From: a.From, Sweep: 360}
		e := written(t, &draw.Drawing{ID: "a", Per: 1, Marks: []draw.Mark{l, a, c}})["ENTITIES"]
		if e[0].kind != "LINE" || e[0].text(8) != "hidden" || e[0].point(t, 10) != l.A || e[0].point(t, 11) != l.B {
			t.Errorf("%v became %v", l, e[0])
		}
		if e[1].kind != "ARC" || e[1].text(8) != "centre" || e[1].point(t, 10) != a.Centre || e[1].size(t, 40) != a.Radius {
			t.Errorf("%v became %v", a, e[1])
		}
		from, sweep := e[1].real(t, 50), math.Mod(e[1].real(t, 51)-e[1].real(t, 50)+360, 360)
		if math.Abs(math.Remainder(from-a.From, 360)) > 1e-9 || math.Abs(sweep-a.Sweep) > 1e-9 || from < 0 || from > 360 {
			t.Errorf("%g through %g became %v", a.From, a.Sweep, e[1])
		}
		if e[2].kind != "CIRCLE" || e[2].point(t, 10) != c.Centre || e[2].size(t, 40) != c.Radius {
			t.Errorf("%v became %v", c, e[2])
		}
	})
}

func TestEveryLayerAndLineTypeIsDeclared(t *testing.T) {
	d := &draw.Drawing{ID: "a", Per: 5, Marks: []draw.Mark{
		draw.Area{Outer: draw.Circle(draw.Point{}, length.Metre), Fill: draw.EndWood},
		draw.Tag{Words: "A1", At: draw.Point{X: length.Metre}},
		draw.Text{Words: "words", Height: 3},
	}}
	for _, p := range draw.Pens() {
		d.Marks = append(d.Marks, draw.Line{Pen: p, B: draw.Point{X: 1}})
	}
	s := written(t, d)
	layers, types := entries(s["TABLES"], "LAYER"), entries(s["TABLES"], "LTYPE")
	for _, p := range draw.Pens() {
		if !slices.Contains(layers, p.String()) {
			t.Errorf("no layer %s in %v", p, layers)
		}
	}
	for _, r := range s["TABLES"] {
		if r.kind == "LAYER" && !slices.Contains(types, r.text(6)) {
			t.Errorf("%v has a line type that is none of %v", r, types)
		}
	}
	for _, r := range s["ENTITIES"] {
		if l := r.text(8); l != "" && !slices.Contains(layers, l) {
			t.Errorf("%v is on none of the layers %v", r, layers)
		}
		if r.text(8) == "hatching" {
			t.Errorf("hatching is written: %v", r)
		}
	}
}

// A dashed line is as long as its dashes and gaps, and those are full size.
func TestDashesAreFullSize(t *testing.T) {
	for _, r := range written(t, &draw.Drawing{ID: "a", Per: 5})["TABLES"] {
		if r.kind != "LTYPE" || r.text(2) != "DASHED" {
			continue
		}
		var parts []string
		for _, g := range r.groups {
			if g.code == 49 || g.code == 40 {
				parts = append(parts, strings.TrimRight(strings.TrimRight(g.value, "0"), "."))
			}
		}
		if got := strings.Join(parts, " "); got != "17 12 -5" { // 2.4 and 1 mm at 1 : 5
			t.Errorf("hidden lines are dashed %s, want 17 12 -5", got)
		}
	}
}

func TestTheHeaderHoldsReleaseAndExtent(t *testing.T) {
	var b bytes.Buffer
	d := &draw.Drawing{ID: "part-a1", Per: 2, Marks: []draw.Mark{draw.Line{A: draw.Point{X: -length.Inch}, B: draw.Point{Y: length.Inch / 64}}}}
	if err := dxf.Write(&b, d); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"999\npart-a1: full size, in millimetres\n",
		"9\n$ACADVER\n1\nAC1009\n",
		"9\n$EXTMIN\n10\n-25.400000\n20\n0.000000\n",
		"9\n$EXTMAX\n10\n0.000000\n20\n0.396875\n",
		"0\nEOF\n",
	} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
}

func TestWordsStandWhereTheyStood(t *testing.T) {
	at := draw.Point{X: 100, Y: 200}
	for _, c := range []struct {
		anchor draw.Anchor
		turned bool
		want   string // justification and turn
	}{{draw.Start, false, " "}, {draw.Middle, true, "1 90.0"}, {draw.End, false, "2 "}} {
		r := written(t, &draw.Drawing{ID: "a", Per: 10, Marks: []draw.Mark{draw.Text{At: at, Words: "14 3/8 × ⌀", Height: 3, Anchor: c.anchor, Turned: c.turned}}})["ENTITIES"][0]
		if r.text(1) != "14 3/8 x %%c" || r.text(72)+" "+r.text(50) != c.want || r.point(t, 10) != at {
			t.Errorf("anchor %d, turned %v: %v", c.anchor, c.turned, r)
		}
		if c.anchor != draw.Start && r.point(t, 11) != at {
			t.Errorf("anchor %d: %v is not aligned at %v", c.anchor, r, at)
		}
	}
}

func TestPlainWordsAreASCII(t *testing.T) {
	for words, want := range map[string]string{
		"45° ± 1":     "45%%d %%p 1",
		"5 %":         "5 %",
		"100%%":       "100%%%%%%",
		"Tür\n\x7f":   `T\U+00FCr  `,
		"3′ 2″ – 1 m": `3' 2" - 1 m`,
		"🌲":           "?",
		"⌀ 5/8":       "%%c 5/8",
	} {
		if got := dxf.Plain(words); got != want {
			t.Errorf("%q is written %q, want %q", words, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.String().Draw(t, "words")
		if got := dxf.Plain(words); !ascii(got) {
			t.Errorf("%q is written %q", words, got)
		}
	})
}

type full struct{}

var errFull = errors.New("disk full")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestAWriterThatFailsIsReported(t *testing.T) {
	if err := dxf.Write(full{}, &draw.Drawing{ID: "front"}); !errors.Is(err, errFull) || !strings.Contains(err.Error(), "front") {
		t.Errorf("got %v", err)
	}
}

func ExampleWrite() {
	d := &draw.Drawing{ID: "part-a1", Per: 1, Marks: []draw.Mark{
		draw.Area{Pen: draw.Outline, Outer: draw.Rectangle(draw.Point{}, draw.Point{X: 3 * length.Inch / 8, Y: length.Inch})},
	}}
	var b bytes.Buffer
	if err := dxf.Write(&b, d); err != nil {
		fmt.Println(err)
	}
	for lines := bufio.NewScanner(&b); lines.Scan(); {
		if strings.HasPrefix(lines.Text(), "9.525") {
			fmt.Println(lines.Text())
			break
		}
	}
	// Output: 9.525000
}
