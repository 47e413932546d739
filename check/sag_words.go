package check

import (
	"fmt"
	"math"
	"strings"

	"rodwright/figure"
	bend "rodwright/mechanics/plate"
	"rodwright/trade/plate"
)

// heldInWords says how a panel is borne: what bears it, whether it is free to turn there and whether it may lift.
func heldInWords(model *bend.Plate) string {
	var parts []string
	say := func(n int, one, more, then string) {
		switch {
		case n == 1:
			parts = append(parts, "rests on 1 "+one+", "+then)
		case n > 1:
			parts = append(parts, fmt.Sprintf("rests on %d %s, %s", n, more, then))
		}
	}
	flanges, feet, loose, strapped, stiff := supportsBy(model)
	say(flanges, "flange", "flanges", "free to turn over its axis, held down")
	say(len(model.Discs), "flange in one line", "flanges in one line", "borne round their screws, held down")
	say(feet, "foot", "feet", "free to turn and to lift")
	say(loose, "rail", "rails", "free to turn and to lift")
	say(strapped, "strapped rail", "strapped rails", "held down along it")
	out := "it " + strings.Join(parts, "; ")
	if len(model.Rails) > stiff {
		out += "; rails bend with it, their ends stay where they are"
	}
	return out
}

// supportsBy counts the supports of each kind, and the rails that don't give way.
func supportsBy(model *bend.Plate) (flanges, feet, loose, strapped, stiff int) {
	for _, q := range model.Posts {
		if q.TwoSided {
			flanges++
		} else {
			feet++
		}
	}
	for _, r := range model.Rails {
		if r.TwoSided {
			strapped++
		} else {
			loose++
		}
		if r.EI == 0 {
			stiff++
		}
	}
	return flanges, feet, loose, strapped, stiff
}

// clampedRadius is how far from its axis a flange that held a panel fast would hold it, in mm, where no flange's own is known.
const clampedRadius = 30

// heldFast says what the sag would be at least: with every flange holding the panel so that it can't turn. Empty where no
// flange bears it.
func (p *Piece) heldFast(model *bend.Plate, s plate.Stuff) string {
	fast := *model
	fast.Posts, fast.Discs = nil, nil
	for _, q := range model.Posts {
		if q.TwoSided {
			fast.Discs = append(fast.Discs, bend.Disc{X: q.X, Y: q.Y, R: clampedRadius, Clamped: true})
		} else {
			fast.Posts = append(fast.Posts, q)
		}
	}
	for _, d := range model.Discs {
		d.Clamped = true
		fast.Discs = append(fast.Discs, d)
	}
	if len(fast.Discs) == 0 {
		return ""
	}
	least := p.kept("plate held fast", &fast, s, func() any {
		short, err := plate.Coarse(fast, s)
		if err != nil {
			short.Sag = math.NaN()
		}
		return short.Sag
	}).(float64)
	if math.IsNaN(least) {
		return ""
	}
	return fmt.Sprintf("were its flanges to hold it so fast that it can't turn, it would sag by about %s mm: the truth lies between", figure.Digits(least, 2))
}
