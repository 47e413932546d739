package build_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rodwright/build"
	"rodwright/finding"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/shop"
)

func swayOf(t testing.TB, b *build.Build) finding.Finding {
	t.Helper()
	for _, f := range b.Findings {
		if f.Check == "sway" && strings.HasSuffix(f.Place, "pushed along it") {
			return f
		}
	}
	t.Fatal("nothing is said of the sway")
	return finding.Finding{}
}

func TestAPushTestOfTheJournalMakesTheSwayMeasured(t *testing.T) {
	file := filepath.Join("..", "examples", "packing-table.piece.yaml")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	doc, s := read(t, file, text), shop.Sample()
	plain := derive(t, doc, s, nil)
	rec := &journal.Record{Pushes: []journal.Test{{Push: journal.Push{On: "top", Towards: "left", Force: 20, Unit: "lb", Moved: journal.MM(length.Inch / 8)}, Number: 1}}}
	memo := build.NewMemo(100)
	for range 2 { // with an empty and a warm memo
		b, err := build.Derive(build.Input{Document: doc, Shop: s, Record: rec}, memo)
		if err != nil {
			t.Fatal(err)
		}
		if b.Hash == plain.Hash {
			t.Error("a push test leaves the input alike")
		}
		f := swayOf(t, b)
		// 20 lb are 88.96 N; the movement grows with the push
		push := f.Because[1].Value
		if want := 25.4 / 8 * push / 88.96443; f.Figure.Value < 0.98*want || f.Figure.Value > 1.02*want {
			t.Errorf("it sways %v mm under %v N, want %v", f.Figure.Value, push, want)
		}
		if !strings.Contains(strings.Join(f.Assumptions(), "; "), "measured: ") {
			t.Errorf("assumed: %q", f.Assumptions())
		}
	}
}
