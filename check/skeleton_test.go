package check

import (
	"fmt"
	"math"
	"strings"
	"testing"

	beams "rodwright/mechanics/frame"
	"rodwright/piece/random"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// legsOnly is a top on four legs that nothing else joins; its grain runs along it.
const legsOnly = `
rodwright: 1
piece: plain table
unit: in
fineness: 1/16
place: {room: studio, humidity: 30–60 %, temperature: 16–27 C}
wood: {species: white-oak, cut: flat, moisture: 8 %}
pipe: {standard: npt, size: 3/4}
posts:
  front: {at: front corners of top, inset: 3 in, from: feet, to: top}
  back: {at: back corners of top, inset: 3 in, from: feet, to: top}
panels:
  top: {length: 46 in, width: 26 in, thickness: 1 1/2 in, grain: along length, level: 30 in, sits: [on front posts, on back posts]}
feet: caps
`

// wholly are joints that do not give.
var wholly = gives{thread: beams.Rigid, flange: beams.Rigid, strap: beams.Rigid}

func sways(t testing.TB, p *Piece, g gives) [2]float64 {
	t.Helper()
	k := p.skeletonOf(p.standing[0])
	b := k.bound(g, k.loading())
	if b.err != nil {
		t.Fatal(b.err)
	}
	return [2]float64{b.sways[0].soft, b.sways[1].soft}
}

// Along its top the table is two portals on hinged feet, each under half of the push F and with half of the top as its
// beam: δ = (F/2)·h³/(12EI)·(2k + 1)/k, k = (EI of the beam ÷ EI)·(h ÷ w), Kleinlogel, Rigid Frame Formulas, from memory.
// White oak: the handbook's 12.3 GPa (FPL-GTR-282, Table 5-3b); strip 330.2 × 38.1 mm, I = 330.2·38.1³/12; w = 40 in; h the
// 28.5 in up to the flange's face, to which half of the top is added that the beam's axis lies above it. What the stub is
// shorter than the leg is left out, and 3 % are left to that.
func TestATableOnRigidJointsSwaysAsTwoPortals(t *testing.T) {
	p := derive(t, legsOnly)
	k := p.skeletonOf(p.standing[0])
	stuff, _, err := p.stuffOf(0)
	if err != nil {
		t.Fatal(err)
	}
	size, _ := pipe.Lookup("3/4")
	ei := 200_000 * size.SecondMoment()
	h, w := 28.5*25.4, 40*25.4
	for axis, c := range []struct{ beam, wide float64 }{
		{stuff.EL * 330.2 * math.Pow(38.1, 3) / 12, w},
		{stuff.ET * 584.2 * math.Pow(38.1, 3) / 12, 20 * 25.4},
	} {
		ratio := c.beam / ei * h / c.wide
		want := k.push().Value / 2 * h * h * h / (12 * ei) * (2*ratio + 1) / ratio
		near(t, fmt.Sprint("sway ", axis), sways(t, p, wholly)[axis], want, 0.03*want)
	}
}

// On hinged feet each of four legs bears a moment of F/4·h at its flange, whatever the joints: a joint of stiffness c turns
// by M/c, and the top moves by h times that besides. Statics.
func TestSoftJointsAddTheirTurningToTheSway(t *testing.T) {
	p := derive(t, legsOnly)
	f := p.skeletonOf(p.standing[0]).push().Value
	h := 28.5 * 25.4
	rigid, soft := sways(t, p, wholly), sways(t, p, softest)
	for axis := range rigid {
		want := f / 4 * h * h * (1/softest.flange + 1/softest.thread)
		near(t, "what the joints add", soft[axis]-rigid[axis], want, 0.01*want)
	}
}

// A push of 100 N on 30 kg is the 50 N at least; 1000 N and more a tenth of the weight. Common practice, no source.
func TestThePushIsATenthOfTheWeightAtLeastAHand(t *testing.T) {
	light := derive(t, legsOnly)
	near(t, "on a light table", light.skeletonOf(light.standing[0]).push().Value, 50, 1e-9)
	heavy := derive(t, legsOnly, "posts:", "holds:\n  - {name: parts, on: top, size: 9 × 9 × 9 in, weight: 200 kg}\nposts:")
	want := 0.1 * 9.80665 * (heavy.Parts.Totals.MassKg + 200)
	near(t, "on a loaded one", heavy.skeletonOf(heavy.standing[0]).push().Value, want, 1e-9*want)
}

// Force and moment about any point are those of the load, however the panel is borne.
func TestWhatIsSpreadOnAPanelKeepsItsForceAndMoment(t *testing.T) {
	for seed := range uint64(40) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range p.standing {
			k := p.skeletonOf(s)
			for i, on := range k.bears {
				if !on.fast || len(on.nodes) == 0 {
					continue
				}
				at, force := beams.Vec{123, -45, 0}, beams.Vec{7, -11, 13}
				left := cross(at, force)
				sum := force
				for _, q := range k.spread(i, at, force) {
					n, _ := k.find(q.Node)
					r := k.frame.Nodes[n].At
					m := cross(beams.Vec{r[0], r[1], 0}, q.Force)
					for x := range sum {
						sum[x] -= q.Force[x]
						left[x] -= m[x] + q.Moment[x]
					}
				}
				for x := range sum {
					if math.Abs(sum[x]) > 1e-9 || math.Abs(left[x]) > 1e-6 {
						t.Fatalf("seed %d, panel %d: left over %v, %v", seed, i, sum, left)
					}
				}
			}
		}
	}
}

// The frame weighs what its parts do.
func TestASkeletonWeighsWhatItsPartsDo(t *testing.T) {
	for seed := range uint64(60) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range p.standing {
			k := p.skeletonOf(s)
			if k.missing != "" || len(s.sticks) == 0 {
				continue
			}
			got, want := 0.0, 0.0
			for _, q := range k.weights {
				got -= q.Force[2] / gravity
			}
			for _, b := range p.bodies(s) {
				want += b.Kg
			}
			for _, i := range s.panels {
				if len(k.bears[i].nodes) == 0 && p.panels[i] != nil { // it hangs on nothing the document names
					want -= p.panels[i].MassKg
				}
			}
			near(t, fmt.Sprint("seed ", seed), got, want, 1e-6*want)
		}
	}
}

// rack is the text of a made-up rack of bays: two posts a bay, rails across and along them, boards on top.
func bays(n int) string {
	xs := func(y string) string {
		var at []string
		for i := range n + 1 {
			at = append(at, fmt.Sprintf("[%d in, %s]", 3+30*i, y))
		}
		return "[" + strings.Join(at, ", ") + "]"
	}
	return fmt.Sprintf(`rodwright: 1
piece: bays
unit: in
wood: white-oak
pipe: 3/4
posts:
  front: {at: %s, from: feet, to: top}
  back: {at: %s, from: feet, to: top}
rails:
  across: {joins: front with back, level: 10 in}
  long front: {joins: front posts, level: 20 in}
  long back: {joins: back posts, level: 20 in}
panels:
  top: {length: %d in, width: 26 in, thickness: 1 1/2 in, level: 36 in, at: [0, 0], sits: [on front posts, on back posts]}
feet: caps
`, xs("3 in"), xs("23 in"), 30*n+6)
}

// BenchmarkFrames works out made-up pieces of about 4, 40 and 400 sticks: sway and strength.
func BenchmarkFrames(b *testing.B) {
	for _, c := range []struct {
		name, text string
	}{{"4", legsOnly}, {"40", bays(3)}, {"400", bays(36)}} {
		b.Run(c.name, func(b *testing.B) {
			p := derive(b, c.text)
			for b.Loop() {
				p.racks = nil
				Sway(p)
				Strength(p)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(p.Sticks)), "ns/stick")
			b.ReportMetric(float64(len(p.Sticks)), "sticks")
		})
	}
}

// A stiff panel on four equal springs at the corners of a rectangle bears a load above one of them with ¼ + ¼ + ¼ of it there,
// ¼ at its neighbours and −¼ across. Statics of a stiff body on equal springs.
func TestALoadAboveOneLegIsSharedAsByEqualSprings(t *testing.T) {
	p := derive(t, legsOnly)
	k := p.skeletonOf(p.standing[0])
	nodes := k.bears[0].nodes
	above := k.frame.Nodes[nodes[0]].At
	for i, share := range k.shares(nodes, above) {
		at := k.frame.Nodes[nodes[i]].At
		want := 0.25
		switch x, y := at[0] == above[0], at[1] == above[1]; {
		case x && y:
			want = 0.75
		case !x && !y:
			want = -0.25
		}
		near(t, "share", share, want, 1e-9)
	}
}

// Two springs one behind the other give 1/k = 1/k1 + 1/k2.
func TestAPipeInAFlangeOnAWallIsTwoSpringsInARow(t *testing.T) {
	near(t, "soft", softest.springs(walled).Y, 1/(1/5e6+1/1e6), 1e-3)
	near(t, "stiff", stiffest.springs(walled).Z, 20e6, 1e-3)
	if s := softest.springs(firm); s != beams.Stiff {
		t.Errorf("a stick through a node gives: %v", s)
	}
}
