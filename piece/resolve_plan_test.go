package piece

import (
	"testing"

	"rodwright/length"
	"rodwright/trade/pipe"
)

func corners(name, panel string, inset float64, to PostEnd, cs ...Corner) Posts {
	return Posts{Name: name, Panel: panel, Corners: cs, InsetX: inch(inset), InsetY: inch(inset), From: toLevel(0, pipe.Cap), To: to}
}

func TestPanelsArePlacedByWhatTheySitOn(t *testing.T) {
	legs := Posts{Name: "legs", At: [][2]length.Length{at(10, 10), at(40, 10), at(10, 30), at(40, 30)}, From: toLevel(0, pipe.Cap), To: toLevel(60, pipe.Cap)}
	side := Rails{Name: "side", From: "legs", Level: inch(20)}
	corner := at(3, 4)
	for _, c := range []struct {
		name   string
		panel  Panel
		corner [2]length.Length
	}{
		{"round posts: centred on them", plank("shelf", 34, 26, 1, 30, Seat{Kind: AroundPosts, Group: "legs"}), at(8, 7)},
		{"between posts: centred on them", plank("shelf", 28, 12, 1, 30, Seat{Kind: BetweenPosts, Group: "legs"}), at(11, 14)},
		{"on rails: centred on them", plank("shelf", 20, 21, 1, 0, Seat{Kind: OnRails, Group: "side"}), at(15, 9.5)},
		{"by at: there", Panel{Name: "shelf", Length: inch(45), Width: inch(30), Thickness: inch(1), At: &corner, Level: &side.Level, Seats: []Seat{{Kind: AroundPosts, Group: "legs"}}}, at(3, 4)},
		{"turned: its width along the piece", Panel{Name: "shelf", Length: inch(26), Width: inch(34), Turned: true, Thickness: inch(1), Level: &side.Level, Seats: []Seat{{Kind: AroundPosts, Group: "legs"}}}, at(8, 7)},
	} {
		d := blank(t)
		d.Posts, d.Rails, d.Panels = []Posts{legs}, []Rails{side}, []Panel{c.panel}
		p := resolved(t, d).Panels[0]
		if p.Min.X != c.corner[0] || p.Min.Y != c.corner[1] {
			t.Errorf("%s: at %.3f, %.3f in", c.name, p.Min.X.Inches(), p.Min.Y.Inches())
		}
	}
}

func TestAPanelIsPlacedBeforeThePostsAtItsCorners(t *testing.T) {
	d := blank(t)
	d.Panels = []Panel{
		plank("low", 20, 10, 1, 12, Seat{Kind: AroundPosts, Group: "front"}),
		plank("high", 40, 20, 1, 24, Seat{Kind: OnPosts, Group: "front"}),
	}
	d.Posts = []Posts{corners("front", "high", 4, toPanel("high"), FrontLeft, FrontRight, BackLeft, BackRight)}
	d.Panels[0].Length, d.Panels[0].Width = inch(36), inch(16)
	r := resolved(t, d)
	// the posts stand at 4 and 36, 4 and 16 in; the low panel is centred on them
	if low := panelNamed(t, r, "low"); low.Min.X != inch(2) || low.Min.Y != inch(2) {
		t.Errorf("low at %v", low.Min)
	}
	if high := panelNamed(t, r, "high"); high.Min.X != 0 || high.Min.Y != 0 {
		t.Errorf("high at %v", high.Min)
	}
}

func TestPlacesThatCanNotBeFound(t *testing.T) {
	loose := func(names ...string) *Document {
		d := blank(t)
		d.Feet = Feet{Kind: CapFoot}
		for _, n := range names {
			d.Panels = append(d.Panels, plank(n, 20, 10, 1, 12))
			d.Posts = append(d.Posts, corners(n, n, 2, toPanel(n), FrontLeft, BackRight))
		}
		return d
	}
	circle := loose("one", "two")
	circle.Panels[0].Seats = []Seat{{Kind: AroundPosts, Group: "two"}}
	circle.Panels[1].Seats = []Seat{{Kind: AroundPosts, Group: "one"}}
	rails := loose("one")
	rails.Rails = []Rails{{Name: "a", From: "b", FromRails: true}, {Name: "b", From: "a", FromRails: true}}
	skew := loose("one")
	skew.Rails = []Rails{{Name: "low", From: "one", Level: inch(5)}}
	far := blank(t)
	far.Posts = []Posts{
		{Name: "a", At: [][2]length.Length{at(0, 0)}, From: toLevel(0, pipe.Cap), To: toLevel(20, pipe.Cap)},
		{Name: "b", At: [][2]length.Length{at(10, 3)}, From: toLevel(0, pipe.Cap), To: toLevel(20, pipe.Cap)}}
	far.Rails = []Rails{{Name: "low", From: "a", With: "b", Level: inch(5)}}
	for _, c := range []struct {
		name  string
		doc   *Document
		words []string
	}{
		{"a second panel that nothing places", loose("one", "two"), []string{"nothing says where the panel two stands", "one already stands at 0, 0", "at:"}},
		{"panels that place each other", circle, []string{"the place of the panel one follows from posts that follow from the panel itself"}},
		{"rails that join each other", rails, []string{"the rails a join rails that join them"}},
		{"a rail between posts that are not in line", skew, []string{"the rails low join nothing"}},
		{"a rail that is neither square nor at 45°", far, []string{"would run 10 in along and 3 in across"}},
	} {
		t.Run(c.name, func(t *testing.T) { refused(t, c.doc, c.words...) })
	}
}

func TestNamesThatNameNothing(t *testing.T) {
	for _, c := range []struct {
		name   string
		break_ func(*Document)
		word   string
	}{
		{"seat", func(d *Document) { d.Panels[0].Seats[0].Group = "middle" }, `post group named "middle"`},
		{"seat on rails", func(d *Document) { d.Panels[0].Seats[1].Group = "middle" }, `rail group named "middle"`},
		{"posts", func(d *Document) { d.Posts[0].Panel = "shelf" }, `panel named "shelf"`},
		{"post's end", func(d *Document) { d.Posts[0].To.Name = "shelf" }, "shelf, which is no panel"},
		{"post's rail", func(d *Document) { d.Posts[0].To = toRail("shelf") }, "shelf, which names no rails"},
		{"rails from", func(d *Document) { d.Rails[0].From = "middle" }, `post group named "middle"`},
		{"rails with", func(d *Document) { d.Rails[0].With, d.Rails[0].WithRails = "middle", true }, `rail group named "middle"`},
		{"rails under", func(d *Document) { d.Rails[1].Under = "shelf" }, `panel named "shelf"`},
		{"holes", func(d *Document) { d.Holes[0].In = "shelf" }, `panel named "shelf"`},
		{"holds", func(d *Document) { d.Holds[0].On = "shelf" }, `panel named "shelf"`},
		{"feet", func(d *Document) { d.Feet.Panel = "shelf" }, `panel named "shelf"`},
		{"arms", func(d *Document) { d.Arms = []Arms{{Name: "a", Panel: "shelf"}} }, `panel named "shelf"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := stand(t)
			c.break_(d)
			refused(t, d, c.word)
		})
	}
}

func TestRailsPairThePostsOfTwoGroups(t *testing.T) {
	row := func(name string, y float64, xs ...float64) Posts {
		g := Posts{Name: name, From: toLevel(0, pipe.Cap), To: toLevel(30, pipe.Cap)}
		for _, x := range xs {
			g.At = append(g.At, at(x, y))
		}
		return g
	}
	for _, c := range []struct {
		name        string
		front, back Posts
		want        [][2][2]float64 // plan ends of each rail
	}{
		{"one to one by nearness, whatever the order", row("front", 0, 0, 20), row("back", 10, 20, 0), [][2][2]float64{{{0, 0}, {0, 10}}, {{20, 0}, {20, 10}}}},
		{"one to one in their order where nearness does not pair them", row("front", 0, 0, 2), row("back", 30, 30, 32), [][2][2]float64{{{0, 0}, {30, 30}}, {{2, 0}, {32, 30}}}},
		{"more in front: each with the nearest behind", row("front", 0, 0, 10, 20), row("back", 10, 10), [][2][2]float64{{{0, 0}, {10, 10}}, {{10, 0}, {10, 10}}, {{20, 0}, {10, 10}}}},
		{"more behind: each with the nearest in front", row("front", 0, 10), row("back", 10, 0, 10), [][2][2]float64{{{10, 0}, {0, 10}}, {{10, 0}, {10, 10}}}},
	} {
		d := blank(t)
		d.Posts = []Posts{c.front, c.back}
		d.Rails = []Rails{{Name: "side", From: "front", With: "back", Level: inch(10)}}
		r := newRod(d, nil)
		if err := r.layPlan(); err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		for i, w := range c.want {
			got := r.railAt[0][i]
			if got.a != (spot{inch(w[0][0]), inch(w[0][1])}) || got.b != (spot{inch(w[1][0]), inch(w[1][1])}) {
				t.Errorf("%s: rail %d from %v to %v", c.name, i+1, got.a, got.b)
			}
		}
		if len(r.railAt[0]) != len(c.want) {
			t.Errorf("%s: %d rails", c.name, len(r.railAt[0]))
		}
	}
}

func TestPostsStandInLineAlongAndAcross(t *testing.T) {
	d := blank(t)
	d.Posts = []Posts{{Name: "legs", At: [][2]length.Length{at(40, 0), at(0, 0), at(20, 0), at(0, 15), at(20, 15), at(40, 15)}, From: toLevel(0, pipe.Cap), To: toLevel(30, pipe.Cap)}}
	d.Rails = []Rails{{Name: "low", From: "legs", Level: inch(10)}}
	r := newRod(d, nil)
	if err := r.layPlan(); err != nil {
		t.Fatal(err)
	}
	// two by two along, three across
	along := 0
	for _, rail := range r.railAt[0] {
		if rail.a.y == rail.b.y {
			along++
		}
	}
	if len(r.railAt[0]) != 7 || along != 4 {
		t.Errorf("%d rails, %d along", len(r.railAt[0]), along)
	}
}

func TestAPostUnderASlantingRailReachesIt(t *testing.T) {
	d := blank(t)
	d.Posts = []Posts{
		{Name: "ends", At: [][2]length.Length{at(0, 0)}, From: toLevel(0, pipe.Cap), To: toLevel(30, pipe.Cap)},
		{Name: "far", At: [][2]length.Length{at(20, 20)}, From: toLevel(0, pipe.Cap), To: toLevel(30, pipe.Cap)},
		{Name: "prop", At: [][2]length.Length{at(8, 8)}, From: toLevel(0, pipe.Cap), To: toRail("slant")}}
	d.Rails = []Rails{{Name: "slant", From: "ends", With: "far", Level: inch(20)}}
	if n := nodeAt(t, resolved(t, d), 8, 8, 20); n.Kind != pipe.Tee {
		t.Errorf("a %s", n.Kind)
	}
	d.Posts[2].At[0] = at(8, 9)
	refused(t, d, "none of them passes over it")
}
