package steps

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/trade/pipe"
	"rodwright/trade/screw"
	"rodwright/trade/wood"
)

// caps drills the caps that casters' stems go through and fixes the stems in them, while a spanner still
// reaches the nut. It returns the last step.
func (p *planner) caps(after int) int {
	var caps, feet []string
	for i, f := range p.r.Feet {
		if f.Node < 0 || p.r.Nodes[f.Node].Kind != pipe.Cap || f.Spec == nil || !strings.Contains(f.Spec.Fixed, "cap") {
			continue
		}
		caps = append(caps, p.list.NodeTags[f.Node])
		feet = append(feet, p.footTags(i)...)
	}
	if len(caps) == 0 {
		return after
	}
	drilled := p.do(job{
		work: "drill-cap", parts: caps, units: float64(len(caps)), after: before(after),
		title:    fmt.Sprintf("Drill %s for the stems of the %s, in the middle and square", several(len(caps), "cap"), strings.TrimPrefix(several(2, p.footNoun()), "2 ")),
		measures: []string{"centre-punch first; small bit, then the stem's size"},
	})
	return p.do(job{
		work: "foot", parts: once(append(caps, append(feet, p.named("lock nut")...)...)), units: float64(len(caps)), after: before(drilled),
		title: fmt.Sprintf("Fix %s in the caps, before the caps go on the pipe", several(len(caps), p.footNoun())),
	})
}

// footTags returns the tags of the casters or feet at index i of the resolved feet.
func (p *planner) footTags(i int) []string {
	for _, q := range p.list.Parts {
		if q.Kind != part.Hardware {
			continue
		}
		if n := slices.Index(q.Indexes, i); n >= 0 && n < len(q.Tags) {
			return []string{q.Tags[n]}
		}
	}
	return nil
}

// named returns the tags of all hardware whose name begins so.
func (p *planner) named(begins string) []string {
	return tags(p.of(func(q part.Part) bool { return q.Kind == part.Hardware && strings.HasPrefix(q.Name, begins) }))
}

// panels lays every panel and screws it down, the lowest first; flanges go to the wood last of all, so that
// the frame is not strained. It returns the last step.
func (p *planner) panels(after int) int {
	order := make([]int, len(p.r.Panels))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return int(min(max(p.r.Panels[a].Min.Z-p.r.Panels[b].Min.Z, -1), 1))
	})
	for _, i := range order {
		after = p.panel(i, after)
	}
	return after
}

// panel lays one panel, then screws down its straps and its flanges.
func (p *planner) panel(i, after int) int {
	after = p.lay(i, after)
	after = p.screwDown(i, after, "strap", func(f part.Fastener) bool { return f.Seat >= 0 })
	return p.screwDown(i, after, "flange", func(f part.Fastener) bool { return f.Node >= 0 })
}

// lay puts a panel in its place, unless it lies there already.
func (p *planner) lay(i, after int) int {
	if p.laid[i] {
		return after
	}
	flat, tag := p.r.Panels[i], p.list.PanelTags[i]
	var sits []string
	for _, s := range flat.Seats {
		sits = append(sits, string(s.Kind))
	}
	return p.do(job{
		work: "lay", parts: []string{tag}, units: 1, after: before(after, p.handled),
		title:    strings.TrimRight(fmt.Sprintf("Lay %s %s in its place, %s", flat.Name, tag, phrase(once(sits))), ", "),
		measures: append([]string{"the same gap round every post; nothing is forced"}, p.stains(i)...),
		cautions: p.heavy(p.panelMass(tag)),
	})
}

// stains warns where bare steel would blacken the wood of a panel.
func (p *planner) stains(panel int) []string {
	s, ok := p.speciesOf(panel)
	if !ok || !s.Tannin || len(p.r.Sticks) == 0 {
		return nil
	}
	return []string{"no bare steel on bare " + s.Name + ": with moisture it stains black; both are coated where they touch"}
}

// screwDown fastens one panel by the sets of screws that fit.
func (p *planner) screwDown(panel, after int, work string, fits func(part.Fastener) bool) int {
	var parts, lines []string
	n, screws := 0, 0
	for _, f := range p.list.Fasteners {
		if f.Panel != panel || !fits(f) {
			continue
		}
		n++
		screws += f.Count
		parts = append(parts, f.Holds, f.Screws)
		lines = append(lines, fmt.Sprintf("%s: %s%s", f.Holds, p.screwLine(f, panel), slotted(f)))
	}
	if n == 0 {
		return after
	}
	if work == "flange" {
		lines = append(lines, "turn no flange back to meet its holes: bore for it where it stands")
	}
	tag := p.list.PanelTags[panel]
	return p.do(job{
		work: work, parts: once(append([]string{tag}, parts...)), units: float64(n), after: before(after), measures: once(lines),
		title: fmt.Sprintf("Screw %s %s to its %s: %s", p.r.Panels[panel].Name, tag, several(n, work), several(screws, "screw")),
	})
}

func slotted(f part.Fastener) string {
	if f.Slotted {
		return ", in slots: snug, not tight, so that the wood can move"
	}
	return ""
}

// screwLine names the screws of a set with their pilot.
func (p *planner) screwLine(f part.Fastener, panel int) string {
	text := fmt.Sprintf("%d screws No. %d × %s", f.Count, f.Gauge, p.show(f.Length))
	sp, ok := p.speciesOf(panel)
	if !ok {
		return text
	}
	bore, err := screw.Pilot(f.Gauge, sp)
	if err != nil {
		return text
	}
	metric := p.r.Doc != nil && p.r.Doc.Unit == length.MM
	bit := screw.Bit(length.FromMM(bore.Pilot.Value), metric)
	fine := length.SixtyFourth
	if metric {
		fine = length.HalfMM
	}
	depth := f.Length - f.Grip
	return fmt.Sprintf("%s, pilot %s, %s deep and no deeper", text, fine.Text(bit), p.show(depth))
}

// speciesOf returns the wood of a panel; false for sheet goods.
func (p *planner) speciesOf(panel int) (wood.Species, bool) {
	for _, q := range p.list.Parts {
		if q.Kind == part.Panel && slices.Contains(q.Indexes, panel) && !q.Sheet {
			s, err := wood.Lookup(q.Material)
			return s, err == nil
		}
	}
	return wood.Species{}, false
}

// feet fixes casters and feet that are not in caps, with the piece upside down, and returns the step.
func (p *planner) feet(after int) int {
	var parts []string
	n := 0
	for i, f := range p.r.Feet {
		if f.Spec == nil || strings.Contains(f.Spec.Fixed, "cap") {
			continue
		}
		if own := p.footTags(i); len(own) > 0 {
			parts = append(parts, own...)
			n++
		}
	}
	var lines []string
	for _, f := range p.list.Fasteners {
		if f.Foot >= 0 {
			parts = append(parts, f.Screws)
			lines = append(lines, f.Holds+": "+p.screwLine(f, f.Panel))
		}
	}
	if n == 0 {
		return after
	}
	parts = append(parts, p.named("threaded insert")...)
	parts = append(parts, p.named("bolt")...)
	parts = append(parts, p.named("lock nut")...)
	return p.do(job{
		work: "foot", parts: once(parts), units: float64(n), after: before(after), measures: once(lines),
		title:    fmt.Sprintf("Turn the piece over and fix %s", several(n, p.footNoun())),
		cautions: p.heavy(p.list.Totals.MassKg),
	})
}

// footNoun says what the piece stands on: casters, or feet.
func (p *planner) footNoun() string {
	for _, f := range p.r.Feet {
		if f.Spec != nil && (f.Spec.Kind == piece.StemCaster || f.Spec.Kind == piece.PlateCaster) {
			return "caster"
		}
	}
	return "foot"
}

// level stands the piece on its feet and takes the rock out of it.
func (p *planner) level(after int) int {
	if len(p.r.Feet) < 3 {
		return after
	}
	lines := []string{"check the floor before you blame the piece"}
	if len(p.r.Feet) == 4 {
		lines = append(lines, "upside down, measure from panel to foot, a, b, c, d in order round it: it rocks by the difference of a + c and b + d; shorten one leg of the longer pair by that")
	}
	if pitch := p.pitch(); pitch > 0 {
		lines = append(lines, fmt.Sprintf("a whole turn of a foot's flange or cap on its pipe moves it by %s; casters under a panel are shimmed at their plates", p.fine.Show(pitch)))
	}
	var parts []string
	for i := range p.r.Feet {
		parts = append(parts, p.footTags(i)...)
		if n := p.r.Feet[i].Node; n >= 0 {
			parts = append(parts, p.list.NodeTags[n])
		}
	}
	return p.do(job{
		work: "level", parts: once(parts), units: float64(len(p.r.Feet)), after: before(after), measures: lines,
		title: fmt.Sprintf("Stand it on a level floor and take the rock out of its %d feet", len(p.r.Feet)), cautions: Cautions("foot"),
	})
}

// pitch is that of the pipe at the first foot; zero where no foot is on a pipe.
func (p *planner) pitch() length.Length {
	for _, f := range p.r.Feet {
		if f.Node >= 0 {
			return p.r.Nodes[f.Node].Size.Pitch
		}
	}
	return 0
}

// deliver takes the piece to its place.
func (p *planner) deliver(after ...int) int {
	var lines []string
	if len(p.doors()) > 0 {
		lines = append(lines, "through "+phrase(p.doors()))
	}
	lines = append(lines, "leave the user a note: how it is cleaned, what it carries, that wood moves and screws are looked at after a winter")
	return p.do(job{
		work: "deliver", units: 1, after: before(after...), measures: lines,
		title:    fmt.Sprintf("Take it to its place: %.0f kg, %s", p.list.Totals.MassKg, p.box()),
		cautions: append(p.heavy(p.list.Totals.MassKg), locks(p.r.Feet)...),
	})
}

func (p *planner) box() string {
	return p.plan([3]length.Length{p.r.Max.X - p.r.Min.X, p.r.Max.Y - p.r.Min.Y, p.r.Max.Z - p.r.Min.Z})
}

func (p *planner) doors() []string {
	if p.r.Doc == nil {
		return nil
	}
	var out []string
	for _, d := range p.r.Doc.Place.Doors {
		out = append(out, fmt.Sprintf("%s (%s × %s)", d.Name, p.fine.Number(d.Width), p.show(d.Height)))
	}
	return out
}

func locks(feet []piece.Foot) []string {
	for _, f := range feet {
		if f.Locked {
			return []string{"Lock the wheels before you let go of it."}
		}
	}
	return nil
}

// anchor screws the wall's flanges to the wall and returns the step.
func (p *planner) anchor(after int) int {
	var parts, lines []string
	n, screws := 0, 0
	for _, f := range p.list.Fasteners {
		if f.Panel >= 0 || f.Node < 0 {
			continue
		}
		n++
		screws += f.Count
		parts = append(parts, f.Holds, f.Screws)
		lines = append(lines, fmt.Sprintf("%s: %d screws No. %d × %s", f.Holds, f.Count, f.Gauge, p.show(f.Length)))
	}
	if n == 0 {
		return after
	}
	parts = append(parts, p.named("wall anchor")...)
	lines = append(lines, "into studs or masonry anchors that suit the wall, never into lining alone")
	return p.do(job{
		work: "anchor", parts: once(parts), units: float64(n), after: before(after), measures: lines,
		title: fmt.Sprintf("Screw %s to the wall, level: %s", several(n, "flange"), several(screws, "screw")),
	})
}
