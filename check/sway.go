package check

import (
	"fmt"
	"math"

	"rodwright/figure"
	"rodwright/finding"
	beams "rodwright/mechanics/frame"
)

var (
	swayFormula = figure.Formula{
		Text:   "K·u = F, by the stiffness method; sway = Σ Fᵢ·uᵢ ÷ F",
		Source: "J. S. Przemieniecki, Theory of Matrix Structural Analysis, 1968, from memory; joints that give: G. R. Monforton, T. S. Wu, 1963; stiffness of joints: estimate",
		Range:  "flange on wood 1 to 20 kN·m/rad, threaded joint 5 kN·m/rad to rigid, strap about its pipe 0.1 to 2; small movements, feet that stay where they are and turn",
	}
	swayLimit = figure.Formula{Text: "limit = height ÷ ratio", Source: "common practice, no source: the shop's own setting", Range: "under the push at the top"}
	loosely   = figure.Formula{Text: "ways it moves without resistance", Source: "stiffness method: the smallest eigenvalue, any text on it"}
	tested    = figure.Formula{
		Text: "joints = soft bound × factor, so that the pushed panel moves as measured", Source: "bisection on the computed movement", Range: "one factor for all joints; of several tests the softest joints",
	}
)

// Sway says how far the top of the piece moves when it is pushed along the piece and front to back. Nobody knows how far a
// flange gives on wood or a pipe in its thread: the movement is told between a soft and a stiff bound, and only where both
// lie beyond the limit does it fail. A push test on the standing frame makes one number of it. What hangs on a wall does
// not sway.
func Sway(p *Piece) []finding.Finding {
	var out []finding.Finding
	for n, s := range p.standing {
		if len(s.sticks) == 0 {
			continue
		}
		out = append(out, p.swayOf(p.rack(n))...)
	}
	return out
}

func (p *Piece) swayOf(r *racked) []finding.Finding {
	s := r.k.s
	f := finding.Finding{Check: "sway", Place: p.place(s), Parts: p.tagsOf(standing{sticks: s.sticks})}
	switch {
	case r.missing != "":
		return unknown(f, r.missing)
	case r.loose != nil:
		return []finding.Finding{p.loose(f, r)}
	case !r.sways[0].there:
		return nil
	}
	out := []finding.Finding{p.swayAlong(f, r, 0), p.swayAlong(f, r, 1)}
	worse := 0
	if out[1].Figure.Value > out[0].Figure.Value {
		worse = 1
	}
	out[worse].Picture.Sway = swaySeen(r.sways[worse].moved, r.k.height())
	return out
}

// loose tells what nothing holds.
func (p *Piece) loose(f finding.Finding, r *racked) finding.Finding {
	f.Verdict = finding.Fails
	f.Figure = figure.Of("loose", 1, figure.Count, &loosely)
	f.Limit = figure.Of("allowed", 0, figure.Count, &loosely)
	f.Because = []figure.Figure{f.Figure}
	at := beams.Vec{}
	if n, ok := r.k.find(r.loose.Node); ok {
		at = r.k.frame.Nodes[n].At
	}
	f.Assumed = []string{fmt.Sprintf("nothing keeps it from moving %s at the %s", r.loose.Freedom, r.k.words(r.loose.Node))}
	f.Mend = "put in 1 more rail or brace there, spread its feet so that they do not stand in 1 line, or fix it to a wall"
	f.View.Marks = []finding.Mark{{At: at, Text: "loose here"}}
	f.Caution = "A frame that nothing holds falls over: prop it until it is braced."
	return f
}

// find returns a node of the frame by its name.
func (k *skeleton) find(name string) (int, bool) {
	for i := range k.frame.Nodes {
		if k.frame.Nodes[i].Name == name {
			return i, true
		}
	}
	return 0, false
}

// words name a node of the frame as the maker would.
func (k *skeleton) words(name string) string {
	node, ok := k.find(name)
	if !ok {
		return "frame"
	}
	for _, i := range k.s.nodes {
		if k.at[i] == node {
			return k.p.Nodes[i].Place
		}
	}
	for _, i := range k.s.panels {
		for _, n := range k.bears[i].nodes {
			if n == node {
				return k.p.Panels[i].Name
			}
		}
	}
	for i, n := range k.floor {
		if n == node {
			return k.p.Feet[i].Name
		}
	}
	return "frame"
}

// ways are the words for the two directions of a push.
var ways = [2]string{"pushed along it", "pushed front to back"}

// swayAlong judges the sway in one direction.
func (p *Piece) swayAlong(f finding.Finding, r *racked, axis int) finding.Finding {
	sway, high := r.sways[axis], r.k.height()
	push := r.k.push()
	ratio := p.Shop.Settings.SwayRatio
	f.Place += ", " + ways[axis]
	f.Limit = figure.Of("limit of sway", r.k.limit(), figure.MM, &swayLimit, figure.In("height", high, figure.MM), figure.In("ratio", ratio, figure.Ratio))
	in := []figure.Input{figure.In("F", push.Value, figure.N), figure.In("height", high, figure.MM)}
	soft := figure.Of("sway, soft joints", sway.soft, figure.MM, &swayFormula, in...)
	stiff := figure.Of("sway, stiff joints", sway.stiff, figure.MM, &swayFormula, in...)
	f.View = finding.View{From: [2]string{"front", "side"}[axis]}
	f.Assumed = append(f.Assumed, "its feet stay where they stand: at which push they lift is told under tip")
	if r.k.chocked {
		f.Assumed = append(f.Assumed, "its wheels are chocked: fewer than two of them lock")
	}
	if r.tested > 0 {
		soft.Name = "sway, as tested"
		f.Figure, f.Because = soft, []figure.Figure{soft, push, p.testedFigure(r)}
		f.Verdict = finding.Judge(soft.Value, f.Limit.Value, finding.AtMost)
		f.Assumed = append(f.Assumed, "measured: its joints give as the push test on the standing frame found")
		if r.past {
			f.Assumed = append(f.Assumed, "the push test told of more, or less, movement than joints alone can give: test again, with a stop at the feet")
		}
	} else {
		f.Figure, f.Because = soft, []figure.Figure{soft, stiff, push}
		f.Verdict = judgeRange(soft.Value, stiff.Value, f.Limit.Value)
		f.Assumed = append(f.Assumed, fmt.Sprintf("its joints give between a soft and a stiff bound: it moves %s with soft ones and %s with stiff ones; a push test on the standing frame settles it",
			p.fine(soft.Value), p.fine(stiff.Value)))
	}
	if f.Verdict != finding.Stands {
		f.Mend = sway.mend
	}
	return f
}

// fine prints a movement: by the tape, or in words where it is less than a mark.
func (p *Piece) fine(mm float64) string {
	to := p.Doc.Fineness.Finer()
	if mm < to.Step.MM()/2 {
		return "less than " + to.Text(to.Step)
	}
	return figure.Show(mm, figure.MM, to)
}

func (p *Piece) testedFigure(r *racked) figure.Figure {
	return figure.Of("factor of the joints", r.tested, figure.Ratio, &tested, figure.In("soft flange", softest.flange, figure.NMM), figure.In("soft thread", softest.thread, figure.NMM))
}

// judgeRange judges a figure of which only two bounds are known: tight where the limit lies between them.
func judgeRange(soft, stiff, limit float64) finding.Verdict {
	switch {
	case stiff > limit:
		return finding.Fails
	case soft > limit:
		return finding.Tight
	}
	return finding.Stands // the soft bound is a margin already
}

// pictureShare is how large the worst movement is drawn, as a share of the height.
const pictureShare = 0.08

// swaySeen is the frame as it sways.
func swaySeen(moved []finding.Moved, high float64) *finding.Sway {
	most := 0.0
	for _, m := range moved {
		for _, v := range m.Move {
			most = max(most, math.Sqrt(v[0]*v[0]+v[1]*v[1]+v[2]*v[2]))
		}
	}
	grown := 1.0
	if most > 0 {
		grown = max(1, pictureShare*high/most)
	}
	return &finding.Sway{Sticks: moved, Grown: grown}
}
