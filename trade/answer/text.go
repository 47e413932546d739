package answer

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// WriteText writes the answer for a person: first what to set the tape to, then the formula with the
// numbers in it and its source, then what was assumed and the cautions.
func (a *Answer) WriteText(w io.Writer) error {
	var b strings.Builder
	for i, r := range a.Answers {
		fmt.Fprintf(&b, "%s%s\n", strings.Repeat(" ", min(i, 1)*2), a.line(r, i > 0))
		if i == 0 && len(a.Answers) > 1 {
			b.WriteByte('\n')
		}
	}
	for _, r := range a.Because {
		b.WriteString("\n" + r.text())
	}
	paragraph(&b, "assumed", a.Assumed)
	paragraph(&b, "caution", a.Cautions)
	_, err := io.WriteString(w, b.String())
	return err
}

// line shows one result; those after the main one stand in columns.
func (a *Answer) line(r Result, column bool) string {
	text := r.Shown + "  " + r.Name
	if column {
		wide := 0
		for _, o := range a.Answers[1:] {
			wide = max(wide, utf8.RuneCountInString(o.Shown))
		}
		text = r.Shown + strings.Repeat(" ", wide-utf8.RuneCountInString(r.Shown)) + "  " + r.Name
	}
	if r.metric != "" {
		text += "  (" + r.metric + ")"
	}
	return text
}

// text shows a formula, below it the same with the numbers in it, what it came to, and where it is from.
func (r Reason) text() string {
	left, _ := sides(r.Formula)
	indent := "  " + strings.Repeat(" ", utf8.RuneCountInString(left))
	text := "  " + r.Formula + "\n"
	switch numbers := withNumbers(r.Formula, r.Inputs); {
	case strings.HasPrefix(numbers, "with "):
		text += indent + numbers + "\n"
	case numbers != "":
		text += indent + "= " + numbers + "\n"
	}
	text += indent + "= " + r.result + "\n"
	text += "  source: " + r.Source + "\n"
	if r.Range != "" {
		text += "  holds: " + r.Range + "\n"
	}
	return text
}

func paragraph(b *strings.Builder, head string, words []string) {
	if len(words) > 0 {
		b.WriteByte('\n')
	}
	for _, s := range words {
		fmt.Fprintf(b, "  %s: %s\n", head, s)
	}
}
