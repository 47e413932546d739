package explain

import (
	"slices"

	"rodwright/cut"
	"rodwright/length"
)

// Ground is what refutes a layout with fewer pieces of stock.
type Ground string

// The grounds, the plainest first.
const (
	Nothing Ground = "nothing" // no stock is opened, or some part found no place: there is nothing to refute
	One     Ground = "one"     // one piece of stock is the least there can be
	Room    Ground = "room"    // fewer of the largest hold less than the parts need
	Few     Ground = "few"     // of some large parts a piece of stock holds only so many
	Weighed Ground = "weighed" // the bound: no layout costs less
	Open    Ground = "open"    // not refuted: a layout that costs less is not ruled out
)

// Reason answers why a layout does not open fewer pieces of stock. Amounts are millimetres of sticks, square
// millimetres of boards and sheets.
type Reason struct {
	Ground Ground
	Opened int

	// Of Room and Few.
	Fewer int              // pieces that are shown not to be enough: one less than are opened
	Size  [2]length.Length // of the largest piece of stock; 0 where they differ in size
	Alike bool             // every other stock is left out: fewer pieces of this size are not enough

	Holds, Needs float64 // of Room: what Fewer pieces hold, what the parts need

	Large int              // of Few: how many parts
	Least [2]length.Length // they are at least as large
	Each  int              // of which a piece of stock holds at most so many

	// Of Weighed and Open.
	OneKind bool // all stock on offer is of one size and price: no layout that costs less is no layout with fewer pieces
	Cost    float64
	Bound   float64
	Gap     float64
	Upper   bool // parts are cut for their value: Bound is above Cost
}

// store is stock of one size: how many pieces there are, and the room in one.
type store struct {
	size  [2]length.Length
	room  float64
	count int
}

// WhyNotFewer finds the plainest ground on which no layout opens fewer pieces of stock, or what else is known.
func WhyNotFewer(p cut.Problem, a *cut.Answer) Reason {
	r := Reason{
		Opened: len(a.Used), Fewer: len(a.Used) - 1, Cost: a.Cost, Bound: a.Bound, Gap: a.Gap(),
		Upper: p.Sheets != nil && p.Sheets.Valued(),
	}
	switch {
	case len(a.Used) == 0 || len(a.NotPlaced) > 0:
		r.Ground = Nothing
		return r
	case len(a.Used) == 1 && !r.Upper:
		r.Ground = One
		return r
	}
	kinds := stores(p, nil)
	r.OneKind = oneKind(p)
	if !r.Upper {
		for _, alike := range []bool{false, true} {
			if alike {
				if kinds = stores(p, a); len(kinds) != 1 { // what is opened differs in size
					break
				}
			}
			r.Alike = alike
			if r.room(p, a, kinds) || r.few(p, kinds) {
				return r
			}
		}
	}
	r.Alike, r.Size = false, [2]length.Length{}
	if r.Ground = Weighed; !a.Proven {
		r.Ground = Open
	}
	return r
}

// stores lists the stock on offer by size, the roomiest first; with a only stock of the sizes that it opens.
func stores(p cut.Problem, a *cut.Answer) (out []store) {
	opened := map[[2]length.Length]bool{}
	if a != nil {
		for _, u := range a.Used {
			size, _ := p.Size(u.Stock)
			opened[size] = true
		}
	}
	add := func(size [2]length.Length, room float64, n cut.Count) {
		if n == 0 || a != nil && !opened[size] {
			return
		}
		i := slices.IndexFunc(out, func(s store) bool { return s.size == size && s.room == room })
		if i < 0 {
			i = len(out)
			out = append(out, store{size: size, room: room})
		}
		if out[i].count += int(n); n == cut.Any {
			out[i].count = cut.MaxPieces
		}
	}
	switch {
	case p.Sticks != nil:
		for i, s := range p.Sticks.Stock {
			add([2]length.Length{s.Length}, p.Sticks.Room(i).MM(), s.Count)
		}
	case p.Boards != nil:
		for i, b := range p.Boards.Boards {
			from, to := p.Boards.Usable(i)
			add([2]length.Length{b.Length, b.Width}, b.Length.MM()*(to-from).MM(), 1)
		}
	case p.Sheets != nil:
		for i, s := range p.Sheets.Sheets {
			in := p.Sheets.Inside(i)
			add([2]length.Length{s.Length, s.Width}, max(0, in.Length.MM())*max(0, in.Width.MM()), s.Count)
		}
	}
	slices.SortStableFunc(out, func(a, b store) int {
		switch {
		case a.room > b.room:
			return -1
		case a.room < b.room:
			return 1
		}
		return 0
	})
	return out
}

// oneKind reports whether all stock on offer is of one size and one cost.
func oneKind(p cut.Problem) bool {
	type kind struct {
		size [2]length.Length
		cost float64
	}
	kinds := map[kind]bool{}
	switch {
	case p.Sticks != nil:
		for i, s := range p.Sticks.Stock {
			kinds[kind{[2]length.Length{s.Length}, p.Sticks.Cost(i)}] = true
		}
		for _, q := range p.Sticks.Parts {
			if q.Bought.Given { // cost is not of sticks alone
				return false
			}
		}
	case p.Boards != nil:
		for i, b := range p.Boards.Boards {
			kinds[kind{[2]length.Length{b.Length, b.Width}, p.Boards.Cost(i)}] = true
		}
		if p.Boards.Salvage > 0 {
			return false
		}
	case p.Sheets != nil:
		for i, s := range p.Sheets.Sheets {
			kinds[kind{[2]length.Length{s.Length, s.Width}, p.Sheets.Cost(i)}] = true
		}
	}
	return len(kinds) == 1
}

// room finds whether fewer pieces, the roomiest on offer, hold less than the parts need.
func (r *Reason) room(p cut.Problem, a *cut.Answer, kinds []store) bool {
	holds, left := 0.0, r.Fewer
	r.Size = [2]length.Length{}
	for i, k := range kinds {
		n := min(left, k.count)
		if i == 0 && n == left {
			r.Size = k.size
		}
		holds += float64(n) * k.room
		left -= n
	}
	needs := 0.0
	switch {
	case p.Sticks != nil:
		needs = sticksNeed(p.Sticks, r.Fewer)
	case p.Boards != nil:
		needs = boardsNeed(p.Boards, a)
	case p.Sheets != nil:
		needs = sheetsNeed(p.Sheets)
	}
	if needs <= holds+1e-6 {
		return false
	}
	r.Ground, r.Holds, r.Needs = Room, holds, needs
	return true
}

// sticksNeed is the length of the parts that must be cut, and of the saw cuts between them when they come
// from n sticks: one less on each stick than it holds parts.
func sticksNeed(p *cut.StickProblem, n int) (mm float64) {
	parts := 0
	for _, q := range p.Parts {
		if q.Bought.Given {
			continue
		}
		parts += int(q.Count)
		mm += float64(q.Count) * q.Length.MM()
	}
	return mm + float64(max(0, parts-n))*p.Kerf.MM()
}

// boardsNeed is the area of the strips of the panels that are glued, each of as few strips as the widest board
// allows: the blank, and for each strip what its joints take.
func boardsNeed(p *cut.PanelProblem, a *cut.Answer) (mm2 float64) {
	widest := length.Length(0)
	for k := range p.Boards {
		from, to := p.Usable(k)
		widest = max(widest, to-from)
	}
	if p.Strip.Most > 0 {
		widest = min(widest, p.Strip.Most)
	}
	net := widest - p.Joint()
	if net <= 0 {
		return 0
	}
	for _, g := range a.Panels {
		i := slices.IndexFunc(p.Panels, func(q cut.Panel) bool { return q.Tag == g.Tag })
		if i < 0 {
			continue
		}
		w := p.BlankWidth(i)
		strips := (w + net - 1) / net
		mm2 += p.BlankLength(i).MM() * (w.MM() + float64(strips)*p.Joint().MM())
	}
	return mm2
}

// sheetsNeed is the area of the parts.
func sheetsNeed(p *cut.SheetProblem) (mm2 float64) {
	for _, q := range p.Parts {
		mm2 += float64(max(0, q.Count)) * q.Length.MM() * q.Width.MM()
	}
	return mm2
}

// mostEach bounds the parts of one piece of stock that few counts by.
const mostEach = 6

// few finds whether there are so many large parts, of which a piece of stock holds only so many, that fewer
// pieces are not enough.
func (r *Reason) few(p cut.Problem, kinds []store) bool {
	switch {
	case p.Sticks != nil:
		return r.fewOnSticks(p.Sticks, kinds)
	case p.Sheets != nil:
		return r.fewOnSheets(p.Sheets)
	}
	return false
}

func (r *Reason) fewOnSticks(p *cut.StickProblem, kinds []store) bool {
	var lengths []length.Length
	for _, q := range p.Parts {
		if !q.Bought.Given {
			lengths = append(lengths, slices.Repeat([]length.Length{q.Length}, int(q.Count))...)
		}
	}
	slices.Sort(lengths)
	if len(kinds) == 0 {
		return false
	}
	room := kinds[0].size[0] - 2*p.Trim
	for each := length.Length(1); each <= mostEach; each++ {
		// each + 1 parts of a length and the saw cuts between them are longer than the room
		from := slices.IndexFunc(lengths, func(l length.Length) bool { return (each+1)*l+each*p.Kerf > room })
		if from < 0 {
			continue
		}
		if large := len(lengths) - from; large > r.Fewer*int(each) {
			r.Ground, r.Large, r.Each = Few, large, int(each)
			r.Least, r.Size = [2]length.Length{lengths[from]}, kinds[0].size
			return true
		}
	}
	return false
}

// fewOnSheets counts the parts of which no two share a sheet: longer than half of every sheet and wider than
// half, where they may be turned both ways.
func (r *Reason) fewOnSheets(p *cut.SheetProblem) bool {
	var long, wide length.Length
	for i := range p.Sheets {
		in := p.Inside(i)
		long, wide = max(long, in.Length), max(wide, in.Width)
	}
	large := 0
	least := [2]length.Length{length.Max, length.Max}
	for _, q := range p.Parts {
		l, w, over := q.Length, q.Width, [2]length.Length{long, wide}
		if q.Turn {
			l, w, over = min(l, w), min(l, w), [2]length.Length{max(long, wide), max(long, wide)}
		}
		if 2*l+p.Kerf > over[0] && 2*w+p.Kerf > over[1] {
			large += int(q.Count)
			least = [2]length.Length{min(least[0], q.Length), min(least[1], q.Width)}
		}
	}
	if large <= r.Fewer {
		return false
	}
	r.Ground, r.Large, r.Each, r.Least = Few, large, 1, least
	return true
}
