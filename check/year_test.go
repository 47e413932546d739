package check

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/piece/random"
	"rodwright/shop"
	"rodwright/trade/wood"
)

// By hand, white oak at 8 %, 14.5 in (Wood Handbook FPL-GTR-282 (2021) eq. 13-2, C_T 0.00365): at 10 % it is 14.5 ·
// 0.00365 · 2 = 0.10585 in wider, at 7 % 0.05293 in narrower.
func TestAMonthMovesByItsOwnMoisture(t *testing.T) {
	p := derive(t, table)
	p.Air.DryMC, p.Air.WetMC = 6.2, 11
	p.Air.Months = []float64{6.2, 7, 8, 10, 11, 11, 11, 11, 11, 8, 8, 8}
	s, err := p.moves(0, inch(14.5))
	if err != nil {
		t.Fatal(err)
	}
	y := p.throughYear(0, s)
	for n, want := range []float64{s.Dry.Value / 25.4, -0.05293, 0, 0.10585, s.Wet.Value / 25.4} {
		near(t, y.times[n], y.changes[n]/25.4, want, 1e-4)
	}
	if len(y.times) != 12 || y.times[0] != "Jan" {
		t.Error(y.times)
	}
}

// Both formulas are straight in the moisture at the end: a month has what wood.Change says of it wherever the end
// of the year goes by the same one.
func TestAMonthIsWhatTheHandbooksEquationSays(t *testing.T) {
	p := derive(t, table)
	for _, c := range []struct{ dry, mc, wet float64 }{{6.2, 7, 11}, {6.2, 10.9, 13}, {4, 5, 18}, {4, 17, 18}} {
		p.Air.DryMC, p.Air.WetMC, p.Air.Months = c.dry, c.wet, []float64{c.mc, c.dry, c.wet, 8, 8, 8, 8, 8, 8, 8, 8, 8}
		s, err := p.moves(0, inch(10))
		if err != nil {
			t.Fatal(err)
		}
		w := p.Panels[0].Spec.Wood
		want, err := wood.Change(w.Species, w.Cut, inch(10), w.Moisture, c.mc)
		if err != nil {
			t.Fatal(err)
		}
		near(t, fmt.Sprint(c), p.throughYear(0, s).changes[0], want.Value, 1e-9)
	}
}

func TestWithoutACityTheYearHasThreeTimes(t *testing.T) {
	p := derive(t, table)
	f := only(t, Movement(p), "top")
	y := f.Picture.Year
	if y == nil || !slices.Equal(y.Times, []string{"driest", "as built", "dampest"}) {
		t.Fatalf("%+v", f.Picture)
	}
	near(t, "as built", y.Lines[0].Values[1], f.Limit.Value, 0)
	near(t, "dampest", y.Lines[0].Values[2], f.Limit.Value-f.Figure.Value, 1e-6)
}

// 20.5 in of white oak over 4.8 points is 20.5 · 0.00365 · 4.8 = 0.359 in.
func TestEveryPanelTellsHowFarItMovesOverTheYear(t *testing.T) {
	p := derive(t, table)
	p.Air.DryMC, p.Air.WetMC = 6.2, 11
	near(t, "swing", because(t, only(t, Movement(p), "top"), "movement of the whole width over the year").Value/25.4, 0.359, 0.001)
	loose := derive(t, bearers)
	f := only(t, Movement(loose), "board")
	verdict(t, f, finding.Stands)
	says(t, strings.Join(f.Assumed, ";"), "lies loose")
}

func TestANotchDrawsTheGapsAtItsWallsOverTheMonths(t *testing.T) {
	p := derive(t, notched, "room: studio, humidity: 30–60 %, temperature: 70–70 F", "room: studio, humidity: 30–60 %, temperature: 70–70 F, city: fargo")
	drawn := 0
	for _, f := range Notch(p) {
		y := f.Picture.Year
		if y == nil {
			continue
		}
		drawn++
		if len(y.Times) != 12 || y.Limit != 0 || len(y.Lines) != 3 {
			t.Fatalf("%+v", y)
		}
		for _, l := range y.Lines {
			least := slices.Min(l.Values)
			// the working gap is what is left in the worst season, at every wall
			near(t, l.Name, least, p.Shop.Settings.WorkingGap.MM(), 1e-5)
			across := l.Name == "back wall" || l.Name == "front wall" // one of them is open
			if moves := slices.Max(l.Values)-least > 1e-6; moves != across {
				t.Errorf("the %s goes from %v to %v mm", l.Name, least, slices.Max(l.Values))
			}
		}
	}
	if drawn != 1 {
		t.Errorf("%d pictures for one panel", drawn)
	}
}

func TestASeatDrawsHowMuchItStillReaches(t *testing.T) {
	f := only(t, Seat(derive(t, table)), "top")
	y := f.Picture.Year
	if y == nil {
		t.Fatal("no picture")
	}
	near(t, "least", slices.Min(y.Lines[0].Values), f.Figure.Value, 1e-6)
	near(t, "limit", y.Limit, f.Limit.Value, 0)
}

// yearly are all lines that checks of movement draw of a piece.
func yearly(p *Piece) (out []*finding.Year) {
	for _, of := range []func(*Piece) []finding.Finding{Movement, Notch, Seat, Fit} {
		for _, f := range of(p) {
			if f.Picture.Year != nil {
				out = append(out, f.Picture.Year)
			}
		}
	}
	return out
}

func TestNoMonthPassesTheEndsOfTheYear(t *testing.T) {
	months := 0
	for seed := range uint64(80) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		for i := range p.Panels {
			w := p.Panels[i].Spec.Wood
			if w == nil {
				continue
			}
			s, err := p.moves(i, p.wide(i))
			if err != nil {
				continue
			}
			y := p.throughYear(i, s)
			ends := []float64{s.Dry.Value, s.Wet.Value, 0}
			for n, c := range y.changes {
				if c < slices.Min(ends)-1e-9 || c > slices.Max(ends)+1e-9 {
					t.Errorf("seed %d: %s changes by %v mm, the ends %v", seed, y.times[n], c, ends)
				}
			}
			if len(y.times) == 12 {
				months++
			}
		}
		for _, mc := range p.Air.Months {
			if mc < p.Air.DryMC || mc > p.Air.WetMC {
				t.Errorf("seed %d: a month has %v %%, the year %v to %v", seed, mc, p.Air.DryMC, p.Air.WetMC)
			}
		}
		for _, y := range yearly(p) {
			for _, l := range y.Lines {
				if len(l.Values) != len(y.Times) || slices.ContainsFunc(l.Values, func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) }) {
					t.Errorf("seed %d: %+v", seed, l)
				}
			}
		}
	}
	if months < 20 {
		t.Errorf("%d panels have months", months)
	}
}

// A gap that is made wider leaves more room at every time of the year.
func TestAWiderGapNeverBindsMore(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		d, more := rapid.IntRange(0, 16).Draw(r, "gap"), rapid.IntRange(1, 16).Draw(r, "more")
		city := rapid.SampledFrom([]string{"", ", city: juneau", ", city: phoenix"}).Draw(r, "city")
		of := func(sixtyfourths int) []finding.Finding {
			return Notch(derive(t, notched, "at: [0, 0],", fmt.Sprintf("at: [0, 0], gap: %d/64 in,", sixtyfourths), "temperature: 70–70 F", "temperature: 70–70 F"+city))
		}
		narrow, wide := of(d), of(d+more)
		for n := range narrow {
			a, b := because(t, narrow[n], "clearance in the worst season"), because(t, wide[n], "clearance in the worst season")
			if b.Value < a.Value-1e-9 {
				r.Errorf("%s: %v, then %v mm", narrow[n].Place, a.Value, b.Value)
			}
		}
	})
}

// In every wood of the table, from any day it is made on: a year that is drier at one end and damper at the other
// never moves it less, also where the equation changes.
func TestMovementNeverShrinksWhenTheRangeOfHumidityGrows(t *testing.T) {
	p := derive(t, table)
	ids := wood.IDs()
	rapid.Check(t, func(r *rapid.T) {
		s, err := wood.Lookup(rapid.SampledFrom(ids).Draw(r, "species"))
		if err != nil {
			t.Fatal(err)
		}
		w := *p.Panels[0].Spec.Wood
		w.Species, w.Moisture = s, rapid.Float64Range(7, 12).Draw(r, "built")
		spec := *p.Panels[0].Spec
		spec.Wood = &w
		p.Panels[0].Spec = &spec
		dry, wet := rapid.Float64Range(4, 7).Draw(r, "dry"), rapid.Float64Range(12, 20).Draw(r, "wet")
		of := func(dry, wet float64) year {
			p.Air.DryMC, p.Air.WetMC = dry, wet
			s, err := p.moves(0, inch(20))
			if err != nil {
				t.Fatal(err)
			}
			return p.throughYear(0, s)
		}
		a := of(dry, wet)
		b := of(dry-rapid.Float64Range(0, 2).Draw(r, "drier"), wet+rapid.Float64Range(0, 4).Draw(r, "damper"))
		if b.changes[0] > a.changes[0]+1e-9 || b.changes[2] < a.changes[2]-1e-9 {
			r.Errorf("%s: %v, then %v", s.ID, a.changes, b.changes)
		}
	})
}

// Mahogany's coefficient says more at 14 % than its shrinkage does at 14.5 % (Wood Handbook FPL-GTR-282 (2021) tables
// 13-5 and 4-4): a place that is half a point damper does not move it less.
func TestJustPastTheCoefficientsAPanelHasNotMovedLess(t *testing.T) {
	p := derive(t, table, "species: white-oak", "species: mahogany")
	of := func(wet float64) season {
		p.Air.DryMC, p.Air.WetMC = 14-wet+6, wet
		s, err := p.moves(0, inch(20))
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	a, b := of(14), of(14.5)
	if b.Wet.Value < a.Wet.Value || b.Dry.Value > a.Dry.Value {
		t.Errorf("%v to %v, then %v to %v mm", a.Dry.Value, a.Wet.Value, b.Dry.Value, b.Wet.Value)
	}
}
