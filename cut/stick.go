package cut

import "rodwright/length"

// StickProblem asks for parts out of sticks: pipe, bar, moulding, where only length counts.
//
// n parts fit a stick when Σ lengths + (n − 1)·Kerf ≤ Length − 2·Trim. The saw cut behind the last part
// comes off what is left.
type StickProblem struct {
	Unit   length.Unit
	Kerf   length.Length // lost by each saw cut
	Trim   length.Length // lost at each end of a stick
	Useful length.Length // the shortest offcut worth keeping
	Stock  []StickStock
	Parts  []StickPart
}

// StickStock is one kind of stick that can be opened.
type StickStock struct {
	Tag    string
	Length length.Length
	Count  Count
	Price  Price // of one stick; without it the cost is the length, in the problem's unit
}

// StickPart is one length that is wanted: cut from a stick or, where that can be had, bought ready made. What is bought
// is never cut up for other parts.
type StickPart struct {
	Tag    string
	Length length.Length
	Count  Count
	Bought Price // of one that is bought ready made; the zero value: it can't be bought
	Making Price // what the work on one that is cut costs: saw cut, threads; the zero value: it is not counted
}

// Room returns how much of a stick of stock i can become parts and saw cuts between them.
func (p *StickProblem) Room(i int) length.Length { return p.Stock[i].Length - 2*p.Trim }

// Cost returns what one stick of stock i costs.
func (p *StickProblem) Cost(i int) float64 {
	return p.Stock[i].Price.Or(In(p.Stock[i].Length, p.Unit))
}

// Check reports the first value of the problem that can't be.
func (p *StickProblem) Check() error {
	c := checker{unit: p.Unit}
	c.atLeast(0, p.Kerf, "kerf")
	c.atLeast(0, p.Trim, "trim")
	c.atLeast(0, p.Useful, "useful")
	c.some(len(p.Stock), "stock")
	for i, s := range p.Stock {
		c.tag(s.Tag, "stock", i)
		c.over(s.Length, "stock[%d].length", i)
		c.stockCount(s.Count, "stock[%d].count", i)
		c.price(s.Price, "stock[%d].price", i)
	}
	for i, q := range p.Parts {
		c.tag(q.Tag, "parts", i)
		c.over(q.Length, "parts[%d].length", i)
		c.pieces(q.Count, "parts[%d].count", i)
		c.price(q.Bought, "parts[%d].bought", i)
		c.price(q.Making, "parts[%d].making", i)
	}
	return c.err
}
