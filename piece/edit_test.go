package piece_test

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/piece"
)

func standText(t testing.TB) []byte {
	t.Helper()
	text, err := piece.Starter("stepped-stand")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func TestCommentsSurviveARoundTrip(t *testing.T) {
	text := standText(t)
	for _, c := range []struct{ path, value, old string }{
		{"sizes/low level", "18 in", "17 1/2 in"},
		{"panels/deep board/sits/2", "on side rails", "on back rail"},
		{"holds/trays/weight", "6 kg", "12 lb"},
		{"holds/2/count", "3", "2"},
		{"feet/casters/wheel", "100 mm", "3 in"},
		{"place/humidity", "40–80 %", "45–75 %"},
		{"piece", "a taller stand", "stepped stand"},
	} {
		was, at, err := piece.ValueAt(text, c.path)
		if err != nil || was != c.old {
			t.Errorf("%s is %q, %v; want %q", c.path, was, err, c.old)
			continue
		}
		out, err := piece.Edit(text, c.path, c.value)
		if err != nil {
			t.Errorf("%s: %v", c.path, err)
			continue
		}
		before, after := strings.Split(string(text), "\n"), strings.Split(string(out), "\n")
		for i := range before {
			want := before[i]
			if i+1 == at.Line {
				head := []rune(want)[:at.Column-1]
				want = string(head) + c.value + strings.TrimPrefix(strings.TrimPrefix(want, string(head)), c.old)
			}
			if after[i] != want {
				t.Errorf("%s: line %d\n got %s\nwant %s", c.path, i+1, after[i], want)
			}
		}
		if now, _, err := piece.ValueAt(out, c.path); err != nil || now != c.value {
			t.Errorf("%s is read back as %q, %v", c.path, now, err)
		}
		back, err := piece.Edit(out, c.path, c.old)
		if err != nil || !bytes.Equal(back, text) {
			t.Errorf("%s: editing it back does not give the text as it was (%v)", c.path, err)
		}
	}
}

func TestASizeInItsLongFormIsEditedAtItsFormula(t *testing.T) {
	text := []byte("sizes:\n  depth: {is: 19 in, origin: client} # ask again\n")
	out, err := piece.Edit(text, "sizes/depth", "20 in")
	if want := "sizes:\n  depth: {is: 20 in, origin: client} # ask again\n"; err != nil || string(out) != want {
		t.Errorf("got %q, %v", out, err)
	}
}

func TestAPathThatLeadsNowhereSaysWhatIsNear(t *testing.T) {
	text := standText(t)
	for _, c := range []struct{ path, want string }{
		{"sizes/low levle", "there is no sizes/low levle; near: low level"},
		{"panels/deep board", "panels/deep board is names with values, not a single value"},
		{"holds/3/count", "there is no holds/3; near: "},
		{"panel", "there is no panel; near: panels"},
		{"piece/name", "there is no piece/name"},
		{"", "there is no "},
	} {
		_, err := piece.Edit(text, c.path, "x")
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got %v, want %s", c.path, err, c.want)
		}
	}
	if _, err := piece.Edit([]byte("a: [1, 2"), "a", "x"); err == nil {
		t.Error("a text that can't be read was edited")
	}
	if _, err := piece.Edit(text, "piece", "two\nlines"); err == nil {
		t.Error("a value of two lines was written")
	}
}

func TestLaw_AnEditedSizeIsReadWithItsNewValue(t *testing.T) {
	text := standText(t)
	doc, err := piece.Read("f", text)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(64*16, 64*20).Draw(t, "sixty-fourths")
		l := length.Length(n) * in / 64
		out, err := piece.Edit(text, "sizes/low level", length.SixtyFourth.Text(l))
		if err != nil {
			t.Fatal(err)
		}
		again, err := piece.Read("f", out)
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range again.Sizes {
			want := doc.Sizes[i].Value
			switch s.Name {
			case "low level":
				want = l
			case "high level":
				want = l + 21*in
			}
			if s.Value != want {
				t.Fatalf("%s is %d nm, want %d", s.Name, s.Value, want)
			}
		}
	})
}
