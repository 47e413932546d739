package markup_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/piece/markup"
)

const stand = `# the stand in the greenhouse
sizes:
  length:    42 in      # the client's window
  low level: '17 1/2 in'
posts:
  front: {at: front corners, inset: 2 3/4 in, to: deep board} # ⅜ here
seats: [on front posts, around back posts]
note: |
  two
  lines
`

func TestAnEditChangesTheBytesOfOneScalarAndNothingElse(t *testing.T) {
	for _, c := range []struct {
		name        string
		path        []string
		value       string
		old, change string
	}{
		{"plain", []string{"sizes", "length"}, "48 in", "42 in", "48 in"},
		{"quoted, to plain", []string{"sizes", "low level"}, "18 in", "'17 1/2 in'", "18 in"},
		{"in braces", []string{"posts", "front", "inset"}, "side inset + ⅜", "2 3/4 in", "side inset + ⅜"},
		{"a comma in braces is quoted", []string{"posts", "front", "to"}, "a, b", "deep board", `"a, b"`},
		{"a comma outside is not", []string{"sizes", "length"}, "a, b", "42 in", "a, b"},
		{"a comment sign is quoted", []string{"sizes", "length"}, "a # b", "42 in", `"a # b"`},
		{"inch marks", []string{"sizes", "length"}, `1' 2 3/8"`, "42 in", `1' 2 3/8"`},
		{"a quote first", []string{"sizes", "length"}, `"x`, "42 in", `"\"x"`},
		{"a backslash", []string{"sizes", "length"}, `a\b`, "42 in", `"a\\b"`},
		{"a minus first", []string{"sizes", "length"}, "-3 in", "42 in", "-3 in"},
		{"nothing", []string{"sizes", "length"}, "", "42 in", `""`},
		{"spaces round it", []string{"sizes", "length"}, " a ", "42 in", `" a "`},
	} {
		t.Run(c.name, func(t *testing.T) {
			n := walk(t, stand, c.path)
			got, err := markup.Replace([]byte(stand), n, c.value)
			if err != nil {
				t.Fatal(err)
			}
			if want := strings.Replace(stand, c.old, c.change, 1); string(got) != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
			if again := walk(t, string(got), c.path); again.Text != c.value {
				t.Errorf("read back %q, want %q", again.Text, c.value)
			}
		})
	}
}

func walk(t *testing.T, text string, path []string) *markup.Node {
	t.Helper()
	n, err := markup.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range path {
		if n = n.Entry(key); n == nil {
			t.Fatalf("%v is not there", path)
		}
	}
	return n
}

func TestWhatIsNoSingleValueIsNotReplaced(t *testing.T) {
	for _, path := range [][]string{{"sizes"}, {"seats"}, {"note"}} {
		if out, err := markup.Replace([]byte(stand), walk(t, stand, path), "x"); err == nil {
			t.Errorf("%v was replaced:\n%s", path, out)
		}
	}
	n := walk(t, stand, []string{"sizes", "length"})
	if _, err := markup.Replace([]byte(stand), n, "two\nlines"); err == nil {
		t.Error("a value of two lines was written")
	}
	if _, err := markup.Replace([]byte("something else"), n, "x"); err == nil {
		t.Error("a text that was not read was edited")
	}
}

func TestLaw_AnyLineOfTextIsReadBackAsItWasWritten(t *testing.T) {
	paths := [][]string{{"sizes", "length"}, {"sizes", "low level"}, {"posts", "front", "inset"}}
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.StringMatching(`[ -~⅜″×–−é]{0,20}`).Draw(t, "value")
		path := rapid.SampledFrom(paths).Draw(t, "path")
		root, _ := markup.Parse([]byte(stand))
		n := root
		for _, key := range path {
			n = n.Entry(key)
		}
		out, err := markup.Replace([]byte(stand), n, value)
		if err != nil {
			t.Fatalf("%q: %v", value, err)
		}
		again, err := markup.Parse(out)
		if err != nil {
			t.Fatalf("%q: %v", value, err)
		}
		for _, key := range path {
			again = again.Entry(key)
		}
		if again.Text != value {
			t.Fatalf("wrote %q, read %q", value, again.Text)
		}
	})
}
