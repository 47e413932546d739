package part_test

import (
	"strings"
	"testing"
)

// No stock is thick enough in one layer past 16/4: the board stays on the list, without stock.
func TestABoardThickerThanAnyStock(t *testing.T) {
	_, l := takeOff(t, strings.Replace(bench, "thickness: 1,", "thickness: 5,", 1))
	p := named(t, l, "top")
	if p.Rough != "" || p.BoardFeet.Volume <= 0 || !strings.Contains(strings.Join(p.Assumed, " "), "thick enough") {
		t.Errorf("%+v", p)
	}
}

func TestTheMakersStockWins(t *testing.T) {
	_, l := takeOff(t, strings.Replace(bench, "thickness: 1,", "thickness: 1, stock: 8/4,", 1))
	if p := named(t, l, "top"); p.Rough != "8/4" {
		t.Errorf("from %s", p.Rough)
	}
}

// Boards bow 1/8 in over 8 ft and twist 1/32 in, and flattening takes 1/16: common practice, no source. Of a
// blank 42 in long the bow is 1/8 · (42/96)² = 0.024: 15/16 in comes out of 5/4, 1 1/16 in surfaced (NHLA). Of
// one 82 in long it is 0.091, and 15/16 takes 6/4.
func TestLongBoardsTakeThickerStock(t *testing.T) {
	for long, want := range map[string]string{"40": "5/4", "80": "6/4"} {
		_, l := takeOff(t, strings.NewReplacer("length: 40", "length: "+long, "thickness: 1,", "thickness: 15/16,").Replace(bench))
		if p := named(t, l, "top"); p.Rough != want {
			t.Errorf("%s in long from %s, want %s", long, p.Rough, want)
		}
	}
}
