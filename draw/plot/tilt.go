package plot

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"rodwright/draw"
	"rodwright/finding"
	"rodwright/length"
)

// degreeSteps are the distances between circles of tilt.
var degreeSteps = []float64{2, 5, 10, 15, 30}

// polar turns directions and tilts into places round a middle.
type polar struct {
	x, y, radius float64
	top          float64 // degrees at the radius
}

func (p polar) at(towards, tilt float64) (x, y float64) {
	a, r := towards*math.Pi/180, p.r(tilt)
	return p.x + r*math.Cos(a), p.y + r*math.Sin(a)
}

func (p polar) r(tilt float64) float64 { return p.radius * clamp(tilt/p.top, 0, 1) }

// tilt draws the tilt that is borne in every direction as a shape round the middle, the limit as a circle, and
// hatched what lies between them where the shape falls short. What it stands on is drawn beneath.
func (s *sheet) tilt(t finding.Tilt) (alt string) {
	rays := usable(t.Rays)
	limit := 0.0
	if finite(t.Limit) && t.Limit > 0 {
		limit = min(t.Limit, 90)
	}
	step, top := rings(rays, limit)
	side := wide("right") + beside
	radius := min(46, s.wide/2-side)
	p := polar{s.wide / 2, -lineHigh - radius, radius, top}
	s.foot = p.y - radius - lineHigh
	s.shape(p, rays)
	short := s.short(p, rays, limit)
	s.circles(p, step)
	if limit > 0 {
		s.draw(draw.Arc{Pen: draw.Saw, Centre: at(p.x, p.y), Radius: length.FromMM(p.r(limit)), Sweep: 360})
		s.room.KeepPath(draw.Circle(at(p.x, p.y), length.FromMM(p.r(limit))))
	}
	worst := least(rays)
	s.sides(p)
	if worst != nil {
		s.worst(p, *worst)
	}
	s.ringWords(p, step)
	s.tiltKey(t, limit, short)
	return tiltAlt(worst, limit)
}

// usable returns the rays that are numbers, in the order of their directions.
func usable(rays []finding.Ray) (out []finding.Ray) {
	for _, r := range rays {
		if finite(r.Towards, r.Tilt) {
			out = append(out, finding.Ray{Towards: math.Mod(math.Mod(r.Towards, 360)+360, 360), Tilt: clamp(r.Tilt, 0, 90)})
		}
	}
	slices.SortStableFunc(out, func(a, b finding.Ray) int { return cmp.Compare(a.Towards, b.Towards) })
	return out
}

func least(rays []finding.Ray) *finding.Ray {
	var out *finding.Ray
	for i, r := range rays {
		if out == nil || r.Tilt < out.Tilt {
			out = &rays[i]
		}
	}
	return out
}

// rings returns the distance between circles and the tilt at the outermost.
func rings(rays []finding.Ray, limit float64) (step, top float64) {
	most := max(5, limit*1.25)
	for _, r := range rays {
		most = max(most, r.Tilt)
	}
	for _, step = range degreeSteps {
		if most/step <= 5 {
			break
		}
	}
	return step, math.Ceil(most/step-1e-9) * step
}

// shape is the area of tilts that are borne.
func (s *sheet) shape(p polar, rays []finding.Ray) {
	var outer draw.Path
	for _, r := range rays {
		outer = append(outer, draw.Vertex{Point: at(p.at(r.Towards, r.Tilt))})
	}
	if len(outer) < 3 {
		return
	}
	s.draw(draw.Area{Pen: draw.Outline, Outer: outer, Fill: draw.Steel})
	s.room.KeepPath(outer)
}

// short hatches what lies between the shape and the limit, sector by sector, and reports whether there is any.
func (s *sheet) short(p polar, rays []finding.Ray, limit float64) bool {
	any := false
	for _, run := range shortRuns(rays, limit) {
		var outer draw.Path
		for _, r := range run {
			outer = append(outer, draw.Vertex{Point: at(p.at(r.Towards, r.Tilt))})
		}
		for _, r := range slices.Backward(run) {
			outer = append(outer, draw.Vertex{Point: at(p.at(r.Towards, limit))})
		}
		s.draw(draw.Area{Pen: draw.Outline, Outer: outer, Fill: draw.Waste})
		any = true
	}
	return any
}

// shortRuns parts rays, in their order round, into runs below the limit. Each run begins and ends where the
// shape crosses the limit; directions go on past 360.
func shortRuns(rays []finding.Ray, limit float64) (out [][]finding.Ray) {
	n := len(rays)
	first := slices.IndexFunc(rays, func(r finding.Ray) bool { return r.Tilt >= limit })
	if n < 3 || limit <= 0 {
		return nil
	}
	if first < 0 {
		whole := append(slices.Clone(rays), finding.Ray{Towards: rays[0].Towards + 360, Tilt: rays[0].Tilt})
		return [][]finding.Ray{whole}
	}
	var run []finding.Ray
	for k := range n {
		a, b := turned(rays, first+k), turned(rays, first+k+1)
		switch {
		case a.Tilt >= limit && b.Tilt < limit:
			run = []finding.Ray{crossing(a, b, limit), b}
		case a.Tilt < limit && b.Tilt < limit:
			run = append(run, b)
		case a.Tilt < limit:
			out = append(out, append(run, crossing(a, b, limit)))
		}
	}
	return out
}

// turned returns the ray at an index that may run past the last, its direction ascending.
func turned(rays []finding.Ray, i int) finding.Ray {
	r := rays[i%len(rays)]
	r.Towards += 360 * float64(i/len(rays))
	return r
}

func crossing(a, b finding.Ray, limit float64) finding.Ray {
	share := (limit - a.Tilt) / (b.Tilt - a.Tilt)
	return finding.Ray{Towards: a.Towards + share*(b.Towards-a.Towards), Tilt: limit}
}

// circles draws the circles of tilt and the cross of directions.
func (s *sheet) circles(p polar, step float64) {
	for d := step; d <= p.top+1e-9; d += step {
		s.draw(draw.Arc{Pen: draw.Hatching, Centre: at(p.x, p.y), Radius: length.FromMM(p.r(d)), Sweep: 360})
	}
	s.line(draw.Hatching, p.x-p.radius, p.y, p.x+p.radius, p.y)
	s.line(draw.Hatching, p.x, p.y-p.radius, p.x, p.y+p.radius)
}

// sides names the four sides of the piece round the circles.
func (s *sheet) sides(p polar) {
	s.put(text("back", p.x, p.y+p.radius+beside, draw.Middle))
	s.put(text("front", p.x, p.y-p.radius-beside-draw.Lettering*0.8, draw.Middle))
	s.put(level("left", p.x-p.radius-beside, p.y, draw.End))
	s.put(level("right", p.x+p.radius+beside, p.y, draw.Start))
}

// worst points at the least tilt.
func (s *sheet) worst(p polar, r finding.Ray) {
	x, y := p.at(r.Towards, r.Tilt)
	s.point(x, y)
	s.lead(digits(r.Tilt, 3)+"° to the "+Compass(r.Towards), x, y, box(0, p.y-p.radius, s.wide, p.y+p.radius))
}

// ringWords tells the degrees of the circles along the first direction that has room for all of them.
func (s *sheet) ringWords(p polar, step float64) {
	for d := step; d <= p.top+1e-9; d += step {
		var places []draw.Text
		for _, towards := range []float64{-60, -45, -30, -75, 60, 45, 30, 75, 120, 135, 150, -120, -135, -150, -105, 105} {
			x, y := p.at(towards, d)
			places = append(places, level(digits(d, 3)+"°", x, y, draw.Middle))
		}
		s.put(places...)
	}
}

func (s *sheet) tiltKey(t finding.Tilt, limit float64, short bool) {
	items := []item{s.fillItem(draw.Steel, "the tilt it bears: it goes over beyond")}
	if limit > 0 {
		items = append(items, s.lineItem(draw.Saw, "must bear "+digits(limit, 3)+"°"))
	}
	if short {
		items = append(items, s.fillItem(draw.Waste, "falls short"))
	}
	s.key(items...)
	s.stood(t)
}

// Compass tells a direction by the sides of the piece: right, back right, back …
func Compass(towards float64) string {
	words := [...]string{"right", "back right", "back", "back left", "left", "front left", "front", "front right"}
	return words[int(math.Round(math.Mod(math.Mod(towards, 360)+360, 360)/45))%8]
}

func tiltAlt(worst *finding.Ray, limit float64) string {
	if worst == nil {
		return "The tilt that the piece bears is not known in any direction."
	}
	alt := fmt.Sprintf("Seen from above. The piece bears the least tilt, %s°, to the %s", digits(worst.Tilt, 3), Compass(worst.Towards))
	if limit > 0 {
		alt += fmt.Sprintf("; it must bear %s° in every direction", digits(limit, 3))
	}
	return alt + "."
}
