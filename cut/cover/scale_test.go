package cover

import "testing"

// Values of the three families by hand from their definitions, for a room of 100. Fekete and Schepers 2001
// and Carlier, Clautiaux and Moukrim 2007, definitions from memory.
func TestWeightsByHand(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want int64
	}{
		{"f0 at 30, a part that leaves less", threshold(71, 30, 100), 100},
		{"f0 at 30, one that leaves just so much", threshold(70, 30, 100), 70},
		{"f0 at 30, a small one", threshold(29, 30, 100), 0},
		{"u(1) of 60, 1 of 1", stepped(60, 1, 100), 100},
		{"u(1) of 50 stays a half", stepped(50, 1, 100), 50},
		{"u(1) of 40", stepped(40, 1, 100), 0},
		{"u(2) of 40, 1 of 2", stepped(40, 2, 100), 100},
		{"u(3) of 60, 2 of 3", stepped(60, 3, 100), 200},
		{"f2 at 30 of 65: 2·(3 − 1)", mirrored(65, 30, 100), 4},
		{"f2 at 30 of 50: 3", mirrored(50, 30, 100), 3},
		{"f2 at 30 of 35: 2·1", mirrored(35, 30, 100), 2},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d, want %d", c.name, c.got, c.want)
		}
	}
}

func TestThresholdsAreThinnedEvenly(t *testing.T) {
	var sizes []int64
	for s := int64(1); s <= 50; s++ {
		sizes = append(sizes, s)
	}
	if got := thresholds(sizes, 100, 5); len(got) != 5 || got[0] != 1 || got[4] != 41 {
		t.Errorf("got %v", got)
	}
	if got := Scales(sizes, 100, 30); len(got) > 30 || len(got) < 20 || got[0].Of(37) != 37 {
		t.Errorf("%d scales", len(got))
	}
}
