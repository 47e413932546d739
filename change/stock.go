package change

import "rodwright/money"

// good is one thing on a buying list, in one unit.
type good struct{ item, unit string }

// stock lists what is bought in another amount.
func stock(from, to []money.Line) []Stock {
	out := []Stock{}
	before, was := amounts(from)
	after, is := amounts(to)
	for _, g := range is {
		if a, b := before[g], after[g]; a != b {
			out = append(out, Stock{g.item, a, b, g.unit})
		}
	}
	for _, g := range was {
		if a := before[g]; !has(after, g) && a != 0 {
			out = append(out, Stock{g.item, a, 0, g.unit})
		}
	}
	return out
}

// amounts adds up what is bought of each good, whole packs counted, and lists the goods in their order.
func amounts(lines []money.Line) (map[good]float64, []good) {
	sum := make(map[good]float64, len(lines))
	var order []good
	for _, l := range lines {
		g := good{l.Item, l.Unit}
		if !has(sum, g) {
			order = append(order, g)
		}
		sum[g] = six(sum[g] + l.Count*l.Pack)
	}
	return sum, order
}

func has(m map[good]float64, g good) bool {
	_, ok := m[g]
	return ok
}
