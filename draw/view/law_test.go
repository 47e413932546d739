package view

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"rodwright/draw"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/piece/random"
)

// rooms are what the laws are held on: a figure on a sheet in both systems, a page, and a small figure.
var rooms = []draw.Style{
	{Fineness: length.Sixteenth, Width: 180, Height: 120},
	{Fineness: length.WholeMM, Width: 180, Height: 120},
	{Fineness: length.ThirtySecond, Width: 200, Height: 150},
	{Fineness: length.HalfMM, Width: 120, Height: 100},
}

// plate is a view of a random piece.
type plate struct {
	r     *piece.Resolved
	list  *part.List
	side  Side
	style draw.Style
	d     *draw.Drawing
}

// Each law is a statement about one view; the error says what breaks it.
var laws = []struct {
	says  string
	holds func(plate) error
}{
	{"no words stand on others", wordsKeepApart},
	{"every chain adds up to its whole", chainsAddUp},
	{"the whole is the outermost chain", wholeOutermost},
	{"a view keeps within its room", keepsWithin},
	{"no line is drawn twice, and none has no length", linesOnce},
	{"what is seen lies within the piece", seenWithin},
	{"every panel that is seen has its tag where there is room", panelsTagged},
	{"grain lies on wood that is seen", grainOnWood},
	{"the same piece gives the same drawing", sameAgain},
}

func TestTheLawsOfViewsHoldOnRandomPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, list := resolve(t, random.Document(rapid.Uint64Range(0, 1<<20).Draw(t, "seed")))
		side, st := rapid.SampledFrom(Sides()).Draw(t, "side"), rapid.SampledFrom(rooms).Draw(t, "room")
		p := plate{r, list, side, st, Of(r, list, side, st)}
		for _, law := range laws {
			if err := law.holds(p); err != nil {
				t.Errorf("%s, %s on %g mm: %s: %v", side, st.Fineness, st.Width, law.says, err)
			}
		}
	})
}

func wordsKeepApart(p plate) error {
	boxes := draw.Boxes(p.d)
	for i, a := range boxes {
		for _, b := range boxes[i+1:] {
			if a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y {
				return fmt.Errorf("at %v and %v", a, b)
			}
		}
	}
	return nil
}

// extents returns the width and height of the piece as it is seen.
func (p plate) extents() map[draw.Axis]length.Length {
	x, y, z := p.r.Max.X-p.r.Min.X, p.r.Max.Y-p.r.Min.Y, p.r.Max.Z-p.r.Min.Z
	switch p.side {
	case Right:
		return map[draw.Axis]length.Length{draw.AlongX: y, draw.AlongY: z}
	case Top:
		return map[draw.Axis]length.Length{draw.AlongX: x, draw.AlongY: y}
	}
	return map[draw.Axis]length.Length{draw.AlongX: x, draw.AlongY: z}
}

func chainsAddUp(p plate) error {
	sums, along := map[int]length.Length{}, map[int]draw.Axis{}
	seen := map[draw.Axis]bool{}
	for _, m := range p.d.Marks {
		if l, ok := m.(draw.Dimension); ok {
			sums[l.Chain] += l.Value
			along[l.Chain] = l.Along
			seen[l.Along] = true
		}
	}
	for chain, sum := range sums {
		if want := p.style.Fineness.Round(p.extents()[along[chain]]); sum != want {
			return fmt.Errorf("chain %d comes to %d nm, the whole is %d nm", chain, sum, want)
		}
	}
	if !seen[draw.AlongX] || !seen[draw.AlongY] {
		return fmt.Errorf("chains along %v only", seen)
	}
	return nil
}

func wholeOutermost(p plate) error {
	whole := map[draw.Axis]length.Length{}
	for _, m := range p.d.Marks {
		if l, ok := m.(draw.Dimension); ok && l.Whole {
			whole[l.Along] = l.Line
		}
	}
	for _, m := range p.d.Marks {
		l, ok := m.(draw.Dimension)
		if ok && (l.Along == draw.AlongX && l.Line < whole[l.Along] || l.Along == draw.AlongY && l.Line > whole[l.Along]) {
			return fmt.Errorf("chain %d lies beyond it", l.Chain)
		}
	}
	return nil
}

func keepsWithin(p plate) error {
	if w, h := p.d.Size(); w > p.style.Width || h > p.style.Height {
		return fmt.Errorf("%.1f × %.1f mm at 1:%d", w, h, p.d.Per)
	}
	return nil
}

func linesOnce(p plate) error {
	drawn := map[string]bool{}
	for _, m := range p.d.Marks {
		var key string
		switch m := m.(type) {
		case draw.Line:
			if m.A == m.B {
				return fmt.Errorf("%v has no length", m)
			}
			key = fmt.Sprint(m.Pen, min(m.A.X, m.B.X), max(m.A.X, m.B.X), min(m.A.Y, m.B.Y), max(m.A.Y, m.B.Y), (m.B.X > m.A.X) == (m.B.Y > m.A.Y))
		case draw.Arc:
			if m.Sweep <= 0 || m.Radius <= 0 {
				return fmt.Errorf("%v has no length", m)
			}
			key = fmt.Sprint(m)
		default:
			continue
		}
		if drawn[key] {
			return fmt.Errorf("%v is drawn again", m)
		}
		drawn[key] = true
	}
	return nil
}

func seenWithin(p plate) error {
	whole := blockOf(p.side, vec(p.r.Min), vec(p.r.Max))
	lo, hi := whole.lo.point(), whole.hi.point()
	for _, m := range p.d.Marks {
		l, ok := m.(draw.Line)
		if !ok || l.Pen != draw.Outline && l.Pen != draw.Hidden {
			continue
		}
		for _, q := range []draw.Point{l.A, l.B} {
			if q.X < lo.X-1 || q.X > hi.X+1 || q.Y < lo.Y-1 || q.Y > hi.Y+1 {
				return fmt.Errorf("%v does not", l)
			}
		}
	}
	return nil
}

func grainOnWood(p plate) error {
	s := sceneOf(p.r, p.list, p.side)
	for _, m := range p.d.Marks {
		l, ok := m.(draw.Line)
		if !ok || l.Pen != draw.Hatching {
			continue
		}
		if i := s.front(float64(l.A.X+l.B.X)/2, float64(l.A.Y+l.B.Y)/2); i < 0 || s.bodies[i].Kind != piece.PanelBody {
			return fmt.Errorf("%v does not", l)
		}
	}
	return nil
}

func panelsTagged(p plate) error {
	tags := tagsOf(p.d)
	for _, r := range sceneOf(p.r, p.list, p.side).rings {
		if r.words[0] == 'A' && p.style.Width >= 180 && !tags[r.words] {
			return fmt.Errorf("%s has none", r.words)
		}
	}
	return nil
}

func tagsOf(d *draw.Drawing) map[string]bool {
	tags := map[string]bool{}
	for _, m := range d.Marks {
		if t, ok := m.(draw.Tag); ok {
			tags[t.Words] = true
		}
	}
	return tags
}

func sameAgain(p plate) error {
	if again := Of(p.r, p.list, p.side, p.style); !reflect.DeepEqual(again, p.d) {
		return fmt.Errorf("%d marks, then %d", len(p.d.Marks), len(again.Marks))
	}
	return nil
}

// step is how far apart places are tried along a line of sight: less than any panel, band or pipe is thick.
const step = 2 * float64(length.Millimetre)

// before counts what a line of sight from the viewer to a place on a line of body i runs through, by trying
// places on it: the solids' own Contains decides, which shares nothing with how they are drawn. What belongs to
// the same joint or pipe as the line is left out, and what casters sweep.
func before(s scene, i int, p place) (panels, others int) {
	for j, b := range s.bodies {
		if b.Kind == piece.HeldBody || b.Kind == piece.FootBody || j == i || s.r.MayMeet(s.bodies[i].Body, b.Body) {
			continue
		}
		lo, hi := b.Shape.Bounds()
		k := blockOf(s.side, lo, hi)
		if !k.extent().holds(p.u, p.v, 0) {
			continue
		}
		for near := p.near + float64(length.Millimetre); near < k.hi.near; near += step {
			if near > k.lo.near && b.Shape.Contains(s.side.back(place{p.u, p.v, near})) {
				if b.Kind == piece.PanelBody {
					panels++
				} else {
					others++
				}
				break
			}
		}
	}
	return panels, others
}

// rounded reports whether a place lies at the rounded corner of some panel, of which a solid knows nothing.
func rounded(s scene, p place) bool {
	at := s.side.back(p)
	for i := range s.r.Panels {
		q := &s.r.Panels[i]
		for _, radius := range q.Spec.Corners {
			x, y := min((at.X-q.Min.X).Abs(), (at.X-q.Max.X).Abs()), min((at.Y-q.Min.Y).Abs(), (at.Y-q.Max.Y).Abs())
			if x <= radius && (y <= radius || s.side == Front) || y <= radius && s.side == Right {
				return true
			}
		}
	}
	return false
}

// A line of sight ends on what is seen, and runs through one panel before it comes to what is hidden.
func TestWhatIsSeenIsSeenAndWhatIsHiddenIsHidden(t *testing.T) {
	seen, hidden := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		r, list := resolve(t, random.Document(rapid.Uint64Range(0, 1<<20).Draw(t, "seed")))
		s := sceneOf(r, list, rapid.SampledFrom(Sides()).Draw(t, "side"))
		for range 40 {
			st := s.edges[rapid.IntRange(0, len(s.edges)-1).Draw(t, "line")]
			p := st.at(st.t0 + (st.t1-st.t0)*rapid.Float64Range(0.05, 0.95).Draw(t, "share"))
			if st.pen == draw.Ghost || st.kind == under || rounded(s, p) || grazes(s, p) {
				continue
			}
			panels, others := before(s, st.body, p)
			switch {
			case st.pen == draw.Outline && panels+others > 0:
				t.Fatalf("%d bodies stand before an edge of %s that is drawn as seen, at %v", panels+others, s.bodies[st.body].Name, p)
			case st.pen == draw.Hidden && panels != 1:
				t.Fatalf("%d panels stand before an edge of %s that is drawn as hidden, at %v", panels, s.bodies[st.body].Name, p)
			case st.pen == draw.Hidden:
				hidden++
			default:
				seen++
			}
		}
	})
	if seen == 0 || hidden == 0 {
		t.Errorf("%d places seen and %d hidden were tried", seen, hidden)
	}
}

// grazes reports whether a line of sight runs along the skin of a body: the solids reckon circles as polygons,
// which are up to 0.0012 of the radius within them.
func grazes(s scene, p place) bool {
	const close = 50 * float64(length.Micrometre)
	for _, b := range s.bodies {
		lo, hi := b.Shape.Bounds()
		k := blockOf(s.side, lo, hi)
		if !k.extent().holds(p.u, p.v, close) {
			continue
		}
		for _, d := range [4][2]float64{{close, 0}, {-close, 0}, {0, close}, {0, -close}} {
			_, here := b.form.nearest(p.u, p.v)
			if _, there := b.form.nearest(p.u+2*d[0], p.v+2*d[1]); here != there && math.Abs(k.hi.near-p.near) > close {
				return true
			}
		}
	}
	return false
}
