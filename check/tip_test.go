package check

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/stability"
)

// wheels are casters with a swivel offset of 1 3/8 in.
var wheels = piece.Feet{Kind: piece.StemCaster, Wheel: 3 * in, Height: 4 * in, Offset: inch(1.375), RatedKg: 100}

// A stand of 99.2 lb with its middle at 22 in, trays of 36 lb at 35.525 in and 80 lb of soil at 9.375 in, on
// casters 12 in apart that swing in by 1.375 in. By hand: 4211.3 lb·in ÷ 215.2 lb = 19.569 in, and
// atan(4.625 ÷ 19.569) = 13.297°; without the soil 3461.3 ÷ 135.2 = 25.601 in, atan(4.625 ÷ 25.601) = 10.240°.
func TestTheTiltIsThatOfTheWorstCombination(t *testing.T) {
	stand, trays, soil := slab{99.2 * pound, 22}, slab{36 * pound, 35.525}, slab{80 * pound, 9.375}
	for name, c := range map[string]struct {
		p    *Piece
		want float64
		says string
	}{
		"soil that is always there": {block([2]float64{30, 12}, wheels, []slab{stand, soil}, trays), 13.297, "with everything it holds"},
		"soil that may be missing":  {block([2]float64{30, 12}, wheels, []slab{stand}, trays, soil), 10.240, "with thing 1 alone"},
	} {
		f := only(t, Tip(c.p), "to the back")
		near(t, name, f.Figure.Value, c.want, 0.01)
		says(t, f.Place, c.says)
		verdict(t, f, finding.Judge(c.want, 10, finding.AtLeast))
	}
}

// A wheel of 3 in needs more room to swing than one of 2 in: mounted farther in it makes the base smaller.
func TestSmallerWheelsNearTheCornersTipLater(t *testing.T) {
	own := []slab{{30, 20}}
	large, small := wheels, wheels
	small.Wheel, small.Offset = 2*in, inch(0.75)
	farIn := only(t, Tip(block([2]float64{20, 9}, large, own)), "to the back")
	atCorners := only(t, Tip(block([2]float64{22, 11}, small, own)), "to the back")
	if farIn.Figure.Value >= atCorners.Figure.Value {
		t.Errorf("large wheels far in %v°, small ones at the corners %v°", farIn.Figure.Value, atCorners.Figure.Value)
	}
}

// tiltRatio returns the tangent of the tilt at which the piece goes over with the things that are there.
func tiltRatio(s side, own stability.Mass, held []piece.Held, there []bool) float64 {
	inside, height := 0.0, 0.0
	for _, m := range with(own, held, there) {
		inside += m.Kg * s.inside(m.X.MM(), m.Y.MM())
		height += m.Kg * m.Z.MM()
	}
	return inside / height
}

func TestWorstCombinationIsTheWorstOfAllSubsets(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		over := side{at: [2]float64{0, 300}, out: [2]float64{0, 1}, in: length.FromMM(rapid.Float64Range(-40, 60).Draw(r, "in"))}
		own := asMass(rapid.Float64Range(1, 100).Draw(r, "kg"), 0, rapid.Float64Range(-200, 280).Draw(r, "y"), rapid.Float64Range(50, 900).Draw(r, "z"))
		held := rapid.SliceOfN(rapid.Custom(func(r *rapid.T) piece.Held {
			at := piece.Vec{Y: length.FromMM(rapid.Float64Range(-400, 500).Draw(r, "held y")), Z: length.FromMM(rapid.Float64Range(1, 1800).Draw(r, "held z"))}
			return piece.Held{MassKg: rapid.Float64Range(0, 80).Draw(r, "held kg"), Min: at, Max: at}
		}), 0, 10).Draw(r, "held")
		got := tiltRatio(over, own, held, worstHeld(over, own, held))
		least := math.Inf(1)
		for set := range 1 << len(held) {
			there := make([]bool, len(held))
			for i := range held {
				there[i] = set>>i&1 == 1
			}
			least = math.Min(least, tiltRatio(over, own, held, there))
		}
		if math.Abs(got-least) > 1e-9*(1+math.Abs(least)) {
			r.Fatalf("found %v, the worst of all is %v", got, least)
		}
	})
}

func TestAWiderBaseNeverTipsSooner(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		deep := rapid.Float64Range(4, 30).Draw(r, "deep")
		more := rapid.Float64Range(0, 20).Draw(r, "more")
		own := []slab{{rapid.Float64Range(1, 90).Draw(r, "kg"), rapid.Float64Range(2, 50).Draw(r, "z")}}
		var held []slab
		for range rapid.IntRange(0, 4).Draw(r, "things") {
			held = append(held, slab{rapid.Float64Range(0, 40).Draw(r, "held kg"), rapid.Float64Range(2, 70).Draw(r, "held z")})
		}
		narrow := only(t, Tip(block([2]float64{30, deep}, wheels, own, held...)), "to the back")
		wide := only(t, Tip(block([2]float64{30, deep + more}, wheels, own, held...)), "to the back")
		if wide.Figure.Value < narrow.Figure.Value-1e-6 {
			r.Fatalf("%v in deep %v°, %v in more %v°", deep, narrow.Figure.Value, more, wide.Figure.Value)
		}
	})
}

// The mend is the least: with it no combination lacks anything, with a tenth of a millimetre less one does.
func TestTheMoveOfTheFeetIsTheLeastThatMends(t *testing.T) {
	tangent := math.Tan(10 * math.Pi / 180)
	rapid.Check(t, func(r *rapid.T) {
		own := asMass(rapid.Float64Range(1, 100).Draw(r, "kg"), 0, rapid.Float64Range(-200, 280).Draw(r, "y"), rapid.Float64Range(50, 900).Draw(r, "z"))
		var held []piece.Held
		for range rapid.IntRange(0, 5).Draw(r, "things") {
			at := piece.Vec{Y: length.FromMM(rapid.Float64Range(-400, 500).Draw(r, "held y")), Z: length.FromMM(rapid.Float64Range(1, 1800).Draw(r, "held z"))}
			held = append(held, piece.Held{MassKg: rapid.Float64Range(0, 80).Draw(r, "held kg"), Min: at, Max: at})
		}
		over := side{at: [2]float64{0, 300}, out: [2]float64{0, 1}}
		move := stillLacks(over, own, held, tangent)
		moved := func(by float64) float64 {
			s := over
			s.at[1] += by
			return tiltRatio(s, own, held, worstHeld(s, own, held))
		}
		if moved(move) < tangent-1e-9 {
			r.Fatalf("moved %v mm it stands on %v, not %v", move, moved(move), tangent)
		}
		if move > 0.1 && moved(move-0.1) >= tangent {
			r.Fatalf("%v mm is more than it needs", move)
		}
	})
}

// 60 kg with its middle at 1 m on feet 200 mm apart: it needs 1000·tan 10° = 176.3 mm, has 100, so the feet on
// that side go out by 76.3 mm, 3 1/16 in on the tape.
func TestATallPieceIsToldHowFarItsFeetMustGoOut(t *testing.T) {
	p := block([2]float64{40, 200 / 25.4}, piece.Feet{Kind: piece.CapFoot}, []slab{{60, 1000 / 25.4}})
	f := only(t, Tip(p), "to the front")
	verdict(t, f, finding.Fails)
	near(t, "tilt", f.Figure.Value, math.Atan(0.1)*180/math.Pi, 1e-6)
	says(t, f.Mend, "3 1/16 in out, to the front", "anchor it to a wall")
	says(t, f.Caution, "anchor")
}

// 20 kg at 45 in and a board of 4 kg at 3 in, feet 12 in apart: the middle is at 38 in and needs 38·tan 10° =
// 6.70 in, has 6. On the board, whose top is at 4 in, each kg helps by 6 − 4·tan 10° = 5.29 in:
// 24 · 0.70 ÷ 5.29 = 3.18 kg.
func TestBallastLowDownMends(t *testing.T) {
	p := block([2]float64{40, 12}, piece.Feet{Kind: piece.CapFoot}, []slab{{20, 45}, {4, 3}})
	own, err := stability.Centre(p.bodies(p.standing[0])...)
	if err != nil {
		t.Fatal(err)
	}
	kg, on, ok := p.ballast(p.standing[0], p.base(p.standing[0].feet)[0], own, math.Tan(10*math.Pi/180))
	if !ok || on != "body 1" {
		t.Fatalf("%v kg on %q, %v", kg, on, ok)
	}
	near(t, "ballast", kg, 3.18, 0.01)
	says(t, only(t, Tip(p), "to the front").Mend, "3.2 kg on body 1 for good")
}

func TestFeetInALineAreNoBase(t *testing.T) {
	p := block([2]float64{30, 0}, piece.Feet{Kind: piece.CapFoot}, []slab{{10, 10}})
	fs := Tip(p)
	if len(fs) != 1 {
		t.Fatal(told(fs))
	}
	verdict(t, fs[0], finding.Unknown)
	says(t, fs[0].Missing, "three feet")
}

func TestWhatHangsOnAWallDoesNotTip(t *testing.T) {
	p := block([2]float64{30, 12}, wheels, []slab{{10, 40}})
	p.Nodes[0].ToWall = true
	p.frame = frames(p.Resolved)
	p.standing = p.apart()
	if fs := Tip(p); len(fs) != 0 {
		t.Error(told(fs))
	}
}

func TestAFrameWithoutFeetIsAskedWhatItStandsOn(t *testing.T) {
	p := derive(t, hoop)
	f := only(t, Tip(p), "the whole piece")
	verdict(t, f, finding.Unknown)
	says(t, f.Missing, "what it stands on")
}

// A flange of 3 1/2 in goes over on its rim: the base is 1 3/4 in wider on every side.
func TestFlangesUnderAPieceMakeItsBaseWider(t *testing.T) {
	caps, flanges := derive(t, table), derive(t, table, "feet: caps", "feet: flanges")
	plate := flanges.Nodes[flanges.Feet[0].Node].Fitting.Plate
	a, b := caps.base(caps.standing[0].feet)[0], flanges.base(flanges.standing[0].feet)[0]
	near(t, "base", b.inside(500, 250)-a.inside(500, 250), plate.Half().MM(), 1e-6)
	says(t, swung(b)[0], "rims")
}

func TestSidesAreNamedAsAPersonStandsBeforeThePiece(t *testing.T) {
	p := block([2]float64{30, 12}, wheels, []slab{{10, 10}})
	got := map[string]bool{}
	for _, s := range p.base(p.standing[0].feet) {
		got[s.towards()] = true
		if inside := s.inside((15 * in).MM(), (6 * in).MM()); inside <= 0 {
			t.Errorf("the middle lies %v mm inside the side %s", inside, s.towards())
		}
	}
	for _, to := range []string{"to the front", "to the back", "to the left", "to the right"} {
		if !got[to] {
			t.Errorf("no side %s", to)
		}
	}
}

func TestAFootInTheMiddleOfASideIsNoCorner(t *testing.T) {
	p := block([2]float64{30, 12}, wheels, []slab{{10, 10}})
	p.Feet = append(p.Feet, piece.Foot{Spec: p.Feet[0].Spec, At: piece.Vec{X: 15 * in}, Node: -1, Panel: 0})
	if sides := p.base([]int{0, 1, 2, 3, 4}); len(sides) != 4 {
		t.Errorf("%d sides", len(sides))
	}
}

func TestTipOfThingsOfNoSizeAndNoWeight(t *testing.T) {
	p := block([2]float64{30, 12}, wheels, []slab{{10, 10}}, slab{0, 30})
	p.Held[0].Max = p.Held[0].Min
	for _, f := range Tip(p) {
		if math.IsNaN(f.Figure.Value) || f.Figure.Unit != figure.Deg {
			t.Error(told([]finding.Finding{f}))
		}
	}
}

// What weighs at the wheels lies half way up to what they are fixed to.
func TestFeetWeighHalfWayUp(t *testing.T) {
	p := block([2]float64{30, 12}, wheels, []slab{{10, 20}})
	p.Feet[0].At.Z = 4 * in
	p.feet[0] = &part.Part{Kind: part.Hardware, MassKg: 1}
	bodies := p.bodies(p.standing[0])
	if last := bodies[len(bodies)-1]; last.Z != 2*in || last.Kg != 1 {
		t.Errorf("%+v", last)
	}
}

// On a tilt of 1 in 5: 10 kg at 500 mm, 50 mm inside, lack 100 − 50 = 50 mm; a thing of 5 kg at 100 mm, 10 mm inside,
// lacks 20 − 10 = 10 mm. Once the feet are 50 mm farther out the thing steadies the piece, and the worst is without it.
func TestAThingThatSteadiesAWiderPieceIsLeftOut(t *testing.T) {
	over := side{at: [2]float64{0, 300}, out: [2]float64{0, 1}}
	at := piece.Vec{Y: 290 * length.Millimetre, Z: 100 * length.Millimetre}
	move := stillLacks(over, asMass(10, 0, 250, 500), []piece.Held{{MassKg: 5, Min: at, Max: at}}, 0.2)
	near(t, "move", move, 50, 1e-9)
}
