package view

import (
	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/piece"
)

// surroundings draws the floor under a piece that stands and the wall behind one that hangs.
func (s scene) surroundings(per int64) (out []draw.Mark) {
	lo, hi, over := s.whole.lo.point(), s.whole.hi.point(), lettering.Full(pastFloor, per)
	ghost := func(a, b draw.Point) { out = append(out, draw.Line{Pen: draw.Ghost, A: a, B: b}) }
	if s.stands() && s.side != Top {
		ghost(draw.Point{X: lo.X - over}, draw.Point{X: hi.X + over})
	}
	switch wall := s.r.Wall; {
	case wall != nil && s.side == Right:
		ghost(draw.Point{X: *wall, Y: lo.Y - over}, draw.Point{X: *wall, Y: hi.Y + over})
	case wall != nil && s.side == Top:
		ghost(draw.Point{X: lo.X - over, Y: *wall}, draw.Point{X: hi.X + over, Y: *wall})
	}
	return out
}

// names writes what the piece holds into one of the things' outlines, each name once, where it stands clear of
// lines.
func (s scene) names(c *crowd) (out []draw.Mark) {
	done := map[string]bool{}
	for i, b := range s.bodies {
		if b.Kind != piece.HeldBody {
			continue
		}
		words := s.r.Held[b.Index].Spec.Name
		if done[words] {
			continue
		}
		k := b.form.(block)
		box := draw.Rect{Min: k.lo.point(), Max: k.hi.point()}
		t := draw.Text{Words: words, Height: draw.Small, Anchor: draw.Middle, At: draw.Point{X: box.Min.X + (box.Max.X - box.Min.X).Half()}}
		for _, share := range [5]float64{0.5, 0.7, 0.3, 0.85, 0.15} {
			t.At.Y = nm(k.lo.v + share*(k.hi.v-k.lo.v) - onPaper(0.35*draw.Small, c.per))
			if w := t.Box(c.per); inside(box, w) && c.free(w, true) && s.shows(i, w) {
				c.boxes = append(c.boxes, w)
				out = append(out, t)
				done[words] = true
				break
			}
		}
	}
	return out
}

// shows reports whether nothing stands before thing i where words are to stand.
func (s scene) shows(i int, w draw.Rect) bool {
	near := s.bodies[i].form.(block).hi.near
	for _, p := range [3]draw.Point{w.Min, w.Max, {X: w.Min.X + (w.Max.X - w.Min.X).Half(), Y: w.Min.Y}} {
		if j := s.front(float64(p.X), float64(p.Y)); j >= 0 {
			if n, _ := s.bodies[j].form.nearest(float64(p.X), float64(p.Y)); n > near+touch {
				return false
			}
		}
	}
	return true
}

func inside(outer, b draw.Rect) bool {
	return b.Min.X >= outer.Min.X && b.Max.X <= outer.Max.X && b.Min.Y >= outer.Min.Y && b.Max.Y <= outer.Max.Y
}
