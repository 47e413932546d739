package verify

import (
	"testing"

	"rodwright/cut"
	"rodwright/length"
)

func TestStagesNeedRoomForEverySawCut(t *testing.T) {
	b := func(x, y, l, w int) box {
		return box{Rect: cut.Rect{X: length.Length(x), Y: length.Length(y), Length: length.Length(l), Width: length.Length(w)}, part: true}
	}
	for _, c := range []struct {
		name   string
		boxes  []box
		x, y   int // stages when the first cut goes across x, across y
		apartX int // groups that cuts across x make
	}{
		{"one part", []box{b(0, 0, 10, 10)}, 0, 0, 1},
		{"a saw cut apart", []box{b(0, 0, 10, 10), b(12, 0, 10, 10)}, 1, never, 2},
		{"less than a saw cut apart", []box{b(0, 0, 10, 10), b(11, 0, 10, 10)}, never, never, 1},
		{"apart across y only", []box{b(0, 0, 10, 10), b(11, 12, 10, 10)}, never, 1, 1},
		{"columns of rows", []box{b(0, 0, 10, 10), b(0, 12, 10, 10), b(12, 5, 10, 10)}, 2, never, 2},
		{"a pinwheel", []box{b(0, 0, 20, 10), b(22, 0, 10, 20), b(12, 22, 20, 10), b(0, 12, 10, 20)}, never, never, 1},
	} {
		if got := stages(c.boxes, false, 2); got != c.x {
			t.Errorf("%s: %d stages across x first, want %d", c.name, got, c.x)
		}
		if got := stages(c.boxes, true, 2); got != c.y {
			t.Errorf("%s: %d stages across y first, want %d", c.name, got, c.y)
		}
		if got := len(parted(c.boxes, false, 2)); got != c.apartX {
			t.Errorf("%s: parted into %d, want %d", c.name, got, c.apartX)
		}
	}
}
