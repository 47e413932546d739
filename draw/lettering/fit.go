package lettering

import (
	"rodwright/draw"
	"rodwright/length"
)

// farther is how many scales in a row Fit tries without gain: words that must stand outside what they speak
// of at a smaller scale can make a drawing larger on paper before it becomes smaller again.
const farther = 4

// Fit draws at the least scale, from a scale upwards, at which a drawing keeps within the style's room. Words
// do not grow smaller with the scale: where only they are too much, it is the scale that is over by least.
func Fit(st draw.Style, per int64, make func(per int64) []draw.Mark) (int64, []draw.Mark) {
	marks := make(per)
	over := overrun(marks, per, st)
	next := per
	for vain := 0; over > 1 && vain < farther; vain++ {
		next = draw.ScaleFor(Full(st.Width, next)+1, Full(st.Height, next)+1, st)
		try := make(next)
		if left := overrun(try, next, st); left < 0.99*over {
			per, marks, over, vain = next, try, left, -1
		}
	}
	return per, marks
}

// Fits reports whether a drawing keeps within the style's room.
func Fits(st draw.Style, per int64, marks []draw.Mark) bool { return overrun(marks, per, st) <= 1 }

// overrun is how many times the style's room a drawing takes on paper, by width or height. A room of 0 sets no
// limit.
func overrun(marks []draw.Mark, per int64, st draw.Style) (over float64) {
	w, h := extent(marks, per)
	for _, v := range [][2]float64{{w.MM(), st.Width}, {h.MM(), st.Height}} {
		if v[1] > 0 {
			over = max(over, v[0]/v[1]/float64(per))
		}
	}
	return over
}

func extent(marks []draw.Mark, per int64) (width, height length.Length) {
	r := (&draw.Drawing{Per: per, Marks: marks}).Bounds()
	return r.Max.X - r.Min.X, r.Max.Y - r.Min.Y
}
