package sheet

import (
	"math"

	"rodwright/cut"
	"rodwright/cut/cover"
)

// valueSteps is the number of steps a value is rounded up to before a knapsack of whole numbers.
const valueSteps = 1e6

// valueBound is an upper bound of the value that the sheets hold: the lesser of a knapsack of areas over
// all sheets and the sum of their best fillings without counts.
func (m *model) valueBound(need []int, budget *cut.Budget) float64 {
	best := m.areaKnapsack(need)
	all := 0.0
	for i, s := range m.stores {
		g, ok := m.grid(i, budget)
		if !ok {
			return m.wholeValue(best)
		}
		all += float64(s.count) * g.value()
	}
	return m.wholeValue(math.Min(best, all))
}

// wholeValue rounds a bound down to a whole number where all values are whole: no sum lies between.
func (m *model) wholeValue(bound float64) float64 {
	for k := range m.kinds {
		if v := m.value(k); v != math.Floor(v) {
			return bound
		}
	}
	return math.Floor(bound + 1e-6)
}

// areaKnapsack is a knapsack of the parts' areas with their saw cuts, in the areas of all sheets.
func (m *model) areaKnapsack(need []int) float64 {
	b := boundary{m: m, need: need}
	b.reduce()
	room, most := 0.0, 0.0
	for _, s := range m.stores {
		room += float64(s.count) * float64(b.size(s.in.Length)) * float64(b.size(s.in.Width))
	}
	for k := range m.kinds {
		most = math.Max(most, m.value(k))
	}
	if most == 0 {
		return 0
	}
	scale := math.Min(1, (1<<50)/room)
	items := make([]cover.Item, len(m.kinds))
	for k, kd := range m.kinds {
		area := math.Floor(float64(b.size(kd.l)) * float64(b.size(kd.w)) * scale)
		items[k] = cover.Item{
			Size: int64(math.Max(1, area)), Count: need[k],
			Value: int64(math.Ceil(m.value(k) / most * valueSteps)),
		}
	}
	nodes := holdNodes
	v := cover.Most(items, int64(math.Ceil(room*scale)), &nodes)
	return float64(v) / valueSteps * most * (1 + 1e-12)
}
