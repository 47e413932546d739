package pipe

import (
	"math"
	"testing"

	"rodwright/length"
)

func fittingOf(t *testing.T, size string, k Kind) Fitting {
	t.Helper()
	s, err := Lookup(size)
	if err != nil {
		t.Fatal(err)
	}
	f, err := s.Fitting(k)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Public question and answer, value recomputed: offset 12 in, 1 in taken out at each fitting: 14.97 in within 0.03.
func TestAPipeAtFortyFiveDegreesIsItsTravelLessWhatTheFittingsTakeOut(t *testing.T) {
	travel, _, err := Offset(12*length.Inch, 45)
	if err != nil {
		t.Fatal(err)
	}
	if cut := travel.Inches() - 2; math.Abs(cut-14.97) > 0.03 {
		t.Errorf("cut %v in", cut)
	}
}

// Public question and answer, value recomputed: flange, 18 in of 1/2 in pipe, tee, 8 in of pipe, flange stand
// about 27.5 in high, within 0.4; two threads of 14 to the inch in each of four joints are 0.57 in worst case.
func TestABuiltUpLegIsItsPipesAndWhatItsJointsLeaveBetweenThem(t *testing.T) {
	flange, tee := fittingOf(t, "1/2", Flange), fittingOf(t, "1/2", Tee)
	leg := Built(18*length.Inch, flange, tee) + Built(8*length.Inch, tee, flange)
	if math.Abs(leg.Inches()-27.5) > 0.4 {
		t.Errorf("leg %v in", leg.Inches())
	}
	if worst := 4 * flange.Size.MakeUp(2); math.Abs(worst.Inches()-0.57) > 0.01 {
		t.Errorf("four joints two turns out: %v in", worst.Inches())
	}
}

// Public question and answer, value recomputed: 30 in of 1 in pipe, a flange body of 0.75 in and a top of 0.75 in
// make a desk of 30.8 in within 0.15, and a desk of 30.0 in takes a pipe of about 29.1 in.
func TestAPipeAsLongAsTheDeskIsHighMakesTheDeskTooHigh(t *testing.T) {
	flange := fittingOf(t, "1", Flange)
	flange.CentreToEnd = length.FromInches(0.75) // as measured in the question
	bare := fittingOf(t, "1", None)
	top := length.FromInches(0.75)
	if high := Built(30*length.Inch, flange, bare) + top; math.Abs(high.Inches()-30.8) > 0.15 {
		t.Errorf("desk %v in", high.Inches())
	}
	c, err := CutLength(30*length.Inch-top, flange, bare)
	if err != nil || math.Abs(c.Cut.Inches()-29.1) > 0.15 {
		t.Errorf("pipe %v in, %v", c.Cut.Inches(), err)
	}
}
