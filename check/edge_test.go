package check

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
)

// A 3/4 in flange has its screws on a circle of 2.6 in, from memory: an inset of 3 in leaves 1.7 in to the nearest edge.
// National Design Specification, Commentary, from memory: 5 D to an end, 2.5 D to an edge, D 0.190 in.
func TestTheScrewNearestToAnEndIsFound(t *testing.T) {
	f := only(t, Edge(derive(t, table)), "in top")
	verdict(t, f, finding.Stands)
	near(t, "left", f.Figure.Value/25.4, 3-1.3, 1e-6)
	near(t, "least", f.Limit.Value/25.4, 5*0.190, 1e-9)
	says(t, f.Place, "end")
}

// inset is the table with its legs so far in from its ends.
func inset(along string) string {
	return strings.ReplaceAll(table, "inset: 3 in", "inset: {along: "+along+", across: 3 in}")
}

func TestTheSameInsetWantsMoreWoodAtAnEndThanAtAnEdge(t *testing.T) {
	f := only(t, Edge(derive(t, table, "grain: along length", "grain: along width")), "in top")
	says(t, f.Place, "front end")
}

// At an inset of 2.1 in the worst turn leaves 0.8 in to the end, less than 0.95; with two holes along the edge the screws
// stand 1.3·cos 45° = 0.919 in off the middle and leave 1.181 in.
func TestAFlangeNearAnEndMustBeTurned(t *testing.T) {
	f := only(t, Edge(derive(t, inset("2.1 in"))), "in top")
	verdict(t, f, finding.Tight)
	says(t, f.Mend, "two of its holes along that edge", "3/16 in")
}

func TestAFlangeAtAnEndFailsAndIsMoved(t *testing.T) {
	f := only(t, Edge(derive(t, inset("1.8 in"))), "in top")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "1/2 in") // 0.95 + 1.3 − 1.8 = 0.45, up to the next sixteenth
}

func TestAHoleBesideAFlangeTakesItsWood(t *testing.T) {
	holes := "feet: caps\nholes:\n  cord: {in: top, at: [[5.2 in, 3 in]], diameter: 1 in}"
	f := only(t, Edge(derive(t, table, "feet: caps", holes)), "in top")
	says(t, f.Place, "cord")
	near(t, "left", f.Figure.Value/25.4, 2.2-0.5-1.3, 1e-6)
	near(t, "along the grain its wall is an end", f.Limit.Value/25.4, 0.95, 1e-9)
}

func TestAProfileTakesTheWoodAtItsEdge(t *testing.T) {
	f := only(t, Edge(derive(t, table, "feet: caps", "feet: caps\nedges:\n  top: {left: chamfer 1/2 in}")), "in top")
	near(t, "left", f.Figure.Value/25.4, 3-0.5-1.3, 1e-6)
}

// A strap for 3/4 in pipe has its screws 2.5 in apart, from memory, on either side of its rail.
func TestAStrapsScrewsStandAcrossItsRail(t *testing.T) {
	p := derive(t, wallShelf)
	for _, s := range p.screwSets(0) {
		if len(s.spots) != 2 || s.spots[0][1] != s.spots[1][1] {
			t.Fatalf("%v", s.spots)
		}
		near(t, "apart", math.Abs(s.spots[1][0]-s.spots[0][0])/25.4, 2.5, 1e-9)
	}
}

func TestNoTwoSetsAreNearerThanTheirScrewsCanBe(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		mm := func(name string, most float64) float64 { return rapid.Float64Range(0, most).Draw(r, name) }
		a, b := screwSet{round: mm("a", 50)}, screwSet{at: [2]float64{mm("x", 300), mm("y", 300)}, round: mm("b", 50)}
		d := apart(a, b)
		if d < 0 || math.Abs(d-apart(b, a)) > 1e-9 {
			r.Fatalf("%v one way, %v the other", d, apart(b, a))
		}
	})
}
