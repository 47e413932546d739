package steps

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"rodwright/journal"
	"rodwright/part"
	"rodwright/trade/abrasive"
)

// surface plans sanding and finish of all panels together and returns the step after which they may be
// put together, and the one after which they may be used. shaped are the last steps of each panel.
func (p *planner) surface(panels []part.Part, shaped []int) (handled, cured int) {
	panels, all := left(panels, journal.Sanded), panels
	if len(panels) == 0 {
		return p.finish(all, slices.Max(append(shaped, 0)))
	}
	area := surfaceM2(panels)
	grits, err := abrasive.Steps(p.s.Settings.FirstGrit, p.s.Settings.LastGrit)
	if err != nil {
		p.err = fmt.Errorf("the shop's grits: %w", err)
		return 0, 0
	}
	sanded := p.do(job{
		work: "sand", parts: tags(panels), units: area * float64(len(grits)), settings: len(grits), after: shaped,
		title: fmt.Sprintf("Sand all panels, faces and edges: %s", gritText(grits)),
		measures: []string{
			"faces with the grain or the sander moving slowly; edges with a block held against a fence, so that they stay square",
			"no grit left out: its scratches would show under the finish",
			"brush the dust off between grits; look along the wood towards a lamp before the next",
		},
	})
	return p.finish(all, sanded)
}

// surfaceM2 is the area of both faces and all edges of the panels.
func surfaceM2(panels []part.Part) (area float64) {
	for _, q := range panels {
		area += float64(q.Count) * (2*q.FaceM2 + q.EdgeM2)
	}
	return area
}

func gritText(grits []int) string {
	texts := make([]string, len(grits))
	for i, g := range grits {
		texts[i] = strconv.Itoa(g)
	}
	return "grits " + strings.Join(texts, ", ")
}

// finish plans the coats and the cure.
func (p *planner) finish(panels []part.Part, after int) (handled, cured int) {
	if panels = left(panels, journal.Coated); len(panels) == 0 {
		return after, after
	}
	area := surfaceM2(panels)
	f := p.finishing(p.s.Settings.Finish)
	coats := p.s.Settings.Coats
	for n := 1; n <= coats; n++ {
		wait := f.recoatH
		if n == coats {
			wait = f.handleH
		}
		j := job{
			work: "coat", parts: tags(panels), units: area, after: before(after), waitH: wait,
			title:    fmt.Sprintf("Coat %d of %d: %s on both faces and all edges, in one session", n, coats, f.name),
			measures: append([]string{"both faces the same day: a board that is open on one side only cups"}, f.lines...),
			cautions: f.cautions, assumed: f.assumed,
		}
		if n == coats {
			j.measures = append(j.measures, "handle after "+hours(wait))
		} else {
			j.measures = append(j.measures, "next coat after "+hours(wait)+", and only when it is no longer sticky")
		}
		after = p.do(j)
	}
	cured = p.do(job{
		work: "cure", parts: tags(panels), after: before(after), waitH: f.cureH,
		title:    fmt.Sprintf("Let the %s cure for %s; it goes to its user when the finish is hard, not when the last coat is on", f.name, hours(f.cureH)),
		measures: []string{"still sticky after that: it was too thick or wiped too late; wash the soft film off and begin again thinner"},
		assumed:  f.assumed,
	})
	return after, cured
}

// hours writes a wait as a person says it: 45 min, 6 h, 14 days.
func hours(h float64) string {
	switch {
	case h < 1:
		return strconv.FormatFloat(h*60, 'f', 0, 64) + " min"
	case h < 48:
		return strconv.FormatFloat(math.Round(h*100)/100, 'f', -1, 64) + " h"
	}
	return strconv.FormatFloat(math.Round(h/2.4)/10, 'f', -1, 64) + " days"
}
