package change_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rodwright/build"
	"rodwright/change"
	"rodwright/examples"
	"rodwright/piece"
	"rodwright/shop"
)

// failer is what both a test and a property's try have.
type failer interface {
	Helper()
	Fatal(...any)
}

func derive(t failer, text []byte) *build.Build {
	t.Helper()
	doc, err := piece.Read("piece", text)
	if err != nil {
		t.Fatal(err)
	}
	b, err := build.Derive(build.Input{Document: doc, Shop: shop.Sample()}, nil)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func example(t failer, name string) []byte {
	t.Helper()
	text, err := examples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// edited returns the text with values put in at paths, two by two.
func edited(t failer, text []byte, pathsAndValues ...string) []byte {
	t.Helper()
	for i := 0; i < len(pathsAndValues); i += 2 {
		var err error
		if text, err = piece.Edit(text, pathsAndValues[i], pathsAndValues[i+1]); err != nil {
			t.Fatal(err)
		}
	}
	return text
}

// ripple is what the edits do to an example.
func ripple(t failer, name string, pathsAndValues ...string) change.Ripple {
	t.Helper()
	text := example(t, name)
	return change.Compare(derive(t, text), derive(t, edited(t, text, pathsAndValues...)))
}

// The packing table's top is raised from 35 to 36 in. By hand: the top is 1 3/8 in thick and the stretchers' axis
// lies at 6 in, so the upper part of each leg bridges 35 − 1 3/8 − 6 = 27 5/8 in before and 28 5/8 in after. The
// tee takes 1 1/2 − 11/16 = 13/16 in and the flange 5/16 in, 1 1/8 in together: the cuts are 26 1/2 in
// (673.1 mm) and 27 1/2 in (698.5 mm), of two front and two back legs. Nothing else moves. The 4 in more of pipe
// come out of the 84 3/4 in left of the second stick, so no more is bought. Pipe of NPS 1, schedule 40, weighs
// 1.68 lb/ft (ASME B36.10M, from memory): 4/12 × 1.68 × 0.45359 = 0.254 kg more.
func TestARaisedTopLengthensTheLegsAndNothingElse(t *testing.T) {
	r := ripple(t, "packing-table", "sizes/height", "36 in")
	want := []change.Cut{
		{Tag: "C2", Name: "front post 2", What: "cut", Count: 2, From: 673.1, To: 698.5},
		{Tag: "C4", Name: "back post 2", What: "cut", Count: 2, From: 673.1, To: 698.5},
	}
	if diff := cmp.Diff(want, r.Cuts); diff != "" {
		t.Errorf("cuts: %s", diff)
	}
	if len(r.Boards)+len(r.Parts.Added)+len(r.Parts.Gone)+len(r.Findings) != 0 {
		t.Errorf("something else moves: %+v", r)
	}
	if more := r.MassKg.To - r.MassKg.From; math.Abs(more-0.254) > 0.0005 {
		t.Errorf("%.4f kg more, want 0.254", more)
	}
}

// The table is 72 × 30 × 35 in and goes on its side through the studio's door of 36 × 80 in: of its two lesser sizes,
// 30 and 35 in, the lesser passes 36 in with 6 in to spare. At 40 in deep and 37 in high the lesser is 37 in, and it
// does not.
func TestFindingsThatTurnAreTold(t *testing.T) {
	r := ripple(t, "packing-table", "sizes/depth", "40 in", "sizes/height", "37 in")
	want := change.Turn{Check: "path", Place: "the whole piece through studio", From: "tight", To: "fails"}
	if !slices.Contains(r.Findings, want) {
		t.Errorf("%+v", r.Findings)
	}
}

// A finding that is new or no more is told where it does not stand, and only there.
func TestAFindingThatCameWithAThingIsTold(t *testing.T) {
	r := ripple(t, "stepped-stand", "holds/watering cans/on", "deep board")
	for _, f := range r.Findings {
		if f.From == f.To || f.From == "" && f.To == "stands" || f.To == "" && f.From == "stands" {
			t.Errorf("%+v turns nothing", f)
		}
	}
	gone := change.Turn{Check: "tip", Place: "to the back, with 2 watering cans alone on it", From: "fails"}
	if !slices.Contains(r.Findings, gone) {
		t.Errorf("%+v; want %+v", r.Findings, gone)
	}
}

// A third stretcher meets each end rail in a tee, and closes one loop more, which takes one union more.
func TestPartsThatComeAndGoAreToldByWhatTheyAre(t *testing.T) {
	text := example(t, "packing-table")
	with := []byte(strings.Replace(string(text), "\nrails:\n", "\nrails:\n  middle stretcher: {joins: end rails, share: 1/2}\n", 1))
	r := change.Compare(derive(t, text), derive(t, with))
	told := strings.Join(r.Parts.Added, "; ")
	for _, want := range []string{"2 × tee 1", "union 1", "middle stretcher"} {
		if !strings.Contains(told, want) {
			t.Errorf("added: %q, want %q", told, want)
		}
	}
	if back := change.Compare(derive(t, with), derive(t, text)); !cmp.Equal(back.Parts.Gone, r.Parts.Added) {
		t.Errorf("gone the other way: %q, added: %q", back.Parts.Gone, r.Parts.Added)
	}
}

// A post group put before the others takes the first tags, and the others keep what they were.
func TestTagsThatShiftMoveNothing(t *testing.T) {
	text := example(t, "packing-table")
	with := strings.Replace(string(text), "\nposts:\n", "\nposts:\n  hooks: {at: [[20 in, 15 in], [40 in, 15 in]], from: top, to: {level: 60 in, end: cap}}\n", 1)
	r := change.Compare(derive(t, text), derive(t, []byte(with)))
	if len(r.Cuts) != 0 || len(r.Parts.Gone) != 0 {
		t.Errorf("moved %+v, gone %q", r.Cuts, r.Parts.Gone)
	}
	want := []string{"2 × C1 hooks post", "2 × flange 1", "2 × cap 1"}
	for _, w := range want {
		if !slices.Contains(r.Parts.Added, w) {
			t.Errorf("added %q, want %q", r.Parts.Added, w)
		}
	}
}

func TestWhatIsBoughtIsToldInWholePacks(t *testing.T) {
	r := ripple(t, "packing-table", "pipe/size", "3/4")
	want := map[string][2]float64{"wood screw 12 × 1 1/4 in": {100, 0}, "wood screw 10 × 1 1/4 in": {0, 100}, "tee 1": {8, 0}, "tee 3/4": {0, 8}}
	for _, b := range r.Boards {
		if w, ok := want[b.Item]; ok && (b.From != w[0] || b.To != w[1] || b.Unit != "each") {
			t.Errorf("%+v, want %v", b, w)
		}
		delete(want, b.Item)
	}
	if len(want) > 0 {
		t.Errorf("not told: %v", want)
	}
}

func TestAnUnknownPriceIsNoNumber(t *testing.T) {
	text := example(t, "low-bench")
	from := derive(t, text)
	own := []byte("name: bare\ncurrency: EUR\n")
	s, err := shop.Read("shop", own)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := piece.Read("piece", text)
	if err != nil {
		t.Fatal(err)
	}
	to, err := build.Derive(build.Input{Document: doc, Shop: s}, nil)
	if err != nil {
		t.Fatal(err)
	}
	r := change.Compare(from, to)
	if r.Money.From == nil || r.Money.To != nil || r.Empty() {
		t.Errorf("%+v", r.Money)
	}
	if text, err := json.Marshal(r.Money); err != nil || !strings.Contains(string(text), `"to":null`) {
		t.Errorf("%s, %v", text, err)
	}
}

func TestNothingIsWrittenAsAnEmptyListAndNotAsNull(t *testing.T) {
	b := derive(t, example(t, "low-bench"))
	text, err := json.Marshal(change.Compare(b, b))
	if err != nil || strings.Contains(string(text), "null") {
		t.Errorf("%s, %v", text, err)
	}
}
