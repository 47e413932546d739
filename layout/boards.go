package layout

import (
	"fmt"
	"math"
	"slices"

	"rodwright/cut"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/lumber"
)

// boardFoot is the unit wood is sold in.
const boardFoot = "board foot"

// boardTasks makes a problem for each species and thickness of stock.
func boardTasks(r *piece.Resolved, list *part.List, s *shop.Shop) (tasks []Task, missing []string) {
	groups := map[string][]part.Part{}
	for _, p := range list.Parts {
		switch {
		case p.Kind != part.Panel || p.Sheet:
		case p.Rough == "":
			missing = append(missing, p.Tag+" "+p.Name+": no stock is thick enough")
		default:
			m := shop.WoodItem(p.Material, p.Rough)
			groups[m] = append(groups[m], p)
		}
	}
	for _, m := range sortedKeys(groups) {
		t, why := boardTask(m, r, groups[m], s)
		if why != "" {
			missing = append(missing, m+": "+why)
			continue
		}
		tasks = append(tasks, t)
	}
	return tasks, missing
}

func sortedKeys[T any](m map[string]T) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// boardTask makes the problem of one material; why says that there are no boards for it.
func boardTask(material string, r *piece.Resolved, parts []part.Part, s *shop.Shop) (t Task, why string) {
	w := s.Panel
	p := &cut.PanelProblem{
		Unit: length.In, Kerf: w.Kerf, Jointing: w.Jointing, EndTrim: w.EndTrim, PanelEdgeTrim: w.EdgeTrim, BoardEdgeTrim: w.BoardTrim, Recut: true,
		Salvage: w.Salvage, MinTail: w.TailLeast, Strip: cut.Span{Least: w.StripLeast, Most: w.StripMost},
	}
	if r.Doc != nil {
		p.Unit = r.Doc.Unit
	}
	t = Task{Kind: OfBoards, Material: material, Boards: p}
	for _, q := range parts {
		for i, tag := range q.Tags {
			p.Panels = append(p.Panels, cut.Panel{
				Tag: tag, Length: q.Finished[0], Width: q.Finished[1], Thickness: q.Blank[2], Count: 1,
				Show: showOf(r, q, i), KeepOut: keepOut(q),
			})
		}
	}
	y := yard{s: s, species: parts[0].Material, quarters: parts[0].Rough}
	t.addRackBoards(y)
	t.addYardBoards(y)
	if len(p.Boards) == 0 {
		return t, "the shop names no boards of this thickness, and none is in the rack"
	}
	return t, ""
}

// showOf returns the grade the panel's face must have: clear where the document asks for nothing less.
func showOf(r *piece.Resolved, q part.Part, i int) cut.Show {
	if i < len(q.Indexes) && q.Indexes[i] < len(r.Panels) {
		if spec := r.Panels[q.Indexes[i]].Spec; spec != nil && spec.Show != "" {
			return cut.Show(spec.Show)
		}
	}
	return cut.Clear
}

// cutMargin is how far from the edge of a notch or hole no knot or fill may lie, 1/4 in: common practice,
// no source.
const cutMargin = length.Inch / 4

// keepOut returns the places round a panel's notches and holes where no defect may lie.
func keepOut(q part.Part) (out []cut.Rect) {
	for _, f := range q.Features {
		x, y := max(0, f.At[0]-cutMargin), max(0, f.At[1]-cutMargin)
		out = append(out, cut.Rect{
			X: x, Y: y,
			Length: min(f.At[0]+f.Size[0]+cutMargin, q.Finished[0]) - x,
			Width:  min(f.At[1]+f.Size[1]+cutMargin, q.Finished[1]) - y,
		})
	}
	return slices.DeleteFunc(out, func(r cut.Rect) bool { return r.Length <= 0 || r.Width <= 0 })
}

// yard is where the boards of one material come from.
type yard struct {
	s                 *shop.Shop
	species, quarters string
}

func (y yard) item() string { return shop.WoodItem(y.species, y.quarters) }

// rough is the thickness that board feet are counted by.
func (y yard) rough() length.Length {
	st, err := lumber.Lookup(y.quarters)
	if err != nil {
		return length.Inch
	}
	return st.Rough
}

// feet is the yard's tally of one board, by its retail rule; by volume where that rule can't count it.
func (y yard) feet(l, w length.Length) float64 {
	f, err := lumber.BoardFeet(y.rough(), w, l, lumber.Retail)
	if err != nil {
		return y.rough().Inches() * w.Inches() * l.Inches() / 144
	}
	return f.Value
}

// rate is the price of a board foot, 1 where the shop has none: the least wood is used then.
func (y yard) rate() float64 {
	if v, ok := y.s.Price(y.item()); ok {
		return v
	}
	return 1
}

// paidShare is the share of its price at which stock enters that was bought for the piece: nothing is paid for it any
// more, but of two layouts the one that opens less of it is better.
const paidShare = 0.01

// rackShare is the share of the price of as much new stock at which stock of the rack enters.
func rackShare(s *shop.Shop, paid bool) float64 {
	if paid {
		return paidShare
	}
	return s.Panel.Salvage
}

// addRackBoards adds the boards of the rack that are thick enough for a panel, at the salvage share of the
// price of as much new wood.
func (t *Task) addRackBoards(y yard) {
	for _, b := range y.s.Rack.Boards {
		if b.Species != y.species || b.Quarters != "" && b.Quarters != y.quarters || b.Length <= 0 || b.Width <= 0 {
			continue
		}
		feet := y.feet(b.Length, b.Width)
		nb := cut.Board{
			Tag: b.Tag, Length: b.Length, Width: b.Width, Thickness: b.Thickness, RoughEdges: b.RoughEdges, Ring: cut.Ring(b.Ring),
			Price: cut.Priced(cut.RoundMoney(rackShare(y.s, b.Paid) * feet * y.rate())),
		}
		for _, d := range b.Defects {
			nb.Defects = append(nb.Defects, cut.Defect{
				Kind: cut.DefectKind(d.Kind), Face: cut.Face(d.Face), Rect: cut.Rect{X: d.X, Y: d.Y, Length: d.Length, Width: d.Width},
			})
		}
		t.Boards.Boards = append(t.Boards.Boards, nb)
		t.Stock = append(t.Stock, Stock{Tag: b.Tag, Item: y.item(), Quantity: feet, Unit: boardFoot, FromRack: true})
	}
}

// spareBoards is how many times the wood that is wanted is offered in boards of each size: boards are
// bought in many sizes and no size alone must be enough, but all of one must be possible.
const spareBoards = 2

// addYardBoards adds boards as the yard usually has them, of each size enough for all panels. Whether
// stock of these quarters is thick enough was settled when the panels were taken off.
func (t *Task) addYardBoards(y yard) {
	p := t.Boards
	thick, area := length.Length(0), 0.0
	for i, q := range p.Panels {
		thick = max(thick, q.Thickness)
		area += p.BlankLength(i).MM() * p.BlankWidth(i).MM()
	}
	for _, size := range y.s.TypicalBoards(y.quarters) {
		feet := y.feet(size.Length, size.Width)
		n := int(math.Ceil(spareBoards*area/(size.Length.MM()*size.Width.MM()))) + len(p.Panels)
		for i := range n {
			tag := fmt.Sprintf("yard %s × %s, %d", length.SixtyFourth.Text(size.Length), length.SixtyFourth.Text(size.Width), i+1)
			p.Boards = append(p.Boards, cut.Board{
				Tag: tag, Length: size.Length, Width: size.Width, Thickness: thick, RoughEdges: size.RoughEdges,
				Price: cut.Priced(cut.RoundMoney(feet * y.rate())),
			})
			t.Stock = append(t.Stock, Stock{Tag: tag, Item: y.item(), Quantity: feet, Unit: boardFoot})
		}
	}
	if len(p.Boards) > 0 {
		t.Assumed = append(t.Assumed, y.item()+": boards without defects, in the sizes the shop takes as typical")
	}
}
