package steps

import (
	"fmt"

	"rodwright/figure"
	"rodwright/trade/finish"
)

// finishing is what a finish asks for.
type finishing struct {
	name     string
	coats    int     // usual
	recoatH  float64 // before the next coat
	handleH  float64 // before the panels are handled
	cureH    float64 // before they are used
	lines    []string
	cautions []string
	assumed  []string
}

// finishing works out the times of a finish, the longest that sources give for its class. A finish that
// no table has leaves the shop's own times for a coat and its cure.
func (p *planner) finishing(class string) finishing {
	f, err := finish.Lookup(class)
	if err != nil {
		coat, _ := p.s.Operation("coat")
		cure, _ := p.s.Operation("cure")
		return finishing{
			name: finish.Words(class), coats: 1, recoatH: coat.WaitH, handleH: coat.WaitH, cureH: cure.WaitH,
			cautions: Cautions("coat-rags"), // nobody knows what it is: its rags are taken for oily
			assumed:  []string{fmt.Sprintf("the finish %q is in no table: times are the shop's own for a coat and its cure", class)},
		}
	}
	recoat, use, cure := f.RecoatTime(), f.UseTime(), f.CureTime()
	out := finishing{name: f.Name, coats: max(f.Coats, 1), recoatH: recoat.Value, handleH: use.Value, cureH: cure.Value, cautions: f.Cautions()}
	if f.Wipe.Known() {
		out.lines = append(out.lines, fmt.Sprintf("wipe or buff all excess off after %s to %s: it belongs in the wood, not on it", hours(f.Wipe.Low), hours(f.Wipe.High)))
	}
	if f.OilyRags {
		out.cautions = append(out.cautions, Cautions("coat-rags")...)
	}
	for _, g := range []figure.Figure{recoat, use, cure} {
		out.assumed = append(out.assumed, g.Assumed...)
	}
	return out
}
