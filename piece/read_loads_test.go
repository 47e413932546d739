package piece_test

import (
	"math"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/piece"
)

// loaded is a board on four legs with a load.
func loaded(t *testing.T, load string) piece.Load {
	t.Helper()
	doc, err := piece.Read("loads.piece.yaml", []byte(`rodwright: 1
piece: bench
unit: in
posts:
  legs: {at: corners of seat, inset: 3 in, from: feet, to: seat}
panels:
  seat: {length: 48 in, width: 15 in, thickness: 1 1/2 in, level: 18 in, sits: on legs posts}
wood: white-oak
pipe: 3/4
feet: caps
loads:
  `+load+"\n"))
	if err != nil {
		t.Fatal(err)
	}
	if len(doc.Loads) != 1 {
		t.Fatalf("%d loads", len(doc.Loads))
	}
	return doc.Loads[0]
}

// A pound weighs 4.448 221 615 260 5 N: the pound of 1959 at the standard gravity of 1901, exact.
func TestAPushIsWrittenAsAForceOrAsAMassThatWeighsIt(t *testing.T) {
	for text, want := range map[string]float64{"100 N": 100, "0.1 kN": 100, "20 lbf": 88.96443230521, "20 lb": 88.96443230521, "1 1/2 lb": 6.67233242289075, "10 kg": 98.0665} {
		l := loaded(t, "shove: {on: seat, edge: left, push: "+text+", towards: right}")
		if math.Abs(l.PushN-want) > 1e-9 || l.MassKg != 0 || l.Edge != piece.LeftSide || l.Towards != piece.RightSide || l.Name != "shove" || l.On != "seat" {
			t.Errorf("%s is read as %+v, want %v N", text, l, want)
		}
	}
}

func TestALoadStandsAtAnEdgeOrAtAPlace(t *testing.T) {
	if l := loaded(t, "lean: {on: seat, edge: front, weight: 60 kg}"); l.MassKg != 60 || l.PushN != 0 || l.Edge != piece.FrontSide || l.At != nil {
		t.Errorf("at an edge: %+v", l)
	}
	l := loaded(t, "lean: {on: seat, at: [6, 7 1/2 in], weight: 100 lb}")
	if l.At == nil || *l.At != [2]length.Length{6 * length.Inch, 15 * length.Inch / 2} || math.Abs(l.MassKg-45.359237) > 1e-9 || l.Edge != piece.NoSide {
		t.Errorf("at a place: %+v", l)
	}
}

func TestALoadOnTheVeryCornerOfItsPanelIsOnIt(t *testing.T) {
	for _, at := range []string{"[0, 0]", "[48 in, 15 in]"} {
		loaded(t, "lean: {on: seat, at: "+at+", weight: 1 kg}")
	}
	if _, err := piece.Read("x", []byte(strings.Replace("rodwright: 1\npiece: x\nunit: in\npanels: {a: {length: 9, width: 8, thickness: 1, sits: by place, at: [0, 0], level: 9}}\nwood: white-oak\nloads: {l: {on: a, at: [9, 8.01], weight: 1 kg}}\n", "\t", "", -1))); err == nil {
		t.Error("a load beside its panel is taken")
	}
}
