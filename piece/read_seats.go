package piece

import (
	"slices"
	"strings"

	"rodwright/piece/markup"
)

// seatForms are the ways a panel sits as they are written, each with the noun its group takes.
var seatForms = []struct {
	prefix string
	nouns  []string
	kind   SeatKind
	of     noun
}{
	{"on ", []string{"posts", "post"}, OnPosts, aPost},
	{"under ", []string{"posts", "post"}, UnderPosts, aPost},
	{"on ", []string{"rails", "rail"}, OnRails, aRail},
	{"on ", []string{"arms", "arm"}, OnRails, anArm},
	{"between ", []string{"posts", "post"}, BetweenPosts, aPost},
	{"around ", []string{"posts", "post"}, AroundPosts, aPost},
}

const seatExamples = "write on front posts, under front posts, on side rails, on shelf arms, between back posts, around back posts, on feet or by place"

// readSeats reads how the panel sits, in one way or several.
func (r *reading) readSeats(f fields, p *Panel) {
	f.require("sits", "on front posts")
	n := f.node("sits")
	if n == nil {
		return
	}
	for _, item := range items(n) {
		s := r.single(item, "sits")
		if s == nil {
			continue
		}
		seat, ok := r.readSeat(writtenAt(s))
		if !ok {
			continue
		}
		if slices.ContainsFunc(p.Seats, func(o Seat) bool { return o.Kind == seat.Kind && o.Group == seat.Group }) {
			r.fail(seat.Pos, "leave one of the two out", "sits: says %q twice", s.Text)
			continue
		}
		p.Seats = append(p.Seats, seat)
	}
	if n.Kind == markup.List && len(n.Items) == 0 {
		r.fail(n.Pos, seatExamples, "sits: is an empty list")
	}
	r.checkSeats(f, p)
	p.Straps = r.straps(f, p)
	r.readOpens(f, p)
}

// readSeat reads one way to sit.
func (r *reading) readSeat(w written) (Seat, bool) {
	seat := Seat{Pos: w.at}
	switch w.text {
	case string(ByPlace):
		seat.Kind = ByPlace
		return seat, true
	case string(OnFeet):
		seat.Kind = OnFeet
		return seat, true
	}
	for _, form := range seatForms {
		group, ok := w.after(form.prefix)
		if !ok {
			continue
		}
		name, ok := grouped(group.text, form.nouns...)
		if !ok {
			continue
		}
		seat.Kind, seat.Group = form.kind, name
		if r.declared(form.of, group.text) { // a group that has the noun in its name
			seat.Group = group.text
		}
		return seat, r.known(form.of, seat.Group, group.at)
	}
	r.fail(w.at, seatExamples, "sits: is %q", clipped(w.text))
	return seat, false
}

// checkSeats notes seats that need more than is written.
func (r *reading) checkSeats(f fields, p *Panel) {
	for _, s := range p.Seats {
		switch s.Kind {
		case ByPlace:
			if len(p.Seats) > 1 {
				r.fail(s.Pos, "leave it out and write at:", "by place can't stand beside another way to sit")
			}
			f.require("at", "[x, y] of its left front corner")
			f.require("level", "18 in, of its top above the floor")
		case OnFeet:
			if under, ok := r.feetUnder(); !ok || under != p.Name {
				r.fail(s.Pos, "write under: "+p.Name+" for the feet", "the panel %s sits on feet, but no feet are under it", p.Name)
			}
		}
	}
}

// straps reads how many straps hold the panel to each rail: none, a number, or -1 for the default.
func (r *reading) straps(f fields, p *Panel) int {
	n := f.scalar("straps")
	if n == nil {
		return -1
	}
	if !slices.ContainsFunc(p.Seats, func(s Seat) bool { return s.Kind == OnRails }) && len(p.Seats) > 0 {
		r.fail(n.Pos, "leave straps: out", "straps: hold a panel to rails or arms, but %s lies on none", p.Name)
	}
	if n.Text == "none" {
		return 0
	}
	return f.count("straps", 0, 20, -1)
}

// openings are the ways a panel opens to let a post in.
var openings = []string{"hole", "front", "back", "left", "right", "auto"}

// readOpens reads the way the panel opens round each group of posts: one for all, or {back: hole}.
func (r *reading) readOpens(f fields, p *Panel) {
	n := f.node("opens")
	if n == nil {
		return
	}
	p.Opens = map[string]string{}
	var round []string
	for _, s := range p.Seats {
		if s.Kind == AroundPosts {
			round = append(round, s.Group)
		}
	}
	if len(round) == 0 {
		if len(p.Seats) > 0 {
			r.fail(n.Pos, "leave opens: out, or write sits: around back posts", "opens: says how a panel opens for posts, but %s goes round none", p.Name)
		}
		return
	}
	if n.Kind != markup.Map {
		if word, ok := f.choice("opens", openings...); ok {
			r.setOpens(p, word, round...)
		}
		return
	}
	for _, e := range n.Entries {
		if !slices.Contains(round, e.Key) {
			r.fail(e.KeyPos, "write one of "+strings.Join(round, ", "), "%s goes round no posts named %q", p.Name, clipped(e.Key))
			continue
		}
		if v := r.single(e.Value, e.Key); v != nil {
			if word, ok := r.oneOf(v, e.Key, openings...); ok {
				r.setOpens(p, word, e.Key)
			}
		}
	}
}

func (r *reading) setOpens(p *Panel, word string, groups ...string) {
	if word == "auto" {
		return
	}
	for _, g := range groups {
		p.Opens[g] = word
	}
}
