package part_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/part"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

func supply(t *testing.T, l *part.List, class string) part.Supply {
	t.Helper()
	i := slices.IndexFunc(l.Supplies, func(s part.Supply) bool { return s.Class == class })
	if i < 0 {
		t.Fatalf("no %s among %+v", class, l.Supplies)
	}
	return l.Supplies[i]
}

// own is the sample shop with habits of its own, so that the sums below can be worked by hand.
func own(change func(*shop.Shop)) *shop.Shop {
	s := *shop.Sample()
	s.Settings.Spare = 0.20
	s.Panel.StripMost, s.Panel.EdgeTrim, s.Panel.EndTrim, s.Panel.Flattening = 6*inch, inch/4, inch, inch/16
	s.Panel.GluePerJoint = 180
	change(&s)
	return &s
}

// A blank of 42 × 20 1/2 × 1 1/16 in from strips of at most 6 in: four strips, three joints. At 180 g/m²:
// 3 · 1.0668 · 0.0269875 · 180 · 1.2 = 18.656 g. Worked by hand.
func TestGlueForTheJointsOfABoard(t *testing.T) {
	s := own(func(*shop.Shop) {})
	l, err := part.TakeOff(resolve(t, s, bench), s)
	if err != nil {
		t.Fatal(err)
	}
	glue := supply(t, l, "pva")
	near(t, "glue in g", 1000*glue.Quantity.Value, 18.656, 0.001)
	if !slices.Equal(glue.For, []string{"A1"}) {
		t.Errorf("for %v", glue.For)
	}
}

func TestSheetGoodsTakeNoGlue(t *testing.T) {
	_, l := takeOff(t, strings.ReplaceAll(bench, "thickness: 1,", "thickness: 18 mm, sheet: birch-plywood-18,"))
	if slices.ContainsFunc(l.Supplies, func(s part.Supply) bool { return s.Class == "pva" }) {
		t.Error("glue for a sheet")
	}
}

// Both faces of 40 × 20 in and 120 in of edge 1 in high are 1720 in² or 1.10968 m²; two coats at 25 m²/L, the
// middle of what is from memory, and a fifth to spare: 106.53 ml. Worked by hand.
func TestFinishForFacesAndEdges(t *testing.T) {
	s := own(func(s *shop.Shop) { s.Settings.Finish, s.Settings.Coats = "hardwax-oil", 2 })
	l, err := part.TakeOff(resolve(t, s, bench), s)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "area", l.Totals.FaceM2, 1720*25.4*25.4/1e6, 1e-9)
	oil := supply(t, l, "hardwax-oil")
	near(t, "finish in ml", oil.Quantity.Value, 106.53, 0.01)
	if !strings.Contains(strings.Join(oil.Cautions, " "), "rags") {
		t.Errorf("oily rags are not cautioned: %v", oil.Cautions)
	}
}

// π · 1.05 in all round every pipe (ASME B36.10M) and a quarter more for the fittings; two coats at 30 m²/L.
func TestWaxForTheSteel(t *testing.T) {
	s := own(func(s *shop.Shop) { s.Settings.MetalFinish = "paste-wax" })
	l, err := part.TakeOff(resolve(t, s, bench), s)
	if err != nil {
		t.Fatal(err)
	}
	area := math.Pi * 26.67 * l.Totals.Pipe.MM() / 1e6 * 1.25
	near(t, "wax in ml", supply(t, l, "paste-wax").Quantity.Value, area*2/30*1.2*1000, 1e-6)
}

func TestAShopWithoutAFinishUsesNone(t *testing.T) {
	s := own(func(s *shop.Shop) { s.Settings.Finish, s.Settings.MetalFinish = "", "" })
	l, err := part.TakeOff(resolve(t, s, bench), s)
	if err != nil {
		t.Fatal(err)
	}
	if len(l.Supplies) != 1 {
		t.Errorf("%+v", l.Supplies)
	}
}

func TestAnUnknownClassOfTheShopIsAnError(t *testing.T) {
	for name, change := range map[string]func(*shop.Shop){
		"adhesive": func(s *shop.Shop) { s.Settings.Adhesive = "hide-glu" },
		"finish":   func(s *shop.Shop) { s.Settings.Finish = "hardwax" },
		"steel":    func(s *shop.Shop) { s.Settings.MetalFinish = "past-wax" },
	} {
		s := own(change)
		if _, err := part.TakeOff(resolve(t, s, bench), s); err == nil || !strings.Contains(err.Error(), "shop's") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestPipeTotalsAreWhatIsCut(t *testing.T) {
	_, l := takeOff(t, bench)
	var sum length.Length
	for _, p := range l.Parts {
		if p.Kind == part.Pipe {
			sum += p.Cut * length.Length(p.Count)
		}
	}
	if l.Totals.Pipe != sum || l.Totals.Fittings != 12 || named(t, l, pipe.Tee.Words()).Count != 4 {
		t.Errorf("%+v", l.Totals)
	}
}
