package random

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"rodwright/length"
	"rodwright/piece"
	"rodwright/trade/pipe"
)

// Coverage counts in how many pieces each feature was found.
type Coverage map[string]int

// Add counts the features of one resolved piece.
func (c Coverage) Add(r *piece.Resolved) {
	for _, f := range Features(r) {
		c[f]++
	}
}

// Missing returns the features of [All] that no piece had.
func (c Coverage) Missing() []string {
	var out []string
	for _, f := range All() {
		if c[f] == 0 {
			out = append(out, f)
		}
	}
	return out
}

// String prints one feature a line, sorted, with its count.
func (c Coverage) String() string {
	var b strings.Builder
	for _, f := range slices.Sorted(maps.Keys(c)) {
		fmt.Fprintf(&b, "%6d  %s\n", c[f], f)
	}
	return b.String()
}

// All returns every feature that a thousand random pieces should have among them.
func All() []string {
	all := []string{
		"unit in", "unit mm", "standard npt", "standard iso7", "pipe of two sizes", "a size by formula",
		"wood", "sheet", "cut flat", "cut quarter", "cut mixed", "grain along the piece", "grain front to back", "turned panel",
		"role post", "role rail", "role arm", "role stick", "flange on a wall", "strap", "no strap", "closed loop", "several frames",
		"bands relieved", "bands ridden", "bands short", "round hole", "notch round a band", "notch round plain pipe", "feature with depth",
		"profile chamfer", "profile round-over", "profile bevel", "rounded corner", "things held", "voids", "a load of the maker", "a push of the maker", "chosen screw", "feet under a panel", "locked caster",
		"1 panel", "7 or 8 panels", "4 to 10 sticks", "30 to 40 sticks",
	}
	for _, k := range pipe.Kinds() {
		all = append(all, "joint "+string(k))
	}
	for _, s := range []piece.SeatKind{piece.OnPosts, piece.UnderPosts, piece.OnRails, piece.BetweenPosts, piece.AroundPosts, piece.OnFeet, piece.ByPlace} {
		all = append(all, "sits "+string(s))
	}
	for _, k := range []piece.FeatureKind{piece.NotchFeature, piece.HoleFeature, piece.SlotFeature, piece.CutOutFeature, piece.ReliefFeature} {
		all = append(all, "feature "+string(k))
	}
	for _, s := range []piece.PanelSide{piece.FrontSide, piece.BackSide, piece.LeftSide, piece.RightSide} {
		all = append(all, "opens to the "+string(s))
	}
	for _, k := range []piece.FootKind{piece.StemCaster, piece.PlateCaster, piece.Leveller, piece.CapFoot, piece.FlangeFoot, piece.BareFoot} {
		all = append(all, "foot "+string(k))
	}
	return all
}

// set collects features, each once.
type set map[string]bool

func (s set) when(is bool, feature string) {
	if is {
		s[feature] = true
	}
}

// Features returns what the resolved piece has, sorted, each once, in the words of [All].
func Features(r *piece.Resolved) []string {
	s := set{}
	s.document(r.Doc)
	s.frame(r)
	for _, p := range r.Panels {
		s.panel(p)
	}
	for _, f := range r.Feet {
		s.when(true, "foot "+string(f.Spec.Kind))
		s.when(f.Panel >= 0, "feet under a panel")
		s.when(f.Locked, "locked caster")
	}
	s.when(len(r.Held) > 0, "things held")
	return slices.Sorted(maps.Keys(s))
}

func (s set) document(d *piece.Document) {
	s.when(d.Unit == length.In, "unit in")
	s.when(d.Unit == length.MM, "unit mm")
	s.when(d.Pipe.ID != "", "standard "+string(d.Pipe.Standard))
	s.when(len(d.Sizes) > 0, "a size by formula")
	s.when(d.Joints != piece.Joints{}, "chosen screw")
	s.when(len(d.Voids) > 0, "voids")
	for _, l := range d.Loads {
		s.when(l.MassKg > 0, "a load of the maker")
		s.when(l.PushN > 0, "a push of the maker")
	}
	for _, g := range d.Rails {
		s.when(g.Bands != "", "bands "+string(g.Bands))
	}
	for _, g := range d.Arms {
		s.when(g.Bands != "", "bands "+string(g.Bands))
	}
}

func (s set) frame(r *piece.Resolved) {
	for _, n := range r.Nodes {
		s.when(true, "joint "+string(n.Kind))
		s.when(n.ToWall, "flange on a wall")
		s.when(n.Size.ID != r.Nodes[0].Size.ID, "pipe of two sizes")
	}
	for _, k := range r.Sticks {
		s.when(true, "role "+string(k.Role))
	}
	s.when(len(r.Loops) > 0, "closed loop")
	s.when(r.Groups > 1, "several frames")
	s.when(len(r.Panels) == 1, "1 panel")
	s.when(len(r.Panels) >= MostPanels-1, "7 or 8 panels")
	s.when(len(r.Sticks) >= LeastStick && len(r.Sticks) <= 10, "4 to 10 sticks")
	s.when(len(r.Sticks) >= 30 && len(r.Sticks) <= MostSticks, "30 to 40 sticks")
}

func (s set) panel(p piece.FlatPanel) {
	s.when(p.Spec.Sheet != "", "sheet")
	if w := p.Spec.Wood; w != nil {
		s.when(true, "wood")
		s.when(w.Cut != "", "cut "+string(w.Cut))
	}
	s.when(p.GrainX, "grain along the piece")
	s.when(!p.GrainX, "grain front to back")
	s.when(p.Spec.Turned, "turned panel")
	s.when(len(p.Spec.Corners) > 0, "rounded corner")
	straps := false
	for _, seat := range p.Spec.Seats {
		s.when(true, "sits "+string(seat.Kind))
	}
	for _, seat := range p.Seats {
		straps = straps || seat.Strap
		s.when(seat.Kind == piece.OnRails && p.Spec.Straps == 0, "no strap")
	}
	s.when(straps, "strap")
	for _, e := range p.Edges {
		s.when(true, "profile "+e.Profile)
	}
	for _, f := range p.Features {
		s.when(true, "feature "+string(f.Kind))
		s.when(f.Opens != piece.NoSide, "opens to the "+string(f.Opens))
		s.when(f.Round, "round hole")
		s.when(f.Kind == piece.NotchFeature && f.Node >= 0, "notch round a band")
		s.when(f.Kind == piece.NotchFeature && f.Node < 0, "notch round plain pipe")
		s.when(f.Depth > 0, "feature with depth")
	}
}
