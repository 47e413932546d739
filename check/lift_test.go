package check

import (
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/piece"
	"rodwright/shop"
)

// 23 kg close to the body: NIOSH revised lifting equation (1991), load constant, from memory.
func TestTwoLiftAPartAndFourAPiece(t *testing.T) {
	for _, c := range []struct {
		kg          float64
		piece, part finding.Verdict
		people      string
	}{
		{20, finding.Stands, finding.Stands, "one person"},
		{23, finding.Stands, finding.Stands, "one person"},
		{30, finding.Stands, finding.Stands, "two people"},
		{40, finding.Stands, finding.Tight, "two people"},
		{46, finding.Stands, finding.Tight, "two people"},
		{50, finding.Stands, finding.Fails, "3 people"},
		{90, finding.Tight, finding.Fails, "4 people"},
		{93, finding.Fails, finding.Fails, "5 people"},
	} {
		fs := Lift(block([2]float64{30, 20}, piece.Feet{Kind: piece.CapFoot}, []slab{{c.kg, 10}}))
		whole, heaviest := only(t, fs, "whole piece"), only(t, fs, "heaviest part")
		verdict(t, whole, c.piece)
		verdict(t, heaviest, c.part)
		says(t, whole.Assumed[0], c.people)
		if c.kg > 23 {
			says(t, whole.Caution, "More than one person")
		}
	}
}

func TestALighterLimitOfTheShopWins(t *testing.T) {
	s := shop.Sample()
	s.Settings.LiftKg = 15
	p := block([2]float64{30, 20}, piece.Feet{Kind: piece.CapFoot}, []slab{{40, 10}})
	p.Shop = s
	f := only(t, Lift(p), "heaviest part")
	near(t, "limit", f.Limit.Value, 30, 0)
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "10 kg lighter")
}

func TestAHeavierPieceIsNeverEasierToLift(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		kg, more := rapid.Float64Range(1, 150).Draw(r, "kg"), rapid.Float64Range(0, 50).Draw(r, "more")
		of := func(kg float64) []finding.Finding {
			return Lift(block([2]float64{30, 20}, piece.Feet{Kind: piece.CapFoot}, []slab{{kg, 10}}))
		}
		for i, heavy := range of(kg + more) {
			if light := of(kg)[i]; heavy.Verdict < light.Verdict {
				r.Fatalf("%v kg %s, %v kg more %s", kg, light.Verdict, more, heavy.Verdict)
			}
		}
	})
}
