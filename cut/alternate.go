package cut

// Facing is the side of the rings that a strip shows on its board, and whether its other face is as good. Where the
// side is not known, it always is.
type Facing struct {
	Ring  Ring
	Turns bool
}

// Alternate puts the strips of a panel in an order in which the sides of their rings alternate as far as they can, so
// that they cup against each other. It returns the indices in that order, and by it the side that each strip shows.
func Alternate(strips []Facing) (order []int, shown []Ring) {
	waiting := map[Ring][]int{} // by the ring side they must show; NoRing may show either
	for i, s := range strips {
		must := s.Ring
		if s.Turns {
			must = NoRing
		}
		waiting[must] = append(waiting[must], i)
	}
	want := RingUp
	if len(waiting[RingDown]) > len(waiting[RingUp]) {
		want = RingDown
	}
	for range strips {
		from := want
		for _, r := range []Ring{want, NoRing, want.Other()} {
			if len(waiting[r]) > 0 {
				from = r
				break
			}
		}
		i := waiting[from][0]
		waiting[from] = waiting[from][1:]
		side := from
		if from == NoRing && strips[i].Ring != NoRing {
			side = want
		}
		order, shown = append(order, i), append(shown, side)
		want = want.Other()
	}
	return order, shown
}
