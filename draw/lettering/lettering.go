// Package lettering finds room for words on a drawing, so that no words stand on others or across a line.
//
// A room knows what is taken: the boxes of words and the lines that words must keep off. Start with New;
// Put words where there is a choice of places, Beside where only a leader can reach what they speak of, and
// Spread where a row of words stands side by side. Heights and gaps are paper millimetres.
package lettering

import (
	"math"
	"slices"
	"strings"

	"rodwright/draw"
	"rodwright/length"
)

// Clear is how far words keep from other words and from lines, in paper millimetres.
const Clear = 0.5

// Full returns what a length on paper measures full size on a drawing of scale 1 : per.
func Full(mm float64, per int64) length.Length { return length.FromMM(mm * float64(per)) }

// Room is what is taken on one drawing.
type Room struct {
	per   int64
	boxes []draw.Rect
	areas []draw.Rect // that words keep out of and leaders may cross
	lines []draw.Line
}

// New returns the room of an empty drawing of scale 1 : per.
func New(per int64) *Room { return &Room{per: per} }

// Keep keeps a box clear of words and leaders.
func (r *Room) Keep(b draw.Rect) { r.boxes = append(r.boxes, b) }

// KeepOut keeps words out of an area; leaders may lead into it.
func (r *Room) KeepOut(b draw.Rect) { r.areas = append(r.areas, b) }

// KeepLine keeps words off a straight line.
func (r *Room) KeepLine(a, b draw.Point) { r.lines = append(r.lines, draw.Line{A: a, B: b}) }

// KeepPath keeps words off the edge of a path; an arc is taken in four chords.
func (r *Room) KeepPath(p draw.Path) {
	for i, v := range p {
		w := p[(i+1)%len(p)].Point
		from := v.Point
		for k := 1; k <= 4 && v.Bulge != 0; k++ {
			to := onArc(v, w, float64(k)/4)
			r.KeepLine(from, to)
			from = to
		}
		if v.Bulge == 0 {
			r.KeepLine(v.Point, w)
		}
	}
}

// onArc returns the place at a share of the way along an edge with a bulge.
func onArc(v draw.Vertex, w draw.Point, t float64) draw.Point {
	cx, cy := (w.X - v.X).MM(), (w.Y - v.Y).MM()
	// the chord seen from the centre: half the angle is 2·atan(bulge); the place lies on the arc where the
	// inscribed angle turns by the same share
	half := 2 * math.Atan(v.Bulge)
	along := math.Sin(half*t) / math.Sin(half)
	turn := half * (t - 1)
	return draw.Point{
		X: v.X + length.FromMM(along*(cx*math.Cos(turn)-cy*math.Sin(turn))),
		Y: v.Y + length.FromMM(along*(cx*math.Sin(turn)+cy*math.Cos(turn))),
	}
}

// Free reports whether a box stands clear of everything taken.
func (r *Room) Free(b draw.Rect) bool {
	g := Full(Clear, r.per)
	b = draw.Rect{Min: draw.Point{X: b.Min.X - g, Y: b.Min.Y - g}, Max: draw.Point{X: b.Max.X + g, Y: b.Max.Y + g}}
	meets := func(o draw.Rect) bool {
		return b.Min.X < o.Max.X && o.Min.X < b.Max.X && b.Min.Y < o.Max.Y && o.Min.Y < b.Max.Y
	}
	if slices.ContainsFunc(r.boxes, meets) || slices.ContainsFunc(r.areas, meets) {
		return false
	}
	for _, l := range r.lines {
		if crosses(b, l.A, l.B) {
			return false
		}
	}
	return true
}

// Put takes the first of some places for words that is free; false when none is.
func (r *Room) Put(places ...draw.Text) (draw.Text, bool) {
	for _, t := range places {
		if b := t.Box(r.per); r.Free(b) {
			r.Keep(b)
			return t, true
		}
	}
	return draw.Text{}, false
}

// Beside puts words outside something, as near as there is room within the given bounds, with a leader to a
// place on it. The leader crosses no words. False when there is no room.
func (r *Room) Beside(words draw.Text, on draw.Point, within draw.Rect) (draw.Text, draw.Line, bool) {
	words.At, words.Anchor = draw.Point{}, draw.Start
	size := words.Box(r.per)
	wide, clear := size.Max.X-size.Min.X, Full(Clear, r.per)
	for far := 4.0; far <= 60; far += 2 {
		for k := range 16 {
			// slanting ways first: leaders that lie along an edge are read as one
			angle := math.Pi/16 + float64((k*5+1)%16)*math.Pi/8
			elbow := draw.Point{X: on.X + Full(far*math.Cos(angle), r.per), Y: on.Y + Full(far*math.Sin(angle), r.per)}
			t := words
			t.At = draw.Point{X: elbow.X + clear, Y: elbow.Y - Full(words.Height*0.35, r.per)}
			left := t.At.X
			if math.Cos(angle) < 0 {
				t.Anchor, t.At.X = draw.End, elbow.X-clear
				left = t.At.X - wide
			}
			b := draw.Rect{
				Min: draw.Point{X: left + size.Min.X, Y: t.At.Y + size.Min.Y},
				Max: draw.Point{X: left + size.Max.X, Y: t.At.Y + size.Max.Y},
			}
			if !holds(within, b) || !r.Free(b) || r.covers(on, elbow) {
				continue
			}
			r.Keep(b)
			r.KeepLine(on, elbow)
			return t, draw.Line{Pen: draw.Measure, A: elbow, B: on}, true
		}
	}
	return draw.Text{}, draw.Line{}, false
}

// covers reports whether a line runs over words.
func (r *Room) covers(a, b draw.Point) bool {
	for _, o := range r.boxes {
		if crosses(o, a, b) {
			return true
		}
	}
	return false
}

func holds(outer, b draw.Rect) bool {
	return b.Min.X >= outer.Min.X && b.Min.Y >= outer.Min.Y && b.Max.X <= outer.Max.X && b.Max.Y <= outer.Max.Y
}

// crosses reports whether a straight line enters a box: it is cut off at the box's sides, one after another
// (Liang and Barsky, 1984, from memory).
func crosses(b draw.Rect, p, q draw.Point) bool {
	t0, t1 := 0.0, 1.0
	dx, dy := float64(q.X-p.X), float64(q.Y-p.Y)
	if max(p.X, q.X) <= b.Min.X || min(p.X, q.X) >= b.Max.X || max(p.Y, q.Y) <= b.Min.Y || min(p.Y, q.Y) >= b.Max.Y {
		return false // most lines of a drawing, quickly
	}
	for _, s := range [4][2]float64{
		{-dx, float64(p.X - b.Min.X)}, {dx, float64(b.Max.X - p.X)},
		{-dy, float64(p.Y - b.Min.Y)}, {dy, float64(b.Max.Y - p.Y)},
	} {
		switch {
		case s[0] == 0 && s[1] <= 0:
			return false
		case s[0] < 0:
			t0 = max(t0, s[1]/s[0])
		case s[0] > 0:
			t1 = min(t1, s[1]/s[0])
		}
	}
	return t0 < t1
}

// Spread moves ascending places apart so that neighbours stand at least gap from each other, each as little
// as can be: the sum of the squares of the moves is the least. (Less i·gap the places must ascend: pooling
// neighbours that do not, Ayer and others, Annals of Mathematical Statistics 26, 1955, from memory.)
func Spread(at []length.Length, gap length.Length) []length.Length {
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	for i, a := range at {
		pools = append(pools, pool{float64(a) - float64(i)*float64(gap), 1})
		for k := len(pools) - 1; k > 0 && pools[k-1].sum*float64(pools[k].n) > pools[k].sum*float64(pools[k-1].n); k-- {
			pools[k-1].sum += pools[k].sum
			pools[k-1].n += pools[k].n
			pools = pools[:k]
		}
	}
	out := make([]length.Length, 0, len(at))
	for _, p := range pools {
		first := length.Length(math.Round(p.sum / float64(p.n)))
		for range p.n {
			out = append(out, first+length.Length(len(out))*gap)
		}
	}
	return out
}

// Within moves places that Spread has put gap apart into a stretch, as far as that has room for all of them:
// the first never begins before it.
func Within(at []length.Length, gap, lo, hi length.Length) []length.Length {
	for i := range at {
		at[i] = min(at[i], hi-length.Length(len(at)-1-i)*gap)
	}
	for i := range at {
		at[i] = max(at[i], lo+length.Length(i)*gap)
	}
	return at
}

// Wrap breaks words into lines no wider than width, at spaces, but never between a number and its fraction or
// unit. What has no such space and is wider stands by itself.
func Wrap(words draw.Text, width length.Length, per int64) (lines []string) {
	line := ""
	for _, w := range measures(words.Words) {
		try := words
		try.Words = strings.TrimSpace(line + " " + w)
		if b := try.Box(per); line != "" && b.Max.X-b.Min.X > width {
			lines, line = append(lines, line), w
			continue
		}
		line = try.Words
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// measures parts words at spaces and keeps each length with its fraction and unit: 14 3/8 in.
func measures(words string) (out []string) {
	for _, w := range strings.Fields(words) {
		n := len(out) - 1
		bare := strings.TrimRight(w, ".,;:)")
		_, known := length.UnitOf(bare)
		if n >= 0 && (known || fraction(bare)) && digit(out[n][len(out[n])-1]) {
			out[n] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

func fraction(w string) bool { return w != "" && digit(w[0]) && strings.Contains(w, "/") }

func digit(c byte) bool { return c >= '0' && c <= '9' }
