package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"rodwright/book"
	"rodwright/draw"
	"rodwright/length"
)

// shelf is a drawing of a board, full size in millimetres, at a scale.
func shelf(id string, width, height float64, per int64) *draw.Drawing {
	w, h := length.FromMM(width), length.FromMM(height)
	return &draw.Drawing{ID: id, Title: "A shelf", Alt: "A shelf from the front", Per: per, Marks: []draw.Mark{
		draw.Area{Pen: draw.Outline, Outer: draw.Rectangle(draw.Point{}, draw.Point{X: w, Y: h}), Fill: draw.LongWood},
		draw.Text{At: draw.Point{X: w / 2, Y: h / 2}, Words: "14 3/8", Height: 2.6, Anchor: draw.Middle},
		draw.Text{At: draw.Point{X: w / 4, Y: h / 2}, Words: "⌀ 9", Height: 2.6, Turned: true},
	}}
}

// bookOf is a document of one section.
func bookOf(blocks ...book.Block) *book.Document {
	return &book.Document{
		Title: "Shelf", Subtitle: "14 3/8 in long", Language: "en", Paper: book.A4, Units: "inches to 1/16",
		Sections: []book.Section{{ID: "one", Title: "One", Blocks: blocks}},
	}
}

func columns(heads ...string) (out []book.Column) {
	for _, h := range heads {
		out = append(out, book.Column{Head: h, Share: 1})
	}
	return out
}

func rowsOf(n int) (out [][]string) {
	for i := range n {
		out = append(out, []string{fmt.Sprintf("A%d", i+1), "board", "14 3/8 in"})
	}
	return out
}

func TestALongTableSaysItsHeadOnEachOfItsSheets(t *testing.T) {
	b := set(t, bookOf(book.Table{Caption: "All", Columns: columns("Tag", "Name", "Long"), Rows: rowsOf(300), Foot: []string{"", "all", "300"}}))
	heads := sheetsWith(b, "Tag")
	if len(heads) != len(b.Sheets)-1 || len(b.Sheets) < 7 {
		t.Errorf("the head stands on %d of %d sheets after the title's", len(heads), len(b.Sheets)-1)
	}
	for _, tag := range []string{"A1", "A150", "A300"} {
		if on := sheetsWith(b, tag); len(on) != 1 {
			t.Errorf("row %s stands on sheets %v", tag, on)
		}
	}
}

func TestNumbersOfAColumnEndOnOneLine(t *testing.T) {
	cols := columns("Tag", "Count")
	cols[1].Align = book.Right
	b := set(t, bookOf(book.Table{Columns: cols, Rows: [][]string{{"A1", "7"}, {"A2", "1250"}}}))
	var right []float64
	for _, w := range record(b, 1).words {
		if w.words == "7" || w.words == "1250" {
			right = append(right, w.right)
		}
	}
	if len(right) != 2 || right[0]-right[1] > 1e-6 || right[1]-right[0] > 1e-6 {
		t.Errorf("the numbers end at %v", right)
	}
}

func TestTheWidthsOfColumnsAddUp(t *testing.T) {
	table := book.Table{Columns: columns("Tag", "Why", strings.Repeat("wide", 12)), Rows: [][]string{{"A1", strings.Repeat("words ", 30), "1"}}}
	widths := columnWidths(table, 400)
	sum := widths[0] + widths[1] + widths[2]
	if d := sum - (400 - 2*gutter); d > 1e-9 || d < -1e-9 {
		t.Errorf("the columns are %v, together %g", widths, sum)
	}
	if least := measure("Tag", tableStyle.size, true); widths[0] < least || widths[0] > least+1 {
		t.Errorf("the column of tags is %g wide, want what it needs, %g", widths[0], least)
	}
}

func TestARowHigherThanASheetIsParted(t *testing.T) {
	set(t, bookOf(book.Table{Columns: columns("Tag", "Words"), Rows: [][]string{{"A1", strings.Repeat("sawn and planed ", 900)}, {"A2", "-"}}}))
}

func TestVeryLongWordsStayInTheirColumns(t *testing.T) {
	long := strings.Repeat("unbroken", 60)
	set(t, bookOf(
		book.Paragraph{Words: long}, book.List{Ticks: true, Items: []string{long}},
		book.Note{Tone: book.Caution, Title: long, Items: []string{long, long}},
		book.Table{Caption: long, Columns: columns(long, "b", "c"), Rows: [][]string{{"a", long, long}}},
		book.Step{Number: 1234, Title: long, Parts: long, Measures: []string{long}},
		book.Figure{Drawing: shelf("s", 60, 20, 1), Caption: long},
	))
}

func TestALongTitleAndManySectionsAreSet(t *testing.T) {
	d := bookOf()
	d.Title = strings.Repeat("Stand of many words ", 20)
	d.Sections = nil
	for i := range 150 {
		d.Sections = append(d.Sections, book.Section{ID: fmt.Sprint("s", i), Title: fmt.Sprintf("Chapter %d", i), Blocks: []book.Block{book.Paragraph{Words: "Words."}}})
	}
	set(t, d)
}

func TestAFigureTooLargeIsDrawnSmallerAndSaysSo(t *testing.T) {
	b := set(t, bookOf(book.Figure{Drawing: shelf("front", 3000, 4000, 5), Caption: "From the front, 1 : 5"}))
	if on := sheetsWith(b, "From the front, 1 : 5 (drawn smaller than its scale, to fit the sheet)"); !slices.Equal(on, []int{2}) {
		t.Errorf("the caption says so on sheets %v, want 2", on)
	}
	if on := sheetsWith(b, "One"); !slices.Equal(on, []int{1, 2}) {
		t.Errorf("its heading stands on sheets %v, want it in the contents and above the figure", on)
	}
}

func TestFiguresThatFitStandSideBySide(t *testing.T) {
	b := set(t, bookOf(
		book.Figure{Drawing: shelf("a", 60, 20, 1), Caption: "first"}, book.Figure{Drawing: shelf("b", 60, 40, 1), Caption: "second"},
		book.Figure{Drawing: shelf("c", 120, 40, 1), Caption: "third"},
	))
	at := map[string]inked{}
	for _, w := range record(b, 1).words {
		at[w.words] = w
	}
	if at["first"].bottom != at["second"].bottom || at["first"].right > at["second"].left || at["third"].above > at["second"].bottom {
		t.Errorf("the captions stand at %v, %v and %v", at["first"], at["second"], at["third"])
	}
}

func TestANoteOfManyLinesRunsOnInItsBox(t *testing.T) {
	items := slices.Repeat([]string{"Keep the guard on, and your hands behind the blade."}, 120)
	b := set(t, bookOf(book.Note{Tone: book.Wrong, Title: "Not known", Items: items}))
	if n := len(b.Sheets); n != 4 {
		t.Errorf("the book has %d sheets, want 4", n)
	}
}

func TestAStepIsWholeOnASheetWhereItFits(t *testing.T) {
	step := book.Step{Number: 1, Title: "Saw", Parts: "A1", Tool: "saw", Time: "1 h", After: "step 3",
		Measures: slices.Repeat([]string{"to 14 3/8 in"}, 20), Cautions: []string{"Guard on."}}
	var blocks []book.Block
	for n := range 5 {
		step.Number, step.Title = n+1, fmt.Sprint("Saw ", n+1)
		step.Measures = append(slices.Repeat([]string{"to 14 3/8 in"}, 20), fmt.Sprint("last of ", n+1))
		blocks = append(blocks, step)
	}
	b := set(t, bookOf(blocks...))
	for n := range 5 {
		from, to := sheetsWith(b, fmt.Sprint("Saw ", n+1)), sheetsWith(b, fmt.Sprint("last of ", n+1))
		if !slices.Equal(from, to) {
			t.Errorf("step %d runs from sheet %v to %v", n+1, from, to)
		}
	}
	step.Measures = slices.Repeat([]string{"to 14 3/8 in"}, 200)
	if n := len(set(t, bookOf(step)).Sheets); n < 4 {
		t.Errorf("a step higher than a sheet is set on %d sheets", n)
	}
}

func TestAHeadingIsNeverTheLastOnASheet(t *testing.T) {
	for lines := range 60 {
		d := bookOf(book.List{Items: slices.Repeat([]string{"a line"}, lines+1)})
		d.Sections = append(d.Sections, book.Section{ID: "two", Title: "Heading", Blocks: []book.Block{book.Paragraph{Words: "below it"}}})
		b, err := Of(d)
		if err != nil {
			t.Fatal(err)
		}
		if head, below := sheetsWith(b, "Heading"), sheetsWith(b, "below it"); !slices.Equal(head[1:], below) {
			t.Fatalf("after %d lines the heading stands on sheets %v and what it heads on %v", lines+1, head[1:], below)
		}
	}
}

func TestTheContentsSayWhereSectionsBegin(t *testing.T) {
	d := bookOf(book.Table{Columns: columns("Tag", "Name", "Long"), Rows: rowsOf(100)})
	d.Sections = append(d.Sections,
		book.Section{ID: "two", Title: "Two", NewPage: true, Blocks: []book.Block{book.Paragraph{Words: "x"}}},
		book.Section{ID: "three", Title: "Three", NewPage: true, Blocks: []book.Block{book.Paragraph{Words: "x"}}})
	b := set(t, d)
	var said []string
	for _, w := range record(b, 0).words {
		if slices.Contains([]string{"One", "Two", "Three", "2", "5", "6"}, w.words) {
			said = append(said, w.words)
		}
	}
	if want := []string{"One", "2", "Two", "5", "Three", "6"}; !slices.Equal(said, want) {
		t.Errorf("the contents say %v, want %v", said, want)
	}
	if on := sheetsWith(b, "Three"); !slices.Equal(on, []int{1, 6}) {
		t.Errorf("section Three stands on sheets %v", on)
	}
}

func TestWhatCannotBeSetIsRefusedWithItsPlace(t *testing.T) {
	table := func(change func(*book.Table)) book.Block {
		v := book.Table{Caption: "Parts", Columns: columns("a", "b"), Rows: [][]string{{"1", "2"}}}
		change(&v)
		return v
	}
	empty := bookOf()
	empty.Sections = nil
	paper := bookOf()
	paper.Paper = "a3"
	twice := bookOf()
	twice.Sections = append(twice.Sections, twice.Sections[0])
	unnamed := bookOf()
	unnamed.Sections[0].Title = " "
	titled := bookOf()
	titled.Title = "桌"
	for _, c := range []struct {
		name string
		d    *book.Document
		want string
	}{
		{"nothing", nil, "at least one section"},
		{"no sections", empty, "at least one section"},
		{"a paper that is not known", paper, `no paper "a3"; a book is printed on a4 or letter`},
		{"an id twice", twice, `section 2, One: its id "one"`},
		{"a section without a title", unnamed, "section 1: it has no title"},
		{"no columns", bookOf(table(func(t *book.Table) { t.Columns = nil })), `section One, block 1: the table "Parts" has no columns`},
		{"a column without width", bookOf(table(func(t *book.Table) { t.Columns[1].Share = 0 })), `column "b" needs a share`},
		{"a short row", bookOf(table(func(t *book.Table) { t.Rows[0] = []string{"1"} })), "row 1 has 1 cells for 2 columns"},
		{"a short foot", bookOf(table(func(t *book.Table) { t.Foot = []string{"1"} })), "its foot has 1 cells for 2 columns"},
		{"no drawing", bookOf(book.Figure{}), "the figure has no drawing"},
		{"an empty drawing", bookOf(book.Figure{Drawing: &draw.Drawing{ID: "none", Per: 1}}), `the drawing "none" is 0 × 0 mm`},
		{"a tone that is not known", bookOf(book.Note{Tone: "loud", Title: "x"}), `no tone "loud"`},
		{"an empty note", bookOf(book.Note{Tone: book.Remark}), "the note is empty"},
		{"no block", bookOf(nil), "<nil> is no block"},
		{"letters the type lacks", bookOf(book.Paragraph{Words: "saw the 桌子 off"}), `section One: the word "桌子" has U+684C ('桌')`},
		{"letters in a cell", bookOf(table(func(t *book.Table) { t.Rows[0][1] = "木" })), `the word "木" has U+6728`},
		{"letters in a title", titled, `the title: the word "桌" has U+684C`},
		{"letters in a drawing", bookOf(book.Figure{Drawing: &draw.Drawing{ID: "odd", Per: 1, Marks: []draw.Mark{
			draw.Text{Words: "木", Height: 3}}}}), `the drawing "odd": the word "木" has U+6728`},
		{"broken bytes", bookOf(book.Paragraph{Words: "ab\xff"}), "is not valid UTF-8"},
	} {
		if _, err := Of(c.d); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: the error is %v, want it to say %q", c.name, err, c.want)
		}
	}
}

func TestSignsAndUnusualLettersAreSet(t *testing.T) {
	set(t, bookOf(
		book.Paragraph{Words: "⌀ 3/8 ☐ ☑ ● ○ △ ▲ ° × ≈ ± – — ‘’ “” … é ü ß Ł ș ½ ² ₂ µ Ω"},
		book.Paragraph{}, book.List{}, book.Step{Number: 1}, book.Note{Tone: book.Remark, Items: []string{""}},
	))
}
