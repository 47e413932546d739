package piece

import (
	"fmt"

	"rodwright/length"
	"rodwright/piece/markup"
	"rodwright/trade/caster"
)

// footForms are the kinds of feet as they are named, with the entries each takes.
var footForms = []struct {
	key     string
	entries []string
}{
	{"casters", []string{"kind", "fixed", "wheel", "height", "offset", "rated", "locks", "under", "inset", "count"}},
	{"levelling feet", []string{"fixed", "height", "rated", "under", "inset", "count"}},
	{"caps", nil},
	{"flanges", nil},
	{"bare", nil},
}

// readFeet reads what the piece stands on: one kind of foot.
func (r *reading) readFeet(n *markup.Node) {
	if n == nil {
		return
	}
	keys := make([]string, len(footForms))
	for i, form := range footForms {
		keys[i] = form.key
	}
	r.doc.Feet.Pos = n.Pos
	if n.Kind == markup.Scalar {
		s := r.single(n, "feet")
		if s == nil {
			return
		}
		if word, ok := r.oneOf(s, "feet", "caps", "flanges", "bare"); ok {
			r.doc.Feet.Kind = plainFeet[word]
		}
		return
	}
	f, ok := r.fields(n, "the feet", keys...)
	if !ok || len(n.Entries) == 0 {
		return
	}
	if len(n.Entries) > 1 {
		if e := n.Entries[1]; !f.wrong {
			r.fail(e.KeyPos, "choose one kind", "a piece stands on one kind of foot")
		}
		return
	}
	for _, form := range footForms {
		if e := n.Entries[0]; e.Key == form.key {
			r.readFootForm(e, form.entries)
		}
	}
}

// plainFeet are the feet that need no words beyond their name.
var plainFeet = map[string]FootKind{"caps": CapFoot, "flanges": FlangeFoot, "bare": BareFoot}

// readFootForm reads the one entry under feet:.
func (r *reading) readFootForm(e markup.Entry, entries []string) {
	feet := &r.doc.Feet
	feet.Pos = e.KeyPos
	if kind, ok := plainFeet[e.Key]; ok {
		feet.Kind = kind
		if e.Value.Kind != markup.Empty && len(e.Value.Entries)+len(e.Value.Items)+len(e.Value.Text) > 0 {
			r.fail(e.Value.Pos, "write feet: "+e.Key, "%s take no entries", e.Key)
		}
		return
	}
	if e.Value.Kind == markup.Empty && e.Key == "levelling feet" {
		e.Value = &markup.Node{Kind: markup.Map, Pos: e.KeyPos}
	}
	f, ok := r.fields(e.Value, "the "+e.Key, entries...)
	if !ok {
		return
	}
	class := r.footClass(f, e.Key)
	r.readFootFigures(f, class)
	r.readFootPlace(f)
}

// footClass reads which foot it is and returns the generic class it belongs to.
func (r *reading) footClass(f fields, key string) caster.Class {
	feet := &r.doc.Feet
	fixing := "through drilled caps"
	if f.has("under") {
		fixing = "insert"
	}
	if key == "levelling feet" {
		feet.Kind = Leveller
		feet.Fixed = f.fixing(fixing, "through drilled caps", "insert")
		class, err := caster.Nearest(caster.Foot, 0)
		r.classError(f, err)
		return class
	}
	f.require("kind", "stem or plate")
	kind := caster.Stem
	feet.Kind = StemCaster
	if word, _ := f.choice("kind", "stem", "plate"); word == "plate" {
		kind, feet.Kind = caster.Plate, PlateCaster
		feet.Fixed = f.fixing("plate", "plate")
		f.require("under", "the panel their plates are screwed to")
	} else {
		feet.Fixed = f.fixing(fixing, "through drilled caps", "insert")
	}
	f.require("wheel", "3 in, its diameter")
	feet.Wheel, _ = f.length("wheel", aboveZero)
	if feet.Wheel == 0 {
		return caster.Class{}
	}
	class, err := caster.Nearest(kind, feet.Wheel)
	r.classError(f, err)
	return class
}

func (r *reading) classError(f fields, err error) {
	if err != nil {
		r.fail(f.at.Pos, "", "%v", err)
	}
}

// fixing reads how the foot is fixed.
func (f fields) fixing(usual string, words ...string) string {
	if word, ok := f.choice("fixed", words...); ok {
		return word
	}
	return usual
}

// readFootFigures reads height, offset and rating. A figure that is not written is that of the generic class,
// and said to be assumed.
func (r *reading) readFootFigures(f fields, class caster.Class) {
	feet := &r.doc.Feet
	take := func(key string, l *length.Length, usual length.Length) {
		if f.has(key) {
			*l, _ = f.length(key, aboveZero)
			return
		}
		*l = usual
		feet.Assumed = append(feet.Assumed, fmt.Sprintf("%s of the %s: %s, generic class, from memory; measure yours", key, class, r.shown(usual)))
	}
	take("height", &feet.Height, class.Height)
	if feet.Kind != Leveller {
		take("offset", &feet.Offset, class.Offset)
	}
	if f.has("rated") {
		feet.RatedKg, _ = f.mass("rated")
		return
	}
	feet.RatedKg = class.RatedKg
	feet.Assumed = append(feet.Assumed, fmt.Sprintf("rating of the %s: %.0f kg, generic class, from memory; read yours", class, class.RatedKg))
}

// readFootPlace reads where the feet are: under the posts, or under a panel's corners.
func (r *reading) readFootPlace(f fields) {
	feet := &r.doc.Feet
	if !f.has("under") {
		for _, key := range []string{"inset", "count"} {
			if n := f.at.Entry(key); n != nil && !f.wrong {
				r.fail(n.Pos, "leave it out, or write under: with the panel they are fixed to", "%s: is for feet under a panel; these are under the posts", key)
			}
		}
	} else {
		feet.Panel, _ = f.panel("under")
		f.require("inset", "2 in, from the panel's edges to the axes of the feet")
		feet.Inset, _ = f.length("inset", fromZero)
		feet.Count = 4
		if word, ok := f.choice("count", "4", "6"); ok && word == "6" {
			feet.Count = 6
		}
	}
	feet.Locks = f.count("locks", 0, 6, 0)
}

// feetUnder returns the panel that feet are written under, before the feet are read.
func (r *reading) feetUnder() (panel string, ok bool) {
	n := r.root.Entry("feet")
	if n == nil || n.Kind != markup.Map {
		return "", false
	}
	for _, e := range n.Entries {
		if under := e.Value.Entry("under"); under != nil && under.Kind == markup.Scalar {
			return under.Text, true
		}
	}
	return "", false
}
