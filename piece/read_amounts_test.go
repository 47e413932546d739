package piece_test

import (
	"math"
	"strings"
	"testing"
)

// NIST Special Publication 811, appendix B.8: the avoirdupois pound is 0.453 592 37 kg exactly, the ounce a
// sixteenth of it.
func TestMassesOfBothSystems(t *testing.T) {
	for _, c := range []struct {
		weight string
		kg     float64
	}{
		{"12 lb", 5.44310844},
		{"12lb", 5.44310844},
		{"2 lbs", 0.90718474},
		{"1 1/2 lb", 0.680388555},
		{"8 oz", 0.226796185},
		{"5.5 kg", 5.5},
		{"500 g", 0.5},
	} {
		if got := read(t, "weight: 165 lb", "weight: "+c.weight).Holds[0].MassKg; math.Abs(got-c.kg) > 1e-12 {
			t.Errorf("%s is %.9f kg, want %.9f", c.weight, got, c.kg)
		}
	}
	for _, weight := range []string{"12", "twelve lb", "12 stone", "0 kg", "-3 kg", "200000 kg", "12 in"} {
		if got := wrong(t, "weight: 165 lb", "weight: "+weight); !strings.HasPrefix(got, "13:62: weight:") {
			t.Errorf("%s: %s", weight, got)
		}
	}
}

// Fixed points: water freezes at 32 °F and 0 °C, the scales meet at -40.
func TestRangesAreReadWithAnyDash(t *testing.T) {
	for _, c := range []struct {
		temperature string
		low, high   float64
	}{
		{"10–32 C", 10, 32}, {"10-32 C", 10, 32}, {"10 - 32 C", 10, 32}, {"10 to 32 C", 10, 32}, {"10—32 °C", 10, 32}, {"−5–32 C", -5, 32},
		{"-5--1 C", -5, -1}, {"18.5 C", 18.5, 18.5}, {"32–59 F", 0, 15}, {"-40–32 °F", -40, 0},
	} {
		p := read(t, "temperature: 16–27 C", "temperature: "+c.temperature).Place
		if math.Abs(p.LowC-c.low) > 1e-9 || math.Abs(p.HighC-c.high) > 1e-9 {
			t.Errorf("%s is from %g to %g C", c.temperature, p.LowC, p.HighC)
		}
	}
	for _, temperature := range []string{"warm", "10–", "10–20–30 C", "30–20 C", "10–32", "10–320 C", "--3 C"} {
		if got := wrong(t, "temperature: 16–27 C", "temperature: "+temperature); !strings.Contains(got, "temperature:") {
			t.Errorf("%s: %s", temperature, got)
		}
	}
}

func TestCountsAndSharesKeepTheirBounds(t *testing.T) {
	for _, count := range []string{"0", "501", "-1", "2.0", "two", "+2"} {
		if got := wrong(t, "weight: 165 lb, count: 2", "weight: 165 lb, count: "+count); !strings.Contains(got, "write a whole number from 1 to 500") {
			t.Errorf("count %s: %s", count, got)
		}
	}
	for _, share := range []string{"0", "1", "3/2", "-1/2", "half", "1/3 in", "1/9999999"} {
		if got := wrong(t, "joins: end rails", "joins: end rails, share: "+share); !strings.Contains(got, "is no share") {
			t.Errorf("share %s: %s", share, got)
		}
	}
	for _, moisture := range []string{"8", "1 %", "61 %", "dry", "8 in"} {
		if got := wrong(t, "moisture: 8 %", "moisture: "+moisture); !strings.Contains(got, "write a percentage from 2 % to 60 %") {
			t.Errorf("moisture %s: %s", moisture, got)
		}
	}
}

func TestDimensionsTakeTheUnitOfTheLast(t *testing.T) {
	for _, c := range []struct {
		size string
		x, z float64 // inches
	}{
		{"15 × 13 × 34 in", 15, 34}, {"15×13×34", 15, 34}, {"15 x 13 x 34 in", 15, 34}, {"254 × 100 × 508 mm", 10, 20},
		{"15 in × 13 in × 508 mm", 15, 20}, {"length / 4 × 10 × height", 12, 18}, {"1' 2 × 10 × 2 ft", 14, 24}, {"10 × 10 × 20 + 1 in", 10, 21},
	} {
		size := read(t, "size: 15 × 13 × 34 in", "size: "+c.size).Holds[0].Size
		if size[0].Inches() != c.x || size[2].Inches() != c.z {
			t.Errorf("%s is %g × … × %g in, want %g and %g", c.size, size[0].Inches(), size[2].Inches(), c.x, c.z)
		}
	}
}
