package check

import (
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/piece/random"
	"rodwright/shop"
	"rodwright/solid"
)

func TestAPieceWhoseThingsKeepApartSaysSoOnce(t *testing.T) {
	fs := Overlap(derive(t, table))
	if len(fs) != 1 || len(fs[0].Parts) == 0 {
		t.Fatal(told(fs))
	}
	verdict(t, fs[0], finding.Stands)
}

// Crates spread over a board through whose middle a post goes: its pipe of 1.05 in stands wholly in the crate.
func TestAThingInAPostIsFound(t *testing.T) {
	p := derive(t, shelves, "count: 2}", "count: 1, at: [20 in, 15 in]}", "size: 12 × 10 × 18 in", "size: 36 × 10 × 18 in")
	fs := Overlap(p)
	left, right := only(t, fs, "back left post", "crates"), only(t, fs, "back right post", "crates")
	for _, f := range []finding.Finding{left, right} {
		verdict(t, f, finding.Fails)
		says(t, f.Mend, "move one of them")
		if len(f.Parts) != 2 { // the pipe, and the board on which the crate stands
			t.Errorf("parts %v", f.Parts)
		}
	}
}

// A fitting is several bodies; what it runs into is told once, with the deepest of them.
func TestAFittingIsToldOnce(t *testing.T) {
	p := derive(t, table, "end: {joins: front with back, level: 6 in}", "end: {joins: front with back, level: 27 in}")
	seen := map[string]bool{}
	for _, f := range Overlap(p) {
		if seen[f.Place] {
			t.Errorf("%s is told twice", f.Place)
		}
		seen[f.Place] = true
	}
}

func TestABoardThroughAFrameIsCutOut(t *testing.T) {
	p := derive(t, shelves)
	p.Panels[0].Features = nil // without its notches and pockets
	p = Of(p.Resolved, p.Parts, p.Shop)
	fs := Overlap(p)
	f := only(t, fs, "low and back left post")
	says(t, f.Mend, "cut the panel out there")
	f = only(t, fs, "low and", "back left post at back rail")
	deepest := 0.0
	for _, b := range p.solids[1:] {
		if m, ok := solid.Overlap(p.solids[0].Shape, b.Shape); ok && strings.HasSuffix(f.Place, b.Name) {
			deepest = max(deepest, m.Depth.MM())
		}
	}
	near(t, "the deepest of the fitting's bodies", f.Figure.Value, deepest, 0)
}

func TestTheDeepestOfAFittingsBodiesIsTold(t *testing.T) {
	for seed := range uint64(40) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		deepest := map[string]float64{}
		for i, a := range p.solids {
			for _, b := range p.solids[i+1:] {
				if m, ok := solid.Overlap(a.Shape, b.Shape); ok && !p.MayMeet(a, b) {
					deepest[a.Name+" and "+b.Name] = max(deepest[a.Name+" and "+b.Name], m.Depth.MM())
				}
			}
		}
		for _, f := range Overlap(p) {
			if f.Verdict == finding.Fails && f.Figure.Value != deepest[f.Place] {
				t.Errorf("seed %d, %s: %v, the deepest is %v", seed, f.Place, f.Figure.Value, deepest[f.Place])
			}
		}
	}
}
