package book

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Text returns the whole document as plain text: headings, tables with aligned columns, each figure as a line
// with what it shows.
func (d *Document) Text() string {
	var t typist
	t.line("%s", strings.ToUpper(d.Title))
	t.line("%s", d.Subtitle)
	t.line("%s, %s, measured in %s", strings.ToUpper(string(d.Paper)), d.Language, d.Units)
	for _, s := range d.Sections {
		t.line("%s", "")
		if s.NewPage {
			t.line("%s", "──── new sheet")
		}
		t.line("== %s [%s]", s.Title, s.ID)
		for _, b := range s.Blocks {
			t.line("%s", "")
			t.block(b)
		}
	}
	return t.String()
}

// typist writes lines without spaces at their ends.
type typist struct{ strings.Builder }

func (t *typist) line(format string, args ...any) {
	t.WriteString(strings.TrimRight(fmt.Sprintf(format, args...), " ") + "\n")
}

func (t *typist) block(b Block) {
	switch b := b.(type) {
	case Paragraph:
		t.line("%s", b.Words)
	case Table:
		t.table(b)
	case Figure:
		t.line("[figure %s: %s — %s]", b.Drawing.ID, b.Caption, b.Drawing.Alt)
	case Note:
		t.line("(%s) %s", b.Tone, b.Title)
		t.items("- ", b.Items)
	case List:
		mark := "- "
		if b.Ticks {
			mark = "[ ] "
		}
		t.items(mark, b.Items)
	case Step:
		t.step(b)
	}
}

func (t *typist) items(mark string, items []string) {
	for _, i := range items {
		t.line("%s%s", mark, i)
	}
}

func (t *typist) step(s Step) {
	t.line("[ ] %d  %s", s.Number, s.Title)
	for _, f := range []struct{ name, words string }{{"after", s.After}, {"parts", s.Parts}, {"tool", s.Tool}, {"time", s.Time}} {
		if f.words != "" {
			t.line("    %-6s %s", f.name, f.words)
		}
	}
	t.items("    · ", s.Measures)
	t.items("    ! ", s.Cautions)
}

// table writes columns as wide as their widest words.
func (t *typist) table(b Table) {
	t.line("%s", b.Caption)
	var head []string
	for _, c := range b.Columns {
		head = append(head, c.Head)
	}
	lines := append([][]string{head}, b.Rows...)
	if b.Foot != nil {
		lines = append(lines, b.Foot)
	}
	wide := make([]int, len(b.Columns))
	for _, l := range lines {
		for i, w := range l {
			wide[i] = max(wide[i], utf8.RuneCountInString(w))
		}
	}
	for _, l := range lines {
		var out strings.Builder
		for i, w := range l {
			space := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(w))
			if b.Columns[i].Align == Right {
				w = space + w
			} else {
				w += space
			}
			out.WriteString("  " + w)
		}
		t.line("%s", out.String())
	}
}
