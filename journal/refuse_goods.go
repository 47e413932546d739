package journal

import (
	"fmt"
	"slices"
	"strings"
)

func (g *Goods) check() error {
	for _, t := range []struct{ field, text string }{{"tag", g.Tag}, {"item", g.Item}, {"material", g.Material}, {"quarters", g.Quarters}} {
		if !oneLine(t.text, MostActor) {
			return &EntryError{"fact.goods." + t.field, fmt.Sprintf("must be one line of at most %d letters", MostActor)}
		}
	}
	if g.Cents != nil && (*g.Cents < 0 || *g.Cents > 100*mostCount) {
		return &EntryError{"fact.goods.cents", fmt.Sprintf("must be what was paid, in hundredths, from 0 to %d", 100*mostCount)}
	}
	switch g.Kind {
	case ItemGoods:
		return g.checkItem()
	case BoardGoods, StickGoods, SheetGoods:
		return g.checkStock()
	}
	return &EntryError{"fact.goods.kind", "must be board, stick, sheet or item"}
}

func (g *Goods) checkItem() error {
	switch {
	case strings.TrimSpace(g.Item) == "":
		return &EntryError{"fact.goods.item", "must name the item as the buying list does"}
	case !(g.Count > 0 && g.Count <= mostCount):
		return &EntryError{"fact.goods.count", fmt.Sprintf("must say how many, more than 0 and at most %d", mostCount)}
	case g.Tag != "" || g.Size != [3]MM{}:
		return &EntryError{"fact.goods.tag", "belongs to a board, a stick or a sheet, as its size does"}
	case g.Rough != 0 || len(g.Defects) > 0:
		return &EntryError{"fact.goods.defects", "belong to a board, as its rough edges do"}
	}
	return nil
}

func (g *Goods) checkStock() error {
	least := map[string]int{BoardGoods: 3, SheetGoods: 2, StickGoods: 1}[g.Kind]
	switch {
	case !areSizes(g.Size, least):
		return &EntryError{"fact.goods.size", fmt.Sprintf("must have %d measures of a %s, each more than nothing and at most 1 km", least, g.Kind)}
	case strings.TrimSpace(g.Tag) == "":
		return &EntryError{"fact.goods.tag", "must be what is written on it, so that cuts can name it"}
	case strings.TrimSpace(g.Material) == "":
		return &EntryError{"fact.goods.material", "must name the wood, the sheet or the size of the pipe"}
	case g.Item != "":
		return &EntryError{"fact.goods.item", "belongs to what is sold by the piece"}
	case g.Count != 0:
		return &EntryError{"fact.goods.count", "belongs to an item: each " + g.Kind + " has a tag of its own"}
	case g.Rough < 0 || g.Rough > 2:
		return &EntryError{"fact.goods.rough", "must be 0, 1 or 2 rough edges"}
	case len(g.Defects) > mostThings:
		return &EntryError{"fact.goods.defects", fmt.Sprintf("must be at most %d", mostThings)}
	}
	for _, d := range g.Defects {
		if err := d.check(); err != nil {
			return err
		}
	}
	return nil
}

func (d Defect) check() error {
	switch {
	case !slices.Contains(defectKinds, d.Kind):
		return &EntryError{"fact.goods.defects.kind", "must be one of " + strings.Join(defectKinds, ", ")}
	case !slices.Contains(defectFaces, d.Face):
		return &EntryError{"fact.goods.defects.face", "must be one of " + strings.Join(defectFaces, ", ")}
	case !isSpan(d.Size[0]) || !isSpan(d.Size[1]) || d.Size[0] == 0 || d.Size[1] == 0:
		return &EntryError{"fact.goods.defects.size", "must be more than nothing and at most 1 km"}
	case !isSpan(d.At[0]) || !isSpan(d.At[1]):
		return &EntryError{"fact.goods.defects.at", "must be a corner on the board"}
	}
	return nil
}
