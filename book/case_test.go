package book_test

import (
	"slices"
	"strings"
	"testing"

	"rodwright/book"
	"rodwright/build"
	"rodwright/draw"
	"rodwright/draw/marking"
	"rodwright/part"
)

// section returns the section of a book with the given id.
func section(t *testing.T, d *book.Document, id string) book.Section {
	t.Helper()
	i := slices.IndexFunc(d.Sections, func(s book.Section) bool { return s.ID == id })
	if i < 0 {
		t.Fatalf("%s has no section %s", d.Title, id)
	}
	return d.Sections[i]
}

// figure returns the first drawing of a section.
func figure(t *testing.T, s book.Section) *draw.Drawing {
	t.Helper()
	for _, b := range s.Blocks {
		if f, ok := b.(book.Figure); ok {
			return f.Drawing
		}
	}
	t.Fatalf("section %s has no drawing", s.ID)
	return nil
}

// listed returns the length and width that the cut list gives for a panel.
func listed(t *testing.T, d *book.Document, tag string) []string {
	t.Helper()
	for _, b := range section(t, d, "cut-list").Blocks {
		table, ok := b.(book.Table)
		if !ok {
			continue
		}
		for _, row := range table.Rows {
			if row[0] == tag {
				return []string{row[3], row[4]}
			}
		}
	}
	t.Fatalf("the cut list has no %s", tag)
	return nil
}

// A maker's list said 33 in where the drawing's opening was 34 in, and a reader cut by the list. Here both are
// made from one build: the whole length and width on a part's drawing are those of the cut list.
func TestCutListAndDrawingCannotDisagree(t *testing.T) {
	compared := 0
	every(t, func(t *testing.T, b *build.Build, d *book.Document, _ string) {
		for _, p := range b.Parts.Parts {
			if p.Kind != part.Panel || !marking.Needed(p) {
				continue
			}
			want := listed(t, d, p.Tag)
			drawn := map[draw.Axis]string{}
			for _, m := range figure(t, section(t, d, "mark-out-"+strings.ToLower(p.Tag))).Marks {
				if dim, ok := m.(draw.Dimension); ok && dim.Whole {
					if _, there := drawn[dim.Along]; !there {
						drawn[dim.Along] = dim.Words
					}
				}
			}
			for i, axis := range []draw.Axis{draw.AlongX, draw.AlongY} {
				compared++
				if number, _, _ := strings.Cut(strings.TrimPrefix(want[i], "≈ "), " in"); drawn[axis] != strings.TrimSuffix(number, " mm") {
					t.Errorf("%s is %s on the list and %s on its drawing", p.Tag, want[i], drawn[axis])
				}
			}
		}
	})
	if compared == 0 {
		t.Error("nothing was compared")
	}
}

// A reader of a bought plan had to find each size in running text. Here every part that is more than a rectangle
// has a drawing of its own, with its datum marked, and a row for each of its cuts.
func TestEveryPartThatIsMoreThanARectangleHasItsDrawingFromOneDatum(t *testing.T) {
	every(t, func(t *testing.T, b *build.Build, d *book.Document, _ string) {
		for _, p := range b.Parts.Parts {
			if p.Kind != part.Panel || !marking.Needed(p) {
				continue
			}
			s := section(t, d, "mark-out-"+strings.ToLower(p.Tag))
			datum := slices.ContainsFunc(figure(t, s).Flat(), func(m draw.Mark) bool {
				words, ok := m.(draw.Text)
				return ok && words.Words == "datum"
			})
			if !datum {
				t.Errorf("the drawing of %s marks no datum", p.Tag)
			}
			rows := 0
			for _, b := range s.Blocks {
				if table, ok := b.(book.Table); ok {
					rows += len(table.Rows)
				}
			}
			if rows < len(p.Features) {
				t.Errorf("%s has %d cuts and %d rows", p.Tag, len(p.Features), rows)
			}
		}
	})
}
