package check

import (
	"cmp"
	"math"
	"slices"

	"rodwright/length"
)

// pair is two rows of screws that the steel holds apart.
type pair struct {
	a, b   row
	season season
	play   length.Length
	// what the legs give before the first screw bears all it can: with their far ends free to turn, and
	// held; in mm
	soft, stiff float64
	springs     [2]float64 // N per mm between the rows, soft and stiff; zero where nothing gives
	bears       float64    // N between the rows
	missing     string     // why what the screws bear is not known
}

// worstPair returns the two rows that the steel holds apart by the most over what it allows; nil when no two
// are.
func (p *Piece) worstPair(i int, rows []row) (worst *pair, err error) {
	for b := range rows {
		for a := range b {
			h, ok := p.pair(rows[a], rows[b])
			if !ok {
				continue
			}
			if h.season, err = p.moves(i, h.b.at-h.a.at); err != nil {
				return nil, err
			}
			if worst == nil || h.over() > worst.over() {
				worst = h
			}
		}
	}
	return worst, nil
}

// over is by how much the movement passes what is allowed, in mm.
func (h *pair) over() float64 { return h.season.most().MM() - h.play.MM() - h.soft }

// pair reckons two rows as springs one behind the other: the panel loads both with the same force. Only what
// belongs to one frame holds them apart. It reports false when nothing does.
func (p *Piece) pair(a, b row) (*pair, bool) {
	linked := func(r, other row) row {
		out := row{at: r.at}
		for _, h := range r.holds {
			if h.free == "" && slices.ContainsFunc(other.holds, func(o hold) bool { return o.free == "" && o.frame == h.frame }) {
				out.holds = append(out.holds, h)
			}
		}
		return out
	}
	h := &pair{a: linked(a, b), b: linked(b, a)}
	if len(h.a.holds) == 0 || len(h.b.holds) == 0 {
		return nil, false
	}
	h.play = h.a.play() + h.b.play()
	soft := h.a.gives(func(h hold) float64 { return h.soft }) + h.b.gives(func(h hold) float64 { return h.soft })
	stiff := h.a.gives(func(h hold) float64 { return h.stiff }) + h.b.gives(func(h hold) float64 { return h.stiff })
	h.bears = min(h.a.bears(func(h hold) float64 { return h.soft }), h.b.bears(func(h hold) float64 { return h.soft }))
	stiffly := min(h.a.bears(func(h hold) float64 { return h.stiff }), h.b.bears(func(h hold) float64 { return h.stiff }))
	h.soft, h.stiff = h.bears*soft, stiffly*stiff
	if soft > 0 && stiff > 0 {
		h.springs = [2]float64{1 / soft, 1 / stiff}
	}
	for _, one := range slices.Concat(h.a.holds, h.b.holds) {
		h.missing = cmp.Or(h.missing, one.why)
	}
	return h, true
}

// play is that of the row's tightest holes.
func (r row) play() length.Length {
	least := length.Max
	for _, h := range r.holds {
		least = min(least, h.play)
	}
	return least
}

// gives returns how much the whole row is moved by one newton, in mm: springs side by side.
func (r row) gives(of func(hold) float64) float64 {
	k := 0.0
	for _, h := range r.holds {
		if of(h) <= 0 {
			return 0
		}
		k += 1 / of(h)
	}
	return 1 / k
}

// bears returns the force on the whole row, in N, at which the first of its holds bears all its screws can.
// Holds that do not give take the force alone.
func (r row) bears(of func(hold) float64) float64 {
	gives, rigid := r.gives(of), 0.0
	for _, h := range r.holds {
		if of(h) <= 0 {
			rigid++
		}
	}
	least := math.Inf(1)
	for _, h := range r.holds {
		switch {
		case of(h) <= 0:
			least = min(least, h.bears*rigid)
		case rigid == 0:
			least = min(least, h.bears*of(h)/gives)
		}
	}
	return least
}
