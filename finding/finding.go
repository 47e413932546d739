// Package finding holds what a check says of a piece: a verdict with its figure, its limit, the reason,
// what was assumed and the smallest change that mends it.
//
// Start with [Judge]. The package computes no check.
package finding

import "rodwright/figure"

// Verdict is what a check came to.
type Verdict uint8

// The verdicts, from good to bad; Unknown says that something needed is missing.
const (
	Stands Verdict = iota
	Tight
	Fails
	Unknown
)

// String returns the verdict as it is written in JSON and shown to a maker.
func (v Verdict) String() string { return [...]string{"stands", "tight", "fails", "unknown"}[v] }

// Sense says on which side of its limit a figure must stay.
type Sense uint8

// A figure must be at most, or at least, its limit.
const (
	AtMost Sense = iota
	AtLeast
)

// String returns the sense as it is written in JSON and shown to a maker: at most, at least.
func (s Sense) String() string { return [...]string{"at most", "at least"}[s] }

// tightShare is the part of a limit within which a verdict is tight: over 0.8 of a maximum, under 1.2 of
// a minimum. Common practice, no source.
const tightShare = 0.2

// Judge compares a value with its limit. A maximum of zero can't be tight: the value stands at or below
// it, or fails.
func Judge(value, limit float64, s Sense) Verdict {
	if s == AtLeast {
		switch {
		case value < limit:
			return Fails
		case value < limit*(1+tightShare):
			return Tight
		}
		return Stands
	}
	switch {
	case value > limit:
		return Fails
	case limit > 0 && value > limit*(1-tightShare):
		return Tight
	}
	return Stands
}

// Finding is what one check says of one place of the piece.
type Finding struct {
	Check   string   // the check's name, for example movement
	Parts   []string // tags of the physical parts it speaks of
	Place   string   // the place in words, for example "deep board at back left post"
	Verdict Verdict
	Figure  figure.Figure
	Limit   figure.Figure // zero when Verdict is Unknown
	Sense   Sense         // the side of the limit on which the figure must stay
	Because []figure.Figure
	Assumed []string // in words; the figures' own assumptions are added by [Finding.Assumptions]
	Missing string   // for Unknown: what must be known first
	Mend    string   // the smallest change that mends it; empty when it stands
	Caution string   // where the work or the fault can hurt someone
	View    View
	Picture Picture // nothing set where the figure says it all
}

// View says what a drawing should show of a finding; only package draw draws it.
type View struct {
	Tags  []string // the parts to show
	From  string   // front, side or top; empty where any will do
	Marks []Mark
}

// Mark is a point of the piece to point at, in millimetres.
type Mark struct {
	At   [3]float64
	Text string
}

// Assumptions returns everything that the finding takes for granted, its figures' assumptions included,
// each once, in order.
func (f Finding) Assumptions() []string {
	all := append([]string(nil), f.Assumed...)
	for _, fig := range append([]figure.Figure{f.Figure, f.Limit}, f.Because...) {
		all = append(all, fig.Assumed...)
	}
	seen := map[string]bool{}
	out := all[:0]
	for _, a := range all {
		if !seen[a] {
			seen[a] = true
			out = append(out, a)
		}
	}
	return out
}

// Worst returns the worst verdict of all findings: fails, then unknown, then tight. No findings stand.
func Worst(fs []Finding) Verdict {
	rank := [...]int{Stands: 0, Tight: 1, Unknown: 2, Fails: 3}
	worst := Stands
	for _, f := range fs {
		if rank[f.Verdict] > rank[worst] {
			worst = f.Verdict
		}
	}
	return worst
}
