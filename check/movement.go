package check

import (
	"fmt"
	"slices"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/trade/gap"
	"rodwright/trade/screw"
)

var (
	playFormula = figure.Formula{
		Text: "play = Σ (hole − shank) ÷ 2", Source: "geometry of screws centred in their holes, common practice",
		Range: "one row of screws at either end",
	}
	giveFormula = figure.Formula{
		Text: "allowed = play + F·Σ L³ ÷ (3EI)", Source: "cantilever, Wood Handbook FPL-GTR-282 (2021) table 9-1, from memory; F what the screws bear sideways, ch. 8, from memory",
		Range: "the legs' far ends free to turn; held against turning they give a quarter of that",
	}
	springFormula = figure.Formula{
		Text: "F = (δ − play) ÷ Σ (L³ ÷ 3EI) … (δ − play) ÷ Σ (L³ ÷ 12EI)", Source: "beam formulas, any mechanics text",
		Range: "the legs' far ends free to turn … held against turning; the true force lies between the two",
	}
	hinderedFormula = figure.Formula{
		Text: "hindered = movement between rows of screws that the steel holds apart", Source: "common practice, no source",
		Range: "a strap slides along its pipe; legs that nothing joins move with the panel; a caster rolls",
	}
)

// Movement says of every wooden panel how far it moves over the year, and whether the steel lets it: by the play
// of the screws in their holes and by the give of the legs. A panel held along one line stands, and one that lies
// loose.
func Movement(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i := range p.Panels {
		if p.Panels[i].Spec.Wood != nil {
			out = append(out, p.movement(i))
		}
	}
	return out
}

// movement weighs panel i.
func (p *Piece) movement(i int) finding.Finding {
	rows := p.rows(i)
	f := finding.Finding{
		Check: "movement", Parts: tags(p.Parts.PanelTags[i]), Place: p.Panels[i].Name,
		View: finding.View{From: "top"},
	}
	apart := length.Length(0)
	if len(rows) > 0 {
		apart = rows[len(rows)-1].at - rows[0].at
	}
	between, err := p.moves(i, apart)
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	wide, err := p.moves(i, p.wide(i))
	if err != nil {
		return unknown(f, err.Error())[0]
	}
	f.Because, f.Assumed = between.figures(), p.freedom(i, rows, between)
	whole := p.throughYear(i, wide).figure("movement of the whole width over the year", wide)
	held, err := p.worstPair(i, rows)
	switch {
	case err != nil:
		return unknown(f, err.Error())[0]
	case held != nil:
		f = p.judgePair(i, f, held)
	default:
		f.Figure = figure.OfLength("movement that the steel hinders", 0, &hinderedFormula,
			figure.InLength("rows of screws apart", apart))
		f.Limit = figure.OfLength("allowed", 0, nil)
		f.Because = append(f.Because, f.Figure)
	}
	f.Because = append(f.Because, whole)
	return f
}

// freedom says in words what lets a panel move.
func (p *Piece) freedom(i int, rows []row, whole season) []string {
	switch len(rows) {
	case 0:
		return []string{"nothing is screwed to the panel: it lies loose"}
	case 1:
		return []string{"everything that holds the panel stands on one line along the grain"}
	}
	var words []string
	for _, r := range rows {
		for _, h := range r.holds {
			switch {
			case h.free != slots:
				words = append(words, h.free)
			default:
				words = append(words, fmt.Sprintf("the steel's holes are slotted to %s across the grain, screws centred and not tight", p.opened(h.gauge, whole.most())))
			}
		}
	}
	return tags(words...)
}

// opened returns, in words, the hole in which a screw lets the wood move.
func (p *Piece) opened(gauge int, moved length.Length) string {
	sc, err := screw.Lookup(gauge)
	if err != nil {
		return "the screw and twice the movement of " + p.up(moved)
	}
	return p.up(length.FromMM(gap.Hole(sc.Shank, 0, moved.MM()).Value))
}

// judgePair gives the verdict on the worst pair of rows.
func (p *Piece) judgePair(i int, f finding.Finding, h *pair) finding.Finding {
	most := h.season.most()
	f.Parts = tags(slices.Concat(f.Parts, h.a.tags(), h.b.tags())...)
	f.Figure = figure.OfLength("movement that the steel hinders", most, &hinderedFormula, figure.InLength("rows of screws apart", h.b.at-h.a.at))
	play := figure.OfLength("play", h.play, &playFormula)
	f.Because = append(h.season.figures(), f.Figure, play)
	f.Limit = figure.Of("allowed", h.play.MM()+h.soft, figure.MM, &giveFormula,
		figure.InLength("play", h.play), figure.In("give", h.soft, figure.MM), figure.In("F", h.bears, figure.N)).Assuming("each leg's far end may turn freely: the most it can give")
	f.Because = append(f.Because, p.forces(most, h)...)
	f.Verdict = finding.Judge(most.MM(), f.Limit.Value, finding.AtMost)
	f.Picture = p.throughYear(i, h.season).room(f.Limit.Value)
	switch {
	case f.Verdict == finding.Fails && h.missing != "":
		return unknown(finding.Finding{Check: f.Check, Place: f.Place, Parts: f.Parts, Because: f.Because, Assumed: f.Assumed, View: f.View,
			Mend: p.openHoles(h)}, "what the screws bear sideways: "+h.missing)[0]
	case f.Verdict == finding.Stands && most.MM() > h.play.MM()+h.stiff:
		f.Verdict = finding.Tight
		f.Assumed = append(f.Assumed, "legs that can't turn at their far end would overload the screws")
	}
	if f.Verdict != finding.Stands {
		f.Mend = p.openHoles(h)
	}
	return f
}

// forces returns what the screws would carry in place of the movement, the least and the most, and what they
// bear. There is none where the play takes it all, or nothing gives.
func (p *Piece) forces(most length.Length, h *pair) []figure.Figure {
	over := max(0, most-h.play)
	if over == 0 || h.springs[0] <= 0 || h.springs[1] <= 0 {
		return nil
	}
	in := func(k float64) []figure.Input {
		return []figure.Input{figure.InLength("δ", most), figure.InLength("play", h.play), figure.In("spring", k, figure.NPerMM)}
	}
	return []figure.Figure{
		figure.Of("least force on the row of screws", over.MM()*h.springs[0], figure.N, &springFormula, in(h.springs[0])...),
		figure.Of("greatest force on the row of screws", over.MM()*h.springs[1], figure.N, &springFormula, in(h.springs[1])...),
	}
}

// openHoles names the hole that lets the panel move: the smallest mend there is. A row of straps is freed
// before a row of flanges, which then locates the panel.
func (p *Piece) openHoles(h *pair) string {
	r, what := h.b, "the flanges' holes"
	if slices.ContainsFunc(h.a.holds, func(h hold) bool { return h.rail }) {
		r = h.a
	}
	if slices.ContainsFunc(r.holds, func(h hold) bool { return h.rail }) {
		what = "the straps' holes"
	}
	return fmt.Sprintf("slot %s to %s across the grain along one of the two rows, screws centred and not tight, with washers",
		what, p.opened(r.holds[0].gauge, h.season.most()))
}
