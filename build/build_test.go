package build_test

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"rodwright/build"
	"rodwright/finding"
	"rodwright/shop"
)

func example(t testing.TB, name string) *build.Build {
	t.Helper()
	file := filepath.Join("..", "examples", name+".piece.yaml")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return derive(t, read(t, file, text), shop.Sample(), nil)
}

// object is a build as a program reads it.
func object(t testing.TB, b *build.Build) map[string]any {
	t.Helper()
	text, err := b.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var o map[string]any
	if err := json.Unmarshal(text, &o); err != nil {
		t.Fatal(err)
	}
	return o
}

func TestTheStandTipsToTheBackOnPurposeAndFailsNothingElse(t *testing.T) {
	for _, f := range example(t, "stepped-stand").Findings {
		fails := f.Verdict == finding.Fails
		if f.Check == "tip" && strings.HasPrefix(f.Place, "to the back") || f.Check == "push" && strings.Contains(f.Place, "top, to the back") {
			if !fails || f.Mend == "" || f.Caution == "" || !strings.Contains(f.Place, "watering cans") {
				t.Errorf("to the back: %v, mend %q", f.Verdict, f.Mend)
			}
		} else if fails {
			t.Errorf("%s fails: %s", f.Check, f.Place)
		}
	}
}

func TestTheSmallExamplesStand(t *testing.T) {
	for _, name := range []string{"low-bench", "packing-table", "wall-shelf"} {
		for _, f := range example(t, name).Findings {
			if f.Verdict == finding.Fails {
				t.Errorf("%s: %s fails: %s", name, f.Check, f.Place)
			}
		}
	}
}

// Counted by hand from the document: front posts two pipes each, back posts three, three rails; a cap, a
// tee and a flange on each front post, a second tee on each back post.
func TestTheStandHasThirteenPipesFourteenJointsAndNoUnion(t *testing.T) {
	b := example(t, "stepped-stand")
	if p, j := len(b.Resolved.Sticks), len(b.Resolved.Nodes); p != 13 || j != 14 || b.Parts.Totals.Unions != 0 {
		t.Errorf("%d pipes, %d joints, %d unions", p, j, b.Parts.Totals.Unions)
	}
}

// A rectangle of stretchers is one closed loop, by hand; its union stands in the back stretcher.
func TestThePackingTablesRectangleNeedsOneUnion(t *testing.T) {
	b := example(t, "packing-table")
	if n := b.Parts.Totals.Unions; n != 1 {
		t.Fatalf("%d unions", n)
	}
	at := b.Resolved.Nodes[b.Resolved.Loops[0].Union]
	if !strings.Contains(at.Place, "back stretcher") {
		t.Errorf("the union stands at %s", at.Place)
	}
}

// The counts are those of the comment at the top of the example.
func TestTheLargeExampleIsAsLargeAsTheBudgetsSay(t *testing.T) {
	b := example(t, "large")
	notches, holes := 0, 0
	for _, p := range b.Resolved.Panels {
		for _, f := range p.Features {
			switch f.Kind {
			case "notch":
				notches++
			case "hole":
				holes++
			}
		}
	}
	if len(b.Resolved.Panels) != 12 || len(b.Resolved.Sticks) != 60 || notches+holes != 40 {
		t.Errorf("%d panels, %d sticks, %d notches, %d holes", len(b.Resolved.Panels), len(b.Resolved.Sticks), notches, holes)
	}
}

func TestTheObjectHasTheKeysOfTheContract(t *testing.T) {
	o := object(t, example(t, "stepped-stand"))
	for _, key := range strings.Fields("piece shop unit input_hash parts totals findings cut buy steps time price unknown") {
		if _, ok := o[key]; !ok {
			t.Errorf("no %s", key)
		}
	}
	for section, keys := range map[string]string{
		"totals": "mass_kg held_kg board_feet pipe_mm fittings unions screws",
		"cut":    "stick panel sheet",
		"time":   "hands_h calendar_days",
		"price":  "material hours total",
	} {
		for _, key := range strings.Fields(keys) {
			if _, ok := o[section].(map[string]any)[key]; !ok {
				t.Errorf("no %s.%s", section, key)
			}
		}
	}
	for list, keys := range map[string]string{
		"parts":    "tag name kind material count",
		"findings": "check parts verdict because assumed",
		"buy":      "item name count unit price from_rack",
		"steps":    "n title parts tool substitutes hands_h wait_h cautions after",
	} {
		for _, key := range strings.Fields(keys) {
			if _, ok := o[list].([]any)[0].(map[string]any)[key]; !ok {
				t.Errorf("no %s[].%s", list, key)
			}
		}
	}
}

func TestAPriceNobodyKnowsIsNullAndNamed(t *testing.T) {
	file := "../examples/low-bench.piece.yaml"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	doc := read(t, file, text)
	o := object(t, derive(t, doc, shop.Sample().Without("tee 3/4"), nil))
	if got := o["price"].(map[string]any)["total"]; got != nil {
		t.Errorf("total is %v although the tees have no price", got)
	}
	if !slices.Contains(o["unknown"].([]any), any("tee 3/4")) {
		t.Errorf("unknown: %v", o["unknown"])
	}
	for _, l := range o["buy"].([]any) {
		line := l.(map[string]any)
		if line["item"] == "tee 3/4" && line["price"] != nil {
			t.Errorf("the tees cost %v", line["price"])
		}
	}
}

func TestTheSampleShopKnowsAllPricesOfTheExamples(t *testing.T) {
	for _, name := range []string{"stepped-stand", "low-bench", "packing-table", "wall-shelf", "large"} {
		if u := example(t, name).Quote.Unknown; len(u) > 0 {
			t.Errorf("%s: not known: %q", name, u)
		}
	}
}

func TestTheHashFollowsTextAndShopButNotTheFilesName(t *testing.T) {
	text, err := os.ReadFile("../examples/low-bench.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	hash := func(name string, text []byte, s *shop.Shop) string {
		return derive(t, read(t, name, text), s, nil).Hash
	}
	s := shop.Sample()
	a := hash("a", text, s)
	if a != hash("b", text, s) {
		t.Error("the file's name changes the hash")
	}
	if a == hash("a", append(bytes.Clone(text), "# later\n"...), s) || a == hash("a", text, s.Without("tee 3/4")) {
		t.Error("another text or shop has the same hash")
	}
}

func TestLengthsInJSONKeepTheNanometre(t *testing.T) {
	o := object(t, example(t, "stepped-stand"))
	// 1 1/16 in = 26.9875 mm by hand.
	top := o["parts"].([]any)[0].(map[string]any)["finished_mm"].([]any)
	if want := []any{1066.8, 482.6, 26.9875}; !slices.Equal(top, want) {
		t.Errorf("deep board is %v mm, want %v", top, want)
	}
}

func TestOneMemoServesManyAtOnce(t *testing.T) {
	file := "../examples/large.piece.yaml"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	memo, s, doc := build.NewMemo(4), shop.Sample(), read(t, file, text)
	var wg sync.WaitGroup
	got := make([][]byte, 8)
	for i := range got {
		wg.Go(func() {
			if b, err := build.Derive(build.Input{Document: doc, Shop: s}, memo); err == nil {
				got[i], _ = b.JSON()
			}
		})
	}
	wg.Wait()
	for i := range got {
		if len(got[i]) == 0 || !bytes.Equal(got[i], got[0]) {
			t.Fatalf("derivation %d differs", i)
		}
	}
	if memo.Len() > 4 {
		t.Errorf("the memo keeps %d results, bound 4", memo.Len())
	}
}

func TestAMemoForgetsWhatWasNotUsedForLongest(t *testing.T) {
	m := build.NewMemo(2)
	made := 0
	keep := func(key string) {
		m.Keep("stage", []byte(key), func() any { made++; return key })
	}
	keep("a")
	keep("b")
	keep("a") // b is now the older
	keep("c") // b goes
	keep("a")
	if made != 3 {
		t.Errorf("computed %d times, want 3", made)
	}
	keep("b")
	if made != 4 || m.Len() != 2 {
		t.Errorf("computed %d times and kept %d", made, m.Len())
	}
	if got := (*build.Memo)(nil).Keep("stage", nil, func() any { return math.Pi }); got != math.Pi {
		t.Errorf("no memo gives %v", got)
	}
}

func BenchmarkDeriveLarge(b *testing.B) {
	text, err := os.ReadFile("../examples/large.piece.yaml")
	if err != nil {
		b.Fatal(err)
	}
	s := shop.Sample()
	b.Run("cold", func(b *testing.B) {
		for b.Loop() {
			derive(b, read(b, "large", text), s, nil)
		}
	})
	b.Run("one edit", func(b *testing.B) {
		memo := build.NewMemo(64)
		derive(b, read(b, "large", text), s, memo)
		edited := bytes.Replace(text, []byte("step:        {is: 13 in"), []byte("step:        {is: 13 1/2 in"), 1)
		if bytes.Equal(edited, text) {
			b.Fatal("the edit changes nothing")
		}
		for b.Loop() {
			derive(b, read(b, "large", edited), s, memo)
		}
	})
	b.Run("read alone", func(b *testing.B) {
		for b.Loop() {
			read(b, "large", text)
		}
	})
}
