package server

import (
	"slices"
	"strconv"
	"strings"

	"rodwright/piece"
	"rodwright/piece/markup"
)

// The kinds of what is typed.
const (
	lengthField = "length"
	countField  = "count"
	wordField   = "word"
)

// typed lists the values of a document that are typed, by their paths; * stands for any one step. What says how
// the piece hangs together (at corners of, joins, sits …) is not among them: it is written in the document.
var typed = []struct{ kind, paths string }{
	{lengthField, "sizes/*/measured"},
	{lengthField, "holds/*/at/*"},
	{lengthField, "posts/*/inset posts/*/inset/* posts/*/at/* posts/*/at/*/* posts/*/from/level posts/*/to/level"},
	{lengthField, "rails/*/level"},
	{lengthField, "arms/*/inset arms/*/level arms/*/reach arms/*/at/*"},
	{lengthField, "sticks/*/from/* sticks/*/from/at/* sticks/*/to/* sticks/*/to/at/*"},
	{lengthField, "panels/*/length panels/*/width panels/*/thickness panels/*/level panels/*/at/* panels/*/gap panels/*/corners panels/*/corners/*"},
	{lengthField, "feet/*/height feet/*/wheel feet/*/offset feet/*/inset"},
	{lengthField, "holes/*/from_edge holes/*/diameter holes/*/radius holes/*/depth holes/*/at/* holes/*/at/*/*"},
	{lengthField, "voids/*/depth joints/*/hole place/ceiling"},
	{countField, "holds/*/count arms/*/count feet/*/count feet/*/locks holes/*/count voids/*/count"},
	{wordField, "piece place/room place/humidity place/temperature place/doors/* place/wall place/slope"},
	{wordField, "wood wood/species wood/cut wood/moisture pipe pipe/standard pipe/size"},
	{wordField, "holds/*/weight holds/*/size rails/*/share posts/*/pipe rails/*/pipe arms/*/pipe sticks/*/pipe"},
	{wordField, "panels/*/grain panels/*/sheet panels/*/wood panels/*/wood/* panels/*/show panels/*/stock panels/*/straps"},
	{wordField, "feet/*/rated feet/*/kind feet/*/fixed holes/*/size holes/*/passes voids/*/size voids/*/walls voids/*/resin"},
	{wordField, "loads/*/weight loads/*/push loads/*/edge loads/*/towards"},
	{wordField, "edges/*/* joints/* joints/*/screw joints/*/slotted"},
}

// nouns say in front of a name what it is the name of. Sections that are not here are called by their own name,
// and feet by the name of their kind.
var nouns = map[string]string{"holds": "held:", "panels": "panel", "posts": "posts", "rails": "rails", "arms": "arms", "sticks": "stick", "holes": "holes", "voids": "voids", "loads": "load", "edges": "edges of", "sizes": "size", "feet": ""}

// fieldsOf lists what can be typed in a document, in its order. A value that only names a size is typed there.
func fieldsOf(doc *piece.Document) ([]fieldBody, error) {
	root, err := markup.Parse(doc.Text)
	if err != nil {
		return nil, err
	}
	sizes := map[string]bool{}
	for _, s := range doc.Sizes {
		sizes[s.Name] = true
	}
	out := []fieldBody{}
	walk(root, nil, func(path []string, n *markup.Node) {
		kind, ok := kindOfPath(path)
		if !ok || n.Block || sizes[strings.TrimSpace(n.Text)] {
			return
		}
		group, label := titled(path)
		out = append(out, fieldBody{Path: strings.Join(path, "/"), Label: label, Group: group, Value: n.Text, Kind: kind})
	})
	return out, nil
}

// walk visits every single value under n with its path.
func walk(n *markup.Node, path []string, visit func([]string, *markup.Node)) {
	down := func(step string, to *markup.Node) { walk(to, append(slices.Clone(path), step), visit) }
	switch n.Kind {
	case markup.Scalar:
		visit(path, n)
	case markup.Map:
		for _, e := range n.Entries {
			down(e.Key, e.Value)
		}
	case markup.List:
		for i, item := range n.Items {
			down(stepOf(item, i), item)
		}
	}
}

// stepOf is the step to an item of a list: its name, which it alone has, or its place counted from 1.
func stepOf(item *markup.Node, i int) string {
	if name := item.Entry("name"); name != nil && name.Kind == markup.Scalar {
		return name.Text
	}
	return strconv.Itoa(i + 1)
}

func kindOfPath(path []string) (string, bool) {
	for _, t := range typed {
		for pattern := range strings.FieldsSeq(t.paths) {
			if fits(pattern, path) {
				return t.kind, true
			}
		}
	}
	return "", false
}

// fits reports whether a path fits a pattern, in which _ stands for the space in a name.
func fits(pattern string, path []string) bool {
	steps := strings.Split(pattern, "/")
	if len(steps) != len(path) {
		return false
	}
	for i, s := range steps {
		if s != "*" && strings.ReplaceAll(s, "_", " ") != path[i] {
			return false
		}
	}
	return true
}

// titled returns what a value belongs to and what it is, in words: panel deep board, thickness.
func titled(path []string) (group, label string) {
	noun, named := nouns[path[0]]
	switch {
	case named && len(path) > 2:
		return strings.TrimSpace(noun + " " + path[1]), strings.Join(path[2:], " ")
	case len(path) > 1:
		return path[0], strings.Join(path[1:], " ")
	default:
		return path[0], path[0]
	}
}
