package offcut

import (
	"math"
	"math/big"
	"slices"

	"rodwright/cut"
	"rodwright/cut/cover"
	"rodwright/length"
)

// offer is a board cut up to some place: the least it costs, in millionths, and the most it yields for each grade.
type offer struct {
	cost  int64
	yield [3]int64
}

// low is what a layout's bound is made of. Areas are whole numbers of a unit that keeps sums small; money is in
// millionths.
type low struct {
	boards [][]offer // by board, none first
	need   [3]int64  // of each grade and the stricter ones
	costs  int64     // of all boards
}

// bound returns a lower bound of the cost of every layout that makes the panels of a plan, and whether it proves the
// plan.
func (w *work) bound(pl *plan) (low float64, proven bool) {
	all := 0.0
	for k := range w.p.Boards {
		all += w.p.Cost(k)
	}
	if all > mostMoney {
		return 0, false
	}
	l := w.low(pl)
	best := l.lagrange(l.weights())
	for g := range grades {
		best = max(best, l.cover(g))
	}
	cost := int64(0)
	for k, end := range pl.ends {
		if end > 0 {
			cost += millionths(w.costTo(k, end))
		}
	}
	if best >= cost {
		return pl.cost, true
	}
	// each board's cost was rounded by at most half a millionth
	return float64(best-int64(len(w.p.Boards))) / 1e6, false
}

// needBits and boardBits are how large needs, and the area of one board, may be as whole numbers: fine enough for any
// proof, and small enough that sums over all boards stay exact as floating numbers, too.
const (
	needBits  = 31
	boardBits = 40
)

func area128(l, w length.Length) *big.Int {
	return new(big.Int).Mul(big.NewInt(int64(l)), big.NewInt(int64(w)))
}

// mostMoney keeps sums of millionths whole numbers.
const mostMoney = 1e12

// millionths rounds money to millionths.
func millionths(v float64) int64 { return int64(math.Round(v * 1e6)) }

// low prepares the bound for the panels that a plan makes.
func (w *work) low(pl *plan) *low {
	made := make([]bool, len(w.glued))
	for _, s := range pl.strips {
		made[s.glued] = true
	}
	l := &low{}
	var unit big.Int
	shortest, thinnest := [3]length.Length{}, length.Length(-1)
	var needs [3]big.Int
	for g, q := range w.glued {
		if !made[g] {
			continue
		}
		p := w.p.Panels[q.panel]
		need := area128(q.length+w.p.Kerf, q.width)
		for i := gradeOf(p.Show); i < len(grades); i++ {
			needs[i].Add(&needs[i], need)
			if shortest[i] == 0 || q.length < shortest[i] {
				shortest[i] = q.length
			}
		}
		if thinnest < 0 || p.Thickness < thinnest {
			thinnest = p.Thickness
		}
	}
	widest := big.NewInt(0)
	for _, b := range w.p.Boards {
		if a := area128(b.Length+w.p.Kerf, b.Width); a.Cmp(widest) > 0 {
			widest = a
		}
	}
	unit.Rsh(&needs[2], needBits)
	if u := widest.Rsh(widest, boardBits); u.Cmp(&unit) > 0 {
		unit.Set(u)
	}
	unit.Add(&unit, big.NewInt(1))
	for i := range needs {
		l.need[i] = new(big.Int).Div(&needs[i], &unit).Int64()
	}
	for k, b := range w.p.Boards {
		if i := slices.IndexFunc(w.p.Boards[:k], func(c cut.Board) bool { return sameWood(c, b) }); i >= 0 {
			l.boards = append(l.boards, l.boards[i])
		} else if thinnest <= b.Thickness {
			l.boards = append(l.boards, w.offers(k, shortest, &unit))
		} else {
			l.boards = append(l.boards, []offer{{}})
		}
		l.costs += millionths(w.p.Cost(k))
	}
	return l
}

// sameWood reports whether two boards differ in nothing that the bound knows.
func sameWood(a, b cut.Board) bool {
	return a.Length == b.Length && a.Width == b.Width && a.Thickness == b.Thickness && a.RoughEdges == b.RoughEdges &&
		a.Price == b.Price && a.Ring == b.Ring && slices.Equal(a.Defects, b.Defects)
}

// offers lists what board k yields up to each place where that or its price changes its course, and what it costs there,
// behind no board at all and one that nothing is cut from. From each to the next the yield grows evenly; the price does,
// too, or lies above.
func (w *work) offers(k int, shortest [3]length.Length, unit *big.Int) []offer {
	var slabs [3]yielding
	var at []length.Length
	for g := range grades {
		if shortest[g] > 0 {
			slabs[g] = sumUp(w.slabs(k, grades[g], shortest[g]))
		}
		for _, s := range slabs[g].slabs {
			at = append(at, s.from, s.to)
		}
	}
	whole := w.p.Boards[k].Length + w.p.Kerf
	if w.p.Salvage == 0 {
		at = at[:0]
	} else {
		at = append(at, whole-max(w.p.MinTail, 1))
	}
	at = append(at, whole)
	slices.Sort(at)
	at = slices.Compact(at)
	out := []offer{{}, {cost: millionths(w.p.Cost(k) - w.p.TailCredit(k, whole))}}
	for _, x := range at {
		if x <= 0 || x > whole {
			continue
		}
		o := offer{cost: millionths(w.p.Cost(k) - w.p.TailCredit(k, whole-x))}
		for g := range grades {
			o.yield[g] = slabs[g].to(x, unit)
		}
		out = append(out, o)
	}
	return out
}

// yielding is slabs with what those before each yield.
type yielding struct {
	slabs  []slab
	before []*big.Int
}

func sumUp(slabs []slab) yielding {
	y, sum := yielding{slabs: slabs}, new(big.Int)
	for _, s := range slabs {
		y.before = append(y.before, sum)
		sum = new(big.Int).Add(sum, area128(s.to-s.from, s.net))
	}
	return y
}

// to is what the slabs up to x yield, in units, rounded up.
func (y yielding) to(x length.Length, unit *big.Int) int64 {
	i := len(y.slabs) - 1
	for i >= 0 && y.slabs[i].from >= x {
		i--
	}
	if i < 0 {
		return 0
	}
	sum := area128(min(y.slabs[i].to, x)-y.slabs[i].from, y.slabs[i].net)
	sum.Add(sum, y.before[i]).Add(sum, unit).Sub(sum, big.NewInt(1))
	return sum.Div(sum, unit).Int64()
}

// climbs is how often the weights are made better.
const climbs = 40

// weights looks for weights that make the bound great, in money for a unit of area (Polyak's steps towards the cost of
// all boards, which shrink where they do not help). They may be anything: what they prove is worked out in whole numbers.
func (l *low) weights() [3]float64 {
	var at, best [3]float64
	top := math.Inf(-1)
	step := 1.0
	for range climbs {
		value, lack := l.at(at)
		if value > top {
			top, best = value, at
		} else {
			step *= 0.9
			at = best
			_, lack = l.at(at)
		}
		long := 0.0
		for g := range lack {
			long += lack[g] * lack[g]
		}
		if long == 0 {
			break
		}
		for g := range at {
			at[g] = math.Max(0, at[g]+step*(float64(l.costs)-top)/long*lack[g])
		}
	}
	return best
}

// at is the bound at some weights, as a floating number, and by how much its boards fall short of each need.
func (l *low) at(weight [3]float64) (value float64, lack [3]float64) {
	for g, n := range l.need {
		value += weight[g] * float64(n)
		lack[g] = float64(n)
	}
	for _, offers := range l.boards {
		least, pick := 0.0, 0
		for i, o := range offers {
			v := float64(o.cost)
			for g, y := range o.yield {
				v -= weight[g] * float64(y)
			}
			if v < least {
				least, pick = v, i
			}
		}
		value += least
		for g, y := range offers[pick].yield {
			lack[g] -= float64(y)
		}
	}
	return value, lack
}

// weightBits is the fineness of whole weights.
const weightBits = 40

// lagrange is the bound at some weights, in whole numbers.
func (l *low) lagrange(weight [3]float64) int64 {
	var whole [3]*big.Int
	sum := new(big.Int)
	for g, v := range weight {
		whole[g], _ = new(big.Float).SetMantExp(big.NewFloat(v), weightBits).Int(nil)
		sum.Add(sum, new(big.Int).Mul(whole[g], big.NewInt(l.need[g])))
	}
	for _, offers := range l.boards {
		least := new(big.Int)
		for _, o := range offers {
			v := new(big.Int).Lsh(big.NewInt(o.cost), weightBits)
			for g, y := range o.yield {
				v.Sub(v, new(big.Int).Mul(whole[g], big.NewInt(y)))
			}
			if v.Cmp(least) < 0 {
				least = v
			}
		}
		sum.Add(sum, least)
	}
	return sum.Rsh(sum, weightBits).Int64()
}

// mostCovered bounds the boards that are covered with whole ones: more of them are divided with little loss.
const mostCovered = 24

// coverOffers bounds the places up to which a board may be cut when whole boards are chosen.
const coverOffers = 4

// cover is the least cost of whole boards, each cut up to some place, that yield what one grade and the stricter ones
// need.
func (l *low) cover(g int) int64 {
	if len(l.boards) > mostCovered || l.need[g] == 0 || g > 0 && l.need[g] == l.need[g-1] {
		return 0
	}
	offers := make([][]cover.Offer, len(l.boards))
	for k, list := range l.boards {
		n := min(coverOffers, len(list)-2)
		for i := range n { // up to some place behind the one before, for no less than that costs
			from, to := 1+i*(len(list)-2)/n, 1+(i+1)*(len(list)-2)/n
			offers[k] = append(offers[k], cover.Offer{Hold: float64(list[to].yield[g]), Price: float64(list[from].cost)})
		}
	}
	least := cover.Choose(offers, float64(l.need[g]))
	if math.IsInf(least, 1) {
		return 0
	}
	return int64(math.Floor(least))
}
