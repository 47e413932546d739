package stick

// enumeration lists all ways to fill a stick whose parts weigh at least so much. rest[i][c] is the most weight that
// the kinds from i on add in a room of c steps, so that no turning is taken which does not end in a way.
type enumeration struct {
	m      *model
	step   int64
	have   []int
	weight []int64
	least  int64
	rest   [][]int64
	found  []load
	most   int
	kinds  []int32
	steps  int
}

// restMost bounds the table of an enumeration.
const restMost = 4 << 20

// stepsMost bounds the steps of one enumeration.
const stepsMost = 20 << 20

// newEnumeration returns nil where its table would be too large.
func newEnumeration(m *model, have []int, weight []int64, least int64) *enumeration {
	step := int64(0)
	for _, k := range m.kinds {
		step = gcd(step, k.size)
	}
	room := int(m.stores[0].room / step)
	if (room+1)*(len(m.kinds)+1) > restMost {
		return nil
	}
	e := &enumeration{m: m, step: step, have: have, weight: weight, least: least, rest: make([][]int64, len(m.kinds)+1)}
	e.rest[len(m.kinds)] = make([]int64, room+1)
	for i := len(m.kinds) - 1; i >= 0; i-- {
		e.rest[i] = e.added(i, e.rest[i+1])
	}
	return e
}

// added is the table with kind i taken in as well.
func (e *enumeration) added(i int, next []int64) []int64 {
	out := make([]int64, len(next))
	copy(out, next)
	size := int(e.m.kinds[i].size / e.step)
	for n := 1; n <= e.have[i] && n*size < len(out); n++ {
		for c := n * size; c < len(out); c++ {
			out[c] = max(out[c], next[c-n*size]+int64(n)*e.weight[i])
		}
	}
	return out
}

// list returns the ways, more than most of them where there are more.
func (e *enumeration) list(most int) []load {
	e.most = most
	e.walk(0, len(e.rest[0])-1, 0)
	if e.steps > stepsMost {
		return make([]load, most+1)
	}
	return e.found
}

func (e *enumeration) walk(i, room int, weight int64) {
	if e.steps++; e.steps > stepsMost || len(e.found) > e.most || weight+e.rest[i][room] < e.least {
		return
	}
	if i == len(e.have) {
		if len(e.kinds) > 0 {
			e.found = append(e.found, load{0, append([]int32(nil), e.kinds...)})
		}
		return
	}
	size := int(e.m.kinds[i].size / e.step)
	mark := len(e.kinds)
	for n := 0; n <= e.have[i] && n*size <= room; n++ {
		if n > 0 {
			e.kinds = append(e.kinds, int32(i))
		}
		e.walk(i+1, room-n*size, weight+int64(n)*e.weight[i])
	}
	e.kinds = e.kinds[:mark]
}
