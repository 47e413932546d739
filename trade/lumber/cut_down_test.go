package lumber

import (
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
)

func TestCutDownTakesAllOffTheEdgeThatIsNotKept(t *testing.T) {
	made, wanted := length.FromInches(20), length.FromInches(19.5)
	for _, c := range []struct {
		keep        Keep
		left, right float64 // in; arithmetic
	}{{KeepLeft, 0, 0.5}, {KeepRight, 0.5, 0}, {KeepNone, 0.25, 0.25}} {
		left, right, err := CutDown(made, wanted, c.keep)
		if err != nil {
			t.Fatal(err)
		}
		if left.Value != c.left*25.4 || right.Value != c.right*25.4 {
			t.Errorf("keep %s: %v and %v mm off, want %v and %v in", c.keep, left.Value, right.Value, c.left, c.right)
		}
	}
}

func TestCutDownRefusesToAddWood(t *testing.T) {
	if _, _, err := CutDown(length.Inch, 2*length.Inch, KeepLeft); err == nil {
		t.Error("a part was cut down to more than it is")
	}
	if _, _, err := CutDown(2*length.Inch, length.Inch, "middle"); err == nil {
		t.Error("an unknown edge was kept")
	}
	if _, _, err := CutDown(2*length.Inch, 0, KeepLeft); err == nil {
		t.Error("a part was cut down to nothing")
	}
}

func TestWhatComesOffAndWhatIsLeftMakeThePart(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		wanted := length.Length(rapid.Int64Range(1, int64(length.Metre)).Draw(r, "wanted"))
		off := length.Length(rapid.Int64Range(0, int64(length.Metre)).Draw(r, "off"))
		left, right, err := CutDown(wanted+off, wanted, rapid.SampledFrom(Keeps()).Draw(r, "keep"))
		if err != nil {
			r.Fatal(err)
		}
		if length.FromMM(left.Value)+length.FromMM(right.Value) != off {
			r.Errorf("%v + %v mm is not %v", left.Value, right.Value, off)
		}
	})
}
