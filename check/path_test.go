package check

import (
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

// crate is a piece of the given outer sizes in inches, carried through doors to a room.
func crate(x, y, z float64, ceiling float64, doors ...piece.Door) *Piece {
	p := block([2]float64{30, 12}, piece.Feet{Kind: piece.CapFoot}, []slab{{10, 10}})
	p.Min, p.Max = piece.Vec{}, piece.Vec{X: inch(x), Y: inch(y), Z: inch(z)}
	p.Doc.Place.Doors = doors
	if ceiling > 0 {
		c := inch(ceiling)
		p.Doc.Place.Ceiling = &c
	}
	return p
}

func door(w, h float64) piece.Door { return piece.Door{Name: "hall", Width: inch(w), Height: inch(h)} }

// A bookcase of 82 × 44 in carried in on its side needs √(82² + 44²) = 93.06 in to stand up on (a public answer, by
// Pythagoras): under 96 in it stands, under 90 in only when it is laid on its back first: √(82² + 12²) = 82.9 in.
func TestABookcaseMustStandUpUnderTheCeiling(t *testing.T) {
	low := door(30, 70)
	for ceiling, want := range map[float64]finding.Verdict{110: finding.Stands, 96: finding.Tight, 90: finding.Tight, 82.5: finding.Fails} {
		f := only(t, Path(crate(44, 12, 82, ceiling, low)), "ceiling")
		near(t, "on its side", because(t, f, "diagonal over its greater side").Value/25.4, 93.1, 0.1)
		near(t, "on its back", because(t, f, "diagonal over its lesser side").Value/25.4, 82.9, 0.1)
		verdict(t, f, want)
	}
	// √(82² + 70²) = 107.8 in does not come up under 105 in, √(82² + 12²) does with ease
	verdict(t, only(t, Path(crate(70, 12, 82, 105, low)), "ceiling"), finding.Tight)
	f := only(t, Path(crate(44, 12, 82, 82.5, low)), "ceiling")
	says(t, f.Mend, "upright", "make it 7/16 in lower") // √(82.5² − 12²) = 81.623: 0.377 in, up to 7/16 at sixteenths
}

func TestWhatPassesUprightNeedNotBeStoodUp(t *testing.T) {
	f := only(t, Path(crate(44, 12, 78, 80, door(30, 79))), "ceiling")
	near(t, "height", f.Figure.Value/25.4, 78, 1e-9)
	if f.Verdict == finding.Fails {
		t.Error(told([]finding.Finding{f}))
	}
}

// Only the two lesser sizes must pass; the long one goes through lengthwise.
func TestThroughADoor(t *testing.T) {
	for _, c := range []struct {
		x, y, z float64
		want    finding.Verdict
		size    float64
	}{
		{100, 20, 30, finding.Stands, 20}, // 20 of 32 is more of its door than 30 of 78
		{100, 31, 30, finding.Tight, 30},  // the lesser goes to the width
		{100, 34, 35, finding.Fails, 34},
		{100, 20, 82, finding.Fails, 82},
		{20, 84, 82, finding.Fails, 82},
	} {
		f := only(t, Path(crate(c.x, c.y, c.z, 0, door(32, 78))), "through hall")
		verdict(t, f, c.want)
		near(t, "size", f.Figure.Value/25.4, c.size, 1e-9)
		if c.want == finding.Fails {
			says(t, f.Mend, "less there")
		}
	}
}

func TestAWayNobodyNamedIsAskedFor(t *testing.T) {
	f := only(t, Path(crate(40, 20, 30, 0)), "the way")
	verdict(t, f, finding.Unknown)
	says(t, f.Missing, "doors")
}

func TestAWiderDoorNeverHinders(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		size := func(name string) float64 { return rapid.Float64Range(5, 120).Draw(r, name) }
		x, y, z, w, h, more := size("x"), size("y"), size("z"), size("w"), size("h"), rapid.Float64Range(0, 30).Draw(r, "more")
		narrow := only(t, Path(crate(x, y, z, 0, door(w, h))), "through")
		wide := only(t, Path(crate(x, y, z, 0, door(w+more, h))), "through")
		if wide.Verdict > narrow.Verdict {
			r.Fatalf("%v wide %s, %v more %s", w, narrow.Verdict, more, wide.Verdict)
		}
	})
}

func TestEachStandingPieceHasItsOwnSize(t *testing.T) {
	p := derive(t, twoBenches)
	if len(p.standing) != 2 {
		t.Fatalf("%d pieces stand", len(p.standing))
	}
	for _, s := range p.standing {
		if size := p.outerSize(s); size[0] > 40*in || size[2] < 17*in {
			t.Errorf("%v × %v × %v in", size[0].Inches(), size[1].Inches(), size[2].Inches())
		}
	}
	var total length.Length
	for _, s := range p.standing {
		total += length.FromMM(p.ownKg(s))
	}
	if total <= 0 || total.MM() > p.Parts.Totals.MassKg {
		t.Errorf("%v kg of %v", total.MM(), p.Parts.Totals.MassKg)
	}
}
