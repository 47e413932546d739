package check

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

func TestTagsAreToldOnceAndInOrder(t *testing.T) {
	if got := tags("A1.1", "", "C2.1", "A1.1"); !reflect.DeepEqual(got, []string{"A1.1", "C2.1"}) {
		t.Errorf("%q", got)
	}
	if got := tags("", ""); got != nil {
		t.Errorf("%q", got)
	}
}

func TestALeastDimensionIsRoundedUp(t *testing.T) {
	for l, want := range map[length.Length]length.Length{
		0: 0, 1: in / 16, in / 16: in / 16, in/16 + 1: in / 8, -1: 0, -in / 16: -in / 16, -in/16 - 1: -in / 16,
	} {
		if got := ceilTo(l, length.Sixteenth); got != want {
			t.Errorf("%d nm: %d, want %d", l, got, want)
		}
	}
	if got := ceilTo(5, length.Fineness{}); got != 5 {
		t.Errorf("without a fineness: %d", got)
	}
	rapid.Check(t, func(r *rapid.T) {
		l := length.Length(rapid.Int64Range(-1e12, 1e12).Draw(r, "l"))
		for _, f := range length.Finenesses() {
			if up := ceilTo(l, f); up < l || up-l >= f.Step || up%f.Step != 0 {
				r.Fatalf("%d nm goes up to %d by %d", l, up, f.Step)
			}
		}
	})
}

func TestEveryPartIsFoundByWhatItWasTakenOff(t *testing.T) {
	p := derive(t, shelves)
	for i, pt := range p.panels {
		if pt == nil || pt.Name != p.Panels[i].Name {
			t.Errorf("panel %d is %v", i, pt)
		}
	}
	for i, pt := range p.sticks {
		if pt == nil || pt.Between != p.Sticks[i].Between {
			t.Errorf("stick %d is %v", i, pt)
		}
	}
}
