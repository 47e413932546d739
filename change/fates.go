package change

import (
	"cmp"
	"slices"

	"rodwright/build"
	"rodwright/fate"
	"rodwright/journal"
)

// fates tells what becomes of every thing, in the order they were told of.
func (w *Weighed) fates(now *Truth, a fate.Assignment, costs *fate.Cost) {
	w.Fates = []Fate{}
	was, is := settledBy(now.Build), settledBy(w.After.Build)
	for i := range costs.Things {
		t := &costs.Things[i]
		k := slices.IndexFunc(a.Choices, func(c fate.Choice) bool { return c.Thing == t })
		f := fateOf(*t, is[t.ID])
		before, there := was[t.ID]
		f.Unchanged = f.To == f.From && (f.To == "" || there && before.Need != nil && before.Way.Words == is[t.ID].Way.Words)
		f.Others = others(i, a.Choices[k], costs)
		w.Fates = append(w.Fates, f)
	}
}

// fateOf says what becomes of a thing as it is settled afterwards.
func fateOf(t journal.Thing, s fate.Settled) Fate {
	f := Fate{
		Thing: t.ID, Label: t.Label, State: t.State.String(), From: t.Place, Kind: string(s.Way.Kind), Words: s.Way.Words,
		Off: []OffMM{}, Tools: []string{}, Shows: nonNil(s.Way.Shows), HandsH: six(s.Way.HandsH), Cents: int64(s.Way.Cents),
	}
	for _, o := range s.Way.Off {
		f.Off = append(f.Off, OffMM{o.Side, mm(o.Much)})
	}
	for _, j := range s.Way.Jobs {
		if j.Tool != "" && !slices.Contains(f.Tools, j.Tool) {
			f.Tools = append(f.Tools, j.Tool)
		}
	}
	if s.Need == nil {
		f.Words = cmp.Or(s.Why, "put it on the rack")
		return f
	}
	f.To, f.Tag = s.Need.Place, s.Need.Tag
	if f.To != f.From {
		f.Kind, f.Words = "another part", becomes(f.To, s.Way)
	}
	return f
}

// settledBy tells by its id how each thing is settled.
func settledBy(b *build.Build) map[string]fate.Settled {
	out := map[string]fate.Settled{}
	if b.Under != nil {
		for _, s := range b.Under.Settled {
			out[s.Thing.ID] = s
		}
	}
	return out
}

func becomes(place string, way fate.Way) string {
	if way.Kind == fate.AsIs {
		return "it becomes " + place + " as it is"
	}
	return "it becomes " + place + ": " + way.Words
}

// runnersUp is how many other fates of a part are told.
const runnersUp = 3

// others lists what else could become of a thing, by what it costs more than what was chosen, everything else as it is.
func others(i int, c fate.Choice, costs *fate.Cost) []Another {
	var out []Another
	chosen := costs.Rack[i]
	if c.Need != nil {
		chosen = int64(c.Cents)
		freed := int64(0)
		for j := range costs.Needs {
			if costs.Needs[j].Tag == c.Need.Tag {
				freed = costs.Make[j]
			}
		}
		out = append(out, Another{string(fate.Rack), "", "put it on the rack and make " + c.Need.Place + " again", costs.Rack[i] + freed - chosen})
		for _, way := range c.Ways[1:] {
			out = append(out, Another{string(way.Kind), c.Need.Place, way.Words, int64(way.Cents - c.Way.Cents)})
		}
	}
	if c.Need == nil {
		for j, need := range costs.Needs {
			if costs.Serve[i][j] < fate.Never {
				way := costs.Ways[i][j][0]
				out = append(out, Another{string(way.Kind), need.Place, becomes(need.Place, way), costs.Serve[i][j] - chosen - costs.Make[j]})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Another) int { return cmp.Compare(a.Cents, b.Cents) })
	return nonNil(out[:min(len(out), runnersUp)])
}
