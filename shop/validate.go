package shop

import (
	"slices"

	"github.com/goccy/go-yaml/ast"

	"rodwright/length"
	"rodwright/trade/abrasive"
)

// rule is one thing that must hold for a shop to be worked with.
type rule struct {
	holds bool
	what  string
	want  string
}

// validate reports the first rule of the shop that does not hold, at the place of the file's beginning.
func (s *Shop) validate(top ast.Node) error {
	p, b, t := &s.Pipe, &s.Panel, &s.Settings
	rules := []rule{
		{sticksCut(p.NPT, p.Trim) && sticksCut(p.ISO, p.Trim), "pipe: a stick is not longer than its trim at both ends", "write sticks longer than 2 × trim"},
		{b.StripLeast <= b.StripMost && b.StripMost > 0, "panels: strip least is more than strip most", "write the narrowest strip as strip least"},
		{b.BowOver > 0, "panels: bow over is zero", "write the length over which the bow was measured, for example 8 ft"},
		{b.LeastMilled >= 0 && b.TailLeast > 0, "panels: tail least is zero", "write the shortest tail worth keeping, for example 24 in"},
		{t.HandsPerDay > 0, "settings: hands a day is zero", "write the hours of work in a day, for example 6"},
		{t.People > 0, "settings: people is zero", "write how many work in the shop"},
		{t.SagRatio > 0 && t.LastingRatio > 0, "settings: a sag ratio is zero", "write span ÷ sag, for example 600"},
		{t.SwayRatio > 0, "settings: sway ratio is zero", "write height ÷ sway, for example 200"},
		{t.LiftKg > 0, "settings: lift is zero", "write what one person lifts, for example 23"},
		{t.Coats > 0, "settings: coats is zero", "write at least 1"},
	}
	for _, r := range rules {
		if !r.holds {
			return fault(top, r.want, "%s", r.what)
		}
	}
	if _, err := abrasive.Steps(t.FirstGrit, t.LastGrit); err != nil {
		return fault(top, "write for example first grit: 80 and last grit: 180", "settings: %s", err)
	}
	return nil
}

// sticksCut reports whether something is left of every stick, and puts the longest first.
func sticksCut(sticks []length.Length, trim length.Length) bool {
	slices.SortFunc(sticks, func(a, b length.Length) int { return int(min(max(b-a, -1), 1)) })
	return len(sticks) > 0 && sticks[len(sticks)-1] > 2*trim
}
