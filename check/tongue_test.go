package check

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
)

// cutOut is the table with one cut-out in its top, along and from front to back in inches, its middle at a place.
func cutOut(t testing.TB, x, y, along, deep float64, changes ...string) *Piece {
	return bored(t, shop.Sample(), fmt.Sprintf("kind: cut-out, at: [%v in, %v in], size: %v × %v in", x, y, along, deep), changes...)
}

// A cut-out of 2 × 4 in whose wall lies 1 in from the end of the grain of a white oak top 1 1/8 in thick leaves a bridge of
// short grain 1 in broad and 4 in long. A hand of 250 N: by hand, sideways P·L/4 ÷ (t·b²/6) = 250·101.6/4 ÷ (28.575·25.4²/6) =
// 2.067 MPa; it may bear 800 psi ÷ 4 · 1.6 = 2.206 MPa (Wood Handbook table 5-3, from memory).
func TestShortGrainBesideAnOpeningBearsAHand(t *testing.T) {
	f := only(t, Tongue(cutOut(t, 2, 10, 2, 4)), "the edge")
	near(t, "stress", f.Figure.Value, 2.067, 1e-3)
	near(t, "limit", f.Limit.Value, 2.206, 1e-3)
	verdict(t, f, finding.Tight)
	says(t, strings.Join(f.Assumed, "; "), "short", "a hand", "both its ends")
	f = only(t, Tongue(cutOut(t, 1.75, 10, 2, 4)), "the edge")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "away from the edge", "thick")
	says(t, f.Caution, "falls")
}

// The same wood along the grain, in front of the opening, is many times stronger.
func TestLongGrainBesideAnOpeningIsStrong(t *testing.T) {
	verdict(t, only(t, Tongue(cutOut(t, 20, 1.75, 4, 2)), "the edge"), finding.Stands)
}

func TestHalfAThingStandsOnATongue(t *testing.T) {
	pot := "holds:\n  - {name: pot, on: top, size: 4 × 4 × 8 in, weight: %v lb, at: [%v in, 10 in]}\nfeet: caps"
	on := Tongue(cutOut(t, 2, 10, 2, 4, "feet: caps", fmt.Sprintf(pot, 60, 2)))
	f := only(t, on, "the edge")
	verdict(t, f, finding.Tight)
	says(t, strings.Join(f.Assumed, "; "), "a hand") // 30 lbf stay, 133 N, less than 250 N ÷ 1.6
	f = only(t, Tongue(cutOut(t, 2, 10, 2, 4, "feet: caps", fmt.Sprintf(pot, 100, 2))), "the edge")
	verdict(t, f, finding.Fails)
	says(t, strings.Join(f.Assumed, "; "), "pot")
	verdict(t, only(t, Tongue(cutOut(t, 2, 10, 2, 4, "feet: caps", fmt.Sprintf(pot, 100, 20))), "the edge"), finding.Tight) // it stands elsewhere
}

func TestANotchLeavesATongueAndAHoleABridge(t *testing.T) {
	for opens, both := range map[string]bool{"front": false, "hole": true} {
		p := derive(t, notched, "width: 18 in,", "width: 18 in, opens: {front: "+opens+", back: hole},")
		found := false
		for _, s := range p.strips(0) {
			if s.why == "round front left post" && s.short {
				found = true
				if s.both != both {
					t.Errorf("%s: held at both ends %v", opens, s.both)
				}
			}
		}
		if !found {
			t.Errorf("%s: no strip beside it: %+v", opens, p.strips(0))
		}
	}
}

func TestSheetGoodsHaveNoShortGrain(t *testing.T) {
	if fs := Tongue(cutOut(t, 2, 10, 2, 4, "thickness: 1 1/8 in, grain: along length", "sheet: birch-plywood-18")); len(fs) != 0 {
		t.Error(told(fs))
	}
}

// used is how much of what they may bear the findings use at most; nothing is unknown here.
func used(fs []finding.Finding) (most float64) {
	for _, f := range fs {
		if f.Limit.Value > 0 {
			most = max(most, f.Figure.Value/f.Limit.Value)
		}
	}
	return most
}

func TestATongueNeverGetsBetterWhenMadeSlimmerOrItsLoadGrows(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		x, deep, kg := rapid.Float64Range(1.2, 6).Draw(r, "x"), rapid.Float64Range(1, 8).Draw(r, "deep"), rapid.Float64Range(1, 200).Draw(r, "kg")
		slim, more := rapid.Float64Range(0, x-1.1).Draw(r, "slim"), rapid.Float64Range(0, 200).Draw(r, "more")
		of := func(x, kg float64) float64 {
			hold := fmt.Sprintf("holds:\n  - {name: pot, on: top, size: 4 × 4 × 8 in, weight: %.3f kg}\nfeet: caps", kg)
			p := cutOut(t, float64(int(x*64))/64, 10, 2, float64(int(deep*64))/64, "feet: caps", hold)
			worst := 0.0
			for _, s := range p.strips(0) {
				if s.short && s.min[0] == 0 {
					_, u := p.weigh(0, s)
					worst = max(worst, u)
				}
			}
			return worst
		}
		was := of(x, kg)
		if is := of(x-slim, kg); is < was*(1-1e-9) {
			r.Errorf("slimmer by %v: %v of what it bears, was %v", slim, is, was)
		}
		if is := of(x, kg+more); is < was*(1-1e-9) {
			r.Errorf("%v kg more: %v of what it bears, was %v", more, is, was)
		}
	})
}

func TestTonguesAndSectionsOfRandomPiecesNeverGetBetterWhenALoadGrows(t *testing.T) {
	for seed := range uint64(60) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		heavy := *p.Resolved
		heavy.Held = append([]piece.Held(nil), p.Held...)
		for n := range heavy.Held {
			heavy.Held[n].MassKg *= 3
		}
		q := Of(&heavy, p.Parts, p.Shop)
		for name, of := range map[string]func(*Piece) []finding.Finding{"tongue": Tongue, "section": Section} {
			if was, is := used(of(p)), used(of(q)); is < was*(1-1e-9) {
				t.Errorf("seed %d, %s: %v of what it bears, was %v", seed, name, is, was)
			}
		}
	}
}
