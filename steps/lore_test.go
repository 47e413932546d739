package steps_test

import (
	"slices"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/steps"
)

func TestWorkThatCanHurtCarriesItsCaution(t *testing.T) {
	// Usual cautions of the trade; common practice, no source, but where a line names one.
	cases := []struct{ work, says string }{
		{"rip", "Push sticks"},
		{"crosscut", "too short to hold"},
		{"cut-pipe", "machine's own instructions"},
		{"rip", "No gloves"},
		{"flatten", "Push blocks"},
		{"bore", "no loose sleeves"},
		{"hole-saw", "Clamp"},
		{"thread", "Gloves for raw threads"},
		{"deburr", "Gloves"},
		{"clean-pipe", "butyl, not nitrile"}, // acetone goes through nitrile: its safety data
		{"clean-pipe", "no flame"},
		{"descale", "zinc"},
		{"sand", "lungs"},
		{"coat-rags", "by themselves"},
		{"coat-rags", "water in a closed metal can"},
		{"anchor", "licensed"},
		{"wrench", "Vise"},
	}
	for _, c := range cases {
		if !strings.Contains(strings.Join(steps.Cautions(c.work), " "), c.says) {
			t.Errorf("%s does not say %q", c.work, c.says)
		}
	}
	if steps.Cautions("whistle") != nil {
		t.Error("whistling is cautioned against")
	}
}

func TestEveryStepOfEveryPieceHasATool(t *testing.T) {
	for _, name := range piece.Starters() {
		for _, st := range planned(t, name, shop.Defaults()).Steps {
			if st.Tool == "" {
				t.Errorf("%s, step %d, %s: no tool", name, st.N, st.Title)
			}
			if slices.Contains(st.Substitutes, st.Tool) {
				t.Errorf("%s, step %d: %s serves instead of itself", name, st.N, st.Tool)
			}
		}
	}
}

func TestTheShopsOwnToolComesFirst(t *testing.T) {
	s := shop.Defaults()
	s.Tools = []shop.Tool{{ID: "track-saw", Name: "our rail saw", Does: []string{"crosscut"}, Depth: length.Inch, Count: 1}}
	tool, instead, owned := steps.Tools("crosscut", s, nil)
	if tool != "our rail saw" || !owned || !slices.Contains(instead, "table saw with a sled and a stop") {
		t.Errorf("crosscut with %q or %q", tool, instead)
	}
	tool, _, owned = steps.Tools("crosscut", s, func(t shop.Tool) bool { return t.Depth > 2*length.Inch })
	if owned || tool == "our rail saw" {
		t.Errorf("a saw of 1 in cuts 2 in: %q", tool)
	}
	if tool, _, owned := steps.Tools("rip", s, nil); !owned || tool != "circular saw on a guide rail" {
		t.Errorf("a tool listed for other work is called %q, owned %v", tool, owned)
	}
	if tool, instead, owned := steps.Tools("whistle", s, nil); tool != "" || instead != nil || owned {
		t.Errorf("whistled with %q", tool)
	}
}

func TestWorkWithoutAToolOnTheListSaysSo(t *testing.T) {
	s := shop.Sample()
	s.Tools = nil
	w := planned(t, "low-bench", s)
	cut := ofWork(w, "cut-pipe")[0]
	if !slices.Contains(cut.Assumed, "the shop has no tool for this on its list") {
		t.Errorf("pipe is cut with nothing, and nothing is said: %v", cut.Assumed)
	}
	if dry := ofWork(w, "dry-fit")[0]; len(dry.Assumed) > 0 {
		t.Errorf("hands are at hand everywhere: %v", dry.Assumed)
	}
}
