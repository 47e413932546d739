package length_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

func TestMillimetresAreWrittenAsShortNumbers(t *testing.T) {
	// By hand: 1 in = 25.4 mm exactly; 1/64 in = 0.396875 mm; 42 in = 1066.8 mm.
	for l, want := range map[length.Length]string{
		0: "0", 1: "0.000001", -1: "-0.000001", length.Inch: "25.4", length.Inch / 64: "0.396875", 42 * length.Inch: "1066.8",
		-18 * length.Millimetre: "-18", 100 * length.Millimetre: "100", length.Max: "1000000", -length.Max: "-1000000",
	} {
		text, err := json.Marshal(length.Millimetres(l))
		if err != nil || string(text) != want {
			t.Errorf("%d nm is written %s, %v; want %s", l, text, err, want)
		}
	}
}

func TestALengthOfMoreThanAKilometreIsNotWritten(t *testing.T) {
	for _, l := range []length.Length{length.Max + 1, -length.Max - 1, math.MaxInt64, math.MinInt64} {
		if text, err := json.Marshal(length.Millimetres(l)); err == nil {
			t.Errorf("%d nm is written %s", l, text)
		}
	}
}

func TestMillimetresInAFileAreReadHoweverTheNumberIsWritten(t *testing.T) {
	for text, want := range map[string]length.Length{
		"0": 0, "-0": 0, "25.4": length.Inch, "25.400000": length.Inch, "2.54e1": length.Inch, "254E-1": length.Inch,
		"1e-6": 1, "1e6": length.Max, "1e+0006": length.Max, "0e99": 0,
	} {
		var l length.Millimetres
		if err := json.Unmarshal([]byte(text), &l); err != nil || length.Length(l) != want {
			t.Errorf("%s is read as %d nm, %v; want %d", text, l, err, want)
		}
	}
}

func TestWhatIsNoNumberOfMillimetresIsRefusedAndChangesNothing(t *testing.T) {
	for _, text := range []string{
		`1e99`, `1e999999`, `1e-999999999999`, `0.0000001`, `1000000.000001`, `-1000001`, `12.3456789`,
		`"12"`, `""`, `null`, `true`, `[12]`, `{}`, `"12 mm"`, "12." + strings.Repeat("0", 30),
	} {
		l := length.Millimetres(7)
		if err := json.Unmarshal([]byte(text), &l); err == nil || !strings.Contains(err.Error(), "is no length: it must be") || l != 7 {
			t.Errorf("%s is read as %d nm, %v", text, l, err)
		}
	}
	var l length.Millimetres
	if err := l.UnmarshalJSON([]byte(` "12"`)); err == nil {
		t.Error("a number in quotes is read behind a space")
	}
}

func TestMillimetresComeBackToTheNanometre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := length.Millimetres(rapid.Int64Range(-int64(length.Max), int64(length.Max)).Draw(t, "nm"))
		text, err := json.Marshal(l)
		if err != nil {
			t.Fatal(err)
		}
		var back length.Millimetres
		if err := json.Unmarshal(text, &back); err != nil || back != l {
			t.Fatalf("%d nm is written %s and read as %d, %v", l, text, back, err)
		}
	})
}
