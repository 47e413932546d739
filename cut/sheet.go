package cut

import "rodwright/length"

// SheetProblem asks for rectangles out of sheets or wide boards, by cuts that go right across what is
// cut (guillotine cuts), as a panel saw or a track saw makes them.
//
// x runs along a sheet's length and y along its width, from a corner. Without values the cheapest
// sheets that yield all parts are sought; with values the sheets given are filled for the greatest sum.
type SheetProblem struct {
	Unit   length.Unit
	Kerf   length.Length
	Trim   length.Length    // lost at each of the four edges of a sheet
	Stages int              // how often the direction of cutting may be taken up, the first included; 0 is any number
	Useful [2]length.Length // the smallest offcut worth keeping, length and width
	Sheets []Sheet
	Parts  []SheetPart
}

// Sheet is one kind of sheet that can be opened.
type Sheet struct {
	Tag           string
	Length, Width length.Length
	Count         Count
	Price         Price  // of one sheet; without it the cost is the area, in the problem's unit squared
	Grain         bool   // no part is turned on it
	Defects       []Rect // places that no part may hold; on every sheet of this kind
}

// SheetPart is one rectangle that is wanted.
type SheetPart struct {
	Tag           string
	Length, Width length.Length
	Count         Count // Any only with a value
	Turn          bool  // it may be turned by a quarter, on a sheet without grain
	Value         Price // what one is worth, when sheets are filled for value
}

// Valued reports whether the sheets are to be filled for value.
func (p *SheetProblem) Valued() bool {
	for _, q := range p.Parts {
		if q.Value.Given {
			return true
		}
	}
	return false
}

// Inside returns the rectangle of a sheet of kind i that its trim leaves.
func (p *SheetProblem) Inside(i int) Rect {
	s := p.Sheets[i]
	return Rect{p.Trim, p.Trim, s.Length - 2*p.Trim, s.Width - 2*p.Trim}
}

// Cost returns what one sheet of kind i costs.
func (p *SheetProblem) Cost(i int) float64 {
	s := p.Sheets[i]
	return s.Price.Or(In(s.Length, p.Unit) * In(s.Width, p.Unit))
}

// Keeps reports whether an offcut of the given size is worth keeping.
func (p *SheetProblem) Keeps(l, w length.Length, grain bool) bool {
	u := p.Useful
	return l > 0 && w > 0 && (l >= u[0] && w >= u[1] || !grain && l >= u[1] && w >= u[0])
}

// Check reports the first value of the problem that can't be.
func (p *SheetProblem) Check() error {
	c := checker{unit: p.Unit}
	c.atLeast(0, p.Kerf, "kerf")
	c.atLeast(0, p.Trim, "trim")
	if p.Stages < 0 {
		c.fail("must be 0 (any number) or more", "stages")
	}
	c.atLeast(0, p.Useful[0], "useful[0]")
	c.atLeast(0, p.Useful[1], "useful[1]")
	c.some(len(p.Sheets), "sheets")
	for i := range p.Sheets {
		c.sheet(p, i)
	}
	for i := range p.Parts {
		c.sheetPart(p, i)
	}
	return c.err
}

func (c *checker) sheet(p *SheetProblem, i int) {
	s := p.Sheets[i]
	c.tag(s.Tag, "sheets", i)
	c.over(s.Length, "sheets[%d].length", i)
	c.over(s.Width, "sheets[%d].width", i)
	c.stockCount(s.Count, "sheets[%d].count", i)
	c.price(s.Price, "sheets[%d].price", i)
	if p.Valued() && s.Count == Any {
		c.fail("must be a number when parts have values: sheets without end hold value without end", "sheets[%d].count", i)
	}
	for j, d := range s.Defects {
		c.rect(d, "sheets[%d].defects[%d]", i, j)
	}
}

func (c *checker) sheetPart(p *SheetProblem, i int) {
	q := p.Parts[i]
	c.tag(q.Tag, "parts", i)
	c.over(q.Length, "parts[%d].length", i)
	c.over(q.Width, "parts[%d].width", i)
	c.price(q.Value, "parts[%d].value", i)
	if q.Count == Any && p.Valued() {
		return
	}
	c.pieces(q.Count, "parts[%d].count", i)
}
