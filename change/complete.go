package change

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"rodwright/fate"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

// FactError says what of a fact the plan does not know, and what would be right.
type FactError struct{ Message, Want string }

// Error says both.
func (e *FactError) Error() string {
	if e.Want == "" {
		return e.Message
	}
	return e.Message + "; " + e.Want
}

// Complete fills in what a maker does not say of a fact because the plan knows it: which thing a tag means, what it is
// for, and what it is like after the work. A size that was not measured is the one drawn. The error is a *FactError.
func (t *Truth) Complete(h journal.Happened) (journal.Happened, error) {
	switch h.What {
	case journal.Made, journal.Wrong, journal.Spoiled, journal.Meant:
		return t.completeThing(h)
	case journal.Measured:
		return t.completeDistance(h)
	case journal.Pushed:
		return h, t.knowsPanel(h.Push)
	case journal.Bought:
		return h, t.newTag(h.Goods)
	}
	return h, nil
}

// newTag refuses a tag that is on other stock of the piece already.
func (t *Truth) newTag(g *journal.Goods) error {
	if g == nil || g.Tag == "" {
		return nil
	}
	for _, have := range t.Record.Goods {
		if have.Tag == g.Tag {
			return &FactError{fmt.Sprintf("%s is the tag of other stock already", g.Tag), "write another on it"}
		}
	}
	return nil
}

// knows refuses a distance between things that the piece does not have.
func (t *Truth) knows(d *journal.Distance) error {
	if d == nil {
		return nil
	}
	names := t.names()
	for _, name := range []string{d.From, d.To} {
		if !slices.Contains(names, name) {
			return &FactError{fmt.Sprintf("the piece has no %q", name), "it has " + strings.Join(names, ", ")}
		}
	}
	return nil
}

// knowsPanel refuses a push on a panel that the piece does not have.
func (t *Truth) knowsPanel(p *journal.Push) error {
	if p == nil {
		return nil
	}
	var names []string
	for _, panel := range t.Build.Resolved.Panels {
		names = append(names, panel.Name)
	}
	if slices.Contains(names, p.On) {
		return nil
	}
	return &FactError{fmt.Sprintf("the piece has no panel %q", p.On), "its panels are " + strings.Join(names, ", ")}
}

// completeDistance notes what is drawn where a distance was measured: it holds until the design moves there.
func (t *Truth) completeDistance(h journal.Happened) (journal.Happened, error) {
	if err := t.knows(h.Distance); err != nil || h.Distance == nil {
		return h, err
	}
	tried, err := t.then(facts([]journal.Happened{h}))
	var wrong *piece.Error
	if errors.As(err, &wrong) {
		return h, &FactError{"with this distance the piece can't be set out: " + wrong.Message, "measure again; if it is right, change the design first, so that it can stand like this"}
	}
	if err != nil {
		return h, err
	}
	d := *h.Distance
	if standing := tried.Build.Resolved.Standing; standing != nil { // nil where it tells of no distance at all
		for _, s := range standing.Distances {
			if s.Number == tried.Number {
				d.Drawn = journal.MM(s.Drawn)
			}
		}
	}
	h.Distance = &d
	return h, nil
}

// names are the things between which a distance can be taken.
func (t *Truth) names() []string {
	out := []string{"floor"}
	r := t.Build.Resolved
	for _, p := range r.Panels {
		out = append(out, p.Name)
	}
	for _, s := range r.Sticks {
		name := s.Name
		if i := strings.LastIndexByte(name, ' '); i > 0 && strings.Trim(name[i+1:], "0123456789") == "" {
			name = name[:i]
		}
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

func (t *Truth) completeThing(h journal.Happened) (journal.Happened, error) {
	if g, ok := t.stock(h.Part); ok && h.What == journal.Wrong && h.Thing == "" {
		return completeLost(h, g)
	}
	thing, need, err := t.find(h)
	if err != nil {
		return h, err
	}
	if thing != nil {
		h.Thing = thing.ID
	}
	if need != nil && h.What != journal.Meant {
		h.Part, h.Place = need.Tag, need.Place
	}
	switch h.What {
	case journal.Made:
		return t.completeMade(h, thing, need)
	case journal.Wrong:
		return t.completeWrong(h, thing, need)
	case journal.Meant:
		return t.completeMeant(h, thing)
	case journal.Spoiled:
		if thing == nil {
			return h, &FactError{h.Part + " is not made yet, so that it can't be spoiled", "say first what was made: made " + h.Part + " …"}
		}
	}
	return h, nil
}

// find returns the thing and the need that a fact is about: by the thing's id, else by the tag of the plan, else by the
// tag that is written on a thing.
func (t *Truth) find(h journal.Happened) (*journal.Thing, *fate.Need, error) {
	needs := t.needs()
	if h.Thing != "" {
		thing, ok := t.Record.Thing(h.Thing)
		if !ok {
			return nil, nil, &FactError{"nothing made has the id " + h.Thing, ""}
		}
		return &thing, needAt(needs, thing.Place), nil
	}
	for i := range needs {
		if n := &needs[i]; n.Tag == h.Part || n.Part.Tag == h.Part && n.Part.Count == 1 || h.What != journal.Meant && h.Place != "" && n.Place == h.Place {
			return t.thingAt(n.Place), n, nil
		}
	}
	for i := range t.Record.Things {
		if th := &t.Record.Things[i]; th.Label == h.Part && th.Live() {
			return th, needAt(needs, th.Place), nil
		}
	}
	var tags []string
	for _, n := range needs {
		tags = append(tags, n.Tag)
	}
	return nil, nil, &FactError{fmt.Sprintf("the plan has no part %q", h.Part), "its panels and pipes are " + strings.Join(tags, ", ")}
}

func (t *Truth) needs() []fate.Need {
	if t.Build.Under != nil {
		return t.Build.Under.Needs
	}
	return fate.Needs(t.Build.Resolved, t.Build.Parts)
}

func needAt(needs []fate.Need, place string) *fate.Need {
	for i := range needs {
		if needs[i].Place == place {
			return &needs[i]
		}
	}
	return nil
}

// thingAt returns the thing that serves at a place, or is meant for it.
func (t *Truth) thingAt(place string) *journal.Thing {
	var last *journal.Thing
	for i := range t.Record.Things {
		if th := &t.Record.Things[i]; th.Live() && th.Place == place && (last == nil || th.Since >= last.Since) {
			last = th
		}
	}
	return last
}

func (t *Truth) completeMade(h journal.Happened, thing *journal.Thing, need *fate.Need) (journal.Happened, error) {
	to, ok := journal.AfterWork(h.Work)
	if !ok {
		return h, &FactError{fmt.Sprintf("%q is no work that is done to parts", h.Work), "it is one of " + strings.Join(journal.Works(), ", ")}
	}
	if need == nil {
		return h, &FactError{h.Part + " is on the rack", "say what it is for: meant"}
	}
	works := []string{h.Work}
	state := to
	if thing != nil {
		state, works = max(to, thing.State), append(slices.Clone(thing.Works), h.Work)
	}
	if thing != nil && !h.Again {
		h.Again = t.putsRight(thing.ID) && thing.State >= to
	}
	measured := h.Shape
	shape := fate.Drawn(need.Part, state, works)
	if thing != nil && !h.Again && to != journal.Sized && thing.State >= journal.Sized {
		shape.Size, shape.Drawn, shape.Measured = thing.Shape.Size, thing.Shape.Drawn, thing.Shape.Measured
		shape.Openings, shape.Profiles = kept(thing.Shape, shape)
	}
	h.Shape = measure(shape, measured, need.Part)
	if h.HandsH == 0 {
		h.PlanH = t.hoursOf(h, need)
	}
	if thing == nil {
		h.Part = t.label(h.Part)
	}
	return h, nil
}

// label returns the tag to write on a part that is first told of: that of the plan, with a letter behind it where another
// part of the piece has it on already.
func (t *Truth) label(tag string) string {
	label := tag
	for letter := 'b'; slices.ContainsFunc(t.Record.Things, func(th journal.Thing) bool { return th.Label == label }) && letter <= 'z'; letter++ {
		label = tag + string(letter)
	}
	return label
}

// kept are the openings and profiles of a thing that is worked on further: those it has, and those the work adds.
func kept(had, drawn journal.Shape) ([]journal.Opening, []journal.Profile) {
	openings, profiles := slices.Clone(had.Openings), slices.Clone(had.Profiles)
	for _, o := range drawn.Openings {
		if !slices.Contains(openings, o) {
			openings = append(openings, o)
		}
	}
	for _, p := range drawn.Profiles {
		if !slices.Contains(profiles, p) {
			profiles = append(profiles, p)
		}
	}
	return openings, profiles
}

// measure puts a measured size in place of the drawn one, as far as it was measured.
func measure(drawn journal.Shape, measured *journal.Shape, p *part.Part) *journal.Shape {
	if measured == nil {
		return &drawn
	}
	for k, v := range measured.Size {
		if v > 0 {
			drawn.Size[k], drawn.Measured = v, true
		}
	}
	drawn.Openings = append(drawn.Openings, measured.Openings...)
	return &drawn
}

// putsRight reports whether a thing is still to be put right.
func (t *Truth) putsRight(id string) bool {
	if t.Build.Under == nil {
		return false
	}
	return slices.ContainsFunc(t.Build.Under.Settled, func(s fate.Settled) bool {
		return s.Thing.ID == id && s.Need != nil && s.Way.Kind != fate.AsIs
	})
}

// hoursOf is what the plan gives to a part for the work, where the maker did not say: of work that puts it right, all
// that is still to be done to it.
func (t *Truth) hoursOf(h journal.Happened, need *fate.Need) float64 {
	if h.Again {
		for _, s := range t.Build.Under.Settled {
			if s.Thing.ID == h.Thing {
				return s.Way.HandsH
			}
		}
	}
	work := t.Build.Work
	if t.Build.Under != nil {
		work = t.Build.Under.Whole
	}
	done := journal.Planned
	if th := t.thingAt(need.Place); th != nil {
		done = th.State
	}
	return fate.PartHours(work).Between(need.Tag, done, h.Work)
}

// completeWrong tells what a part is like that something went wrong with: short of what was drawn, or with an opening
// where none should be.
func (t *Truth) completeWrong(h journal.Happened, thing *journal.Thing, need *fate.Need) (journal.Happened, error) {
	if thing == nil {
		return h, &FactError{h.Part + " is not made yet, so that nothing can have gone wrong with it", "say first what was made: made " + h.Part + " …"}
	}
	shape := thing.Shape
	shape.Openings = slices.Clone(shape.Openings)
	if h.Shape != nil {
		for k, v := range h.Shape.Size {
			switch {
			case v > 0:
				shape.Size[k], shape.Measured, shape.Drawn = v, true, [3]journal.MM{}
			case v < 0: // short by
				shape.Size[k] += v
				shape.Measured, shape.Drawn = true, [3]journal.MM{}
			}
		}
		shape.Openings = append(shape.Openings, h.Shape.Openings...)
		h.Why = t.wrongHoles(h.Shape.Openings) + h.Why
	}
	if shape.Size[0] <= 0 || shape.Kind == journal.KindPanel && (shape.Size[1] <= 0 || shape.Size[2] <= 0) {
		return h, &FactError{"nothing of " + h.Part + " would be left", "say by how much it is short, or spoiled"}
	}
	h.Shape, h.Place = &shape, thing.Place
	if h.Place == "" && need != nil {
		h.Place = need.Place
	}
	return h, nil
}

// wrongHoles says which holes should not be there, as the shape tells them among all.
func (t *Truth) wrongHoles(openings []journal.Opening) (said string) {
	fine := t.Build.Doc.Fineness.Finer()
	for _, o := range openings {
		half := length.Length(o.Size[0]).Half()
		said += fmt.Sprintf("hole %s at %s × %s, ", fine.Text(length.Length(o.Size[0])), fine.Number(length.Length(o.At[0])+half), fine.Text(length.Length(o.At[1])+half))
	}
	return said
}

// completeMeant refuses a thing or a place that is not there.
func (t *Truth) completeMeant(h journal.Happened, thing *journal.Thing) (journal.Happened, error) {
	if thing == nil {
		return h, &FactError{h.Part + " is not made yet", "say first what was made: made " + h.Part + " …"}
	}
	if h.Place != "" && needAt(t.needs(), h.Place) == nil {
		var places []string
		for _, n := range t.needs() {
			places = append(places, n.Place)
		}
		return h, &FactError{fmt.Sprintf("the plan has no place %q", h.Place), "its places are " + strings.Join(places, ", ") + ", or the rack"}
	}
	return h, nil
}

// stock returns the board, stick or sheet with a tag.
func (t *Truth) stock(tag string) (journal.Piece, bool) {
	for _, g := range t.Record.Goods {
		if g.Tag == tag && tag != "" && g.Kind != journal.ItemGoods {
			return g, true
		}
	}
	return journal.Piece{}, false
}

// completeLost tells how much of the length of stock can't be used any more: what it is short by, or what of its measured
// length is gone.
func completeLost(h journal.Happened, g journal.Piece) (journal.Happened, error) {
	out := journal.Happened{What: journal.Wrong, From: g.Tag, Why: h.Why}
	if h.Shape != nil {
		switch long := h.Shape.Size[0]; {
		case long < 0:
			out.Took = -long
		case long > 0:
			out.Took = g.Left - long
		}
	}
	if out.Took <= 0 || out.Took > g.Left {
		return h, &FactError{fmt.Sprintf("how much of %s is lost is not told, or is more than there is", g.Tag), "write wrong " + g.Tag + " short 12 in: and why, or its length now"}
	}
	return out, nil
}
