package part

// Retag gives panels and pipes the tags they have in the drawn plan, so that what is written on them stays right when a
// frame stands a little off what is drawn: pipes that were alike on paper may differ then, and others become alike. A
// kind keeps the tag of the drawn kind whose first part it holds; one split off goes by the tag of its own first part.
// Lists of other pieces are left as they are.
func (l *List) Retag(drawn *List) {
	if len(l.StickTags) != len(drawn.StickTags) || len(l.PanelTags) != len(drawn.PanelTags) {
		return
	}
	kinds := map[string]string{} // the kind of each physical tag in the drawn plan, where it is its first
	for i := range drawn.Parts {
		if p := &drawn.Parts[i]; p.Kind == Pipe && len(p.Tags) > 0 {
			kinds[p.Tags[0]] = p.Tag
		}
	}
	copy(l.StickTags, drawn.StickTags)
	for i := range l.Parts {
		if p := &l.Parts[i]; p.Kind == Pipe {
			p.retag(drawn.StickTags, kinds)
		}
	}
}

func (p *Part) retag(tags []string, kinds map[string]string) {
	for k, at := range p.Indexes {
		p.Tags[k] = tags[at]
	}
	p.Tag = p.Tags[0]
	for _, tag := range p.Tags {
		if kind, first := kinds[tag]; first {
			p.Tag = kind
			return
		}
	}
}
