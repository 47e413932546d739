package check

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	bend "rodwright/mechanics/plate"
	"rodwright/piece"
	"rodwright/trade/beam"
	"rodwright/trade/pipe"
	"rodwright/trade/plate"
	"rodwright/trade/sheet"
	"rodwright/trade/wood"
)

// strengthShare is how many times the stress of use clear wood must bear before it breaks, 3: knots, short grain and a load
// that stays are in it. Common practice, no source.
const strengthShare = 3

// dampFrom is the relative humidity in percent from which a load counts as standing on damp wood. Common practice, no
// source.
const dampFrom = 65

var (
	sagLimit = figure.Formula{
		Text: "limit = span ÷ ratio of the shop", Source: "common practice, no source",
		Range: "span between the supports that bear it, twice what overhangs them",
	}
	stressLimit = figure.Formula{
		Text: "limit = strength in bending ÷ 3", Source: "Wood Handbook FPL-GTR-282 (2021) Table 5-3 for clear wood; the factor: common practice, no source",
		Range: "clear wood along the grain at 12 % MC",
	}
)

// Sag says of every panel how far it sags at once and in the end under what it holds and its own weight, and how hard it is
// stressed: as a plate with its notches and holes, on its supports where they are. Flanges and feet bear it at their axes and
// let it turn, which is the greater sag; rails bend with it; what only bears lets it lift.
func Sag(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i := range p.Panels {
		out = append(out, p.sag(i)...)
	}
	return out
}

func (p *Piece) sag(i int) []finding.Finding {
	flat := &p.Panels[i]
	f := finding.Finding{Check: "sag", Place: flat.Name, Parts: tags(p.Parts.PanelTags[i])}
	stuff, factor, err := p.stuffOf(i)
	if err != nil {
		return unknown(f, err.Error())
	}
	model, held := p.plateOf(i)
	if len(model.Posts)+len(model.Discs)+len(model.Rails) == 0 {
		return []finding.Finding{unborne(f, flat)}
	}
	bent, err := p.bend(model, stuff, held)
	switch {
	case errors.Is(err, plate.ErrUnheld):
		return unknown(f, "what bears "+flat.Name+": "+err.Error())
	case err != nil:
		return unknown(f, err.Error())
	}
	return p.judgeSag(f, i, model, bent, stuff, factor)
}

var borneFormula = figure.Formula{
	Text: "a support bears a panel where there is wood over it", Source: "geometry of the piece", Range: "what lies in a notch or beside the panel bears nothing",
}

// unborne says of a panel that no wood of it lies over anything that could bear it.
func unborne(f finding.Finding, flat *piece.FlatPanel) finding.Finding {
	f.Verdict = finding.Fails
	f.Figure = figure.Of("supports under its wood", 0, figure.Count, &borneFormula, figure.In("seats", float64(len(flat.Seats)), figure.Count))
	f.Limit = figure.Of("supports under its wood", 1, figure.Count, &borneFormula)
	f.Sense, f.Because = finding.AtLeast, []figure.Figure{f.Figure}
	f.Mend = "let its notches open to the other side, or move it, so that its wood lies on what is to bear it"
	return f
}

// judgeSag lays the sags and the stress of a panel against their limits.
func (p *Piece) judgeSag(f finding.Finding, i int, model *bend.Plate, bent plate.Bent, stuff plate.Stuff, factor figure.Figure) []finding.Finding {
	span := spanOf(model, bent)
	lasting, err := beam.LastingSag(bent.Sag.Value, factor.Value)
	if err != nil {
		return unknown(f, err.Error())
	}
	lasting = lasting.Assuming(factor.Assumed...)
	set := p.Shop.Settings
	at := finding.View{From: "front", Marks: []finding.Mark{p.markOn(i, bent.BelowSupports)}}
	out := []finding.Finding{
		laid(f, "", bent.Sag, limitOf(span, set.SagRatio), at, p.mendSag(i)),
		laid(f, ", in the end", lasting, limitOf(span, set.LastingRatio), at, p.mendSag(i)),
	}
	if !math.IsNaN(stuff.Strength) {
		limit := figure.Of("limit of stress", stuff.Strength/strengthShare, figure.MPa, &stressLimit, figure.In("strength", stuff.Strength, figure.MPa))
		out = append(out, laid(f, ", its stress", bent.Stress, limit, finding.View{From: "top", Marks: []finding.Mark{p.markOn(i, bent.Along)}}, p.mendSag(i)))
	}
	return out
}

func laid(f finding.Finding, place string, value, limit figure.Figure, at finding.View, mend string) finding.Finding {
	f.Place += place
	f.Figure, f.Limit, f.Because, f.View = value, limit, []figure.Figure{value}, at
	if f.Verdict = finding.Judge(value.Value, limit.Value, finding.AtMost); f.Verdict != finding.Stands {
		f.Mend = mend
	}
	return f
}

func limitOf(span, ratio float64) figure.Figure {
	return figure.Of("limit of sag", span/ratio, figure.MM, &sagLimit, figure.In("span", span, figure.MM), figure.In("ratio", ratio, figure.Ratio))
}

func (p *Piece) mendSag(i int) string {
	thick := p.Panels[i].Max.Z - p.Panels[i].Min.Z
	return fmt.Sprintf("make %s thicker, %s as it is, bring its supports closer, or put a rail under it", p.Panels[i].Name, p.Doc.Fineness.Show(thick))
}

func (p *Piece) markOn(i int, at bend.Peak) finding.Mark {
	flat := &p.Panels[i]
	return finding.Mark{At: [3]float64{flat.Min.X.MM() + at.X, flat.Min.Y.MM() + at.Y, flat.Max.Z.MM()}, Text: "most here"}
}

// stuffOf is what a panel is made of, and how much more it sags in the end.
func (p *Piece) stuffOf(i int) (plate.Stuff, figure.Figure, error) {
	spec := p.Panels[i].Spec
	air := beam.Dry
	if p.Doc.Place.HighRH >= dampFrom {
		air = beam.Damp
	}
	if spec.Sheet != "" {
		s, err := sheet.Lookup(spec.Sheet)
		if err != nil {
			return plate.Stuff{}, figure.Figure{}, err
		}
		return plate.OfSheet(s), s.Creep(air), nil
	}
	w := p.Doc.Wood
	if spec.Wood != nil {
		w = *spec.Wood
	}
	cut := w.Cut
	if cut == "" {
		cut = wood.Mixed
	}
	stuff, err := plate.OfWood(w.Species, cut)
	factor := figure.Of("lasting factor", air.Factor(), figure.Ratio, nil).Assuming(fmt.Sprintf("a load that stays, in %s air", air))
	return stuff, factor, err
}

// plateOf is the panel as a plate: x along the piece and y from front to back, from its left front corner, as it lies.
func (p *Piece) plateOf(i int) (model *bend.Plate, held string) {
	flat := &p.Panels[i]
	model = &bend.Plate{
		Width: (flat.Max.X - flat.Min.X).MM(), Depth: (flat.Max.Y - flat.Min.Y).MM(), Thickness: (flat.Max.Z - flat.Min.Z).MM(), GrainAlongY: !flat.GrainX,
	}
	for _, f := range flat.Features {
		open(model, f)
	}
	if q := p.panels[i]; q != nil && q.FaceM2 > 0 {
		model.Load.Density = q.MassKg / (q.FaceM2 * model.Thickness / 1000)
	}
	p.bear(model, i)
	p.turnless(model, i)
	p.lay(model, i)
	return model, "it lies on its supports and is free to turn there"
}

// open cuts an opening that goes through.
func open(model *bend.Plate, f piece.Feature) {
	switch x, y := f.Min[0].MM(), f.Min[1].MM(); {
	case f.Depth > 0:
	case f.Round:
		r := (f.Max[0] - f.Min[0]).MM() / 2
		model.Holes = append(model.Holes, bend.Circle{X: x + r, Y: y + r, R: r})
	default:
		model.Openings = append(model.Openings, bend.Rect{X: x, Y: y, W: (f.Max[0] - f.Min[0]).MM(), H: (f.Max[1] - f.Min[1]).MM()})
	}
}

// bear puts a panel's supports where they are. A panel that stands on feet bears the posts on it, which are no supports then.
func (p *Piece) bear(model *bend.Plate, i int) {
	flat := &p.Panels[i]
	feet := slices.ContainsFunc(flat.Seats, func(s piece.PanelSeat) bool { return s.Kind == piece.OnFeet })
	for _, s := range flat.Seats {
		x, y := (s.At[0] - flat.Min.X).MM(), (s.At[1] - flat.Min.Y).MM()
		switch s.Kind {
		case piece.OnPosts:
			model.Posts = append(model.Posts, bend.Post{X: x, Y: y, TwoSided: true})
		case piece.UnderPosts:
			if !feet {
				model.Posts = append(model.Posts, bend.Post{X: x, Y: y, TwoSided: true})
			}
		case piece.OnFeet:
			model.Posts = append(model.Posts, bend.Post{X: x, Y: y})
		case piece.OnRails:
			p.rail(model, flat, s)
		}
	}
}

// turnless lets flanges bear a panel at their screws where all that bears it stands on one line: then they alone keep it from
// tipping.
func (p *Piece) turnless(model *bend.Plate, i int) {
	if len(model.Rails) > 0 || !inLine(model.Posts) {
		return
	}
	flat := &p.Panels[i]
	for _, s := range flat.Seats {
		if s.Kind != piece.OnPosts && s.Kind != piece.UnderPosts || s.Node < 0 {
			continue
		}
		f := p.Nodes[s.Node].Fitting
		model.Discs = append(model.Discs, bend.Disc{
			X: (s.At[0] - flat.Min.X).MM(), Y: (s.At[1] - flat.Min.Y).MM(), R: max(f.HoleCircle.MM()/2, f.Plate.MM()/4, 1), TwoSided: true,
		})
	}
	if len(model.Discs) > 0 {
		model.Posts = nil
	}
}

// inLine reports whether supports all stand on one line.
func inLine(posts []bend.Post) bool {
	if len(posts) < 3 {
		return true
	}
	a, far := posts[0], posts[0]
	for _, q := range posts {
		if math.Hypot(q.X-a.X, q.Y-a.Y) > math.Hypot(far.X-a.X, far.Y-a.Y) {
			far = q
		}
	}
	long := math.Hypot(far.X-a.X, far.Y-a.Y)
	return !slices.ContainsFunc(posts, func(q bend.Post) bool {
		return long > 0 && math.Abs((q.X-a.X)*(far.Y-a.Y)-(q.Y-a.Y)*(far.X-a.X))/long > 1
	})
}

// rail puts a rail under a panel, as far as it lies over it, once for each run of pipe; an arm, which is carried at the wall
// alone, counts as stiff.
func (p *Piece) rail(model *bend.Plate, flat *piece.FlatPanel, s piece.PanelSeat) {
	if s.Stick < 0 {
		return
	}
	st := p.Sticks[s.Stick]
	a, b := p.Nodes[st.A].At, p.Nodes[st.B].At
	clampTo := func(v, lo, hi length.Length) float64 { return (min(max(v, lo), hi) - lo).MM() }
	r := bend.Rail{
		FromX: clampTo(a.X, flat.Min.X, flat.Max.X), FromY: clampTo(a.Y, flat.Min.Y, flat.Max.Y),
		ToX: clampTo(b.X, flat.Min.X, flat.Max.X), ToY: clampTo(b.Y, flat.Min.Y, flat.Max.Y), TwoSided: s.Strap,
	}
	if math.Abs(r.FromX-r.ToX) < 1 && math.Abs(r.FromY-r.ToY) < 1 || slices.Contains(model.Rails, r) {
		return
	}
	if !onWood(model, r) {
		return
	}
	if st.Role != piece.ArmRole && st.Section.Pipe != nil {
		r.EI = pipe.SteelModulus * st.Section.Pipe.SecondMoment()
	}
	model.Rails = append(model.Rails, r)
}

// onWood reports whether some of a rail lies under wood, 1/20 of it at least.
func onWood(model *bend.Plate, r bend.Rail) bool {
	const parts = 20
	for k := range parts {
		t := (float64(k) + 0.5) / parts
		x, y := r.FromX+t*(r.ToX-r.FromX), r.FromY+t*(r.ToY-r.FromY)
		if !slices.ContainsFunc(model.Openings, func(o bend.Rect) bool { return x > o.X && x < o.X+o.W && y > o.Y && y < o.Y+o.H }) &&
			!slices.ContainsFunc(model.Holes, func(c bend.Circle) bool { return math.Hypot(x-c.X, y-c.Y) < c.R }) {
			return true
		}
	}
	return false
}

// lay puts what a panel holds on it: each thing evenly on its footprint; and the frame that stands on one with feet.
func (p *Piece) lay(model *bend.Plate, i int) {
	flat := &p.Panels[i]
	for _, h := range p.Held {
		if h.Panel != i {
			continue
		}
		x, y := (h.Min.X - flat.Min.X).MM(), (h.Min.Y - flat.Min.Y).MM()
		w, d := (h.Max.X - h.Min.X).MM(), (h.Max.Y - h.Min.Y).MM()
		if w > 0 && d > 0 {
			model.Load.Patches = append(model.Load.Patches, bend.Patch{Rect: bend.Rect{X: x, Y: y, W: w, H: d}, Pressure: h.MassKg * gravity / (w * d)})
		}
	}
}

// gravity is the standard acceleration of free fall, m/s².
const gravity = 9.80665

// spanOf is the greatest distance in mm that a plate bridges between neighbouring supports, along either side, or twice what
// overhangs them where it sags most there.
func spanOf(model *bend.Plate, bent plate.Bent) float64 {
	var xs, ys []float64
	note := func(x, y float64) { xs, ys = append(xs, x), append(ys, y) }
	for _, d := range model.Discs {
		note(d.X, d.Y)
	}
	for _, q := range model.Posts {
		note(q.X, q.Y)
	}
	for _, r := range model.Rails {
		note(r.FromX, r.FromY)
		note(r.ToX, r.ToY)
	}
	return max(bridged(xs, bent.BelowSupports.X), bridged(ys, bent.BelowSupports.Y), 1)
}

// bridged is the distance of the two supports next to a place, or twice how far it lies beyond all.
func bridged(at []float64, place float64) float64 {
	if len(at) == 0 {
		return 0
	}
	slices.Sort(at)
	lo, hi := at[0], at[len(at)-1]
	switch {
	case place < lo:
		return 2 * (lo - place)
	case place > hi:
		return 2 * (place - hi)
	}
	for _, v := range at {
		if v <= place {
			lo = v
		}
		if v >= place {
			hi = min(hi, v)
		}
	}
	return hi - lo
}

// bend works a plate out, once for each input where the results of earlier ones are kept.
func (p *Piece) bend(model *bend.Plate, s plate.Stuff, held string) (plate.Bent, error) {
	type answer struct {
		bent plate.Bent
		err  error
	}
	compute := func() any {
		bent, err := plate.Bend(model, s, held)
		return answer{bent, err}
	}
	if p.Keep == nil {
		got := compute().(answer)
		return got.bent, got.err
	}
	got := p.Keep("plate", fmt.Appendf(nil, "%+v %+v %s", *model, s, held), compute).(answer)
	return got.bent, got.err
}
