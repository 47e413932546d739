package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/stability"
)

// tipMend names the smallest move of the feet that gives the wanted tilt, and the load that does the same
// where it lies low for good.
func (p *Piece) tipMend(s standing, over side, own stability.Mass) string {
	tangent := math.Tan(p.Shop.Settings.TipDegrees * math.Pi / 180)
	things := p.things(s)
	lacks := stillLacks(over, own, things, tangent)
	if !(lacks < length.Metre.MM()) {
		return "anchor it to a wall: it would need feet more than a metre farther out"
	}
	move := length.FromMM(lacks) + length.Nanometre // a rounded nanometre must not make it fail again
	mend := fmt.Sprintf("move the feet on that side %s out, %s", p.up(move), over.towards())
	if kg, on, ok := p.ballast(s, over, own, tangent); ok {
		mend += fmt.Sprintf("; or fix %s kg on %s for good", figure.Digits(math.Ceil(kg*10)/10, 3), on)
	}
	return mend + "; or anchor it to a wall"
}

// ballast returns the mass, in kg, that must lie flat in the middle of the lowest panel for good, and that
// panel. It reports false where there is none low enough to help.
func (p *Piece) ballast(s standing, over side, own stability.Mass, tangent float64) (kg float64, on string, ok bool) {
	lowest := -1
	for _, i := range s.panels {
		if lowest < 0 || p.Panels[i].Max.Z < p.Panels[lowest].Max.Z {
			lowest = i
		}
	}
	if lowest < 0 {
		return 0, "", false
	}
	panel := p.Panels[lowest]
	m := middle(1, piece.Vec{X: panel.Min.X, Y: panel.Min.Y, Z: panel.Max.Z}, panel.Max)
	helps := over.inside(m.X.MM(), m.Y.MM()) - m.Z.MM()*tangent
	there := lacking(over, p.things(s), tangent)
	lacks := 0.0
	for _, b := range with(own, p.things(s), there) {
		lacks += b.Kg * (b.Z.MM()*tangent - over.inside(b.X.MM(), b.Y.MM()))
	}
	kg = lacks / helps
	// more than the piece itself is no mend but another piece
	return kg, panel.Name, helps > 0 && lacks > 0 && kg <= own.Kg
}

// lacking says which things make a piece lack something for a tilt with the given tangent.
func lacking(over side, held []piece.Held, tangent float64) []bool {
	there := make([]bool, len(held))
	for i, h := range held {
		m := heldMass(h)
		there[i] = m.Z.MM()*tangent > over.inside(m.X.MM(), m.Y.MM())
	}
	return there
}

// rolls reports whether such a foot is a caster.
func rolls(k piece.FootKind) bool { return k == piece.StemCaster || k == piece.PlateCaster }

// highest returns the index of the highest panel of what stands by itself, -1 where there is none.
func (p *Piece) highest(s standing) int {
	best := -1
	for _, i := range s.panels {
		if best < 0 || p.Panels[i].Max.Z > p.Panels[best].Max.Z {
			best = i
		}
	}
	return best
}

// top returns the height of what stands by itself.
func (p *Piece) top(s standing) (top length.Length) {
	for _, i := range s.panels {
		top = max(top, p.Panels[i].Max.Z)
	}
	for _, i := range s.nodes {
		top = max(top, p.Nodes[i].At.Z)
	}
	return top
}

// beyond returns how far the farthest panel's edge stands outside a side of the base, and the panel.
func (p *Piece) beyond(s standing, over side) (far length.Length, panel int) {
	out := 0.0
	panel = -1
	for _, i := range s.panels {
		lo, hi := p.Panels[i].Min, p.Panels[i].Max
		for _, x := range []length.Length{lo.X, hi.X} {
			for _, y := range []length.Length{lo.Y, hi.Y} {
				if l := -over.inside(x.MM(), y.MM()); l > out {
					out, panel = l, i
				}
			}
		}
	}
	return length.FromMM(out), panel
}
