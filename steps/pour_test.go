package steps_test

import (
	"strings"
	"testing"

	"rodwright/shop"
	"rodwright/steps"
)

const voided = `
voids:
  knots: {in: deep board, size: 3 × 1 1/2 in, depth: 1/2 in, count: 2}
  crack: {in: high board, size: 5 × 1/4 in, depth: 1 1/16 in, walls: straight, resin: epoxy-deep-pour}
`

// By hand: the shallowest pour that sources allow a table-top resin is 1/8 in, so 1/2 in takes 4; a deep pour is
// 1/2 in at least, so 1 1/16 in takes 3. 34.75 ml at the ratio of the class, see the take-off's own test.
func TestVoidsAreFilledInPoursAfterShapingAndBeforeSanding(t *testing.T) {
	s := shop.Sample()
	r, list := resolved(t, append(starter(t, "stepped-stand"), voided...), s)
	w, err := steps.Plan(r, list, nil, s)
	if err != nil {
		t.Fatal(err)
	}
	pours := ofWork(w, "pour")
	if len(pours) != 2 || !strings.Contains(pours[0].Title, "4 pours") || !strings.Contains(pours[1].Title, "3 pours") {
		t.Fatalf("%d steps of pouring: %+v", len(pours), pours)
	}
	for _, st := range pours {
		for _, other := range append(ofWork(w, "profile"), ofWork(w, "notch")...) {
			if other.Parts[0] == st.Parts[0] && other.N > st.N {
				t.Errorf("step %d shapes %s after it was filled in step %d", other.N, st.Parts[0], st.N)
			}
		}
		if sand := ofWork(w, "sand"); sand[0].N < st.N || st.WaitH < 24 {
			t.Errorf("%s: sanded in step %d, wait %v h", st.Title, sand[0].N, st.WaitH)
		}
		if !strings.Contains(strings.Join(st.Cautions, " "), "sensitise") {
			t.Errorf("%s: cautions %q", st.Title, st.Cautions)
		}
	}
	if lines := strings.Join(pours[0].Measures, "; "); !strings.Contains(lines, "34.7 ml in all") && !strings.Contains(lines, "34.8 ml in all") {
		t.Errorf("how much is mixed: %s", lines)
	}
	if lines := strings.Join(pours[1].Measures, "; "); !strings.Contains(lines, "tape the show face") || strings.Contains(strings.Join(pours[0].Measures, "; "), "show face") {
		t.Errorf("the crack goes right through and the knots do not: %s", lines)
	}
}

func TestCautionsAreSentences(t *testing.T) {
	s := shop.Sample()
	r, list := resolved(t, append(starter(t, "stepped-stand"), voided...), s)
	w, err := steps.Plan(r, list, nil, s)
	if err != nil {
		t.Fatal(err)
	}
	for _, st := range w.Steps {
		for _, c := range st.Cautions {
			if c[:1] != strings.ToUpper(c[:1]) || !strings.ContainsAny(c[len(c)-1:], ".!?") {
				t.Errorf("step %d: %q", st.N, c)
			}
		}
	}
}
