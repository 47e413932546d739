package layout

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/cut"
	"rodwright/cut/verify"
)

// Tags returns the tags of what the task cuts, in the problem's order.
func (t Task) Tags() (tags []string) {
	switch {
	case t.Sticks != nil:
		for _, p := range t.Sticks.Parts {
			tags = append(tags, p.Tag)
		}
	case t.Boards != nil:
		for _, p := range t.Boards.Panels {
			tags = append(tags, p.Tag)
		}
	case t.Sheets != nil:
		for _, p := range t.Sheets.Parts {
			tags = append(tags, p.Tag)
		}
	}
	return tags
}

// Misfit says why an answer to an earlier problem is none to this one: what is to be cut now, what is cut no more, what
// has another size, or that what is cut is the same and what it is cut from is not.
func (t Task) Misfit(a *cut.Answer) string {
	wanted, had := t.Tags(), tagsOf(a)
	for _, tags := range []struct {
		of, in    []string
		one, more string
	}{
		{wanted, had, "is to be cut now", "are to be cut now"},
		{had, wanted, "is not to be cut any more", "are not to be cut any more"},
	} {
		lacking := slices.DeleteFunc(slices.Clone(tags.of), func(tag string) bool { return slices.Contains(tags.in, tag) })
		switch len(lacking) {
		case 0:
		case 1:
			return lacking[0] + " " + tags.one
		default:
			return some(lacking) + " " + tags.more
		}
	}
	faults := t.Faults(a)
	for _, rule := range []verify.Rule{verify.SizeRule, verify.StockRule} { // these say best what is another now
		for _, f := range faults {
			if f.Rule == rule {
				return f.Text
			}
		}
	}
	return "prices, what is there to cut from or the settings of the saw are others now"
}

// tagsOf lists what an answer tells of, each tag once.
func tagsOf(a *cut.Answer) (tags []string) {
	for _, u := range a.Used {
		for _, p := range u.Parts {
			tags = append(tags, p.Tag)
		}
	}
	tags = append(tags, a.Bought...)
	for _, g := range a.Panels {
		tags = append(tags, g.Tag)
	}
	for _, n := range a.NotPlaced {
		tags = append(tags, n.Tag)
	}
	slices.Sort(tags)
	return slices.Compact(tags)
}

// some lists the first of several tags, and counts the rest.
func some(tags []string) string {
	const most = 3
	if len(tags) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(tags[:most], ", "), len(tags)-most)
	}
	return strings.Join(tags[:len(tags)-1], ", ") + " and " + tags[len(tags)-1]
}
