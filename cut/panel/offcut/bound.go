package offcut

import (
	"math"
	"math/big"
	"slices"

	"rodwright/cut/cover"
	"rodwright/length"
)

// low is a bound being reckoned at one weighing of the lengths. Weights of strips, each times its net width, are whole
// numbers of a unit that keeps sums small; money is in millionths.
type low struct {
	boards []alike
	need   [3]int64 // of each grade and the stricter ones
	cost   int64    // of the plan
	steps  *int     // that choosing boards may still take
}

// alike is boards of the same wood, with the offers of each: none first.
type alike struct {
	offers []offer
	boards int
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
	cost := int64(0)
	for k, end := range pl.ends {
		if end > 0 {
			cost += millionths(w.costTo(k, end))
		}
	}
	best := int64(0)
	d := w.demand(pl, cost)
	for _, u := range d.weighings() {
		if best = max(best, d.low(u).least()); best >= cost {
			return pl.cost, true
		}
	}
	// each board's cost was rounded by at most half a millionth
	return float64(best-int64(len(w.p.Boards))) / 1e6, false
}

// least is the greatest bound found.
func (l *low) least() int64 {
	best := int64(0)
	if l.need[0] != l.need[1] || l.need[1] != l.need[2] { // for one need a cover says as much
		best = l.lagrange(l.weights())
	}
	for g := range grades {
		best = max(best, l.cover(g))
	}
	return best
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

// climbs is how often the weights are made better.
const climbs = 40

// weights looks for weights that make the bound great, in money for a unit of area (Polyak's steps towards the cost of
// the plan, which shrink where they do not help). They may be anything: what they prove is worked out in whole numbers.
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
			at[g] = math.Max(0, at[g]+step*(float64(l.cost)-top)/long*lack[g])
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
	for _, b := range l.boards {
		least, pick := 0.0, 0
		for i, o := range b.offers {
			v := float64(o.cost)
			for g, y := range o.yield {
				v -= weight[g] * float64(y)
			}
			if v < least {
				least, pick = v, i
			}
		}
		value += least * float64(b.boards)
		for g, y := range b.offers[pick].yield {
			lack[g] -= float64(y) * float64(b.boards)
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
	for _, b := range l.boards {
		least := new(big.Int)
		for _, o := range b.offers {
			v := new(big.Int).Lsh(big.NewInt(o.cost), weightBits)
			for g, y := range o.yield {
				v.Sub(v, new(big.Int).Mul(whole[g], big.NewInt(y)))
			}
			if v.Cmp(least) < 0 {
				least = v
			}
		}
		sum.Add(sum, least.Mul(least, big.NewInt(int64(b.boards))))
	}
	return sum.Rsh(sum, weightBits).Int64()
}

// coverSteps is the work on choices of whole boards, all together: beyond it boards are divided.
const coverSteps = 200_000

// coverOffers bounds the places up to which a board may be cut when whole boards are chosen.
const coverOffers = 8

// cover is the least cost of whole boards, each cut up to some place, that yield what one grade and the stricter ones
// need. It is no more than the plan's.
func (l *low) cover(g int) int64 {
	if l.need[g] == 0 || g > 0 && l.need[g] == l.need[g-1] {
		return 0
	}
	var lists [][]cover.Offer
	for _, b := range l.boards {
		var list []cover.Offer
		for _, o := range merged(b.offers[1:], coverOffers, g) {
			list = append(list, cover.Offer{Hold: float64(o.yield[g]), Price: float64(o.cost)})
		}
		lists = append(lists, slices.Repeat([][]cover.Offer{list}, b.boards)...)
	}
	least := cover.Cheapest(lists, float64(l.need[g]), float64(l.cost), func(steps int) bool {
		*l.steps -= steps
		return *l.steps > 0
	}).Cost
	if math.IsInf(least, 1) {
		return 0
	}
	return int64(math.Floor(least))
}
