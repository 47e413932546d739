package check

import (
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/trade/anchor"
	"rodwright/trade/screw"
)

var (
	wallShareFormula = figure.Formula{
		Text: "load of a flange = Σ m·g·(1/n + (x − x̄)·(xᵢ − x̄) ÷ Σ(xₖ − x̄)²)", Source: "statics: a stiff board on n equal arms, any mechanics text",
		Range: "of the things held those alone that load the flange more",
	}
	wallPullFormula = figure.Formula{
		Text: "pull of a screw = Σ m·g·c·a ÷ lever ÷ upper screws", Source: "statics: moment about the lower rim of the flange, any mechanics text",
		Range: "a: from the wall to each mass; the lever from the rim to the upper screws, or to the lower flange where others of its frame are below it",
	}
	booksFormula = figure.Formula{
		Text: "books = 30 kg for each metre of shelf", Source: "20 lb for each foot, as is commonly told, from memory", Range: "upright books on one shelf; large ones weigh half as much again and more",
	}
)

// booksKgPerM is the mass of books on a metre of shelf.
const booksKgPerM = 30

// studReach is how far from a stud's middle a screw may go into it: half its face less 3/8 in of wood beside the
// screw. Common practice, no source.
const studReach = anchor.StudWidth/2 - 3*length.Inch/8

// Wall says of what hangs on a wall whether the screws of its flanges hold it there, in studs or masonry: the moment of
// all that hangs pulls at the upper screws, its weight lies across all. Shelves that nothing is named for are taken
// as full of books. It says besides whether all flanges lie on studs.
func Wall(p *Piece) []finding.Finding {
	var out []finding.Finding
	for _, s := range p.standing {
		if !s.wall || len(s.feet) > 0 {
			continue // what stands on feet leans on its wall flanges, it does not hang on them
		}
		out = append(out, p.onWall(s)...)
	}
	return out
}

// wallFlange is a flange on the wall with its screws.
type wallFlange struct {
	node     int
	set      part.Fastener
	x, z     float64 // mm
	upper, n float64 // screws that pull, and all that bear
	lever    float64 // mm
}

func (p *Piece) onWall(s standing) []finding.Finding {
	f := finding.Finding{Check: "wall", Place: p.place(s), Parts: p.tagsOf(s), Caution: anchor.Caution}
	flanges := p.wallFlanges(s)
	if len(flanges) == 0 || p.Wall == nil {
		return nil
	}
	if p.Doc.Place.WallKind == "" {
		return unknown(f, "what the wall is made of: name it under place, wall: studs or masonry")
	}
	out := p.onStuds(f, flanges)
	worst, found := 0.0, finding.Finding{}
	for i, w := range flanges {
		g, err := p.hung(f, s, flanges, i)
		if err != nil {
			return append(out, unknown(f, fmt.Sprintf("what holds the %s: %v", p.Nodes[w.node].Place, err))...)
		}
		if v := g.Figure.Value; i == 0 || v > worst {
			worst, found = v, g
		}
	}
	return append(out, found)
}

// wallFlanges are the flanges of a piece on the wall. In studs only the screws over one another reach the stud.
func (p *Piece) wallFlanges(s standing) []wallFlange {
	var out []wallFlange
	for _, set := range p.Parts.Fasteners {
		if set.Panel >= 0 || set.Node < 0 || !p.Nodes[set.Node].ToWall || !slices.Contains(s.nodes, set.Node) {
			continue
		}
		n, fit := p.Nodes[set.Node], p.Nodes[set.Node].Fitting
		w := wallFlange{node: set.Node, set: set, x: n.At.X.MM(), z: n.At.Z.MM(), n: float64(max(set.Count, 1))}
		w.upper = math.Max(1, math.Floor(w.n/2))
		rise := fit.HoleCircle.MM() / 2 * math.Sqrt2 / 2
		if p.Doc.Place.WallKind == "studs" {
			w.n, w.upper, rise = math.Min(w.n, 2), 1, fit.HoleCircle.MM()/2
		}
		w.lever = fit.Plate.MM()/2 + rise
		out = append(out, w)
	}
	for i := range out {
		p.lengthenLever(out, i)
	}
	return out
}

// lengthenLever takes the greatest height over a flange of the same frame below it, where that is more than what its
// own plate gives.
func (p *Piece) lengthenLever(all []wallFlange, i int) {
	f := newForest(len(p.Nodes))
	for _, s := range p.Sticks {
		f.join(s.A, s.B)
	}
	for k, other := range all {
		if k != i && f.root(all[i].node) == f.root(other.node) {
			all[i].lever = math.Max(all[i].lever, all[i].z-other.z)
		}
	}
}

// hung weighs one flange: what it bears, what its worst screw is pulled and pushed by, against what such a screw is
// designed for.
func (p *Piece) hung(f finding.Finding, s standing, all []wallFlange, i int) (finding.Finding, error) {
	w := all[i]
	held, err := anchor.For(p.Doc.Place.WallKind, w.set.Gauge, w.set.Length, w.set.Grip)
	if err != nil {
		return f, err
	}
	b := p.loadOf(s, all, i)
	pull := figure.Of("pull on an upper screw", b.moment/w.lever/w.upper, figure.N, &wallPullFormula,
		figure.InText("moment", figure.Digits(b.moment/1000, 3)+" N·m"), figure.In("lever", w.lever, figure.MM), figure.In("upper screws", w.upper, figure.Count))
	down := figure.Of("load across a screw", b.load/w.n, figure.N, &wallShareFormula, figure.In("load of the flange", b.load, figure.N), figure.In("screws", w.n, figure.Count))
	share, err := screw.Combined(pull.Value, down.Value, held.Pull.Value, held.Across.Value)
	if err != nil {
		return f, err
	}
	f.Place += ", the " + p.Nodes[w.node].Place
	f.Figure, f.Limit = share, figure.Of("all they are designed for", 1, figure.Ratio, nil)
	f.Because = append([]figure.Figure{share, pull, down, held.Pull, held.Across}, b.books...)
	f.Assumed = append([]string{b.what, "the wall screws share as a stiff flange makes them"}, held.Assumed...)
	if p.Doc.Place.WallKind == "studs" {
		f.Assumed = append(f.Assumed, "only two screws of a flange, one over the other, meet the stud")
	}
	f.Verdict = finding.Judge(share.Value, 1, finding.AtMost)
	if f.Verdict != finding.Stands {
		f.Mend = p.wallMend(share.Value, pull.Value, held.Pull.Value)
	}
	return f, nil
}

// wallLoad is what one flange bears.
type wallLoad struct {
	load, moment float64 // N, and N·mm about the wall
	what         string  // that hangs there
	books        []figure.Figure
}

// loadOf returns what flange i bears of the piece's own weight and of those things held that load it more, or of shelves
// full of books where nothing is named that it holds.
func (p *Piece) loadOf(s standing, all []wallFlange, i int) wallLoad {
	coefficient := influence(all, i)
	b := wallLoad{what: "it bears what it holds, and of that what loads this flange more"}
	add := func(kg, x, y float64, always bool) {
		if c := coefficient(x); always || c > 0 {
			b.load += kg * gravity * c
			b.moment += kg * gravity * c * math.Max(0, p.Wall.MM()-y)
		}
	}
	for _, m := range p.bodies(s) {
		add(m.Kg, m.X.MM(), m.Y.MM(), true)
	}
	for _, h := range p.things(s) {
		m := heldMass(h)
		add(m.Kg, m.X.MM(), m.Y.MM(), false)
	}
	if len(s.held) == 0 {
		p.shelve(s, &b, add)
	}
	b.load, b.moment = math.Max(0, b.load), math.Max(0, b.moment)
	return b
}

// shelve fills every board with books.
func (p *Piece) shelve(s standing, b *wallLoad, add func(kg, x, y float64, always bool)) {
	b.what = "nothing is named that it holds: its boards are full of books"
	for _, n := range s.panels {
		flat := p.Panels[n]
		long := flat.Max.X - flat.Min.X
		kg := booksKgPerM * long.MM() / 1000
		b.books = append(b.books, figure.Of("books on "+flat.Name, kg, figure.Kg, &booksFormula, figure.InLength("length", long)))
		add(kg, (flat.Min.X + flat.Max.X).Half().MM(), (flat.Min.Y + flat.Max.Y).Half().MM(), true)
	}
}

// influence is the share of a weight at x that flange i bears: all flanges are equal springs under a stiff board.
func influence(all []wallFlange, i int) func(x float64) float64 {
	mean, n := 0.0, float64(len(all))
	for _, w := range all {
		mean += w.x / n
	}
	spread := 0.0
	for _, w := range all {
		spread += (w.x - mean) * (w.x - mean)
	}
	return func(x float64) float64 {
		if spread < 1 {
			return 1 / n
		}
		return 1/n + (x-mean)*(all[i].x-mean)/spread
	}
}

// wallMend says what halves the load of a screw soonest.
func (p *Piece) wallMend(share, pull, design float64) string {
	if pull > design*0.8 {
		return fmt.Sprintf("put flanges one above the other on the wall, so that the upper one pulls over a lever %s times as long, or use %d times as many", figure.Digits(math.Max(1.1, pull/design), 2), int(math.Ceil(share)))
	}
	return fmt.Sprintf("use %d times as many flanges, or thicker screws, or hang less on it", int(math.Ceil(math.Max(share, 1.01))))
}

// onStuds says whether all flanges of a piece can lie on studs at once.
func (p *Piece) onStuds(f finding.Finding, all []wallFlange) []finding.Finding {
	if p.Doc.Place.WallKind != "studs" {
		return nil
	}
	spacing, known := p.Doc.Place.StudSpacing, true
	if spacing == 0 {
		spacing, known = anchor.StudSpacing, false
	}
	at := make([]length.Length, len(all))
	for i, w := range all {
		at[i] = p.Nodes[w.node].At.X
	}
	shift, err := anchor.Offset(at, spacing)
	if err != nil {
		return unknown(f, err.Error())
	}
	f.Place += ", its flanges on the studs"
	f.Figure, f.Limit = shift.Figure, figure.OfLength("a screw still in the stud", studReach, nil)
	f.Because = []figure.Figure{shift.Figure}
	f.Assumed = []string{"the piece is hung where its flanges meet the studs best", "studs 1 1/2 in wide, 3/8 in of wood beside a screw: common practice, no source"}
	if !known {
		f.Assumed = append(f.Assumed, "studs 16 in apart: find and measure yours")
	}
	if shift.Figure.Value > studReach.MM() {
		f.Verdict = finding.Fails
		f.Mend = p.studMend(at, spacing)
	}
	return []finding.Finding{f}
}

// studMend names the distance of the outer flanges that is a whole number of spacings.
func (p *Piece) studMend(at []length.Length, spacing length.Length) string {
	lo, hi := at[0], at[0]
	for _, x := range at {
		lo, hi = min(lo, x), max(hi, x)
	}
	fields := max(1, (hi-lo+spacing.Half())/spacing)
	return fmt.Sprintf("set the outer arms %s apart, a whole number of the studs' spacing, and any between them on studs too; or screw a board to the studs and the flanges to it",
		p.Doc.Fineness.Text(spacing*fields))
}
