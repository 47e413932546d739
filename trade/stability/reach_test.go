package stability

import (
	"testing"

	"rodwright/length"
)

// NIOSH Publication 94-110, H = 20 + W/2 for hands at 25 cm or higher, 25 cm at least, from memory.
func TestADeepThingIsHeldFarFromTheBody(t *testing.T) {
	for depth, want := range map[float64]float64{60: 250, 100: 250, 400: 400, 600: 500} {
		f, err := Reach(length.FromMM(depth))
		if err != nil || f.Value != want {
			t.Errorf("%v mm deep: %v, want %v, %v", depth, f.Value, want, err)
		}
	}
	if _, err := Reach(0); err == nil {
		t.Error("a thing of no depth")
	}
}
