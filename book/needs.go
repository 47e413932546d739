package book

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/figure"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/money"
	"rodwright/part"
	"rodwright/shop"
)

// needs lists what is bought, in which sizes wood is looked for, what is used up, and the tools.
func (a *author) needs() []Section {
	s := Section{ID: "what-you-need", Title: "What you need", NewPage: true}
	used := a.usedUp()
	buy := Table{
		Caption: "To buy",
		Columns: []Column{{Head: "Needed", Share: 1.4, Align: Right}, {Head: "What", Share: 3}, {Head: "For", Share: 2.4}},
	}
	rack := false
	for _, l := range a.b.Buy.Lines {
		rack = rack || l.FromRack > 0
		if !used[l.Item] {
			buy.Rows = append(buy.Rows, []string{a.quantity(l.Needed, l.Unit), a.item(l), a.forParts(l)})
		}
	}
	s.table(buy)
	if rack {
		s.note(Remark, "Nothing is counted as there", []string{
			"All stock is listed, that too which the maker of this plan had in the rack: its sizes are those of that rack, and anything as large serves.",
		})
	}
	s.table(a.boardSizes())
	s.table(a.supplies())
	s.table(a.tools())
	return []Section{s}
}

// table adds a table, if it has rows.
func (s *Section) table(t Table) {
	if len(t.Rows) > 0 {
		s.Blocks = append(s.Blocks, t)
	}
}

// usedUp names the items that are supplies: they are listed by themselves.
func (a *author) usedUp() map[string]bool {
	out := map[string]bool{}
	for _, s := range a.b.Parts.Supplies {
		out[s.Class] = true
	}
	return out
}

// boardFootM3 is a board foot in cubic metres: 144 cubic inches.
const boardFootM3 = 144 * 25.4 * 25.4 * 25.4 / 1e9

// quantity tells how much of a unit is needed; boards in cubic metres too for who reads metres.
func (a *author) quantity(v float64, unit string) string {
	switch {
	case unit == "each":
		return digits(v)
	case unit == "board foot" && a.w.to.Unit.Metric():
		return fmt.Sprintf("%s m³ (%s board feet)", digits(v*boardFootM3), digits(v))
	case unit == "board foot":
		return digits(v) + " board feet"
	case unit == "kg":
		return a.w.mass(v)
	}
	return digits(v) + " " + unit
}

// item tells what is bought in trade words.
func (a *author) item(l money.Line) string {
	for _, p := range a.b.Parts.Parts {
		if p.Kind == part.Hardware && l.Item == p.Name {
			return a.hardwareName(p)
		}
	}
	if l.Unit == "board foot" {
		return l.Name + ", boards with no less than the sizes below"
	}
	return l.Name
}

// stickOf returns the size of the pipe whose sticks an item is.
func (a *author) stickOf(item string) (size string, ok bool) {
	for _, l := range a.b.Layout.Stick {
		if strings.HasPrefix(item, "pipe "+l.Material+" ") {
			return l.Material, true
		}
	}
	return "", false
}

// forParts names the parts that an item is for, by their kind.
func (a *author) forParts(l money.Line) string {
	var tags []string
	size, stick := a.stickOf(l.Item)
	for _, p := range a.b.Parts.Parts {
		switch {
		case slices.ContainsFunc(p.Tags, func(t string) bool { return slices.Contains(l.Parts, t) }), slices.Contains(l.Parts, p.Tag),
			p.Kind == part.Panel && (shop.WoodItem(p.Material, p.Rough) == l.Item || p.Sheet && p.Material == l.Item),
			p.Kind == part.Pipe && p.From == part.FromStick && (stick && p.Material == size || l.Item == shop.ThreadItem):
			tags = append(tags, p.Tag)
		}
	}
	return spans(tags)
}

// boardSizes lists the boards and sheets that the layouts open, alike ones together.
func (a *author) boardSizes() Table {
	t := Table{
		Caption: "Boards and sheets to look for, as the layouts use them",
		Columns: []Column{{Head: "Wood", Share: 2}, {Head: "Count", Share: 1, Align: Right}, {Head: "Length", Share: 1, Align: Right}, {Head: "Width", Share: 1, Align: Right}},
	}
	for _, l := range a.b.Layout.All() {
		var sizes [][2]length.Length
		count := map[[2]length.Length]int{}
		for _, u := range l.Answer.Used {
			if s, ok := stockSize(l, u.Stock); ok {
				if count[s] == 0 {
					sizes = append(sizes, s)
				}
				count[s]++
			}
		}
		for _, s := range sizes {
			t.Rows = append(t.Rows, []string{a.w.say(l.Material), fmt.Sprint(count[s]), a.w.to.Text(s[0]), a.w.to.Text(s[1])})
		}
	}
	return t
}

// stockSize returns the length and width of a board or sheet that a layout opens; false for sticks.
func stockSize(l layout.Layout, tag string) (size [2]length.Length, ok bool) {
	switch {
	case l.Boards != nil:
		for _, b := range l.Boards.Boards {
			if b.Tag == tag {
				return [2]length.Length{b.Length, b.Width}, true
			}
		}
	case l.Sheets != nil:
		for _, s := range l.Sheets.Sheets {
			if s.Tag == tag {
				return [2]length.Length{s.Length, s.Width}, true
			}
		}
	}
	return size, false
}

// amount tells how much is used up, to two digits: it is an estimate.
func (a *author) amount(q figure.Figure) string {
	v, unit := q.Value, string(q.Unit)
	if q.Unit == figure.Kg && v < 1 {
		v, unit = 1000*v, "g"
	}
	text := figure.Digits(v, 2) + " " + unit
	if !a.w.to.Unit.Metric() && (unit == "g" || unit == "kg") {
		text += " (" + figure.Digits(q.Value/poundKg, 2) + " lb)"
	}
	return text
}

// supplies lists what is used up.
func (a *author) supplies() Table {
	t := Table{
		Caption: "Used up",
		Columns: []Column{{Head: "Needed", Share: 1.4, Align: Right}, {Head: "What", Share: 3}, {Head: "For", Share: 2.4}},
	}
	for _, s := range a.b.Parts.Supplies {
		t.Rows = append(t.Rows, []string{"about " + a.amount(s.Quantity), s.Name, spans(s.For)})
	}
	return t
}

// tools lists the tools of all steps, in the order in which they are first taken up.
func (a *author) tools() Table {
	t := Table{
		Caption: "Tools",
		Columns: []Column{{Head: "Tool", Share: 3}, {Head: "Serves instead", Share: 3}, {Head: "In", Share: 1.6}},
	}
	steps := map[string][]int{}
	var order []int
	for i, s := range a.b.Work.Steps {
		if s.Tool == "" {
			continue
		}
		if steps[s.Tool] == nil {
			order = append(order, i)
		}
		steps[s.Tool] = append(steps[s.Tool], s.N)
	}
	for _, i := range order {
		s := a.b.Work.Steps[i]
		t.Rows = append(t.Rows, []string{capital(a.w.say(s.Tool)), a.w.say(strings.Join(s.Substitutes, "; or ")), numbered(steps[s.Tool])})
	}
	return t
}
