package wood

import (
	"math"
	"testing"
)

// Wood Handbook Tables 5-3 and 5-11, both from memory: the line by specific gravity agrees with the species' own figures
// within 40 %.
func TestStrengthAcrossTheGrainBySpecificGravityAgreesWithTheSpeciesOwn(t *testing.T) {
	for id := range tensionTable() {
		s, err := Lookup(id)
		if err != nil {
			t.Fatal(err)
		}
		own, _ := s.TensionAcross()
		s.ID = "another"
		line, ok := s.TensionAcross()
		if !ok || math.Abs(line.Value/own.Value-1) > 0.4 {
			t.Errorf("%s: %v MPa, by its gravity %v", id, own.Value, line.Value)
		}
	}
}

func TestEveryWoodHasAStrengthAcrossTheGrainFarBelowThatAlongIt(t *testing.T) {
	for _, id := range IDs() {
		s, _ := Lookup(id)
		if f, ok := s.TensionAcross(); !ok || !(f.Value > 0.5) || f.Value > s.MOR/6 {
			t.Errorf("%s: %v MPa across, %v in bending along", id, f.Value, s.MOR)
		}
	}
	if _, ok := (Species{SG12: math.NaN()}).TensionAcross(); ok {
		t.Error("a wood of which nothing is known has a strength")
	}
}
