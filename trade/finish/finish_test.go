package finish_test

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/trade/finish"
	"rodwright/trade/table"
)

var (
	//go:embed finishes.csv
	finishesCSV string
	//go:embed cautions.csv
	cautionsCSV string
)

func class(t *testing.T, id string) finish.Class {
	t.Helper()
	c, err := finish.Lookup(id)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.6g, want %.6g ± %g", what, got, want, tolerance)
	}
}

func TestEveryRowHasASource(t *testing.T) {
	for _, text := range []string{finishesCSV, cautionsCSV} {
		for _, r := range table.Read(text) {
			if err := r.Sourced(); err != nil {
				t.Error(err)
			}
			if r.Has("low") && !(r.Float("low") <= r.Float("high")) {
				t.Errorf("line %d runs backwards", r.Line)
			}
		}
	}
}

func TestEveryFinishIsWhole(t *testing.T) {
	for _, id := range finish.IDs() {
		c := class(t, id)
		for name, s := range map[string]table.Span{"coverage": c.Coverage, "recoat": c.Recoat, "use": c.Use, "cure": c.Cure} {
			if !s.Known() || s.Low <= 0 {
				t.Errorf("%s: %s is %+v", id, name, s)
			}
		}
		if c.Coats < 1 || c.Name == "" || c.Use.High > c.Cure.High {
			t.Errorf("%+v", c)
		}
		if len(c.Cautions()) == 0 {
			t.Errorf("%s has no caution", id)
		}
		for _, f := range []figure.Figure{c.CoverageFigure(), c.RecoatTime(), c.UseTime(), c.CureTime()} {
			if len(f.Assumed) != 1 || !strings.Contains(f.Assumed[0], c.Name) || f.Source == "" {
				t.Errorf("%s %s: assumed %q, source %q", id, f.Name, f.Assumed, f.Source)
			}
		}
	}
	if len(finish.IDs()) != 7 {
		t.Errorf("%q", finish.IDs())
	}
}

// Pages on hard wax oil, printed: recoat 4 to 12 h, light use after 24 h, wiped off in 15 to 30 min.
func TestHardwaxOilAsItsPagesHaveIt(t *testing.T) {
	c := class(t, "hardwax-oil")
	near(t, "recoat, least", c.Recoat.Low, 4, 0)
	near(t, "recoat", c.RecoatTime().Value, 12, 0)
	near(t, "use", c.UseTime().Value, 24, 0)
	near(t, "wipe", c.Wipe.Low, 0.25, 1e-12)
	near(t, "coverage", c.CoverageFigure().Value, 25, 0)
	if strings.Contains(c.RecoatTime().Assumed[0], "memory") || !strings.Contains(c.CoverageFigure().Assumed[0], "memory") {
		t.Errorf("recoat was read, coverage was not: %q %q", c.RecoatTime().Assumed, c.CoverageFigure().Assumed)
	}
}

// Published cautions on oily rags: linseed, tung and finishes with them heat by themselves.
func TestDryingOilsSayWhatToDoWithTheirRags(t *testing.T) {
	for id, oily := range map[string]bool{
		"hardwax-oil": true, "film-varnish": true, "decking-oil": true,
		"waterborne-clear": false, "shellac": false, "paste-wax": false, "enamel": false,
	} {
		c := class(t, id)
		said := strings.Join(c.Cautions(), "\n")
		if c.OilyRags != oily || strings.Contains(said, finish.RagCaution()) != oily {
			t.Errorf("%s: rags %v, cautions %q", id, c.OilyRags, said)
		}
	}
	if !strings.Contains(finish.RagCaution(), "never bin") {
		t.Errorf("%q", finish.RagCaution())
	}
}

// Common practice, no source: a film keeps water off; oil and wax only slow it.
func TestFilmsLieOnTheSurface(t *testing.T) {
	for id, film := range map[string]bool{
		"film-varnish": true, "waterborne-clear": true, "shellac": true, "enamel": true,
		"hardwax-oil": false, "paste-wax": false, "decking-oil": false, "soap-flakes": false,
	} {
		if finish.Film(id) != film {
			t.Errorf("%s: film %v", id, !film)
		}
	}
	for id, want := range map[string]string{"hardwax-oil": "hardwax oil", "enamel": "clear enamel", "soap-flakes": "soap flakes"} {
		if got := finish.Words(id); got != want {
			t.Errorf("%s: %q", id, got)
		}
	}
}

// Published safety data on acetone: closed-cup flash point -4 F in current tables.
func TestSolventsSayThatTheyBurn(t *testing.T) {
	if s := finish.SolventCaution(); !strings.Contains(s, "-4 F") || !strings.Contains(s, "butyl") {
		t.Errorf("%q", s)
	}
	for _, id := range []string{"hardwax-oil", "shellac", "paste-wax", "enamel"} {
		if said := strings.Join(class(t, id).Cautions(), "\n"); !strings.Contains(said, "no flame or spark") {
			t.Errorf("%s: %q", id, said)
		}
	}
}

// Arithmetic by hand: both faces of 42 × 19 in, two coats at 25 m²/L, a tenth spare: 0.08236 L + 10 % = 90.6.
func TestOilForATop(t *testing.T) {
	area := 2 * 1.0668 * 0.4826
	f, err := finish.Quantity(area, 2, 25, 10)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ml", f.Value, 90.61, 0.01)
}

// A finish supplier's page, printed: 6 to 7 m² a litre for both coats of a decking oil.
func TestBothCoatsOfDeckingOilComeToWhatIsPrinted(t *testing.T) {
	c := class(t, "decking-oil")
	for _, s := range []struct{ coverage, area float64 }{{c.Coverage.Low, 6}, {c.Coverage.High, 7}} {
		f, err := finish.Quantity(s.area, c.Coats, s.coverage, 0)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "ml", f.Value, 1000, 1e-9)
	}
}

func TestFinishRefusesWhatHasNoMeaning(t *testing.T) {
	for name, ask := range map[string]func() (figure.Figure, error){
		"area":      func() (figure.Figure, error) { return finish.Quantity(-1, 1, 10, 0) },
		"coats":     func() (figure.Figure, error) { return finish.Quantity(1, 0, 10, 0) },
		"coverage":  func() (figure.Figure, error) { return finish.Quantity(1, 1, 0, 0) },
		"spare":     func() (figure.Figure, error) { return finish.Quantity(1, 1, 10, math.NaN()) },
		"overflow":  func() (figure.Figure, error) { return finish.Quantity(1e300, 100, 1e-300, 0) },
		"no number": func() (figure.Figure, error) { return finish.Quantity(math.Inf(1), 1, 1, 0) },
	} {
		if f, err := ask(); err == nil {
			t.Errorf("%s: %v", name, f.Value)
		}
	}
	var unknown *table.UnknownError
	if _, err := finish.Lookup("hardwax"); !errors.As(err, &unknown) || unknown.Near[0] != "hardwax-oil" {
		t.Errorf("%v", err)
	}
}

func TestTheQuantityCoversTheAreaInEveryCoat(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		area := rapid.Float64Range(0, 100).Draw(r, "area")
		coats := rapid.IntRange(1, 10).Draw(r, "coats")
		coverage := rapid.Float64Range(1, 50).Draw(r, "coverage")
		spare := rapid.Float64Range(0, 100).Draw(r, "spare")
		f, err := finish.Quantity(area, coats, coverage, spare)
		if err != nil {
			r.Fatal(err)
		}
		covered := f.Value / 1000 * coverage / (1 + spare/100)
		if want := area * float64(coats); math.Abs(covered-want) > 1e-9*max(1, want) {
			r.Fatalf("covers %v m² of %v", covered, want)
		}
	})
}

func ExampleQuantity() {
	oil, err := finish.Lookup("hardwax-oil")
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := finish.Quantity(1.03, oil.Coats, oil.Coverage.Middle(), 10)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(figure.Digits(f.Value, 3), f.Unit, "by", f.Formula.Text)
	// Output: 90.6 ml by V = area · coats ÷ coverage · (1 + spare)
}
