package piece

// checkNames checks that every name in the document is that of something in it, as a document that was read
// has had checked already.
func (r *rod) checkNames() error {
	for _, check := range []func() error{r.checkPanelNames, r.checkStickNames} {
		if err := check(); err != nil {
			return err
		}
	}
	for _, h := range r.doc.Holes {
		if err := r.known(r.panelNo, "panel", h.In, h.Pos); err != nil {
			return err
		}
	}
	for _, v := range r.doc.Voids {
		if err := r.known(r.panelNo, "panel", v.In, v.Pos); err != nil {
			return err
		}
	}
	for _, h := range r.doc.Holds {
		if err := r.known(r.panelNo, "panel", h.On, h.Pos); err != nil {
			return err
		}
	}
	if f := r.doc.Feet; f.Kind != NoFeet && f.Panel != "" {
		return r.known(r.panelNo, "panel", f.Panel, f.Pos)
	}
	return nil
}

// known is an error where a name is not in the list of its kind.
func (r *rod) known(names map[string]int, kind, name string, at Pos) error {
	if _, ok := names[name]; ok {
		return nil
	}
	return r.fault(at, "name a "+kind+" of the piece", "there is no %s named %q", kind, name)
}

func (r *rod) checkPanelNames() error {
	for i := range r.doc.Panels {
		for _, s := range r.doc.Panels[i].Seats {
			names, kind := r.postsNo, "post group"
			switch s.Kind {
			case ByPlace, OnFeet:
				continue
			case OnRails:
				names, kind = r.railsNo, "rail group"
				if _, arms := r.armsNo[s.Group]; arms {
					names = r.armsNo
				}
			}
			if err := r.known(names, kind, s.Group, s.Pos); err != nil {
				return err
			}
		}
	}
	return nil
}

func (r *rod) checkStickNames() error {
	groups := func(rails bool) (map[string]int, string) {
		if rails {
			return r.railsNo, "rail group"
		}
		return r.postsNo, "post group"
	}
	for _, g := range r.doc.Posts {
		if g.Panel == "" {
			continue
		}
		if err := r.known(r.panelNo, "panel", g.Panel, g.Pos); err != nil {
			return err
		}
	}
	for _, g := range r.doc.Rails {
		from, kind := groups(g.FromRails)
		if err := r.known(from, kind, g.From, g.Pos); err != nil {
			return err
		}
		if with, kind := groups(g.WithRails); g.With != "" {
			if err := r.known(with, kind, g.With, g.Pos); err != nil {
				return err
			}
		}
		if err := r.under(g.Under, g.Pos); err != nil {
			return err
		}
	}
	for _, g := range r.doc.Arms {
		if len(g.At) == 0 {
			if err := r.known(r.panelNo, "panel", g.Panel, g.Pos); err != nil {
				return err
			}
		}
		if err := r.under(g.Under, g.Pos); err != nil {
			return err
		}
	}
	return nil
}

// under checks the panel that rails or arms are under, where they are under one.
func (r *rod) under(panel string, at Pos) error {
	if panel == "" {
		return nil
	}
	return r.known(r.panelNo, "panel", panel, at)
}
