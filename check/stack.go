package check

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
)

// mostChains is how many chains are told; the others are only counted.
const mostChains = 3

var allowsFormula = figure.Formula{
	Text:   "a panel allows its frame band and working gap, the gap it has left when it is dampest, or what it overlaps when it is driest",
	Source: "geometry of the piece; movement by Wood Handbook FPL-GTR-282 (2021) eq. 13-2 and 13-3",
	Range:  "the panel laid to the first joint that holds it; what else holds it is screwed where it comes",
}

// chain is one distance of the frame that panels depend on, with all places where it comes out alike.
type chain struct {
	need
	giving
	pipes    int
	worst    length.Length
	measured int      // how many distances of the standing frame make it up; 0 where it was not measured
	panels   []int    // that depend on it or on one like it
	tapes    []string // what to measure for it and for those like it, in the journal's words
}

// off is how far the chain may be off by all that is known: by the tape where it was measured.
func (c *chain) off() length.Length {
	if c.measured > 0 {
		return piece.TapeReach * length.Length(c.measured)
	}
	return c.worst
}

// Stack says how far the distances of the frame that panels depend on may come out otherwise than drawn, by what
// joints, fittings and pointing give, and which panel binds then. One finding for each of the distances that have
// too little room, the worst first, and at least one; those that come out alike are told once.
func Stack(p *Piece) []finding.Finding {
	chains := p.chains()
	if len(chains) == 0 {
		return nil
	}
	var out []finding.Finding
	for n, c := range chains {
		if n == 0 || n < mostChains && c.off() > c.allows {
			out = append(out, p.stackOf(c))
		}
	}
	if more := len(chains) - len(out); more > 0 {
		out[0].Assumed = append(out[0].Assumed, fmt.Sprintf("other distances that panels depend on, none with less room than these: %d", more))
	}
	return out
}

// chains returns the distances that panels depend on, those with the least room first.
func (p *Piece) chains() (out []*chain) {
	if len(p.Sticks) == 0 || len(p.Panels) == 0 {
		return nil
	}
	all := p.chainsOf()
	told := p.toldPosts()
	from := map[[2]int]*sureWays{} // by joint and axis
	like := map[string]*chain{}
	for _, n := range p.needs() {
		start := p.laidTo(n.panel)
		if start < 0 {
			continue
		}
		key := [2]int{start, n.axis}
		if from[key] == nil {
			from[key] = all.from(start, n.axis)
		}
		c := all.chain(n, from[key], start, told)
		if c == nil {
			continue
		}
		name := fmt.Sprint(c.felt, c.allows, c.measured, c.axis)
		if same := like[name]; same != nil {
			same.panels, same.tapes = add(same.panels, n.panel), add(same.tapes, c.tapes[0])
			continue
		}
		like[name] = c
		out = append(out, c)
	}
	slices.SortStableFunc(out, func(a, b *chain) int { return cmp.Compare(b.ratio(), a.ratio()) })
	return out
}

// add appends what is not there yet.
func add[T comparable](to []T, more T) []T {
	if slices.Contains(to, more) {
		return to
	}
	return append(to, more)
}

// ratio is how much of what is allowed the chain may take.
func (c *chain) ratio() float64 {
	if c.allows <= 0 {
		return c.off().MM() * 1e6
	}
	return float64(c.off()) / float64(c.allows)
}

// chain reckons one distance; nil where no pipe lies between what the panel is laid to and what it must meet.
func (c *chains) chain(n need, w *sureWays, start int, told [2]*toldPosts) *chain {
	end := n.at[0]
	if w.off[end] < 0 || w.off[n.at[1]] >= 0 && w.off[n.at[1]] < w.off[end] {
		end = n.at[1]
	}
	sticks := w.to(end)
	if len(sticks) == 0 {
		return nil
	}
	g := c.give(sticks, n.axis)
	out := &chain{need: n, giving: g, pipes: len(sticks), worst: g.felt.Worst(), panels: []int{n.panel}}
	to := c.post(end)
	from := c.inLine(c.firstPost(w, end), to, n.axis)
	if from < 0 || to == from {
		out.tapes = []string{"scribe " + n.what + " on the standing frame"}
		return out
	}
	out.tapes = []string{fmt.Sprintf("measured %s to %s …", c.postName(from), c.postName(to))}
	if out.measured = told[n.axis].steps(c.postName(from), c.postName(to)); out.measured > 0 && c.post(start) < 0 {
		out.measured++ // from the post to what the panel is laid to by the tape too
	}
	return out
}

// stackOf tells one chain.
func (p *Piece) stackOf(c *chain) finding.Finding {
	f := finding.Finding{
		Check: "stack", Place: p.chainPlace(c), Sense: finding.AtMost, View: finding.View{From: "top"},
		Limit: figure.OfLength("what it allows", max(c.allows, 0), &allowsFormula),
	}
	for _, i := range c.panels {
		f.Parts = append(f.Parts, p.Parts.PanelTags[i])
	}
	f.Parts = tags(f.Parts...)
	figures := c.felt.Figures()
	f.Because = append(figures, figure.OfLength("off at worst where each pipe is set by measure", c.set.Worst(), figures[0].Formula,
		figure.In("pipes", float64(c.pipes), figure.Count)), f.Limit)
	f.Figure = figures[0]
	f.Assumed = slices.Clone(giveWords)
	if c.measured > 0 {
		f.Figure = figure.OfLength("off as measured", c.off(), &tapeFormula, figure.In("distances", float64(c.measured), figure.Count))
		f.Because = append(f.Because, f.Figure)
	}
	p.judgeChain(&f, c, figures[2])
	return f
}

// giveWords is what the reckoning takes for granted.
var giveWords = []string{
	"each joint wrenched by feel, a turn more or less: common practice; the thread itself may be a turn large or small (ASME B16.3-2006 § 7.2)",
	"fittings within 1/16 in of centre-to-end: ASME B16.3 § 7.3 has such a tolerance, its size is from memory; 1/32 in where the shop measured them",
	"the frame stands square, and pipes are cut to their length",
}

var tapeFormula = figure.Formula{
	Text: "off = distances × 1/32 in", Source: "common practice, no source: two tapes agree within 1/32 in", Range: "distances measured on the standing frame",
}

// judgeChain gives the verdict. What does not come out of the wrench by itself is measured, and the panel cut to it:
// that is tight, and fails only where the tape itself is too coarse.
func (p *Piece) judgeChain(f *finding.Finding, c *chain, usual figure.Figure) {
	switch {
	case c.off() <= c.allows:
		f.Verdict = finding.Stands
	case c.allows < piece.TapeReach:
		f.Verdict = finding.Fails
		f.Mend = fmt.Sprintf("give it %s more room", p.up(piece.TapeReach-c.allows))
	default:
		f.Verdict = finding.Tight
		f.Assumed = append(f.Assumed, p.binds(c, usual))
		f.Mend = "measure before cutting: " + tapes(c.tapes)
		if set := c.set.Worst(); set <= c.allows {
			f.Mend += fmt.Sprintf("; or set every pipe by measure as it is wrenched, within half a turn: then it is off by %s at most", p.up(set))
		}
	}
}

// binds says in how many frames the panel binds.
func (p *Piece) binds(c *chain, usual figure.Figure) string {
	share := "fewer"
	if usual.Value > c.allows.MM() {
		share = "more"
	}
	return share + " than 5 in 100 frames wrenched by feel come out so far off that " + p.Panels[c.panel].Name + " must be cut to them"
}

// chainPlace names a chain by what it is for, and how many panels it is alike for.
func (p *Piece) chainPlace(c *chain) string {
	var names []string
	for _, i := range c.panels {
		names = append(names, p.Panels[i].Name)
	}
	way := [...]string{"along the piece", "front to back"}[c.axis]
	place := fmt.Sprintf("%s, %s, %s", names[0], c.what, way)
	if len(names) > 1 {
		place += fmt.Sprintf("; alike: %s", strings.Join(names[1:], ", "))
	}
	return place
}
