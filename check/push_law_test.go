package check

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/piece/random"
	"rodwright/shop"
)

// leastOf returns the least figure of the findings of a check whose place has the words.
func leastOf(fs []finding.Finding, words string) float64 {
	least := math.Inf(1)
	for _, f := range fs {
		if f.Verdict != finding.Unknown && strings.Contains(f.Place, words) {
			least = min(least, f.Figure.Value)
		}
	}
	return least
}

// Of random pieces: when one of the things held gets heavier no tilt, push, load on an edge or speed gets better, and
// no caster's load smaller.
func TestNoRandomPieceStandsBetterWithAHeavierThing(t *testing.T) {
	tried := 0
	for seed := range uint64(150) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		if len(p.Held) == 0 {
			continue
		}
		tried++
		of := func(p *Piece) []float64 {
			return []float64{leastOf(Tip(p), "to the "), leastOf(Push(p), "pushed at"), leastOf(Push(p), "leant on"), leastOf(Threshold(p), "stop dead"), -mostLoad(Caster(p))}
		}
		light := of(p)
		heavier := *p.Resolved
		heavier.Held = slices.Clone(p.Held)
		heavier.Held[seed%uint64(len(p.Held))].MassKg += 25
		for i, heavy := range of(Of(&heavier, p.Parts, p.Shop)) {
			if heavy > light[i]+1e-6*(1+math.Abs(light[i])) {
				t.Errorf("seed %d: figure %d goes from %v to %v", seed, i, light[i], heavy)
			}
		}
	}
	if tried < 20 {
		t.Errorf("only %d pieces hold anything", tried)
	}
}

func mostLoad(fs []finding.Finding) (most float64) {
	for _, f := range fs {
		for _, b := range f.Because {
			if b.Name == "load on the worst foot, even floor" || b.Name == "load on each caster" {
				most = max(most, b.Value)
			}
		}
	}
	return most
}
