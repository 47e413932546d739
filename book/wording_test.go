package book

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

func said(to length.Fineness, names map[string]string) *wording {
	return &wording{to: to, names: replacer(names)}
}

// The conversions are those of NIST Special Publication 811, 2008 edition, Appendix B.8: 1 in = 25.4 mm exactly,
// 1 lb = 0.45359237 kg, 1 lbf = 4.448222 N, 1 psi = 6894.757 Pa, t/°C = (t/°F − 32)/1.8; from memory.
func TestMeasuresAreToldInTheReadersSystem(t *testing.T) {
	for _, c := range []struct {
		to         length.Fineness
		says, want string
	}{
		{length.WholeMM, "height 0.97 in, from memory", "height 24.6 mm, from memory"},
		{length.WholeMM, "clamps 8 to 12 in apart", "clamps 203 to 305 mm apart"},
		{length.WholeMM, "bow 1/8 in over 96 in", "bow 3.2 mm over 2438 mm"},
		{length.WholeMM, "1 1/2 in, 14 3/8 in", "38 mm, 365 mm"},
		{length.WholeMM, "a stick of 21 ft", "a stick of 6401 mm"},
		{length.WholeMM, "flash point 100 to 140 F; at -4 F", "flash point 38 to 60 °C; at -20 °C"},
		{length.WholeMM, "100 psi", "0.689 MPa"},
		{length.WholeMM, "33 kg, 20 N", "33 kg, 20 N"},
		{length.WholeMM, "lay A1.1 in its place; 4 in all", "lay A1.1 in its place; 4 in all"},
		{length.WholeMM, "C1.12 in F3", "C1.12 in F3"},
		{length.Sixteenth, "at 50 cm reach", "at 19 11/16 in reach"},
		{length.Sixteenth, "1067 × 483 mm", "42 × 19 in"},
		{length.Sixteenth, "set the joints -0.13 mm apart", "set the joints -0.005 in apart"},
		{length.Sixteenth, "200 g/m² at 1.5 m/s, 3 m²", "200 g/m² at 1.5 m/s, 3 m²"},
		{length.Sixteenth, "33 kg is more than 23 kg", "33 kg (72.8 lb) is more than 23 kg (50.7 lb)"},
		{length.Sixteenth, "89904 N on one joint", "20200 lbf on one joint"},
		{length.Sixteenth, "from 16 to 27 C", "from 61 to 81 °F"},
		{length.Sixteenth, "1 1/2 in of 3/4 pipe", "1 1/2 in of 3/4 pipe"},
		{length.Sixteenth, "in 5 min", "in 5 min"},
	} {
		if got := said(c.to, nil).say(c.says); got != c.want {
			t.Errorf("%q in %v: %q, want %q", c.says, c.to, got, c.want)
		}
	}
}

func TestNamesComeBeforeMeasuresTheLongestFirst(t *testing.T) {
	w := said(length.WholeMM, map[string]string{
		"yard 96 in × 6 in, 1": "board 1", "yard 96 in × 6 in, 12": "board 2", "pipe 3/4 21 ft": "21 ft stick of pipe 3/4", "white-oak": "white oak",
	})
	const says = "2 in of yard 96 in × 6 in, 12; yard 96 in × 6 in, 1 of white-oak; from pipe 3/4 21 ft, 3 in off"
	const want = "51 mm of board 2; board 1 of white oak; from 21 ft stick of pipe 3/4, 76 mm off"
	if got := w.say(says); got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

func TestALengthToldInTheOtherSystemIsWithinHalfAStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.SampledFrom(length.Finenesses()).Draw(t, "from")
		to := rapid.SampledFrom(length.Finenesses()).Draw(t, "to")
		l := from.Round(length.Length(rapid.Int64Range(int64(length.Millimetre), int64(5*length.Metre)).Draw(t, "length")))
		text := said(to, nil).say("it is " + from.Text(l) + " long")
		got, err := length.Parse(strings.TrimSuffix(strings.TrimPrefix(text, "it is "), " long"), length.MM)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		if off := (got - l).Abs(); off > (to.Step+1)/2 {
			t.Fatalf("%s is told as %q, off by %v mm", from.Text(l), text, off.MM())
		}
	})
}

func FuzzSay(f *testing.F) {
	f.Add("height 0.97 in, 8 to 12 in, -4 F")
	f.Add("\x02 1/0 in \x01 3 ft")
	f.Fuzz(func(t *testing.T, text string) {
		for _, to := range []length.Fineness{length.WholeMM, length.Sixteenth} {
			w := said(to, map[string]string{"oak-1": "oak 1"})
			if got := w.say(text); !strings.ContainsAny(text, "0123456789\x01\x02") && got != text {
				t.Errorf("%q became %q", text, got)
			}
		}
	})
}

func TestDurationsAreToldAsACraftsmanSaysThem(t *testing.T) {
	for hours, want := range map[float64]string{
		0.02: "5 min", 0.42: "25 min", 1: "1 h", 1.9: "1 h 55 min", 9.99: "10 h", 24: "24 h", 36: "36 h", 48: "2 days", 168: "7 days", 504: "21 days",
	} {
		if got := duration(hours); got != want {
			t.Errorf("%v h: %q, want %q", hours, got, want)
		}
	}
}

func TestTagsAndStepsThatFollowEachOtherAreToldAsRuns(t *testing.T) {
	for _, c := range []struct{ tags, want string }{
		{"C1.1,C1.2,C1.3,F1.2", "C1.1–C1.3, F1.2"},
		{"C1.1,C1.2,C2.1", "C1.1, C1.2, C2.1"},
		{"C1,C2,C3,F1,F2", "C1–C3, F1, F2"},
		{"C9,C10,C11", "C9–C11"},
		{"H1", "H1"},
		{"", ""},
	} {
		if got := spans(strings.Split(c.tags, ",")); got != c.want {
			t.Errorf("%s: %q, want %q", c.tags, got, c.want)
		}
	}
	for _, c := range []struct {
		steps []int
		want  string
	}{{[]int{3}, "step 3"}, {[]int{3, 4}, "steps 3 and 4"}, {[]int{1, 3, 4, 5, 9}, "steps 1, 3–5 and 9"}} {
		if got := numbered(c.steps); got != c.want {
			t.Errorf("%v: %q, want %q", c.steps, got, c.want)
		}
	}
}

func TestACapitalIsThatOfItsAlphabet(t *testing.T) {
	for text, want := range map[string]string{"étagère": "Étagère", "": "", "≈ 3": "≈ 3", "\xff": "\xff"} {
		if got := capital(text); got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
}
