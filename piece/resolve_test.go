package piece

import (
	"fmt"
	"os"
	"reflect"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
	"rodwright/trade/wood"
)

// count returns how many joints of a kind a piece has.
func count(r *Resolved, kind pipe.Kind) (n int) {
	for i := range r.Nodes {
		if r.Nodes[i].Kind == kind {
			n++
		}
	}
	return n
}

func TestSteppedStandHasThirteenPipesFourteenJointsAndNoLoop(t *testing.T) {
	r := resolved(t, stand(t))
	if len(r.Sticks) != 13 || len(r.Nodes) != 14 || r.Groups != 1 || len(r.Loops) != 0 {
		t.Errorf("%d pipes, %d joints, %d groups, %d loops", len(r.Sticks), len(r.Nodes), r.Groups, len(r.Loops))
	}
	for kind, want := range map[pipe.Kind]int{pipe.Cap: 4, pipe.Tee: 6, pipe.Flange: 4, pipe.Union: 0} {
		if got := count(r, kind); got != want {
			t.Errorf("%d of %s, want %d", got, kind, want)
		}
	}
}

// The take-outs are those of 3/4 NPT: 1.31 − 0.5625 for a tee, 0.85 − 0.5625 for a flange, 0.97 − 0.5625 for a cap
// (ASME B16.3 and the fitters' engagement; flange from memory). The lengths are worked out by hand.
func TestSteppedStandCutLengths(t *testing.T) {
	r := resolved(t, stand(t))
	for name, want := range map[string]float64{
		"left side rail":     13.5 - 2*0.7475,
		"back rail":          36.5 - 2*0.7475,
		"front left post 1":  4.5 - 0.4075 - 0.7475,
		"front right post 2": 16.4375 - 8.5 - 0.7475 - 0.2875,
		"back left post 2":   15.9125 - 8.5 - 2*0.7475,
		"back right post 3":  37.4375 - 15.9125 - 0.7475 - 0.2875,
	} {
		if got := cut(t, r, name); got != inch(want) {
			t.Errorf("%s: cut %.4f in, want %.4f", name, got.Inches(), want)
		}
	}
}

func TestSteppedStandPlaces(t *testing.T) {
	r := resolved(t, stand(t))
	for name, want := range map[string][2]Vec{
		"deep board": {{0, 0, inch(16.4375)}, {inch(42), inch(19), inch(17.5)}},
		// centred on the back posts, whose axes are 2 3/4 in from the deep board's back edge
		"high board": {{inch(0.5), inch(11.75), inch(37.4375)}, {inch(41.5), inch(20.75), inch(38.5)}},
	} {
		if p := panelNamed(t, r, name); p.Min != want[0] || p.Max != want[1] {
			t.Errorf("%s from %v to %v, want %v", name, p.Min, p.Max, want)
		}
	}
	want := []string{"front left post 1", "front left post 2", "front right post 1", "front right post 2",
		"back left post 1", "back left post 2", "back left post 3", "back right post 1", "back right post 2", "back right post 3",
		"left side rail", "right side rail", "back rail"}
	var names []string
	for _, s := range r.Sticks {
		names = append(names, s.Name)
	}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Error(diff)
	}
	if n := nodeAt(t, r, 2.75, 2.75, 8.5); n.Place != "front left post at side rail" || n.Kind != pipe.Tee ||
		!slices.Equal(n.Dirs, []Dir{{0, 1, 0}, {0, 0, 1}, {0, 0, -1}}) {
		t.Errorf("%s %q %v", n.Kind, n.Place, n.Dirs)
	}
	if r.Min != (Vec{}) || r.Max != (Vec{inch(42), inch(20.75), inch(38.5)}) || r.Wall != nil {
		t.Errorf("from %v to %v, wall %v", r.Min, r.Max, r.Wall)
	}
}

const standText = `rodwright: 1
piece: stepped seedling stand
unit: in
fineness: 1/16
place: {room: greenhouse, humidity: 30–60 %, temperature: 70–70 F}
wood:  {species: white-oak, cut: flat, moisture: 8 %}
pipe:  {standard: npt, size: 3/4}
sizes:
  length:     42 in
  depth:      19 in
  low level:  17 1/2 in
  high level: low level + 21 in
  side inset: 2 3/4 in
posts:
  front: {at: front corners of deep board, inset: side inset, from: feet, to: deep board}
  back:  {at: back corners of deep board,  inset: side inset, from: feet, to: high board}
rails:
  side: {joins: front with back, level: 8 1/2 in}
  back: {joins: back posts, under: deep board, bands: relieved}
panels:
  deep board: {length: length, width: depth, thickness: 1 1/16 in, grain: along length, level: low level, sits: [on front posts, on back rail, around back posts]}
  high board: {length: length - 1 in, width: 9 in, thickness: 1 1/16 in, grain: along length, level: high level, sits: on back posts}
feet:
  casters: {kind: stem, fixed: through drilled caps, wheel: 3 in, height: 4 in, offset: 1 1/8 in, rated: 110 lb, locks: 2}
holes:
  drains: {in: deep board, along: front edge, from edge: 1 1/2 in, diameter: 5/8 in, count: 5}
`

func TestWrittenAndBuiltDocumentsResolveAlike(t *testing.T) {
	doc, err := Read("stand.piece.yaml", []byte(standText))
	if err != nil {
		t.Fatal(err)
	}
	written, built := resolved(t, doc), resolved(t, stand(t))
	if len(written.Sticks) != len(built.Sticks) || len(written.Nodes) != len(built.Nodes) {
		t.Fatalf("%d sticks, %d joints written, %d and %d built", len(written.Sticks), len(written.Nodes), len(built.Sticks), len(built.Nodes))
	}
	for i, n := range written.Nodes {
		if o := built.Nodes[i]; n.At != o.At || n.Kind != o.Kind || n.Place != o.Place {
			t.Errorf("%s %s %v written, %s %s %v built", n.Kind, n.Place, n.At, o.Kind, o.Place, o.At)
		}
	}
	for i, p := range written.Panels {
		if o := built.Panels[i]; p.Min != o.Min || p.Max != o.Max || len(p.Features) != len(o.Features) || p.HeldAt != o.HeldAt {
			t.Errorf("%s from %v to %v with %d features written, %v to %v with %d built", p.Name, p.Min, p.Max, len(p.Features), o.Min, o.Max, len(o.Features))
		}
	}
}

func TestResolvingTwiceGivesTheSame(t *testing.T) {
	for _, doc := range []*Document{stand(t), boxFrame(t), rack(t, 3)} {
		if one, two := resolved(t, doc), resolved(t, doc); !reflect.DeepEqual(one, two) {
			t.Errorf("%+v\n%+v", one, two)
		}
	}
}

// The chain of a table's end: a panel on plate casters of 5 1/8 in, posts that stand on it, rails at 15 1/2 and
// 32 1/2 in and elbows at 52 in. The cuts are computed by hand: A 1.31, e 0.5625, F 0.85 in.
func TestPipeChain(t *testing.T) {
	d := blank(t)
	d.Feet = Feet{Kind: PlateCaster, Panel: "base", Inset: inch(2), Wheel: inch(4), Height: inch(5.125), Offset: inch(1.4), Locks: 2}
	d.Panels = []Panel{plank("base", 30, 15, 1.25, 0)}
	d.Posts = []Posts{{Name: "side", Panel: "base", Corners: []Corner{BackLeft, BackRight}, InsetX: inch(2), InsetY: inch(2), From: toPanel("base"), To: toRail("top")}}
	d.Rails = []Rails{{Name: "low", From: "side", Level: inch(15.5)}, {Name: "mid", From: "side", Level: inch(32.5)}, {Name: "top", From: "side", Level: inch(52)}}
	r := resolved(t, d)
	for name, want := range map[string]float64{"back left side post 1": 8.090, "back left side post 2": 15.505, "back left side post 3": 18.005} {
		if got := cut(t, r, name); got != inch(want) {
			t.Errorf("%s: cut %.4f in, want %.3f", name, got.Inches(), want)
		}
	}
	if n := nodeAt(t, r, 2, 13, 52); n.Kind != pipe.Elbow90 {
		t.Errorf("a %s at the top", n.Kind)
	}
	if n := nodeAt(t, r, 2, 13, 6.375); n.Kind != pipe.Flange || n.Panel != 0 {
		t.Errorf("a %s on the base, on panel %d", n.Kind, n.Panel)
	}
}

func TestAirOfTheCorners(t *testing.T) {
	d := stand(t)
	d.Place = Place{LowRH: 45, HighRH: 75, LowC: 10, HighC: 32, AirAssumed: true, Room: "greenhouse"}
	a := resolved(t, d).Air
	dry, err := wood.EMC(32, 45)
	if err != nil {
		t.Fatal(err)
	}
	wet, err := wood.EMC(10, 75)
	if err != nil {
		t.Fatal(err)
	}
	if a.BuildMC != 8 || a.DryMC != dry.Value || a.WetMC != wet.Value || len(a.Figures) != 2 || len(a.Assumed) != 1 {
		t.Errorf("%+v", a)
	}
	d.Place.HighC = 150
	refused(t, d, "driest air")
}

func TestWoodOfThePlaceIsRefusedWithoutData(t *testing.T) {
	d := stand(t)
	d.Wood.Species = wood.Species{ID: "driftwood"}
	d.Wood.Cut = wood.Flat
	d.Place.HighRH = 95
	refused(t, d, "movement of deep board")
}

func BenchmarkResolveStand(b *testing.B) {
	d, s := stand(b), shop.Sample()
	for b.Loop() {
		if _, err := Resolve(d, s); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkResolveRack resolves a rack of twelve shelves round four posts, over sixty sticks.
func BenchmarkResolveRack(b *testing.B) {
	d, s := rack(b, 12), shop.Sample()
	b.ReportMetric(float64(len(resolved(b, d).Sticks)), "sticks")
	for b.Loop() {
		if _, err := Resolve(d, s); err != nil {
			b.Fatal(err)
		}
	}
}

// rack is a rack of n shelves, each on a front and a back rail and round four posts.
func rack(t testing.TB, n int) *Document {
	d := blank(t)
	d.Feet = Feet{Kind: CapFoot}
	d.Posts = []Posts{{Name: "legs", At: [][2]length.Length{at(2, 2), at(46, 2), at(2, 14), at(46, 14)}, From: fromFeet, To: toLevel(float64(8*n+4), pipe.Cap)}}
	for i := range n {
		shelf := fmt.Sprint("shelf ", i+1)
		d.Rails = append(d.Rails, Rails{Name: shelf + " sides", From: "legs", Level: inch(float64(8*i + 4))})
		d.Panels = append(d.Panels, plank(shelf, 48, 16, 0.75, 0, Seat{Kind: OnRails, Group: shelf + " sides"}, Seat{Kind: AroundPosts, Group: "legs"}))
	}
	return d
}

func ExampleResolve() {
	text, err := os.ReadFile("testdata/bench.piece.yaml")
	if err != nil {
		fmt.Println(err)
		return
	}
	doc, err := Read("bench.piece.yaml", text)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := Resolve(doc, shop.Sample())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range r.Sticks {
		fmt.Println(s.Name, doc.Fineness.Text(s.Between), r.Nodes[s.A].Kind, r.Nodes[s.B].Kind)
	}
	// Output:
	// front left post 1 6 in cap tee
	// front left post 2 9 in tee flange
	// front right post 1 6 in cap tee
	// front right post 2 9 in tee flange
	// end rail 12 in tee tee
}
