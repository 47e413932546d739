package shop_test

import (
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

func TestWhatWasMeasuredWinsOverTheTable(t *testing.T) {
	// A 1 in tee of 2 7/8 in end to end where ASME B16.3 gives 3: measured in a shop.
	size, err := pipe.Lookup("1")
	if err != nil {
		t.Fatal(err)
	}
	table, err := shop.Sample().Fitting(size, pipe.Tee)
	if err != nil {
		t.Fatal(err)
	}
	if table.CentreToEnd != length.Inch*3/2 {
		t.Errorf("the table's tee is %s to its end, want 1 1/2 in", length.SixtyFourth.Text(table.CentreToEnd))
	}
	s := shop.Sample()
	s.Fittings = []shop.MeasuredFitting{{Pipe: "1", Kind: pipe.Tee, CentreToEnd: length.Inch * 23 / 16}}
	got, err := s.Fitting(size, pipe.Tee)
	if err != nil {
		t.Fatal(err)
	}
	if got.CentreToEnd != length.Inch*23/16 {
		t.Errorf("the measured tee is %s to its end, want 1 7/16 in", length.SixtyFourth.Text(got.CentreToEnd))
	}
	if !strings.Contains(got.Assumed, "1 7/16 in measured") {
		t.Errorf("nothing says that it was measured: %q", got.Assumed)
	}
	if got.Band != table.Band || got.MassKg != table.MassKg {
		t.Error("what was not measured is no longer the table's")
	}
	if elbow, _ := s.Fitting(size, pipe.Elbow90); strings.Contains(elbow.Assumed, "measured in") {
		t.Error("measuring a tee has measured an elbow")
	}
	other, _ := pipe.Lookup("3/4")
	if tee, _ := s.Fitting(other, pipe.Tee); strings.Contains(tee.Assumed, "measured in") {
		t.Error("measuring a 1 in tee has measured a 3/4 in one")
	}
}

func TestEveryMeasuredLengthIsTaken(t *testing.T) {
	size, err := pipe.Lookup("3/4")
	if err != nil {
		t.Fatal(err)
	}
	in := length.Inch
	s := shop.Defaults()
	s.Fittings = []shop.MeasuredFitting{{Pipe: "3/4", Kind: pipe.Flange, CentreToEnd: in, Band: 2 * in, Plate: 3 * in, PlateThick: in / 4, HoleCircle: in * 5 / 2, MassKg: 0.4}}
	f, err := s.Fitting(size, pipe.Flange)
	if err != nil {
		t.Fatal(err)
	}
	if f.CentreToEnd != in || f.Band != 2*in || f.Plate != 3*in || f.PlateThick != in/4 || f.HoleCircle != in*5/2 || f.MassKg != 0.4 {
		t.Errorf("%+v", f)
	}
}

func TestAShopSaysWhichToolsDoAWork(t *testing.T) {
	s := shop.Sample()
	var ids []string
	for _, tool := range s.ToolsFor("notch") {
		ids = append(ids, tool.ID)
	}
	if strings.Join(ids, " ") != "jigsaw" {
		t.Errorf("a notch is cut with %v, want the jigsaw", ids)
	}
	if s.ToolsFor("levitate") != nil {
		t.Error("a tool for everything")
	}
	if _, ok := s.Tool("anvil"); ok {
		t.Error("an anvil out of nowhere")
	}
	if _, ok := s.Operation("levitate"); ok {
		t.Error("a time out of nowhere")
	}
}
