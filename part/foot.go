package part

import (
	"slices"

	"rodwright/piece"
	"rodwright/trade/caster"
	"rodwright/trade/pipe"
)

// stemmed reports whether such a foot is fixed by a threaded stem.
func stemmed(k piece.FootKind) bool { return k == piece.StemCaster || k == piece.Leveller }

// classOf returns the generic class of a caster or levelling foot: what the document does not say of it.
func classOf(f *piece.Feet) (caster.Class, error) {
	switch f.Kind {
	case piece.StemCaster:
		return caster.Nearest(caster.Stem, f.Wheel)
	case piece.PlateCaster:
		return caster.Nearest(caster.Plate, f.Wheel)
	}
	return caster.Nearest(caster.Foot, 0)
}

// feet counts casters and levelling feet, those with a lock apart. A post's own cap, flange or bare end is
// no part of its own.
func (t *takeOff) feet() ([]Part, error) {
	var parts []Part
	for i, f := range t.r.Feet {
		if !stemmed(f.Spec.Kind) && f.Spec.Kind != piece.PlateCaster {
			continue
		}
		p, err := t.foot(f)
		if err != nil {
			return nil, err
		}
		n := slices.IndexFunc(parts, func(q Part) bool { return q.Name == p.Name })
		if n < 0 {
			n = len(parts)
			parts = append(parts, p)
		}
		parts[n].Count++
		parts[n].Indexes = append(parts[n].Indexes, i)
	}
	return parts, nil
}

// foot describes one caster or levelling foot.
func (t *takeOff) foot(f piece.Foot) (Part, error) {
	class, err := classOf(f.Spec)
	if err != nil {
		return Part{}, t.wrong(f.Spec.Pos, err.Error(), "")
	}
	p := Part{Kind: Hardware, At: f.At, Assumed: words(f.Spec.Assumed...)}
	if f.Spec.Kind == piece.Leveller {
		p.Name, p.MassKg = class.String(), levelKg
		p.Assumed = append(p.Assumed, "a levelling foot weighs 0.1 kg, from memory")
		return p, nil
	}
	wheel := class.Wheel
	if f.Spec.Wheel > 0 {
		wheel = f.Spec.Wheel
	}
	class.Wheel = wheel
	p.Name = class.String()
	if f.Locked {
		p.Name += " with lock"
	}
	share := wheel.Inches() / 3
	p.MassKg = casterKg3 * share * share
	p.Assumed = append(p.Assumed, "casters weigh 0.55 kg at a 3 in wheel and go with its square, from memory")
	return p, nil
}

// stemThread returns the thread of the feet's stems and the bolt of their plates, in the parts of the pipe's
// standard.
func (t *takeOff) stemThread(f *piece.Feet) (thread, bolt string) {
	if f == nil {
		return "", ""
	}
	class, err := classOf(f)
	if err != nil {
		return "", ""
	}
	if t.doc.Pipe.Standard == pipe.ISO7 {
		return class.StemMetric, class.Bolt
	}
	return class.StemInch, class.Bolt
}
