package steps

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"rodwright/piece"
	"rodwright/trade/pipe"
)

// frameOf builds a frame from pairs of nodes; the kinds say what each node is.
func frameOf(kinds []pipe.Kind, sticks ...[2]int) *piece.Resolved {
	r := &piece.Resolved{}
	for _, k := range kinds {
		r.Nodes = append(r.Nodes, piece.Node{Kind: k, Panel: -1, Foot: -1})
	}
	for i, s := range sticks {
		r.Sticks = append(r.Sticks, piece.Stick{Name: fmt.Sprint("pipe ", i), Group: fmt.Sprint(i % 3), Role: piece.FreeRole, A: s[0], B: s[1]})
		for _, n := range s {
			r.Nodes[n].Sticks = append(r.Nodes[n].Sticks, i)
		}
	}
	return r
}

// grown checks every turn of a frame's growth and counts what can't be turned.
func grown(t interface{ Fatalf(string, ...any) }, r *piece.Resolved, joins []join) (caughtOnes int) {
	stick, node := map[int]bool{}, map[int]bool{}
	put := func(in map[int]bool, i int, what string) {
		if in[i] {
			t.Fatalf("%s %d is put to the frame twice", what, i)
		}
		in[i] = true
	}
	for _, j := range joins {
		switch j.kind {
		case startAt:
			if j.stick >= 0 {
				put(stick, j.stick, "pipe")
			} else {
				put(node, j.node, "fitting")
			}
		case screwPipe:
			if !node[j.node] {
				t.Fatalf("pipe %d is turned into fitting %d, which is not there", j.stick, j.node)
			}
			put(stick, j.stick, "pipe")
		case screwNode:
			if !stick[j.stick] {
				t.Fatalf("fitting %d is turned onto pipe %d, which is not there", j.node, j.stick)
			}
			put(node, j.node, "fitting")
		case caught:
			put(stick, j.stick, "pipe")
			caughtOnes++
		}
	}
	for i := range r.Sticks {
		if !stick[i] {
			t.Fatalf("pipe %d is never put to the frame", i)
		}
	}
	for i, n := range r.Nodes {
		if n.Kind != pipe.Flange && n.Kind != pipe.Union && n.Kind != pipe.None && len(n.Sticks) > 0 && !node[i] {
			t.Fatalf("fitting %d, a %s, is never put to the frame", i, n.Kind)
		}
	}
	return caughtOnes
}

func TestFramesThatCanBeScrewedTogether(t *testing.T) {
	const tee, elbow, capped, flange, union, open = pipe.Tee, pipe.Elbow90, pipe.Cap, pipe.Flange, pipe.Union, pipe.None
	cases := []struct {
		name   string
		frame  *piece.Resolved
		caught int
	}{
		{"a leg between flange and cap", frameOf([]pipe.Kind{capped, flange}, [2]int{0, 1}), 0},
		{"an H", frameOf([]pipe.Kind{tee, tee, capped, flange, capped, flange}, [2]int{0, 1}, [2]int{0, 2}, [2]int{0, 3}, [2]int{1, 4}, [2]int{1, 5}), 0},
		{"a closed square can't be: its last pipe is caught", frameOf([]pipe.Kind{elbow, elbow, elbow, elbow}, [2]int{0, 1}, [2]int{1, 2}, [2]int{2, 3}, [2]int{3, 0}), 1},
		{"a union closes it", frameOf([]pipe.Kind{elbow, elbow, elbow, elbow, union}, [2]int{0, 1}, [2]int{1, 2}, [2]int{2, 3}, [2]int{3, 4}, [2]int{4, 0}), 0},
		{"two arms that do not touch", frameOf([]pipe.Kind{flange, capped, flange, open}, [2]int{0, 1}, [2]int{2, 3}), 0},
		{"a bare pipe", frameOf([]pipe.Kind{open, open}, [2]int{0, 1}), 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			g := newGrower(c.frame)
			g.grow()
			if n := grown(t, c.frame, g.joins); n != c.caught {
				t.Errorf("%d pipes are caught between two fittings, want %d", n, c.caught)
			}
		})
	}
}

// anyFrame draws a frame: a tree of fittings, some of it loose, and further pipes that close loops.
func anyFrame(r *rapid.T) (frame *piece.Resolved, loops int) {
	n := rapid.IntRange(2, 20).Draw(r, "fittings")
	kinds := make([]pipe.Kind, n)
	var sticks [][2]int
	for i := range kinds {
		kinds[i] = rapid.SampledFrom([]pipe.Kind{pipe.Tee, pipe.Cross, pipe.SideTee}).Draw(r, "kind")
		if i > 0 && rapid.IntRange(0, 5).Draw(r, "loose") > 0 {
			sticks = append(sticks, [2]int{rapid.IntRange(0, i-1).Draw(r, "to"), i})
		}
	}
	extra := rapid.IntRange(0, 4).Draw(r, "loops")
	trunk := len(sticks)
	for range min(extra, trunk) {
		// A second pipe between two fittings that are joined already closes one loop more.
		s := sticks[rapid.IntRange(0, trunk-1).Draw(r, "beside")]
		if rapid.Bool().Draw(r, "union") {
			kinds = append(kinds, pipe.Union)
			sticks = append(sticks, [2]int{s[0], len(kinds) - 1}, [2]int{len(kinds) - 1, s[1]})
			continue
		}
		sticks = append(sticks, s)
		loops++
	}
	ends := rapid.IntRange(0, 6).Draw(r, "ends")
	for range ends {
		kinds = append(kinds, rapid.SampledFrom([]pipe.Kind{pipe.Cap, pipe.Flange, pipe.None}).Draw(r, "end"))
		sticks = append(sticks, [2]int{rapid.IntRange(0, n-1).Draw(r, "at"), len(kinds) - 1})
	}
	return frameOf(kinds, sticks...), loops
}

func TestOneFreePieceIsTurnedAtATimeAndOnlyLoopsWithoutUnionsCatchOne(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		frame, loops := anyFrame(r)
		g := newGrower(frame)
		g.grow()
		if n := grown(r, frame, g.joins); n != loops {
			r.Fatalf("%d pipes are caught, and %d loops have no union", n, loops)
		}
	})
}

func TestABlockedPipeWaits(t *testing.T) {
	frame := frameOf([]pipe.Kind{pipe.Tee, pipe.Tee, pipe.Cap, pipe.Cap}, [2]int{0, 1}, [2]int{0, 2}, [2]int{1, 3})
	g := newGrower(frame)
	g.blocked[0] = true
	g.grow()
	for _, j := range g.joins {
		if j.stick == 0 {
			t.Fatal("a pipe that a panel must be laid for is screwed in before it")
		}
	}
	g.blocked[0] = false
	g.grow()
	if !g.stickIn[0] {
		t.Error("a pipe is forgotten once its panel lies there")
	}
}
