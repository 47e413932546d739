package check

import (
	"testing"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

// The flange of 3 1/2 in stands 3 in from the edge: the oak shrinks over these 3 in by 3 · 0.00365 · (8 − 6.2) =
// 0.0197 in, and 2.98 in are left of the 1 3/4 in that cover its rim.
func TestAPanelStillCoversItsFlangesWhenDry(t *testing.T) {
	f := only(t, Seat(derive(t, table)), "top")
	verdict(t, f, finding.Stands)
	near(t, "reach", f.Figure.Value/25.4, 3-0.0197, 0.002)
}

func TestAFlangeThatStandsOutFails(t *testing.T) {
	p := derive(t, table, "front corners of top, inset: 3 in", "front corners of top, inset: 1 1/2 in", "back corners of top, inset: 3 in", "back corners of top, inset: 1 1/2 in")
	f := only(t, Seat(p), "flange at the")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "reach", "farther over the flange")
}

// bearers carry a board near its long edges; it lies loose.
const bearers = `
rodwright: 1
piece: board on two rails
unit: in
fineness: 1/16
place: {room: studio, humidity: 30–60 %, temperature: 70–70 F}
wood: {species: white-oak, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
posts:
  legs: {at: [[0, 0], [40, 0], [0, 20], [40, 20]], from: feet, to: {level: 30 in, end: cap}}
rails:
  end: {joins: legs posts, level: 6 in}
  bearer: {joins: legs posts, under: board, bands: ridden}
panels:
  board: {length: 30 in, width: 21.25 in, thickness: 1 in, grain: along length, level: 18 in, at: [5 in, -0.625 in], sits: on bearer rails, straps: 0}
feet: caps
`

// The board reaches 5/8 in past the axes of pipes of 1.05 in. Loose, it is reckoned from its middle: 10.625 in shrink
// by 10.625 · 0.00365 · 1.8 = 0.070 in, so 0.555 in are left of the 0.525 in that cover the pipe: tight.
func TestALooseBoardMustReachItsRailsWhenDry(t *testing.T) {
	p := derive(t, bearers)
	f := only(t, Seat(p), "board on the")
	near(t, "reach", f.Figure.Value/25.4, 0.555, 0.003)
	verdict(t, f, finding.Tight)
	f = only(t, Seat(derive(t, bearers, "21.25 in", "21.05 in", "-0.625 in", "-0.525 in")), "board on the")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "let the panel reach 1/8 in farther")
}

func TestEndsOfTheGrainDoNotShrinkOffTheirRails(t *testing.T) {
	p := derive(t, bearers, "grain: along length", "grain: along width")
	f := only(t, Seat(p), "board on the")
	near(t, "reach", f.Figure.Value/25.4, 0.625, 1e-6)
}

func TestALooseBoardMustLieOnBothSidesOfItsMiddle(t *testing.T) {
	p := derive(t, bearers)
	verdict(t, only(t, Seat(p), "board, loose"), finding.Stands)
	for i := range p.Panels[0].Seats { // all rails but the front one taken away
		if p.Panels[0].Seats[i].At[1] > 10*in {
			p.Panels[0].Seats[i].Kind = piece.BetweenPosts
		}
	}
	f := only(t, Seat(p), "board, loose")
	verdict(t, f, finding.Fails)
	near(t, "middle outside", f.Figure.Value, -(10 * in).MM(), 1e-6)
	says(t, f.Mend, "10 in under it")
}

func TestAPanelThatNothingBearsIsAsked(t *testing.T) {
	p := derive(t, bearers)
	p.Panels[0].Seats = nil
	f := only(t, Seat(p), "board")
	verdict(t, f, finding.Unknown)
	says(t, f.Missing, "what bears board")
}

// A 3 in plate caster's plate must lie wholly under the deck; the insert of a stem needs the wood that the
// shop leaves round every hole.
func TestAPanelOnFeetCoversTheirPlates(t *testing.T) {
	const dolly = `
rodwright: 1
piece: dolly
unit: in
fineness: 1/16
place: {room: workshop}
wood: {species: white-oak, cut: flat, moisture: 8 %}
panels:
  deck: {length: 36 in, width: 24 in, thickness: 1 1/2 in, grain: along length, sits: on feet}
feet: {casters: {under: deck, kind: plate, wheel: 3 in, inset: 3 in, locks: 2}}
`
	verdict(t, only(t, Seat(derive(t, dolly)), "deck on the"), finding.Stands)
	f := only(t, Seat(derive(t, dolly, "inset: 3 in", "inset: 1 in")), "deck on the")
	verdict(t, f, finding.Fails)
	stem := derive(t, dolly, "kind: plate", "kind: stem", "inset: 3 in", "inset: 1 in")
	f = only(t, Seat(stem), "deck on the")
	near(t, "needed", f.Limit.Value, stem.Shop.Settings.CornerGap.MM(), 0)
	verdict(t, f, finding.Stands)
}

func TestSlackOfTheUnknownComesLast(t *testing.T) {
	if s := slack(finding.Finding{Verdict: finding.Unknown}); s != length.Max.MM() {
		t.Errorf("slack %v", s)
	}
}
