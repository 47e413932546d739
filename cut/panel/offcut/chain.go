package offcut

import (
	"math/big"

	"rodwright/length"
)

// weighed is a length of strips, with the saw cut behind them, and what each weighs.
type weighed struct {
	long   length.Length
	weight int64
}

// row is strips that lie one behind the other: how far they reach, and what they weigh.
type row struct {
	at     length.Length
	weight int64
}

// mostRows bounds the rows that are told apart.
const mostRows = 256

// behind returns the most that strips one behind the other weigh, by how far they reach: each row weighs more than
// the one before, and up to the next nothing weighs more. Where there are too many, the last weighs as much as all the
// room would, filled with what weighs most for its length.
func behind(strips []weighed, room length.Length) []row {
	out := []row{{}}
	last := make([]int, len(strips)) // by strip the row that it is put behind next
	for {
		to := row{at: room + 1}
		for i, s := range strips {
			if last[i] == len(out) || s.weight == 0 {
				continue
			}
			r := row{out[last[i]].at + s.long, out[last[i]].weight + s.weight}
			if r.at < to.at || r.at == to.at && r.weight > to.weight {
				to = r
			}
		}
		if to.at > room {
			return out
		}
		for i, s := range strips {
			if last[i] < len(out) && out[last[i]].at+s.long <= to.at {
				last[i]++
			}
		}
		if to.weight <= out[len(out)-1].weight {
			continue
		}
		if len(out) == mostRows {
			return append(out, row{to.at, heaviest(strips, room)})
		}
		out = append(out, to)
	}
}

// heaviest is what no strips one behind the other weigh more than in some room.
func heaviest(strips []weighed, room length.Length) (most int64) {
	for _, s := range strips {
		w := new(big.Int).Mul(big.NewInt(s.weight), big.NewInt(int64(room)))
		most = max(most, w.Div(w, big.NewInt(int64(s.long))).Int64())
	}
	return most
}
