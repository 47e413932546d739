package steps

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/cut"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/shop"
)

// stock returns the material a panel is cut from, as layouts name it: white-oak 5/4, birch-plywood-18.
func stock(q part.Part) string {
	if q.Sheet || q.Rough == "" {
		return q.Material
	}
	return shop.WoodItem(q.Material, q.Rough)
}

// boards plans the work from rough boards to glued blanks. It returns, by part tag, the step after which
// the blank of that panel is there.
func (p *planner) boards() map[string]int {
	ready := map[string]int{}
	wood := p.of(func(q part.Part) bool { return q.Kind == part.Panel && !q.Sheet })
	for _, q := range left(wood, journal.Sized) {
		if q.State(0) >= journal.BlankCut {
			ready[q.Tag] = p.glueUp(q, nil, p.bought)
		}
	}
	panels := left(wood, journal.BlankCut)
	if len(panels) == 0 {
		return ready
	}
	rest := p.do(job{
		work: "acclimatise", parts: tags(panels), units: float64(p.boardCount(panels)),
		title: "Stack the boards on stickers in the shop for one to two weeks; check their moisture" + p.moisture(),
		after: before(p.bought),
	})
	for _, material := range materials(panels) {
		p.mill(material, panels, rest, ready)
	}
	return ready
}

// moisture says the moisture the boards should have come to.
func (p *planner) moisture() string {
	if p.r.Air.BuildMC <= 0 {
		return ""
	}
	return fmt.Sprintf(" is near %g %%", p.r.Air.BuildMC)
}

// materials lists what the parts are cut from, in the order of the list.
func materials(qs []part.Part) []string {
	var out []string
	for _, q := range qs {
		out = append(out, stock(q))
	}
	return once(out)
}

// mill plans one material: crosscut, flatten, rip, joint, and a glue-up for each panel with joints.
func (p *planner) mill(material string, panels []part.Part, rest int, ready map[string]int) {
	mine := slices.DeleteFunc(slices.Clone(panels), func(q part.Part) bool { return stock(q) != material })
	a := p.answer(OfBoards, material)
	first, again := passes(a)
	crosscut := p.saw(material, mine, first, cut.Crosscut, rest)
	flat := p.do(job{
		work: "flatten", parts: tags(mine), units: blankM2(mine), after: before(crosscut),
		title:    "Flatten and plane the " + material + " boards to one thickness",
		measures: p.thicknesses(mine), cautions: p.shortParts(mine),
	})
	ripped := p.saw(material, mine, first, cut.Rip, flat)
	if again != nil {
		for _, m := range []cut.Machine{cut.Crosscut, cut.Rip} {
			ripped = p.saw("offcuts of "+material, mine, again, m, ripped)
		}
	}
	jointed := p.do(job{
		work: "joint", parts: tags(mine), units: float64(2 * p.strips(mine, a)), after: before(ripped),
		title: "Joint both edges of the " + material + " strips straight and square, " + p.show(p.s.Panel.Jointing) + " off each; lay them out with the growth rings turned about",
	})
	for _, q := range mine {
		ready[q.Tag] = p.glueUp(q, a, jointed)
	}
}

// passes divides the cuts of a layout: boards are crosscut and ripped, and then, where it says so, what falls off is
// crosscut and ripped again.
func passes(a *cut.Answer) (first, again *cut.Answer) {
	if a == nil {
		return nil, nil
	}
	ripped := false
	for i, c := range a.Cuts {
		if c.Machine == cut.Crosscut && ripped {
			one, two := *a, *a
			one.Cuts, two.Cuts = a.Cuts[:i], a.Cuts[i:]
			return &one, &two
		}
		ripped = ripped || c.Machine == cut.Rip
	}
	return a, nil
}

// answer returns the layout of a material; nil where there is none.
func (p *planner) answer(k Kind, material string) *cut.Answer {
	for _, l := range p.layouts {
		if l.Kind == k && l.Material == material {
			return l.Answer
		}
	}
	return nil
}

// boardCount is how many boards are opened for the panels; one for each panel where no layout says.
func (p *planner) boardCount(panels []part.Part) int {
	n := 0
	for _, m := range materials(panels) {
		if a := p.answer(OfBoards, m); a != nil {
			n += len(a.Used)
			continue
		}
		for _, q := range panels {
			if stock(q) == m {
				n += q.Count
			}
		}
	}
	return n
}

// strips counts the strips of the panels, from their layout or else from their glue lines.
func (p *planner) strips(panels []part.Part, a *cut.Answer) int {
	if a != nil && len(a.Panels) > 0 {
		n := 0
		for _, g := range a.Panels {
			n += len(g.Strips)
		}
		return n
	}
	n := 0
	for _, q := range panels {
		n += q.Count * (q.GlueLines + 1)
	}
	return n
}

// thicknesses says what each panel is planed to, with the allowance that flattening the glued panel takes.
func (p *planner) thicknesses(panels []part.Part) []string {
	var out []string
	for _, q := range panels {
		out = append(out, fmt.Sprintf("%s: to %s and what flattening the glued panel will take", titled(q), p.show(q.Finished[2])))
	}
	return out
}

// shortParts warns of parts that a machine does not hold.
func (p *planner) shortParts(panels []part.Part) []string {
	var short []string
	for _, q := range panels {
		if q.Blank[0] > 0 && q.Blank[0] < p.s.Panel.LeastMilled {
			short = append(short, q.Tags...)
		}
	}
	if len(short) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("%s would be shorter than %s: mill it long and cut it to length afterwards", phrase(short), p.show(p.s.Panel.LeastMilled))}
}

func blankM2(panels []part.Part) (m2 float64) {
	for _, q := range panels {
		m2 += float64(q.Count) * q.Blank[0].MM() * q.Blank[1].MM() / 1e6
	}
	return m2
}

// saw plans the cuts of one kind that the layout asks for, grouped by stop setting; without a layout, by
// the blanks' own sizes.
func (p *planner) saw(material string, panels []part.Part, a *cut.Answer, m cut.Machine, after int) int {
	work, verb := "crosscut", "Crosscut"
	if m == cut.Rip {
		work, verb = "rip", "Rip"
	}
	groups := p.settings(a, m)
	for _, g := range groups {
		for i, tag := range g.on {
			g.on[i] = boardName(a, tag)
		}
	}
	if a == nil {
		groups = blankSettings(panels, m)
	}
	cuts := 0
	for _, g := range groups {
		cuts += g.cuts
	}
	if cuts == 0 {
		return after
	}
	return p.do(job{
		work: work, parts: tags(panels), units: float64(cuts), settings: timesSet(groups), after: before(after),
		title:    fmt.Sprintf("%s the %s: %s at %s", verb, material, several(cuts, "cut"), several(timesSet(groups), "setting")),
		measures: p.settingLines(groups),
		fits:     func(t shop.Tool) bool { return deepEnough(t, panels) },
	})
}

// boardName is what the drawings and the list of cuts call the board with a tag of the stock.
func boardName(a *cut.Answer, tag string) string {
	i := slices.IndexFunc(a.Used, func(u cut.Used) bool { return u.Stock == tag })
	if i < 0 {
		return tag
	}
	return fmt.Sprintf("board %d", i+1)
}

// deepEnough reports whether a saw cuts through the thickest of the panels' blanks.
func deepEnough(t shop.Tool, panels []part.Part) bool {
	for _, q := range panels {
		if t.Depth > 0 && q.Blank[2] > t.Depth {
			return false
		}
	}
	return true
}

// group is the cuts of one stop setting.
type group struct {
	setting length.Length
	times   int // that it is set
	cuts    int
	makes   []string // tags, one for each piece; none where a rest is only cut off
	on      []string // tags of the stock
}

// settings groups the layout's cuts at one machine by stop setting, in the order in which they are first set. A stop is
// set again for what lies behind cuts at others.
func (p *planner) settings(a *cut.Answer, m cut.Machine) []group {
	if a == nil {
		return nil
	}
	var out []group
	last := -1
	for _, c := range a.Cuts {
		if c.Machine != m {
			continue
		}
		off := len(c.Makes) == 0 // a saw cut lies between such a setting and that of a part as long
		i := slices.IndexFunc(out, func(g group) bool { return g.setting == c.Setting && (len(g.makes) == 0) == off })
		if i < 0 {
			i = len(out)
			out = append(out, group{setting: c.Setting})
		}
		if i != last {
			last = i
			out[i].times++
		}
		out[i].cuts += max(len(c.Makes), 1)
		out[i].makes = append(out[i].makes, c.Makes...)
		out[i].on = append(out[i].on, c.On)
	}
	return out
}

// setOnce takes groups as set once each, the longest first: the parts of a stick can be cut in any order.
func setOnce(groups []group) []group {
	for i := range groups {
		groups[i].times = 1
	}
	sortGroups(groups)
	return groups
}

// timesSet counts the settings of groups.
func timesSet(groups []group) (n int) {
	for _, g := range groups {
		n += g.times
	}
	return n
}

func sortGroups(gs []group) {
	slices.SortStableFunc(gs, func(a, b group) int {
		switch {
		case a.setting > b.setting:
			return -1
		case a.setting < b.setting:
			return 1
		}
		return 0
	})
}

// blankSettings groups blanks by length for the crosscut, and their strips by width for the rip.
func blankSettings(panels []part.Part, m cut.Machine) []group {
	var out []group
	for _, q := range panels {
		setting := q.Blank[0]
		if m == cut.Rip {
			setting = q.Blank[1].Scale(1, int64(q.GlueLines+1))
		}
		i := slices.IndexFunc(out, func(g group) bool { return g.setting == setting })
		if i < 0 {
			i = len(out)
			out = append(out, group{setting: setting, times: 1})
		}
		for _, tag := range q.Tags {
			for range q.GlueLines + 1 {
				out[i].makes = append(out[i].makes, tag)
				out[i].cuts++
			}
		}
	}
	sortGroups(out)
	return out
}

// settingLines writes each stop setting once, with what it makes: 12 1/2 in × 4, set twice: C1.1, C1.2 …
func (p *planner) settingLines(groups []group) []string {
	var out []string
	for _, g := range groups {
		again := ""
		switch {
		case g.times == 2:
			again = ", set twice"
		case g.times > 2:
			again = fmt.Sprintf(", set %d times", g.times)
		}
		line := fmt.Sprintf("%s × %d%s: %s", p.show(g.setting), len(g.makes), again, strings.Join(once(g.makes), ", "))
		if len(g.makes) == 0 {
			line = fmt.Sprintf("%s%s: cut off, saw cut and all, not used", p.show(g.setting), again)
		}
		if on := once(g.on); len(on) > 0 {
			line += "; from " + strings.Join(on, "; ")
		}
		out = append(out, line)
	}
	return out
}
