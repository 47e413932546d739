package check

import (
	"testing"

	"rodwright/finding"
	"rodwright/length"
)

// shelves are two boards, the upper one 20 in over the lower.
const shelves = `
rodwright: 1
piece: shelves
unit: in
fineness: 1/16
place: {room: studio, humidity: 30–60 %, temperature: 70–70 F}
wood: {species: white-oak, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
holds:
  - {name: crates, on: low, size: 12 × 10 × 18 in, weight: 20 lb, count: 2}
posts:
  front: {at: front corners of low, inset: 3 in, from: feet, to: low}
  back: {at: back corners of low, inset: 3 in, from: feet, to: high}
rails:
  end: {joins: front with back, level: 4 in}
  back: {joins: back posts, under: low, bands: relieved}
panels:
  low: {length: 40 in, width: 18 in, thickness: 1 in, grain: along length, level: 12 in, sits: [on front posts, on back rail, around back posts]}
  high: {length: 40 in, width: 9 in, thickness: 1 in, grain: along length, level: 33 in, sits: on back posts}
feet: caps
`

// The high board's underside is at 32 in, 20 in over the low board's top at 12 in, and reaches from 10.5 in to the
// back; things that stand under it have so much room, less where a flange hangs into it.
func TestThingsMustGoUnderWhatIsAbove(t *testing.T) {
	for high, want := range map[string]finding.Verdict{"15 in": finding.Stands, "18 in": finding.Tight, "21 in": finding.Fails} {
		p := derive(t, shelves, "10 × 18 in", "10 × "+high, "count: 2}", "count: 2, at: [14 in, 12 in]}")
		f := only(t, Fit(p), "under what is above")
		near(t, "room", f.Limit.Value, (20 * in).MM(), 1e-6)
		verdict(t, f, want)
		if want == finding.Fails {
			says(t, f.Mend, "by 1 in")
		}
	}
}

func TestAFlangeTakesItsShareOfTheRoom(t *testing.T) {
	p := derive(t, shelves, "count: 2}", "count: 1, at: [5 in, 9 in]}") // near the back left post's flange
	f := only(t, Fit(p), "under what is above")
	if room := length.FromMM(f.Limit.Value); room >= 20*in || room < 19*in {
		t.Errorf("room %v in under the flange", room.Inches())
	}
}

func TestTheOneOfSeveralWithTheLeastRoomIsTold(t *testing.T) {
	// the first stands in front of the high board under the open sky, the last under it
	p := derive(t, shelves, "12 × 10 × 18 in", "4 × 4 × 18 in", "count: 2}", "count: 1, at: [20 in, 2 in]}")
	for _, f := range Fit(p) {
		if f.Limit.Name == "room above low" {
			t.Errorf("under the open sky: %s", told([]finding.Finding{f}))
		}
	}
	p = derive(t, shelves, "weight: 20 lb, count: 2}", "weight: 20 lb, count: 2}\n  - {name: box, on: low, size: 4 × 4 × 4 in, weight: 1 lb, at: [20 in, 14 in]}")
	only(t, Fit(p), "crates under")
	only(t, Fit(p), "box under")
}

// A crate of 12 × 10 in may stand out by a quarter of its size: 2.5 in from front to back.
func TestThingsStandOnTheirPanel(t *testing.T) {
	for name, c := range map[string]struct {
		at    string
		want  finding.Verdict
		reach float64
	}{
		"wholly on it":               {"[20 in, 6 in]", finding.Stands, 0},
		"1 in over the front edge":   {"[20 in, 4 in]", finding.Tight, 1},
		"3 in over the front edge":   {"[20 in, 2 in]", finding.Fails, 3},
		"4 in over the left end":     {"[2 in, 6 in]", finding.Fails, 4},
		"2 in over the end of 12 in": {"[4 in, 6 in]", finding.Tight, 2},
	} {
		p := derive(t, shelves, "count: 2}", "count: 1, at: "+c.at+"}")
		f := only(t, Fit(p), "crates on low")
		verdict(t, f, c.want)
		near(t, name, f.Figure.Value, inch(c.reach).MM(), 1e-6)
	}
	f := only(t, Fit(derive(t, shelves, "count: 2}", "count: 1, at: [20 in, 2 in]}")), "crates on low")
	says(t, f.Mend, "make low 1/2 in deeper")
}

// between is a board between posts in front of it and behind it, 20 in from axis to axis across its grain.
const between20 = `
rodwright: 1
piece: board between posts
unit: in
fineness: 1/64
place: {room: studio, humidity: 30–60 %, temperature: 70–70 F}
wood: {species: white-oak, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
posts:
  front: {at: [[4 in, 0], [36 in, 0]], from: feet, to: {level: 30 in, end: cap}}
  back: {at: [[4 in, 20 in], [36 in, 20 in]], from: feet, to: {level: 30 in, end: cap}}
rails:
  end: {joins: front with back, under: board, bands: ridden}
panels:
  board: {length: 40 in, width: 18.2 in, thickness: 1 in, grain: along length, level: 18 in, at: [0, 0.9 in], sits: [on end rails, between front posts, between back posts]}
feet: caps
`

// The board's edges lie 0.9 in from the axes of the posts, round which the tees of the rails still reach up with a
// band of 1.458 in (ASME B16.3, from memory): 0.171 in of gap. It is held in its middle, and each half of 9.1 in grows
// by 9.1 · 0.00365 · 3.0 = 0.100 in when damp: 0.071 in are left, one pitch of the pipe's thread (1/14 in).
func TestABoardBetweenPostsMustNotBindWhenDamp(t *testing.T) {
	f := only(t, Fit(derive(t, between20)), "between posts")
	near(t, "gap", f.Figure.Value/25.4, 0.071, 0.003)
	near(t, "post", f.Figure.Inputs[2].Value/25.4, 1.458, 1e-6)
	f = only(t, Fit(derive(t, between20, "18.2 in", "18.3 in", "0.9 in", "0.85 in")), "between posts")
	verdict(t, f, finding.Tight) // 0.021 in
	f = only(t, Fit(derive(t, between20, "18.2 in", "18.5 in", "0.9 in", "0.75 in")), "between posts")
	verdict(t, f, finding.Fails) // 0.021 in of gap, 0.101 in of growth
	says(t, f.Mend, "narrower")
}

func TestABoardBetweenPostsAtItsEndsDoesNotMove(t *testing.T) {
	p := derive(t, between20, "grain: along length", "grain: along width")
	f := only(t, Fit(p), "between posts")
	near(t, "gap", f.Figure.Value/25.4, 0.171, 1e-6)
}

// A pipe of 1.05 in whose axis lies 24 in up leaves 24 − 0.525 − 12 = 11.475 in over a board at 12 in.
func TestARailOverThingsIsAbove(t *testing.T) {
	p := derive(t, shelves, "  end: {joins", "  brace: {joins: back posts, level: 24 in}\n  end: {joins", "count: 2}", "count: 1, at: [12 in, 14 in]}")
	f := only(t, Fit(p), "under what is above")
	near(t, "room", f.Limit.Value/25.4, 11.475, 1e-6)
}

// A flange screwed to the same board is beside what stands there, not above it: the two overlap.
func TestAFlangeOnTheSameBoardIsNotAbove(t *testing.T) {
	p := derive(t, `
rodwright: 1
piece: tower
unit: in
fineness: 1/16
place: {room: studio}
wood: {species: hard-maple}
pipe: {standard: npt, size: 3/4}
holds:
  - {name: box, on: deck, size: 8 × 8 × 4 in, weight: 5 lb, at: [4 in, 4 in]}
posts:
  lower: {at: corners of deck, inset: 3 in, from: feet, to: deck}
  upper: {at: corners of deck, inset: 3 in, from: deck, to: {level: 40 in, end: cap}}
panels:
  deck: {length: 40 in, width: 20 in, thickness: 1 1/8 in, grain: along length, level: 20 in, sits: [on lower posts, under upper posts]}
feet: caps
`)
	for _, f := range Fit(p) {
		if f.Verdict != finding.Stands { // the cap of the post, 20 in higher, is above it
			t.Error(told([]finding.Finding{f}))
		}
	}
	only(t, Overlap(p), "front left upper post", "box", "flange")
}
