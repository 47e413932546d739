package check

import (
	"rodwright/piece"
	"rodwright/trade/stability"
)

// bodies returns every part of what stands by itself as a mass at its centre: panels at the middle of their
// outline, sticks half way, fittings where they are, feet half way up. Screws and straps are left out: they
// weigh little and lie near the panels.
func (p *Piece) bodies(s standing) []stability.Mass {
	var out []stability.Mass
	for _, i := range s.panels {
		if pt := p.panels[i]; pt != nil {
			out = append(out, middle(pt.MassKg, p.Panels[i].Min, p.Panels[i].Max))
		}
	}
	for _, i := range s.sticks {
		if pt := p.sticks[i]; pt != nil {
			out = append(out, middle(pt.MassKg, p.Nodes[p.Sticks[i].A].At, p.Nodes[p.Sticks[i].B].At))
		}
	}
	for _, i := range s.nodes {
		if pt := p.nodes[i]; pt != nil {
			out = append(out, middle(pt.MassKg, p.Nodes[i].At, p.Nodes[i].At))
		}
	}
	for _, i := range s.feet {
		if pt := p.feet[i]; pt != nil {
			at := p.Feet[i].At
			at.Z = at.Z.Half()
			out = append(out, middle(pt.MassKg, at, at))
		}
	}
	return out
}

// middle returns a mass half way between two points.
func middle(kg float64, a, b piece.Vec) stability.Mass {
	return stability.Mass{Kg: kg, X: (a.X + b.X).Half(), Y: (a.Y + b.Y).Half(), Z: (a.Z + b.Z).Half()}
}

// heldMass returns a held thing as a mass at the middle of its box.
func heldMass(h piece.Held) stability.Mass { return middle(h.MassKg, h.Min, h.Max) }

// ownKg returns the mass of what stands by itself, without what it holds. Of a piece that is one it is the
// total of its parts, screws and straps included.
func (p *Piece) ownKg(s standing) (kg float64) {
	if len(p.standing) == 1 {
		return p.Parts.Totals.MassKg
	}
	for _, b := range p.bodies(s) {
		kg += b.Kg
	}
	return kg
}

// things returns what stands by itself holds.
func (p *Piece) things(s standing) []piece.Held {
	out := make([]piece.Held, len(s.held))
	for k, i := range s.held {
		out[k] = p.Held[i]
	}
	return out
}
