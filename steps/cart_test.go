package steps_test

import (
	"slices"
	"strings"
	"testing"

	"rodwright/shop"
	"rodwright/steps"
)

// cart is a base of plywood on plate casters, with posts on it that carry a top; metric, with DN pipe.
const cart = `
rodwright: 1
piece: paint cart
unit: mm
place: {room: workshop, doors: {yard: 900 × 2000 mm}}
wood: {species: hard-maple, cut: flat, moisture: 8 %}
pipe: {standard: iso7, size: DN20}
posts:
  corner: {at: [[80, 80], [720, 80], [80, 420], [720, 420]], from: base, to: top}
panels:
  base: {length: 800 mm, width: 500 mm, sheet: birch-plywood-18, sits: [on feet, under corner posts]}
  top:  {length: 800 mm, width: 500 mm, thickness: 26 mm, grain: along length, level: 850 mm, sits: on corner posts}
feet:
  casters: {kind: plate, wheel: 3 in, under: base, inset: 70 mm, locks: 2}
holes:
  vents:  {in: top, kind: slot, at: [[250, 250], [550, 250]], size: 100 × 12 mm}
  basin:  {in: top, kind: cut-out, at: [400, 130], size: 160 × 100 mm, radius: 10 mm}
  cord:   {in: top, at: [400, 400], diameter: 45 mm}
joints:
  flange: {screw: 10 × 5/8 in, slotted: yes}
`

func cartWork(t *testing.T) *steps.Work {
	t.Helper()
	s := shop.Sample()
	r, list := resolved(t, []byte(cart), s)
	w, err := steps.Plan(r, list, nil, s)
	if err != nil {
		t.Fatal(err)
	}
	lawful(t, w, list)
	return w
}

func TestSheetGoodsAreSizedWithoutGlue(t *testing.T) {
	w := cartWork(t)
	size := ofWork(w, "size-sheet")
	if len(size) != 1 || !strings.Contains(size[0].Title, "base A1.1 from birch-plywood-18: 800 × 500 × 18 mm") {
		t.Fatalf("%+v", size)
	}
	for _, st := range w.Steps {
		if slices.Contains([]string{"acclimatise", "glue", "flatten-panel"}, st.Work) && slices.Contains(st.Parts, "A1.1") {
			t.Errorf("plywood is milled: %s", st.Title)
		}
	}
}

func TestSlotsOpeningsAndLargeHolesHaveStepsOfTheirOwn(t *testing.T) {
	w := cartWork(t)
	if st := ofWork(w, "slot")[0]; st.Settings != 1 || st.Units != 2 || !strings.Contains(st.Title, "2 × 100 × 12 mm") {
		t.Errorf("%s: %d settings", st.Title, st.Settings)
	}
	if st := ofWork(w, "cut-out")[0]; !strings.Contains(strings.Join(st.Measures, ";"), "bore the inside corners first with a 20 mm bit") {
		t.Errorf("%q", st.Measures)
	}
	// 45 mm is beyond a bit: a hole saw of 1 1/4 in depth goes through 26 mm from one face.
	if st := ofWork(w, "hole-saw")[0]; !strings.Contains(st.Title, "⌀ 45 mm") || strings.Contains(strings.Join(st.Measures, ";"), "both faces") {
		t.Errorf("%s: %q", st.Title, st.Measures)
	}
}

func TestCastersUnderABaseAreScrewedOnWithThePieceTurnedOver(t *testing.T) {
	w := cartWork(t)
	feet := ofWork(w, "foot")[0]
	if !strings.Contains(feet.Title, "Turn the piece over and fix 4 casters") || len(feet.Measures) != 4 || !strings.Contains(feet.Measures[0], "screws No.") {
		t.Errorf("%s: %q", feet.Title, feet.Measures)
	}
	for _, st := range ofWork(w, "flange") {
		if !follows(w, st.N, feet.N) {
			t.Errorf("%s comes after the casters", st.Title)
		}
	}
	if level := ofWork(w, "level")[0]; strings.Contains(strings.Join(level.Measures, ";"), "whole turn") {
		t.Error("a caster under a board is turned on a pipe")
	}
}

func TestSlottedScrewsAreSnugAndLeaveTheWoodFree(t *testing.T) {
	st := step(t, cartWork(t), "Screw top A2.1 to its 4 flanges")
	if !strings.Contains(st.Measures[0], "so that the wood can move") || !strings.Contains(st.Measures[0], "pilot 3.5 mm") {
		t.Errorf("%q", st.Measures)
	}
}

func TestTheWayOutIsNamed(t *testing.T) {
	d := ofWork(cartWork(t), "deliver")[0]
	if !slices.Contains(d.Measures, "through yard (900 × 2000 mm)") || !slices.Contains(d.Cautions, "Lock the wheels before you let go of it.") {
		t.Errorf("%q %q", d.Measures, d.Cautions)
	}
}

func TestAGlueOrFinishThatNoTableHasTakesTheShopsOwnTimes(t *testing.T) {
	s := shop.Sample()
	r, list := resolved(t, starter(t, "stepped-stand"), s)
	s.Settings.Adhesive, s.Settings.Finish = "our own hide glue", "our own oil"
	w, err := steps.Plan(r, list, nil, s)
	if err != nil {
		t.Fatal(err)
	}
	glue, coat := ofWork(w, "glue")[0], ofWork(w, "coat")[0]
	if glue.WaitH != 24 || !strings.Contains(strings.Join(glue.Assumed, ";"), "our own hide glue") {
		t.Errorf("rests %g h: %v", glue.WaitH, glue.Assumed)
	}
	if coat.WaitH != 24 || !strings.Contains(strings.Join(coat.Assumed, ";"), "our own oil") {
		t.Errorf("dries %g h: %v", coat.WaitH, coat.Assumed)
	}
}

func TestAShopWithoutClampsOrSpecialGlueIsToldTheSpacing(t *testing.T) {
	s := shop.Sample()
	s.Settings.Adhesive = "epoxy" // contact only: no force is reckoned
	g := ofWork(planned(t, "stepped-stand", s), "glue")[0]
	if !strings.Contains(strings.Join(g.Measures, ";"), "a clamp every 8 to 12 in") {
		t.Errorf("%q", g.Measures)
	}
}
