package money

import (
	"slices"

	"rodwright/shop"
)

// Less returns the list with what was bought already, by item, counted as being in the shop. A quantity is in the unit
// that the item is needed in.
func (l *List) Less(have map[string]float64, s *shop.Shop) *List {
	out := &List{Material: Of(0), Unknown: unpriced(l), Assumed: l.Assumed}
	for _, line := range l.Lines {
		if n := min(have[line.Item], line.Needed-line.FromRack); n > 0 {
			line.FromRack += n
		}
		priced, unknown := lined(line, s)
		out.Lines = append(out.Lines, priced)
		out.Material = out.Material.Plus(priced.Price)
		if unknown != "" {
			out.Unknown = append(out.Unknown, unknown)
		}
	}
	out.Unknown = once(out.Unknown)
	out.Material.Known = out.Material.Known && len(out.Unknown) == 0
	return out
}

// unpriced are the unknowns of a list that are no item of it: parts that can't be bought or laid out.
func unpriced(l *List) []string {
	return slices.DeleteFunc(slices.Clone(l.Unknown), func(name string) bool {
		return slices.ContainsFunc(l.Lines, func(m Line) bool { return m.Item == name })
	})
}
