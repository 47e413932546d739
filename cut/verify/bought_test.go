package verify_test

import (
	"testing"

	"rodwright/cut"
	"rodwright/cut/verify"
)

// TestEveryWrongLayoutWithBoughtPartsIsRefused has the part that is not placed bought instead, for 5, and one cut part
// that takes work for 2.
func TestEveryWrongLayoutWithBoughtPartsIsRefused(t *testing.T) {
	type problem = cut.StickProblem
	with := func() (*problem, *cut.Answer) {
		p, a := sticks()
		for i := range p.Parts {
			switch p.Parts[i].Tag {
			case "C3":
				p.Parts[i].Bought = cut.Priced(5)
			case "C2":
				p.Parts[i].Making = cut.Priced(2)
			}
		}
		a.Bought, a.NotPlaced = []string{"C3"}, nil
		a.Cost, a.Bound = a.Cost+5+2, a.Bound+5+2
		return p, a
	}
	tryAll(t, with, verify.Stick, []plant[problem]{
		{"bought, and can't be had", verify.PartRule, func(p *problem, _ *cut.Answer) { p.Parts[2].Bought = cut.Price{} }},
		{"bought twice", verify.PartRule, func(_ *problem, a *cut.Answer) { a.Bought = append(a.Bought, "C3"); a.Cost += 5 }},
		{"bought what nobody wants", verify.PartRule, func(_ *problem, a *cut.Answer) { a.Bought = append(a.Bought, "C9") }},
		{"neither bought nor told", verify.PartRule, func(_ *problem, a *cut.Answer) { a.Bought = nil; a.Cost -= 5; a.Bound -= 5 }},
		{"what is bought left out of the cost", verify.CostRule, func(_ *problem, a *cut.Answer) { a.Cost -= 5; a.Bound -= 5 }},
		{"work left out of the cost", verify.CostRule, func(_ *problem, a *cut.Answer) { a.Cost -= 2; a.Bound -= 2 }},
	})
}
