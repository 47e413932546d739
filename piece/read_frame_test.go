package piece_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// unplaced compares what is read without its places and pipe.
var unplaced = cmp.Options{cmpopts.IgnoreTypes(piece.Pos{}, piece.Section{})}

func same(t *testing.T, what string, got, want any) {
	t.Helper()
	if d := cmp.Diff(want, got, unplaced); d != "" {
		t.Errorf("%s:\n%s", what, d)
	}
}

var (
	seatEnd = piece.PostEnd{Kind: piece.AtPanel, Name: "seat"}
	feetEnd = piece.PostEnd{Kind: piece.AtFeet}
)

func TestPostsStandAtCornersOrAtCoordinates(t *testing.T) {
	fl, fr, bl, br := piece.FrontLeft, piece.FrontRight, piece.BackLeft, piece.BackRight
	for _, c := range []struct {
		at   string
		want piece.Posts
	}{
		{"at: front corners of seat, inset: 3 in", piece.Posts{Panel: "seat", Corners: []piece.Corner{fl, fr}, InsetX: 3 * in, InsetY: 3 * in}},
		{"at: left corners of seat, inset: 3 in", piece.Posts{Panel: "seat", Corners: []piece.Corner{fl, bl}, InsetX: 3 * in, InsetY: 3 * in}},
		{"at: right corners of seat, inset: 0", piece.Posts{Panel: "seat", Corners: []piece.Corner{fr, br}}},
		{"at: corners of seat, inset: {along: depth / 5, across: 2 in}", piece.Posts{Panel: "seat", Corners: []piece.Corner{fl, fr, bl, br}, InsetX: 3 * in, InsetY: 2 * in}},
		{"at: back right corner of seat, inset: 1 in", piece.Posts{Panel: "seat", Corners: []piece.Corner{br}, InsetX: in, InsetY: in}},
		{"at: [3 in, depth]", piece.Posts{At: [][2]length.Length{{3 * in, 15 * in}}}},
		{"at: [[3, 3], [-45, 3 in]]", piece.Posts{At: [][2]length.Length{{3 * in, 3 * in}, {-45 * in, 3 * in}}}},
	} {
		doc := read(t, "at: front corners of seat, inset: 3 in", c.at)
		c.want.Name, c.want.From, c.want.To = "front", feetEnd, seatEnd
		same(t, c.at, doc.Posts[0], c.want)
	}
}

func TestThePostsEnds(t *testing.T) {
	for _, c := range []struct {
		ends     string
		from, to piece.PostEnd
	}{
		{"from: feet, to: seat", feetEnd, seatEnd},
		{"to: seat", feetEnd, seatEnd},
		{"from: floor, to: seat", piece.PostEnd{Kind: piece.AtLevel, Finish: pipe.None}, seatEnd},
		{"from: seat, to: {level: 40 in}", seatEnd, piece.PostEnd{Kind: piece.AtLevel, Level: 40 * in, Finish: pipe.Cap}},
		{"from: {level: 2 in, end: flange}, to: {level: 40 in, end: bare}", piece.PostEnd{Kind: piece.AtLevel, Level: 2 * in, Finish: pipe.Flange},
			piece.PostEnd{Kind: piece.AtLevel, Level: 40 * in, Finish: pipe.None}},
		{"from: feet, to: end rails", feetEnd, piece.PostEnd{Kind: piece.AtRail, Name: "end"}},
		{"from: brace rail, to: seat", piece.PostEnd{Kind: piece.AtRail, Name: "brace"}, seatEnd},
	} {
		doc := read(t, "from: feet, to: seat", c.ends)
		same(t, c.ends+" from", doc.Posts[0].From, c.from)
		same(t, c.ends+" to", doc.Posts[0].To, c.to)
	}
}

func TestRailsJoinPostsOrRails(t *testing.T) {
	half := [2]int64{1, 2}
	for _, c := range []struct {
		rail string
		want piece.Rails
	}{
		{"joins: front with back, level: 6 in", piece.Rails{From: "front", With: "back", Level: 6 * in, Share: half}},
		{"joins: front posts with back posts, level: height / 3", piece.Rails{From: "front", With: "back", Level: 6 * in, Share: half}},
		{"joins: back posts, level: 6", piece.Rails{From: "back", Level: 6 * in, Share: half}},
		{"joins: end rails", piece.Rails{From: "end", FromRails: true, Share: half}},
		{"joins: end rails, share: 1/3, union: yes", piece.Rails{From: "end", FromRails: true, Share: [2]int64{1, 3}, Union: true}},
		{"joins: front with end, share: 0.25", piece.Rails{From: "front", With: "end", WithRails: true, Share: [2]int64{1, 4}}},
		{"joins: back posts, under: seat, bands: relieved", piece.Rails{From: "back", Under: "seat", Bands: piece.Relieved, Share: half}},
		{"joins: back posts, level: 6, bands: ridden", piece.Rails{From: "back", Level: 6 * in, Bands: piece.Ridden, Share: half}},
	} {
		c.want.Name = "brace"
		same(t, c.rail, read(t, "joins: end rails", c.rail).Rails[1], c.want)
	}
}

// The stand of the greenhouse has posts and a rail that are both named back.
func TestPostsComeBeforeRailsOfTheSameName(t *testing.T) {
	doc := read(t, "brace: {joins: end rails}", "back: {joins: back posts, level: 9 in}\n  brace: {joins: front with back, level: 11 in}\n  tie: {joins: back rails with front posts}")
	same(t, "brace", doc.Rails[2], piece.Rails{Name: "brace", From: "front", With: "back", Level: 11 * in, Share: [2]int64{1, 2}})
	same(t, "tie", doc.Rails[3], piece.Rails{Name: "tie", From: "back", FromRails: true, With: "front", Share: [2]int64{1, 2}})
}

func TestArmsStandOutFromTheWall(t *testing.T) {
	for _, c := range []struct {
		arm  string
		want piece.Arms
	}{
		{"{at: ends of seat, inset: 4 in, under: seat, bands: short, reach: 12 in}",
			piece.Arms{Panel: "seat", Inset: 4 * in, Count: 2, Under: "seat", Bands: piece.Short, Reach: 12 * in, Finish: pipe.Cap}},
		{"{at: ends of seat, inset: 4 in, count: 3, level: 50 in, reach: 12 in, end: bare}",
			piece.Arms{Panel: "seat", Inset: 4 * in, Count: 3, Level: 50 * in, Reach: 12 * in, Finish: pipe.None}},
		{"{at: [4 in, length - 4], level: 50 in, reach: 12 in}",
			piece.Arms{At: []length.Length{4 * in, 44 * in}, Count: 2, Level: 50 * in, Reach: 12 * in, Finish: pipe.Cap}},
	} {
		doc := read(t, "rails:\n", "arms:\n  bracket: "+c.arm+"\nrails:\n")
		c.want.Name = "bracket"
		same(t, c.arm, doc.Arms, []piece.Arms{c.want})
	}
}

func TestSticksByCoordinates(t *testing.T) {
	doc := read(t, "rails:\n", "sticks:\n  tie: {from: [3 in, 0, 6], to: {at: [length, 0, 6], end: flange}, pipe: 1/2}\nrails:\n")
	same(t, "tie", doc.Sticks, []piece.FreeStick{{Name: "tie", A: [3]length.Length{3 * in, 0, 6 * in}, B: [3]length.Length{48 * in, 0, 6 * in},
		FinishA: pipe.None, FinishB: pipe.Flange}})
	if doc.Sticks[0].Section.Pipe.ID != "1/2" {
		t.Error("its own pipe is not read")
	}
}

func TestFeetAndTheirGenericClass(t *testing.T) {
	const lb = 0.45359237
	for _, c := range []struct {
		feet    string
		want    piece.Feet
		assumed int
	}{
		{"feet: caps", piece.Feet{Kind: piece.CapFoot}, 0},
		{"feet: {flanges: }", piece.Feet{Kind: piece.FlangeFoot}, 0},
		{"feet: bare", piece.Feet{Kind: piece.BareFoot}, 0},
		{"feet: {casters: {kind: stem, fixed: through drilled caps, wheel: 3 in, height: 4 in, offset: 1 1/8 in, rated: 110 lb, locks: 2}}",
			piece.Feet{Kind: piece.StemCaster, Fixed: "through drilled caps", Wheel: 3 * in, Height: 4 * in, Offset: 9 * in / 8, RatedKg: 110 * lb, Locks: 2}, 0},
		// the figures are those of the generic class, 3 in stem: 4.0, 1.1, 110 lb, from memory
		{"feet: {casters: {kind: stem, wheel: 3 in}}",
			piece.Feet{Kind: piece.StemCaster, Fixed: "through drilled caps", Wheel: 3 * in, Height: 4 * in, Offset: 11 * in / 10, RatedKg: 110 * lb}, 3},
		{"feet: {casters: {kind: plate, wheel: 2 in, height: 2.5 in, under: seat, inset: 2 in, count: 6}}",
			piece.Feet{Kind: piece.PlateCaster, Fixed: "plate", Panel: "seat", Inset: 2 * in, Wheel: 2 * in, Height: 5 * in / 2, Offset: 9 * in / 10, RatedKg: 90 * lb, Count: 6}, 2},
		{"feet: {levelling feet: {height: 1 1/2 in, rated: 300 lb}}",
			piece.Feet{Kind: piece.Leveller, Fixed: "through drilled caps", Height: 3 * in / 2, RatedKg: 300 * lb}, 0},
		{"feet: {levelling feet: {under: seat, inset: 2 in}}",
			piece.Feet{Kind: piece.Leveller, Fixed: "insert", Panel: "seat", Inset: 2 * in, Height: 3 * in / 2, RatedKg: 300 * lb, Count: 4}, 2},
	} {
		got := read(t, "feet: caps", c.feet).Feet
		if len(got.Assumed) != c.assumed {
			t.Errorf("%s: %d figures are said to be assumed, want %d: %q", c.feet, len(got.Assumed), c.assumed, got.Assumed)
		}
		if d := cmp.Diff(c.want, got, unplaced, cmpopts.IgnoreFields(piece.Feet{}, "Assumed"), cmpopts.EquateApprox(0, 1e-9)); d != "" {
			t.Errorf("%s:\n%s", c.feet, d)
		}
	}
}
