package piece

import (
	"rodwright/length"
	"rodwright/piece/markup"
	"rodwright/trade/pipe"
)

// cornerSets are the ways to name corners of a panel, each with its corners in reading order.
var cornerSets = []struct {
	words   string
	corners []Corner
}{
	{"corners of ", []Corner{FrontLeft, FrontRight, BackLeft, BackRight}},
	{"front corners of ", []Corner{FrontLeft, FrontRight}},
	{"back corners of ", []Corner{BackLeft, BackRight}},
	{"left corners of ", []Corner{FrontLeft, BackLeft}},
	{"right corners of ", []Corner{FrontRight, BackRight}},
	{"front left corner of ", []Corner{FrontLeft}},
	{"front right corner of ", []Corner{FrontRight}},
	{"back left corner of ", []Corner{BackLeft}},
	{"back right corner of ", []Corner{BackRight}},
}

// readPosts reads the groups of upright sticks.
func (r *reading) readPosts(n *markup.Node) {
	for _, e := range r.entries(n, "posts", "front: {at: front corners of top, inset: 3 in, to: top}") {
		f, ok := r.fields(e.Value, "the posts "+e.Key, "at", "inset", "from", "to", "pipe")
		if !ok {
			continue
		}
		p := Posts{Name: e.Key, Pos: e.KeyPos, Section: f.section()}
		r.readStand(f, &p)
		p.From = PostEnd{Kind: AtFeet, Pos: e.KeyPos}
		if n := f.node("from"); n != nil {
			p.From = r.postEnd(n, "from", true)
		}
		f.require("to", "the panel they carry, or {level: 36 in, end: cap}")
		if n := f.node("to"); n != nil {
			p.To = r.postEnd(n, "to", false)
		}
		if p.From.Kind == AtFeet && !r.hasFeet() {
			r.fail(p.From.Pos, "describe them under feet:, or write from: floor", "the posts %s stand on feet, but no feet are described", e.Key)
		}
		r.doc.Posts = append(r.doc.Posts, p)
	}
}

// readStand reads where posts stand: at corners of a panel, or at coordinates.
func (r *reading) readStand(f fields, p *Posts) {
	f.require("at", "front corners of the panel, or [x, y]")
	n := f.node("at")
	if n == nil {
		return
	}
	if n.Kind == markup.List {
		if inset := f.at.Entry("inset"); inset != nil {
			r.fail(inset.Pos, "leave inset: out", "posts at coordinates have no inset")
		}
		p.At, _ = r.points(n, "at")
		return
	}
	if n = r.single(n, "at"); n == nil {
		return
	}
	w := writtenAt(n)
	for _, set := range cornerSets {
		panel, ok := w.after(set.words)
		if !ok {
			continue
		}
		if r.known(aPanel, panel.text, panel.at) {
			p.Panel, p.Corners = panel.text, set.corners
		}
		f.require("inset", "2 3/4 in, from the panel's edges to the axes of the posts")
		p.InsetX, p.InsetY = r.inset(f)
		return
	}
	r.fail(w.at, "write for example front corners of deep board, or [x, y]", "at: is %q", clipped(w.text))
}

// inset reads one inset for both directions, or one for each: {along: 3 in, across: 2 in}.
func (r *reading) inset(f fields) (along, across length.Length) {
	n := f.node("inset")
	if n == nil {
		return 0, 0
	}
	if n.Kind == markup.Map {
		g, _ := r.fields(n, "the inset", "along", "across")
		g.require("along", "3 in")
		g.require("across", "2 in")
		along, _ = g.length("along", fromZero)
		across, _ = g.length("across", fromZero)
		return along, across
	}
	along, _ = f.length("inset", fromZero)
	return along, along
}

func (r *reading) hasFeet() bool {
	n := r.root.Entry("feet")
	return n != nil && n.Kind != markup.Empty
}

// postEnd reads what a post comes from or goes to.
func (r *reading) postEnd(n *markup.Node, key string, lower bool) PostEnd {
	end := PostEnd{Pos: n.Pos}
	if n.Kind == markup.Map {
		f, _ := r.fields(n, key+":", "level", "end")
		f.require("level", "36 in")
		end.Kind = AtLevel
		end.Level, _ = f.length("level", fromZero)
		end.Finish = f.finish("end", pipe.Cap, pipe.Cap, pipe.Flange, pipe.None)
		return end
	}
	n = r.single(n, key)
	if n == nil {
		return end
	}
	end.Pos = n.TextPos
	switch {
	case n.Text == "feet" && lower && !r.declared(aPanel, "feet"):
		end.Kind = AtFeet
		return end
	case n.Text == "floor" && lower && !r.declared(aPanel, "floor"):
		end.Kind, end.Finish = AtLevel, pipe.None
		return end
	}
	end.Kind, end.Name = AtPanel, n.Text
	if rail, ok := grouped(n.Text, "rails", "rail"); ok && !r.declared(aPanel, n.Text) {
		end.Kind, end.Name = AtRail, rail
		r.known(aRail, rail, n.TextPos)
		return end
	}
	r.knownEnd(n)
	return end
}

// knownEnd notes a post's end that names nothing.
func (r *reading) knownEnd(n *markup.Node) {
	if r.declared(aPanel, n.Text) {
		return
	}
	want := near(n.Text, r.names[aPanel])
	if want != "" {
		want += "; "
	}
	r.fail(n.TextPos, want+"write a panel, a rail as in side rail, or {level: 36 in, end: cap}", "there is no panel named %q", clipped(n.Text))
}

// finish reads what closes an end; bare is none.
func (f fields) finish(key string, usual pipe.Kind, kinds ...pipe.Kind) pipe.Kind {
	words := make([]string, len(kinds))
	for i, k := range kinds {
		words[i] = string(k)
		if k == pipe.None {
			words[i] = "bare"
		}
	}
	word, ok := f.choice(key, words...)
	switch {
	case !ok:
		return usual
	case word == "bare":
		return pipe.None
	}
	return pipe.Kind(word)
}
