package offcut

import (
	"math/big"
	"slices"

	"rodwright/cut"
	"rodwright/cut/cover"
	"rodwright/length"
)

// demand is what the panels of a plan want, and the boards it may come from.
type demand struct {
	w      *work
	wanted [3][]wanted // of each grade and the stricter ones, by length
	wood   []*wood     // by board; nil where it is too thin for any panel
	cost   int64       // of the plan
	steps  int         // that choosing boards may still take
}

// wanted is what is wanted of one length.
type wanted struct {
	long  length.Length // with the saw cut behind
	width length.Length // of all strips together, net
}

// wood is what lines across and along a board can hold, the saw cut behind each strip included.
type wood struct {
	board  int
	long   length.Length
	across [3]yielding // by grade
}

// demand reads what a plan of some cost makes.
func (w *work) demand(pl *plan, cost int64) *demand {
	made := make([]bool, len(w.glued))
	for _, s := range pl.strips {
		made[s.glued] = true
	}
	d := &demand{w: w, cost: cost, steps: coverSteps}
	thinnest := length.Length(-1)
	for g, q := range w.glued {
		if !made[g] {
			continue
		}
		p := w.p.Panels[q.panel]
		for i := gradeOf(p.Show); i < len(grades); i++ {
			d.want(i, q.length+w.p.Kerf, q.width)
		}
		if thinnest < 0 || p.Thickness < thinnest {
			thinnest = p.Thickness
		}
	}
	for k, b := range w.p.Boards {
		if i := slices.IndexFunc(w.p.Boards[:k], func(c cut.Board) bool { return sameWood(c, b) }); i >= 0 {
			d.wood = append(d.wood, d.wood[i])
		} else if thinnest <= b.Thickness {
			d.wood = append(d.wood, d.woodOf(k))
		} else {
			d.wood = append(d.wood, nil)
		}
	}
	return d
}

func (d *demand) want(grade int, long, width length.Length) {
	list := &d.wanted[grade]
	at, found := slices.BinarySearchFunc(*list, long, func(q wanted, long length.Length) int { return int(q.long - long) })
	if !found {
		*list = slices.Insert(*list, at, wanted{long: long})
	}
	(*list)[at].width += width
}

func (d *demand) woodOf(k int) *wood {
	out := &wood{board: k, long: d.w.p.Boards[k].Length + d.w.p.Kerf}
	for g, list := range d.wanted {
		if len(list) > 0 {
			out.across[g] = sumUp(d.w.slabs(k, grades[g], list[0].long-d.w.p.Kerf))
		}
	}
	return out
}

// sameWood reports whether two boards differ in nothing that the bound knows.
func sameWood(a, b cut.Board) bool {
	return a.Length == b.Length && a.Width == b.Width && a.Thickness == b.Thickness && a.RoughEdges == b.RoughEdges &&
		a.Price == b.Price && a.Ring == b.Ring && slices.Equal(a.Defects, b.Defects)
}

// weighing is what a strip weighs by its length, the saw cut behind it and all. The first one is the length itself.
type weighing struct {
	of     func(long length.Length) int64
	length bool
}

// weighings lists the lengths themselves and, for the boards of each length, scales that know which strips can't lie
// one behind the other on them.
func (d *demand) weighings() []weighing {
	out := []weighing{{func(long length.Length) int64 { return int64(long) }, true}}
	var sizes, rooms []int64
	for _, q := range d.wanted[len(grades)-1] {
		sizes = append(sizes, int64(q.long))
	}
	for _, b := range d.wood {
		if b != nil && !slices.Contains(rooms, int64(b.long)) && len(rooms) < mostRooms {
			rooms = append(rooms, int64(b.long))
		}
	}
	var known [][]int64
	for _, room := range rooms {
		for _, scale := range cover.Scales(sizes, room, scaleLimit)[1:] {
			of := func(long length.Length) int64 {
				if int64(long) > room { // longer than these boards: as much as a full one
					return scale.Hold
				}
				return scale.Of(int64(long))
			}
			weights := make([]int64, len(sizes))
			for i, s := range sizes {
				weights[i] = of(length.Length(s))
			}
			if slices.ContainsFunc(weights, func(v int64) bool { return v > 0 }) && !slices.ContainsFunc(known, func(v []int64) bool { return slices.Equal(v, weights) }) {
				known, out = append(known, weights), append(out, weighing{of, false})
			}
		}
	}
	return out
}

// scaleLimit is how many weighings are made for boards of one length, and mostRooms for how many lengths.
const (
	scaleLimit = 12
	mostRooms  = 3
)

// low reckons the bound at a weighing.
func (d *demand) low(u weighing) *low {
	l := &low{cost: d.cost, steps: &d.steps}
	var needs [3]big.Int
	var chains [3][]weighed
	for g, list := range d.wanted {
		for _, q := range list {
			weight := u.of(q.long)
			chains[g] = append(chains[g], weighed{q.long, weight})
			needs[g].Add(&needs[g], product(weight, q.width))
		}
	}
	rows := map[length.Length]*[3][]row{}
	widest := big.NewInt(0)
	for _, b := range d.wood {
		if b == nil {
			continue
		}
		if rows[b.long] == nil {
			rows[b.long] = &[3][]row{}
			for g := range grades {
				rows[b.long][g] = behind(chains[g], b.long)
			}
		}
		if a := product(heaviest(chains[len(grades)-1], b.long), d.w.p.Boards[b.board].Width); a.Cmp(widest) > 0 {
			widest = a
		}
	}
	unit := unitOf(&needs[len(grades)-1], widest)
	for g := range needs {
		l.need[g] = new(big.Int).Div(&needs[g], unit).Int64()
	}
	at := map[*wood]int{}
	for _, b := range d.wood {
		if b == nil {
			continue
		}
		i, known := at[b]
		if !known {
			i, at[b] = len(l.boards), len(l.boards)
			l.boards = append(l.boards, alike{offers: (&offering{d.w, b, rows[b.long], u.length, unit}).list()})
		}
		l.boards[i].boards++
	}
	return l
}

// unitOf is the unit of weights that makes needs and boards small enough.
func unitOf(need, widest *big.Int) *big.Int {
	unit := new(big.Int).Rsh(need, needBits)
	if u := new(big.Int).Rsh(widest, boardBits); u.Cmp(unit) > 0 {
		unit = u
	}
	return unit.Add(unit, big.NewInt(1))
}
