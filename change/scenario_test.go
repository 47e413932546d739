package change_test

import (
	"math"
	"strings"
	"testing"

	"rodwright/change"
	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

func inches(t *testing.T, text string) float64 {
	t.Helper()
	l, err := length.Parse(text, length.In)
	if err != nil {
		t.Fatal(err)
	}
	return l.Inches()
}

// couplingAdds is what a coupling adds between two pipes, W − 2e, in inches.
func couplingAdds(t *testing.T, size string) float64 {
	t.Helper()
	p, err := pipe.Lookup(size)
	if err != nil {
		t.Fatal(err)
	}
	adds, err := p.Extension(0)
	if err != nil {
		t.Fatal(err)
	}
	return adds.Inches()
}

// off tells how much is cut off a side, in inches.
func off(f change.Fate, side string) float64 {
	for _, o := range f.Off {
		if o.Side == side {
			return float64(o.MM) / 25.4
		}
	}
	return 0
}

func near(a, b float64) bool { return math.Abs(a-b) < 1e-6 }

// The board of the bench is 12 in wide and gets 11 1/4 in: 3/4 in goes. Its front edge, the near one, has its chamfer
// already, so all of it comes off the far edge.
func TestABenchBoardLosesWidthOffItsUnprofiledEdgeOnly(t *testing.T) {
	s := begin(t, benchWith("edges:\n  board: {front: chamfer 1/8 in}\n")).say("made A1.1 size", "made A1.1 profile")
	f := fateOf(t, s.weigh("sizes/width", "11 1/4 in"), "A1.1")
	if f.Kind != "cut down" || !near(off(f, "far edge"), 0.75) || off(f, "near edge") != 0 || f.To != "board" {
		t.Errorf("%+v", f)
	}
	if len(f.Tools) == 0 {
		t.Error("not said with what")
	}
}

// Without a profile the same 3/4 in comes off in equal parts, 3/8 in each.
func TestAPlainBoardLosesEqualAmountsOffBothEdges(t *testing.T) {
	s := begin(t, benchWith("")).say("made A1.1 size")
	f := fateOf(t, s.weigh("sizes/width", "11 1/4 in"), "A1.1")
	if f.Kind != "cut down" || !near(off(f, "far edge"), 0.375) || !near(off(f, "near edge"), 0.375) {
		t.Errorf("%+v", f)
	}
}

// A hole stands 2 in from the back edge, 10 in from the front one. At 11 1/4 in it still stands 2 in from the back,
// 9 1/4 in from the front: the board must lose its 3/4 in in front, where the chamfer is, and the chamfer is run again.
func TestAHoleForbidsToCutTheUnprofiledEdge(t *testing.T) {
	s := begin(t, benchWith("edges:\n  board: {front: chamfer 1/8 in}\nholes:\n  cord: {in: board, along: back edge, from edge: 2 in, diameter: 1 in, count: 1}\n")).
		say("made A1.1 size", "made A1.1 bore", "made A1.1 profile")
	f := fateOf(t, s.weigh("sizes/width", "11 1/4 in"), "A1.1")
	if f.Kind != "cut down" || !near(off(f, "near edge"), 0.75) || off(f, "far edge") != 0 || !strings.Contains(f.Words, "profile again") {
		t.Errorf("%+v", f)
	}
}

// One hole stands 2 in from the front and another 2 in from the back: 3/4 in can't come off either edge, since one of
// the holes would stand wrong. They are 1 in wide and plugged at the least: the board serves with a plug that shows, and
// one hole bored anew.
func TestHolesAtBothEdgesForbidToCutEither(t *testing.T) {
	s := begin(t, benchWith("holes:\n  front: {in: board, along: front edge, from edge: 2 in, diameter: 1 in, count: 1}\n  back: {in: board, along: back edge, from edge: 2 in, diameter: 1 in, count: 1}\n")).
		say("made A1.1 size", "made A1.1 bore")
	f := fateOf(t, s.weigh("sizes/width", "11 1/4 in"), "A1.1")
	if f.Kind != "add to" || len(f.Shows) != 1 || !strings.Contains(f.Shows[0], "plug") {
		t.Errorf("%+v", f)
	}
}

// notched is a table with a shelf on its side rails. The posts' axes stand 2 in and 12 in from the front; the shelf
// begins 2 3/4 in from there, is 10 1/4 in wide, and goes round the back posts.
const notched = `rodwright: 1
piece: table with a shelf
unit: in
fineness: 1/16
place: {room: office, humidity: 30–60 %, temperature: 16–24 C}
wood:  {species: white-oak, cut: flat, moisture: 8 %}
pipe:  {standard: npt, size: 3/4}
sizes:
  shelf: 10 1/4 in
posts:
  front: {at: front corners of top, inset: 2 in, from: feet, to: top}
  back:  {at: back corners of top,  inset: 2 in, from: feet, to: top}
rails:
  side: {joins: front with back, under: shelf, bands: ridden}
panels:
  top:   {length: 48 in, width: 14 in, thickness: 1 1/8 in, grain: along length, level: 30 in, sits: [on front posts, on back posts]}
  shelf: {length: 46 in, width: shelf, thickness: 3/4 in, grain: along length, level: 12 in, at: [1 in, 2 3/4 in], sits: [on side rails, between front posts, around back posts]}
feet: {levelling feet: {height: 1 in, rated: 200 lb}}
`

// The shelf's back edge lies at 2 3/4 + 10 1/4 = 13 in, 1 in behind the axes of the back posts. With half a pipe of 3/4
// (1.05 ÷ 2 in) and gaps below 1/2 in its notches reach less than 2 in in. It is to end before the posts, 8 1/4 in wide:
// 2 in come off, in equal parts they would leave the notches in; off the back edge they take them along.
func TestANotchedPanelBecomesPlainAndItsNotchesLeaveWithTheOffcut(t *testing.T) {
	s := begin(t, notched).say("made A2.1 size", "made A2.1 notch")
	if n := len(s.now().Record.Things[0].Shape.Openings); n != 2 {
		t.Fatalf("%d notches", n)
	}
	w := s.weigh("sizes/shelf", "8 1/4 in", "panels/shelf/sits/3", "between back posts")
	f := fateOf(t, w, "A2.1")
	if f.Kind != "cut down" || !near(off(f, "far edge"), 2) || off(f, "near edge") != 0 || len(f.Shows) != 0 {
		t.Errorf("%+v", f)
	}
	s.take(w)
	if th := s.now().Build.Under.Settled[0]; len(th.Way.After.Openings) != 0 {
		t.Errorf("notches are left: %+v", th.Way.After)
	}
}

// At 9 1/4 in only 1 in comes off, and the notches reach farther in: what is left can't be the plain shelf. It is made
// again, and the old one goes to the rack.
func TestANotchedPanelThatIsThenTooNarrowIsRefusedWithTheWaysOut(t *testing.T) {
	s := begin(t, notched).say("made A2.1 size", "made A2.1 notch")
	w := s.weigh("sizes/shelf", "9 1/4 in", "panels/shelf/sits/3", "between back posts")
	f := fateOf(t, w, "A2.1")
	if f.Kind != "rack" || len(w.Again) != 1 || !strings.Contains(w.Again[0].Why, "notch") {
		t.Errorf("%+v, again %+v", f, w.Again)
	}
	if w.Cost.Total == nil || *w.Cost.Total <= 0 || len(w.Cost.Lost) != 1 {
		t.Errorf("cost %+v", w.Cost)
	}
}

// A board 12 in wide is wanted 13 in wide. Its finish is not on: a strip of 1 in is glued to it. With the finish on it
// is made again.
func TestAPanelGrowsByAnEdgeStripOnlyBeforeItsFinish(t *testing.T) {
	s := begin(t, benchWith("")).say("made A1.1 size")
	f := fateOf(t, s.weigh("sizes/width", "13 in"), "A1.1")
	if f.Kind != "add to" || !strings.Contains(f.Words, "glue a strip of 1 in") || len(f.Shows) == 0 {
		t.Errorf("before: %+v", f)
	}
	s.say("made A1.1 sand", "made A1.1 coat")
	w := s.weigh("sizes/width", "13 in")
	if f := fateOf(t, w, "A1.1"); f.Kind != "rack" || len(w.Again) != 1 || !strings.Contains(w.Again[0].Why, "finish is on") {
		t.Errorf("after: %+v, again %+v", f, w.Again)
	}
}

// Where the finish is on, the edges that are cut are sanded and finished again, with every coat of the shop.
func TestWithTheFinishOnTheNewEdgesAreFinishedAgain(t *testing.T) {
	s := begin(t, benchWith("")).say("made A1.1 size", "made A1.1 sand", "made A1.1 coat")
	w := s.weigh("sizes/width", "11 1/4 in")
	var works []string
	for _, r := range w.Redo {
		works = append(works, r.Work)
	}
	want := "size sand"
	for range s.log.Shop.Settings.Coats {
		want += " coat"
	}
	if got := strings.Join(works, " "); got != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// The seat is 18 in high. Its posts bridge 18 − 1 1/8 − 1 = 15 7/8 in from the feet to the board. Lowered by 2 in they
// bridge 13 7/8 in: each of the four cut pipes loses 2 in at one end, which is threaded again.
func TestAPostShortenedIsThreadedAgain(t *testing.T) {
	s := begin(t, benchWith("")).say("made C1.1 thread", "made C1.2 thread", "made C2.1 thread", "made C2.2 thread")
	w := s.weigh("sizes/height", "16 in")
	for _, label := range []string{"C1.1", "C1.2", "C2.1", "C2.2"} {
		f := fateOf(t, w, label)
		if f.Kind != "cut down" || !near(off(f, "end"), 2) || !strings.Contains(f.Words, "thread it again") {
			t.Errorf("%+v", f)
		}
	}
}

// Raised by 6 in each post is 6 in too short. A coupling adds its length less twice the make-up of its threads, W − 2e:
// with the nipple, less what the pipe is cut back, that must make the 6 in to the 1/32 in that a stock nipple may miss.
// In this shop a new pipe costs less than coupling, nipple and work, and the weighing says so; where pipe is dear the
// coupling wins.
func TestAPostLengthenedGetsACouplingAndANippleOfExactLength(t *testing.T) {
	s := begin(t, benchWith("")).say("made C1.1 thread")
	if f := fateOf(t, s.weigh("sizes/height", "24 in"), "C1.1"); f.Kind != "rack" || len(f.Others) == 0 || f.Others[0].Kind != "add to" {
		t.Errorf("cheap pipe: %+v", f)
	}
	for _, item := range s.log.Shop.Priced() {
		if strings.HasPrefix(item, "pipe 3/4 ") {
			s.log.Shop = s.log.Shop.With(shop.Price{Item: item, Cents: 500_00, Pack: 1, Unit: "each", Pieces: true})
		}
	}
	had := length.Length(s.now().Record.Things[0].Shape.Size[0])
	w := s.weigh("sizes/height", "24 in")
	f := fateOf(t, w, "C1.1")
	if f.Kind != "add to" || !strings.Contains(f.Words, "coupling and a") {
		t.Fatalf("dear pipe: %+v", f)
	}
	st := w.After.Build.Under.Settled[0]
	if by := st.Need.Part.Cut - had; by != 6*length.Inch {
		t.Errorf("it is needed %s longer", length.SixtyFourth.Text(by))
	}
	var nipple float64
	for _, g := range st.Way.Goods {
		if text, ok := strings.CutPrefix(g.Item, "nipple 3/4 "); ok {
			nipple = inches(t, text)
		}
	}
	if adds := couplingAdds(t, "3/4") + nipple - off(f, "end"); nipple == 0 || math.Abs(adds-6) > 1.0/32 {
		t.Errorf("%.4f + %.4f − %.4f = %.4f in are added, want 6", couplingAdds(t, "3/4"), nipple, off(f, "end"), adds)
	}
}

// Two posts are cut: the front one to the front's 15 in and the back one to the back's 21 in. Front and back are
// exchanged in the design: nothing is cut, the two are exchanged.
func TestTwoPartsAreExchangedWhereThatCostsLeast(t *testing.T) {
	doc := strings.Replace(benchWith(""), "from: feet, to: board}\n  back:", "from: feet, to: {level: front end, end: cap}}\n  back:", 1)
	doc = strings.Replace(doc, "inset, from: feet, to: board}\npanels", "inset, from: feet, to: {level: back end, end: cap}}\npanels", 1)
	doc = strings.Replace(doc, "sizes:\n", "sizes:\n  front end: 24 in\n  back end: 30 in\n", 1)
	doc = strings.Replace(doc, "sits: [on front posts, on back posts]", "sits: [around front posts, around back posts]", 1)
	s := begin(t, doc).say("made C1.1 thread", "made C2.1 thread")
	w := s.weigh("sizes/front end", "30 in", "sizes/back end", "24 in")
	one, two := fateOf(t, w, "C1.1"), fateOf(t, w, "C2.1")
	if one.Kind != "another part" || two.Kind != "another part" || one.From == one.To || len(one.Off)+len(two.Off) != 0 {
		t.Errorf("%+v\n%+v", one, two)
	}
	if !strings.HasPrefix(one.To, "back") || !strings.HasPrefix(two.To, "front") || len(w.Redo) != 0 {
		t.Errorf("%s → %s, %s → %s, %+v", one.From, one.To, two.From, two.To, w.Redo)
	}
}

func TestAnEditWithoutAnEffectChangesNothing(t *testing.T) {
	s := begin(t, benchWith("")).say("made A1.1 size")
	w := s.weigh("sizes/width", "1 ft")
	if !w.Nothing || len(w.Words) != 1 || w.Words[0] != "Nothing changes." {
		t.Errorf("%v %+v", w.Words, w.Fates)
	}
}
