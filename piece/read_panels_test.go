package piece_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"rodwright/length"
	"rodwright/piece"
)

// seatLine is what the bench says of its panel behind the dimensions.
const seatLine = "level: height, sits: [on front posts, on back posts]"

func TestThePanelOfTheBench(t *testing.T) {
	level := 18 * in
	want := piece.Panel{Name: "seat", Length: 48 * in, Width: 15 * in, Thickness: 3 * in / 2, GrainX: true, Level: &level, Straps: -1,
		Seats: []piece.Seat{{Kind: piece.OnPosts, Group: "front"}, {Kind: piece.OnPosts, Group: "back"}}}
	got := read(t).Panels[0]
	if got.Wood == nil || got.Wood.Species.ID != "white-oak" {
		t.Errorf("its wood is %+v", got.Wood)
	}
	if d := cmp.Diff(want, got, unplaced, cmpopts.IgnoreFields(piece.Panel{}, "Wood")); d != "" {
		t.Error(d)
	}
}

func TestTheGrainRunsAlongThePieceOrAcrossIt(t *testing.T) {
	for _, c := range []struct {
		lay    string
		turned bool
		grainX bool
	}{
		{"grain: along length", false, true},
		{"grain: along width", false, false},
		{"grain: along length, turned: yes", true, false},
		{"grain: along width, turned: yes", true, true},
		{"turned: no", false, true},
		{"turned: yes", true, false},
	} {
		p := read(t, seatLine, c.lay+", "+seatLine).Panels[0]
		if p.Turned != c.turned || p.GrainX != c.grainX {
			t.Errorf("%s: turned %v, grain along the piece %v", c.lay, p.Turned, p.GrainX)
		}
	}
}

func TestEveryWayAPanelSits(t *testing.T) {
	for _, c := range []struct {
		sits string
		want []piece.Seat
	}{
		{"on front posts", []piece.Seat{{Kind: piece.OnPosts, Group: "front"}}},
		{"[under front posts, under back posts]", []piece.Seat{{Kind: piece.UnderPosts, Group: "front"}, {Kind: piece.UnderPosts, Group: "back"}}},
		{"on top rails", []piece.Seat{{Kind: piece.OnRails, Group: "top"}}},
		{"on bracket arms", []piece.Seat{{Kind: piece.OnRails, Group: "bracket"}}},
		{"[on top rails, around back posts]", []piece.Seat{{Kind: piece.OnRails, Group: "top"}, {Kind: piece.AroundPosts, Group: "back"}}},
		{"[on front posts, between back posts]", []piece.Seat{{Kind: piece.OnPosts, Group: "front"}, {Kind: piece.BetweenPosts, Group: "back"}}},
		{"by place", []piece.Seat{{Kind: piece.ByPlace}}},
		{"on feet", []piece.Seat{{Kind: piece.OnFeet}}},
	} {
		doc := read(t, "rails:\n", "arms:\n  bracket: {at: [4], level: 20, reach: 12, bands: short}\nrails:\n  top: {joins: front with back, level: 15, bands: ridden}\n",
			"feet: caps", "feet: {casters: {kind: plate, wheel: 2 in, under: seat, inset: 2 in}}",
			"from: feet, to: seat", "from: floor, to: seat", "from: feet, to: seat", "from: floor, to: seat",
			seatLine, "level: height, at: [0, 0], sits: "+c.sits)
		same(t, c.sits, doc.Panels[0].Seats, c.want)
	}
}

func TestThePanelsShapeAndFaces(t *testing.T) {
	const rails = "rails:\n  top: {joins: front with back, level: 15, bands: relieved}\n"
	doc := read(t, "rails:\n", rails, seatLine, "sits: [on top rails, around front posts, around back posts], at: [1, 2], straps: 3, gap: 1/16, show: small-knots, stock: 8/4, "+
		"corners: {front left: 1 in, back right: 1/2}, opens: {back: hole, front: auto}")
	p := doc.Panels[0]
	gap := in / 16
	want := piece.Panel{Length: 48 * in, Width: 15 * in, Thickness: 3 * in / 2, GrainX: true, Name: "seat", Straps: 3, Gap: &gap,
		At: &[2]length.Length{in, 2 * in}, Show: "small-knots", Stock: "8/4", Opens: map[string]string{"back": "hole"},
		Corners: map[piece.Corner]length.Length{piece.FrontLeft: in, piece.BackRight: in / 2},
		Seats:   []piece.Seat{{Kind: piece.OnRails, Group: "top"}, {Kind: piece.AroundPosts, Group: "front"}, {Kind: piece.AroundPosts, Group: "back"}}}
	if d := cmp.Diff(want, p, unplaced, cmpopts.IgnoreFields(piece.Panel{}, "Wood")); d != "" {
		t.Error(d)
	}
	p = read(t, "rails:\n", rails, seatLine, "sits: [on top rails, around back posts], straps: none, corners: 3/4 in, opens: back").Panels[0]
	all := map[piece.Corner]length.Length{piece.FrontLeft: 3 * in / 4, piece.FrontRight: 3 * in / 4, piece.BackLeft: 3 * in / 4, piece.BackRight: 3 * in / 4}
	if p.Straps != 0 || p.Level != nil || p.Opens["back"] != "back" || !cmp.Equal(p.Corners, all) {
		t.Errorf("read %+v", p)
	}
}

func TestHolesSlotsAndCutOuts(t *testing.T) {
	const line = "drains: {in: seat, along: front edge, from edge: 5 in, diameter: 5/8 in, count: 3}"
	for _, c := range []struct {
		hole string
		want piece.Holes
	}{
		{"{in: seat, along: left edge, from edge: 5 in, diameter: 5/8 in}",
			piece.Holes{Kind: piece.RoundHole, Along: "left", FromEdge: 5 * in, Count: 1, Diameter: 5 * in / 8}},
		{"{in: seat, at: [6, depth / 2], diameter: 5/8 in, depth: 1/2}",
			piece.Holes{Kind: piece.RoundHole, At: [][2]length.Length{{6 * in, 15 * in / 2}}, Count: 1, Diameter: 5 * in / 8, Depth: in / 2}},
		{"{in: seat, at: [[6, 7], [8, 9]], diameter: 2 in, passes: plug 1 1/2 in}",
			piece.Holes{Kind: piece.RoundHole, At: [][2]length.Length{{6 * in, 7 * in}, {8 * in, 9 * in}}, Count: 2, Diameter: 2 * in, Passes: "plug 1 1/2 in", PassSize: 3 * in / 2}},
		{"{in: seat, at: [6, 7], diameter: 2 in, passes: cord of the lamp}",
			piece.Holes{Kind: piece.RoundHole, At: [][2]length.Length{{6 * in, 7 * in}}, Count: 1, Diameter: 2 * in, Passes: "cord of the lamp"}},
		// ASME B36.10M: NPS 3/4 is 1.050 in outside; ASME B16.3: its band is 1.458 in at least
		{"{in: seat, at: [6, 7], diameter: 2 in, passes: pipe}",
			piece.Holes{Kind: piece.RoundHole, At: [][2]length.Length{{6 * in, 7 * in}}, Count: 1, Diameter: 2 * in, Passes: "pipe", PassSize: 105 * in / 100}},
		{"{in: seat, at: [6, 7], diameter: 2 in, passes: tee}",
			piece.Holes{Kind: piece.RoundHole, At: [][2]length.Length{{6 * in, 7 * in}}, Count: 1, Diameter: 2 * in, Passes: "tee", PassSize: 1458 * in / 1000}},
		{"{in: seat, kind: slot, along: back edge, from edge: 2 in, size: 4 × 1 in}",
			piece.Holes{Kind: piece.Slot, Along: "back", FromEdge: 2 * in, Count: 1, Size: [2]length.Length{4 * in, in}}},
		{"{in: seat, kind: cut-out, at: [20, 7], size: 100 × 60 mm, radius: 1/2}",
			piece.Holes{Kind: piece.CutOut, At: [][2]length.Length{{20 * in, 7 * in}}, Count: 1, Size: [2]length.Length{100 * length.Millimetre, 60 * length.Millimetre}, Radius: in / 2}},
	} {
		c.want.Name, c.want.In = "drains", "seat"
		same(t, c.hole, read(t, line, "drains: "+c.hole).Holes, []piece.Holes{c.want})
	}
}

func TestAnEdgeTakesItsOwnProfileBeforeThatOfAll(t *testing.T) {
	doc := read(t, "seat: {front: chamfer 1/8 in}", "seat: {all: round-over 1/16, front: chamfer height / 36}")
	same(t, "edges", doc.Edges, []piece.Edge{
		{Panel: "seat", Side: "back", Profile: "round-over", Size: in / 16},
		{Panel: "seat", Side: "left", Profile: "round-over", Size: in / 16},
		{Panel: "seat", Side: "right", Profile: "round-over", Size: in / 16},
		{Panel: "seat", Side: "front", Profile: "chamfer", Size: in / 2},
	})
}

func TestHeldThings(t *testing.T) {
	const lb = 0.45359237
	doc := read(t, "weight: 165 lb, count: 2}\n", "weight: 165 lb, count: 2}\n  - {name: cat, on: seat, size: 300 × 200 × 250 mm, weight: 4.5 kg, at: [40, depth / 2]}\n")
	want := []piece.Hold{
		{Name: "sitters", On: "seat", Size: [3]length.Length{15 * in, 13 * in, 34 * in}, MassKg: 165 * lb, Count: 2},
		{Name: "cat", On: "seat", Size: [3]length.Length{300 * length.Millimetre, 200 * length.Millimetre, 250 * length.Millimetre}, MassKg: 4.5, Count: 1,
			At: &[2]length.Length{40 * in, 15 * in / 2}},
	}
	if d := cmp.Diff(want, doc.Holds, unplaced, cmpopts.EquateApprox(0, 1e-9)); d != "" {
		t.Error(d)
	}
}

func TestScrewsThatAreChosen(t *testing.T) {
	doc := read(t, "flange: {screw: 10 × 1 in}", "flange: 10 × 1 in\n  strap: {screw: 12, slotted: yes, hole: 1/4}\n  wall flange: {screw: 14 x 3 in}\n  caster: 14")
	same(t, "joints", doc.Joints, piece.Joints{
		Flange:     piece.Fastening{Gauge: 10, Length: in},
		Strap:      piece.Fastening{Gauge: 12, Slotted: true, Hole: in / 4},
		WallFlange: piece.Fastening{Gauge: 14, Length: 3 * in},
		Caster:     piece.Fastening{Gauge: 14},
	})
}
