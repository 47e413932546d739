package view

import (
	"fmt"
	"strings"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
)

// words tells the view to who can't see it: the piece, its two sizes, its panels, what it stands on and holds.
func (s scene) words(list *part.List, f length.Fineness) string {
	r := s.r
	wide, deep, high := f.Text(r.Max.X-r.Min.X), f.Text(r.Max.Y-r.Min.Y), f.Text(r.Max.Z-r.Min.Z)
	var text string
	switch s.side {
	case Right:
		text = fmt.Sprintf("The %s seen from the right: %s deep and %s high", r.Doc.Name, deep, high)
	case Top:
		text = fmt.Sprintf("The %s seen from above: %s wide and %s deep", r.Doc.Name, wide, deep)
	default:
		text = fmt.Sprintf("The %s seen from the front: %s wide and %s high", r.Doc.Name, wide, high)
	}
	if panels := s.seenPanels(list); len(panels) > 0 {
		text += ", with " + strings.Join(panels, ", ")
	}
	if things := s.held(); len(things) > 0 && s.side != Top {
		text += "; it holds " + strings.Join(things, ", ")
	}
	return text + "."
}

// seenPanels returns the panels that are seen, by name, tag and the level of their tops above the floor.
func (s scene) seenPanels(list *part.List) (out []string) {
	seen := map[string]bool{}
	for _, r := range s.rings {
		seen[r.words] = true
	}
	for _, p := range list.Parts {
		if p.Kind != part.Panel {
			continue
		}
		var tags []string
		for k := range p.Indexes {
			if words := panelTag(p, k); seen[words] {
				tags = append(tags, words)
			}
		}
		if len(tags) > 0 {
			out = append(out, p.Name+" "+strings.Join(tags, " and "))
		}
	}
	return out
}

// held returns what the piece holds, each kind once.
func (s scene) held() (out []string) {
	var last *piece.Hold
	for i := range s.r.Held {
		if h := s.r.Held[i].Spec; h != last {
			out, last = append(out, h.Name), h
		}
	}
	return out
}
