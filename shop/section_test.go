package shop_test

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/shop"
)

const head = "name: studio\ncurrency: EUR\n"

// readAll reads a file that must be right.
func readAll(t testing.TB, text string) *shop.Shop {
	t.Helper()
	s, err := shop.Read("own.yaml", []byte(head+text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestEveryHabitOfPipeWorkCanBeSettled(t *testing.T) {
	s := readAll(t, `
pipe:
  npt sticks: [10 ft, 21 ft, 5 ft]
  iso sticks: [3 m, 6.4 m]
  kerf: 1 mm
  trim: 2 mm
  useful: 3 mm
  nipples up to: 4 in
  least threaded: 5 in
  own threads: no
`)
	want := shop.PipeWork{
		NPT: []length.Length{21 * length.Foot, 10 * length.Foot, 5 * length.Foot}, ISO: []length.Length{6400 * length.Millimetre, 3 * length.Metre},
		Kerf: length.Millimetre, Trim: 2 * length.Millimetre, Useful: 3 * length.Millimetre,
		NippleUpTo: 4 * length.Inch, LeastThreaded: 5 * length.Inch,
	}
	if !reflect.DeepEqual(s.Pipe, want) {
		t.Errorf("read %+v, want %+v", s.Pipe, want)
	}
}

func TestEveryHabitOfPanelsCanBeSettled(t *testing.T) {
	s := readAll(t, `
panels:
  end trim: 1 mm
  edge trim: 2 mm
  kerf: 3 mm
  jointing: 4 mm
  board trim: 5 mm
  strip least: 6 mm
  strip most: 7 mm
  salvage: 40 %
  tail least: 8 mm
  flattening: 9 mm
  bow: 10 mm
  bow over: 11 mm
  twist: 12 mm
  sheet trim: 13 mm
  sheet useful: 14 mm
  least milled: 15 mm
  glue spread: 180
`)
	mm := func(n int) length.Length { return length.Length(n) * length.Millimetre }
	want := shop.PanelWork{
		EndTrim: mm(1), EdgeTrim: mm(2), Kerf: mm(3), Jointing: mm(4), BoardTrim: mm(5), StripLeast: mm(6), StripMost: mm(7), Salvage: 0.4,
		TailLeast: mm(8), Flattening: mm(9), Bow: mm(10), BowOver: mm(11), Twist: mm(12), SheetTrim: mm(13), SheetUseful: mm(14),
		LeastMilled: mm(15), GluePerJoint: 180,
	}
	if s.Panel != want {
		t.Errorf("read %+v, want %+v", s.Panel, want)
	}
}

func TestEverySettingCanBeSettled(t *testing.T) {
	s := readAll(t, `
settings:
  working gap: 1 mm
  inside radius: 2 mm
  screw allowance: 3 mm
  hole clearance: 4 mm
  corner gap: 5 mm
  sag ratio: 500
  lasting ratio: 300
  sway ratio: 150
  tip angle: 12
  lift: 20
  people: 3
  hands a day: 7.5
  backlog days: 20
  slack: 10 %
  waste: 30 %
  spare: 5 %
  straps: 3
  coats: 4
  first grit: 100
  last grit: 220
  adhesive: epoxy
  finish: shellac
  metal finish: enamel
`)
	mm := func(n int) length.Length { return length.Length(n) * length.Millimetre }
	want := shop.Settings{
		WorkingGap: mm(1), InsideRadius: mm(2), ScrewAllowance: mm(3), HoleClearance: mm(4), CornerGap: mm(5), SagRatio: 500, LastingRatio: 300,
		SwayRatio: 150, TipDegrees: 12, LiftKg: 20, People: 3, HandsPerDay: 7.5, Backlog: 20, Slack: 0.1, Waste: 0.3, Spare: 0.05, Straps: 3, Coats: 4,
		FirstGrit: 100, LastGrit: 220, Adhesive: "epoxy", Finish: "shellac", MetalFinish: "enamel",
	}
	if s.Settings != want {
		t.Errorf("read %+v, want %+v", s.Settings, want)
	}
	for _, a := range s.Assumed {
		if strings.HasPrefix(a, "settings") {
			t.Error("settings that were settled are called assumed")
		}
	}
}

func TestEveryShareOfMoneyCanBeSettled(t *testing.T) {
	s := readAll(t, "money: {margin: 25 %, tax: 0 %, deposit: 50 %, consumables: 7.5 %}\n")
	want := shop.Money{
		Margin: shop.Share{Value: 0.25, Known: true}, Tax: shop.Share{Known: true},
		Deposit: shop.Share{Value: 0.5, Known: true}, Consumables: shop.Share{Value: 0.075, Known: true},
	}
	if s.Money != want {
		t.Errorf("read %+v, want %+v", s.Money, want)
	}
	if (readAll(t, "").Money != shop.Money{}) {
		t.Error("a shop that has settled no share is given one")
	}
}

func TestToolsBoardsAndFittingsAreReadWhole(t *testing.T) {
	s := readAll(t, `
boards:
  - {quarters: 5/4, length: 8 ft, width: 7 1/4 in, rough edges: 2, surfaced: yes}
fittings:
  - {pipe: 3/4, kind: flange, centre to end: 7/8 in, band: 1 1/2 in, plate: 3 1/2 in, plate thickness: 3/16 in, hole circle: 2 1/2 in, mass kg: 0.4}
tools:
  - {id: jointer, name: our jointer, does: [joint, flatten], depth: 1 mm, width: 2 mm, least: 3 mm, force n: 4, count: 5}
  - {id: saw, name: saw}
`)
	mm := length.Millimetre
	if want := (shop.BoardSize{Quarters: "5/4", Length: 8 * length.Foot, Width: 29 * length.Inch / 4, RoughEdges: 2, Surfaced: true}); s.Boards[0] != want {
		t.Errorf("board %+v", s.Boards[0])
	}
	wantFitting := shop.MeasuredFitting{
		Pipe: "3/4", Kind: "flange", CentreToEnd: 7 * length.Inch / 8, Band: 3 * length.Inch / 2, Plate: 7 * length.Inch / 2,
		PlateThick: 3 * length.Inch / 16, HoleCircle: 5 * length.Inch / 2, MassKg: 0.4,
	}
	if s.Fittings[0] != wantFitting {
		t.Errorf("fitting %+v", s.Fittings[0])
	}
	wantTool := shop.Tool{ID: "jointer", Name: "our jointer", Does: []string{"joint", "flatten"}, Depth: mm, Width: 2 * mm, Least: 3 * mm, ForceN: 4, Count: 5}
	if tool, _ := s.Tool("jointer"); !reflect.DeepEqual(tool, wantTool) {
		t.Errorf("tool %+v", tool)
	}
	if saw, _ := s.Tool("saw"); saw.Count != 1 {
		t.Errorf("a tool that is not counted is there %d times", saw.Count)
	}
}

func TestARackIsReadWhole(t *testing.T) {
	s := readAll(t, `
rack:
  boards:
    - tag: B1
      species: white-oak
      quarters: 5/4
      length: 100 in
      width: 7 in
      thickness: 1 in
      rough edges: 1
      ring: up
      defects:
        - {kind: knot, face: good, x: 1 in, y: 2 in, length: 3 in, width: 1 in}
  sticks:
    - {tag: S1, pipe: DN 20, length: 900 mm}
  sheets:
    - {tag: P1, sheet: mdf-18, length: 1 m, width: 500 mm}
`)
	in := length.Inch
	want := shop.Rack{
		Boards: []shop.Board{{
			Tag: "B1", Species: "white-oak", Quarters: "5/4", Length: 100 * in, Width: 7 * in, Thickness: in, RoughEdges: 1, Ring: "up",
			Defects: []shop.Defect{{Kind: "knot", Face: "good", X: in, Y: 2 * in, Length: 3 * in, Width: in}},
		}},
		Sticks: []shop.Stick{{Tag: "S1", Pipe: "DN20", Length: 900 * length.Millimetre}},
		Sheets: []shop.Sheet{{Tag: "P1", Sheet: "mdf-18", Length: length.Metre, Width: 500 * length.Millimetre}},
	}
	if !reflect.DeepEqual(s.Rack, want) {
		t.Errorf("read %+v, want %+v", s.Rack, want)
	}
}

func TestThingsInTheRackHaveASize(t *testing.T) {
	cases := []string{
		"boards: [{tag: B1, length: 1 m, width: 1 m}]",
		"boards: [{tag: B1, length: 1 m, thickness: 1 in}]",
		"boards: [{tag: B1, length: 1 m, width: 1 m, thickness: 1 in, defects: [{kind: knot}]}]",
		"sticks: [{tag: S1, pipe: 3/4}]",
		"sheets: [{tag: P1, sheet: mdf-18, length: 1 m}]",
	}
	for _, c := range cases {
		_, err := shop.Read("own.yaml", []byte(head+"rack: {"+c+"}\n"))
		if err == nil || !strings.Contains(err.Error(), "no size") {
			t.Errorf("%s: %v", c, err)
		}
	}
}

func TestPricesAreWrittenThreeWays(t *testing.T) {
	s := readAll(t, `
prices:
  tee 3/4: 3.4
  "tee 1": 5
  white-oak 5/4: 9.80 per board foot
  wood screw 10 × 1 in: 7.20 per 100 each
  pva: 9.50 per 0.5 kg
  by the metre: 2 per m
`)
	cases := []shop.Price{
		{Item: "tee 3/4", Cents: 340, Pack: 1, Unit: "each", Pieces: true},
		{Item: "tee 1", Cents: 500, Pack: 1, Unit: "each", Pieces: true},
		{Item: "white-oak 5/4", Cents: 980, Pack: 1, Unit: "board foot"},
		{Item: "wood screw 10 × 1 in", Cents: 720, Pack: 100, Unit: "each", Pieces: true},
		{Item: "pva", Cents: 950, Pack: 0.5, Unit: "kg", Pieces: true},
		{Item: "by the metre", Cents: 200, Pack: 1, Unit: "m"},
	}
	for _, want := range cases {
		if got, ok := s.Offer(want.Item); !ok || got != want {
			t.Errorf("read %+v, want %+v", got, want)
		}
	}
	if len(s.Priced()) != len(cases) {
		t.Errorf("%d prices, want %d", len(s.Priced()), len(cases))
	}
}

func TestEveryPriceIsReadToTheCent(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		cents := shop.Cents(rapid.Int64Range(0, int64(shop.MostCents)).Draw(r, "cents"))
		s, err := shop.Read("own.yaml", fmt.Appendf(nil, "%sprices: {a: %s}\n", head, cents))
		if err != nil {
			r.Fatal(err)
		}
		if p, _ := s.Offer("a"); p.Cents != cents {
			r.Fatalf("%s is read as %s", cents, p.Cents)
		}
	})
}

func TestTimesAreReadInMinutesHoursAndDays(t *testing.T) {
	s := readAll(t, "operations: [{id: new, per: thing, set-up: 30 min, each: 1.5 h, wait: 2 d}]\n")
	o, ok := s.Operation("new")
	if !ok || o.SetUpH != 0.5 || o.UnitH != 1.5 || o.WaitH != 48 || o.Per != "thing" || o.Source != "the shop's file" {
		t.Errorf("%+v", o)
	}
	if h := o.Hands(3); h != 5 {
		t.Errorf("half an hour and three times one and a half are %g h, want 5", h)
	}
}

func TestALengthIsReadExactlyInEverySystem(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		n := length.Length(rapid.Int64Range(0, 6400).Draw(r, "64ths")) * length.Inch / 64
		text := length.SixtyFourth.Text(n)
		if rapid.Bool().Draw(r, "metric") {
			n = length.Length(rapid.Int64Range(0, 4000).Draw(r, "half mm")) * length.Millimetre / 2
			text = length.HalfMM.Text(n)
		}
		s, err := shop.Read("own.yaml", []byte(head+"settings: {working gap: "+text+"}\n"))
		if err != nil {
			r.Fatal(err)
		}
		if s.Settings.WorkingGap != n {
			r.Fatalf("%s is read as %d nm, want %d", text, s.Settings.WorkingGap, n)
		}
	})
}

func TestAMisspeltKeyIsToldItsNeighbour(t *testing.T) {
	cases := []struct{ text, near string }{
		{"setings: {}", "settings"},
		{"settings: {wrking gap: 1 mm}", "working gap"},
		{"panels: {end trimm: 1 mm}", "end trim"},
		{"money: {margn: 30 %}", "margin"},
		{"tools: [{id: a, nme: b}]", "name"},
		{"operations: [{id: a, setup: 1 h}]", "set-up"},
		{"rack: {stick: []}", "sticks"},
		{"rack: {sticks: [{tag: S1, pipes: 3/4}]}", "pipe"},
		{"boards: [{quarter: 5/4}]", "quarters"},
		{"fittings: [{kynd: tee}]", "kind"},
	}
	for _, c := range cases {
		_, err := shop.Read("own.yaml", []byte(head+c.text+"\n"))
		var e *shop.Error
		if !errors.As(err, &e) || !strings.Contains(e.Want, c.near) || e.Line != 3 {
			t.Errorf("%s: %v, want the neighbour %s", c.text, err, c.near)
		}
	}
}

func TestTheSameFileTwiceIsTheSameShop(t *testing.T) {
	if a, b := readAll(t, "prices: {a: 1}\n"), readAll(t, "prices: {a: 1}\n"); !reflect.DeepEqual(a, b) {
		t.Error("read twice, the shops differ")
	}
}

func TestAnErrorWithoutAPlaceStandsAtTheBeginning(t *testing.T) {
	if got := (&shop.Error{File: "own.yaml", Message: "gone"}).Error(); got != "own.yaml:1:1: gone" {
		t.Error(got)
	}
}
