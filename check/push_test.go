package check

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/stability"
)

// Worked by hand: 99.2 lb of stand and 36 lb of trays that stay on it, casters 12 in apart that swing in by 1.375 in:
// 135.2 lbf · 4.625 in ÷ 52 in = 12.025 lbf = 53.490 N at 52 in above the floor.
func TestThePushThatTipsAPieceAtItsTop(t *testing.T) {
	p := block([2]float64{30, 12}, wheels, []slab{{99.2 * pound, 22}, {36 * pound, 35.525}})
	p.Nodes[0].At.Z = 52 * in
	f := only(t, Push(p), "pushed at its top")
	near(t, "push", f.Figure.Value, 53.490, 53.490*0.005)
	near(t, "asked", f.Limit.Value, 13.52*lbf, 0.01) // a tenth of 135.2 lbf
	verdict(t, f, finding.Fails)
	// it needs 0.1 · 52 = 5.2 in inside the feet and has 4.625: 0.575 in, 5/8 on the tape
	says(t, f.Mend, "5/8 in out")
	// at the highest board, whose face is at 36.525 in: 135.2 · 4.625 ÷ 36.525 = 17.120 lbf
	near(t, "at the board", because(t, f, "tipping push at body 1").Value, 17.120*lbf, 0.01)
}

// 500 lb with its middle 19 in inside the feet, loaded 19 in outside them: 500 · 19 ÷ 19 = 500 lbf.
func TestLoadOnAnEdgeThatTipsATable(t *testing.T) {
	p := block([2]float64{60, 38}, piece.Feet{Kind: piece.CapFoot}, []slab{{500 * pound, 20}})
	for out, want := range map[float64]float64{19: 500, 38: 250, 9.5: 1000} {
		p.Panels[0].Min.Y, p.Panels[0].Max.Y = inch(-out), inch(38+out)
		near(t, "load on the edge", only(t, Push(p), "leant on").Figure.Value, want*lbf, want*0.03*lbf)
		verdict(t, only(t, Push(p), "leant on"), finding.Stands)
	}
}

// 5 kg on feet 8 in apart, its board 6 in beyond them: 49.03 · 4 ÷ 6 = 32.7 N. Pressed with 100 N it needs x more, where
// 49.03·(4 + x) = 100·(6 − x): x = 403.9 ÷ 149.03 = 2.710 in, 2 3/4 on the tape.
func TestALightTableThatIsLeantOnGoesOver(t *testing.T) {
	p := block([2]float64{60, 8}, piece.Feet{Kind: piece.CapFoot}, []slab{{5, 20}})
	p.Panels[0].Min.Y, p.Panels[0].Max.Y = inch(-6), inch(14)
	f := only(t, Push(p), "leant on")
	near(t, "load", f.Figure.Value, 32.69, 0.01)
	verdict(t, f, finding.Fails)
	says(t, f.Mend, "2 3/4 in out")
}

func TestNothingIsLeantOnWhereNoBoardStandsOut(t *testing.T) {
	for _, f := range Push(block([2]float64{30, 12}, wheels, []slab{{50, 20}})) {
		if f.Place[:6] == "leant " {
			t.Error(told([]finding.Finding{f}))
		}
	}
}

// 40 kg on feet 20 in apart. A child of 30 kg on the edge, 5 in beyond the feet, lifts 294.2 N · 5 against 392.3 · 10: it
// tips at 392.3 · 10 ÷ 5 = 784.5 N. Pushed with 150 N at a height of 21 in: it tips at 392.3 · 10 ÷ 21 = 186.8 N.
func TestTheDocumentsOwnLoads(t *testing.T) {
	p := block([2]float64{40, 20}, piece.Feet{Kind: piece.CapFoot}, []slab{{40, 20}})
	p.Panels[0].Min, p.Panels[0].Max = piece.Vec{X: -5 * in, Y: -5 * in, Z: 19 * in}, piece.Vec{X: 45 * in, Y: 25 * in, Z: 21 * in}
	p.Doc.Loads = []piece.Load{
		{Name: "child", On: "body 0", Edge: piece.FrontSide, MassKg: 30}, {Name: "bump", On: "body 0", Towards: piece.BackSide, PushN: 150},
		{Name: "lamp", On: "body 0", At: &[2]length.Length{25 * in, 15 * in}, MassKg: 300}, {Name: "piano", On: "body 0", Edge: piece.FrontSide, MassKg: 81},
	}
	fs := Push(p)
	near(t, "child", only(t, fs, "child").Figure.Value, 784.5, 0.1)
	verdict(t, only(t, fs, "child"), finding.Stands)
	near(t, "bump", only(t, fs, "bump").Figure.Value, 186.8, 0.1)
	near(t, "bump asked", only(t, fs, "bump").Limit.Value, 150, 0)
	verdict(t, only(t, fs, "bump"), finding.Stands)
	near(t, "lamp", only(t, fs, "lamp").Figure.Value, 254, 1e-6) // in the middle, 10 in inside
	verdict(t, only(t, fs, "lamp"), finding.Stands)
	// 81 kg weigh 794.3 N; 40·(10 + x) = 81·(5 − x): x = 5 ÷ 121 = 0.041 in, 1/16 on the tape
	verdict(t, only(t, fs, "piano"), finding.Fails)
	says(t, only(t, fs, "piano").Mend, "1/16 in out")
}

// A heavier thing that stands outside the feet, or on top, never lets a piece bear more.
func TestNoPushOrTiltGetsBetterWhenAThingGetsHeavier(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		own := []slab{{rapid.Float64Range(2, 80).Draw(r, "own"), rapid.Float64Range(5, 30).Draw(r, "high")}}
		kg, more := rapid.Float64Range(0, 60).Draw(r, "thing"), rapid.Float64Range(0, 60).Draw(r, "more")
		x, y := rapid.Float64Range(-5, 35).Draw(r, "x"), rapid.Float64Range(-9, 25).Draw(r, "y")
		other := slab{rapid.Float64Range(0, 30).Draw(r, "other"), rapid.Float64Range(2, 60).Draw(r, "other high")}
		of := func(kg float64) (out []finding.Finding) {
			p := block([2]float64{30, 14}, wheels, own, slab{kg, 40}, other)
			at := piece.Vec{X: inch(x), Y: inch(y), Z: 40 * in}
			p.Held[0].Min, p.Held[0].Max = at, piece.Vec{X: at.X + in, Y: at.Y + in, Z: at.Z + in}
			p.Panels[0].Min.Y, p.Panels[0].Max.Y = -2*in, 16*in
			p.Doc.Loads = []piece.Load{{Name: "lean", On: "body 0", Edge: piece.FrontSide, MassKg: 20}, {Name: "push", On: "body 0", Towards: piece.LeftSide, PushN: 60}}
			tips := Tip(p)
			worst := tips[0]
			for _, f := range tips {
				if f.Figure.Value < worst.Figure.Value {
					worst = f
				}
			}
			return append(append(out, worst), append(Push(p), Threshold(p)...)...)
		}
		light, heavy := of(kg), of(kg+more)
		for i, f := range light {
			if heavy[i].Figure.Value > f.Figure.Value+1e-6*(1+math.Abs(f.Figure.Value)) {
				r.Fatalf("%s: %v with %v kg, %v with %v more", f.Place, f.Figure.Value, kg, heavy[i].Figure.Value, more)
			}
		}
	})
}

// The least moment is the least of all subsets.
func TestTheLeastMomentIsThatOfAllSubsets(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		p := block([2]float64{30, 12}, wheels, []slab{{20, 20}})
		s := p.standing[0]
		for range rapid.IntRange(0, 10).Draw(r, "things") {
			at := piece.Vec{X: 15 * in, Y: inch(rapid.Float64Range(-6, 18).Draw(r, "y")), Z: 30 * in}
			p.Held = append(p.Held, piece.Held{MassKg: rapid.Float64Range(0, 40).Draw(r, "kg"), Min: at, Max: at})
		}
		own, err := p.own(s)
		if err != nil {
			r.Fatal(err)
		}
		over := p.base(s.feet)[0]
		moment := func(there []bool) (sum float64) {
			for _, m := range with(own, p.Held, there) {
				sum += m.Kg * over.inside(m.X.MM(), m.Y.MM())
			}
			return sum
		}
		least := math.Inf(1)
		for _, there := range subsets(len(p.Held)) {
			least = math.Min(least, moment(there))
		}
		if got := moment(leastMoment(over, p.Held)); math.Abs(got-least) > 1e-6 {
			r.Fatalf("%v, the least is %v", got, least)
		}
	})
}

// subsets returns every choice among n things.
func subsets(n int) (out [][]bool) {
	for set := range 1 << n {
		there := make([]bool, n)
		for i := range there {
			there[i] = set>>i&1 == 1
		}
		out = append(out, there)
	}
	return out
}

// The centre that lies nearest to a side is that of the worst of all subsets.
func TestTheNearestCentreIsThatOfAllSubsets(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		over := side{at: [2]float64{0, 300}, out: [2]float64{0, 1}}
		own := asMass(rapid.Float64Range(1, 100).Draw(r, "kg"), 0, rapid.Float64Range(-200, 280).Draw(r, "y"), 500)
		var held []piece.Held
		for range rapid.IntRange(0, 10).Draw(r, "things") {
			at := piece.Vec{Y: inch(rapid.Float64Range(-20, 20).Draw(r, "held y"))}
			held = append(held, piece.Held{MassKg: rapid.Float64Range(0, 80).Draw(r, "held kg"), Min: at, Max: at})
		}
		inside := func(there []bool) float64 {
			c, err := stability.Centre(with(own, held, there)...)
			if err != nil {
				r.Fatal(err)
			}
			return over.inside(c.X.MM(), c.Y.MM())
		}
		least := math.Inf(1)
		for _, there := range subsets(len(held)) {
			least = math.Min(least, inside(there))
		}
		if got := inside(lightest(over, own, held)); math.Abs(got-least) > 1e-5 {
			r.Fatalf("%v, the least is %v", got, least)
		}
	})
}
