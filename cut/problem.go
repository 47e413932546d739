package cut

import "rodwright/length"

// Problem is a problem of one kind: exactly one of them is set.
type Problem struct {
	Sticks *StickProblem
	Boards *PanelProblem
	Sheets *SheetProblem
}

// Unit returns the unit of the problem.
func (p Problem) Unit() length.Unit {
	switch {
	case p.Sticks != nil:
		return p.Sticks.Unit
	case p.Boards != nil:
		return p.Boards.Unit
	case p.Sheets != nil:
		return p.Sheets.Unit
	}
	return length.MM
}

// Kerf returns what each saw cut takes.
func (p Problem) Kerf() length.Length {
	switch {
	case p.Sticks != nil:
		return p.Sticks.Kerf
	case p.Boards != nil:
		return p.Boards.Kerf
	case p.Sheets != nil:
		return p.Sheets.Kerf
	}
	return 0
}

// Size returns length and width of a piece of stock by its tag; of a stick the width is 0.
func (p Problem) Size(tag string) (size [2]length.Length, ok bool) {
	switch {
	case p.Sticks != nil:
		for _, s := range p.Sticks.Stock {
			if s.Tag == tag {
				return [2]length.Length{s.Length}, true
			}
		}
	case p.Boards != nil:
		for _, b := range p.Boards.Boards {
			if b.Tag == tag {
				return [2]length.Length{b.Length, b.Width}, true
			}
		}
	case p.Sheets != nil:
		for _, s := range p.Sheets.Sheets {
			if s.Tag == tag {
				return [2]length.Length{s.Length, s.Width}, true
			}
		}
	}
	return size, false
}

// Opened adds up the stock that an answer opens: millimetres of sticks, square millimetres of boards and
// sheets.
func (p Problem) Opened(a *Answer) (sum float64) {
	for _, u := range a.Used {
		size, _ := p.Size(u.Stock)
		if p.Sticks != nil {
			sum += size[0].MM()
		} else {
			sum += size[0].MM() * size[1].MM()
		}
	}
	return sum
}
