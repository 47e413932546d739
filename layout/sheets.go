package layout

import (
	"rodwright/cut"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/sheet"
)

// sheetStages is how often the direction of cutting changes on a sheet: strips, then lengths, then widths,
// as one person makes them with a saw on a guide rail. Common practice, no source.
const sheetStages = 3

// sheetTasks makes a problem for each kind of sheet goods.
func sheetTasks(_ *piece.Resolved, list *part.List, s *shop.Shop) (tasks []Task, missing []string) {
	groups := map[string][]part.Part{}
	for _, p := range list.Parts {
		if p.Kind == part.Panel && p.Sheet {
			groups[p.Material] = append(groups[p.Material], p)
		}
	}
	for _, id := range sortedKeys(groups) {
		goods, err := sheet.Lookup(id)
		if err != nil {
			missing = append(missing, id+": "+err.Error())
			continue
		}
		tasks = append(tasks, sheetTask(goods, groups[id], s))
	}
	return tasks, missing
}

func sheetTask(goods sheet.Sheet, parts []part.Part, s *shop.Shop) Task {
	w := s.Panel
	p := &cut.SheetProblem{
		Unit: length.MM, Kerf: w.Kerf, Trim: w.SheetTrim, Stages: sheetStages,
		Useful: [2]length.Length{w.SheetUseful, w.SheetUseful},
	}
	t := Task{Kind: OfSheets, Material: goods.ID, Sheets: p}
	price, ok := s.Price(goods.ID)
	if !ok { // the least area of sheet is used then
		price = cut.In(goods.Size[0], p.Unit) * cut.In(goods.Size[1], p.Unit)
	}
	whole := goods.Size[0].MM() * goods.Size[1].MM()
	for _, k := range s.Rack.Sheets {
		if k.Sheet != goods.ID || k.Length <= 0 || k.Width <= 0 {
			continue
		}
		share := k.Length.MM() * k.Width.MM() / whole
		t.addSheet(Stock{Tag: k.Tag, Item: goods.ID, Quantity: share, Unit: each, FromRack: true}, cut.Sheet{
			Tag: k.Tag, Length: k.Length, Width: k.Width, Count: 1, Grain: goods.Veneered,
			Price: cut.Priced(cut.RoundMoney(rackShare(s, k.Paid) * price * share)),
		})
	}
	t.addSheet(Stock{Tag: goods.ID, Item: goods.ID, Quantity: 1, Unit: each}, cut.Sheet{
		Tag: goods.ID, Length: goods.Size[0], Width: goods.Size[1], Count: cut.Any, Grain: goods.Veneered, Price: cut.Priced(price),
	})
	for _, q := range parts {
		for _, tag := range q.Tags {
			p.Parts = append(p.Parts, cut.SheetPart{Tag: tag, Length: q.Blank[0], Width: q.Blank[1], Count: 1, Turn: !goods.Veneered})
		}
	}
	if goods.Assumed != "" {
		t.Assumed = append(t.Assumed, goods.Assumed)
	}
	return t
}

func (t *Task) addSheet(st Stock, s cut.Sheet) {
	t.Stock = append(t.Stock, st)
	t.Sheets.Sheets = append(t.Sheets.Sheets, s)
}
