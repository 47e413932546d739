package part

import (
	"math/rand/v2"
	"testing"

	"rodwright/length"
	"rodwright/piece"
)

const (
	inch = length.Inch
	mm   = length.Millimetre
)

// board returns a panel lying at the origin.
func board(l, w, t length.Length, grainX bool, cuts ...piece.Feature) *piece.FlatPanel {
	return &piece.FlatPanel{Spec: &piece.Panel{}, Max: piece.Vec{X: l, Y: w, Z: t}, GrainX: grainX, Features: cuts}
}

func TestGrainAlongThePieceKeepsTheFrontLeftCorner(t *testing.T) {
	p := board(40*inch, 12*inch, inch, true, piece.Feature{
		Kind: piece.HoleFeature, Min: [2]length.Length{3 * inch, inch}, Max: [2]length.Length{4 * inch, 3 * inch},
	})
	f := frameOf(p)
	got := f.features(p)[0]
	if got.At != [2]length.Length{3 * inch, inch} || got.Size != [2]length.Length{inch, 2 * inch} {
		t.Errorf("hole at %v size %v", got.At, got.Size)
	}
	if f.datum() != "front left" || f.along != 40*inch || f.cross != 12*inch {
		t.Errorf("datum %s, %v along, %v across", f.datum(), f.along, f.cross)
	}
}

// A panel with its grain from front to back is turned by a quarter, not mirrored: a point near the right
// edge lies near the datum edge.
func TestGrainFrontToBackTurnsThePanel(t *testing.T) {
	p := board(40*inch, 12*inch, inch, false, piece.Feature{
		Kind: piece.NotchFeature, Opens: piece.BackSide,
		Min: [2]length.Length{36 * inch, 10 * inch}, Max: [2]length.Length{38 * inch, 12 * inch},
	})
	f := frameOf(p)
	got := f.features(p)[0]
	if got.At != [2]length.Length{10 * inch, 2 * inch} || got.Size != [2]length.Length{2 * inch, 2 * inch} {
		t.Errorf("notch at %v size %v, want 10, 2 and 2 × 2 in", got.At, got.Size)
	}
	if got.Opens != FarEnd {
		t.Errorf("a notch open to the back opens to the %s", got.Opens)
	}
	if f.datum() != "front right" || f.along != 12*inch || f.cross != 40*inch {
		t.Errorf("datum %s, %v along, %v across", f.datum(), f.along, f.cross)
	}
}

func TestSidesFollowTheGrain(t *testing.T) {
	for _, c := range []struct {
		grainX bool
		plan   piece.PanelSide
		want   Side
		run    length.Length
	}{
		{true, piece.LeftSide, StartEnd, 12 * inch},
		{true, piece.RightSide, FarEnd, 12 * inch},
		{true, piece.FrontSide, NearEdge, 40 * inch},
		{true, piece.BackSide, FarEdge, 40 * inch},
		{false, piece.LeftSide, FarEdge, 12 * inch},
		{false, piece.RightSide, NearEdge, 12 * inch},
		{false, piece.FrontSide, StartEnd, 40 * inch},
		{false, piece.BackSide, FarEnd, 40 * inch},
		{true, piece.NoSide, NoSide, 40 * inch},
	} {
		f := frameOf(board(40*inch, 12*inch, inch, c.grainX))
		got := f.side(c.plan)
		if got != c.want {
			t.Errorf("grain along the piece %v: %s is %q, want %q", c.grainX, c.plan, got, c.want)
		}
		if got != NoSide && f.run(got) != c.run {
			t.Errorf("grain along the piece %v: %s runs %v", c.grainX, c.plan, f.run(got))
		}
	}
}

// Turning the whole panel with its cuts by a quarter must not change what the maker marks on it.
func TestTurningThePanelChangesNoMark(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		l, w := length.Length(r.Int64N(1000)+10)*mm, length.Length(r.Int64N(500)+10)*mm
		x, y := length.Length(r.Int64N(int64(l-2))), length.Length(r.Int64N(int64(w-2)))
		a, b := length.Length(r.Int64N(int64(l-x))), length.Length(r.Int64N(int64(w-y)))
		flat := board(l, w, inch, true, piece.Feature{Min: [2]length.Length{x, y}, Max: [2]length.Length{x + a, y + b}})
		// A quarter turn to the left takes (x, y) to (−y, x); the panel's new extent is w × l.
		turned := board(w, l, inch, false, piece.Feature{
			Min: [2]length.Length{w - y - b, x}, Max: [2]length.Length{w - y, x + a},
		})
		got, want := frameOf(turned).features(turned)[0], frameOf(flat).features(flat)[0]
		if got.At != want.At || got.Size != want.Size {
			t.Fatalf("turned: %v %v, flat: %v %v", got.At, got.Size, want.At, want.Size)
		}
	}
}

func TestProfilesRunAlongTheirOwnEdge(t *testing.T) {
	p := board(40*inch, 12*inch, inch, false)
	p.Edges = []piece.Edge{{Side: "front", Profile: "chamfer", Size: inch / 8}}
	got := frameOf(p).profiles(p)
	want := Profile{Side: StartEnd, Profile: "chamfer", Size: inch / 8, Run: 40 * inch}
	if len(got) != 1 || got[0] != want {
		t.Errorf("profiles %+v, want %+v", got, want)
	}
}
