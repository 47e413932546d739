package draw

import (
	"slices"

	"rodwright/draw/typeface"
	"rodwright/length"
)

// flag is the words of a link beside the leader that they hang on.
type flag struct {
	link   int
	middle length.Length // of the link, where the leader stands
	reach  length.Length // from the leader past the far end of the words
	before bool          // the words end at the leader instead of beginning at it
	lane   int
}

// flags sets the words of tight links beside leaders, and returns how many lanes that takes.
func (s *side) flags(links []Dimension, tight []int, line, lanes length.Length) (used int) {
	var fs []flag
	for _, i := range tight {
		from, to := s.ends(links[i])
		fs = append(fs, flag{link: i, middle: from + (to - from).Half(), reach: s.full(2*besideBar + links[i].Text.width())})
	}
	first, _ := s.ends(links[0])
	_, last := s.ends(links[len(links)-1])
	for _, group := range clusters(fs) {
		used = max(used, furl(group, first+(last-first).Half()))
	}
	for _, f := range fs {
		s.hoist(&links[f.link], f, line, lanes+s.full(float64(f.lane)*(wordLine+laneGap)))
	}
	return used
}

// clusters parts flags where their neighbours are so far apart that no words can meet, whichever way they
// hang. The clusters share the flags' memory.
func clusters(fs []flag) (out [][]flag) {
	var most length.Length
	for _, f := range fs {
		most = max(most, f.reach)
	}
	from := 0
	for i := range fs {
		if i+1 == len(fs) || fs[i+1].middle-fs[i].middle >= 2*most {
			out = append(out, fs[from:i+1])
			from = i + 1
		}
	}
	return out
}

// furl hangs the first half of a cluster before their leaders and the second half behind, so that the halves
// can't meet; a single flag hangs towards the middle of the chain. It returns how many lanes are used.
//
// From the outermost flag of a half inwards, each takes the nearest lane beyond every leader that its words
// would run through. The words of those nearer to the ends lie away from its own leader, so that crosses none.
func furl(group []flag, middle length.Length) int {
	k := len(group) / 2
	if len(group) == 1 && group[0].middle > middle {
		k = 1
	}
	before, behind := group[:k], group[k:]
	for i := range before {
		before[i].before = true
		for _, o := range before[:i] {
			if o.middle > before[i].middle-before[i].reach {
				before[i].lane = max(before[i].lane, o.lane+1)
			}
		}
	}
	for i := range slices.Backward(behind) {
		for _, o := range behind[i+1:] {
			if o.middle < behind[i].middle+behind[i].reach {
				behind[i].lane = max(behind[i].lane, o.lane+1)
			}
		}
	}
	used := 0
	for _, f := range group {
		used = max(used, f.lane+1)
	}
	return used
}

// hoist sets words beside a leader that ends with them, in the lane that begins that far outside.
func (s *side) hoist(d *Dimension, f flag, line, lane length.Length) {
	stand, end := lane+s.full(rise), lane+s.full(rise)
	if s.wordsOutside() {
		stand, end = lane+s.full(drop), lane+s.full(drop+typeface.Capital*Lettering)
	}
	d.Text.Anchor = Start
	at := f.middle + s.full(besideBar)
	if f.before {
		d.Text.Anchor = End
		at = f.middle - s.full(besideBar)
	}
	d.Text.At = s.place(at, s.across(stand))
	d.Leader = &Line{Measure, s.place(f.middle, s.across(line)), s.place(f.middle, s.across(end))}
}
