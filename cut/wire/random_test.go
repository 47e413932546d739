package wire

import (
	"fmt"
	"math"
	"strings"

	"rodwright/cut"
)

// randomProblems draw problems of each kind, up to a number of pieces: parts, boards and rectangles.
var randomProblems = []struct {
	kind  Kind
	draw  func(d *cut.Dice, most int) string
	large int // as many as a large job has
}{{Stick, randomSticks, 10_000}, {Panel, randomBoards, 60}, {Sheet, randomRectangles, 1000}}

// RandomTexts are small problems of a kind, for tests outside of the package.
func RandomTexts(kind Kind) (out []string) {
	for _, c := range randomProblems {
		for seed := range uint64(12) {
			if c.kind == kind {
				out = append(out, c.draw(cut.NewDice(seed), 12))
			}
		}
	}
	return out
}

// some is a number from 1 to most, small ones as often as large ones.
func some(d *cut.Dice, most int) int { return int(math.Exp(d.Share() * math.Log(float64(most)+0.99))) }

// pick is one of the words.
func pick(d *cut.Dice, words ...string) string { return words[d.N(len(words))] }

// list writes n elements of a JSON list.
func list(n int, element func(i int) string) string {
	var b strings.Builder
	for i := range n {
		if i > 0 {
			b.WriteString(",\n")
		}
		b.WriteString(element(i))
	}
	return "[" + b.String() + "]"
}

// randomSticks is a problem of up to most parts of up to 200 lengths.
func randomSticks(d *cut.Dice, most int) string {
	parts := some(d, most)
	kinds := min(parts, some(d, 200))
	stock := list(1+d.N(4), func(i int) string {
		count := "null"
		if i > 0 && d.N(2) == 0 {
			count = fmt.Sprint(d.N(6))
		}
		long := 2000 + d.N(5000)
		return fmt.Sprintf(`{"tag": "S%d", "length": %d, "count": %s, "price": %.2f}`, i, long, count, float64(long)*(0.8+0.4*d.Share())/100)
	})
	return fmt.Sprintf(`{"unit": "mm", "kerf": %d, "trim": %d, "useful": 300, "stock": %s, "parts": %s}`, d.N(4), d.N(10), stock,
		list(kinds, func(i int) string {
			return fmt.Sprintf(`{"tag": "C%d", "length": %d, "count": %d}`, i, 100+d.N(1850), parts/kinds+d.N(2))
		}))
}

// randomBoards is a problem of up to most boards with knots and splits, and up to 12 kinds of panels that take about
// half of them.
func randomBoards(d *cut.Dice, most int) string {
	n := some(d, most)
	boards := list(n, func(i int) string {
		length := 60 + d.N(90)
		defects := list(d.N(6), func(int) string {
			return fmt.Sprintf(`{"kind": "%s", "face": "%s", "x": %d, "y": %d, "length": %d, "width": 1}`,
				pick(d, "knot", "knot", "split", "sap"), pick(d, "both", "good", "back"), d.N(length), d.N(5), 1+d.N(3))
		})
		return fmt.Sprintf(`{"tag": "B%d", "length": %d, "width": %.3f, "rough_edges": %d, "price": %d, "ring": "%s", "defects": %s}`,
			i, length, 4+float64(d.N(56))/8, d.N(3), 10+d.N(40), pick(d, "up", "down"), defects)
	})
	kinds := min(some(d, 12), n)
	return fmt.Sprintf(`{"unit": "in", "kerf": 0.125, "jointing": 0.03125, "end_trim": 0.5, "panel_edge_trim": 0.25, "board_edge_trim": 0.25,
 "salvage": 0.5, "min_tail": 24, "strip": {"least": 1.75, "most": 5.5}, "boards": %s, "panels": %s}`, boards,
		list(kinds, func(i int) string {
			return fmt.Sprintf(`{"tag": "A%d", "length": %d, "width": %d, "count": %d, "show": "%s"}`,
				i, 14+d.N(44), 8+d.N(16), 1+n/kinds/8, pick(d, "clear", "small-knots", "character"))
		}))
}

// randomRectangles is a problem of up to most rectangles of up to 60 kinds.
func randomRectangles(d *cut.Dice, most int) string {
	parts := some(d, most)
	kinds := min(parts, some(d, 60))
	sheets := list(1+d.N(3), func(i int) string {
		return fmt.Sprintf(`{"tag": "P%d", "length": %d, "width": %d, "count": %s, "price": %d, "grain": %v}`,
			i, 2400+d.N(400), 1200+d.N(300), pick(d, "null", "null", "2"), 40+d.N(40), d.N(2) == 0)
	})
	return fmt.Sprintf(`{"unit": "mm", "kerf": %d, "trim": %d, "stages": %d, "useful": [300, 150], "sheets": %s, "parts": %s}`,
		d.N(4), d.N(12), d.N(5), sheets, list(kinds, func(i int) string {
			return fmt.Sprintf(`{"tag": "D%d", "length": %d, "width": %d, "count": %d, "turn": %v}`,
				i, 80+d.N(1100), 60+d.N(700), parts/kinds+d.N(2), d.N(2) == 0)
		}))
}
