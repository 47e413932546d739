package wood

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Saturation pressures over water from steam tables, from memory: 0 °C 611 Pa, 20 °C 2339 Pa, 30 °C 4246 Pa.
func TestSaturationPressureIsThatOfSteamTables(t *testing.T) {
	for temp, want := range map[float64]float64{0: 611.2, 20: 2339, 30: 4246, 40: 7384} {
		if got := saturation(temp); math.Abs(got/want-1) > 0.003 {
			t.Errorf("%v °C: %.0f Pa, want %v", temp, got, want)
		}
	}
}

// Common practice, no source: winter air of 0 °C and 80 % warmed to 20 °C is at about 21 %. A cubic metre of air at 20 °C
// holds 17.3 g, from memory.
func TestWarmedWinterAirIsDry(t *testing.T) {
	for _, c := range []struct {
		name                    string
		outRH, out, in, g, want float64
	}{
		{"warmed", 80, 0, 20, 0, 20.9},
		{"same temperature", 55, 20, 20, 0, 55},
		{"with the room's own moisture", 80, 0, 20, 1.73, 30.9},
		{"full", 0, 0, 20, 17.3, 100},
	} {
		f, err := IndoorRH(c.outRH, c.out, c.in, c.g)
		if err != nil || math.Abs(f.Value-c.want) > 0.15 {
			t.Errorf("%s: %v %%, %v; want %v", c.name, f.Value, err, c.want)
		}
	}
	f, err := IndoorRH(90, 30, 20, 0)
	if err != nil || f.Value != 100 || len(f.Assumed) != 1 || !strings.Contains(f.Assumed[0], "condenses") {
		t.Errorf("%v, %q, %v", f.Value, f.Assumed, err)
	}
}

func TestAirThatCanNotBeIsRefused(t *testing.T) {
	for _, c := range []struct{ rh, out, in, g float64 }{
		{-1, 0, 20, 0},
		{101, 0, 20, 0},
		{50, -41, 20, 0},
		{50, 0, 61, 0},
		{50, 0, 20, -1},
		{50, 0, 20, 101},
		{math.NaN(), 0, 20, 0},
		{50, math.NaN(), 20, 0},
		{50, 0, math.NaN(), 0},
		{50, 0, 20, math.NaN()},
	} {
		if _, err := IndoorRH(c.rh, c.out, c.in, c.g); err == nil || !strings.Contains(err.Error(), "write") {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

func TestWarmingAirDriesIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rh := rapid.Float64Range(1, 100).Draw(t, "rh")
		out := rapid.Float64Range(-30, 30).Draw(t, "out")
		warm, err := IndoorRH(rh, out, out+5, 0)
		if err != nil || !(warm.Value < rh) || !(warm.Value > 0) {
			t.Fatalf("%v %% becomes %v, %v", rh, warm.Value, err)
		}
	})
}
