package check

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/stability"
)

const (
	in    = length.Inch
	pound = 0.45359237      // kg, the international pound of 1959, exact
	lbf   = pound * 9.80665 // N, with the standard gravity of 1901, exact
)

// inch gives a length in inches.
func inch(v float64) length.Length { return length.FromInches(v) }

// table is a top on four flanged legs that two end rails tie together near the floor, in a room of 30 to 60 %
// RH at 70 °F: the air of the notch example.
const table = `
rodwright: 1
piece: table
unit: in
fineness: 1/16
place: {room: studio, humidity: 30–60 %, temperature: 70–70 F, doors: {hall: 36 × 80 in}, ceiling: 96 in}
wood: {species: white-oak, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
posts:
  front: {at: front corners of top, inset: 3 in, from: feet, to: top}
  back: {at: back corners of top, inset: 3 in, from: feet, to: top}
rails:
  end: {joins: front with back, level: 6 in}
panels:
  top: {length: 40 in, width: 20.5 in, thickness: 1 1/8 in, grain: along length, level: 29 in, sits: [on front posts, on back posts]}
feet: caps
`

// derive reads, resolves and takes off a document, each pair of texts replaced first.
func derive(t testing.TB, text string, changes ...string) *Piece {
	t.Helper()
	return deriveWith(t, shop.Sample(), text, changes...)
}

func deriveWith(t testing.TB, s *shop.Shop, text string, changes ...string) *Piece {
	t.Helper()
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			t.Fatalf("the document lacks %q", changes[i])
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	p, err := tryDerive(s, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func tryDerive(s *shop.Shop, text []byte) (*Piece, error) {
	doc, err := piece.Read("test.piece.yaml", text)
	if err != nil {
		return nil, err
	}
	r, err := piece.Resolve(doc, s)
	if err != nil {
		return nil, err
	}
	l, err := part.TakeOff(r, s)
	if err != nil {
		return nil, err
	}
	return Of(r, l, s), nil
}

// only returns the one finding whose place has all the words.
func only(t testing.TB, fs []finding.Finding, words ...string) finding.Finding {
	t.Helper()
	var found []finding.Finding
next:
	for _, f := range fs {
		for _, w := range words {
			if !strings.Contains(f.Place, w) {
				continue next
			}
		}
		found = append(found, f)
	}
	if len(found) != 1 {
		t.Fatalf("%d findings speak of %q, want one of:\n%s", len(found), words, told(fs))
	}
	return found[0]
}

// told prints findings for a test's message.
func told(fs []finding.Finding) string {
	var b strings.Builder
	for _, f := range fs {
		fmt.Fprintf(&b, "%s %s at %s: %s %s, limit %s; missing %q, mend %q\n", f.Check, f.Verdict, f.Place,
			f.Figure.Name, f.Figure.Show(length.SixtyFourth), f.Limit.Show(length.SixtyFourth), f.Missing, f.Mend)
	}
	return b.String()
}

// verdict checks the verdict of a finding.
func verdict(t testing.TB, f finding.Finding, want finding.Verdict) {
	t.Helper()
	if f.Verdict != want {
		t.Errorf("%s, want %s", strings.TrimSpace(told([]finding.Finding{f})), want)
	}
}

// near checks a value within a tolerance.
func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %v, want %v ± %v", what, got, want, tolerance)
	}
}

// because returns the reason of that name.
func because(t testing.TB, f finding.Finding, name string) figure.Figure {
	t.Helper()
	for _, b := range f.Because {
		if b.Name == name {
			return b
		}
	}
	t.Fatalf("no reason %q among %v", name, f.Because)
	return figure.Figure{}
}

// says checks that a text has the words.
func says(t testing.TB, text string, words ...string) {
	t.Helper()
	for _, w := range words {
		if !strings.Contains(text, w) {
			t.Errorf("%q does not say %q", text, w)
		}
	}
}

// slab is a body of the given mass whose middle lies at a height above the middle of the base.
type slab struct{ kg, z float64 }

// block builds a piece by hand: four feet at the corners of a base, along and deep in inches, bodies over
// its middle, and things held there, heights in inches.
func block(base [2]float64, feet piece.Feet, own []slab, held ...slab) *Piece {
	r := &piece.Resolved{Doc: &piece.Document{Fineness: length.Sixteenth, Feet: feet}}
	l := &part.List{FootTags: []string{"H1.1", "H1.2", "H1.3", "H1.4"}}
	x, y := inch(base[0]), inch(base[1])
	body := func(z float64) (lo, hi piece.Vec) {
		return piece.Vec{X: x.Half() - in, Y: y.Half() - in, Z: inch(z) - in}, piece.Vec{X: x.Half() + in, Y: y.Half() + in, Z: inch(z) + in}
	}
	// every body stands on the same feet, and hangs together with the others by one joint
	seats := []piece.PanelSeat{{Kind: piece.ByPlace, Node: 0, Stick: -1, Foot: -1}}
	r.Nodes = []piece.Node{{At: piece.Vec{X: x.Half(), Y: y.Half()}, Panel: -1, Foot: -1}}
	for i, at := range []piece.Vec{{}, {X: x}, {Y: y}, {X: x, Y: y}} {
		r.Feet = append(r.Feet, piece.Foot{Spec: &r.Doc.Feet, At: at, Node: -1, Panel: 0, Name: "foot"})
		seats = append(seats, piece.PanelSeat{Kind: piece.OnFeet, Node: -1, Stick: -1, Foot: i})
	}
	for i, b := range own {
		lo, hi := body(b.z)
		r.Panels = append(r.Panels, piece.FlatPanel{Spec: &piece.Panel{}, Name: fmt.Sprintf("body %d", i), Min: lo, Max: hi, Seats: seats})
		tag := fmt.Sprintf("A%d", i+1)
		l.Parts = append(l.Parts, part.Part{Kind: part.Panel, Name: "body", Tag: tag, Tags: []string{tag + ".1"}, Count: 1, MassKg: b.kg, Indexes: []int{i}})
		l.PanelTags = append(l.PanelTags, tag+".1")
		l.Totals.MassKg += b.kg
	}
	for i, h := range held {
		lo, hi := body(h.z)
		spec := &piece.Hold{Name: fmt.Sprintf("thing %d", i+1), MassKg: h.kg, Count: 1}
		r.Held = append(r.Held, piece.Held{Spec: spec, Name: spec.Name, Panel: 0, Min: lo, Max: hi, MassKg: h.kg})
	}
	return Of(r, l, shop.Sample())
}

// asMass is a mass with its place in millimetres.
func asMass(kg, x, y, z float64) stability.Mass {
	return stability.Mass{Kg: kg, X: length.FromMM(x), Y: length.FromMM(y), Z: length.FromMM(z)}
}
