package part

import (
	"slices"

	"rodwright/trade/pipe"
)

// fittings takes off every joint but bare ends: one part per kind and size, the kinds in the order of the
// trade's list, the sizes of a kind in the order of the document.
func (t *takeOff) fittings() error {
	t.list.NodeTags = make([]string, len(t.r.Nodes))
	var parts []Part
	for i, n := range t.r.Nodes {
		if n.Kind == pipe.None {
			continue
		}
		at := slices.IndexFunc(parts, func(p Part) bool { return p.Fitting == n.Kind && p.Material == n.Size.ID })
		if at < 0 {
			f, err := t.fitting(i, n.Size)
			if err != nil {
				return err
			}
			at = len(parts)
			parts = append(parts, Part{
				Kind: Fitting, Name: n.Kind.Words(), Fitting: n.Kind, Material: n.Size.ID,
				MassKg: f.MassKg, At: n.At, Assumed: words(f.Assumed, f.MassAssumed),
			})
		}
		parts[at].Count++
		parts[at].Indexes = append(parts[at].Indexes, i)
	}
	order := pipe.Kinds()
	slices.SortStableFunc(parts, func(a, b Part) int {
		return slices.Index(order, a.Fitting) - slices.Index(order, b.Fitting)
	})
	t.add("F", parts, t.list.NodeTags)
	return nil
}
