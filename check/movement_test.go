package check

import (
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/pipe"
	"rodwright/trade/screw"
)

// White oak, flat-sawn, at 8 % in 30 to 60 % RH at 70 °F (Wood Handbook eq. 4-5: 6.2 and 11.0 % MC), C_T 0.00365
// (table 13-5), flanges 14.5 in apart: +0.157 and −0.097 in; a No. 10 screw (shank 0.190 in, ASME B18.6.1) needs
// a hole of 0.190 + 2·0.157 = 0.504 in.
func TestFlangesMoveApartWithTheWood(t *testing.T) {
	p := derive(t, table, "fineness: 1/16", "fineness: 1/64")
	f := only(t, Movement(p), "top")
	near(t, "wet", because(t, f, "change at the dampest").Value/25.4, 0.157, 0.004)
	near(t, "dry", because(t, f, "change at the driest").Value/25.4, -0.097, 0.004)
	near(t, "figure", f.Figure.Value/25.4, 0.157, 0.004)
	if got := p.opened(10, length.FromMM(f.Figure.Value)); got != "33/64 in" { // 0.504 in, up
		t.Errorf("the hole is %s", got)
	}
}

// 85 % RH at 72.5 °F is 17.895 % MC (Wood Handbook eq. 4-5); 8 % to that, over 14.5 in, by eq. 13-3 with S 10.5 %:
// 14.5 · 9.895 ÷ (100·30 ÷ 10.5 − 30 + 8) = 0.544 in.
func TestDampRoomIsReckonedFromTheGreenSize(t *testing.T) {
	p := derive(t, table, "humidity: 30–60 %, temperature: 70–70 F", "humidity: 30–85 %, temperature: 72.5–72.5 F")
	near(t, "moisture", p.Air.WetMC, 17.895, 0.005)
	f := only(t, Movement(p), "top")
	near(t, "wet", because(t, f, "change at the dampest").Value/25.4, 0.544, 0.005)
}

// 12EIδ/L³ with δ 0.0786 in, E 29·10⁶ psi and 3/4 Schedule 40 pipe: 1913.3 lbf over 8.09 in, 37.5 lbf over 30 in.
func TestALegHoldsBackWhatIsScrewedToIt(t *testing.T) {
	size, err := pipe.Lookup("3/4")
	if err != nil {
		t.Fatal(err)
	}
	for l, want := range map[float64]float64{8.09: 1913.3, 30: 37.5} {
		force := (0.0786 * 25.4) / bends(legHeld, inch(l), size)
		near(t, fmt.Sprintf("%v in", l), force/lbf, want, want*0.01)
		near(t, "free to turn", (0.0786*25.4)/bends(legFree, inch(l), size), force/4, 1e-6)
	}
}

// Two legs a row, 21.875 in from the flange's face to the axis of the rail, both rows in line: the movement less
// the play is shared by two springs of 2·3EI/L³ each, so that the row carries (δ − play)·3EI/L³.
func TestLegsOfBothRowsGive(t *testing.T) {
	p := derive(t, table)
	f := only(t, Movement(p), "top")
	verdict(t, f, finding.Stands)
	size := p.Nodes[0].Size
	moved := f.Figure.Value - because(t, f, "play").Value
	l := inch(21.875).MM()
	want := moved * 3 * 200_000 * size.SecondMoment() / (l * l * l)
	near(t, "least force", because(t, f, "least force on the row of screws").Value, want, want*1e-6)
	near(t, "greatest force", because(t, f, "greatest force on the row of screws").Value, 4*want, 4*want*1e-6)
	// the give: the screws of two flanges a row bear 2·4·Lateral, each row gives F·L³/(2·3EI)
	set := p.Parts.Fasteners[0]
	sc, _ := screw.Lookup(set.Gauge)
	one, err := screw.Lateral(p.Panels[0].Spec.Wood.Species, sc.Shank, set.Length-set.Grip)
	if err != nil {
		t.Fatal(err)
	}
	give := 2 * 4 * one.Value / (3 * 200_000 * size.SecondMoment() / (l * l * l))
	near(t, "allowed", f.Limit.Value, because(t, f, "play").Value+give, 1e-6)
}

// A solid maple top that was glued and screwed all over cracked within a year (a public answer): fastened in
// rows across the grain to steel that does not give it fails, with slots along one of them it stands.
func TestATopScrewedAllOverFailsAndSlotsMendIt(t *testing.T) {
	stiff := []string{"species: white-oak", "species: hard-maple", "width: 20.5 in", "width: 36 in", "level: 29 in", "level: 10 in", "{joins: front with back, level: 6 in}", "{joins: front with back, level: 7 in}"}
	f := only(t, Movement(derive(t, table, stiff...)), "top")
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "slot the flanges' holes to", "in across the grain")
	slotted := append([]string{"feet: caps", "feet: caps\njoints: {flange: {slotted: yes}}"}, stiff...)
	f = only(t, Movement(derive(t, table, slotted...)), "top")
	verdict(t, f, finding.Stands)
	says(t, fmt.Sprint(f.Assumed), "slotted to")
}

func TestAPanelHeldOnOneLineStands(t *testing.T) {
	p := derive(t, table, "front: {at: front corners of top", "front: {at: [[3 in, 10.25 in], [37 in, 10.25 in]]", ", inset: 3 in, from: feet, to: top}\n  back",
		", from: feet, to: top}\n  back", "  back: {at: back corners of top, inset: 3 in, from: feet, to: top}\nrails:\n  end: {joins: front with back, level: 6 in}\n",
		"rails:\n  end: {joins: front posts, level: 6 in}\n", "[on front posts, on back posts]", "on front posts")
	f := only(t, Movement(p), "top")
	verdict(t, f, finding.Stands)
	says(t, fmt.Sprint(f.Assumed), "one line along the grain")
}

// Without end rails nothing keeps front and back legs apart but the floor they stand on.
func TestLegsThatNothingJoinsMoveWithThePanel(t *testing.T) {
	p := derive(t, table, "end: {joins: front with back, level: 6 in}", "long: {joins: front posts, level: 6 in}")
	f := only(t, Movement(p), "top")
	verdict(t, f, finding.Stands)
	near(t, "hindered", f.Figure.Value, 0, 0)
	says(t, fmt.Sprint(f.Assumed), "nothing joins")
}

// slats lie on rails that lead across their grain.
const slats = `
rodwright: 1
piece: slats
unit: in
fineness: 1/16
place: {room: studio, humidity: 30–60 %, temperature: 70–70 F}
wood: {species: white-oak, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
posts:
  legs: {at: [[0, 0], [40, 0], [0, 24], [40, 24]], from: feet, to: bearer rails}
rails:
  bearer: {joins: legs posts, under: slat, bands: ridden}
panels:
  slat: {length: 44 in, width: 24 in, thickness: 1 in, grain: along length, level: 18 in, at: [-2 in, 0 in], sits: on bearer rails}
feet: caps
`

func TestStrapsSlideAlongPipesAcrossTheGrain(t *testing.T) {
	p := derive(t, slats)
	rows := p.rows(0)
	for _, r := range rows {
		for _, h := range r.holds {
			along := h.free == ""
			rail := p.Sticks[p.stickOf(t, h.tags[0])]
			if along != (rail.Dir.Y == 0) {
				t.Errorf("strap %s on the %s: free because %q", h.tags[0], rail.Name, h.free)
			}
		}
	}
}

// stickOf returns the stick a strap is on.
func (p *Piece) stickOf(t *testing.T, strap string) int {
	t.Helper()
	for i, tags := range p.Parts.SeatTags {
		for k, tag := range tags {
			if tag == strap {
				return p.Panels[i].Seats[k].Stick
			}
		}
	}
	t.Fatalf("no strap %s", strap)
	return -1
}

// A load in the middle of a beam of 36 in at rest: FL³/48EI; two at the quarter points, sharing it: FL³/96EI (beam
// tables of any mechanics text: F/2·a·(3La − 4a²)/(6EI) at a = L/4).
func TestARailSagsUnderItsStraps(t *testing.T) {
	size, _ := pipe.Lookup("3/4")
	ei, l := pipe.SteelModulus*size.SecondMoment(), (36 * in).MM()
	near(t, "one", sags([]float64{l / 2}, l, size), l*l*l/(48*ei), 1e-15)
	near(t, "two", sags([]float64{l / 4, 3 * l / 4}, l, size), l*l*l/(96*ei), 1e-15)
	near(t, "at a support", sags([]float64{0}, l, size), 0, 1e-15)
	near(t, "none", sags(nil, l, size), 0, 0)
}

func TestHoldsThatDoNotGiveTakeTheForceAlone(t *testing.T) {
	soft := func(h hold) float64 { return h.soft }
	r := row{holds: []hold{{soft: 0, bears: 100}, {soft: 2, bears: 1}}}
	near(t, "gives", r.gives(soft), 0, 0)
	near(t, "bears", r.bears(soft), 100, 0)
	r = row{holds: []hold{{soft: 0, bears: 100}, {soft: 0, bears: 60}}}
	near(t, "both alike", r.bears(soft), 120, 0)
	r = row{holds: []hold{{soft: 1, bears: 100}, {soft: 3, bears: 100}}} // shares ¾ and ¼: the stiffer is full at 133.3
	near(t, "gives", r.gives(soft), 0.75, 1e-12)
	near(t, "bears", r.bears(soft), 400.0/3, 1e-9)
}

func TestSheetGoodsDoNotMove(t *testing.T) {
	p := derive(t, table, "thickness: 1 1/8 in, grain: along length", "sheet: birch-plywood-18")
	if fs := Movement(p); len(fs) != 0 {
		t.Error(told(fs))
	}
}

// The air only reaches the wood through its moisture, so a damper place can only move it more. All within the
// one formula of eq. 13-2, or from 8 % on across to eq. 13-3, whose slope there is the greater.
func TestDamperAirNeverImprovesMovement(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		low := rapid.IntRange(20, 50).Draw(r, "low")
		high := rapid.IntRange(low+1, 80).Draw(r, "high")
		more := rapid.IntRange(0, 15).Draw(r, "more")
		of := func(high int) finding.Finding {
			p := derive(t, table, "humidity: 30–60 %", fmt.Sprintf("humidity: %d–%d %%", low, high), "level: 29 in", "level: 12 in")
			return only(t, Movement(p), "top")
		}
		dry, damp := of(high), of(high+more)
		if damp.Figure.Value < dry.Figure.Value-1e-9 || damp.Verdict < dry.Verdict {
			r.Fatalf("to %d %%: %v mm %s; to %d %%: %v mm %s", high, dry.Figure.Value, dry.Verdict, high+more, damp.Figure.Value, damp.Verdict)
		}
	})
}

func TestCastersUnderAPanelMoveWithIt(t *testing.T) {
	p := derive(t, `
rodwright: 1
piece: dolly
unit: in
fineness: 1/16
place: {room: workshop, humidity: 30–80 %, temperature: 5–30 C}
wood: {species: white-oak, cut: flat, moisture: 8 %}
panels:
  deck: {length: 36 in, width: 24 in, thickness: 1 1/2 in, grain: along length, sits: on feet}
feet: {casters: {under: deck, kind: plate, wheel: 3 in, inset: 3 in, count: 4, locks: 2}}
`)
	f := only(t, Movement(p), "deck")
	verdict(t, f, finding.Stands)
	near(t, "hindered", f.Figure.Value, 0, 0)
}

func TestALegGivesToTheFirstJointThatIsStayed(t *testing.T) {
	p := derive(t, table)
	for i, n := range p.Nodes {
		if n.Kind != pipe.Flange {
			continue
		}
		soft, stiff := p.legGives(0, i)
		near(t, "soft", soft, bends(legFree, inch(21.875), n.Size), 1e-15)
		near(t, "stiff", stiff, bends(legHeld, inch(21.875), n.Size), 1e-15)
	}
	turned := p.Panels[0]
	turned.GrainX = false // now the end rails lead along the grain, and nothing stays the legs
	p.Panels = []piece.FlatPanel{turned}
	if soft, _ := p.legGives(0, 2); p.Nodes[2].Kind == pipe.Flange && !math.IsInf(soft, 1) {
		t.Errorf("a leg stayed nowhere gives %v", soft)
	}
}

// Holes of 3/8 in round No. 10 screws of 0.190 in: (0.375 − 0.190)/2 = 0.0925 in of play at either row.
func TestPlayIsThatOfBothRows(t *testing.T) {
	hole := []string{"feet: caps", "feet: caps\njoints: {flange: {screw: 10 × 1 in, hole: 3/8 in}}"}
	f := only(t, Movement(derive(t, table, hole...)), "top")
	near(t, "play", because(t, f, "play").Value/25.4, 2*0.0925, 1e-6)
	hole[1] = "feet: caps\njoints: {flange: {screw: 10 × 1 in, slotted: yes, hole: 3/8 in}}" // slots of a given length
	f = only(t, Movement(derive(t, table, hole...)), "top")
	near(t, "play of slots", because(t, f, "play").Value/25.4, 2*0.0925, 1e-6)
}

// pairs carries one board on two frames that nothing joins: the rows at 3 and 8 in are one frame, those at 20 and
// 26 in the other.
const pairs = `
rodwright: 1
piece: one board on two frames
unit: in
fineness: 1/16
place: {room: studio, humidity: 30–60 %, temperature: 70–70 F}
wood: {species: white-oak, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
posts:
  a: {at: [[4 in, 3 in], [36 in, 3 in]], from: feet, to: top}
  b: {at: [[4 in, 8 in], [36 in, 8 in]], from: feet, to: top}
  c: {at: [[4 in, 20 in], [36 in, 20 in]], from: feet, to: top}
  d: {at: [[4 in, 26 in], [36 in, 26 in]], from: feet, to: top}
rails:
  front: {joins: a with b, level: 6 in}
  back: {joins: c with d, level: 6 in}
panels:
  top: {length: 40 in, width: 29 in, thickness: 1 1/8 in, grain: along length, level: 29 in, at: [0, 0], sits: [on a posts, on b posts, on c posts, on d posts]}
feet: caps
`

func TestOnlyWhatOneFrameHoldsIsHindered(t *testing.T) {
	f := only(t, Movement(derive(t, pairs)), "top")
	near(t, "rows apart", f.Figure.Inputs[0].Value/25.4, 6, 1e-9) // the worse of 5 and 6 in
	near(t, "whole", because(t, f, "change at the dampest").Value, f.Figure.Value, 1e-6)
}

// A leg is free up to the rail that stays it, past a rail that leads along the grain.
func TestARailAlongTheGrainDoesNotStayALeg(t *testing.T) {
	p := derive(t, table, "end: {joins: front with back, level: 6 in}", "end: {joins: front with back, level: 6 in}\n  long: {joins: front posts, level: 15 in}")
	for i, n := range p.Nodes {
		if n.Kind != pipe.Flange {
			continue
		}
		soft, _ := p.legGives(0, i)
		near(t, "soft", soft, bends(legFree, inch(21.875), n.Size), 1e-15)
	}
}

// The back rail of the shelves is strapped under the low board, 34 in between its posts, which the end rails stay at
// 4 in and the high board at 32 in: the rail bends under both straps, and each post bends for half the force and
// counts half.
func TestARailGivesWithItsPosts(t *testing.T) {
	p := derive(t, shelves)
	for _, r := range p.rows(0) {
		for _, h := range r.holds {
			if !h.rail {
				continue
			}
			stick := p.Sticks[p.stickOf(t, h.tags[0])]
			size, from := p.Nodes[stick.A].Size, p.Nodes[stick.A].At
			post := 1 / (1/bends(legFree, from.Z-4*in, size) + 1/bends(legFree, 32*in-from.Z, size))
			var at []float64
			for k, tag := range p.Parts.SeatTags[0] {
				if slices.Contains(h.tags, tag) {
					at = append(at, (p.Panels[0].Seats[k].At[0] - from.X).MM())
				}
			}
			near(t, "soft", h.soft, post/2+sags(at, (34*in).MM(), size), 1e-12)
			near(t, "stiff", h.stiff, post/4/2, 1e-12)
			if len(h.tags) != 2 {
				t.Errorf("%d straps", len(h.tags))
			}
			return
		}
	}
	t.Error("no strap holds the low board")
}

// Of a wall shelf whose grain leads away from the wall the arms lie along it: their straps keep it from moving along
// the wall, each arm standing out from its flange.
func TestArmsFromTheWallHoldAShelfAcrossThem(t *testing.T) {
	p := derive(t, wallShelf, "grain: along length", "grain: along width")
	f := only(t, Movement(p), "shelf")
	near(t, "rows apart", f.Figure.Inputs[0].Value, 600, 1e-9)
	h := p.rows(0)[0].holds[0]
	strap := p.Panels[0].Seats[slices.Index(p.Parts.SeatTags[0], h.tags[0])].At[1]
	near(t, "soft", h.soft, bends(legFree, *p.Wall-strap, p.Nodes[0].Size), 1e-12)
}

func TestTheStandIsTightBetweenBothBounds(t *testing.T) {
	text, err := os.ReadFile("../examples/stepped-stand.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	p, err := tryDerive(shop.Sample(), text)
	if err != nil {
		t.Fatal(err)
	}
	f := only(t, Movement(p), "deep board")
	verdict(t, f, finding.Tight)
	says(t, f.Mend, "slot the straps' holes")
}

// The rails of a loose ring of posts that nothing joins across the grain follow the board.
func TestStrapsOnPostsThatNothingJoinsMoveWithThePanel(t *testing.T) {
	p := derive(t, shelves, "  end: {joins: front with back, level: 4 in}\n", "")
	f := only(t, Movement(p), "low")
	near(t, "hindered", f.Figure.Value, 0, 0)
	says(t, fmt.Sprint(f.Assumed), "nothing joins")
}

// A top on long legs is held so softly that it stands although held legs would be too stiff: then it is tight.
func TestBetweenTheBoundsItIsTight(t *testing.T) {
	found := false
	for level := 10; level < 29 && !found; level++ {
		p := derive(t, table, "level: 29 in", fmt.Sprintf("level: %d in", level), "width: 20.5 in", "width: 34 in")
		f := only(t, Movement(p), "top")
		if f.Figure.Value < 0.8*f.Limit.Value && f.Verdict == finding.Tight {
			found = true
			says(t, fmt.Sprint(f.Assumed), "overload the screws")
		}
	}
	if !found {
		t.Error("no height of the table is tight by the stiff bound alone")
	}
}
