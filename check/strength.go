package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/trade/beam"
	"rodwright/trade/pipe"
	"rodwright/trade/stability"
)

var (
	rootFormula = figure.Formula{
		Text:   "σ = M ÷ Z + N ÷ A, Z and A those at the root of the thread",
		Source: "beam formulas, any mechanics text; forces by the stiffness method between the bounds of the joints",
		Range:  "the worst of all cases and of soft and stiff joints; between the ends the whole pipe bears the bending",
	}
	rootLimit = figure.Formula{
		Text: "limit = yield ÷ 1.67", Source: "ASTM A53 grade A, 30 000 psi; factor of allowable stress in bending, AISC 360 chapter F, from memory", Range: "steel pipe",
	}
	pryFormula = figure.Formula{
		Text:   "P = N ÷ n + M·(R + r) ÷ (n·(R² + r²/2))",
		Source: "statics: a stiff plate that turns about its rim, its screws equal springs, any mechanics text",
		Range:  "n ≥ 3 screws on a circle of radius r, rim of radius R; a push on the plate takes off, no less than nothing",
	}
	acrossFormula = figure.Formula{
		Text: "V = F ÷ n + T ÷ (n·r)", Source: "statics, any mechanics text", Range: "n screws on a circle of radius r, F level in the wood's face, T about the pipe",
	}
	shareLimit = figure.Formula{Text: "limit = 1", Source: "National Design Specification for Wood Construction ch. 12: no more than what a fastener is designed for"}
	footRated  = figure.Formula{Text: "limit = rated mass × g", Source: "its maker's rating, or the generic class; standard gravity"}
	footForce  = figure.Formula{
		Text: "R = push of the floor, by the stiffness method", Source: "J. S. Przemieniecki, Theory of Matrix Structural Analysis, 1968, from memory; floors that only push: C. E. Lemke, 1965",
		Range: "the frame bends; the floor gives nothing",
	}
)

// bendingFactor is the yield over the stress that steel may bear in bending: 1.67, AISC 360 chapter F, from memory.
const bendingFactor = 1.67

// Strength says how hard pushes, leans, an uneven floor, a step and a lift by the top ask the threads of the pipes, the
// screws of flanges and straps and the feet, and the maker's own loads. Of each kind the worst of all cases is told.
func Strength(p *Piece) []finding.Finding {
	var out []finding.Finding
	for n, s := range p.standing {
		if len(s.sticks) == 0 {
			continue
		}
		r := p.rack(n)
		if r.missing != "" || r.loose != nil {
			continue // told by sway
		}
		out = append(out, p.strengthOf(r)...)
	}
	return out
}

func (p *Piece) strengthOf(r *racked) []finding.Finding {
	var out []finding.Finding
	if r.strong.root.at >= 0 {
		out = append(out, p.rootOf(r, r.strong.root))
	}
	for _, s := range []struct {
		w    worst
		kind string
	}{{r.strong.flange, "screws of the flange"}, {r.strong.strap, "screws of the strap"}} {
		if s.w.at >= 0 {
			out = append(out, p.screwsOf(r, s.w, s.kind))
		}
	}
	out = append(out, p.unjudged(r)...)
	if spec := p.Doc.Feet; r.strong.foot.at >= 0 && spec.RatedKg > 0 && p.Feet[r.strong.foot.at].Spec.Kind == spec.Kind {
		out = append(out, p.footOf(r, r.strong.foot))
	}
	return out
}

// strained begins a finding on strength.
func (p *Piece) strained(r *racked, w worst, place string) finding.Finding {
	f := finding.Finding{Check: "strength", Place: place + ", " + w.name}
	if len(p.standing) > 1 {
		f.Place = p.place(r.k.s) + ", " + f.Place
	}
	f.Assumed = []string{
		fmt.Sprintf("of the cases reckoned: a push of %s at the top to every side, a lean of %s on every edge of its top, the floor uneven by %s under one foot, its wheels at a step, a lift by its top board, and the loads its maker named",
			figure.Show(r.k.push().Value, figure.N, p.Doc.Fineness), figure.Show(leanWeight, figure.N, p.Doc.Fineness), p.Doc.Fineness.Show(length.FromMM(unevenFloor))),
	}
	if r.tested == 0 {
		f.Assumed = append(f.Assumed, "the worse of soft and stiff joints")
	} else {
		f.Assumed = append(f.Assumed, "measured: its joints give as the push test found")
	}
	if w.tips {
		f.Assumed = append(f.Assumed, "it goes over before that load has come to its full: it is reckoned as held down")
	}
	return f
}

// rootOf tells the stress of the worst stick.
func (p *Piece) rootOf(r *racked, w worst) finding.Finding {
	st := r.k.sticks[w.at]
	stick := &p.Sticks[st]
	f := p.strained(r, w, "thread of the "+stick.Name)
	f.Parts = tags(p.Parts.StickTags[st])
	in := []figure.Input{}
	if size := stick.Section.Pipe; size != nil {
		in = append(in, figure.In("Z", size.RootModulus(), figure.MM3), figure.In("share of the plain pipe's", size.RootModulusShare(), figure.Ratio))
	}
	f.Figure = figure.Of("stress", w.by, figure.MPa, &rootFormula, in...)
	f.Limit = figure.Of("limit of stress", beam.PipeYield/bendingFactor, figure.MPa, &rootLimit, figure.In("yield", beam.PipeYield, figure.MPa))
	f.Because = []figure.Figure{f.Figure}
	f.View.Marks = []finding.Mark{{At: p.middleOf(st), Text: "most stressed"}}
	if f.Verdict = finding.Judge(w.by, f.Limit.Value, finding.AtMost); f.Verdict == finding.Fails {
		f.Mend = p.rootMend(stick.Section.Pipe, w.by/f.Limit.Value)
		f.Caution = "A pipe that bends at its thread breaks there: do not lean on the piece until it is mended."
	}
	return f
}

// rootMend names the thinnest pipe that bears the same at its thread.
func (p *Piece) rootMend(size *pipe.Size, over float64) string {
	text := fmt.Sprintf("it bears %s times what it should: ", figure.Digits(over, 2))
	if size != nil {
		for next, ok := nextSize(*size); ok; next, ok = nextSize(next) {
			if next.RootModulus() >= over*size.RootModulus() {
				return text + "take pipe of " + next.ID + ", or a rail that shortens it"
			}
		}
	}
	return text + "put in rails that shorten it"
}

func (p *Piece) middleOf(stick int) [3]float64 {
	a, b := vec(p.Nodes[p.Sticks[stick].A].At), vec(p.Nodes[p.Sticks[stick].B].At)
	return [3]float64{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2}
}

// screwsOf tells what the screws of the worst flange or strap bear.
func (p *Piece) screwsOf(r *racked, w worst, kind string) finding.Finding {
	s := r.k.stubs[w.at]
	fast := p.Parts.Fasteners[s.fastener]
	h := r.k.gripOf(s)
	f := p.strained(r, w, kind+p.whereOf(fast))
	f.Parts = tags(fast.Holds, p.Parts.PanelTags[fast.Panel])
	f.Figure = figure.Of("share of what its screws are designed for", w.by, figure.Ratio, nil)
	f.Limit = figure.Of("all they are designed for", 1, figure.Ratio, &shareLimit)
	n, circle := figure.In("n", float64(fast.Count), figure.Count), figure.In("r", h.circle, figure.MM)
	f.Because = []figure.Figure{
		figure.Of("pull on each screw", w.pull, figure.N, &pryFormula, figure.In("M", w.moment, figure.NMM), figure.In("R", h.rim, figure.MM), circle, n),
		figure.Of("push across each screw", w.across, figure.N, &acrossFormula, circle, n),
		figure.Of("pull it is designed for", h.withdraw, figure.N, nil), figure.Of("push across it is designed for", h.across, figure.N, nil),
	}
	f.Assumed = append(f.Assumed, fast.Assumed...)
	if p.bitesShort(fast) {
		f.Assumed = append(f.Assumed, "its screws bite less than four of their diameters: what they bear across is reckoned in proportion, for which nothing is published")
	}
	f.View.Marks = []finding.Mark{{At: r.k.frame.Nodes[r.k.stubFrom(s)].At, Text: "most pulled"}}
	if f.Verdict = finding.Judge(w.by, 1, finding.AtMost); f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("take screws that hold %s times as much: longer, thicker or more of them, or a rail that takes the bending from the joint", figure.Digits(math.Ceil(10*w.by)/10, 3))
		f.Caution = "Screws that draw out let a leg fold: do not lean on the piece until it is mended."
	}
	return f
}

func (k *skeleton) stubFrom(s stub) int {
	if s.member < 0 {
		return s.at
	}
	n, _ := k.find(k.frame.Members[s.member].From)
	return n
}

// whereOf names what a set of screws goes through.
func (p *Piece) whereOf(f part.Fastener) string {
	panel := p.Panels[f.Panel].Name
	switch {
	case f.Node >= 0:
		return " at the " + p.Nodes[f.Node].Place
	case f.Seat >= 0:
		return " on the " + p.Sticks[p.Panels[f.Panel].Seats[f.Seat].Stick].Name + ", into " + panel
	}
	return " of the " + p.Feet[f.Foot].Name + ", into " + panel
}

// unjudged tells of panels of which nobody knows what screws hold in them.
func (p *Piece) unjudged(r *racked) []finding.Finding {
	for _, s := range r.k.stubs {
		if s.fastener < 0 {
			continue
		}
		fast := p.Parts.Fasteners[s.fastener]
		if _, _, err := p.designed(fast); err != nil {
			f := finding.Finding{Check: "strength", Place: "screws into " + p.Panels[fast.Panel].Name, Parts: tags(fast.Holds, p.Parts.PanelTags[fast.Panel])}
			return unknown(f, err.Error())
		}
	}
	return nil
}

// footOf tells what the worst foot bears.
func (p *Piece) footOf(r *racked, w worst) finding.Finding {
	foot := &p.Feet[w.at]
	f := p.strained(r, w, foot.Name)
	if f.Parts = tags(p.Parts.FootTags[w.at]); len(f.Parts) == 0 {
		f.Parts = p.tagsOf(r.k.s)
	}
	limit := stability.Weight(foot.Spec.RatedKg)
	f.Figure = figure.Of("load on the foot", w.by, figure.N, &footForce)
	f.Limit = figure.Of("rated", limit, figure.N, &footRated, figure.In("rated", foot.Spec.RatedKg, figure.Kg)).Assuming(foot.Spec.Assumed...)
	f.Because = []figure.Figure{f.Figure}
	if f.Verdict = finding.Judge(w.by, limit, finding.AtMost); f.Verdict == finding.Fails {
		f.Mend = fmt.Sprintf("take feet rated for at least %s kg each", figure.Digits(math.Ceil(w.by/gravity), 3))
		f.Caution = "An overloaded foot or caster breaks without warning."
	}
	return f
}
