package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/screw"
	"rodwright/trade/stability"
)

var hangFormula = figure.Formula{
	Text:   "pull = W·share ÷ screws of the set",
	Source: "statics: a stiff panel on equal springs, any mechanics text; two sets or a line of them: twice the even share, common practice, no source",
	Range:  "lifted without a jerk",
}

// hung is what hangs on some sets of screws of one panel, or of several at one level.
type hung struct {
	place   string
	kg      float64
	at      [2]float64 // centre in plan, mm
	sets    []hanger
	lasting bool
	held    []stability.Mass // what may be there or not
}

// hanger is a set of screws and the panel it is in.
type hanger struct {
	screwSet
	panel int
}

// hanging says what screws bear along themselves where the piece is lifted by its panels of one level or by
// what stands on one, and where a panel hangs.
func (p *Piece) hanging() []finding.Finding {
	var out []finding.Finding
	for _, s := range p.standing {
		for _, h := range p.hangs(s) {
			out = append(out, p.drawn(h))
		}
	}
	return out
}

// hangs returns the ways in which the screws of what stands by itself are pulled.
func (p *Piece) hangs(s standing) (out []hung) {
	levels := map[length.Length][]hanger{}
	var order []length.Length
	for _, i := range s.panels {
		below, above := p.hangers(i)
		switch top := p.Panels[i].Max.Z; {
		case len(below) > 0:
			if levels[top] == nil {
				order = append(order, top)
			}
			levels[top] = append(levels[top], below...)
		case len(above) > 0 && !p.borne(i):
			out = append(out, p.suspended(s, i, above))
			continue
		}
		if len(above) > 0 && !s.wall {
			h := p.weighs(s, func(_ int, m stability.Mass) bool { return m.Z <= p.Panels[i].Max.Z })
			h.place, h.sets = "lifted by what stands on "+p.Panels[i].Name, above
			out = append(out, h)
		}
	}
	if s.wall { // nobody lifts it by its panels
		return out
	}
	for _, top := range order {
		h := p.weighs(s, func(b int, _ stability.Mass) bool { return b < 0 || p.Panels[b].Max.Z != top })
		h.sets = levels[top]
		h.place = "lifted by " + p.Panels[h.sets[0].panel].Name
		if h.sets[0].panel != h.sets[len(h.sets)-1].panel {
			h.place += " and what else lies at its level"
		}
		out = append(out, h)
	}
	return out
}

// hangers returns the sets of screws in panel i that can be pulled, from below and from above. A foot pulls by
// its own weight only, which is little.
func (p *Piece) hangers(i int) (below, above []hanger) {
	for _, set := range p.screwSets(i) {
		switch {
		case set.Foot >= 0:
		case set.above:
			above = append(above, hanger{set, i})
		default:
			below = append(below, hanger{set, i})
		}
	}
	return below, above
}

// suspended is a panel that only the screws of what stands on it hold up, with what it holds.
func (p *Piece) suspended(s standing, i int, sets []hanger) hung {
	h := p.weighs(s, func(b int, _ stability.Mass) bool { return b == i })
	h.place, h.sets, h.lasting = p.Panels[i].Name+" hangs on its screws", sets, true
	for _, t := range p.things(s) {
		if t.Panel == i {
			h.held = append(h.held, heldMass(t))
		}
	}
	return h
}

// borne reports whether something bears panel i from below.
func (p *Piece) borne(i int) bool {
	for _, seat := range p.Panels[i].Seats {
		switch seat.Kind {
		case piece.OnPosts, piece.OnRails, piece.OnFeet:
			return true
		}
	}
	return false
}

// weighs gathers the bodies of what stands by itself that count; the number is the panel's, -1 for others.
func (p *Piece) weighs(s standing, counts func(panel int, m stability.Mass) bool) (h hung) {
	var counted []stability.Mass
	bodies, n := p.bodies(s), 0
	of := func() int {
		for ; n < len(s.panels); n++ {
			if p.panels[s.panels[n]] != nil {
				n++
				return s.panels[n-1]
			}
		}
		return -1
	}
	for _, b := range bodies {
		if counts(of(), b) {
			counted = append(counted, b)
		}
	}
	if c, err := stability.Centre(counted...); err == nil {
		h.kg, h.at = c.Kg, [2]float64{c.X.MM(), c.Y.MM()}
	}
	return h
}

// worstSet returns the load in kg on the set that is pulled most, each thing held there or not.
func (h hung) worstSet() float64 {
	at := make([][2]float64, len(h.sets))
	for k, s := range h.sets {
		at[k] = s.at
	}
	own := stability.Mass{Kg: h.kg, X: length.FromMM(h.at[0]), Y: length.FromMM(h.at[1])}
	if setsInLine(at) {
		return h.total() * min(1, 2/float64(len(h.sets)))
	}
	if worst, ok := worstOnSprings(at, append([]stability.Mass{own}, h.held...)); ok {
		return min(h.total(), max(0, worst))
	}
	return h.total() * min(1, 2/float64(len(h.sets)))
}

// lineShare is the width of a group of points, as a share of its length, below which they count as one line.
const lineShare = 0.05

// setsInLine reports whether points lie in one line, nearly, by their second moments about the lengthwise line.
func setsInLine(at [][2]float64) bool {
	n := float64(len(at))
	var mid [2]float64
	for _, q := range at {
		mid[0], mid[1] = mid[0]+q[0]/n, mid[1]+q[1]/n
	}
	var xx, yy, xy float64
	for _, q := range at {
		x, y := q[0]-mid[0], q[1]-mid[1]
		xx, yy, xy = xx+x*x, yy+y*y, xy+x*y
	}
	half, off := (xx+yy)/2, math.Hypot((xx-yy)/2, xy)
	return len(at) < 3 || half-off <= lineShare*lineShare*(half+off)
}

// drawn judges the pull on the worst screw against what the weakest is designed for.
func (p *Piece) drawn(h hung) finding.Finding {
	least := math.MaxInt
	var holds []string
	for _, s := range h.sets {
		least = min(least, s.Count)
		holds = append(holds, p.Parts.PanelTags[s.panel], s.Holds)
	}
	pull := stability.Weight(h.worstSet()) / float64(max(1, least))
	f := finding.Finding{
		Check: "screw", Place: h.place, Parts: tags(holds...),
		Figure: figure.Of("pull on the worst screw", pull, figure.N, &hangFormula, figure.In("W", h.total(), figure.Kg),
			figure.In("sets", float64(len(h.sets)), figure.Count), figure.In("screws of the set", float64(least), figure.Count)),
		Assumed: []string{"pilots of the right size, screws not overdriven"},
	}
	if !h.lasting {
		f.Assumed = append(f.Assumed, "lifted without a jerk: a jerk doubles the pull")
	}
	because, err := p.weakest(h)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	f.Limit, f.Because = because[len(because)-1], append([]figure.Figure{f.Figure}, because...)
	f.Verdict = finding.Judge(pull, f.Limit.Value, finding.AtMost)
	if f.Verdict != finding.Stands {
		f.Caution = "A panel that comes off its screws drops what hangs on it: carry the piece by its frame."
	}
	if f.Verdict == finding.Fails {
		f.Mend = p.moreScrews(pull, f.Limit.Value, least, h.lasting)
	}
	return f
}

// weakest returns what the screw designed for the least is designed for along itself, last, with the reasons.
func (p *Piece) weakest(h hung) (least []figure.Figure, err error) {
	for n, s := range h.sets {
		if n > 0 && s.alike(h.sets[n-1]) {
			continue
		}
		one, err := p.alongDesign(s.panel, s.screwSet, h.lasting)
		if err != nil {
			return nil, err
		}
		if least == nil || one[len(one)-1].Value < least[len(least)-1].Value {
			least = one
		}
	}
	return least, nil
}

// alike reports whether two sets hold alike: in the same panel by the same screws.
func (s hanger) alike(t hanger) bool {
	return s.panel == t.panel && s.Gauge == t.Gauge && s.Length == t.Length && s.Grip == t.Grip
}

func (h hung) total() float64 {
	all := h.kg
	for _, m := range h.held {
		all += m.Kg
	}
	return all
}

// moreScrews says how many screws a set would need for the pull.
func (p *Piece) moreScrews(pull, design float64, count int, lasting bool) string {
	if !(design > 0) {
		return fmt.Sprintf("take screws whose thread reaches the wood: each must bear %s", figure.Show(pull, figure.N, p.Doc.Fineness))
	}
	need := fmt.Sprintf("%s screws in each set instead of %d", figure.Digits(math.Ceil(pull/design*float64(count)-1e-9), 3), count)
	if lasting {
		return "take " + need + ", or thicker ones with more thread in the wood"
	}
	return "lift it by the frame, or take " + need
}

// alongDesign returns what one screw of a set is designed for along itself in panel i, last, after its reasons.
func (p *Piece) alongDesign(i int, s screwSet, lasting bool) ([]figure.Figure, error) {
	spec := p.Panels[i].Spec
	if spec.Wood == nil {
		return nil, fmt.Errorf("what screws hold in %s", spec.Sheet)
	}
	thread, err := screw.ThreadIn(s.Length, s.Grip)
	if err != nil {
		return nil, err
	}
	in := min(length.FromMM(thread.Value), thickness(p.Panels[i]))
	draws, design, err := screw.Withdrawal(spec.Wood.Species, length.FromMM(s.shank), in, screw.Side)
	if err != nil {
		return nil, err
	}
	because := []figure.Figure{thread, draws, design}
	if design, err = screw.Wet(design.Value, p.Air.WetMC); err != nil {
		return nil, err
	}
	because = append(because, design)
	if lasting {
		if design, err = screw.Lasting(design.Value); err != nil {
			return nil, err
		}
		because = append(because, design)
	}
	return because, nil
}
