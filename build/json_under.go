package build

import "rodwright/fate"

// underJSON is what has become of a piece under way, in the JSON of a build.
type underJSON struct {
	Made      []madeJSON `json:"made"`
	DoneH     rounded    `json:"done_h"`  // hours with hands spent so far
	ExtraH    rounded    `json:"extra_h"` // hours that a piece made right at first does not take, spent and to come
	Lost      []string   `json:"lost"`    // labels of what was made in vain
	Finished  bool       `json:"finished"`
	Delivered bool       `json:"delivered"`
}

type madeJSON struct {
	Label    string `json:"label"` // the tag that is written on it
	Tag      string `json:"tag,omitempty"`
	Place    string `json:"place"`
	State    string `json:"state"`
	Size     []mm   `json:"size_mm"`
	Measured bool   `json:"measured"`
	ToDo     string `json:"to_do,omitempty"` // what puts it right
	Why      string `json:"why,omitempty"`   // it serves none
	Spoiled  string `json:"spoiled,omitempty"`
}

func underOf(u *Underway) *underJSON {
	if u == nil {
		return nil
	}
	out := &underJSON{
		Made: []madeJSON{}, DoneH: rounded(u.DoneH), ExtraH: rounded(u.Extra.HandsH), Lost: nonNil(u.Extra.Lost),
		Finished: u.Record.Finished, Delivered: u.Record.Delivered,
	}
	for _, s := range u.Settled {
		m := madeJSON{
			Label: s.Thing.Label, Place: s.Thing.Place, State: s.Thing.State.String(), Size: s.Thing.Shape.Size[:], Measured: s.Thing.Shape.Measured,
			Why: s.Why, Spoiled: s.Thing.Spoiled,
		}
		if s.Need != nil {
			m.Tag = s.Need.Tag
			if s.Way.Kind != fate.AsIs {
				m.ToDo = s.Way.Words
			}
		}
		out.Made = append(out.Made, m)
	}
	return out
}
