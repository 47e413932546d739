package piece

import (
	"slices"
	"strings"

	"rodwright/piece/markup"
)

// fields are the entries of one map of the document, each asked for by its key.
type fields struct {
	*reading
	at    *markup.Node
	what  string // in words: the posts front
	wrong bool   // a key is not known: perhaps it was meant to be one that is missing
}

// fields returns the entries of a map and notes every key that is not known there. It reports false when n
// is no map.
func (r *reading) fields(n *markup.Node, what string, known ...string) (fields, bool) {
	f := fields{reading: r, at: n, what: what}
	if n.Kind != markup.Map {
		r.fail(n.Pos, "write "+known[0]+": … and what else it has", "%s is %s, not names with values", what, n.Kind)
		return f, false
	}
	for _, e := range n.Entries {
		if !slices.Contains(known, e.Key) {
			f.wrong = true
			r.fail(e.KeyPos, near(e.Key, known), "%q is no entry of %s", clipped(e.Key), what)
		}
	}
	return f, true
}

// node returns the value under a key, nil when the key is not there. A key without a value is noted.
func (f fields) node(key string) *markup.Node {
	n := f.at.Entry(key)
	if n != nil && n.Kind == markup.Empty {
		f.fail(n.Pos, "write a value behind the colon, or leave the line out", "%s: has no value", key)
		return nil
	}
	return n
}

// has reports whether a key is written.
func (f fields) has(key string) bool { return f.at.Entry(key) != nil }

// require notes that a key is missing, unless a key that is not known was noted, which may be the one meant.
// Example is what could be written.
func (f fields) require(key, example string) {
	if !f.has(key) && !f.wrong {
		f.fail(f.at.Pos, "write "+key+": "+example, "%s: is missing from %s", key, f.what)
	}
}

// exclude notes keys that can't stand beside a key.
func (f fields) exclude(key string, others ...string) {
	for _, other := range others {
		if n := f.at.Entry(other); f.has(key) && n != nil {
			f.fail(n.Pos, "leave one of the two out", "%s: and %s: can't stand together in %s", key, other, f.what)
		}
	}
}

// scalar returns the single value under a key, nil when there is none.
func (f fields) scalar(key string) *markup.Node { return f.single(f.node(key), key) }

// single returns n if it is a single value on one line, else notes that it should be.
func (r *reading) single(n *markup.Node, what string) *markup.Node {
	switch {
	case n == nil:
		return nil
	case n.Kind != markup.Scalar:
		r.fail(n.Pos, "write one value", "%s: is %s, not a single value", what, n.Kind)
		return nil
	case n.Block:
		r.fail(n.Pos, "write it on one line, without | or >", "%s: runs over several lines", what)
		return nil
	case strings.TrimSpace(n.Text) == "":
		r.fail(n.Pos, "write a value between the quotes", "%s: has no value", what)
		return nil
	}
	return n
}

// text returns the words under a key, which must be there.
func (f fields) text(key, example string) (string, bool) {
	f.require(key, example)
	n := f.scalar(key)
	if n == nil {
		return "", false
	}
	return n.Text, true
}

// choice returns the value under a key when it is one of the words given.
func (f fields) choice(key string, words ...string) (string, bool) {
	n := f.scalar(key)
	if n == nil {
		return "", false
	}
	return f.oneOf(n, key, words...)
}

func (r *reading) oneOf(n *markup.Node, what string, words ...string) (string, bool) {
	if slices.Contains(words, n.Text) {
		return n.Text, true
	}
	r.fail(n.Pos, "write "+orList(words), "%s: is %q", what, clipped(n.Text))
	return "", false
}

// orList joins words for a choice: a, b or c.
func orList(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// yes reads yes or no; a missing key is no.
func (f fields) yes(key string) bool {
	word, _ := f.choice(key, "yes", "no")
	return word == "yes"
}

// items returns the values of a list, or the one value written without a list.
func items(n *markup.Node) []*markup.Node {
	if n.Kind == markup.List {
		return n.Items
	}
	return []*markup.Node{n}
}

// entries returns the named entries of a section, none when the section is missing. More of them than any
// piece has is an error.
func (r *reading) entries(n *markup.Node, section, example string) []markup.Entry {
	if n == nil {
		return nil
	}
	if n.Kind != markup.Map {
		r.fail(n.Pos, "write names with their entries, for example "+example, "%s: is %s", section, n.Kind)
		return nil
	}
	if len(n.Entries) > maxEntries {
		r.fail(n.Entries[maxEntries].KeyPos, "split the piece", "%s: has more than %d entries", section, maxEntries)
		return n.Entries[:maxEntries]
	}
	return n.Entries
}

// maxEntries bounds every section of a document, far above any piece that one person builds.
const maxEntries = 500
