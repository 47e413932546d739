package markup_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"rodwright/piece/markup"
)

// numbered repeats a pattern with a number in it.
func numbered(pattern string, n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, pattern, i)
	}
	return b.String()
}

// Each text is as large as the bounds allow in one direction. The library's time grows with the square of
// some of them; a second is a hundred times what an honest document takes.
func TestAHostileTextCostsNoMoreThanALongHonestOne(t *testing.T) {
	for name, text := range map[string]string{
		"entries":         numbered("k%d: 1\n", 9_990),
		"entries in one":  "a: {" + numbered("k%d: 1,\n", 9_980) + "}",
		"items":           strings.Repeat("- 1\n", 9_990),
		"dashes":          strings.Repeat(strings.Repeat("- ", 900)+"\n", 140),
		"a long list":     "a: [" + strings.Repeat(strings.Repeat("1, ", 600)+"\n", 80) + "]",
		"comments":        strings.Repeat("a: 1 # c\n", 9_990),
		"open quotes":     strings.Repeat("a: '\n", 9_990),
		"one quote":       `a: "` + strings.Repeat("x\n", 9_990),
		"a block":         "a: |\n" + strings.Repeat(" x\n", 9_990),
		"a plain of many": "a: b\n" + strings.Repeat("  c\n", 9_990),
		"deeper and deeper": func() string {
			var b strings.Builder
			for i := range 700 {
				b.WriteString(strings.Repeat(" ", i) + "a:\n")
			}
			return b.String()
		}(),
		"questions": strings.Repeat("? ", 900),
		"anchors":   strings.Repeat("&a ", 600),
		"documents": strings.Repeat("---\n", 9_990),
	} {
		if len(text) > markup.MaxBytes {
			t.Errorf("%s: %d bytes are over the bound and show nothing", name, len(text))
		}
		start := time.Now()
		_, err := markup.Parse([]byte(text))
		if took := time.Since(start); took > 3*time.Second {
			t.Errorf("%s: %d bytes took %v (%v)", name, len(text), took, err)
		}
	}
}
