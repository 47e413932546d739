package wood

import (
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/trade/table"
)

// testTable reads a table of testdata.
func testTable(t *testing.T, name string) []table.Row {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := table.Parse(string(text))
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func celsius(f float64) float64 { return (f - 32) / 1.8 }

func emcOf(t *testing.T, tempC, rh float64) float64 {
	t.Helper()
	f, err := EMC(tempC, rh)
	if err != nil {
		t.Fatal(err)
	}
	return f.Value
}

// Wood Handbook FPL-GTR-282 (2021) Table 4-2, all 209 values, from memory; the equation, 4-5, was read.
func TestEMCIsWithin7HundredthsOfTheWholeTable(t *testing.T) {
	rows := testTable(t, "emc.csv")
	if len(rows) != 209 {
		t.Fatalf("%d values", len(rows))
	}
	for _, r := range rows {
		f, rh := r.Float("temp_f"), r.Float("rh_pct")
		got := emcOf(t, celsius(f), rh)
		if off := got - r.Float("emc_table_pct"); math.Abs(off) > 0.07 {
			t.Errorf("%v °F, %v %%: %.3f, table %v", f, rh, got, r.Float("emc_table_pct"))
		}
		if want := r.Float("emc_eq45_f_pct"); math.Abs(got-want) > 0.005+1e-9 {
			t.Errorf("%v °F, %v %%: %.4f, the equation worked apart %v", f, rh, got, want)
		}
	}
}

// Wood Handbook Table 4-2, from memory: 70 °F. Trade arithmetic by eq. 4-5: 85 % at 72.5 °F is 17.895 %.
func TestEMCAtRoomTemperature(t *testing.T) {
	for _, c := range []struct{ f, rh, want, near float64 }{
		{70, 30, 6.2, 0.05},
		{70, 50, 9.2, 0.05},
		{70, 65, 12.0, 0.05},
		{72.5, 85, 17.895, 0.005},
	} {
		if got := emcOf(t, celsius(c.f), c.rh); math.Abs(got-c.want) > c.near {
			t.Errorf("%v °F, %v %%: %.4f, want %v", c.f, c.rh, got, c.want)
		}
	}
}

func TestEMCShowsItsFormulaAndInputs(t *testing.T) {
	f, err := EMC(celsius(70), 50)
	if err != nil {
		t.Fatal(err)
	}
	if f.Unit != figure.Percent || f.Formula == nil || !strings.Contains(f.Formula.Source, "eq. 4-5") || len(f.Inputs) != 2 {
		t.Fatalf("%+v", f)
	}
	if math.Abs(f.Inputs[0].Value-70) > 1e-9 || f.Inputs[0].Unit != figure.Fahrenheit || f.Inputs[1].Value != 50 {
		t.Errorf("inputs %+v", f.Inputs)
	}
}

func TestAirOutsideTheRangeIsRefused(t *testing.T) {
	for _, c := range []struct {
		name     string
		temp, rh float64
		want     string
	}{
		{"colder than the table", celsius(29), 50, "30 to 210 °F"},
		{"hotter than the table", celsius(211), 50, "30 to 210 °F"},
		{"no temperature", math.NaN(), 50, "temperature"},
		{"endless heat", math.Inf(1), 50, "temperature"},
		{"more than saturated", 20, 100.5, "0 to 100 %"},
		{"less than dry", 20, -1, "0 to 100 %"},
		{"no humidity", 20, math.NaN(), "humidity"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got, err := EMC(c.temp, c.rh); err == nil || !strings.Contains(err.Error(), c.want) || !got.Missing() {
				t.Errorf("%v, %v", got.Value, err)
			}
		})
	}
	for _, f := range []float64{30, 210} {
		if _, err := EMC(celsius(f), 50); err != nil {
			t.Errorf("%v °F is in the table: %v", f, err)
		}
	}
	if got := emcOf(t, 20, 0); got != 0 {
		t.Errorf("in dry air wood keeps %v %%", got)
	}
}

// Damper air means wetter wood at every temperature, and warmer air drier wood at the humidities of rooms.
func TestEMCRisesWithHumidityAndFallsWithTemperature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		temp := rapid.Float64Range(LowestEMCTemp, HighestEMCTemp).Draw(t, "temp")
		a := rapid.Float64Range(0, 99.9).Draw(t, "a")
		b := rapid.Float64Range(a+0.01, 100).Draw(t, "b")
		low, errA := EMC(temp, a)
		high, errB := EMC(temp, b)
		if errA != nil || errB != nil || !(low.Value < high.Value) {
			t.Fatalf("%v at %v %%, %v at %v %%", low.Value, a, high.Value, b)
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		rh := rapid.Float64Range(20, 90).Draw(t, "rh")
		temp := rapid.Float64Range(10, 60).Draw(t, "temp")
		cool, errA := EMC(temp, rh)
		warm, errB := EMC(temp+5, rh)
		if errA != nil || errB != nil || !(warm.Value < cool.Value) {
			t.Fatalf("%v %%: %v at %v °C, %v warmer", rh, cool.Value, temp, warm.Value)
		}
	})
}

func TestMoistureContentByWeighing(t *testing.T) {
	for _, c := range []struct{ wet, dry, want float64 }{{57.6, 49.3, 16.836}, {50, 50, 0}, {30, 10, 200}} {
		if got, err := MoistureContent(c.wet, c.dry); err != nil || math.Abs(got-c.want) > 0.001 {
			t.Errorf("%v wet, %v dry: %v, %v", c.wet, c.dry, got, err)
		}
	}
	for _, c := range [][2]float64{{1, 0}, {1, 2}, {math.NaN(), 1}, {1, math.NaN()}, {1, -1}} {
		if _, err := MoistureContent(c[0], c[1]); err == nil {
			t.Errorf("%v wet, %v dry is no sample", c[0], c[1])
		}
	}
}
