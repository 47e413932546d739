package change

import (
	"slices"

	"rodwright/build"
	"rodwright/fate"
	"rodwright/journal"
)

// choose gives the things that are made to the needs of the plan and derives what follows; where the plan has the
// same parts as before every thing stays where it is.
func (w *Weighed) choose(now *Truth, plan *build.Build) (chosen fate.Assignment, costs *fate.Cost, err error) {
	if same, err := sameParts(now, plan); err != nil || same {
		return w.stay(now, plan, err)
	}
	return w.give(now, plan)
}

// give gives the things to the needs of the plan and derives what follows. Where a part that was made to another size
// than drawn moves the frame, the needs move with it: they are taken from what follows then, and the things given to
// them once more. One that does not serve in the end goes to the rack.
func (w *Weighed) give(now *Truth, plan *build.Build) (chosen fate.Assignment, costs *fate.Cost, err error) {
	for range rounds {
		chosen, costs = assign(now, plan)
		w.Meant = meant(now, chosen, nil)
		if w.After, err = now.then(append(puts(w.Edits), facts(w.Meant)...)); err != nil {
			return chosen, costs, err
		}
		useless := unsettled(chosen, w.After.Build)
		if len(useless) == 0 {
			return chosen, costs, nil
		}
		plan = w.After.Build
	}
	w.Meant = meant(now, chosen, unsettled(chosen, w.After.Build))
	w.After, err = now.then(append(puts(w.Edits), facts(w.Meant)...))
	return chosen, costs, err
}

// sameParts reports whether a plan has the parts of the piece as it is drawn now, and all that is made serves: then
// nothing is given another place.
func sameParts(now *Truth, plan *build.Build) (bool, error) {
	if now.Build.Under != nil {
		for _, s := range now.Build.Under.Settled {
			if s.Thing.Live() && s.Thing.Place != "" && s.Need == nil {
				return false, nil
			}
		}
	}
	out, err := now.Log.setOut(now.Text, frameOnly(now.Record))
	if err != nil || moved(out.Resolved, plan.Resolved) || !slices.Equal(openings(out), openings(plan)) {
		return false, err
	}
	drawn, err := now.Log.derive(now.Text, frameOnly(now.Record)) // which pipes are bought is told by their layouts
	return err == nil && slices.Equal(partLines(drawn), partLines(plan)), err
}

// openings lists what is cut in the panels of a build.
func openings(b *build.Build) (out []string) {
	for i := range b.Parts.Parts {
		out = append(out, panelLines(&b.Parts.Parts[i])...)
	}
	return out
}

// stay leaves every thing where it is.
func (w *Weighed) stay(now *Truth, plan *build.Build, err error) (fate.Assignment, *fate.Cost, error) {
	if err != nil {
		return fate.Assignment{}, nil, err
	}
	_, costs := assign(now, plan)
	w.After, err = now.then(puts(w.Edits))
	return costs.Stay(), costs, err
}

// rounds is how often things are given to needs before those that do not serve go to the rack.
const rounds = 3

// unsettled tells by its id each thing that was given a place and does not serve there.
func unsettled(a fate.Assignment, after *build.Build) map[string]bool {
	is, out := settledBy(after), map[string]bool{}
	for _, c := range a.Choices {
		if c.Thing != nil && c.Need != nil && is[c.Thing.ID].Need == nil {
			out[c.Thing.ID] = true
		}
	}
	return out
}

// frameOnly is what a plan in which nothing is made depends on of a record: what was measured of the frame, and how it moved when it was pushed.
func frameOnly(rec *journal.Record) *journal.Record {
	if rec == nil {
		return nil
	}
	return &journal.Record{Distances: rec.Distances, Pushes: rec.Pushes}
}

// assign gives the things that are made to the needs of a plan.
func assign(now *Truth, plan *build.Build) (fate.Assignment, *fate.Cost) {
	var live []journal.Thing
	for _, t := range now.Record.Things {
		if t.Live() {
			live = append(live, t)
		}
	}
	work := plan.Work
	if plan.Under != nil {
		work = plan.Under.Whole
	}
	costs := fate.Costs(live, fate.Needs(plan.Resolved, plan.Parts), work, now.Log.Shop, plan.Doc.Fineness)
	return costs.Assign(), costs
}

// meant is what is to be written of the things whose place changes; those that are useless go to the rack.
func meant(now *Truth, a fate.Assignment, useless map[string]bool) (out []journal.Happened) {
	for _, c := range a.Choices {
		switch {
		case c.Thing == nil:
		case (c.Need == nil || useless[c.Thing.ID]) && c.Thing.Place != "":
			out = append(out, journal.Happened{What: journal.Meant, Thing: c.Thing.ID, Part: c.Thing.Label})
		case c.Need != nil && !useless[c.Thing.ID] && c.Thing.Place != c.Need.Place:
			out = append(out, journal.Happened{What: journal.Meant, Thing: c.Thing.ID, Part: c.Thing.Label, Place: c.Need.Place})
		}
	}
	return out
}
