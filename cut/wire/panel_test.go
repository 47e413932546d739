package wire_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"rodwright/cut/wire"
)

// layout is an answer as a program reads it.
type layout struct {
	Cost, Bound float64
	Proven      bool
	BoundOf     *string `json:"bound_of"`
	Used        []struct {
		Stock string
		Parts []struct {
			Tag      string
			At, Size [2]float64
		}
		Left []struct{ At, Size [2]float64 }
	}
	Panels []struct {
		Tag    string
		Strips []struct {
			Board    string
			At, Size [2]float64
			Ring     string
			NetWidth float64 `json:"net_width"`
		}
	}
	Cuts []struct {
		Machine string
		Setting float64
		Makes   []string
	}
	NotPlaced []struct{ Tag, Why string } `json:"not_placed"`
}

// boards lays out a problem of panels in millimetres: saw cuts of 3, an edge jointed by 1, the keys given beside those,
// its boards and panels. The answer passes the verifier as it is written.
func boards(t *testing.T, keys, stock, panels string) (a layout) {
	t.Helper()
	text := []byte(fmt.Sprintf(`{"unit": "mm", "kerf": 3, "jointing": 1, %s "boards": [%s], "panels": [%s]}`, keys, stock, panels))
	out := run(t, wire.Panel, text, true)
	faults, err := wire.Verify(wire.Panel, wire.File{Name: "f", Text: text}, wire.File{Name: "layout", Text: out})
	if err != nil || len(faults) > 0 {
		t.Fatalf("%v %v", err, faults)
	}
	if err := json.Unmarshal(out, &a); err != nil {
		t.Fatal(err)
	}
	return a
}

// widths lists the ripped widths of the first panel, ascending.
func (a layout) widths() (out []float64) {
	if len(a.Panels) > 0 {
		for _, s := range a.Panels[0].Strips {
			out = append(out, s.Size[1])
		}
	}
	slices.Sort(out)
	return out
}

const plain = `{"tag": "B1", "length": 900, "width": 300, "price": 20}`

// Worked by hand: a board of 300. Of strips of 40 to 100: 96 net is one of 98; 98.5 net is more than one of 100 gives (98),
// so two, of which neither may be narrower than 40; three of 100 with two saw cuts would want 306, and 297 net are more
// than the 288 that three share: 300 − 2·3 − 3·2.
func TestStripsAreNoNarrowerAndNoWiderThanAsked(t *testing.T) {
	for _, c := range []struct {
		net    float64
		strips int
	}{{96, 1}, {98, 1}, {98.5, 2}, {196, 2}, {196.5, 3}, {288, 3}, {289, 0}} {
		a := boards(t, `"strip": {"least": 40, "most": 100},`, plain, fmt.Sprintf(`{"tag": "A1", "length": 800, "width": %v, "show": "clear"}`, c.net))
		ws := a.widths()
		if len(ws) != c.strips {
			t.Errorf("%v net: ripped at %v, want %d strips", c.net, ws, c.strips)
		}
		for _, w := range ws {
			if w < 40 || w > 100 {
				t.Errorf("%v net: ripped at %v", c.net, ws)
			}
		}
	}
}

// Worked by hand: a panel narrower than the least strip is glued of nothing: its strip stays 40 wide, 38 net.
func TestAPanelNarrowerThanAStripIsRippedAtTheLeastStrip(t *testing.T) {
	a := boards(t, `"strip": {"least": 40, "most": 100},`, plain, `{"tag": "A1", "length": 800, "width": 20, "show": "clear"}`)
	if ws := a.widths(); len(ws) != 1 || ws[0] != 40 || a.Panels[0].Strips[0].NetWidth != 38 {
		t.Errorf("%+v", a.Panels)
	}
}

// Which defects the grades take, on the face that is seen and on the back. The defect lies in the middle of a board that
// must be used whole: 100 of 100.
func TestEachGradeTakesItsDefects(t *testing.T) {
	for _, c := range []struct {
		kind, face string
		size       float64
		clear      bool
		small      bool
		character  bool
	}{
		{"knot", "both", 15, false, true, true},
		{"knot", "good", 15, false, true, true},
		{"knot", "both", 25, false, false, true},
		{"knot", "back", 25, true, true, true},
		{"sap", "good", 25, false, true, true},
		{"sap", "back", 25, true, true, true},
		{"void", "back", 15, false, false, true},
		{"split", "back", 15, false, false, false},
		{"wane", "back", 15, false, false, false},
	} {
		for grade, takes := range map[string]bool{"clear": c.clear, "small-knots": c.small, "character": c.character} {
			stock := fmt.Sprintf(`{"tag": "B1", "length": 800, "width": 100, "defects": [{"kind": %q, "face": %q, "x": 400, "y": 40, "length": %v, "width": %v}]}`, c.kind, c.face, c.size, c.size)
			a := boards(t, "", stock, fmt.Sprintf(`{"tag": "A1", "length": 800, "width": 98, "show": %q}`, grade))
			if made := len(a.Panels) == 1; made != takes {
				t.Errorf("%s of %v on %s in %s: made %v", c.kind, c.size, c.face, grade, made)
			}
		}
	}
}

// Worked by hand: 160 net of two strips are 164 ripped and one saw cut, all of the board's 167. Halved, the rip runs from
// 82 to 85, through the defect from 70 to 100: strips of 67 and 97 or of 100 and 64 leave it whole.
func TestNoJointMeetsADefectThatItCanAvoid(t *testing.T) {
	for _, kind := range []string{"knot", "void"} {
		stock := fmt.Sprintf(`{"tag": "B1", "length": 800, "width": 167, "defects": [{"kind": %q, "x": 300, "y": 70, "length": 30, "width": 30}]}`, kind)
		a := boards(t, `"strip": {"least": 40, "most": 120},`, stock, `{"tag": "A1", "length": 800, "width": 160, "show": "character"}`)
		if len(a.Panels) != 1 {
			t.Fatalf("%s: not made: %v", kind, a.NotPlaced)
		}
		for _, s := range a.Panels[0].Strips {
			for _, edge := range []float64{s.At[1], s.At[1] + s.Size[1]} {
				if edge > 70 && edge < 100 {
					t.Errorf("%s: a rip at %v", kind, edge)
				}
			}
		}
	}
}

// Worked by hand: the strip may begin from 0 to 120 along the board, where the knot lies from 300 to 320: in the strip it
// lies from 180 to 320 then, and there is a place for it beside a screw at 200, 240 or 300. Of a board of 810 it lies from
// 290 to 320, and 295 to 315 is hit from either end.
func TestAKnotIsKeptFromScrewsAndNotches(t *testing.T) {
	stock := `{"tag": "B1", "length": 920, "width": 100, "defects": [{"kind": "knot", "x": 300, "y": 40, "length": 20, "width": 20}]}`
	panel := `{"tag": "A1", "length": 800, "width": 98, "show": "character", "keep_out": [{"x": %d, "y": 30, "length": 20, "width": 40}]}`
	for _, c := range []struct {
		x    int
		made bool
	}{{200, true}, {300, true}, {240, true}} {
		a := boards(t, "", stock, fmt.Sprintf(panel, c.x))
		if made := len(a.Panels) == 1; made != c.made {
			t.Fatalf("screw at %d: made %v", c.x, made)
		}
		x := 300 - a.Panels[0].Strips[0].At[0]
		if x < float64(c.x)+20 && x+20 > float64(c.x) {
			t.Errorf("screw at %d: the knot lies at %v", c.x, x)
		}
	}
	short := strings.Replace(stock, "920", "810", 1)
	if a := boards(t, "", short, fmt.Sprintf(panel, 295)); len(a.Panels) != 0 {
		t.Errorf("the knot lies at %v to %v where a screw will be at 295 to 315", 300-a.Panels[0].Strips[0].At[0], 320-a.Panels[0].Strips[0].At[0])
	}
}

// Four strips of boards whose rings curve up when their good face does: every second one is turned over. A board that may
// show one face only stands where its rings alternate with its neighbours'.
func TestRingSidesAlternate(t *testing.T) {
	stock := ""
	for k := range 4 {
		stock += fmt.Sprintf(`{"tag": "B%d", "length": 800, "width": 100, "ring": %q, "defects": [{"kind": "knot", "face": "back", "x": 100, "y": 40, "length": 30, "width": 30}]},`, k+1, []string{"up", "up", "down", "down"}[k])
	}
	a := boards(t, "", strings.TrimSuffix(stock, ","), `{"tag": "A1", "length": 800, "width": 392, "show": "clear"}`)
	if len(a.Panels) != 1 || len(a.Panels[0].Strips) != 4 {
		t.Fatalf("%+v", a.Panels)
	}
	for i, s := range a.Panels[0].Strips {
		if i > 0 && s.Ring == a.Panels[0].Strips[i-1].Ring {
			t.Errorf("strips %d and %d both show %s", i, i+1, s.Ring)
		}
		if own := map[string]string{"B1": "up", "B2": "up", "B3": "down", "B4": "down"}[s.Board]; s.Ring != own {
			t.Errorf("%s shows the knots of its back", s.Board)
		}
	}
}

// Worked by hand: 250 net want three strips of 100. Log a has two boards and log b three; all of one log, or it isn't made.
func TestMatesAreKeptTogether(t *testing.T) {
	stock := ""
	for k, log := range []string{"a", "b", "a", "b", "b"} {
		stock += fmt.Sprintf(`{"tag": "B%d", "length": 800, "width": 100, "price": %d, "mate": %q},`, k+1, 10+k, log)
	}
	panel := `{"tag": "A1", "length": 800, "width": %v, "mates": true}`
	a := boards(t, "", strings.TrimSuffix(stock, ","), fmt.Sprintf(panel, 250))
	if a.Cost != 11+13+14 {
		t.Errorf("cost %v, want that of the three boards of log b, 38", a.Cost)
	}
	if a := boards(t, "", strings.TrimSuffix(stock, ","), fmt.Sprintf(panel, 300)); len(a.Panels) != 0 || !strings.Contains(a.NotPlaced[0].Why, "log") {
		t.Errorf("made of %+v", a.Panels)
	}
}

// Worked by hand: a strip 100 wide is 98 net when both edges are jointed by 1, and 99 when by 1/2. Of a board with rough
// edges of 4 each 92 are ripped, 90 net; with one, the far one, 96 and 94; the panel's own edges are trimmed by 5 each.
func TestNetWidthIsWhatJointingAndTrimmingLeave(t *testing.T) {
	for _, c := range []struct {
		rough, net float64
		made       bool
	}{{0, 98, true}, {0, 98.5, false}, {1, 94, true}, {1, 94.5, false}, {2, 90, true}, {2, 90.5, false}} {
		stock := fmt.Sprintf(`{"tag": "B1", "length": 800, "width": 100, "rough_edges": %v}`, c.rough)
		a := boards(t, `"board_edge_trim": 4, "panel_edge_trim": 5,`, stock, fmt.Sprintf(`{"tag": "A1", "length": 800, "width": %v}`, c.net-10))
		if made := len(a.Panels) == 1; made != c.made {
			t.Errorf("%v rough edges, %v net: made %v", c.rough, c.net, made)
			continue
		}
		if from := map[float64]float64{0: 0, 1: 0, 2: 4}[c.rough]; c.made && a.Panels[0].Strips[0].At[1] < from {
			t.Errorf("%v rough edges: ripped from %v", c.rough, a.Panels[0].Strips[0].At[1])
		}
	}
}

// Worked by hand: strips of 500 + 2·10 leave 900 − 520 − 3 = 377 of a board at 20. Kept from 300 up, it is worth
// half of 20·377/900; from 378 up, nothing.
func TestATailIsWorthItsShareFromTheShortestKeptOn(t *testing.T) {
	for _, c := range []struct {
		tail string
		cost float64
	}{{"300", 15.811111}, {"377", 15.811111}, {"378", 20}} {
		a := boards(t, `"salvage": 0.5, "end_trim": 10, "min_tail": `+c.tail+`,`, plain, `{"tag": "A1", "length": 500, "width": 290}`)
		if a.Cost != c.cost || !a.Proven {
			t.Errorf("kept from %s: cost %v, bound %v, want %v proven", c.tail, a.Cost, a.Bound, c.cost)
		}
		if kept := len(a.Used[0].Left) == 1; kept != (c.cost < 20) {
			t.Errorf("kept from %s: left %v", c.tail, a.Used[0].Left)
		}
	}
}

// Worked by hand: 122 of 200 are ripped for A1, 75 fall off 800 long; A2 wants 450 × 72. Only a problem that says so
// has the offcut crosscut again.
func TestWhatFallsOffIsUsedWhereTheProblemSaysSo(t *testing.T) {
	stock := `{"tag": "B1", "length": 850, "width": 200, "price": 20}, {"tag": "B2", "length": 850, "width": 200, "price": 20}`
	panels := `{"tag": "A1", "length": 800, "width": 120}, {"tag": "A2", "length": 450, "width": 70}`
	for keys, cost := range map[string]float64{"": 40, `"recut": false,`: 40, `"recut": null,`: 40, `"recut": true,`: 20} {
		a := boards(t, `"strip": {"least": 30, "most": 150},`+keys, stock, panels)
		if a.Cost != cost || !a.Proven || a.BoundOf != nil {
			t.Errorf("%s cost %v, bound %v of %v, want %v proven", keys, a.Cost, a.Bound, a.BoundOf, cost)
		}
	}
	panels = strings.Replace(panels, "70}", "74}", 1) // a strip of 76, a millimetre too wide for the offcut
	a := boards(t, `"strip": {"least": 30, "most": 150}, "recut": true,`, stock, panels)
	if a.Cost != 40 || !a.Proven || a.BoundOf != nil { // and no line across a board holds both
		t.Errorf("cost %v, bound %v of %v", a.Cost, a.Bound, a.BoundOf)
	}
	stock += `, {"tag": "B3", "length": 850, "width": 200, "price": 20}`
	panels = `{"tag": "A1", "length": 450, "width": 170}, {"tag": "A2", "length": 580, "width": 200}` // the net width of two boards would do
	a = boards(t, `"strip": {"least": 30, "most": 150}, "recut": true,`, stock, panels)
	if a.Cost != 60 || a.BoundOf == nil || *a.BoundOf != "without recut" {
		t.Errorf("cost %v, bound %v of %v", a.Cost, a.Bound, a.BoundOf)
	}
}

func TestALayoutSaysWhatItsBoundIsTrueOf(t *testing.T) {
	text := `{"unit": "mm", "kerf": 3, "recut": true, "strip": {"least": 30, "most": 150},
		"boards": [{"tag": "B1", "length": 850, "width": 200}, {"tag": "B2", "length": 850, "width": 200}, {"tag": "B3", "length": 850, "width": 200}],
		"panels": [{"tag": "A1", "length": 450, "width": 170}, {"tag": "A2", "length": 580, "width": 200}]}`
	if out := string(run(t, wire.Panel, []byte(text), false)); !strings.Contains(out, "of all that crosscut first and then rip, each length for one kind of panel") {
		t.Error(out)
	}
	out := string(run(t, wire.Panel, []byte(text), true))
	wrong := strings.Replace(out, `"without recut"`, `"most of them"`, 1)
	if _, err := wire.Verify(wire.Panel, wire.File{Name: "f", Text: []byte(text)}, wire.File{Name: "layout", Text: []byte(wrong)}); err == nil || !strings.Contains(err.Error(), "bound_of") {
		t.Errorf("an unknown scope is read: %v", err)
	}
}
