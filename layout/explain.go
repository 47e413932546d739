package layout

import (
	"context"
	"fmt"
	"slices"

	"rodwright/cut"
	"rodwright/cut/explain"
	"rodwright/cut/sawing"
	"rodwright/length"
	"rodwright/shop"
)

// Problem returns the task's problem.
func (t Task) Problem() cut.Problem {
	return cut.Problem{Sticks: t.Sticks, Boards: t.Boards, Sheets: t.Sheets}
}

// Noun is what the stock of the task is called: stick, board, sheet.
func (t Task) Noun() string {
	switch t.Kind {
	case OfSticks:
		return "stick"
	case OfBoards:
		return "board"
	}
	return "sheet"
}

// Priced reports whether the shop has a price for all stock that the task may buy. Without one the cost of a
// layout is the length or area of what it opens, and no money.
func (t Task) Priced(s *shop.Shop) bool {
	return !slices.ContainsFunc(t.Stock, func(k Stock) bool {
		_, ok := s.Price(k.Item)
		return !k.FromRack && !ok
	})
}

// Cuts returns the list that a person follows at the saw.
func (l Layout) Cuts() *sawing.List { return sawing.Of(l.Problem(), l.Answer.Used) }

// PieceName names piece i of the stock used as the drawings do, and its own mark when it comes from the rack:
// stick 1; board 2, marked R7.
func (l Layout) PieceName(i int) string {
	name := fmt.Sprintf("%s %d", l.Noun(), i+1)
	if i < len(l.Opened) && l.Opened[i].FromRack {
		name += ", marked " + l.Opened[i].Tag
	}
	return name
}

// OffcutMark is what is written on offcut k of piece i of the stock used before it goes to the rack: the mark
// that the piece bears already, else a letter for its kind and its number; with a letter behind it where the
// piece leaves several.
func (l Layout) OffcutMark(i, k int) string {
	mark := fmt.Sprintf("%s%d", map[Kind]string{OfSticks: "S", OfBoards: "B", OfSheets: "P"}[l.Kind], i+1)
	if i < len(l.Opened) && l.Opened[i].FromRack {
		mark = l.Opened[i].Tag
	}
	if i < len(l.Answer.Used) && len(l.Answer.Used[i].Left) > 1 {
		mark += string(rune('a' + k%26))
	}
	return mark
}

// OneMore is what one more piece of a kind of stock would change.
type OneMore struct {
	explain.Change
	Name     string // of the kind: 21 ft stick of pipe 3/4; R7 of the rack
	FromRack bool
}

// OneMore solves the task again for each kind of stock with one more piece of it: every size that is sold, and
// what lies in the rack and is not opened. The same input gives the same unless ctx ends early.
func (l Layout) OneMore(ctx context.Context, limits cut.Limits) (out []OneMore, err error) {
	changes, err := explain.OneMore(ctx, l.Problem(), l.Answer, limits)
	for _, c := range changes {
		at := slices.IndexFunc(l.Stock, func(s Stock) bool { return s.Tag == c.Stock })
		if at < 0 {
			continue
		}
		m := OneMore{Change: c, FromRack: l.Stock[at].FromRack}
		if m.FromRack && slices.ContainsFunc(l.Answer.Used, func(u cut.Used) bool { return u.Stock == c.Stock }) {
			continue // there is no second one
		}
		m.Name = l.stockName(at, c.Size)
		out = append(out, m)
	}
	return out, err
}

// OneMores tells what one more piece of each kind of stock would change.
func OneMores(s explain.Speech, more []OneMore) []string {
	changes, names := make([]explain.Change, len(more)), make([]string, len(more))
	for i, m := range more {
		changes[i], names[i] = m.Change, m.Name
	}
	return s.OneMores(changes, names)
}

// stockName names a kind of stock.
func (l Layout) stockName(at int, size [2]length.Length) string {
	fine := length.Sixteenth
	if l.Problem().Unit().Metric() {
		fine = length.WholeMM
	}
	text := fine.Text(size[0])
	if size[1] > 0 {
		text = fine.Number(size[0]) + " × " + fine.Text(size[1])
	}
	if l.Stock[at].FromRack {
		return fmt.Sprintf("%s, %s from the rack, marked %s", l.Noun(), text, l.Stock[at].Tag)
	}
	return l.Noun() + " of " + text
}
