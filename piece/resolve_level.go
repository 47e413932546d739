package piece

import (
	"slices"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// findLevels finds the height of every panel's top, and of every rail's and arm's axis, each as soon as
// what it follows from is known.
func (r *rod) findLevels() error {
	for {
		moved := false
		for i := range r.doc.Panels {
			if r.panelTop[i] != nil {
				continue
			}
			sources, err := r.topSources(&r.doc.Panels[i])
			if err != nil {
				return err
			}
			if len(sources) > 0 {
				r.panelTop[i], moved = &sources[0].level, true
			}
		}
		for i := range r.doc.Rails {
			level, err := r.levelOfRails(i)
			if err != nil {
				return err
			}
			moved = moved || r.railLevel[i] == nil && level != nil
			r.railLevel[i] = level
		}
		for i := range r.doc.Arms {
			g := &r.doc.Arms[i]
			level, err := r.levelUnder(g.Under, g.Bands, g.Level, g.Section, g.Pos)
			if err != nil {
				return err
			}
			moved = moved || r.armLevel[i] == nil && level != nil
			r.armLevel[i] = level
		}
		if !moved {
			return r.checkLevels()
		}
	}
}

// source is a level and what it follows from, in words.
type source struct {
	level length.Length
	from  string
}

// topSources returns the levels of a panel's top that are known so far, the written one first.
func (r *rod) topSources(p *Panel) (out []source, err error) {
	if p.Level != nil {
		out = append(out, source{*p.Level, "its level"})
	}
	if f := &r.doc.Feet; f.Kind != NoFeet && f.Panel == p.Name {
		out = append(out, source{f.Height + p.Thickness, "the feet under it"})
	}
	for _, s := range p.Seats {
		from, err := r.topOn(p, s)
		if err != nil {
			return nil, err
		}
		if from != nil {
			out = append(out, *from)
		}
	}
	return out, nil
}

// topOn returns the level that a seat gives a panel's top, or nil where it gives none.
func (r *rod) topOn(p *Panel, s Seat) (*source, error) {
	if s.Kind == OnRails {
		return r.topOnRails(p, s)
	}
	i, ok := r.postsNo[s.Group]
	if !ok {
		return nil, nil
	}
	g := &r.doc.Posts[i]
	switch {
	case s.Kind == OnPosts && g.To.Kind == AtLevel && g.To.Finish == pipe.Flange:
		return &source{g.To.Level + p.Thickness, "the posts " + g.Name}, nil
	case s.Kind == UnderPosts && g.From.Kind == AtLevel && g.From.Finish == pipe.Flange:
		return &source{g.From.Level, "the posts " + g.Name}, nil
	}
	return nil, nil
}

// topOnRails returns the level of a panel's top from the rails or arms it lies on: their axis, half of the
// pipe or of the band, and the thickness.
func (r *rod) topOnRails(p *Panel, s Seat) (*source, error) {
	level, section, bands, under := (*length.Length)(nil), Section{}, Bands(""), ""
	if i, ok := r.railsNo[s.Group]; ok {
		g := &r.doc.Rails[i]
		level, section, bands, under = r.railLevel[i], g.Section, g.Bands, g.Under
	} else if i, ok := r.armsNo[s.Group]; ok {
		g := &r.doc.Arms[i]
		level, section, bands, under = r.armLevel[i], g.Section, g.Bands, g.Under
	}
	if level == nil || under == p.Name {
		return nil, nil
	}
	half, err := r.bearing(bands, section, s.Pos)
	if err != nil {
		return nil, err
	}
	return &source{*level + half + p.Thickness, "the rails " + s.Group}, nil
}

// bearing is how far above a rail's axis a panel lies: half of the pipe, or half of the band it rides on.
func (r *rod) bearing(b Bands, s Section, at Pos) (length.Length, error) {
	size, err := r.pipeOf(s, at)
	if err != nil {
		return 0, err
	}
	if b != Ridden {
		return size.OD.Half(), nil
	}
	f, err := r.fitting(at, size, pipe.Tee)
	return f.Band.Half(), err
}

// levelOfRails returns the level of a rail group's axis, or nil while it is not known. A rail between rails
// has theirs.
func (r *rod) levelOfRails(i int) (*length.Length, error) {
	g := &r.doc.Rails[i]
	if g.Under == "" && (g.FromRails || g.WithRails) {
		if k, ok := r.railsNo[g.From]; g.FromRails && ok {
			return r.railLevel[k], nil
		}
		if k, ok := r.railsNo[g.With]; ok {
			return r.railLevel[k], nil
		}
	}
	return r.levelUnder(g.Under, g.Bands, g.Level, g.Section, g.Pos)
}

// levelUnder returns the level written, or that of a rail under the named panel.
func (r *rod) levelUnder(under string, b Bands, written length.Length, s Section, at Pos) (*length.Length, error) {
	if under == "" {
		return &written, nil
	}
	i, ok := r.panelNo[under]
	if !ok || r.panelTop[i] == nil {
		return nil, nil
	}
	half, err := r.bearing(b, s, at)
	if err != nil {
		return nil, err
	}
	level := *r.panelTop[i] - r.doc.Panels[i].Thickness - half
	return &level, nil
}

// checkLevels says which panel has no level, and which has two that disagree.
func (r *rod) checkLevels() error {
	for i := range r.doc.Panels {
		p := &r.doc.Panels[i]
		if r.panelTop[i] == nil {
			return r.noLevel(p)
		}
		sources, err := r.topSources(p)
		if err != nil {
			return err
		}
		for _, s := range sources[1:] {
			if s.level != sources[0].level {
				return r.fault(p.Pos, "leave one of the two out, or make them agree", "the top of %s is at %s by %s and at %s by %s",
					p.Name, r.text(sources[0].level), sources[0].from, r.text(s.level), s.from)
			}
		}
	}
	return r.checkRailLevels()
}

func (r *rod) noLevel(p *Panel) error {
	under := func(g *Rails) bool { return g.Under == p.Name }
	hangs := slices.ContainsFunc(p.Seats, func(s Seat) bool {
		i, ok := r.railsNo[s.Group]
		return s.Kind == OnRails && ok && !under(&r.doc.Rails[i])
	})
	if hangs {
		return r.fault(p.Pos, "write level: for one of them", "the level of %s follows from rails whose level follows from %s", p.Name, p.Name)
	}
	return r.fault(p.Pos, "write level: with the height of its top above the floor, or let it lie on rails or feet", "nothing says how high %s is", p.Name)
}

// checkRailLevels says which rail has no level above the floor, or another than the rails it joins.
func (r *rod) checkRailLevels() error {
	for i := range r.doc.Rails {
		g := &r.doc.Rails[i]
		level := r.railLevel[i]
		if level == nil {
			return r.fault(g.Pos, "write level: with the height of its axis above the floor", "nothing says how high the rails %s are", g.Name)
		}
		if *level <= 0 {
			return r.fault(g.Pos, "write a level above the floor", "the axis of the rails %s is at %s", g.Name, r.text(*level))
		}
		if (g.FromRails || g.WithRails) && g.Level != 0 && g.Level != *level {
			return r.fault(g.Pos, "leave level: out, or give both the same", "the rails %s are at %s, the rails they join at %s", g.Name, r.text(g.Level), r.text(*level))
		}
		for _, end := range r.railAt[i] {
			for _, e := range []railEnd{end.endA, end.endB} {
				if e.rails && *r.railLevel[e.group] != *level {
					return r.fault(g.Pos, "join rails of one level", "the rails %s are at %s, the rails %s they join at %s", g.Name, r.text(*level), r.doc.Rails[e.group].Name, r.text(*r.railLevel[e.group]))
				}
			}
		}
	}
	for i := range r.doc.Arms {
		if g := &r.doc.Arms[i]; r.armLevel[i] == nil || *r.armLevel[i] <= 0 {
			return r.fault(g.Pos, "write level: with the height of its axis above the floor", "nothing says how high the arms %s are", g.Name)
		}
	}
	return nil
}
