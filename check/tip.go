package check

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/stability"
)

var tipLimit = figure.Formula{
	Text:   "α ≥ the shop's least tilt",
	Source: "IEC 60335-1 clause 20.1 asks 10° of household appliances; taken over for furniture by the shop",
}

var tallness = figure.Formula{
	Text: "height ÷ least depth of the base ≤ 4", Source: "OSHA 29 CFR 1926.451(c)(1) asks it of scaffolds that nothing ties, from memory; taken over for furniture, common practice",
	Range: "higher pieces are told to be anchored or locked, whatever their tilt",
}

// tallest is how many times as high as its base is deep a piece may be before it is told to be anchored.
const tallest = 4

// Tip says, for every direction in which the base has a side, at which tilt the piece goes over with the worst combination
// of the things it holds: each may be there or not. Of the worst side it has a picture of all directions. It also judges
// the published requirements that the document names. What is fixed to a wall does not tip.
func Tip(p *Piece) []finding.Finding {
	var out []finding.Finding
	for _, s := range p.free() {
		out = append(out, p.tip(s)...)
	}
	return out
}

// free returns what stands by itself and may tip.
func (p *Piece) free() (out []standing) {
	for _, s := range p.standing {
		if s.wall || len(s.sticks) == 0 && len(s.feet) == 0 {
			continue // a panel that rests on nothing is for the seat to tell
		}
		out = append(out, s)
	}
	return out
}

func (p *Piece) tip(s standing) []finding.Finding {
	f := finding.Finding{Check: "tip", Place: p.place(s), Parts: p.tagsOf(s)}
	if len(s.feet) == 0 {
		return unknown(f, "what it stands on: name its feet, for example caps, or fix it to a wall")
	}
	if p.base(s.feet) == nil {
		f.Mend = "give it three feet that do not stand in one line, or fix it to a wall"
		return unknown(f, "three feet that do not stand in one line")
	}
	leans, err := p.leans(s)
	if err != nil {
		return unknown(f, err.Error())
	}
	told, worst := worstLeans(leans)
	var out []finding.Finding
	for _, k := range told {
		f := p.tipOver(s, leans[k])
		if k == worst {
			f.Picture = finding.Picture{Tilt: tiltPicture(leans, leans[k].centre, p.Shop.Settings.TipDegrees)}
			p.warnTall(s, leans, &f)
		}
		out = append(out, f)
	}
	return append(out, p.standards(s, leans)...)
}

// lean is one side of the base with the combination of things that tips the piece over it soonest.
type lean struct {
	side
	there  []bool
	centre stability.Mass // with these things
	inside length.Length  // of the centre
	angle  figure.Figure
}

// own returns what stands by itself as one mass, without what it holds.
func (p *Piece) own(s standing) (stability.Mass, error) { return stability.Centre(p.bodies(s)...) }

// leans weighs every side of the base.
func (p *Piece) leans(s standing) ([]lean, error) {
	own, err := p.own(s)
	if err != nil {
		return nil, err
	}
	var out []lean
	for _, over := range p.base(s.feet) {
		things := p.things(s)
		l := lean{side: over, there: worstHeld(over, own, things)}
		if l.centre, err = stability.Centre(with(own, things, l.there)...); err != nil {
			return nil, err
		}
		l.inside = length.FromMM(over.inside(l.centre.X.MM(), l.centre.Y.MM()))
		if l.angle, err = stability.Angle(l.inside, l.centre.Z); err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, nil
}

// worstLeans returns the worst side in each direction that has a word, in order round the base, and the worst of all.
func worstLeans(leans []lean) (told []int, worst int) {
	for i, l := range leans {
		if l.angle.Value < leans[worst].angle.Value {
			worst = i
		}
		k := slices.IndexFunc(told, func(k int) bool { return leans[k].towards() == l.towards() })
		switch {
		case k < 0:
			told = append(told, i)
		case l.angle.Value < leans[told[k]].angle.Value:
			told[k] = i
		}
	}
	return told, worst
}

// on returns a finding about one side of the base of what stands by itself.
func (p *Piece) on(check string, s standing, over side, place string) finding.Finding {
	f := finding.Finding{
		Check: check, Sense: finding.AtLeast, Place: place,
		Parts: tags(p.Parts.FootTags[over.feet[0]], p.Parts.FootTags[over.feet[1]]),
		View:  finding.View{From: over.view()},
	}
	if len(p.standing) > 1 {
		f.Place = p.place(s) + ", " + f.Place
	}
	if len(f.Parts) == 0 { // bare ends of pipe have no tag of their own
		f.Parts = p.tagsOf(s)
	}
	f.Assumed = append([]string{"each thing held may be there or not: the worst combination is shown", "the piece is rigid and does not slide"}, swung(over)...)
	return f
}

// tipOver tells one side of the base.
func (p *Piece) tipOver(s standing, l lean) finding.Finding {
	f := p.on("tip", s, l.side, l.towards()+", "+whatIsThere(p.things(s), l.there))
	f.Limit = figure.Of("least tilt", p.Shop.Settings.TipDegrees, figure.Deg, &tipLimit)
	f.Figure = l.angle
	f.Because = []figure.Figure{l.angle}
	f.Verdict = finding.Judge(l.angle.Value, f.Limit.Value, finding.AtLeast)
	f.View.Marks = []finding.Mark{markOf(l.centre)}
	if f.Verdict != finding.Stands {
		f.Caution = "A tall piece can fall on a person: lock the wheels if it has any, keep heavy things low, or anchor it to a wall."
	}
	if f.Verdict == finding.Fails {
		own, _ := p.own(s) // weighed before
		f.Mend = p.tipMend(s, l.side, own)
	}
	return f
}

func markOf(centre stability.Mass) finding.Mark {
	return finding.Mark{At: [3]float64{centre.X.MM(), centre.Y.MM(), centre.Z.MM()}, Text: "centre of gravity"}
}

// warnTall warns of a piece that is high for its base, also where its tilt stands.
func (p *Piece) warnTall(s standing, leans []lean, f *finding.Finding) {
	high, deep := p.top(s), leastDepth(leans)
	if !(deep > 0) || high.MM() <= tallest*deep {
		return
	}
	f.Because = append(f.Because, figure.Of("height over depth of the base", high.MM()/deep, figure.Ratio, &tallness,
		figure.InLength("height", high), figure.In("depth", deep, figure.MM)))
	f.Caution = fmt.Sprintf("It is %s times as high as its base is deep: anchor it to a wall", figure.Digits(high.MM()/deep, 2))
	if rolls(p.Feet[leans[0].feet[0]].Spec.Kind) {
		f.Caution += ", or lock its wheels where it stands"
	}
	f.Caution += ", keep heavy things low, and let no child climb or hang on it."
}

// view names the side from which the piece is seen to go over.
func (s side) view() string {
	if strings.HasSuffix(s.towards(), "left") || strings.HasSuffix(s.towards(), "right") {
		return "front"
	}
	return "side"
}

// swung says in words where the floor is touched.
func swung(s side) []string {
	switch {
	case s.in > 0:
		return []string{"both casters on that side swung inward"}
	case s.in < 0:
		return []string{"it goes over on the rims of the flanges it stands on"}
	}
	return nil
}

// with returns the piece itself and those of the things that are there.
func with(own stability.Mass, things []piece.Held, there []bool) []stability.Mass {
	out := []stability.Mass{own}
	for i, h := range things {
		if there[i] {
			out = append(out, heldMass(h))
		}
	}
	return out
}

// whatIsThere tells a combination of held things in words.
func whatIsThere(things []piece.Held, there []bool) string {
	here, all, order := map[string]int{}, map[string]int{}, []string{}
	total := 0
	for i, h := range things {
		all[h.Spec.Name]++
		if !there[i] {
			continue
		}
		if here[h.Spec.Name] == 0 {
			order = append(order, h.Spec.Name)
		}
		here[h.Spec.Name]++
		total++
	}
	switch {
	case total == 0:
		return "empty"
	case total == len(things):
		return "with everything it holds"
	}
	for i, name := range order {
		switch n := here[name]; {
		case n < all[name]:
			order[i] = fmt.Sprintf("%d of %d %s", n, all[name], name)
		case n > 1:
			order[i] = fmt.Sprintf("%d %s", n, name)
		}
	}
	return "with " + strings.Join(order, " and ") + " alone on it"
}
