package answer

import (
	"errors"
	"fmt"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rodwright/figure"
	"rodwright/length"
)

func TestTheAnswerStandsFirstThenTheNumbersThenTheSource(t *testing.T) {
	want := `1/2 in  hole  (12.8111 mm)

  -3/32 in  change_dry  (-2.45774 mm)
  5/32 in   change_wet  (3.99253 mm)

  EMC = 1800/W · [KH/(1 − KH) + (K1·KH + 2·K1·K2·K²H²)/(1 + K1·KH + K1·K2·K²H²)]
      with T 70 F, H 30 %
      = 6.17173 %
`
	_, got, _ := call("slot", "wood=white-oak", "spacing=14.5 in", "low_rh=30%", "high_rh=60%", "temp=70F", "build_mc=8%", "shank=0.19 in")
	if d := cmp.Diff(want, got[:min(len(got), len(want))]); d != "" {
		t.Error(d)
	}
}

func TestANumberStandsWhereTheFormulaHasItsLetter(t *testing.T) {
	for _, c := range []struct {
		formula, want string
		in            Inputs
	}{
		{"ΔD = D·C·(MC2 − MC1)", "508 mm·0.00365·(10 % − 8 %)", Inputs{{"D", "508 mm"}, {"C", "0.00365"}, {"MC1", "8 %"}, {"MC2", "10 %"}}},
		{"δ = 5WL³/(384EI) [+ WL/(8GA')]", "5 · 60 N · (900 mm)³/(384 · 10 MPa · 7 mm⁴)", Inputs{{"W", "60 N"}, {"L", "900 mm"}, {"E", "10 MPa"}, {"I", "7 mm⁴"}}},
		{"δ = WL/E [+ WL/(8G)]", "2 N · 3 mm/4 MPa + 2 N · 3 mm/(8 · 5 MPa)", Inputs{{"W", "2 N"}, {"L", "3 mm"}, {"E", "4 MPa"}, {"G", "5 MPa"}}},
		{"rise = atan(w/2R)", "atan(6 mm/(2 · 4 mm))", Inputs{{"w", "6 mm"}, {"R", "4 mm"}}},
		{"outer = max(0, −dry) + gap", "max(0, −(-1 mm)) + 2 mm", Inputs{{"dry", "-1 mm"}, {"gap", "2 mm"}}},
		{"lasting sag = factor · elastic sag", "1.5 · 2 mm", Inputs{{"factor", "1.5"}, {"elastic sag", "2 mm"}}},
		{"EMC = 1800/W · KH", "with T 70 F, H 45 %", Inputs{{"T", "70 F"}, {"H", "45 %"}}},
		{"cut = C − (A1 − e)", "14 − (2 − 1)", Inputs{{"C", "14"}, {"A1, tee", "2"}, {"e", "1"}}},
		{"n · part ≤ stock", "with part 3, stock 9", Inputs{{"part", "3"}, {"stock", "9"}}},
		{"x = y", "with z 1", Inputs{{"z", "1"}}},
		{"x = 2", "", nil},
		{"x = a + b", "1 + b, with c 2", Inputs{{"a", "1"}, {"c", "2"}}},
	} {
		got := withNumbers(c.formula, c.in)
		if c.formula == "x = a + b" { // b is a letter of the formula's own
			c.want = "with a 1, c 2"
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.formula, got, c.want)
		}
	}
}

func TestAnAnswerIsShownAsATapeIsSet(t *testing.T) {
	for _, c := range []struct {
		value    float64
		unit     figure.Unit
		imperial bool
		want     string
	}{
		{3.81, figure.MM, true, "5/32 in"}, {317.627, figure.MM, true, "12 1/2 in"}, {0.1, figure.MM, true, "under 1/64 in"}, {0, figure.MM, true, "0 in"},
		{-3.81, figure.MM, true, "-5/32 in"}, {317.627, figure.MM, false, "317.5 mm"}, {3.81, figure.MM, false, "3.8 mm"}, {0.01, figure.MM, false, "under 0.1 mm"},
		{2e12, figure.MM, true, "2000000000000 mm"}, {34.0194, figure.Kg, true, "75 lb"}, {34.0194, figure.Kg, false, "34 kg"}, {4448.2, figure.N, true, "1000 lbf"},
		{1.379, figure.MPa, true, "200 psi"}, {0.929, figure.M2, true, "10 sq ft"}, {0.929, figure.M2, false, "0.929 m²"}, {10000, figure.ML, true, "2.64 gal"},
		{1000, figure.ML, true, "1.06 qt"}, {100, figure.ML, true, "3.38 fl oz"}, {1500, figure.ML, false, "1.5 L"}, {100, figure.ML, false, "100 ml"},
		{0.4543, figure.MPerS, true, "0.454 m/s"}, {8.4627, figure.Percent, true, "8.46 %"}, {546, figure.Money, true, "546.00"}, {3, figure.Count, true, "3"},
	} {
		if got := shown(figure.Of("", c.value, c.unit, nil), c.imperial); got != c.want {
			t.Errorf("%v %s is shown as %q, want %q", c.value, c.unit, got, c.want)
		}
	}
}

func TestAFormulaInInchesIsFilledInInches(t *testing.T) {
	a := asked(t, "screw", "wood=white-oak|gauge=10|thread_in=1 in")
	for _, r := range a.Because {
		if r.Formula == "p = 15700·G²·D·L (lbf, in)" {
			if got := withNumbers(r.Formula, r.Inputs); got != "15700·0.68²·0.19 in·1 in (lbf, in)" {
				t.Error(got)
			}
			return
		}
	}
	t.Error("the withdrawal formula is not among the reasons")
}

func TestAnAnswerFollowsTheUnitsItWasAskedIn(t *testing.T) {
	for _, c := range []struct{ topic, call, want string }{
		{"nipple", "pipe=3/4|faces=2 in", "3 in"},
		{"nipple", "pipe=3/4|faces=50 mm", "76 mm"},
		{"thread", "pipe=3/4", "5/64 in"},
		{"thread", "pipe=DN20", "1.8 mm"},
		{"thread", "pipe=dn20", "1.8 mm"},
		{"pilot", "gauge=10|wood=white-oak", "9/64 in"},
	} {
		if got := asked(t, c.topic, c.call).Answers[0].Shown; got != c.want {
			t.Errorf("%s %s is shown as %s, want %s", c.topic, c.call, got, c.want)
		}
	}
}

// broken is a place that can't be written to.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("no room left") }

func TestWhatCannotBeWrittenIsNotCalledDone(t *testing.T) {
	for _, args := range [][]string{{}, {"emc", "--help"}, {"emc", "temp=70F", "rh=45%"}, {"emc", "temp=70F", "rh=45%", "--json"}, {"--json"}} {
		if code := Run(args, broken{}, &errorsText{}); code != Undone {
			t.Errorf("%v: exit %d, want %d", args, code, Undone)
		}
	}
}

type errorsText struct{}

func (*errorsText) Write(b []byte) (int, error) { return len(b), nil }

func TestAFigureThatIsNoNumberIsNeverAnswered(t *testing.T) {
	var w work
	zero := 0.0
	w.answer("change", figure.Of("", 1/zero, figure.MM, nil))
	if _, err := w.done("movement", true); err == nil {
		t.Error("an infinite change was answered")
	}
}

func ExampleAsk() {
	a, err := Ask("pipe-cut", map[string]string{"pipe": "3/4", "between": "14 in", "end_a": "tee", "end_b": "tee"})
	if err != nil {
		fmt.Println(err)
		return
	}
	cut := a.Answers[0]
	fmt.Println(cut.Name, length.FromMM(cut.Value.Number).Inches(), "in, set", cut.Shown)
	// Output:
	// cut 12.505 in, set 12 1/2 in
}

func ExampleRun() {
	Run([]string{"stand-up", "length=82 in", "width=44 in"}, os.Stdout, os.Stderr)
	// Output:
	// 93 1/16 in  needed  (2363.7 mm)
	//
	//   needed = √(l² + w²)
	//          = √((2082.8 mm)² + (1117.6 mm)²)
	//          = 2363.7 mm
	//   source: Pythagoras
	//   holds: a piece carried on its side and stood up about its lower edge
	//
	//   caution: two people for anything over 23 kg or longer than an arm's span; mind lamps and pipes under the ceiling
}
