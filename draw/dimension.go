package draw

import (
	"slices"

	"rodwright/draw/typeface"
	"rodwright/length"
)

// Measures of chains of dimensions, in paper millimetres.
const (
	chainGap  = 3.5 // from what is drawn, or the chain before, to the next chain's words or line
	aboveLine = 0.7 // from a dimension line to the words on it
	besideEnd = 1.2 // from words to the ends of their link: room for the strokes there
	laneGap   = 0.5 // between lanes of words
	besideBar = 0.7 // from a leader to its words
)

// Dimensions lays chains of dimensions outside bounds on one edge, the first nearest. Every two stations of a
// chain that follow each other become a Dimension; stations at one place are one, with the Off nearest to the
// edge. The values of a chain are rounded so that they add up to its rounded whole, and written without a unit.
// A chain of a single link is Whole; a chain of fewer than two places draws nothing. Chains are numbered from
// firstChain, the empty ones too.
//
// No two words overlap. Words stand on their link where they fit between its ends. Others stand in lanes beyond
// the line, each beside a leader straight out from the middle of its link; no leader runs through the words of
// another. Words of neighbours without room may reach past the ends of their chain by their own width: where
// chains meet at a corner, lay the second around bounds that hold the first.
func Dimensions(bounds Rect, per int64, st Style, edge Edge, firstChain int, chains ...[]Station) []Mark {
	var out []Mark
	s := side{bounds: bounds, per: max(per, 1), edge: edge}
	for i, c := range chains {
		out = append(out, s.chain(firstChain+i, merged(c, edge), st.Fineness)...)
	}
	return out
}

// merged returns the stations in their order, those at one place as one.
func merged(chain []Station, edge Edge) []Station {
	out := slices.Clone(chain)
	slices.SortStableFunc(out, func(a, b Station) int {
		switch {
		case a.At != b.At:
			return compare(a.At, b.At)
		case edge == Above || edge == RightOf:
			return compare(b.Off, a.Off)
		}
		return compare(a.Off, b.Off)
	})
	return slices.CompactFunc(out, func(a, b Station) bool { return a.At == b.At })
}

func compare(a, b length.Length) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// side is the room outside one edge; out is how much of it is taken, outwards from the edge.
type side struct {
	bounds Rect
	per    int64
	edge   Edge
	out    length.Length
}

func (s *side) full(mm float64) length.Length { return full(mm, s.per) }

// along is the direction of the chains.
func (s *side) along() Axis {
	if s.edge == LeftOf || s.edge == RightOf {
		return AlongY
	}
	return AlongX
}

// wordsOutside reports whether the tops of letters point away from what is drawn. Words stand upright on level
// chains, and are turned a quarter to the left on upright ones.
func (s *side) wordsOutside() bool { return s.edge == Above || s.edge == LeftOf }

// across returns the coordinate across the chains of a place that far outside the edge.
func (s *side) across(out length.Length) length.Length {
	switch s.edge {
	case Below:
		return s.bounds.Min.Y - out
	case Above:
		return s.bounds.Max.Y + out
	case LeftOf:
		return s.bounds.Min.X - out
	default:
		return s.bounds.Max.X + out
	}
}

// place returns the point at a coordinate along the chains and one across.
func (s *side) place(along, across length.Length) Point {
	if s.along() == AlongX {
		return Point{along, across}
	}
	return Point{across, along}
}

// The parts of a line of words on either side of the line it stands on.
var (
	rise     = typeface.Ascent * Lettering
	drop     = typeface.Descent * Lettering
	wordLine = rise + drop
)

// chain lays one chain outside what is there and takes the room for it.
func (s *side) chain(number int, stations []Station, f length.Fineness) []Mark {
	if len(stations) < 2 {
		return nil
	}
	line, lanes := s.levels()
	links := s.links(number, stations, f, line)
	var tight []int
	for i := range links {
		if !s.onLink(&links[i], line) {
			tight = append(tight, i)
		}
	}
	used := s.flags(links, tight, line, lanes)
	s.out = lanes - s.full(laneGap) + s.full(float64(used)*(wordLine+laneGap))
	out := make([]Mark, len(links))
	for i, l := range links {
		out[i] = l
	}
	return out
}

// levels returns how far outside the edge the next dimension line stands, and where its lanes begin.
func (s *side) levels() (line, lanes length.Length) {
	start := s.out + s.full(chainGap)
	if s.wordsOutside() {
		line = start + s.full(overshoot)
		return line, line + s.full(aboveLine+wordLine+laneGap)
	}
	line = start + s.full(wordLine+aboveLine)
	return line, line + s.full(overshoot+laneGap)
}

// links returns the dimensions of a chain without the places of their words.
func (s *side) links(number int, stations []Station, f length.Fineness, line length.Length) []Dimension {
	var spans []length.Length
	for i := range stations[1:] {
		spans = append(spans, stations[i+1].At-stations[i].At)
	}
	out := make([]Dimension, len(spans))
	for i, v := range f.Chain(spans) {
		out[i] = Dimension{
			Chain: number,
			Whole: len(spans) == 1,
			Along: s.along(),
			From:  s.place(stations[i].At, stations[i].Off),
			To:    s.place(stations[i+1].At, stations[i+1].Off),
			Line:  s.across(line),
			Value: v,
			Words: f.Number(v),
		}
		out[i].Text = Text{Words: out[i].Words, Height: Lettering, Turned: s.along() == AlongY}
	}
	return out
}

// ends returns where a link begins and ends along the chain.
func (s *side) ends(d Dimension) (from, to length.Length) {
	if s.along() == AlongX {
		return d.From.X, d.To.X
	}
	return d.From.Y, d.To.Y
}

// onLink sets words on the middle of their link if they fit between its ends.
func (s *side) onLink(d *Dimension, line length.Length) bool {
	from, to := s.ends(*d)
	if s.full(d.Text.width()+2*besideEnd) > to-from {
		return false
	}
	d.Text.Anchor = Middle
	stand := line + s.full(aboveLine+drop)
	if !s.wordsOutside() {
		stand = line - s.full(aboveLine+drop)
	}
	d.Text.At = s.place(from+(to-from).Half(), s.across(stand))
	return true
}
