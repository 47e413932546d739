package pipe

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/trade/table"
)

// inch returns decimal inches as an exact length.
func inch(t *testing.T, text string) length.Length {
	t.Helper()
	l, err := length.Parse(text, length.In)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func size(t *testing.T, id string) Size {
	t.Helper()
	s, err := Lookup(id)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func fitting(t *testing.T, id string, k Kind) Fitting {
	t.Helper()
	f, err := size(t, id).Fitting(k)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestSizesAreFoundHoweverTheyAreWritten(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"3/4", "3/4"},
		{" 3/4 ", "3/4"},
		{"1-1/4", "1-1/4"},
		{"1 1/4", "1-1/4"},
		{"DN20", "DN20"},
		{"dn20", "DN20"},
		{"DN 20", "DN20"},
		{"4", "4"},
	} {
		if got, err := Lookup(c.text); err != nil || got.ID != c.want {
			t.Errorf("%q is %q (%v), want %q", c.text, got.ID, err, c.want)
		}
	}
}

func TestAnUnknownSizeListsNearOnes(t *testing.T) {
	for _, c := range []struct{ text, near string }{
		{"3/5", "3/4"},
		{"DN21", "DN20"},
		{"20", "DN20"},
		{"1-1/8", "1-1/4"},
		{"", "1"},
	} {
		_, err := Lookup(c.text)
		var unknown *table.UnknownError
		if !errors.As(err, &unknown) || unknown.Kind != "pipe size" || unknown.ID != c.text {
			t.Errorf("%q: error %v", c.text, err)
			continue
		}
		if !slices.Contains(unknown.Near, c.near) || !strings.Contains(err.Error(), c.near) {
			t.Errorf("%q: %v does not name %s", c.text, err, c.near)
		}
	}
}

func TestThereAreThirteenNPSAndTwelveDNSizesFromThinToThick(t *testing.T) {
	want := "1/8 1/4 3/8 1/2 3/4 1 1-1/4 1-1/2 2 2-1/2 3 3-1/2 4 " +
		"DN6 DN8 DN10 DN15 DN20 DN25 DN32 DN40 DN50 DN65 DN80 DN100"
	if got := strings.Join(Sizes(), " "); got != want {
		t.Fatalf("sizes %s", got)
	}
	for i, id := range Sizes() {
		if i > 0 && size(t, id).Standard == size(t, Sizes()[i-1]).Standard && size(t, id).OD <= size(t, Sizes()[i-1]).OD {
			t.Errorf("%s is no thicker than %s", id, Sizes()[i-1])
		}
	}
	Sizes()[0] = "spoilt"
	if Sizes()[0] != "1/8" {
		t.Error("the caller can spoil the list of sizes")
	}
}

func TestEverySizeIsComplete(t *testing.T) {
	for _, id := range Sizes() {
		s := size(t, id)
		for _, d := range []struct {
			name string
			l    length.Length
		}{
			{"outside diameter", s.OD},
			{"wall", s.Wall},
			{"bore", s.Bore},
			{"pitch", s.Pitch},
			{"engagement", s.Engagement},
			{"hand-tight", s.HandTight},
			{"root", s.Root},
			{"close nipple", s.CloseNipple},
		} {
			if d.l <= 0 || d.l >= 200*length.Millimetre {
				t.Errorf("%s: %s is %v mm", id, d.name, d.l.MM())
			}
		}
		if s.Bore+2*s.Wall != s.OD || s.Root <= s.Bore || s.Root >= s.OD {
			t.Errorf("%s: bore %v, root %v and outside %v do not fit together", id, s.Bore, s.Root, s.OD)
		}
		if s.CloseNipple < 2*s.Engagement {
			t.Errorf("%s: a close nipple of %v mm is used up by two engagements", id, s.CloseNipple.MM())
		}
		if !(s.MassPerMetre > 0) || s.Nominal == "" || s.Assumed == "" || s.Source.Title == "" || s.ThreadSource.Title == "" {
			t.Errorf("%s lacks mass, nominal size, assumption or source: %+v", id, s)
		}
	}
}

// From the tables as printed: ASME B36.10M, ASME B1.20.1 Table 2, normal engagement of pipefitting handbooks (from
// memory); EN 10255 medium series, ISO 7-1, EN 10242 a − z (from memory).
func TestDimensionsAreThoseOfTheTables(t *testing.T) {
	for _, c := range []struct {
		id                            string
		od, wall, engagement, handMM  length.Length
		pitchNM                       length.Length
		massKgPerM, toleranceKgPerM   float64
		standard                      Standard
		threadsPerInch, closeNippleIn float64
	}{
		{"1/2", inch(t, "0.84"), inch(t, "0.109"), inch(t, "1/2"), inch(t, "0.32"), 1_814_286, 1.265, 0.001, NPT, 14, 1.125},
		{"3/4", inch(t, "1.05"), inch(t, "0.113"), inch(t, "9/16"), inch(t, "0.339"), 1_814_286, 1.682, 0.001, NPT, 14, 1.375},
		{"1", inch(t, "1.315"), inch(t, "0.133"), inch(t, "11/16"), inch(t, "0.4"), 2_208_696, 2.500, 0.001, NPT, 11.5, 1.5},
		{"DN15", 21_300_000, 2_600_000, 13_000_000, 8_200_000, 1_814_286, 1.21, 1e-9, ISO7, 14, 1.125},
		{"DN20", 26_900_000, 2_600_000, 15_000_000, 9_500_000, 1_814_286, 1.56, 1e-9, ISO7, 14, 1.375},
		{"DN25", 33_700_000, 3_200_000, 17_000_000, 10_400_000, 2_309_091, 2.41, 1e-9, ISO7, 11, 1.5},
	} {
		s := size(t, c.id)
		if s.OD != c.od || s.Wall != c.wall || s.Engagement != c.engagement || s.HandTight != c.handMM {
			t.Errorf("%s: outside %v, wall %v, engagement %v, hand-tight %v", c.id, s.OD, s.Wall, s.Engagement, s.HandTight)
		}
		if s.Pitch != c.pitchNM || s.ThreadsPerInch != c.threadsPerInch || s.Standard != c.standard {
			t.Errorf("%s: pitch %d nm at %v threads, %s", c.id, s.Pitch, s.ThreadsPerInch, s.Standard)
		}
		if math.Abs(s.MassPerMetre-c.massKgPerM) > c.toleranceKgPerM || s.CloseNipple.Inches() != c.closeNippleIn {
			t.Errorf("%s: %v kg/m, close nipple %v in", c.id, s.MassPerMetre, s.CloseNipple.Inches())
		}
	}
}

// Every pitch times the threads per inch is an inch, to the rounding of one nanometre a thread.
func TestPitchesAddUpToAnInch(t *testing.T) {
	for _, id := range Sizes() {
		s := size(t, id)
		if off := math.Abs(float64(s.Pitch)*s.ThreadsPerInch - float64(length.Inch)); off > 0.5*s.ThreadsPerInch {
			t.Errorf("%s: %v pitches miss the inch by %v nm", id, s.ThreadsPerInch, off)
		}
		if got := s.MakeUp(2); (got - 2*s.Pitch).Abs() > 1 {
			t.Errorf("%s: two turns make up %v, want %v", id, got, 2*s.Pitch)
		}
	}
}

func TestMassGoesWithLength(t *testing.T) {
	s := size(t, "1")
	if got, want := s.Mass(3*length.Metre), 3*s.MassPerMetre; math.Abs(got-want) > 1e-12 {
		t.Errorf("3 m weigh %v kg, want %v", got, want)
	}
}

func TestDNSizesSayWhatTheyBorrow(t *testing.T) {
	for _, c := range []struct{ id, want string }{
		{"3/4", "normal engagement, from memory"},
		{"DN20", "make-up 15 mm: a − z of EN 10242, from memory"},
		{"DN20", "close nipple 34.92 mm: no EN row"},
		{"DN80", "make-up 25.4 mm: no EN 10242 row, that of the NPT thread"},
	} {
		if got := size(t, c.id).Assumed; !strings.Contains(got, c.want) {
			t.Errorf("%s assumes %q, want %q in it", c.id, got, c.want)
		}
	}
}

func FuzzLookup(f *testing.F) {
	for _, seed := range append(Sizes(), "", "dn", "DN 2 0", "3 / 4", "⅜", "1\x00", strings.Repeat("9", 99)) {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, id string) {
		s, err := Lookup(id)
		if (err == nil) != (s.ID != "") {
			t.Fatalf("%q: size %q beside error %v", id, s.ID, err)
		}
		if err == nil {
			again, err := Lookup(s.ID)
			if err != nil || again != s {
				t.Fatalf("%q is %q, which is not found by its own id", id, s.ID)
			}
		}
	})
}
