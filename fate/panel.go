package fate

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/steps"
	"rodwright/trade/sheet"
)

// panel returns the ways to make a needed panel out of one that is made.
func (b bench) panel(t journal.Thing, n Need) ([]Way, string) {
	if t.Shape.Material != n.Part.Material || t.Shape.Sheet != n.Part.Sheet {
		return nil, fmt.Sprintf("it is of %s and %s is wanted", t.Shape.Material, n.Part.Material)
	}
	if t.State < journal.Sized {
		return b.blank(t, n)
	}
	if asDrawn(t.Shape, n.Part) {
		return []Way{b.asIs(t, n)}, ""
	}
	if why := b.thick(t, n); why != "" {
		return nil, why
	}
	var ways []Way
	made, need := shapeOf(t.Shape), needOf(n.Part)
	p, stays, ok := place(made, need, true)
	if !ok && turnsAnyWay(n.Part) {
		if q, _, fits := place(made.quartered(), need, true); fits {
			q.quarter = true
			made, p, ok = made.quartered(), q, true
		}
	}
	if ok {
		ways = append(ways, b.cutPanel(t, n, made, p))
	}
	why := b.tooSmall(made, need)
	if why != "" {
		w, no := b.addStrip(t, n, made, need)
		if no == "" {
			return append(ways, w), ""
		}
		return ways, why + no
	}
	if !ok && stays != nil {
		why = b.stays(*stays)
	}
	return ways, why
}

// turnsAnyWay reports whether a panel has no grain to keep to: sheet goods without a veneer.
func turnsAnyWay(p *part.Part) bool {
	goods, err := sheet.Lookup(p.Material)
	return p.Sheet && err == nil && !goods.Veneered
}

// asDrawn reports whether a panel was made to what is still wanted of it: whatever it measures, the plan was built
// round that.
func asDrawn(s journal.Shape, p *part.Part) bool {
	for k := range 3 {
		if length.Length(s.Drawn[k]) != p.Finished[k] {
			return false
		}
	}
	made, need := shapeOf(s), needOf(p)
	made.size = need.size
	q, stays := try(made, need, nowhere)
	return stays == nil && len(q.plugs)+len(q.wider) == 0
}

// asIs uses a panel as it is. What is still to be cut in it is the plan's own work.
func (b bench) asIs(t journal.Thing, n Need) Way {
	w := Way{Kind: AsIs, After: t.Shape}
	b.moved(&w, t, n)
	p, _ := try(shapeOf(t.Shape).sized(n.Part), needOf(n.Part), nowhere)
	said := b.features(&w, t, n, p)
	if len(said) > 0 {
		w.Kind, w.After = CutDown, wanted(t, n.Part)
		b.surface(&w, t, n, p)
	}
	b.say(&w, said)
	return w
}

// sized returns the outline as if it had the size that was drawn: openings are reckoned from the datum either way.
func (o outline) sized(p *part.Part) outline {
	o.size = [2]length.Length{p.Finished[0], p.Finished[1]}
	return o
}

// thick says why a panel's thickness rules it out.
func (b bench) thick(t journal.Thing, n Need) string {
	if less := n.Part.Finished[2] - length.Length(t.Shape.Size[2]); less > Marking {
		return fmt.Sprintf("it is %s too thin", b.show(less))
	}
	if more := length.Length(t.Shape.Size[2]) - n.Part.Finished[2]; more > Marking && n.Part.Sheet {
		return fmt.Sprintf("it is %s too thick, and sheet goods can't be planed", b.show(more))
	}
	return ""
}

// tooSmall says by how much a panel is too short or too narrow.
func (b bench) tooSmall(made, need outline) string {
	if less := need.size[0] - made.size[0]; less > 0 {
		return fmt.Sprintf("it is %s too short", b.show(less))
	}
	if less := need.size[1] - made.size[1]; less > 0 {
		return fmt.Sprintf("it is %s too narrow", b.show(less))
	}
	return ""
}

func (b bench) stays(o opening) string {
	if o.lo == o.hi {
		return fmt.Sprintf("its %s %s would stay where none is wanted", o.kind, o.name)
	}
	at := fmt.Sprintf("%s, %s", b.show(o.lo[0]), b.show(o.lo[1]))
	return fmt.Sprintf("its %s at %s would stay where none is wanted", o.kind, at)
}

// blank returns the ways for a panel that has not been cut to size yet: it serves where the finished one can still be
// cut from it.
func (b bench) blank(t journal.Thing, n Need) ([]Way, string) {
	least := n.Part.Finished
	if !n.Part.Sheet {
		for k := range 2 {
			least[k] += 2 * b.s.Panel.Jointing
		}
	}
	for k, word := range []string{"short", "narrow", "thin"} {
		less := least[k] - length.Length(t.Shape.Size[k])
		if k == 2 {
			less -= Marking
		}
		switch {
		case less <= 0:
		case k == 1 && !n.Part.Sheet:
			w := Way{Kind: AddTo, After: t.Shape}
			w.After.Size[1] = journal.MM(n.Part.Blank[1])
			b.strip(&w, n, n.Part.Blank[1]-length.Length(t.Shape.Size[1]), "either edge")
			b.say(&w, []string{fmt.Sprintf("glue a strip of %s to its blank", b.show(n.Part.Blank[1]-length.Length(t.Shape.Size[1])))})
			return []Way{w}, ""
		default:
			return nil, fmt.Sprintf("its blank is %s too %s", b.show(less), word)
		}
	}
	w := Way{Kind: AsIs, After: t.Shape}
	b.moved(&w, t, n)
	b.say(&w, nil)
	return []Way{w}, ""
}

// cutPanel takes off what is too much and cuts what is missing.
func (b bench) cutPanel(t journal.Thing, n Need, made outline, p placing) Way {
	w := Way{Kind: CutDown, After: wanted(t, n.Part)}
	b.takeOut(&w, t)
	said := b.offs(&w, p)
	if more := length.Length(t.Shape.Size[2]) - n.Part.Finished[2]; more > Marking {
		said = append(said, fmt.Sprintf("plane %s off its thickness", b.show(more)))
		w.Off = append(w.Off, Off{"face", more})
		b.job(&w, "flatten-panel", 2*n.Part.Finished[0].MM()*n.Part.Finished[1].MM()/1e6, 1, "Plane %s off %s", b.show(more), itself)
	}
	if cuts := b.edges(p); cuts > 0 {
		work := "size"
		if n.Part.Sheet {
			work = "size-sheet"
		}
		b.job(&w, work, float64(cuts), b.axes(p), "Cut %s down: %s", itself, strings.Join(said, ", "))
	}
	for _, o := range p.plugs {
		across := o.hi[0] - o.lo[0]
		b.job(&w, "bore", 2, 1, "Plug the %s hole of %s with a plug of the same wood, grain in line; cut it flush", b.show(across), itself)
		w.Kind = AddTo
		w.Shows = append(w.Shows, fmt.Sprintf("a plug of %s at %s, %s", b.show(across), b.show(o.lo[0]-p.at[0]+across.Half()), b.show(o.lo[1]-p.at[1]+across.Half())))
		said = append(said, fmt.Sprintf("plug its %s hole", b.show(across)))
	}
	for _, o := range p.wider {
		w.Shows = append(w.Shows, fmt.Sprintf("a gap up to %s wider than drawn at its %s", b.show(WiderUpTo), o.kind))
	}
	switch {
	case p.quarter:
		said = append(said, "turned by a quarter first")
	case p.turned:
		said = append(said, "turned end for end")
	}
	said = append(said, b.features(&w, t, n, p)...)
	b.surface(&w, t, n, p)
	if len(said) == 0 {
		w.Kind = AsIs
		if t.Place == n.Place && !t.TakeOut() {
			w.Jobs = nil
		}
	}
	b.say(&w, said)
	return w
}

// offs notes what is cut off each edge, in words.
func (b bench) offs(w *Way, p placing) (said []string) {
	for k := range 2 {
		lo, hi := p.off[k][0], p.off[k][1]
		if lo > 0 && hi > 0 && (lo-hi).Abs() <= 1 {
			said = append(said, fmt.Sprintf("%s off both %s", b.show(lo), [2]string{"ends", "edges"}[k]))
		}
		for end, off := range p.off[k] {
			if off == 0 {
				continue
			}
			side := string(sides[k][end])
			w.Off = append(w.Off, Off{side, off})
			if (lo - hi).Abs() > 1 {
				said = append(said, fmt.Sprintf("%s off its %s", b.show(off), side))
			}
		}
	}
	return said
}

// edges counts the cuts.
func (b bench) edges(p placing) (n int) {
	for k := range 2 {
		for _, off := range p.off[k] {
			if off > 0 {
				n++
			}
		}
	}
	return n
}

// axes counts the settings of the fence or rail.
func (b bench) axes(p placing) (n int) {
	for k := range 2 {
		if p.off[k][0]+p.off[k][1] > 0 {
			n++
		}
	}
	return n
}

// owed reports whether the plan itself no longer does a kind of work to a thing: what of it is missing is to be done
// apart.
func owed(t journal.Thing, work string) bool {
	return t.State > journal.Shaped || slices.Contains(t.Works, work) || slices.Contains(t.Works, journal.Shaped.String())
}

// WorkOf is the kind of work that cuts an opening.
func WorkOf(kind piece.FeatureKind, round bool, across length.Length) string {
	switch {
	case kind == piece.HoleFeature && round && across > steps.LargestBit:
		return "hole-saw"
	case kind == piece.HoleFeature:
		return "bore"
	}
	return string(kind)
}

// features cuts the openings and runs the profiles that are not there yet and that the plan no longer does.
func (b bench) features(w *Way, t journal.Thing, n Need, p placing) (said []string) {
	counts := map[string]int{}
	var works []string
	for _, i := range p.missing {
		f := n.Part.Features[i]
		work := WorkOf(f.Kind, f.Round, f.Size[0])
		if !owed(t, work) {
			continue
		}
		if counts[work]++; counts[work] == 1 {
			works = append(works, work)
		}
	}
	for _, work := range works {
		b.job(w, work, float64(counts[work]), 1, "Cut what is missing or too small in %s: %d × %s", itself, counts[work], work)
		said = append(said, fmt.Sprintf("cut %d × %s", counts[work], work))
	}
	if len(p.profiles) > 0 && owed(t, "profile") {
		run := 0.0
		for _, e := range n.Part.Profiles {
			for _, side := range p.profiles {
				if p.turned {
					side = opposite[side]
				}
				if side == e.Side {
					run += e.Run.MM() / 1000
				}
			}
		}
		b.job(w, "profile", run, 1, "Run the profile of %s again", itself)
		said = append(said, "run its profile again")
	}
	return said
}

// surface sands and finishes again what was cut where that was done already.
func (b bench) surface(w *Way, t journal.Thing, n Need, p placing) {
	if len(w.Jobs) == 0 || t.State < journal.Sanded {
		return
	}
	area := 0.0 // m² of new edges
	for k := range 2 {
		for _, off := range p.off[k] {
			if off > 0 {
				area += n.Part.Finished[1-k].MM() * n.Part.Finished[2].MM() / 1e6
			}
		}
	}
	if length.Length(t.Shape.Size[2])-n.Part.Finished[2] > Marking {
		area += 2 * n.Part.FaceM2
	}
	if area == 0 {
		area = n.Part.EdgeM2 / 4 // openings and profiles only: a part of the edges
	}
	b.job(w, "sand", area, 1, "Sand the new edges of %s", itself)
	if t.State >= journal.Coated {
		coats := max(b.s.Settings.Coats, 1)
		for i := range coats {
			b.job(w, "coat", area, 1, "Finish the new edges of %s, coat %d of %d", itself, i+1, coats)
		}
	}
}

// takeOut takes a part that is fitted already out of the piece; putting it in again is the plan's own work.
func (b bench) takeOut(w *Way, t journal.Thing) {
	if t.State < journal.Fitted && !t.TakeOut() {
		return
	}
	work := "lay"
	if t.Shape.Kind == journal.KindPipe {
		work = "frame"
	}
	b.job(w, work, 1, 1, "Take %s out of the piece", itself)
}

// moved takes a part that is used as it is out of where it is fitted, where that is not its place.
func (b bench) moved(w *Way, t journal.Thing, n Need) {
	if t.TakeOut() || t.Place != n.Place {
		b.takeOut(w, t)
	}
}

// addStrip glues a strip to a panel that is too narrow, before its finish is on.
func (b bench) addStrip(t journal.Thing, n Need, made, need outline) (w Way, no string) {
	wide := need.size[1] - made.size[1]
	switch {
	case need.size[0] > made.size[0]:
		return w, ", and wood is not lengthened"
	case n.Part.Sheet:
		return w, ", and sheet goods are not added to"
	case t.State >= journal.Coated:
		return w, ", and its finish is on: a strip is glued before"
	}
	for _, end := range []int{1, 0} {
		wider := made
		wider.size[1] += wide
		if end == 0 {
			wider = wider.shifted(wide)
		}
		if _, profiled := made.profiles[sides[1][end]]; profiled {
			continue
		}
		if p, _, ok := place(wider, need, false); ok && len(p.plugs) == 0 {
			w = b.cutPanel(t, n, wider, p)
			edge := string(sides[1][end])
			b.strip(&w, n, wide, edge)
			w.Kind = AddTo
			w.Words = fmt.Sprintf("glue a strip of %s to its %s; ", b.show(wide), edge) + strings.TrimPrefix(w.Words, "use it as it is")
			w.Words = strings.TrimSuffix(w.Words, "; ")
			return w, ""
		}
	}
	return w, ", and a strip at either edge would meet its openings or profiles"
}

// shifted returns the outline with its openings moved across the grain.
func (o outline) shifted(by length.Length) outline {
	openings := make([]opening, len(o.openings))
	for i, c := range o.openings {
		c.rect = c.moved([2]length.Length{0, by})
		c.opens[1][0] = false
		openings[i] = c
	}
	o.openings = openings
	return o
}

// strip adds an edge strip to a way: its wood, the glue line and the planing.
func (b bench) strip(w *Way, n Need, wide length.Length, edge string) {
	cut := wide + b.s.Panel.Jointing
	b.job(w, "joint", 2, 1, "Joint %s's %s and a strip %s wide and %s long, ring sides turned about", itself, edge, b.show(cut), b.show(n.Part.Blank[0]))
	b.job(w, "glue", 1, 1, "Glue the strip to %s", itself)
	b.job(w, "flatten-panel", n.Part.Finished[0].MM()*wide.MM()/1e6*2, 1, "Plane the joint of %s flush", itself)
	feet := n.Part.BoardFeet.Volume * cut.MM() / max(n.Part.Blank[1].MM(), 1)
	if n.Part.Rough != "" {
		w.Goods = append(w.Goods, Goods{n.Part.Material + " " + n.Part.Rough, feet, "board foot"})
	}
	w.Shows = append(w.Shows, fmt.Sprintf("a joint line %s from its %s", b.show(wide), edge))
}

// wanted is what a panel is like once it is what the plan needs, as far as it was shaped at all.
func wanted(t journal.Thing, p *part.Part) journal.Shape {
	return Drawn(p, max(t.State, journal.Sized), t.Works)
}

// say puts what is done in words.
func (b bench) say(w *Way, said []string) {
	if w.Kind == AsIs && len(said) == 0 {
		w.Words = "use it as it is"
		return
	}
	w.Words = strings.Join(said, "; ")
}

// Drawn is what a part is like once it has come to a state just as the plan draws it. Up to the state shaped it has
// the openings and profiles of the kinds of work that were told.
func Drawn(p *part.Part, to journal.State, works []string) journal.Shape {
	s := journal.Shape{Kind: string(p.Kind), Material: p.Material, Sheet: p.Sheet}
	if p.Kind == part.Pipe {
		s.Size[0], s.Drawn[0] = journal.MM(p.Cut), journal.MM(p.Cut)
		return s
	}
	size := p.Finished
	if to < journal.Sized {
		size = p.Blank
	}
	for k, v := range size {
		s.Size[k], s.Drawn[k] = journal.MM(v), journal.MM(v)
	}
	told := journal.Thing{State: to, Works: works}
	for _, f := range p.Features {
		if to < journal.Sized || !owed(told, WorkOf(f.Kind, f.Round, f.Size[0])) {
			continue
		}
		s.Openings = append(s.Openings, journal.Opening{
			Kind: string(f.Kind), At: [2]journal.MM{journal.MM(f.At[0]), journal.MM(f.At[1])}, Size: [2]journal.MM{journal.MM(f.Size[0]), journal.MM(f.Size[1])},
			Round: f.Round, Radius: journal.MM(f.Radius), Depth: journal.MM(f.Depth), Opens: string(f.Opens),
		})
	}
	for _, e := range p.Profiles {
		if to < journal.Sized || !owed(told, "profile") {
			continue
		}
		s.Profiles = append(s.Profiles, journal.Profile{Side: string(e.Side), Profile: e.Profile, Size: journal.MM(e.Size)})
	}
	return s
}
