package part_test

import (
	"math"
	"strings"
	"testing"

	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

const knotty = `rodwright: 1
piece: shelf
unit: in
wood: {species: white-oak, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
panels:
  top: {length: 40 in, width: 12 in, thickness: 1 in, at: [0, 0], level: 10 in, sits: by place}
`

func suppliesOf(t *testing.T, voids string) map[string]part.Supply {
	t.Helper()
	doc, err := piece.Read("shelf", []byte(knotty+voids))
	if err != nil {
		t.Fatal(err)
	}
	s := shop.Sample()
	r, err := piece.Resolve(doc, s)
	if err != nil {
		t.Fatal(err)
	}
	list, err := part.TakeOff(r, s)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]part.Supply{}
	for _, sup := range list.Supplies {
		out[sup.Class] = sup
	}
	return out
}

// By hand: an oval of 3 × 1 1/2 in is π/4 · 4.5 = 3.534 in²; half of that 1/2 in deep is 0.8836 in³ a bowl; two
// are 1.767 in³ = 28.96 ml, and a fifth more, the sample shop's spare, 34.75 ml.
func TestOpenKnotsTakeTheirOvalTimesHalfTheirDepth(t *testing.T) {
	got := suppliesOf(t, "voids:\n  knots: {in: top, size: 3 × 1 1/2 in, depth: 1/2 in, count: 2}\n")["epoxy-table-top"]
	if math.Abs(got.Quantity.Value-34.75) > 0.02 {
		t.Errorf("%v ml", got.Quantity.Value)
	}
	if len(got.For) != 1 || got.For[0] != "A1" || !strings.Contains(strings.Join(got.Cautions, " "), "sensitise") {
		t.Errorf("for %q, cautions %q", got.For, got.Cautions)
	}
}

// By hand: straight walls hold all of area × depth, twice a bowl; a funnel a third of it.
func TestTheWallsOfAVoidSayHowMuchOfItsDepthCounts(t *testing.T) {
	ml := func(walls string) float64 {
		return suppliesOf(t, "voids:\n  split: {in: top, size: 6 × 1/4 in, depth: 1 in, walls: "+walls+"}\n")["epoxy-table-top"].Quantity.Value
	}
	straight := ml("straight")
	if b, f := ml("bowl")/straight, ml("funnel")/straight; math.Abs(b-0.5) > 1e-9 || math.Abs(f-1.0/3) > 1e-9 {
		t.Errorf("of straight walls a bowl holds %v, a funnel %v", b, f)
	}
}

func TestEachClassOfResinIsASupplyOfItsOwn(t *testing.T) {
	got := suppliesOf(t, `voids:
  knots: {in: top, size: 1 × 1 in, depth: 1/4 in}
  eye: {in: top, size: 1 × 1 in, depth: 1/4 in}
  crack: {in: top, size: 8 × 1/2 in, depth: 1 in, walls: straight, resin: epoxy-deep-pour}
`)
	if n := len(got["epoxy-table-top"].Quantity.Inputs); n != 3 { // the spare and two voids
		t.Errorf("the table-top resin has %d inputs", n)
	}
	one := suppliesOf(t, "voids:\n  knots: {in: top, size: 1 × 1 in, depth: 1/4 in}\n")["epoxy-table-top"].Quantity.Value
	if two := got["epoxy-table-top"].Quantity.Value; math.Abs(two-2*one) > 1e-9 {
		t.Errorf("two like voids take %v ml, one %v", two, one)
	}
	if got["epoxy-deep-pour"].Quantity.Value <= 0 {
		t.Error("no resin for the crack")
	}
	if _, ok := suppliesOf(t, "")["epoxy-table-top"]; ok {
		t.Error("resin for a panel without voids")
	}
}
