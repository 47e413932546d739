package check

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/piece"
)

// turned is a piece of the given outer sizes in inches, carried round one turn.
func turned(x, y, z, ceiling, from, to float64) *Piece {
	p := crate(x, y, z, ceiling)
	p.Doc.Place.Turns = []piece.Turn{{Name: "landing", From: inch(from), To: inch(to)}}
	return p
}

// In equal passages of 48 in a piece 20 in deep may be 2·(√2·48 − 20) = 95.76 in long: geometry by symmetry at 45°.
func TestALongPieceSticksInATurn(t *testing.T) {
	for _, c := range []struct {
		long float64
		want finding.Verdict
	}{{80, finding.Tight}, {100, finding.Fails}} {
		f := only(t, Path(turned(c.long, 20, 30, 0, 48, 48)), "round the turn landing")
		near(t, "longest", f.Limit.Value/25.4, 2*(math.Sqrt2*48-20), 1e-6)
		verdict(t, f, c.want)
		if c.want == finding.Fails {
			says(t, f.Mend, "4 1/4 in shorter") // 100 − 95.765 = 4.235, up to the next sixteenth
		}
	}
}

func TestAPieceOnEndGoesRoundUnderAHighCeiling(t *testing.T) {
	verdict(t, only(t, Path(turned(90, 20, 30, 0, 36, 36)), "round"), finding.Fails)
	f := only(t, Path(turned(90, 20, 30, 100, 36, 36)), "round")
	if f.Verdict == finding.Fails {
		t.Error(told([]finding.Finding{f}))
	}
}

func TestAPieceWiderThanThePassageIsMadeSlimmer(t *testing.T) {
	f := only(t, Path(turned(80, 40, 42, 0, 36, 36)), "round")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "4 in slimmer")
}

func TestAWiderTurnNeverHindersAndALongerPieceNeverPassesBetter(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		size := func(name string) float64 { return rapid.Float64Range(5, 120).Draw(r, name) }
		x, y, z, a, b, more := size("x"), size("y"), size("z"), size("a"), size("b"), rapid.Float64Range(0, 30).Draw(r, "more")
		ceiling := rapid.SampledFrom([]float64{0, 96}).Draw(r, "ceiling")
		of := func(x, a float64) finding.Verdict {
			return only(t, Path(turned(x, y, z, ceiling, a, b)), "round").Verdict
		}
		if of(x, a+more) > of(x, a) {
			r.Errorf("a turn %v wider hinders", more)
		}
		if was, is := of(x, a), of(x+more, a); (is == finding.Fails) != (was == finding.Fails) && was == finding.Fails {
			r.Errorf("%v longer passes", more)
		}
	})
}
