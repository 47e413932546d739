package shop_test

import (
	"strings"
	"testing"

	"rodwright/shop"
)

// Wax in dry rooms, a film in damp ones: common practice, no source.
func TestSteelGetsAFilmWhereTheRoomIsDamp(t *testing.T) {
	for name, c := range map[string]struct {
		usual string
		rh    float64
		want  string
		said  bool
	}{
		"a dry room keeps the shop's wax":       {"paste-wax", 55, "paste-wax", false},
		"the last dry air":                      {"paste-wax", 60, "paste-wax", false},
		"a greenhouse gets a film":              {"paste-wax", 75, shop.DampCoat, true},
		"a film is a film already":              {"enamel", 75, "enamel", false},
		"a shop that coats no steel coats none": {"", 75, "", false},
		"oil is no film":                        {"hardwax-oil", 90, shop.DampCoat, true},
		"air that nobody told is taken as dry":  {"paste-wax", 0, "paste-wax", false},
	} {
		s := shop.Settings{MetalFinish: c.usual}
		got, why := s.SteelCoat(c.rh)
		if got != c.want || (why != "") != c.said {
			t.Errorf("%s: %q %q, want %q", name, got, why, c.want)
		}
		if c.said && !strings.Contains(why, "film instead of") {
			t.Errorf("%s: %q does not say what is changed", name, why)
		}
	}
}
