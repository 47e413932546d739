package steps_test

import (
	"context"
	"slices"
	"testing"

	"rodwright/cut"
	"rodwright/layout"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/steps"
)

func TestWorkFollowsTheLayoutsOfEveryPiece(t *testing.T) {
	s := shop.Sample()
	for _, name := range piece.Starters() {
		t.Run(name, func(t *testing.T) {
			r, list := resolved(t, starter(t, name), s)
			laid, err := layout.Lay(context.Background(), r, list, s, cut.Limits{Nodes: 500})
			if err != nil {
				t.Fatal(err)
			}
			var all []steps.Layout
			for _, l := range laid.All() {
				all = append(all, steps.Layout{Kind: steps.Kind(l.Kind), Material: l.Material, Answer: l.Answer})
			}
			w, err := steps.Plan(r, list, all, s)
			if err != nil {
				t.Fatal(err)
			}
			lawful(t, w, list)
			for _, l := range laid.Stick {
				st := step(t, w, " of "+l.Material+" at ")
				settings := map[any]bool{}
				for _, c := range l.Answer.Cuts {
					settings[c.Setting] = true
				}
				if st.Settings != len(settings) {
					t.Errorf("%s: the layout has %d settings", st.Title, len(settings))
				}
				for _, u := range l.Answer.Used {
					for _, q := range u.Parts {
						if !slices.Contains(st.Parts, q.Tag) {
							t.Errorf("%s is cut from %s and not in %s", q.Tag, u.Stock, st.Title)
						}
					}
				}
			}
		})
	}
}
