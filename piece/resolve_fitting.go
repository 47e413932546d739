package piece

import (
	"slices"

	"rodwright/trade/pipe"
)

// FittingFor returns the fitting that joins sticks which leave one point in the given directions, and
// reports whether the trade makes one. Each direction counts once.
//
//	2 in line                            coupling
//	2 square                             90° elbow
//	2 at 135°, a bend of 45°             45° elbow
//	3, two in line, one square to them   tee
//	3, each square to the others         side outlet elbow
//	4, two crossing lines                cross
//	4, two in line, two square to them
//	   and to each other                 side outlet tee
//
// Five and more ends are made by no fitting of the trade; common practice, no source.
func FittingFor(dirs []Dir) (pipe.Kind, bool) {
	switch len(dirs) {
	case 2:
		return elbowFor(dirs[0], dirs[1])
	case 3:
		switch line, others := inLine(dirs); {
		case line >= 0 && square(dirs[line], others[0]):
			return pipe.Tee, true
		case line < 0 && allSquare(dirs):
			return pipe.SideElbow, true
		}
	case 4:
		line, others := inLine(dirs)
		if line < 0 || !square(dirs[line], others[0]) || !square(dirs[line], others[1]) {
			return "", false
		}
		if others[0] == others[1].minus() {
			return pipe.Cross, true
		}
		if square(others[0], others[1]) {
			return pipe.SideTee, true
		}
	}
	return "", false
}

func elbowFor(a, b Dir) (pipe.Kind, bool) {
	dot := a.dot(b)
	switch {
	case a == b.minus():
		return pipe.Coupling, true
	case dot == 0:
		return pipe.Elbow90, true
	case dot < 0 && 2*dot*dot == a.dot(a)*b.dot(b): // cos 135° = −1/√2
		return pipe.Elbow45, true
	}
	return "", false
}

// inLine returns the first direction whose opposite is there too, -1 when there is none, and the
// directions beside the two.
func inLine(dirs []Dir) (line int, others []Dir) {
	for i, d := range dirs {
		if k := slices.Index(dirs, d.minus()); k > i {
			for j, o := range dirs {
				if j != i && j != k {
					others = append(others, o)
				}
			}
			return i, others
		}
	}
	return -1, nil
}

func square(a, b Dir) bool { return a.dot(b) == 0 }

func allSquare(dirs []Dir) bool {
	for i, a := range dirs {
		for _, b := range dirs[:i] {
			if !square(a, b) {
				return false
			}
		}
	}
	return true
}

// pairOf is a meeting that no fitting makes, taken apart into two that can be made on one line.
type pairOf struct {
	line  Dir // the run both stand on
	first []Dir
	kinds [2]pipe.Kind
	rest  []Dir // the directions of the second beside the line
}

// takeApart finds two fittings on one line that together have all the directions: an upright line before
// a level one, and as many directions as can be at the first.
func takeApart(dirs []Dir) (pairOf, bool) {
	for _, line := range []Dir{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}} {
		back := line.minus()
		if !slices.Contains(dirs, line) || !slices.Contains(dirs, back) {
			continue
		}
		var others []Dir
		for _, d := range dirs {
			if d != line && d != back {
				others = append(others, d)
			}
		}
		for _, keep := range subsets(len(others)) {
			first, rest := []Dir{line, back}, []Dir(nil)
			for i, d := range others {
				if keep[i] {
					first = append(first, d)
				} else {
					rest = append(rest, d)
				}
			}
			a, ok := FittingFor(first)
			b, also := FittingFor(append([]Dir{line, back}, rest...))
			if ok && also && a != pipe.Coupling && b != pipe.Coupling {
				return pairOf{line, first, [2]pipe.Kind{a, b}, rest}, true
			}
		}
	}
	return pairOf{}, false
}

// subsets returns every choice out of n, the larger ones first; n is at most the 26 directions less two,
// and more than 6 are never taken apart.
func subsets(n int) (out [][]bool) {
	if n > 6 {
		return nil
	}
	for size := n - 1; size > 0; size-- {
		for mask := range 1 << n {
			keep, count := make([]bool, n), 0
			for i := range n {
				if mask&(1<<i) != 0 {
					keep[i] = true
					count++
				}
			}
			if count == size {
				out = append(out, keep)
			}
		}
	}
	return out
}
