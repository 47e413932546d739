package piece

import (
	"strings"

	"rodwright/length"
	"rodwright/piece/markup"
)

// readRails reads the groups of level sticks between posts or other rails.
func (r *reading) readRails(n *markup.Node) {
	for _, e := range r.entries(n, "rails", "side: {joins: front with back, level: 8 in}") {
		f, ok := r.fields(e.Value, "the rails "+e.Key, "joins", "level", "under", "bands", "share", "union", "pipe")
		if !ok {
			continue
		}
		g := Rails{Name: e.Key, Pos: e.KeyPos, Section: f.section(), Share: [2]int64{1, 2}, Union: f.yes("union")}
		f.require("joins", "front with back, or back posts")
		if n := f.scalar("joins"); n != nil {
			r.readJoin(writtenAt(n), &g)
		}
		if share, ok := f.share("share"); ok {
			g.Share = share
		}
		height := f.height(g.From != "" && !g.FromRails && !g.WithRails)
		g.Level, g.Under, g.Bands = height.level, height.under, height.bands
		if g.FromRails && g.From == g.Name || g.WithRails && g.With == g.Name {
			r.fail(e.KeyPos, "join other rails, or posts", "the rails %s join themselves", g.Name)
		}
		r.doc.Rails = append(r.doc.Rails, g)
	}
	r.checkRailCircles()
}

// readJoin reads what rails join: front with back, back posts, side rails, or groups with their nouns on
// both sides.
func (r *reading) readJoin(w written, g *Rails) {
	i := strings.Index(w.text, " with ")
	if i < 0 {
		if _, ok := grouped(w.text, "posts", "rails"); !ok {
			r.fail(w.at, "write front with back, back posts, or side rails", "joins: is %q", clipped(w.text))
			return
		}
		g.From, g.FromRails = r.joined(w)
		return
	}
	g.From, g.FromRails = r.joined(w.cut(0, i))
	g.With, g.WithRails = r.joined(w.cut(i+len(" with "), len(w.text)))
	if g.From == g.With && g.FromRails == g.WithRails && g.From != "" {
		r.fail(w.at, "write "+g.From+" posts for the neighbours within one group", "joins: names %q on both sides", g.From)
	}
}

// joined looks a group up. Without its noun, posts come before rails of the same name.
func (r *reading) joined(w written) (name string, rails bool) {
	if name, ok := grouped(w.text, "posts", "post"); ok && !r.declared(aPost, w.text) && !r.declared(aRail, w.text) {
		r.known(aPost, name, w.at)
		return name, false
	}
	if name, ok := grouped(w.text, "rails", "rail"); ok && !r.declared(aPost, w.text) && !r.declared(aRail, w.text) {
		r.known(aRail, name, w.at)
		return name, true
	}
	if !r.declared(aPost, w.text) && r.declared(aRail, w.text) {
		return w.text, true
	}
	if !r.declared(aPost, w.text) {
		all := append(append([]string{}, r.names[aPost]...), r.names[aRail]...)
		r.fail(w.at, near(w.text, all), "there are no posts or rails named %q", clipped(w.text))
	}
	return w.text, false
}

// checkRailCircles notes rails that join each other in a circle, which would hang in the air.
func (r *reading) checkRailCircles() {
	by := map[string]*Rails{}
	for i := range r.doc.Rails {
		by[r.doc.Rails[i].Name] = &r.doc.Rails[i]
	}
	state := map[string]sizeState{}
	var visit func(g *Rails)
	visit = func(g *Rails) {
		state[g.Name] = inWork
		for _, end := range []struct {
			name  string
			rails bool
		}{{g.From, g.FromRails}, {g.With, g.WithRails}} {
			other := by[end.name]
			if !end.rails || other == nil || other == g {
				continue
			}
			switch state[other.Name] {
			case inWork:
				r.fail(g.Pos, "join one of them to posts", "the rails %s and %s join each other in a circle", g.Name, other.Name)
			case waiting:
				visit(other)
			}
		}
		state[g.Name] = good
	}
	for i := range r.doc.Rails {
		if g := &r.doc.Rails[i]; state[g.Name] == waiting {
			visit(g)
		}
	}
}

// height is how high rails or arms are: at a level, or under a panel.
type height struct {
	level length.Length
	under string
	bands Bands
}

// height reads level:, or under: with the panel that lies there, and bands:, which says how panels that lie
// there meet the fittings. A level is needed unless the height follows from something else.
func (f fields) height(needed bool) (h height) {
	f.exclude("under", "level")
	word, _ := f.choice("bands", string(Relieved), string(Ridden), string(Short))
	h.bands = Bands(word)
	if f.has("under") {
		h.under, _ = f.panel("under")
		f.require("bands", bandWords)
		return h
	}
	if needed {
		f.require("level", "8 1/2 in, or under: with the panel that lies on them")
	}
	h.level, _ = f.length("level", aboveZero)
	return h
}

const bandWords = "relieved, ridden or short: how a panel that lies there meets the fittings, which stand proud of the pipe"
