package cover

import (
	"math/bits"
	"slices"
)

// Item is one kind of part in a knapsack.
type Item struct {
	Size  int64 // positive
	Value int64 // not negative
	Count int
}

// Most returns the greatest value that items of total size at most room can have, or a number above it
// where finding it takes more than the given nodes; nodes keeps what is left. A piece of stock never
// holds more.
func Most(items []Item, room int64, nodes *int) int64 {
	if room <= 0 {
		return 0
	}
	k := knapsack{items: dense(items, room), nodes: *nodes}
	root := k.bound(0, room)
	k.goal = root
	k.search(0, room, 0)
	*nodes = k.nodes
	if k.nodes < 0 {
		*nodes = 0
		return root
	}
	return k.best
}

// dense returns the items that fit and are worth something, the most value for its size first.
func dense(items []Item, room int64) []Item {
	out := make([]Item, 0, len(items))
	for _, it := range items {
		it.Count = int(min(int64(it.Count), room/it.Size))
		if it.Value > 0 && it.Count > 0 {
			out = append(out, it)
		}
	}
	slices.SortStableFunc(out, func(a, b Item) int {
		if c := cmpProduct(b.Value, a.Size, a.Value, b.Size); c != 0 {
			return c
		}
		return int(min(1, max(-1, b.Size-a.Size)))
	})
	return out
}

// cmpProduct compares a·b with c·d, all not negative, without wrapping round.
func cmpProduct(a, b, c, d int64) int {
	h1, l1 := bits.Mul64(uint64(a), uint64(b))
	h2, l2 := bits.Mul64(uint64(c), uint64(d))
	switch {
	case h1 < h2 || h1 == h2 && l1 < l2:
		return -1
	case h1 > h2 || l1 > l2:
		return 1
	}
	return 0
}

type knapsack struct {
	items []Item
	nodes int
	best  int64
	goal  int64 // no more than this is possible
}

// bound returns at least the value of the items from i on that fit into room: the linear relaxation
// (Dantzig 1957), rounded down as values are whole.
func (k *knapsack) bound(i int, room int64) (v int64) {
	for ; i < len(k.items); i++ {
		it := k.items[i]
		n := min(int64(it.Count), room/it.Size)
		v += n * it.Value
		room -= n * it.Size
		if n < int64(it.Count) {
			hi, lo := bits.Mul64(uint64(room), uint64(it.Value))
			q, _ := bits.Div64(hi, lo, uint64(it.Size)) // room < Size, so the quotient is below Value
			return v + int64(q)
		}
	}
	return v
}

func (k *knapsack) search(i int, room, value int64) {
	if value > k.best {
		k.best = value
	}
	for ; i < len(k.items); i++ {
		if k.nodes--; k.nodes < 0 || k.best >= k.goal || value+k.bound(i, room) <= k.best {
			return
		}
		it := k.items[i]
		for n := min(int64(it.Count), room/it.Size); n > 0; n-- {
			k.search(i+1, room-n*it.Size, value+n*it.Value)
			if k.nodes < 0 || k.best >= k.goal {
				return
			}
		}
	}
}
