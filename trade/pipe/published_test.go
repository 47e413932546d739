package pipe

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/trade/table"
)

func mustRead(t *testing.T, text string) []table.Row {
	t.Helper()
	rows, err := table.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// inputs are the key=value pairs of a worked example.
type inputs map[string]string

func (in inputs) float(t *testing.T, key string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(in[key], 64)
	if err != nil {
		t.Fatalf("%s: %v", key, err)
	}
	return v
}

// Every row of testdata/worked_examples.csv, whose source column names the publication: ASME B36.10M and B1.20.1,
// published section properties and pipe weights, a published answer on offsets and one on pipe lengths, ISO 7-1,
// EN 10255; ASME B16.3 with handbook engagement from memory.
func TestPublishedWorkedExamples(t *testing.T) {
	text, err := os.ReadFile("testdata/worked_examples.csv")
	if err != nil {
		t.Fatal(err)
	}
	solved := map[string]func(*testing.T, inputs) float64{
		"pipe_bore":         boreOf,
		"pipe_weight":       weightOf,
		"thread_engagement": engagementOf,
		"thread_geometry":   threadOf,
		"pipe_offset":       offsetOf,
		"pipe_cut":          cutOf,
		"bspt_geometry":     rootOfBSPT,
		"en10255_mass":      massOfTube,
		"beam":              sectionOf,
	}
	rows := mustRead(t, string(text))
	if len(rows) != 28 {
		t.Fatalf("%d rows, want 28", len(rows))
	}
	for _, r := range rows {
		t.Run(r.Text("id"), func(t *testing.T) {
			in := inputs{}
			for _, pair := range r.List("inputs") {
				key, value, _ := strings.Cut(pair, "=")
				in[key] = value
			}
			solve, ok := solved[r.Text("topic")]
			if !ok {
				t.Fatalf("nothing answers %s", r.Text("topic"))
			}
			if got := solve(t, in); math.Abs(got-r.Float("expected")) > r.Float("tolerance")+1e-9 {
				t.Errorf("%v %s, %s has %v ± %v", got, r.Text("unit"), r.Source(), r.Text("expected"), r.Text("tolerance"))
			}
		})
	}
}

func tube(t *testing.T, in inputs, od, wall string) Size {
	t.Helper()
	s := Size{OD: length.FromInches(in.float(t, od)), Wall: length.FromInches(in.float(t, wall))}
	s.Bore = s.OD - 2*s.Wall
	return s
}

func boreOf(t *testing.T, in inputs) float64 {
	s := tube(t, in, "od_in", "wall_in")
	if in["sch"] == "40" {
		s = size(t, in["nps"])
	}
	return s.Bore.Inches()
}

// weightOf answers Schedule 40 from the table and Schedule 80 by the weight formula of ASME B36.10M, 10.6802 (D − t) t
// lb/ft, through the section: (D − t) t is the wall's area over π.
func weightOf(t *testing.T, in inputs) float64 {
	s := tube(t, in, "od_in", "wall_in")
	if in["sch"] != "40" {
		return 10.6802 * s.SectionArea() / (25.4 * 25.4) / math.Pi
	}
	return size(t, in["nps"]).MassPerMetre / poundPerFoot
}

// engagementOf is hand tight plus three turns, L1 + L3, which the table's normal engagement follows within
// 0.07 in.
func engagementOf(t *testing.T, in inputs) float64 {
	s := size(t, in["nps"])
	if s.HandTight != length.FromInches(in.float(t, "l1_in")) {
		t.Errorf("L1 %v in", s.HandTight.Inches())
	}
	sum := (s.HandTight + s.MakeUp(3)).Inches()
	if math.Abs(s.Engagement.Inches()-sum) > 0.07 {
		t.Errorf("engagement %v in, L1 + L3 %v", s.Engagement.Inches(), sum)
	}
	return sum
}

// threadOf answers from the thread's table; the formulas of B1.20.1 are checked on all of it by
// TestTheThreadTableObeysItsFormulas.
func threadOf(t *testing.T, in inputs) float64 {
	column := map[string]string{
		"E0": "pitch_dia_small_end_e0_in", "L2": "effective_thread_l2_in",
		"thread height": "thread_height_max_in", "E1": "pitch_dia_handtight_e1_in",
	}[in["find"]]
	for _, r := range mustRead(t, nptCSV) {
		if r.Float("threads_per_in") == in.float(t, "tpi") && (in["od_in"] == "" || r.Float("od_in") == in.float(t, "od_in")) {
			return r.Float(column)
		}
	}
	t.Fatalf("no thread like %v", in)
	return 0
}

func offsetOf(t *testing.T, in inputs) float64 {
	travel, setback, err := Offset(length.Inch, in.float(t, "angle_deg"))
	if err != nil {
		t.Fatal(err)
	}
	if strings.HasPrefix(in["find"], "travel") {
		return travel.Inches()
	}
	return setback.Inches()
}

// cutOf answers the exact cut. The rule of thumb that takes one nominal size off per end comes out 3/8 in
// short of it for 1 in pipe, which the published answer does not say.
func cutOf(t *testing.T, in inputs) float64 {
	if in["find"] == "gap between faces" {
		s := size(t, in["nps"])
		return (s.CloseNipple - 2*s.Engagement).Inches()
	}
	between := length.FromInches(in.float(t, "centre_to_centre_in"))
	c, err := CutLength(between, fitting(t, in["nps"], Tee), fitting(t, in["nps"], Elbow90))
	if err != nil {
		t.Fatal(err)
	}
	if strings.HasPrefix(in["rule"], "subtract nominal size") {
		byRule := between - 2*length.Inch
		if short := c.Cut - byRule; short != 3*length.Inch/8 {
			t.Errorf("the rule of thumb is %v in short", short.Inches())
		}
		return byRule.Inches()
	}
	return c.Cut.Inches()
}

// rootOfBSPT is major − 2·0.640327 P, which the table's minor diameter must be.
func rootOfBSPT(t *testing.T, in inputs) float64 {
	for _, r := range mustRead(t, isoCSV) {
		if r.Text("thread_size") == in["size"] {
			return r.Float("minor_dia_gauge_plane_mm")
		}
	}
	t.Fatalf("no size %s", in["size"])
	return 0
}

func massOfTube(t *testing.T, in inputs) float64 {
	s := size(t, "DN25")
	if s.OD.MM() != in.float(t, "od_mm") || s.Wall.MM() != in.float(t, "wall_mm") {
		t.Errorf("tube %v × %v mm", s.OD.MM(), s.Wall.MM())
	}
	if bySection := s.SectionArea() * SteelDensity / 1e6; math.Abs(bySection-s.MassPerMetre) > 0.009*s.MassPerMetre {
		t.Errorf("section gives %v kg/m, the table %v", bySection, s.MassPerMetre)
	}
	return s.MassPerMetre
}

func sectionOf(t *testing.T, in inputs) float64 {
	return tube(t, in, "D_in", "t_in").SectionModulus() / math.Pow(25.4, 3)
}

// The formulas of ASME B1.20.1 on all thirteen threads: E0 = D − (0.05 D + 1.1)/n, L2 = (0.80 D + 6.8)/n, E1 = E0 + L1/16,
// L3 = 3/n to 2 in and 2/n above, height 0.8/n.
func TestTheThreadTableObeysItsFormulas(t *testing.T) {
	for _, r := range mustRead(t, nptCSV) {
		d, n := r.Float("od_in"), r.Float("threads_per_in")
		turns := 3.0
		if n == 8 {
			turns = 2
		}
		for _, c := range []struct {
			column string
			want   float64
		}{
			{"pitch_dia_small_end_e0_in", d - (0.05*d+1.1)/n},
			{"effective_thread_l2_in", (0.80*d + 6.8) / n},
			{"pitch_dia_handtight_e1_in", r.Float("pitch_dia_small_end_e0_in") + r.Float("handtight_engagement_l1_in")/16},
			{"wrench_makeup_l3_in", turns / n},
			{"thread_height_max_in", 0.8 / n},
		} {
			if got := r.Float(c.column); math.Abs(got-c.want) > 0.0001 {
				t.Errorf("%s %s: %v, formula %v", r.Text("nps"), c.column, got, c.want)
			}
		}
	}
}

// Pipe of ASME B36.10M: weight 10.6802 (D − t) t lb/ft within 0.008; section properties as printed within 1 %.
func TestThePipeTableObeysItsFormulas(t *testing.T) {
	for _, r := range mustRead(t, nptCSV) {
		s := size(t, r.Text("nps"))
		d, wall := r.Float("od_in"), r.Float("wall_sch40_in")
		if got := r.Float("weight_sch40_plain_lb_per_ft"); math.Abs(got-10.6802*(d-wall)*wall) > 0.008 {
			t.Errorf("%s: %v lb/ft", s.ID, got)
		}
		for _, c := range []struct {
			column string
			got    float64
		}{
			{"section_area_sch40_in2", s.SectionArea() / math.Pow(25.4, 2)},
			{"moment_of_inertia_sch40_in4", s.SecondMoment() / math.Pow(25.4, 4)},
			{"section_modulus_sch40_in3", s.SectionModulus() / math.Pow(25.4, 3)},
		} {
			if want := r.Float(c.column); math.Abs(c.got-want) > 0.01*want {
				t.Errorf("%s %s: %v, printed %v", s.ID, c.column, c.got, want)
			}
		}
	}
}

// Common practice, no source: about half the section modulus is left at the thread root, 0.50 at 3/4 and 0.48 at 1 in.
func TestAboutHalfThePipeIsLeftAtTheThreadRoot(t *testing.T) {
	for id, want := range map[string]float64{"3/4": 0.50, "1": 0.48} {
		if got := size(t, id).RootModulusShare(); math.Abs(got-want) > 0.005 {
			t.Errorf("%s: %.4f, want %.2f", id, got, want)
		}
	}
	for _, id := range Sizes() {
		if got := size(t, id).RootModulusShare(); got < 0.4 || got > 0.7 {
			t.Errorf("%s: %.3f of the section modulus at the root", id, got)
		}
	}
}
