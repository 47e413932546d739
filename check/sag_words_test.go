package check

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"rodwright/finding"
	bend "rodwright/mechanics/plate"
	"rodwright/piece"
)

func assumedOf(f finding.Finding) string { return strings.Join(f.Assumptions(), "\n") }

// Published answers go wrong where ends that only rest are taken as held, which makes them sag a fifth of what they do. A verdict
// says in words which of both it takes, how the board is sawn, and what time adds.
func TestAVerdictOnSagSaysHowThePanelIsHeldSawnAndLoaded(t *testing.T) {
	p := loaded(t, "100")
	at, end := sagOf(t, p, "top"), sagOf(t, p, "top, in the end")
	for _, words := range []string{
		"rests on 4 flanges, free to turn over its axis, held down", "so fast that it can't turn, it would sag by about", "flat-sawn",
		"its own weight and the one thing it holds", "clear wood at 12 % moisture content",
	} {
		if !strings.Contains(assumedOf(at), words) {
			t.Errorf("%q is not said:\n%s", words, assumedOf(at))
		}
	}
	if !strings.Contains(assumedOf(end), "a load that stays, in dry air") {
		t.Errorf("what time adds is not said:\n%s", assumedOf(end))
	}
	if f := sagOf(t, derive(t, wallShelf), "shelf"); !strings.Contains(assumedOf(f), "strapped") && !strings.Contains(assumedOf(f), "free to turn and to lift") {
		t.Errorf("a shelf on arms:\n%s", assumedOf(f))
	}
}

// Held fast a panel sags less, but no less than by the fifth that a beam does.
func TestHeldFastAPanelSagsLess(t *testing.T) {
	p := loaded(t, "100")
	stuff, _, err := p.stuffOf(0)
	if err != nil {
		t.Fatal(err)
	}
	model := p.plateOf(0)
	text := p.heldFast(model, stuff)
	var least float64
	for _, w := range strings.Fields(text) {
		if v, err := strconv.ParseFloat(w, 64); err == nil {
			least = v
		}
	}
	if sag := sagOf(t, p, "top").Figure.Value; least <= 0.12*sag || least >= sag {
		t.Errorf("%q, and sags %v", text, sag)
	}
	model.Posts = nil
	if p.heldFast(model, stuff) != "" {
		t.Error("a panel without flanges is held by them")
	}
}

// What the document says may come upon a panel presses at once, and not in the end.
func TestAWeightThatMayComeUponAPanelCountsAtOnceOnly(t *testing.T) {
	p := loaded(t, "60")
	bare, end := sagOf(t, p, "top"), sagOf(t, p, "top, in the end")
	p.Doc.Loads = []piece.Load{{Name: "a person sits", On: p.Panels[0].Spec.Name, MassKg: 80}, {Name: "a push", On: p.Panels[0].Spec.Name, PushN: 100}}
	sat, sat2 := sagOf(t, p, "top"), sagOf(t, p, "top, in the end")
	// By hand: 80 kg in the middle of 34 in, P·L³/48EI, E = 1.78·10⁶ psi, I = 0.949 in⁴ (see above).
	more := 80 * gravity / lbf * 34 * 34 * 34 / (48 * 1.78e6 * 0.949) * 25.4
	if got := sat.Figure.Value - bare.Figure.Value; math.Abs(got-more) > 0.06*more {
		t.Errorf("80 kg in the middle add %.3f mm, by hand %.3f", got, more)
	}
	if sat2.Figure.Value != end.Figure.Value {
		t.Errorf("in the end %v mm, before %v", sat2.Figure.Value, end.Figure.Value)
	}
	if !strings.Contains(assumedOf(sat), "a person sits; in the end only what stays") || strings.Contains(assumedOf(sat), "a push") {
		t.Errorf("%s", assumedOf(sat))
	}
	for side, less := range map[piece.PanelSide]bool{piece.FrontSide: false, piece.LeftSide: true} {
		p.Doc.Loads[0].Edge = side
		if got := sagOf(t, p, "top").Figure.Value; got < sat.Figure.Value != less && math.Abs(got-sat.Figure.Value) > 0.05*got {
			t.Errorf("at its %s edge: %v mm, in the middle %v", side, got, sat.Figure.Value)
		}
	}
}

// As thick as the mend says, the panel stands.
func TestAPanelAsThickAsTheMendSaysStands(t *testing.T) {
	for _, pounds := range []string{"300", "900"} {
		f := sagOf(t, loaded(t, pounds), "top")
		_, rest, ok := strings.Cut(f.Mend, "make top ")
		thick, _, ok2 := strings.Cut(rest, " thick instead of")
		if f.Verdict != finding.Fails || !ok || !ok2 {
			t.Fatalf("%s lb: %v, %q", pounds, f.Verdict, f.Mend)
		}
		if g := sagOf(t, loaded(t, pounds, "thickness: 1 1/8 in", "thickness: "+thick), "top"); g.Verdict == finding.Fails || g.Figure.Value < 0.75*g.Limit.Value {
			t.Errorf("%s lb on %s: %v of %v", pounds, thick, g.Figure.Value, g.Limit.Value)
		}
	}
}

func TestThePictureOfABentPanelIsItsSag(t *testing.T) {
	f := sagOf(t, loaded(t, "100"), "top")
	b := f.Picture.Bent
	if b == nil {
		t.Fatal("no picture")
	}
	deepest := 0.0
	for _, w := range b.Down {
		if !math.IsNaN(w) {
			deepest = max(deepest, w)
		}
		if math.Abs(w*1000-math.Round(w*1000)) > 1e-6 {
			t.Fatalf("%v is not to three places", w)
		}
	}
	if len(b.Down) != 33*17 || b.Columns != 33 || len(b.Supports) != 4 || math.Abs(deepest-f.Figure.Value) > 0.02*f.Figure.Value {
		t.Errorf("%d points, %d along, %d supports, deepest %v of %v", len(b.Down), b.Columns, len(b.Supports), deepest, f.Figure.Value)
	}
}

func TestThePictureOfAHoledPanelHasNoWoodInItsHole(t *testing.T) {
	p := loaded(t, "100")
	model := p.plateOf(0)
	model.Openings = append(model.Openings, bend.Rect{X: model.Width/2 - 60, Y: 40, W: 120, H: 100})
	stuff, _, err := p.stuffOf(0)
	if err != nil {
		t.Fatal(err)
	}
	bent, err := p.bend(model, stuff)
	if err != nil {
		t.Fatal(err)
	}
	b := bentPicture(model, bent.Field).Bent
	if !math.IsNaN(b.Down[16+b.Columns*7]) || math.IsNaN(b.Down[16+b.Columns*16]) || math.IsNaN(b.Down[0]) {
		t.Error("wood where the hole is, or none beside it")
	}
}

// Span ÷ 600 at once, ÷ 384 in the end, a third of white oak's 15 200 psi (Wood Handbook Table 5-3b, from memory).
func TestTheLimitsOfSagAndStressAreTheShopsAndTheWoods(t *testing.T) {
	p := loaded(t, "100")
	at, end, stress := sagOf(t, p, "top"), sagOf(t, p, "top, in the end"), sagOf(t, p, "top, its stress")
	if r := end.Limit.Value / at.Limit.Value; math.Abs(r-600.0/384) > 1e-9 {
		t.Errorf("in the end %v times the limit at once", r)
	}
	if got := stress.Limit.Value / 0.006894757; math.Abs(got-15_200.0/3) > 1 {
		t.Errorf("stress may be %v psi", got)
	}
}

func TestALoadPressesInTheMiddleOfItsEdge(t *testing.T) {
	model := &bend.Plate{Width: 800, Depth: 300}
	for side, want := range map[piece.PanelSide][2]float64{
		piece.FrontSide: {400, 0}, piece.BackSide: {400, 300}, piece.LeftSide: {0, 150}, piece.RightSide: {800, 150}, piece.NoSide: {400, 150},
	} {
		if x, y := placeOf(piece.Load{Edge: side}, model); x != want[0] || y != want[1] {
			t.Errorf("%q: %v, %v", side, x, y)
		}
	}
}
