package sheet_test

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/trade/beam"
	"rodwright/trade/sheet"
	"rodwright/trade/table"
)

//go:embed sheets.csv
var sheetsCSV string

func TestEveryRowHasASource(t *testing.T) {
	for _, r := range table.Read(sheetsCSV) {
		if err := r.Sourced(); err != nil {
			t.Error(err)
		}
	}
}

func TestEverySheetIsWholeAndSaysThatItIsAssumed(t *testing.T) {
	for _, id := range sheet.IDs() {
		s, err := sheet.Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		if s.True[0] > s.Thickness || s.True[1] < s.Thickness || s.Size[0] <= s.Size[1] {
			t.Errorf("%+v", s)
		}
		if !(s.Density > 300 && s.Density < 900) || s.Across > s.Along || s.Across <= 0 {
			t.Errorf("%+v", s)
		}
		if s.Veneered == (s.Along == s.Across) {
			t.Errorf("%s: a face grain makes it stiffer one way", id)
		}
		if !strings.Contains(s.Assumed, "from memory") || !s.Source.Memory {
			t.Errorf("%s: %q", id, s.Assumed)
		}
		if !strings.HasSuffix(id, fmt.Sprint("-", int(s.Thickness.MM()))) {
			t.Errorf("%s is %v thick", id, s.Thickness)
		}
	}
}

// Sheet goods from memory: birch plywood 18 mm, 680 kg/m³, 9500 and 6500 MPa, found 17.5 to 18.3 mm thick.
func TestBirchPlywood(t *testing.T) {
	s, err := sheet.Lookup("birch-plywood-18")
	if err != nil {
		t.Fatal(err)
	}
	tenth := length.Millimetre / 10
	if s.Along != 9500 || s.Across != 6500 || s.True != [2]length.Length{175 * tenth, 183 * tenth} {
		t.Errorf("%+v", s)
	}
	m, err := s.Mass(s.Size[0].MM() * s.Size[1].MM() / 1e6)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(m.Value-36.44) > 0.01 { // 2.44 × 1.22 × 0.018 × 680, by hand
		t.Errorf("a sheet weighs %v kg", m.Value)
	}
	if _, err := s.Mass(-1); err == nil {
		t.Error("an area below nothing")
	}
}

// Sheet goods from memory: creep factors 3 for MDF and 3.25 for particleboard; plywood as solid wood.
func TestBoardsWithoutGrainSagOn(t *testing.T) {
	for id, want := range map[string]map[beam.Lasting]float64{
		"mdf-18": {beam.Dry: 3, beam.Damp: 3}, "particleboard-18": {beam.Dry: 3.25, beam.Damp: 3.25},
		"birch-plywood-12": {beam.Dry: 1.5, beam.Damp: 2},
	} {
		s, err := sheet.Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		for air, factor := range want {
			f := s.Creep(air)
			if f.Value != factor || len(f.Assumed) != 1 {
				t.Errorf("%s %s: %v, assumed %q", id, air, f.Value, f.Assumed)
			}
		}
	}
}

func TestAnUnknownSheetNamesNearOnes(t *testing.T) {
	var unknown *table.UnknownError
	if _, err := sheet.Lookup("birch-plywood-19"); !errors.As(err, &unknown) || unknown.Near[0] != "birch-plywood-12" && unknown.Near[0] != "birch-plywood-18" {
		t.Errorf("%v", err)
	}
	if _, err := sheet.Lookup(""); err == nil {
		t.Error("a sheet has a name")
	}
}

func ExampleLookup() {
	s, err := sheet.Lookup("mdf-18")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Name, length.WholeMM.Text(s.Size[0]), "×", length.WholeMM.Text(s.Size[1]))
	// Output: MDF 18 mm 2440 mm × 1220 mm
}
