package offcut

import (
	"cmp"
	"math/big"
	"slices"

	"rodwright/length"
)

// offer is a board cut up to some place: the least it costs, in millionths, and the most it yields for each grade.
type offer struct {
	at    length.Length
	cost  int64
	yield [3]int64
}

// offering lists what a board yields for what it costs.
type offering struct {
	w      *work
	b      *wood
	behind *[3][]row
	length bool // strips weigh as much as they are long
	unit   *big.Int
}

// list lists what the board yields up to each place where that or its price changes its course, and what it costs there,
// behind no board at all and one that nothing is cut from. From each to the next the yield grows evenly or not at all;
// the price does, too, or lies above.
func (o *offering) list() []offer {
	p, k := o.w.p, o.b.board
	long := p.Boards[k].Length // a tail begins where the saw cut behind the last strip ends
	out := []offer{{}, {cost: millionths(p.Cost(k) - p.TailCredit(k, long))}}
	for _, x := range o.places() {
		f := offer{at: x, cost: millionths(p.Cost(k) - p.TailCredit(k, long-x))}
		for g := range grades {
			f.yield[g] = o.yield(g, x)
		}
		out = append(out, f)
	}
	if len(out) > mostOffers {
		return append(out[:1:1], merged(out[1:], mostOffers, len(grades)-1)...)
	}
	return out
}

// places returns where yield or price change their course.
func (o *offering) places() []length.Length {
	at := []length.Length{o.b.long}
	if o.w.p.Salvage > 0 {
		at = append(at, 1, o.w.p.Boards[o.b.board].Length-max(o.w.p.MinTail, 1))
		for g := range grades {
			for _, s := range o.b.across[g].slabs {
				at = append(at, s.from, s.from+1, s.to)
			}
			for _, r := range o.behind[g] {
				at = append(at, r.at-1, r.at)
			}
		}
		at = o.sorted(at)
		if o.length {
			for g := range grades {
				at = append(at, o.turns(g, at)...)
			}
		}
	}
	return o.sorted(at)
}

func (o *offering) sorted(at []length.Length) []length.Length {
	slices.Sort(at)
	return slices.DeleteFunc(slices.Compact(at), func(x length.Length) bool { return x <= 0 || x > o.b.long })
}

// turns returns the places between the others from where on not the lines across say how much the board yields, but
// those along it.
func (o *offering) turns(g int, at []length.Length) (out []length.Length) {
	for i := 1; i < len(at); i++ {
		most, net := o.product(g, at[i-1]), o.b.across[g].net(at[i])
		lack := new(big.Int).Sub(most, o.b.across[g].to(at[i-1]))
		if net == 0 || lack.Sign() <= 0 || most.Cmp(o.b.across[g].to(at[i])) >= 0 {
			continue
		}
		x := at[i-1] + length.Length(lack.Div(lack, big.NewInt(int64(net))).Int64())
		out = append(out, x, x+1)
	}
	return out
}

// yield is the most that strips of a grade weigh on the board up to x, in units, rounded up.
func (o *offering) yield(g int, x length.Length) int64 {
	most := o.product(g, x)
	if o.length {
		if sum := o.b.across[g].to(x); sum.Cmp(most) < 0 {
			most = sum
		}
	}
	most.Add(most, o.unit).Sub(most, big.NewInt(1))
	return most.Div(most, o.unit).Int64()
}

// product is the greatest width on a line across the board up to x times the greatest weight on a line along it.
func (o *offering) product(g int, x length.Length) *big.Int {
	i, found := slices.BinarySearchFunc(o.behind[g], x, func(r row, x length.Length) int { return cmp.Compare(r.at, x) })
	if !found {
		i--
	}
	return product(o.behind[g][i].weight, o.b.across[g].widest(x))
}

func product(weight int64, width length.Length) *big.Int {
	return new(big.Int).Mul(big.NewInt(weight), big.NewInt(int64(width)))
}

// mostOffers bounds the offers of a board.
const mostOffers = 64

// merged returns at most so many offers instead of a list: each costs no more than what it stands for and yields no
// less. It keeps those apart between which the yield for one grade grows most. Between two that do not lie next to each
// other are more, and they stand in both.
func merged(list []offer, most, g int) (out []offer) {
	if len(list) <= 1 {
		return list
	}
	ends := make([]int, len(list)-1)
	for i := range ends {
		ends[i] = i
	}
	grows := func(i int) int64 { return list[i+1].yield[g] - list[i].yield[g] }
	slices.SortStableFunc(ends, func(a, b int) int { return cmp.Compare(grows(b), grows(a)) })
	ends = append(ends[:min(most-1, len(ends))], len(list)-1)
	slices.Sort(ends)
	from := 0
	for _, to := range ends {
		out = append(out, offer{list[to].at, list[from].cost, list[to].yield})
		if from = to; to+1 < len(list) && list[to+1].at == list[to].at+1 {
			from++
		}
	}
	return out
}
