package check

import (
	"fmt"
	"math"
	"slices"

	"rodwright/figure"
	bend "rodwright/mechanics/plate"
	"rodwright/piece"
	"rodwright/trade/beam"
	"rodwright/trade/plate"
	"rodwright/trade/sheet"
	"rodwright/trade/wood"
)

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
func (p *Piece) plateOf(i int) *bend.Plate {
	flat := &p.Panels[i]
	model := &bend.Plate{
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
	return model
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

// lay puts what a panel holds on it, each thing evenly on its footprint.
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

// press returns the plate with the weights that may come upon the panel besides, all at once, each at its point; nil where
// there are none, and their names.
func (p *Piece) press(model *bend.Plate, i int) (pressed *bend.Plate, names []string) {
	flat := &p.Panels[i]
	for _, own := range p.Doc.Loads {
		if own.On != flat.Spec.Name || own.MassKg <= 0 {
			continue
		}
		if pressed == nil {
			copied := *model
			copied.Load.Points = nil
			pressed = &copied
		}
		x, y := placeOf(own, model)
		pressed.Load.Points = append(pressed.Load.Points, bend.PointLoad{X: x, Y: y, N: own.MassKg * gravity})
		names = append(names, own.Name)
	}
	return pressed, names
}

// placeOf is where a load presses, in mm from the left front corner of its panel.
func placeOf(l piece.Load, model *bend.Plate) (x, y float64) {
	x, y = model.Width/2, model.Depth/2
	switch {
	case l.At != nil:
		x, y = l.At[0].MM(), l.At[1].MM()
	case l.Edge == piece.FrontSide:
		y = 0
	case l.Edge == piece.BackSide:
		y = model.Depth
	case l.Edge == piece.LeftSide:
		x = 0
	case l.Edge == piece.RightSide:
		x = model.Width
	}
	return min(max(x, 0), model.Width), min(max(y, 0), model.Depth)
}
