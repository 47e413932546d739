package piece

import (
	"testing"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// trestle is a panel that lies on two rails between four legs.
func trestle(t testing.TB, bands Bands) *Document {
	d := blank(t)
	d.Posts = []Posts{{Name: "legs", At: [][2]length.Length{at(0, 0), at(30, 0), at(0, 20), at(30, 20)}, From: toLevel(0, pipe.Cap), To: toLevel(40, pipe.Cap)}}
	d.Rails = []Rails{{Name: "side", From: "legs", Level: inch(15.5), Bands: bands}}
	d.Panels = []Panel{plank("shelf", 32, 12, 1, 0, Seat{Kind: OnRails, Group: "side"})}
	return d
}

// A panel of 1 in on a 3/4 rail at 15.5 in: its top at 17.025 in on the pipe (OD 1.050, ASME B36.10M) and at
// 17.229 in on the bands (1.458 in, ASME B16.3, from memory); computed by hand.
func TestAPanelOnRailsIsAsHighAsTheRailsMakeIt(t *testing.T) {
	for bands, top := range map[Bands]float64{Relieved: 17.025, Short: 17.025, "": 17.025, Ridden: 17.229} {
		if got := resolved(t, trestle(t, bands)).Panels[0].Max.Z; got != inch(top) {
			t.Errorf("%q: top at %.4f in, want %.3f", bands, got.Inches(), top)
		}
	}
}

func TestARailUnderAPanelIsAsLowAsThePanelMakesIt(t *testing.T) {
	for bands, top := range map[Bands]float64{Relieved: 17.025, Short: 17.025, Ridden: 17.229} {
		d := trestle(t, bands)
		level := inch(top)
		d.Panels[0].Level = &level
		d.Rails[0].Level, d.Rails[0].Under = 0, "shelf"
		r := resolved(t, d)
		if n := nodeAt(t, r, 0, 0, 15.5); n.Kind != pipe.SideTee {
			t.Errorf("%q: a %s", bands, n.Kind)
		}
	}
}

func TestAPanelOnFeetIsAsHighAsTheFeet(t *testing.T) {
	d := blank(t)
	d.Feet = Feet{Kind: PlateCaster, Panel: "base", Inset: inch(3), Wheel: inch(3), Height: inch(4), Offset: inch(1.25), Locks: 2}
	d.Panels = []Panel{plank("base", 30, 15, 1.25, 0, Seat{Kind: OnFeet})}
	p := resolved(t, d).Panels[0]
	if p.Min.Z != inch(4) || p.Max.Z != inch(5.25) {
		t.Errorf("from %v to %v", p.Min, p.Max)
	}
	if !p.Fixed || p.HeldAt != inch(7.5) || p.HeldBy != "the middle of its feet" {
		t.Errorf("held at %v by %s", p.HeldAt, p.HeldBy)
	}
}

func TestPostsWithAFlangeAtALevelCarryThePanelThere(t *testing.T) {
	d := blank(t)
	d.Posts = []Posts{{Name: "legs", At: [][2]length.Length{at(0, 0), at(30, 0)}, From: toLevel(0, pipe.Flange), To: toLevel(20, pipe.Flange)}}
	d.Panels = []Panel{plank("seat", 36, 12, 1, 0, Seat{Kind: OnPosts, Group: "legs"})}
	r := resolved(t, d)
	if r.Panels[0].Max.Z != inch(21) || nodeAt(t, r, 0, 0, 20).Panel != 0 {
		t.Errorf("top at %v", r.Panels[0].Max.Z)
	}
	if len(r.Feet) != 2 || r.Feet[0].Spec.Kind != FlangeFoot || r.Feet[0].Name != "left foot" {
		t.Errorf("%+v", r.Feet)
	}
}

func TestRailsBetweenRailsHaveTheirLevel(t *testing.T) {
	d := stand(t)
	d.Rails = append(d.Rails, Rails{Name: "stretcher", From: "side", FromRails: true, Share: [2]int64{1, 3}})
	r := resolved(t, d)
	// a third of 13 1/2 in behind the front posts
	if n := nodeAt(t, r, 2.75, 7.25, 8.5); n.Kind != pipe.Tee || n.Place != "left side rail at stretcher" {
		t.Errorf("a %s at %s", n.Kind, n.Place)
	}
	// the stretcher closes a loop with the back rail, and gets its union
	if s := stickNamed(t, r, "stretcher 1"); s.Between != inch(18.25) {
		t.Errorf("%v", s.Between)
	}
	d.Rails[2].Level = inch(9)
	refused(t, d, "the rails stretcher are at 9 in, the rails they join at 8 1/2 in")
}

func TestAShareIsReckonedFromTheLeftOrTheFront(t *testing.T) {
	d := fourLegs(t, 30, 20)
	d.Posts[0].Corners = []Corner{BackRight, BackLeft, FrontRight, FrontLeft} // the order does not matter
	d.Rails = []Rails{
		{Name: "front", From: "legs", Level: inch(6), Share: [2]int64{1, 2}},
		{Name: "bar", From: "front", FromRails: true, Share: [2]int64{1, 3}},
	}
	r := resolved(t, d)
	// the long rails are met a third from the left, the short ones a third from the front
	for _, at := range [][2]float64{{13, 3}, {13, 23}} {
		if n := nodeAt(t, r, at[0], at[1], 6); n.Kind != pipe.Tee {
			t.Errorf("a %s at %v", n.Kind, at)
		}
	}
}

func TestARailFromAPostToRailsRunsInLineWithThePost(t *testing.T) {
	d := blank(t)
	d.Posts = []Posts{
		{Name: "front", At: [][2]length.Length{at(0, 0), at(40, 0)}, From: toLevel(0, pipe.Cap), To: toLevel(30, pipe.Cap)},
		{Name: "prop", At: [][2]length.Length{at(12, 15)}, From: toLevel(0, pipe.Cap), To: toLevel(30, pipe.Cap)}}
	d.Rails = []Rails{
		{Name: "bar", From: "front", Level: inch(10)},
		{Name: "spur", From: "prop", With: "bar", WithRails: true}}
	r := resolved(t, d)
	if n := nodeAt(t, r, 12, 0, 10); n.Kind != pipe.Tee {
		t.Errorf("a %s", n.Kind)
	}
}

func TestLevelsThatCanNotBeFound(t *testing.T) {
	none := blank(t)
	none.Panels = []Panel{plank("shelf", 30, 10, 1, 0)}
	circle := trestle(t, Relieved)
	circle.Panels[0].Seats = append(circle.Panels[0].Seats, Seat{Kind: OnRails, Group: "upper"})
	circle.Rails[0].Level, circle.Rails[0].Under = 0, "shelf"
	circle.Panels = append(circle.Panels, plank("upper", 32, 12, 1, 0, Seat{Kind: OnRails, Group: "side"}))
	circle.Rails = append(circle.Rails, Rails{Name: "upper", From: "legs", Under: "upper", Bands: Short})
	both := trestle(t, Relieved)
	level := inch(18)
	both.Panels[0].Level = &level
	low := trestle(t, Relieved)
	low.Rails[0].Level = 0
	high := trestle(t, Relieved)
	high.Rails[0].Level = inch(50)
	for _, c := range []struct {
		name  string
		doc   *Document
		words []string
	}{
		{"no level", none, []string{"nothing says how high shelf is", "level:"}},
		{"levels that follow from each other", circle, []string{"the level of shelf follows from rails"}},
		{"two levels", both, []string{"the top of shelf is at 18 in by its level and at 17 in by the rails side"}},
		{"rails on the floor", low, []string{"the axis of the rails side is at 0 in"}},
		{"rails above the posts", high, []string{"the front side rail is at 50 in, but the front left leg goes from 0 in up to 40 in"}},
	} {
		t.Run(c.name, func(t *testing.T) { refused(t, c.doc, c.words...) })
	}
}

func TestPostsThatCanNotStand(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Document)
		words  []string
	}{
		{"upside down", func(d *Document) { d.Posts[0].To = toLevel(3, pipe.Cap) }, []string{"the front left post would go from 4 in up to 3 in"}},
		{"feet above", func(d *Document) { d.Posts[0].To = fromFeet }, []string{"upper end of the front left post can't be at the feet"}},
		{"no feet", func(d *Document) { d.Feet = Feet{} }, []string{"comes from the feet, but the piece has none"}},
		{"feet under a panel", func(d *Document) { d.Feet.Panel, d.Panels[0].Level = "deep board", nil }, []string{"the feet are under deep board"}},
		{"beside its panel", func(d *Document) { d.Posts[0].To = toPanel("high board") }, []string{"the front left post ends at high board, but does not stand under it"}},
		{"at no rail", func(d *Document) { d.Posts[0].To = toRail("back") }, []string{"none of them passes over it"}},
		{"at the wall", func(d *Document) { d.Posts[0].To = PostEnd{Kind: AtWall} }, []string{"can't end at the wall"}},
		{"not the panel's", func(d *Document) { d.Panels[0].Seats[0].Kind = UnderPosts }, []string{"deep board sits under posts front, but these do not end at it"}},
		{"too low for the panel round it", func(d *Document) {
			d.Posts[1].To = toLevel(12, pipe.Cap)
			d.Panels, d.Rails, d.Holds = d.Panels[:1], d.Rails[:1], nil
			d.Panels[0].Seats = []Seat{{Kind: OnPosts, Group: "front"}, {Kind: AroundPosts, Group: "back"}}
		}, []string{"the back left post goes from 4 in up to 12 in and does not pass it"}},
		{"outside the panel round it", func(d *Document) {
			d.Posts[1].InsetY, d.Rails = inch(-2), d.Rails[:1]
			d.Panels[0].Seats = []Seat{{Kind: OnPosts, Group: "front"}, {Kind: AroundPosts, Group: "back"}}
		}, []string{"the axis of the back left post is outside it"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := stand(t)
			c.change(d)
			refused(t, d, c.words...)
		})
	}
}
