package book_test

import (
	"testing"

	"rodwright/book"
	"rodwright/build"
	"rodwright/draw/plot"
	"rodwright/finding"
)

func TestTheWorstFindingOfEachKindOfPictureIsShown(t *testing.T) {
	every(t, func(t *testing.T, b *build.Build, d *book.Document, _ string) {
		names, worst := finding.Names(b.Findings), map[string]finding.Finding{}
		ids := map[string]string{}
		for i, f := range b.Findings {
			kind := plot.Kind(f.Picture)
			ids[plot.ID(names[i])] = kind
			if w, there := worst[kind]; kind != "" && (!there || finding.Worst([]finding.Finding{w, f}) != w.Verdict) {
				worst[kind] = f
			}
		}
		shown := map[string]bool{}
		for _, s := range d.Sections {
			for _, block := range s.Blocks {
				fig, is := block.(book.Figure)
				if !is || s.ID != "what-the-checks-show" {
					continue
				}
				kind := ids[fig.Drawing.ID]
				if kind == "" || shown[kind] || fig.Caption == "" {
					t.Errorf("%s of kind %q: %q", fig.Drawing.ID, kind, fig.Caption)
				}
				shown[kind] = true
			}
		}
		if len(shown) != len(worst) {
			t.Errorf("%d kinds of picture shown, want %d", len(shown), len(worst))
		}
	})
}
