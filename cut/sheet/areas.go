package sheet

import (
	"math"

	"rodwright/cut"
	"rodwright/length"
)

// areaTable says what parts of a total area are worth at most, counts kept and shapes forgotten. Areas are in
// cells: a part's is rounded down and a room's up, so that nothing is forbidden that is possible.
type areaTable struct {
	kerf  length.Length
	scale float64
	whole int64 // the sheet
	value []float64
}

// areaCells is the most cells of a sheet.
const areaCells = 20_000

// areaTable fills the table by a bounded knapsack for the only sheet; nil where the budget ends.
func (m *model) areaTable(budget *cut.Budget) *areaTable {
	in := m.stores[0].in
	t := &areaTable{kerf: m.p.Kerf}
	b := boundary{m: m}
	b.reduce()
	u := float64(b.unit)
	room := float64(in.Length+t.kerf) / u * (float64(in.Width+t.kerf) / u)
	t.scale = math.Min(1, areaCells/room) / u / u
	t.whole = int64(math.Ceil(t.cells(in.Length+t.kerf, in.Width+t.kerf) - 1e-6))
	t.value = make([]float64, t.whole+1)
	for k, kd := range m.kinds {
		size := int64(math.Floor(t.cells(kd.l+t.kerf, kd.w+t.kerf) + 1e-6))
		left := kd.need
		if !budget.Ask() {
			return nil
		}
		for n := 1; left > 0; n *= 2 { // packs of 1, 2, 4 … and the rest make every number
			n = min(n, left)
			left -= n
			t.pack(int64(n)*size, float64(n)*m.value(k))
		}
	}
	return t
}

func (t *areaTable) cells(l, w length.Length) float64 { return float64(l) * float64(w) * t.scale }

func (t *areaTable) pack(size int64, value float64) {
	for a := t.whole; a >= size; a-- {
		if v := t.value[a-size] + value; v > t.value[a] {
			t.value[a] = v
		}
	}
}

// area is the cells that a rectangle with its saw cuts has at least.
func (t *areaTable) area(l, w length.Length) int64 { return int64(math.Floor(t.cells(l, w) + 1e-6)) }

// most is what cells of area hold at most.
func (t *areaTable) most(cells int64) float64 {
	if cells < 0 {
		return 0
	}
	return t.value[min(cells, t.whole)]
}

// room is what a rectangle with its saw cuts holds at most.
func (t *areaTable) room(l, w length.Length) float64 {
	return t.most(int64(math.Ceil(t.cells(l, w) - 1e-6)))
}
