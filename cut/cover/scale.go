package cover

import "slices"

// Scale is a way to weigh parts of one size each: a dual feasible function of a room. Whatever fits into
// the room together weighs at most Hold.
type Scale struct {
	Of   func(size int64) int64
	Hold int64
}

// Scales returns scales for a room, made for parts of the given sizes. The first weighs by size. The
// others are the dual feasible functions of Fekete and Schepers (Mathematical Programming 91, 2001) and of
// Carlier, Clautiaux and Moukrim (Computers & Operations Research 34, 2007), from memory, with thresholds
// at the parts' sizes; the first family rounded by the second contains the bound L2 of Martello and Toth
// (Discrete Applied Mathematics 28, 1990). At most limit are returned.
func Scales(sizes []int64, room int64, limit int) []Scale {
	out := []Scale{{Of: func(s int64) int64 { return s }, Hold: room}}
	cuts := thresholds(sizes, room, max(1, limit/8))
	for _, at := range cuts {
		at := at
		for k := int64(1); k <= 3 && len(out) < limit; k++ {
			out = append(out, Scale{func(s int64) int64 { return stepped(threshold(s, at, room), k, room) }, k * room})
		}
		if len(out) < limit {
			out = append(out, Scale{func(s int64) int64 { return mirrored(s, at, room) }, 2 * (room / at)})
		}
		if len(out) < limit {
			out = append(out, Scale{func(s int64) int64 { return threshold(s, at, room) }, room})
		}
	}
	for k := int64(1); k <= 12 && len(out) < limit; k++ {
		out = append(out, Scale{func(s int64) int64 { return stepped(s, k, room) }, k * room})
	}
	return out
}

// thresholds returns the places worth trying: sizes up to half the room, what sizes above half leave, and
// one behind each, evenly thinned out to at most n.
func thresholds(sizes []int64, room int64, n int) []int64 {
	var at []int64
	for _, s := range sizes {
		for _, t := range []int64{s, room - s + 1, s + 1} {
			if t > 0 && t <= room/2 {
				at = append(at, t)
			}
		}
	}
	slices.Sort(at)
	at = slices.Compact(at)
	if len(at) <= n {
		return at
	}
	thin := make([]int64, n)
	for i := range thin {
		thin[i] = at[i*len(at)/n]
	}
	return thin
}

// threshold is f0: parts that leave less than at count as a whole room, parts below at as nothing.
func threshold(s, at, room int64) int64 {
	switch {
	case s > room-at:
		return room
	case s < at:
		return 0
	}
	return s
}

// stepped is u(k), times k: (k + 1)·s rounded down to whole rooms, unless it is one.
func stepped(s, k, room int64) int64 {
	if (k+1)*s%room == 0 {
		return k * s
	}
	return (k + 1) * s / room * room
}

// mirrored is f2 of Carlier, Clautiaux and Moukrim: sizes in steps of at, rounded down below half the
// room, and above it so that what two parts leave is rounded down.
func mirrored(s, at, room int64) int64 {
	switch {
	case 2*s > room:
		return 2 * (room/at - (room-s)/at)
	case 2*s == room:
		return room / at
	}
	return 2 * (s / at)
}
