package quantity

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/length"
)

// Factors are those of NIST Special Publication 811 (2008), appendix B.8, from memory, to the digits printed
// there; degrees and products are arithmetic on them.
func TestEveryUnitOfTheBenchIsReadInItsBaseUnit(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		want float64
	}{
		{"20 1/4 in", Length, 514.35},
		{`1' 2 3/8"`, Length, 365.125},
		{"6 ft", Length, 1828.8},
		{"900mm", Length, 900},
		{"0.9 m", Length, 900},
		{"0", Length, 0},
		{"8/4", Rough, 50.8},
		{"5/4", Rough, 31.75},
		{"16/4", Rough, 101.6},
		{"1 1/4 in", Rough, 31.75},
		{"32 mm", Rough, 32},
		{"80lb", Mass, 36.2873896},
		{"12 oz", Mass, 0.340194},
		{"250 g", Mass, 0.25},
		{"80 lbf", Force, 355.8577},
		{"80 lb", Force, 355.8577}, // a mass stands for its weight
		{"10 kg", Force, 98.0665},
		{"1.2 kN", Force, 1200},
		{"200 psi", Pressure, 1.3789515},
		{"1.58e6 psi", Pressure, 10893.716},
		{"30 ksi", Pressure, 206.84272},
		{"12.5 GPa", Pressure, 12500},
		{"1400 kPa", Pressure, 1.4},
		{"70F", Temperature, 21.1111111},
		{"-4 F", Temperature, -20},
		{"−20 °C", Temperature, -20},
		{"2.25 gal", Volume, 8517.1765},
		{"1 qt", Volume, 946.35295},
		{"8 floz", Volume, 236.58824},
		{"8 fl oz", Volume, 236.58824},
		{"1.5 L", Volume, 1500},
		{"10 sqft", Area, 0.9290304},
		{"2548 sqin", Area, 1.64386768},
		{"91 in x 28 in", Area, 1.64386768},
		{"2 m × 500 mm", Area, 1},
		{"1.1 g/ml", Density, 1100},
		{"43 lb/ft3", Density, 688.79378},
		{"20 in/s", Speed, 0.508},
		{"125 sqft/qt", Coverage, 12.2711934},
		{"500 sqft/gal", Coverage, 12.2711934},
		{"40 lb/1000sqft", Spread, 195.29708},
		{"45%", Percent, 45},
		{"8 1/2 %", Percent, 8.5},
		{"420.50", Money, 420.5},
		{"4", Count, 4},
		{"0.9", Ratio, 0.9},
		{"10 %", Ratio, 0.1},
		{"2:1", Mix, 2},
		{"100:50", Mix, 2},
		{"3", Mix, 3},
		{"2.5 : 1", Mix, 2.5},
		{"90 min", Time, 1.5},
		{"2 d", Time, 48},
		{"#10", Gauge, 10},
		{"10", Gauge, 10},
		{"0.03704 in4", Inertia, 15417.2105}, // 0.03704 · 25.4⁴ = 0.03704 · 416231.4256
		{"2 in⁴", Inertia, 832462.8512},
		{"15400 mm4", Inertia, 15400},
		{"1.54 cm4", Inertia, 15400}, // a centimetre is ten millimetres, to the fourth power
	} {
		t.Run(fmt.Sprint(c.kind, " ", c.text), func(t *testing.T) {
			v, err := Parse(c.text, c.kind)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(v.Number-c.want) > 5e-7*math.Max(1, math.Abs(c.want)) {
				t.Errorf("%.9g %s, want %.9g", v.Number, c.kind.Base(), c.want)
			}
		})
	}
}

func TestAnAmountKeepsWhatItCounts(t *testing.T) {
	for _, c := range []struct {
		text string
		unit figure.Unit
		want float64
	}{
		{"20 bf", figure.BoardFeet, 20}, {"20 board feet", figure.BoardFeet, 20}, {"20", figure.Count, 20}, {"14 ft", figure.MM, 4267.2},
		{"32 sqft", figure.M2, 2.97289728}, {"1 qt", figure.ML, 946.352946}, {"3 kg", figure.Kg, 3},
	} {
		v, err := Parse(c.text, Amount)
		if err != nil || v.Unit != c.unit || math.Abs(v.Number-c.want) > 1e-9*c.want {
			t.Errorf("%q: %v %q, %v; want %v %q", c.text, v.Number, v.Unit, err, c.want, c.unit)
		}
	}
}

func TestALengthIsExactBesideItsNumber(t *testing.T) {
	v, err := Parse("14 3/8 in", Length)
	if err != nil || v.Length != 365_125*length.Micrometre {
		t.Errorf("14 3/8 in is %v, %v", v.Length, err)
	}
}

func TestTheSystemOfUnitsIsRemembered(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		want bool
	}{
		{"20 in", Length, true}, {`3' 2"`, Length, true}, {"5/4", Rough, true}, {"500 mm", Length, false}, {"0.5 m", Length, false},
		{"80 lb", Force, true}, {"350 N", Force, false}, {"70 F", Temperature, true}, {"21 C", Temperature, false}, {"10 in x 5 in", Area, true}, {"1 m x 1 m", Area, false},
	} {
		if v, err := Parse(c.text, c.kind); err != nil || v.Imperial != c.want {
			t.Errorf("%q: imperial %v, %v", c.text, v.Imperial, err)
		}
	}
}

func TestAWrongValueSaysWhatIsWrongAndWhatIsTaken(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		says string
	}{
		{"", Length, "nothing"},
		{"20", Length, "unit is missing"},
		{"14 3/8", Length, "unit is missing"},
		{"20 kg", Length, "unit of a mass"},
		{"20 furlongs", Length, "character"},
		{"20 in 3", Length, "character"},
		{"8/5", Rough, "unit is missing"},
		{"80 in", Mass, "unit of a length"},
		{"80 lbf", Mass, "unit of a force"},
		{"80", Mass, "unit is missing"},
		{"80 psi", Force, "unit of a pressure"},
		{"200 lb", Pressure, "unit of a mass"},
		{"70", Temperature, "unit is missing"},
		{"70 K", Temperature, "is not one of C, F"},
		{"1 m2", Volume, "unit of an area"},
		{"1 gal", Area, "unit of a volume"},
		{"10 in x", Area, "second side"},
		{"x 10 in", Area, "first side"},
		{"10 x 5 in", Area, "first side: the unit is missing"},
		{"45", Percent, "unit is missing"},
		{"45 in", Percent, "unit of a length"},
		{"420 dollars", Money, "which is plain"},
		{"2.5", Count, "whole number"},
		{"two", Count, "a number is missing"},
		{"10.5", Gauge, "whole number"},
		{"0.037", Inertia, "unit is missing (in4, mm4, cm4)"},
		{"0.037 in", Inertia, "unit of a length"},
		{"0.037 in4", Length, "unit of a second moment"},
		{"2 %", Mix, "which is plain"},
		{"2:0", Mix, "above nought"},
		{"a:b", Mix, "before the colon"},
		{"2:b", Mix, "behind the colon"},
		{"20 psi", Amount, "unit of a pressure"},
		{"1e15", Ratio, "too large"},
		{"NaN", Ratio, "a number is missing"},
		{"Inf", Ratio, "a number is missing"},
		{"1,5 kg", Mass, "unit"},
	} {
		t.Run(fmt.Sprint(c.kind, " ", c.text), func(t *testing.T) {
			v, err := Parse(c.text, c.kind)
			var e *Error
			if !errors.As(err, &e) {
				t.Fatalf("read as %v, error %v", v, err)
			}
			for _, want := range []string{c.says, fmt.Sprintf("got %q", c.text), c.kind.String(), c.kind.Example()} {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("%q does not say %q", err, want)
				}
			}
		})
	}
}

func TestEveryKindReadsItsOwnExamplesAndUnits(t *testing.T) {
	for _, k := range Kinds() {
		examples := strings.NewReplacer(" or ", "|", ", ", "|").Replace(k.Example())
		for text := range strings.SplitSeq(examples, "|") {
			if _, err := Parse(text, k); err != nil {
				t.Errorf("%s: its own example: %v", k, err)
			}
		}
		if Units(k) == "" {
			t.Errorf("%s has no units", k)
		}
	}
	for _, u := range units {
		for s := range strings.SplitSeq(u.symbols, "|") {
			if _, err := Parse("3 "+s, u.kind); err != nil {
				t.Errorf("%s in %q: %v", u.kind, s, err)
			}
		}
	}
}

func TestALengthPrintedToASixtyFourthIsReadBack(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		l := length.Length(rapid.Int64Range(0, 64*1000).Draw(r, "64ths")) * length.Inch / 64
		v, err := Parse(length.SixtyFourth.Text(l), Length)
		if err != nil || v.Length != l {
			r.Errorf("%s is read as %v, %v", length.SixtyFourth.Text(l), v.Length, err)
		}
	})
}

func TestTwiceTheNumberIsTwiceTheValue(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		u := rapid.SampledFrom(units[:]).Draw(r, "unit")
		symbol, _, _ := strings.Cut(u.symbols, "|")
		n := rapid.IntRange(1, 1000).Draw(r, "n")
		one, err1 := Parse(fmt.Sprint(n, " ", symbol), u.kind)
		two, err2 := Parse(fmt.Sprint(2*n, " ", symbol), u.kind)
		if err := errors.Join(err1, err2); err != nil {
			r.Fatal(err)
		}
		if got, want := two.Number-u.zero, 2*(one.Number-u.zero); math.Abs(got-want) > 1e-12*math.Abs(want) {
			r.Errorf("2 × %d %s is %v, want %v", n, symbol, got, want)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, k := range Kinds() {
		f.Add(k.Example(), uint8(k))
	}
	for _, s := range []string{"", "-", "1e99999", "0/0 in", "9999999999999999999999 mm", "x", ":", "/4", "−−1 C", "1 in x 1 in x 1 in", "½", "3½ kg", "\x00", "1e-99 m2", "#"} {
		f.Add(s, uint8(0))
		f.Add(s, uint8(Amount))
	}
	f.Fuzz(func(t *testing.T, text string, kind uint8) {
		k := Kind(int(kind) % len(Kinds()))
		v, err := Parse(text, k)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) {
				t.Fatalf("%T", err)
			}
			return
		}
		if math.IsNaN(v.Number) || math.IsInf(v.Number, 0) {
			t.Errorf("%q is read as %v", text, v.Number)
		}
		if v.Kind != k || v.Text != strings.TrimSpace(text) {
			t.Errorf("%q: kind %v text %q", text, v.Kind, v.Text)
		}
	})
}

func ExampleParse() {
	v, _ := Parse("20 1/4 in", Length)
	fmt.Println(v.Number, v.Kind.Base())
	_, err := Parse("20 kg", Length)
	fmt.Println(err)
	// Output:
	// 514.35 mm
	// got "20 kg": kg is the unit of a mass, wanted is one of in, ft, mm, cm, m; takes a length, for example 20 1/4 in, 1' 2 3/8" or 365 mm
}
