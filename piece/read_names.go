package piece

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"rodwright/length"
	"rodwright/piece/markup"
)

// noun is a kind of thing that a document names.
type noun string

const (
	aSize   noun = "size"
	aPanel  noun = "panel"
	aPost   noun = "post group"
	aRail   noun = "rail group"
	anArm   noun = "arm group"
	aStick  noun = "stick"
	aHole   noun = "hole"
	aVoid   noun = "void"
	aLoad   noun = "load"
	aDoor   noun = "door"
	aTurn   noun = "turn"
	theHeld noun = "thing"
)

// declareNames collects the names of all sections before any of them is read, as each may use the others'.
func (r *reading) declareNames(top fields) {
	r.names = map[noun][]string{}
	for _, section := range []struct {
		key  string
		noun noun
	}{{"sizes", aSize}, {"panels", aPanel}, {"posts", aPost}, {"rails", aRail}, {"arms", anArm}, {"sticks", aStick}, {"holes", aHole}, {"voids", aVoid}, {"loads", aLoad}} {
		n := top.at.Entry(section.key)
		if n == nil || n.Kind != markup.Map {
			continue
		}
		for _, e := range n.Entries[:min(len(n.Entries), maxEntries)] {
			r.checkName(e.Key, e.KeyPos, section.noun)
			if section.noun == anArm && slices.Contains(r.names[aRail], e.Key) {
				r.fail(e.KeyPos, "rename one of them, as panels sit on both", "rails and arms are both named %q", e.Key)
			}
			r.names[section.noun] = append(r.names[section.noun], e.Key)
		}
	}
}

// checkName notes a name that could be mistaken for something else. A name begins with a letter and is made
// of words of letters, digits, hyphens, dots and apostrophes with one space between them; a unit is no word
// of it, nor is with, which joins two groups.
func (r *reading) checkName(name string, at Pos, what noun) {
	if utf8.RuneCountInString(name) > maxName {
		r.fail(at, "write a shorter one", "the name %q is longer than %d characters", clipped(name), maxName)
		return
	}
	if first, _ := utf8.DecodeRuneInString(name); !unicode.IsLetter(first) {
		r.fail(at, "begin it with a letter", "%q is no name for a %s", name, what)
		return
	}
	for _, word := range strings.Split(name, " ") {
		_, isUnit := length.UnitOf(word)
		switch {
		case word == "":
			r.fail(at, "write one space between words", "the name %q has two spaces together", name)
		case isUnit:
			r.fail(at, "choose another word", "%q in the name %q is a unit", word, name)
		case name == "min" || name == "max" || word == "with":
			r.fail(at, "choose another word", "%q can't stand in a name: it has a meaning here", word)
		case strings.IndexFunc(word, notInName) >= 0:
			r.fail(at, "use letters, digits, spaces and hyphens", "%q is no name for a %s", name, what)
		default:
			continue
		}
		return
	}
}

const maxName = 60

func notInName(r rune) bool {
	return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("-'’_.", r)
}

// known reports whether a name of that kind is declared; if not, it is noted with the nearest names.
func (r *reading) known(what noun, name string, at Pos) bool {
	if r.declared(what, name) {
		return true
	}
	want := near(name, r.names[what])
	if want == "" {
		want = "name it, or leave this out"
	}
	r.fail(at, want, "there is no %s named %q", what, clipped(name))
	return false
}

func (r *reading) declared(what noun, name string) bool { return slices.Contains(r.names[what], name) }

// panel returns the panel's name under a key, when there is such a panel.
func (f fields) panel(key string) (string, bool) {
	n := f.scalar(key)
	if n == nil {
		return "", false
	}
	return n.Text, f.known(aPanel, n.Text, n.TextPos)
}

// grouped takes the noun off the end of a reference: front posts names the group front. Ok is false when the
// text does not end with one of the nouns.
func grouped(text string, nouns ...string) (name string, ok bool) {
	for _, word := range nouns {
		if before, found := strings.CutSuffix(text, " "+word); found {
			return before, true
		}
	}
	return text, false
}
