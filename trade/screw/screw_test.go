package screw_test

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/trade/screw"
	"rodwright/trade/table"
	"rodwright/trade/wood"
)

const (
	in  = length.Inch
	lbf = 0.45359237 * 9.80665 // N, exact
	psi = lbf / (25.4 * 25.4)  // MPa
)

var (
	//go:embed screws.csv
	screwsCSV string
	//go:embed bolts.csv
	boltsCSV string
	//go:embed lateral.csv
	lateralCSV string
	//go:embed lengths.csv
	lengthsCSV string
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.6g, want %.6g ± %g", what, got, want, tolerance)
	}
}

func species(t *testing.T, id string) wood.Species {
	t.Helper()
	s, err := wood.Lookup(id)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// of returns a wood of a given specific gravity, for published examples that name no species.
func of(g float64, hardwood bool) wood.Species {
	return wood.Species{ID: "example", Name: "example", SG12: g, Hardwood: hardwood}
}

func TestEveryRowHasASource(t *testing.T) {
	for name, text := range map[string]string{"screws": screwsCSV, "bolts": boltsCSV, "lateral": lateralCSV, "lengths": lengthsCSV} {
		rows := table.Read(text)
		if len(rows) == 0 {
			t.Errorf("%s: no rows", name)
		}
		for _, r := range rows {
			if err := r.Sourced(); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

// ASME B18.6.1 Wood Screws: D = 0.060 + 0.013 N: No. 8 0.164 in, No. 10 0.190 in.
func TestTheShankFollowsFromTheScrewsNumber(t *testing.T) {
	for gauge, want := range map[int]length.Length{8: in * 164 / 1000, 10: in * 190 / 1000, 0: in * 60 / 1000, 24: in * 372 / 1000} {
		f, err := screw.Shank(gauge)
		if err != nil {
			t.Fatal(err)
		}
		near(t, fmt.Sprint("No. ", gauge), f.Value, want.MM(), 0)
	}
	for _, gauge := range screw.Gauges() {
		s, err := screw.Lookup(gauge)
		if err != nil {
			t.Fatal(err)
		}
		f, err := screw.Shank(gauge)
		if err != nil {
			t.Fatal(err)
		}
		near(t, s.String(), s.Shank.MM(), f.Value, 0)
	}
}

// The pitches of ASME B18.6.1 wood screws (18, 15, 13, 11, 10 for No. 6, 8, 10, 12, 14), not those of
// machine screws.
func TestWoodScrewsHaveTheirOwnThread(t *testing.T) {
	for gauge, want := range map[int]float64{6: 18, 8: 15, 10: 13, 12: 11, 14: 10} {
		s, err := screw.Lookup(gauge)
		if err != nil {
			t.Fatal(err)
		}
		near(t, s.String(), s.ThreadsPerInch, want, 0)
		if n := s.Through(in); n != int(want) {
			t.Errorf("%v: %d threads in an inch", s, n)
		}
	}
}

func TestTheRootIsThinnerThanTheShankAndTheClearanceAboutIt(t *testing.T) {
	last := length.Length(0)
	for _, gauge := range screw.Gauges() {
		s, err := screw.Lookup(gauge)
		if err != nil {
			t.Fatal(err)
		}
		if s.Root <= 0 || s.Root >= s.Shank {
			t.Errorf("%v: root %v, shank %v", s, s.Root, s.Shank)
		}
		if (s.Clearance - s.Shank).Abs() > in/64 {
			t.Errorf("%v: clearance %v, shank %v", s, s.Clearance, s.Shank)
		}
		if s.Shank <= last {
			t.Errorf("%v is no thicker than the one before", s)
		}
		last = s.Shank
	}
}

func TestAnUnknownGaugeNamesTheNearOnes(t *testing.T) {
	for gauge, want := range map[int][]string{11: {"10", "12", "9"}, 13: {"12", "14", "10"}, 100: {"14", "12", "10"}, -3: {"4", "5", "6"}} {
		_, err := screw.Lookup(gauge)
		var unknown *table.UnknownError
		if !errors.As(err, &unknown) {
			t.Fatalf("No. %d: %v", gauge, err)
		}
		if !slices.Equal(unknown.Near, want) {
			t.Errorf("No. %d: near %q, want %q", gauge, unknown.Near, want)
		}
	}
	if _, err := screw.Shank(25); err == nil {
		t.Error("the series ends at No. 24")
	}
}

// The National Design Specification, Appendix L: No. 8 root 0.131, No. 10 0.152 in, from memory; lead holes
// of 90 % and 70 % by the Wood Handbook ch. 8, 100 % and 85 % by a screw supplier's chart.
func TestPilotsOfHardwoodAndSoftwood(t *testing.T) {
	cases := []struct {
		gauge                int
		wood                 string
		handbook, supplier   float64
		side, end, tolerance float64
	}{
		{8, "white-oak", 0.9 * 0.131, 0.131, 0.082, 0.1148, 1e-6},
		{10, "white-oak", 0.9 * 0.152, 0.152, 0.095, 0.133, 1e-6},
		{10, "eastern-white-pine", 0.7 * 0.152, 0.85 * 0.152, 0.095, 0.133, 1e-6},
	}
	for _, c := range cases {
		b, err := screw.Pilot(c.gauge, species(t, c.wood))
		if err != nil {
			t.Fatal(err)
		}
		near(t, "handbook", b.Pilot.Value/25.4, c.handbook, c.tolerance)
		near(t, "suppliers", b.Suppliers.Value/25.4, c.supplier, c.tolerance)
		for grain, want := range map[screw.Grain]float64{screw.Side: c.side, screw.End: c.end} {
			f, err := screw.TestedPilot(c.gauge, grain)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "tested "+string(grain), f.Value/25.4, want, c.tolerance)
		}
	}
}

// Abstracts of pull tests in softwood: holding falls sharply once the pilot is over the root diameter; half
// the outer diameter held best. The handbook's softwood pilot is within a tenth of the shank of it.
func TestTheHandbooksSoftwoodPilotAgreesWithTheTests(t *testing.T) {
	for _, gauge := range screw.Gauges() {
		b, err := screw.Pilot(gauge, species(t, "eastern-white-pine"))
		if err != nil {
			t.Fatal(err)
		}
		s, _ := screw.Lookup(gauge)
		if share := b.Pilot.Value / s.Shank.MM(); share < 0.45 || share > 0.60 {
			t.Errorf("%v: pilot is %.2f of the shank", s, share)
		}
		if b.Pilot.Value > s.Root.MM() {
			t.Errorf("%v: pilot above the root", s)
		}
	}
}

func TestABitIsTheNearestThatIsSold(t *testing.T) {
	pilot := in * 137 / 1000 // 0.137 in: between 1/8 and 9/64
	if got := screw.Bit(pilot, false); got != in*9/64 {
		t.Errorf("inch bit %v", length.SixtyFourth.Text(got))
	}
	if got := screw.Bit(pilot, true); got != 35*length.Millimetre/10 {
		t.Errorf("metric bit %v", length.HalfMM.Text(got))
	}
}

// ASME B18.2.1, from memory: threaded length 2 d + 1/4 in; tensile stress area 0.7854 (d − 0.9743/n)².
func TestBoltsForPlatesAndSlots(t *testing.T) {
	for _, id := range screw.Bolts() {
		b, err := screw.LookupBolt(id)
		if err != nil {
			t.Fatal(err)
		}
		if want := 2*b.Diameter + in/4; b.Thread != want {
			t.Errorf("%s: thread %v, want %v", id, b.Thread, want)
		}
		d := b.Diameter.Inches() - 0.9743/b.ThreadsPerInch
		near(t, id+" stress area", b.StressArea/(25.4*25.4), 0.7854*d*d, 0.0001)
		if b.WasherWide <= b.AcrossFlats || b.Source.Title == "" {
			t.Errorf("%s: washer %v, flats %v, source %q", id, b.WasherWide, b.AcrossFlats, b.Source)
		}
	}
	if _, err := screw.LookupBolt("7/16"); err == nil {
		t.Error("7/16 is not in the table")
	}
}

func TestThePilotNeverExceedsTheRoot(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		gauge := rapid.SampledFrom(screw.Gauges()).Draw(r, "gauge")
		b, err := screw.Pilot(gauge, of(0.5, rapid.Bool().Draw(r, "hardwood")))
		if err != nil {
			r.Fatal(err)
		}
		s, _ := screw.Lookup(gauge)
		if b.Pilot.Value > b.Suppliers.Value || b.Suppliers.Value > s.Root.MM()+1e-9 {
			r.Fatalf("pilot %v, suppliers %v, root %v", b.Pilot.Value, b.Suppliers.Value, s.Root.MM())
		}
	})
}

func ExampleLongestFor() {
	grip, panel := 3*length.Inch/16, 17*length.Inch/16
	l, ok := screw.LongestFor(grip, panel)
	fmt.Println(length.Sixteenth.Text(l), ok)
	// Output: 1 in true
}

func ExampleWithdrawal() {
	oak, err := wood.Lookup("white-oak")
	if err != nil {
		fmt.Println(err)
		return
	}
	ten, err := screw.Lookup(10)
	if err != nil {
		fmt.Println(err)
		return
	}
	_, design, err := screw.Withdrawal(oak, ten.Shank, screw.Thread(length.Inch), screw.Side)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(design.Show(length.Sixteenth), "by", design.Formula.Text)
	// Output: 743 N by W = 2850·G²·D·L (lbf, in)
}
