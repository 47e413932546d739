package check

import (
	"math"
	"testing"

	"rodwright/finding"
)

// trolley is a board of 1 1/4 in on four stem casters of 1 1/8 in offset, with one thing of the given weight in its middle.
func trolley(thick, weight string) string {
	return `rodwright: 1
piece: trolley
unit: in
place: {room: workshop}
wood: white-oak
pipe: 3/4
holds:
  - {name: crate, on: deck, size: 8 × 8 × 8 in, weight: ` + weight + `, at: [12 in, 9 in]}
panels:
  deck: {length: 24 in, width: 18 in, thickness: ` + thick + `, sits: on feet}
feet: {casters: {kind: stem, fixed: insert, under: deck, inset: 2 in, wheel: 3 in, height: 4 in, offset: 1 1/8 in, rated: 400 lb}}
`
}

// By hand: an insert of 9/16 in outside and 1 in long bears the moment of its wheel by 6·M ÷ (D·L²): for each newton on a
// wheel that trails 1 1/8 in, 28.575 N·mm, so 6 · 28.575 ÷ (14.2875 · 645.16) = 0.018600 MPa.
func TestAnInsertPressesByTheMomentOfItsWheel(t *testing.T) {
	p := derive(t, trolley("1 1/4 in", "200 lb"))
	f := only(t, Insert(p), "stems of the casters in deck")
	kg := f.Figure.Inputs[3].Value
	if want := 0.018600 * kg * 9.80665; math.Abs(f.Figure.Value-want) > 1e-3*want {
		t.Errorf("%v MPa under %v kg, want %v", f.Figure.Value, kg, want)
	}
	if kg < 200*0.45359237/4 {
		t.Errorf("the worst foot bears %v kg of 200 lb and the board", kg)
	}
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "plates")
	verdict(t, only(t, Insert(derive(t, trolley("1 1/4 in", "20 lb"))), "stems of the casters in deck"), finding.Stands)
}

func TestAnInsertInAThinnerBoardPressesHarder(t *testing.T) {
	thick := only(t, Insert(derive(t, trolley("1 in", "20 lb"))), "stems of the casters in deck")
	thin := only(t, Insert(derive(t, trolley("5/8 in", "20 lb"))), "stems of the casters in deck")
	if thin.Figure.Value <= thick.Figure.Value {
		t.Errorf("%v MPa in 5/8 in, %v in 1 in", thin.Figure.Value, thick.Figure.Value)
	}
}

func TestStemsInPipeWantNoInsert(t *testing.T) {
	if fs := Insert(derive(t, hoop)); len(fs) > 0 {
		t.Errorf("%v", fs)
	}
}
