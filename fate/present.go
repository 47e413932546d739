package fate

import (
	"fmt"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/steps"
)

// Needs lists every panel and pipe of a plan by itself, panels first, each with its place.
func Needs(r *piece.Resolved, list *part.List) []Need {
	var out []Need
	for i := range list.Parts {
		p := &list.Parts[i]
		for k, tag := range p.Tags {
			switch p.Kind {
			case part.Panel:
				out = append(out, Need{p, tag, r.Panels[p.Indexes[k]].Name})
			case part.Pipe:
				out = append(out, Need{p, tag, r.Sticks[p.Indexes[k]].Name})
			}
		}
	}
	return out
}

// Settled is a thing of a piece under way and what is still to be done to it.
type Settled struct {
	Thing journal.Thing
	Need  *Need  // nil: it serves none
	Way   Way    // to make the need out of it; Rack where it serves none
	Why   string // it serves none, though it is meant for a place
}

// Settle finds for every thing the place that it is for. A thing that can't be made into what its place needs serves
// none; of several for one place the one told of last does.
func Settle(rec *journal.Record, needs []Need, s *shop.Shop, fine length.Fineness) []Settled {
	if rec == nil {
		return nil
	}
	at := map[string]int{}
	for i, n := range needs {
		at[n.Place] = i
	}
	last := map[string]int64{}
	for _, t := range rec.Things {
		if t.Live() && t.Place != "" {
			last[t.Place] = max(last[t.Place], t.Since)
		}
	}
	out := make([]Settled, 0, len(rec.Things))
	for _, t := range rec.Things {
		st := Settled{Thing: t, Way: Way{Kind: Rack, Words: "on the rack"}}
		i, there := at[t.Place]
		switch {
		case !t.Live():
			st.Way.Words = "spoiled: " + t.Spoiled
		case t.Place == "":
		case !there:
			st.Why = fmt.Sprintf("the plan has no %s", t.Place)
		case t.Since < last[t.Place]:
			st.Why = fmt.Sprintf("another part is for %s", t.Place)
		default:
			ways, why := Ways(t, needs[i], s, fine)
			if len(ways) == 0 {
				st.Why = why
				break
			}
			st.Need, st.Way = &needs[i], ways[0]
		}
		out = append(out, st)
	}
	return out
}

// State is how far the thing has come as a part of the plan: one that must be put right first comes out of the piece.
func (s Settled) State() journal.State {
	if s.Way.Kind != AsIs {
		return min(s.Thing.State, journal.Coated)
	}
	return s.Thing.State
}

// Alike groups the things that are put right by the same work, in the order of the first of each group.
func Alike(settled []Settled) [][]Settled {
	var out [][]Settled
	at := map[string]int{}
	for _, s := range settled {
		if s.Need == nil || len(s.Way.Jobs) == 0 {
			continue
		}
		key := fmt.Sprint(s.Need.Part.Kind, s.Need.Part.Material, s.Way.Words)
		for _, j := range s.Way.Jobs {
			key += fmt.Sprint("; ", j.Work, j.form, j.Units)
		}
		i, ok := at[key]
		if !ok {
			i, at[key] = len(out), len(out)
			out = append(out, nil)
		}
		out[i] = append(out[i], s)
	}
	return out
}

// Redo is what the steps of a piece must do to put its things right. Things that are put right alike share a step.
func Redo(settled []Settled) []steps.Redo {
	var out []steps.Redo
	for _, group := range Alike(settled) {
		var tags, labels []string
		for _, s := range group {
			tags, labels = append(tags, s.Need.Tag), append(labels, s.Thing.Label)
		}
		for _, j := range group[0].Way.Jobs {
			out = append(out, steps.Redo{
				Parts: tags, Work: j.Work, Title: j.Titled(labels),
				Units: j.Units * float64(len(group)), Settings: j.Settings,
			})
		}
	}
	return out
}

// Facts are what was measured of the frame, and the parts that were made to another size than drawn and are used so.
func Facts(rec *journal.Record, settled []Settled) piece.Facts {
	var f piece.Facts
	if rec == nil {
		return f
	}
	for _, d := range rec.Distances {
		f.Distances = append(f.Distances, piece.Distance{
			From: d.From, To: d.To, Value: length.Length(d.Value), Over: piece.Over(d.Over), Number: d.Number, Drawn: length.Length(d.Drawn),
		})
	}
	for _, s := range settled {
		if s.Need == nil || s.Way.Kind != AsIs || s.Thing.State < journal.Sized && s.Need.Part.Kind == part.Panel {
			continue
		}
		has := s.Thing.Shape.Size
		switch p := s.Need.Part; p.Kind {
		case part.Panel:
			size := [3]length.Length{length.Length(has[0]), length.Length(has[1]), length.Length(has[2])}
			if size != p.Finished {
				f.Panels = append(f.Panels, piece.MadePanel{Name: s.Need.Place, Size: size})
			}
		case part.Pipe:
			if more := length.Length(has[0]) - p.Cut; more != 0 {
				f.Pipes = append(f.Pipes, piece.MadePipe{Name: s.Need.Place, Longer: more})
			}
		}
	}
	return f
}

// Extra is what a piece under way costs beyond one that is made right at first: what was made in vain, and what puts
// parts right.
type Extra struct {
	Material shop.Cents
	HandsH   float64
	Unknown  []string
	Lost     []string // what was made in vain, in words
}

// Extras adds up what things that serve no more have cost, what was spent on putting parts right, and what is still to
// be. A thing on the rack is worth the shop's salvage share of its material.
func Extras(rec *journal.Record, settled []Settled, s *shop.Shop) (e Extra) {
	b := bench{s: s}
	for _, g := range rec.Goods {
		if g.Lost > 0 {
			e.Material += b.lost(g, &e.Unknown)
			e.Lost = append(e.Lost, g.Tag)
		}
	}
	for _, st := range settled {
		e.HandsH += st.Thing.AgainH
		if st.Need != nil {
			for _, g := range st.Way.Goods {
				e.Material += b.price(g.Item, g.Count, g.Unit, &e.Unknown)
			}
			continue
		}
		e.HandsH += st.Thing.HandsH - st.Thing.AgainH
		whole := thingMaterial(st.Thing, s, &e.Unknown)
		e.Material += whole
		if st.Thing.Live() {
			e.Material -= ThingWorth(st.Thing, s)
		}
		e.Lost = append(e.Lost, st.Thing.Label)
	}
	for _, group := range Alike(settled) {
		for _, j := range group[0].Way.Jobs {
			e.HandsH += j.SetUpH + float64(len(group))*(j.HandsH-j.SetUpH)
		}
	}
	return e
}
