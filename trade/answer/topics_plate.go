package answer

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/length"
	bend "rodwright/mechanics/plate"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/beam"
	"rodwright/trade/pipe"
	"rodwright/trade/plate"
	"rodwright/trade/portal"
	"rodwright/trade/within"
	"rodwright/trade/wood"
)

// What a plate is reckoned for, as package mechanics/plate takes it.
const (
	mostPlate    = 50_000 // mm, of a side
	mostThick    = 1000   // mm
	mostPressure = 1000   // MPa
	slimmest     = 100    // the longer side over the shorter
	thickest     = 5      // the shorter side over the thickness, at least
)

// The ways the edges of a plate are held, as they are asked.
const (
	edgesResting = "resting"
	edgesHeld    = "held"
	edgesCorners = "corners"
)

// edgesWords says what is taken for granted of edges held so.
var edgesWords = map[string]string{
	edgesResting: "all four edges rest on rails that don't give, free to turn, and can't lift",
	edgesHeld:    "all four edges are held so that they can't turn, on rails that don't give; a screwed edge lies between held and resting",
	edgesCorners: "it stands on its four corners alone, free to turn, on posts that don't give and hold it down",
}

func plateTopics() []Topic {
	return []Topic{
		{
			Name: "plate", Asks: "how far does a panel sag in the middle, borne along its edges or at its corners?",
			Keys: []Key{woodKey().optional(), ask("modulus", quantity.Pressure, "1.5e6 psi", "modulus of elasticity of what is alike in all directions").between(1, 1e6).optional(),
				ask("poisson", quantity.Ratio, "0.3", "how much what is alike in all directions narrows when stretched; only with modulus").within(0, 0.5).or("0.3"),
				ask("length", quantity.Length, "48 in", "along the grain").within(1, mostPlate), ask("width", quantity.Length, "20 in", "across the grain").within(1, mostPlate),
				ask("thickness", quantity.Length, "3/4 in", "of the panel").within(0.1, mostThick),
				ask("pressure", quantity.Pressure, "0.14 psi", "the load on each unit of the face, all over").within(0, mostPressure).optional(),
				ask("load", quantity.Force, "80 lb", "the whole load, spread even over the face").zero().optional(),
				choose("edges", "what bears it: its edges, resting or held so that they can't turn, or its corners", edgesResting, edgesHeld, edgesCorners)},
			Rules: []Rule{either([]string{"wood"}, []string{"modulus"}), either([]string{"pressure"}, []string{"load"})}, Answers: []string{"sag"},
			Call: []string{"wood=red-oak", "length=48 in", "width=20 in", "thickness=3/4 in", "load=80 lb", "edges=corners"}, reckon: plateSag,
		},
		{
			Name: "portal", Asks: "how far do two legs with a beam across their tops sway when they are pushed?",
			Keys: []Key{pipeKey().optional(), ask("modulus", quantity.Pressure, "29e6 psi", "modulus of elasticity of legs and beam").between(1, 1e6).optional(),
				ask("inertia", quantity.Inertia, "0.037 in4", "second moment of area of legs and beam").within(0.001, 1e9).optional(),
				ask("height", quantity.Length, "28 in", "from the feet to the middle of the beam").within(10, 20_000),
				ask("width", quantity.Length, "20 in", "between the middles of the legs").within(10, 20_000),
				ask("push", quantity.Force, "20 lbf", "level, at the top of one leg, in the plane of the frame").zero(),
				choose("feet", "how the feet are held: free to turn, or so that they can't", string(portal.Hinged), string(portal.Fixed))},
			Rules: []Rule{either([]string{"pipe"}, []string{"modulus", "inertia"})}, Answers: []string{"sway"},
			Call: []string{"pipe=3/4", "height=28 in", "width=20 in", "push=20 lbf"}, reckon: portalSway,
		},
	}
}

func plateSag(in given, w *work) error {
	stuff, err := in.stuff()
	if err != nil {
		return err
	}
	p, err := in.plate()
	if err != nil {
		return err
	}
	bent, err := plate.Bend(p, stuff, edgesWords[in.word("edges")])
	if err != nil {
		return err
	}
	middle, _ := bent.Field.At(p.Width/2, p.Depth/2)
	sag, deepest := bent.Sag, bent.Sag.Value
	sag.Value = middle
	limit, err := beam.ElasticLimit(in.bridged())
	if err != nil {
		return err
	}
	w.reason(limit)
	w.answer("sag", sag)
	w.assume("at first loading: a load that stays for months makes it half again in a dry room; the panel's own weight counts only if it is in the load")
	w.plateBeyond(p, deepest, middle)
	if deepest > limit.Value {
		w.caution("it will show: thicker, shorter or stiffer, or a rail under it")
	}
	return nil
}

// stuff is what the plate is made of.
func (in given) stuff() (plate.Stuff, error) {
	if !in.has("wood") {
		return plate.Even(in.number("modulus"), in.number("poisson")), nil
	}
	if !in.defaulted("poisson") {
		return plate.Stuff{}, &Error{Topic: in.topic.Name, Key: "poisson", Why: "is given beside wood, which has ratios of its own; give it with modulus, or leave it out"}
	}
	s, err := in.species()
	if err != nil {
		return plate.Stuff{}, err
	}
	if math.IsNaN(s.MOE) {
		return plate.Stuff{}, in.wrong("wood", "no modulus of elasticity is known for it; give modulus instead")
	}
	out, err := plate.OfWood(s, wood.Mixed)
	return out, in.about("wood", err)
}

// plate is the plate with its load and what bears it; its grain runs along its x.
func (in given) plate() (*bend.Plate, error) {
	long, wide := in.number("length"), in.number("width")
	if err := within.Between("width", wide, long/slimmest, long*slimmest, figure.MM); err != nil {
		return nil, err
	}
	if thick := in.number("thickness"); thick > min(long, wide)/thickest {
		return nil, in.wrong("thickness", fmt.Sprintf("thicker than 1/%d of the shorter side, which is no panel but a beam; ask sag", thickest))
	}
	p := &bend.Plate{Width: long, Depth: wide, Thickness: in.number("thickness")}
	// A point without a force, so that a line of the mesh runs through the middle, where the sag is asked: the sag of a
	// slim panel that is held would fall between two lines.
	p.Load.Points = []bend.PointLoad{{X: long / 2, Y: wide / 2}}
	p.Load.Pressure = in.number("pressure")
	if in.has("load") {
		p.Load.Pressure = in.number("load") / (long * wide)
	}
	if p.Load.Pressure > mostPressure {
		return nil, in.wrong("load", fmt.Sprintf("that is %.3g MPa on so small a face; takes at most %d", p.Load.Pressure, mostPressure))
	}
	switch in.word("edges") {
	case edgesResting:
		p.Edges = [4]bend.Edge{bend.Resting, bend.Resting, bend.Resting, bend.Resting}
	case edgesHeld:
		p.Edges = [4]bend.Edge{bend.Held, bend.Held, bend.Held, bend.Held}
	case edgesCorners:
		for _, at := range [][2]float64{{0, 0}, {long, 0}, {0, wide}, {long, wide}} {
			p.Posts = append(p.Posts, bend.Post{X: at[0], Y: at[1], TwoSided: true})
		}
	}
	return p, nil
}

// bridged is the span that the eye takes the sag over: on corners the longer side, else the shorter.
func (in given) bridged() length.Length {
	if in.word("edges") == edgesCorners {
		return max(in.length("length"), in.length("width"))
	}
	return min(in.length("length"), in.length("width"))
}

// plateBeyond says where the theory of thin plates that bend little is at its end.
func (w *work) plateBeyond(p *bend.Plate, deepest, middle float64) {
	if deepest > 1.01*middle {
		w.assume(fmt.Sprintf("an edge sags more than the middle, by %s mm", figure.Digits(deepest-middle, 2)))
	}
	if 15*p.Thickness > min(p.Width, p.Depth) {
		w.assume("so thick a panel sags some per cent more: the theory is that of thin plates")
	}
	if deepest > p.Thickness/2 {
		w.caution("it sags more than half its thickness: that is past what is reckoned here; it is far too much, by how much is uncertain")
	}
}

func portalSway(in given, w *work) error {
	stick := portal.Plain(in.number("modulus"), in.number("inertia"))
	var size pipe.Size
	if in.has("pipe") {
		s, err := in.size()
		if err != nil {
			return err
		}
		size, stick = s, portal.OfPipe(s)
		w.assumePipe(s)
	}
	p := portal.Portal{Height: in.length("height"), Width: in.length("width"), Column: stick, Beam: stick, Feet: portal.Feet(in.word("feet"))}
	pushed, err := p.Push(in.number("push"))
	if err != nil {
		return err
	}
	w.reason(pushed.Moment)
	w.answer("sway", pushed.Sway)
	w.assume("threaded joints are taken as rigid: a real frame sways more", "legs and beam of one section; nothing heavy on top, which would make it lean further", feetWords[p.Feet])
	w.caution("brace it between the legs: a shelf, a rail or a back screwed to both keeps it from racking")
	if in.has("pipe") && pushed.Moment.Value > beam.PipeYield*size.RootModulus() {
		w.caution("so hard a push leaves the pipe bent at its threads, or breaks them")
	}
	if pushed.Sway.Value > p.Height.MM()/10 {
		w.caution("it sways more than a tenth of its height: that is past what is reckoned here, it won't stand")
	}
	return nil
}

// feetWords says what is taken for granted of feet held so.
var feetWords = map[portal.Feet]string{
	portal.Hinged: "the feet stay where they are and turn freely",
	portal.Fixed:  "the feet can't turn: a flange screwed to the floor gives somewhat, so the truth lies between fixed and hinged",
}
