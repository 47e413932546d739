package explain

import (
	"context"
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/cut/panel"
	"rodwright/cut/sawing"
	"rodwright/cut/sheet"
	"rodwright/cut/stick"
	"rodwright/cut/verify"
	"rodwright/length"
)

// Change is what one more piece of stock of a kind would change: the problem is solved again with that piece
// lying there for nothing, and it is paid for afterwards.
type Change struct {
	Stock string           // a tag of the kind
	Size  [2]length.Length // of a stick the width is 0
	Taken bool             // the best layout with it cuts it up; else nothing changes
	More  float64          // what the whole costs more when it is paid for; below 0 less
	Free  float64          // what the whole costs less when it is not: it lies in the rack already
	Was   Summary
	Is    Summary
}

// Summary is what people compare of two layouts.
type Summary struct {
	Opened   int
	Kept     float64          // offcuts worth keeping: millimetres of sticks, square millimetres else
	Longest  [2]length.Length // the longest of them; 0 where none is kept
	Settings int
}

// anotherTag is the tag of the piece that is put to the stock.
const anotherTag = "one more"

// OneMore solves a problem again for each kind of stock with one more piece of it. a is the answer at hand. The
// same input gives the same changes unless ctx ends early; what was found until then is returned with its error.
// Problems whose sheets are filled for value have no changes: their stock is given.
func OneMore(ctx context.Context, p cut.Problem, a *cut.Answer, l cut.Limits) (out []Change, err error) {
	if p.Sheets != nil && p.Sheets.Valued() {
		return nil, nil
	}
	was := summary(p, a)
	for _, k := range offered(p, a) {
		if err := ctx.Err(); err != nil {
			return out, err
		}
		more := k.another()
		b, err := solve(ctx, more, l)
		if err != nil {
			return out, fmt.Errorf("one more %s: %w", k.tag, err)
		}
		c := Change{Stock: k.tag, Size: k.size, Was: was, Is: was}
		if at := slices.IndexFunc(b.Used, func(u cut.Used) bool { return u.Stock == anotherTag }); at >= 0 && len(b.NotPlaced) <= len(a.NotPlaced) {
			c.Taken = true
			c.Free = cut.RoundMoney(a.Cost - b.Cost)
			c.More = cut.RoundMoney(b.Cost + k.cost - k.credit(b.Used[at]) - a.Cost)
			c.Is = summary(more, b)
		}
		out = append(out, c)
	}
	return out, nil
}

// solve lays out a problem, and believes the answer only when the verifier finds no fault in it.
func solve(ctx context.Context, p cut.Problem, l cut.Limits) (a *cut.Answer, err error) {
	var faults []verify.Fault
	switch {
	case p.Sticks != nil:
		if a, err = stick.Solve(ctx, p.Sticks, l); err == nil {
			faults = verify.Stick(p.Sticks, a)
		}
	case p.Boards != nil:
		if a, err = panel.Solve(ctx, p.Boards, l); err == nil {
			faults = verify.Panel(p.Boards, a)
		}
	case p.Sheets != nil:
		if a, err = sheet.Solve(ctx, p.Sheets, l); err == nil {
			faults = verify.Sheet(p.Sheets, a)
		}
	}
	if err == nil && len(faults) > 0 {
		err = faults[0]
	}
	return a, err
}

func summary(p cut.Problem, a *cut.Answer) Summary {
	s := Summary{Opened: len(a.Used), Kept: a.Waste.LeftoverUseful, Settings: sawing.Of(p, a.Used).Settings}
	for _, u := range a.Used {
		for _, o := range u.Left {
			if o.Size[0] > s.Longest[0] {
				s.Longest = o.Size
			}
		}
	}
	return s
}

// offer is a kind of stock of which there may be one more.
type offer struct {
	tag     string
	size    [2]length.Length
	cost    float64
	another func() cut.Problem           // the problem with one more of it for nothing
	credit  func(u cut.Used) (c float64) // what a kept tail of it takes off its cost
}

// offered lists the kinds of stock: one of each size, price and make; pieces that are there only once and are
// opened already are left out.
func offered(p cut.Problem, a *cut.Answer) []offer {
	switch {
	case p.Sticks != nil:
		return offeredSticks(p.Sticks)
	case p.Boards != nil:
		return offeredBoards(p.Boards, a)
	case p.Sheets != nil:
		return offeredSheets(p.Sheets)
	}
	return nil
}

func nothing(cut.Used) float64 { return 0 }

func offeredSticks(p *cut.StickProblem) (out []offer) {
	for i, s := range p.Stock {
		size := [2]length.Length{s.Length}
		if known(out, size, p.Cost(i)) {
			continue
		}
		out = append(out, offer{s.Tag, size, p.Cost(i), func() cut.Problem {
			q := *p
			s.Tag, s.Count, s.Price = anotherTag, 1, cut.Priced(0)
			q.Stock = append(slices.Clone(p.Stock), s)
			return cut.Problem{Sticks: &q}
		}, nothing})
	}
	return out
}

func offeredBoards(p *cut.PanelProblem, a *cut.Answer) (out []offer) {
	for i, b := range p.Boards {
		size := [2]length.Length{b.Length, b.Width}
		own := len(b.Defects) > 0 // one board of its own, which nobody has another of
		opened := slices.ContainsFunc(a.Used, func(u cut.Used) bool { return u.Stock == b.Tag })
		if own && opened || !own && known(out, size, p.Cost(i)) {
			continue
		}
		out = append(out, offer{b.Tag, size, p.Cost(i), func() cut.Problem {
			q := *p
			b.Tag, b.Price = anotherTag, cut.Priced(0)
			q.Boards = append(slices.Clone(p.Boards), b)
			if own { // that board itself, not another like it
				q.Boards = slices.Delete(q.Boards, i, i+1)
			}
			return cut.Problem{Boards: &q}
		}, func(u cut.Used) (c float64) {
			for _, o := range u.Left {
				c += p.TailCredit(i, o.Size[0])
			}
			return c
		}})
	}
	return out
}

func offeredSheets(p *cut.SheetProblem) (out []offer) {
	for i, s := range p.Sheets {
		size := [2]length.Length{s.Length, s.Width}
		if known(out, size, p.Cost(i)) {
			continue
		}
		out = append(out, offer{s.Tag, size, p.Cost(i), func() cut.Problem {
			q := *p
			s.Tag, s.Count, s.Price = anotherTag, 1, cut.Priced(0)
			q.Sheets = append(slices.Clone(p.Sheets), s)
			return cut.Problem{Sheets: &q}
		}, nothing})
	}
	return out
}

func known(out []offer, size [2]length.Length, cost float64) bool {
	return slices.ContainsFunc(out, func(o offer) bool { return o.size == size && o.cost == cost })
}
