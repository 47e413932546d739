package markup_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rodwright/piece/markup"
)

func Example() {
	root, _ := markup.Parse([]byte("sizes:\n  depth: 010 # as typed\n"))
	depth := root.Entry("sizes").Entry("depth")
	fmt.Println(depth.Text, depth.Pos)
	text, _ := markup.Replace([]byte("sizes:\n  depth: 010 # as typed\n"), depth, "19 in")
	fmt.Print(string(text))
	// Output:
	// 010 {2 10}
	// sizes:
	//   depth: 19 in # as typed
}

// print writes a tree in one line: maps in braces, lists in brackets, scalars with their place.
func print(n *markup.Node) string {
	switch n.Kind {
	case markup.Scalar:
		return fmt.Sprintf("%q@%d:%d", n.Text, n.TextPos.Line, n.TextPos.Column)
	case markup.Map:
		var parts []string
		for _, e := range n.Entries {
			parts = append(parts, fmt.Sprintf("%s@%d:%d=%s", e.Key, e.KeyPos.Line, e.KeyPos.Column, print(e.Value)))
		}
		return "{" + strings.Join(parts, " ") + "}"
	case markup.List:
		var parts []string
		for _, v := range n.Items {
			parts = append(parts, print(v))
		}
		return "[" + strings.Join(parts, " ") + "]"
	}
	return "nothing"
}

func TestScalarsStayAsTheMakerWroteThem(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"a: 010", `{a@1:1="010"@1:4}`},
		{"a: 1_000", `{a@1:1="1_000"@1:4}`},
		{"a: 0x1F", `{a@1:1="0x1F"@1:4}`},
		{"a: 1e3", `{a@1:1="1e3"@1:4}`},
		{"a: .5", `{a@1:1=".5"@1:4}`},
		{"a: yes", `{a@1:1="yes"@1:4}`},
		{"a: true", `{a@1:1="true"@1:4}`},
		{"a: null", `{a@1:1="null"@1:4}`},
		{"a: ~", `{a@1:1="~"@1:4}`},
		{"a:", `{a@1:1=nothing}`},
		{"a: 3/4", `{a@1:1="3/4"@1:4}`},
		{"a: 14-3/8", `{a@1:1="14-3/8"@1:4}`},
		{"a: 2026-01-02", `{a@1:1="2026-01-02"@1:4}`},
		{"a: 1' 2 3/8\"", `{a@1:1="1' 2 3/8\""@1:4}`},
		{"a: 'it''s'", `{a@1:1="it's"@1:5}`},
		{`a: "say \"no\""`, `{a@1:1="say \"no\""@1:5}`},
		{"a: min(b; c) # least", `{a@1:1="min(b; c)"@1:4}`},
		{"a: {b: 13 × 15 × 3 in, c: ⅜}", `{a@1:1={b@1:5="13 × 15 × 3 in"@1:8 c@1:24="⅜"@1:27}}`},
		{"a: [front corners, {b: 1}]", `{a@1:1=["front corners"@1:5 {b@1:21="1"@1:24}]}`},
		{"a:\n  - b\n  - c: 2\n", `{a@1:1=["b"@2:5 {c@3:5="2"@3:8}]}`},
		{"a: |\n  two\n  lines\n", `{a@1:1="two\nlines"@1:4}`},
		{"deep board: 45–75 %\r\nb: 2\r\n", `{deep board@1:1="45–75 %"@1:13 b@2:1="2"@2:4}`},
		{"\uFEFFa: 1", `{a@1:1="1"@1:4}`},
		{"# only a comment\n", "nothing"},
		{"", "nothing"},
		{"---\na: 1\n", `{a@2:1="1"@2:4}`},
	} {
		root, err := markup.Parse([]byte(c.text))
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		if got := print(root); got != c.want {
			t.Errorf("%q:\n got %s\nwant %s", c.text, got, c.want)
		}
	}
}

func TestWhatNoDocumentNeedsIsRefusedWithItsPlace(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"a: &x 1", "1:4: anchors and aliases (& and *) are not used here"},
		{"a: *x", "1:4: anchors and aliases"},
		{"a: !!str 1", "1:4: tags (!) are not used here"},
		{"a: {<<: {b: 1}}", "1:5: merge keys (<<) are not used here"},
		{"a: 1\n---\nb: 2", "3:1: a second document begins here"},
		{"- a", "1:1: the document is a list, not names with values"},
		{"hello", "1:1: the document is a single value, not names with values"},
		{"a: 1\nb: 2\na: 3", `3:1: "a" is named twice, first at 1:1; give each a name of its own`},
		{"a: {b: 1, b: 2}", `1:11: "b" is named twice, first at 1:5`},
		{"a: one\n  two", "1:4: a value stands on one line"},
		{"a: \"one\n  two\"", "1:4: a value stands on one line"},
		{"a: [1, 2", "1:4: this list is not closed"},
		{"a: 'x", "1:4: this quote is not closed"},
		{"a: b: c", "1:4: a second colon in one entry"},
		{"\ta: 1", "a tab in the indent"},
		{"a: @x", "1:4: a value can't begin with this character"},
		{"a: \"3\" x", "1:8: text behind a value that is closed already"},
		{"a: 1\xff", "1:5: this byte is not UTF-8 text"},
		{"a: 1\x00", "1:5: the control character U+0000"},
		{"a: " + strings.Repeat("[", 21) + strings.Repeat("]", 21), "1:24: more than 20 brackets inside one another"},
		{"a: " + strings.Repeat("x", 2000), "1:2001: a line longer than 2000 characters"},
		{strings.Repeat("# no piece is as large as this\n", 1<<14), "1:1: the document is larger than"},
		{"a: [" + strings.Repeat(strings.Repeat("1,", 900)+"\n", 60) + "]", "the document has more than 50000 values"},
		{strings.Repeat("\n", 10_000), "10001:1: the document has more than 10000 lines"},
		{"a: {" + strings.Repeat(strings.Repeat("a: 1, ", 300)+"\n", 40) + "}", "more than 10000 entries"},
		{"? a\n: 1", "a name can't begin with ?"},
	} {
		_, err := markup.Parse([]byte(c.text))
		var e *markup.Error
		if !errors.As(err, &e) {
			t.Errorf("%.40q: got %v, want a *markup.Error", c.text, err)
			continue
		}
		if !strings.Contains(e.Error(), c.want) {
			t.Errorf("%.40q:\n got %s\nwant %s", c.text, e, c.want)
		}
	}
}

func seeds(f *testing.F) {
	f.Helper()
	names, err := filepath.Glob("../../examples/*.piece.yaml")
	if err != nil {
		f.Fatal(err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	for _, text := range []string{"a: &x [*x]", "a: {b: [c, 'd']}", "? a", "- - - -", "a: |\n b\n", "a: !t 1", "\uFEFFa: ⅜\r\n", "<<: *a", "a: \"\\x41\""} {
		f.Add([]byte(text))
	}
}

func FuzzParse(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, text []byte) {
		root, err := markup.Parse(text)
		var e *markup.Error
		switch {
		case err == nil && root == nil:
			t.Fatal("neither a tree nor an error")
		case err != nil && !errors.As(err, &e):
			t.Fatalf("the error is a %T", err)
		case err != nil:
			return
		}
		replaceEach(t, text, root)
	})
}

// replaceEach puts a new value into each scalar in turn: where that can be done, it must be read back, and
// all else must be as it was.
func replaceEach(t *testing.T, text []byte, root *markup.Node) {
	for i, n := range scalars(root) {
		out, err := markup.Replace(text, n, "7/8 in")
		var e *markup.Error
		if err != nil {
			if !errors.As(err, &e) {
				t.Fatalf("the error is a %T", err)
			}
			continue
		}
		again, err := markup.Parse(out)
		if err != nil {
			t.Fatalf("scalar %d at %v: %v after the edit:\n%s", i, n.Pos, err, out)
		}
		before, after := scalars(root), scalars(again)
		if len(before) != len(after) {
			t.Fatalf("%d scalars became %d:\n%s", len(before), len(after), out)
		}
		for j := range after {
			want := before[j].Text
			if j == i {
				want = "7/8 in"
			}
			if after[j].Text != want {
				t.Fatalf("scalar %d is %q after the edit of %d, want %q", j, after[j].Text, i, want)
			}
		}
	}
}

func scalars(n *markup.Node) (out []*markup.Node) {
	switch n.Kind {
	case markup.Scalar:
		out = append(out, n)
	case markup.Map:
		for _, e := range n.Entries {
			out = append(out, scalars(e.Value)...)
		}
	case markup.List:
		for _, v := range n.Items {
			out = append(out, scalars(v)...)
		}
	}
	return out
}
