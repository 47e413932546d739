package check

import (
	"slices"
	"strings"
	"testing"

	"rodwright/finding"
	"rodwright/shop"
)

// Oak, cherry, walnut and western redcedar are at risk where bare iron and water meet them, maple and ash are not (a
// public answer; walnut from memory).
func TestSteelStainsWoodRichInTannin(t *testing.T) {
	s := shop.Sample()
	s.Settings.MetalFinish = ""
	for species, risk := range map[string]bool{
		"white-oak": true, "black-cherry": true, "black-walnut": true, "western-redcedar": true, "hard-maple": false, "white-ash": false,
	} {
		fs := Contact(deriveWith(t, s, table, "species: white-oak", "species: "+species))
		if risk != (len(fs) == 1) {
			t.Errorf("%s: %s", species, told(fs))
			continue
		}
		if risk {
			verdict(t, fs[0], finding.Fails)
			says(t, fs[0].Mend, "film")
			says(t, fs[0].Caution, "wet rags")
		}
	}
}

// Wax in dry rooms, a film in damp ones: common practice, no source.
func TestTheCoatOfTheSteelFollowsTheRoom(t *testing.T) {
	dry := Contact(derive(t, table))
	f := only(t, dry, "steel on")
	if f.Verdict == finding.Fails || !strings.Contains(strings.Join(f.Assumed, "; "), "wax") {
		t.Error(told(dry))
	}
	f = only(t, Contact(derive(t, table, "30–60 %", "40–90 %")), "steel on")
	verdict(t, f, finding.Stands)
	says(t, strings.Join(f.Assumed, "; "), "film instead of")
}

func TestPanelsOfOneWoodAreToldTogether(t *testing.T) {
	fs := Contact(derive(t, shelves))
	if len(fs) != 1 || len(fs[0].Parts) != 2 {
		t.Error(told(fs))
	}
}

func TestSteelThatKeepsOffDoesNotStain(t *testing.T) {
	p := derive(t, notched)
	if fs := Contact(p); len(fs) != 1 {
		t.Error(told(fs))
	}
	p.Panels[0].Seats = slices.DeleteFunc(slices.Clone(p.Panels[0].Seats), touches)
	if fs := Contact(p); len(fs) != 0 {
		t.Error(told(fs))
	}
}
