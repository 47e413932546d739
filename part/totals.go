package part

import (
	"rodwright/length"
	"rodwright/trade/pipe"
)

// totals sums up the list: every sum is over parts times their count.
func (t *takeOff) totals() {
	sum := &t.list.Totals
	for _, p := range t.list.Parts {
		mass := float64(p.Count) * p.MassKg
		switch p.Kind {
		case Panel:
			sum.WoodKg += mass
			sum.BoardFeet = sum.BoardFeet.Plus(p.BoardFeet)
			sum.FaceM2 += 2*p.FaceM2 + p.EdgeM2
		case Pipe:
			sum.Pipe += max(p.Cut, 0) * length.Length(p.Count)
		case Fitting:
			sum.Fittings += p.Count
			if p.Fitting == pipe.Union {
				sum.Unions += p.Count
			}
		case Hardware:
			if p.Gauge > 0 {
				sum.Screws += p.Count
			}
		}
		if p.Kind != Panel {
			sum.SteelKg += mass
		}
		sum.MassKg += mass
		for _, a := range p.Assumed {
			sum.Assumed = once(sum.Assumed, a)
		}
	}
	for _, h := range t.r.Held {
		sum.HeldKg += h.MassKg
	}
}
