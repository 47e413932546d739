package lumber

import (
	"cmp"
	"math"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/table"
	"rodwright/trade/within"
)

// Tally is a way of counting board feet.
type Tally string

// The tallies. The first is the default of an answer.
const (
	Retail Tally = "retail" // width up to the inch, length up to the foot when more than 3 in over
	NHLA   Tally = "nhla"   // surface measure to the whole square foot, times the thickness
	Volume Tally = "volume" // what is there, unrounded
	Down   Tally = "down"   // thickness down to the quarter, width to the inch, length to the foot
)

// Tallies returns every tally, the default first.
func Tallies() []Tally { return []Tally{Retail, NHLA, Volume, Down} }

// ParseTally reads retail, nhla, volume or down. The error is a *table.UnknownError.
func ParseTally(text string) (Tally, error) {
	var known []string
	for _, t := range Tallies() {
		if text == string(t) {
			return t, nil
		}
		known = append(known, string(t))
	}
	return "", table.Unknown("tally", text, known)
}

// Board is a board at the yard. Its thickness is the rough nominal one, also when it is surfaced.
type Board struct{ Thickness, Width, Length length.Length }

var tallyFormulas = map[Tally]*figure.Formula{
	Retail: {
		Text:   "T · ⌈W⌉ · L ÷ 12 (in, in, ft), L up when more than 3 in over, T at least 1",
		Source: "woodworkers' accounts of yard tallies; common practice", Range: "each board by itself",
	},
	NHLA: {
		Text:   "T · SM, SM = W · L ÷ 12 (in, ft) to the nearest whole, T at least 1",
		Source: "NHLA Rules for the Measurement and Inspection of Hardwood and Cypress Lumber; a hardwood association's page on lumber measure",
		Range:  "exact halves alternately up and down; a single board's goes up",
	},
	Volume: {Text: "T · W · L ÷ 144 (in)", Source: "a board foot is 144 cubic inches; a hardwood association's page on lumber measure"},
	Down: {
		Text:   "T · W · L ÷ 12 (in, in, ft), down to the quarter, inch and foot",
		Source: "a published board-foot example with roundings", Range: "each board by itself",
	},
}

// BoardFeet returns the board feet of one board by the given tally, from its rough nominal thickness, width
// and length. Stock thinner than 1 in counts as 1 in, except by volume.
func BoardFeet(thickness, width, long length.Length, t Tally) (figure.Figure, error) {
	return Total([]Board{{thickness, width, long}}, t)
}

// Total returns the board feet of several boards by the given tally, each board rounded by itself. By the
// NHLA rules exact halves of a surface measure go alternately up and down in the order given, the first up.
func Total(boards []Board, t Tally) (figure.Figure, error) {
	if _, err := ParseTally(string(t)); err != nil {
		return figure.Figure{}, err
	}
	var sum, area float64
	var h halves
	for _, b := range boards {
		err := cmp.Or(within.Length("thickness", b.Thickness), within.Length("width", b.Width), within.Length("length", b.Length))
		if err != nil {
			return figure.Figure{}, err
		}
		sum += b.feet(t, &h)
		area += b.Width.Inches() * b.Length.Inches() / 144
	}
	in := []figure.Input{figure.In("boards", float64(len(boards)), figure.Count)}
	if len(boards) == 1 {
		in = []figure.Input{
			figure.InLength("T", boards[0].Thickness), figure.InLength("W", boards[0].Width), figure.InLength("L", boards[0].Length),
		}
	}
	return figure.Of("board feet", sum, figure.BoardFeet, tallyFormulas[t], in...), nil
}

// feet counts one board. Products of lengths in /64 in are exact in binary, so halves are found exactly.
func (b Board) feet(t Tally, h *halves) float64 {
	thick := max(b.Thickness, length.Inch).Inches()
	switch t {
	case Retail:
		inches, _ := within.Whole(b.Width.Inches()) // no board of up to 1 km is past counting
		return thick * float64(inches) * float64(retailFeet(b.Length)) / 12
	case NHLA:
		return thick * h.round(b.Width.Inches()*b.Length.Inches()/144)
	case Down:
		quarter := length.Inch / 4
		return (b.Thickness / quarter * quarter).Inches() * float64(b.Width/length.Inch) * float64(b.Length/length.Foot) / 12
	}
	return b.Thickness.Inches() * b.Width.Inches() * b.Length.Inches() / 144
}

// retailFeet rounds a length up to the foot when it is more than 3 in over, else down, but never to nothing.
func retailFeet(l length.Length) int64 {
	feet := int64(l / length.Foot)
	if l%length.Foot > 3*length.Inch {
		feet++
	}
	return max(1, feet)
}

// halves rounds to whole numbers, exact halves alternately up and down, the first up.
type halves struct{ downNext bool }

func (h *halves) round(v float64) float64 {
	floor := math.Floor(v)
	if v-floor != 0.5 {
		return math.Round(v)
	}
	h.downNext = !h.downNext
	if h.downNext {
		return floor + 1
	}
	return floor
}

// SurfaceMeasure returns the area of a board's face in whole square feet by the NHLA rules, as a count:
// width × length ÷ 12 to the nearest whole. Exact halves of a single board go up.
func SurfaceMeasure(width, long length.Length) (figure.Figure, error) {
	if err := cmp.Or(within.Length("width", width), within.Length("length", long)); err != nil {
		return figure.Figure{}, err
	}
	var h halves
	return figure.Of("surface measure", h.round(width.Inches()*long.Inches()/144), figure.Count, tallyFormulas[NHLA],
		figure.InLength("W", width), figure.InLength("L", long)), nil
}

// BundleTally returns a board's width in whole inches and its length in whole feet as bundles for export
// are tallied: width to the nearest inch (a single board's exact half goes up), length down to the foot.
func BundleTally(width, long length.Length) (inches, feet int) {
	var h halves
	return int(h.round(max(0, width).Inches())), int(max(0, long) / length.Foot)
}
