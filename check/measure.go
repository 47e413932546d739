package check

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/piece"
)

var measureFormula = figure.Formula{
	Text:   "a distance is measured on the standing frame when at worst it is off by more than the panel allows",
	Source: "common practice, no source: wood is cut to the frame as it stands",
	Range:  "distances between posts in plan that openings, gaps and overlaps of panels depend on",
}

// mostTold is how many distances are written out in one finding.
const mostTold = 8

// Measure says which distances must be measured on the standing frame before wood is cut, in the words that the journal
// takes. A distance that the journal has is done.
func Measure(p *Piece) []finding.Finding {
	chains := p.chains()
	if len(chains) == 0 {
		return nil
	}
	var left, parts []string
	done := 0
	for _, c := range chains {
		switch {
		case c.worst <= c.allows:
			continue
		case c.measured > 0:
			done++
			continue
		}
		for _, i := range c.panels {
			parts = append(parts, p.Parts.PanelTags[i])
		}
		for _, tape := range c.tapes {
			left = add(left, tape)
		}
	}
	if len(parts) == 0 {
		for _, c := range chains {
			parts = append(parts, p.Parts.PanelTags[c.panel])
		}
	}
	f := finding.Finding{
		Check: "measure", Place: "the standing frame, before wood is cut", Parts: tags(parts...), View: finding.View{From: "top"},
		Figure: figure.Of("distances to measure", float64(len(left)), figure.Count, &measureFormula,
			figure.In("measured", float64(done), figure.Count), figure.In("looked at", float64(len(chains)), figure.Count)),
		Limit: figure.Of("allowed", 0, figure.Count, nil),
	}
	f.Because = []figure.Figure{f.Figure}
	if len(left) > 0 {
		f.Verdict = finding.Tight
		f.Assumed = []string{"the frame is built first, its joints wrenched, and stands square"}
		f.Mend = "measure before cutting, to 1/32 in: " + tapes(left)
	}
	return []finding.Finding{f}
}

// tapes lists what to measure.
func tapes(of []string) string {
	words := strings.Join(of[:min(len(of), mostTold)], "; ")
	if more := len(of) - mostTold; more > 0 {
		words += fmt.Sprintf("; and %d more like these", more)
	}
	return words
}

// inLine returns the post from which a tape runs along the axis to another: the first itself, else one that stands
// beside it; -1 where none does, or where either is no post.
func (p *Piece) inLine(from, to, axis int) int {
	if from < 0 || to < 0 {
		return -1
	}
	at := func(stick int) [2]int64 {
		v := p.Nodes[p.Sticks[stick].A].At
		return [2]int64{int64(v.X), int64(v.Y)}
	}
	a, b := at(from), at(to)
	want := b
	want[axis] = a[axis]
	if a == want {
		return from
	}
	for i, s := range p.Sticks {
		if s.Role == piece.PostRole && at(i) == want {
			return i
		}
	}
	return -1
}

// toldPosts are the posts between which distances along one axis were measured on the standing frame.
type toldPosts struct {
	names []string
	next  [][]int
}

// toldPosts sorts the standing distances that hold by the axis they lie along. A distance that follows from a pipe's own
// length was not measured on the frame.
func (p *Piece) toldPosts() (out [2]*toldPosts) {
	for axis := range out {
		out[axis] = &toldPosts{}
	}
	if p.Standing == nil {
		return out
	}
	at := map[string]piece.Vec{}
	for i, s := range p.Sticks {
		if s.Role == piece.PostRole {
			at[p.postName(i)] = p.Nodes[s.A].At
		}
	}
	for _, d := range p.Standing.Distances {
		a, knownA := at[d.From]
		b, knownB := at[d.To]
		if d.Number == 0 || d.Diagonal || d.Bearing != piece.Moves && d.Bearing != piece.Agrees || !knownA || !knownB {
			continue
		}
		axis := 0
		if (b.X - a.X).Abs() < (b.Y - a.Y).Abs() {
			axis = 1
		}
		out[axis].join(d.From, d.To)
	}
	return out
}

func (t *toldPosts) join(a, b string) {
	i, k := t.number(a), t.number(b)
	t.next[i] = append(t.next[i], k)
	t.next[k] = append(t.next[k], i)
}

func (t *toldPosts) number(name string) int {
	if i := slices.Index(t.names, name); i >= 0 {
		return i
	}
	t.names, t.next = append(t.names, name), append(t.next, nil)
	return len(t.names) - 1
}

// steps returns how many measured distances lead from one post to another; 0 where none do.
func (t *toldPosts) steps(from, to string) int {
	start := slices.Index(t.names, from)
	if start < 0 {
		return 0
	}
	far := map[int]int{start: 0}
	for queue := []int{start}; len(queue) > 0; queue = queue[1:] {
		for _, n := range t.next[queue[0]] {
			if _, seen := far[n]; !seen {
				far[n] = far[queue[0]] + 1
				queue = append(queue, n)
			}
		}
	}
	return far[slices.Index(t.names, to)]
}
