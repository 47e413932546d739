package frame

import (
	"math"
	"slices"
)

// bentMost is the largest bending stress of a member and where it stands. Between loads the moment about each
// axis is at most a quadratic of the place, so that the largest stands at an end, under a load, where an even
// load begins or ends, or where the slope of the stress is nothing.
func bentMost(m Member, long float64, r Strain, b *burden) (stress, at float64) {
	c := m.Section
	if c.WY == 0 && c.WZ == 0 {
		return 0, 0
	}
	bent := bending{start: r.Start, burden: b, y: modulus(c.WY), z: modulus(c.WZ), round: c.Round}
	stress, at = bent.join(r.Start, m.Start, c), 0
	try := func(x, s float64) {
		if s > stress*(1+1e-12) {
			stress, at = s, x
		}
	}
	if len(b.spots)+len(b.spreads) == 0 { // the moments run straight from end to end
		try(0, bent.stress(0))
		try(long, bent.stress(long))
		try(long, bent.join(r.End, m.End, c))
		return stress, at
	}
	marks := bent.marks(long)
	for i, x := range marks {
		try(x, bent.stress(x))
		if i > 0 && len(b.spreads) > 0 {
			for _, peak := range bent.peaks(marks[i-1], x) {
				try(peak, bent.stress(peak))
			}
		}
	}
	try(long, bent.join(r.End, m.End, c))
	return stress, at
}

// bending knows the moments along a member.
type bending struct {
	start  [6]float64
	burden *burden
	y, z   float64 // 1/W
	round  bool
}

// modulus is 1/W, and nothing where no modulus is given.
func modulus(w float64) float64 {
	if w == 0 {
		return 0
	}
	return 1 / w
}

// join is the stress right at an end, where a root may be weaker than the section.
func (b *bending) join(end [6]float64, e End, c Section) float64 {
	at := bending{y: b.y, z: b.z, round: b.round}
	if e.RootY > 0 && c.WY > 0 {
		at.y = 1 / e.RootY
	}
	if e.RootZ > 0 && c.WZ > 0 {
		at.z = 1 / e.RootZ
	}
	return at.of(end[4], end[5])
}

// of is the stress of two moments.
func (b *bending) of(my, mz float64) float64 {
	if b.round {
		return math.Hypot(my*b.y, mz*b.z)
	}
	return math.Abs(my*b.y) + math.Abs(mz*b.z)
}

// stress is that of the section at x.
func (b *bending) stress(x float64) float64 { return b.of(b.moments(x)) }

// moments are those about own y and z in the member at x.
func (b *bending) moments(x float64) (my, mz float64) {
	my = -(b.start[4] + x*b.start[2])
	mz = -(b.start[5] - x*b.start[1])
	for _, p := range b.burden.spots {
		if arm := x - p.at; arm > 0 {
			my -= arm * p.force[2]
			mz += arm * p.force[1]
		}
	}
	for _, s := range b.burden.spreads {
		if run := math.Min(x, s.to) - s.from; run > 0 {
			arm := x - s.from - run/2
			my -= run * arm * s.perMM[2]
			mz += run * arm * s.perMM[1]
		}
	}
	return my, mz
}

// marks are the places where the law of the moments changes, in order.
func (b *bending) marks(long float64) []float64 {
	marks := []float64{0, long}
	for _, p := range b.burden.spots {
		marks = append(marks, p.at)
	}
	for _, s := range b.burden.spreads {
		marks = append(marks, s.from, s.to)
	}
	slices.Sort(marks)
	return slices.Compact(marks)
}

// peaks are the places between two marks where the stress may have no slope. A corner feels ±My/Wy ± Mz/Wz; a
// round section feels the moment in the direction in which it is largest, which is followed until it stays.
func (b *bending) peaks(from, to float64) []float64 {
	var found []float64
	for _, d := range [][2]float64{{1, 0}, {0, 1}, {1, 1}, {1, -1}} {
		x, is := b.top(from, to, d)
		for i := 0; is && b.round && i < 20; i++ {
			my, mz := b.moments(x)
			x, is = b.top(from, to, [2]float64{my * b.y, mz * b.z})
		}
		if is {
			found = append(found, x)
		}
	}
	return found
}

// top is where the moment in a direction has no slope: the top of the parabola through three places.
func (b *bending) top(from, to float64, d [2]float64) (float64, bool) {
	at := func(x float64) float64 {
		my, mz := b.moments(x)
		return d[0]*my*b.y + d[1]*mz*b.z
	}
	middle, half := (from+to)/2, (to-from)/2
	low, mid, high := at(from), at(middle), at(to)
	slope, curve := (high-low)/2, high-2*mid+low
	x := middle - half*slope/curve
	return x, x > from && x < to
}
