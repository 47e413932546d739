package part

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
)

// Sawn is what is different of a pipe when it is cut from a stick and not bought as a stock nipple.
type Sawn struct {
	Cut, Loosest, Tightest length.Length
	CutFigure              figure.Figure
	MassKg                 float64
}

// Chosen says of one pipe that could be bought or cut which of the two it is.
type Chosen struct {
	Cut bool   // from a stick
	Why string // in words
}

// Settle returns the list with every pipe that could be bought or cut made what was chosen for it by its tag; where
// nothing was chosen it stays a stock nipple. Of a kind that is partly bought and partly cut two kinds are made: the one
// that holds its first pipe keeps the kind's tag, the other goes by the tag of its own first. The tags of the pipes
// themselves never change. list is left as it is. The error is that of what is used up; see [TakeOff].
func Settle(r *piece.Resolved, list *List, s *shop.Shop, chosen map[string]Chosen) (*List, error) {
	if len(chosen) == 0 {
		return list, nil
	}
	out, cut := *list, false
	out.Parts = nil
	for _, p := range list.Parts {
		if p.Sawn == nil {
			out.Parts = append(out.Parts, p)
			continue
		}
		for _, kind := range p.divided(chosen) {
			cut = cut || kind.From == FromStick
			out.Parts = append(out.Parts, kind)
		}
	}
	if !cut {
		return &out, nil
	}
	t := &takeOff{r: r, s: s, doc: r.Doc, list: &out}
	if t.doc == nil {
		t.doc = &piece.Document{}
	}
	out.Totals, out.Supplies = Totals{}, nil
	t.totals()
	return &out, t.supplies()
}

// divided returns the pipes of a kind by what was chosen for them, the first pipe's choice first.
func (p Part) divided(chosen map[string]Chosen) []Part {
	kinds := make([]Part, 0, 2)
	for _, cut := range []bool{chosen[p.Tags[0]].Cut, !chosen[p.Tags[0]].Cut} {
		q := p
		q.Tags, q.Indexes, q.Sawn = nil, nil, nil
		for i, tag := range p.Tags {
			if chosen[tag].Cut == cut {
				q.Tags = append(q.Tags, tag)
				if i < len(p.Indexes) {
					q.Indexes = append(q.Indexes, p.Indexes[i])
				}
			}
		}
		if q.Count = len(q.Tags); q.Count == 0 {
			continue
		}
		if len(kinds) > 0 {
			q.Tag = q.Tags[0]
		}
		if q.FromWhy = chosen[q.Tags[0]].Why; cut {
			q.From, q.Moves = FromStick, 0
			q.Cut, q.Loosest, q.Tightest = p.Sawn.Cut, p.Sawn.Loosest, p.Sawn.Tightest
			q.CutFigure, q.MassKg = p.Sawn.CutFigure, p.Sawn.MassKg
		}
		kinds = append(kinds, q)
	}
	return kinds
}
