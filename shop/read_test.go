package shop_test

import (
	"errors"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

func TestDefaultsAreTheTradesHabits(t *testing.T) {
	// Common practice, no source; the stick lengths and trims are the usual ones of the trade.
	d := shop.Defaults()
	lengths := []struct {
		name string
		got  length.Length
		want string
	}{
		{"a blank is longer by this at each end", d.Panel.EndTrim, "1 in"},
		{"and wider by this at each edge", d.Panel.EdgeTrim, "1/4 in"},
		{"saw kerf", d.Panel.Kerf, "1/8 in"},
		{"the threading machine's least length", d.Pipe.LeastThreaded, "3 in"},
		{"the gap round a post", d.Settings.WorkingGap, "1/16 in"},
		{"wood left before a screw's point", d.Settings.ScrewAllowance, "1/8 in"},
		{"parts shorter than this are milled long", d.Panel.LeastMilled, "12 in"},
		{"NPT pipe comes in long sticks", d.Pipe.NPT[0], "21 ft"},
		{"and in short ones", d.Pipe.NPT[1], "10 ft"},
		{"ISO pipe comes in", d.Pipe.ISO[0], "6 m"},
	}
	for _, c := range lengths {
		want, err := length.Parse(c.want, length.In)
		if err != nil {
			t.Fatal(err)
		}
		if c.got != want {
			t.Errorf("%s: %s, want %s", c.name, length.SixtyFourth.Text(c.got), c.want)
		}
	}
	// NIOSH revised lifting equation, load constant 23 kg.
	if d.Settings.LiftKg != 23 {
		t.Errorf("one person lifts %g kg, want 23", d.Settings.LiftKg)
	}
	if d.Settings.SagRatio != 600 || d.Settings.LastingRatio != 384 {
		t.Errorf("sag limits are span ÷ %g and ÷ %g, want 600 and 384", d.Settings.SagRatio, d.Settings.LastingRatio)
	}
}

func TestEverySamplePriceIsMarkedAsAssumed(t *testing.T) {
	s := shop.Sample()
	if len(s.Assumed) == 0 {
		t.Error("the sample shop does not say that it is invented")
	}
	items := s.Priced()
	if len(items) < 150 {
		t.Errorf("the sample shop prices only %d items", len(items))
	}
	for _, item := range items {
		p, ok := s.Offer(item)
		if !ok || !p.Assumed || p.Item != item || p.Pack <= 0 || p.Cents <= 0 || p.Unit == "" {
			t.Errorf("%s: %+v", item, p)
		}
	}
}

func TestASampleShopCanBeChangedWithoutTouchingTheNext(t *testing.T) {
	a := shop.Sample()
	a.Tools[0].ID, a.Pipe.NPT[0], a.Settings.People = "gone", 0, 9
	b := shop.Sample()
	if b.Tools[0].ID == "gone" || b.Pipe.NPT[0] == 0 || b.Settings.People == 9 {
		t.Error("two sample shops share what one of them changed")
	}
}

func TestEverySampleToolAndTimeIsComplete(t *testing.T) {
	s := shop.Sample()
	for _, tool := range s.Tools {
		if tool.ID == "" || tool.Name == "" || tool.Count < 1 {
			t.Errorf("tool %+v is not complete", tool)
		}
	}
	for _, o := range s.Operations {
		if o.ID == "" || o.Per == "" || o.Source == "" || o.SetUpH+o.UnitH+o.WaitH <= 0 {
			t.Errorf("operation %+v is not complete", o)
		}
	}
	saw, ok := s.Tool("hole-saw")
	if !ok || saw.Depth != length.Inch*5/4 {
		t.Errorf("the hole saws cut %s deep, want 1 1/4 in", length.SixtyFourth.Text(saw.Depth))
	}
}

func TestSticksComeInTheLengthsOfTheirStandard(t *testing.T) {
	s := shop.Sample()
	for _, c := range []struct{ pipe, want string }{{"3/4", "252 in"}, {"DN20", "6000 mm"}} {
		size, err := pipe.Lookup(c.pipe)
		if err != nil {
			t.Fatal(err)
		}
		want, _ := length.Parse(c.want, length.In)
		if got := s.StickLengths(size); len(got) == 0 || got[0] != want {
			t.Errorf("%s comes in %v, want first %s", c.pipe, got, c.want)
		}
	}
}

func TestTypicalBoardsAreOfTheThicknessAskedFor(t *testing.T) {
	s := shop.Sample()
	boards := s.TypicalBoards("5/4")
	if len(boards) == 0 {
		t.Fatal("the yard has no 5/4")
	}
	for _, b := range boards {
		if b.Quarters != "5/4" || b.Length <= 0 || b.Width <= 0 {
			t.Errorf("%+v", b)
		}
	}
	if s.TypicalBoards("14/4") != nil {
		t.Error("14/4 boards out of nowhere")
	}
}

const small = `
name: print studio
currency: EUR
pipe: {npt sticks: [10 ft, 21 ft], kerf: 2 mm, own threads: no}
settings: {people: 2, slack: 25 %}
money: {margin: 30 %}
fittings:
  - {pipe: 1, kind: tee, centre to end: 1 7/16 in}
tools:
  - {id: hole-saw, name: hole saws, does: [hole-saw], depth: 1 1/4 in}
operations:
  - {id: thread, per: thread, set-up: 10 min, each: 6 min, wait: 1 d}
rack:
  boards:
    - {tag: B1, species: white-oak, quarters: 5/4, length: 8 ft, width: 7 1/4 in, thickness: 1 1/16 in, rough edges: 1, defects: [{kind: knot, x: 31 in, y: 3 1/2 in, length: 1 1/2 in, width: 1 in}]}
  sticks: [{tag: S1, pipe: 3/4, length: 42 in}]
  sheets: [{tag: P1, sheet: birch-plywood-18, length: 1220 mm, width: 600 mm}]
prices:
  tee 3/4: 3.40
  white-oak 5/4: 9.80 per board foot
  wood screw 10 × 1 in: 7.20 per 100 each
`

func TestAShopsOwnFileIsRead(t *testing.T) {
	s, err := shop.Read("own.yaml", []byte(small))
	if err != nil {
		t.Fatal(err)
	}
	if s.Name != "print studio" || s.Pipe.NPT[0] != 21*length.Foot || s.Pipe.ThreadsAtShop || s.Settings.People != 2 || s.Settings.Slack != 0.25 {
		t.Errorf("%+v", s)
	}
	if !s.Money.Margin.Known || s.Money.Tax.Known {
		t.Error("a margin that is written is known, a tax that is not is unknown")
	}
	if len(s.Operations) != len(shop.Defaults().Operations) {
		t.Error("a time of the shop's own does not take the place of the trade's")
	}
	o, _ := s.Operation("thread")
	if o.SetUpH < 0.1666 || o.WaitH != 24 || o.Hands(10) < 1.1666 || o.Hands(10) > 1.1667 {
		t.Errorf("thread: %+v", o)
	}
	if len(s.Rack.Boards) != 1 || len(s.Rack.Boards[0].Defects) != 1 || s.Rack.Boards[0].Defects[0].Face != "both" || len(s.Rack.Sticks) != 1 || len(s.Rack.Sheets) != 1 {
		t.Errorf("rack: %+v", s.Rack)
	}
	if p, ok := s.Offer("tee 3/4"); !ok || p.Assumed || p.Cents != 340 {
		t.Errorf("tee: %+v", p)
	}
}

func TestWhatAShopLeavesOutKeepsTheTradesHabitAndIsSaid(t *testing.T) {
	s, err := shop.Read("own.yaml", []byte("name: studio\ncurrency: EUR\n"))
	if err != nil {
		t.Fatal(err)
	}
	if s.Panel != shop.Defaults().Panel {
		t.Error("the panels' trims are not the trade's")
	}
	said := strings.Join(s.Assumed, "; ")
	for _, part := range []string{"pipe", "panels", "settings"} {
		if !strings.Contains(said, part) {
			t.Errorf("nothing says that the %s are the trade's habit: %s", part, said)
		}
	}
	if _, ok := s.Price("tee 3/4"); ok {
		t.Error("a price out of nowhere")
	}
}

func TestAWrongShopFileIsRefusedWithItsPlace(t *testing.T) {
	cases := []struct{ name, text, place, say string }{
		{"nothing at all", "", "1:1", "empty"},
		{"no YAML", "name: [", "1:", "YAML"},
		{"a list", "- a\n- b\n", "1:", "list of keys"},
		{"no name", "currency: EUR\n", "1:", "no name"},
		{"no currency", "name: s\n", "1:", "no currency"},
		{"an unknown key", head + "pips: {kerf: 1 mm}\n", "3:1", "pipe"},
		{"an unknown key further in", head + "pipe: {kerv: 1 mm}\n", "3:8", "kerf"},
		{"a key twice", head + "settings:\n  people: 1\n  people: 2\n", "5:3", "twice"},
		{"a length without a unit", head + "pipe: {kerf: 2}\n", "3:", "no unit"},
		{"a length that is none", head + "pipe: {kerf: wide}\n", "3:", "not a length"},
		{"a negative length", head + "pipe: {kerf: -1 mm}\n", "3:", "negative"},
		{"a stick that is all trim", head + "pipe: {npt sticks: [1 in], trim: 1 in}\n", "1:", "trim"},
		{"no stick at all", head + "pipe: {npt sticks: []}\n", "1:", "stick"},
		{"strips the wrong way round", head + "panels: {strip least: 8 in}\n", "1:", "strip"},
		{"a day without hours", head + "settings: {hands a day: 0}\n", "1:", "hands a day"},
		{"a last grit coarser than the first", head + "settings: {last grit: 60}\n", "1:", "coarser"},
		{"a grit that nobody sells", head + "settings: {first grit: 81}\n", "1:", "81"},
		{"nobody in the shop", head + "settings: {people: 0}\n", "1:", "people"},
		{"half a person", head + "settings: {people: 1.5}\n", "3:", "whole"},
		{"a margin of everything", head + "money: {margin: 100 %}\n", "3:", "95"},
		{"a margin without its sign", head + "money: {margin: 30}\n", "3:", "share"},
		{"a price in thousandths", head + "prices: {tee 3/4: 3.405}\n", "3:", "two decimals"},
		{"a negative price", head + "prices: {tee 3/4: -3}\n", "3:", "no price"},
		{"a price in words", head + "prices: {tee 3/4: cheap}\n", "3:", "no price"},
		{"a price twice", head + "prices:\n  a: 1\n  a: 2\n", "5:", "twice"},
		{"a time without a unit", head + "operations: [{id: a, each: 10}]\n", "3:", "10 min"},
		{"an operation twice", head + "operations: [{id: a, each: 1 h}, {id: a, each: 1 h}]\n", "3:", "twice"},
		{"an operation without a name", head + "operations: [{each: 1 h}]\n", "3:", "id"},
		{"a tool without a name", head + "tools: [{id: saw}]\n", "3:", "name"},
		{"a tool twice", head + "tools: [{id: a, name: a}, {id: a, name: a}]\n", "3:", "twice"},
		{"an unknown pipe", head + "fittings: [{pipe: 5/7, kind: tee}]\n", "3:", "5/7"},
		{"an unknown fitting", head + "fittings: [{pipe: 3/4, kind: teee}]\n", "3:", "tee"},
		{"a fitting without a kind", head + "fittings: [{pipe: 3/4}]\n", "3:", "kind"},
		{"quarters in thirds", head + "boards: [{quarters: 5/3, length: 1 m, width: 1 m}]\n", "3:", "5/4"},
		{"a board without a size", head + "boards: [{quarters: 5/4}]\n", "3:", "no size"},
		{"three rough edges", head + "boards: [{quarters: 5/4, length: 1 m, width: 1 m, rough edges: 3}]\n", "3:", "0 to 2"},
		{"a word for yes", head + "pipe: {own threads: often}\n", "3:", "yes"},
		{"a list where a value is wanted", head + "pipe: {kerf: [1 mm]}\n", "3:", "one value"},
		{"a value where a list is wanted", head + "tools: saw\n", "3:", "list"},
		{"nothing after the key", head + "currency2:\n", "3:", "currency"},
		{"an empty value", "name:\ncurrency: EUR\n", "1:", "missing"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s, err := shop.Read("own.yaml", []byte(c.text))
			var e *shop.Error
			if s != nil || !errors.As(err, &e) {
				t.Fatalf("read as %v, error %v", s, err)
			}
			if !strings.HasPrefix(err.Error(), "own.yaml:"+c.place) || !strings.Contains(err.Error(), c.say) {
				t.Errorf("error %q, want place %s and the word %q", err, c.place, c.say)
			}
		})
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(small))
	f.Add([]byte("name: [{"))
	f.Add([]byte("a: &x 1\nb: *x\nc: !!str 3\n? d\n: e\n"))
	f.Add([]byte("prices: {? [1]: 2}\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := shop.Read("f", text)
		if (s == nil) == (err == nil) {
			t.Errorf("shop %v and error %v", s, err)
		}
	})
}
