package build_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"rodwright/build"
	"rodwright/cut"
	"rodwright/cut/wire"
	"rodwright/journal"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
)

// accepted is a layout of a task as the entry of that number accepts it, right or wrong.
func accepted(t testing.TB, of layout.Task, a *cut.Answer, number int64) journal.Laid {
	t.Helper()
	text, err := wire.JSON(a, length.MM, of.Kind != layout.OfSticks)
	if err != nil {
		t.Fatal(err)
	}
	return journal.Laid{Number: number, Actor: "anna", Layout: journal.Layout{
		Kind: string(of.Kind), Material: of.Material, Key: of.Key(), Cost: a.Cost, Bound: a.Bound, Answer: text,
	}}
}

// all accepts a layout of each task, as found returns it.
func all(t testing.TB, b *build.Build, found func(layout.Layout) *cut.Answer) *journal.Record {
	t.Helper()
	rec := &journal.Record{}
	for i, l := range b.Layout.All() {
		rec.Layouts = append(rec.Layouts, accepted(t, l.Task, found(l), int64(i+1)))
	}
	return rec
}

func deriveWith(t testing.TB, doc *piece.Document, s *shop.Shop, rec *journal.Record, memo *build.Memo) *build.Build {
	t.Helper()
	b, err := build.Derive(build.Input{Document: doc, Shop: s, Record: rec}, memo)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// apart returns the members of a build's JSON, but for those named.
func apart(t testing.TB, b *build.Build, names ...string) map[string]string {
	t.Helper()
	text, err := b.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var members map[string]json.RawMessage
	if err := json.Unmarshal(text, &members); err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for name, v := range members {
		out[name] = string(v)
	}
	maps.DeleteFunc(out, func(name, _ string) bool { return strings.Contains(" "+strings.Join(names, " ")+" ", " "+name+" ") })
	return out
}

// acceptedChangesNothingElse holds of a derived piece what an accepted layout may do: the stock is cut by it, and what
// is bought, done and paid follows; parts, findings and everything else stay. One that is derived anyway, or that can't
// be, changes nothing at all.
func acceptedChangesNothingElse(t *testing.T, name string, b *build.Build, doc *piece.Document, s *shop.Shop, memo *build.Memo) {
	t.Helper()
	for _, c := range []struct {
		what  string
		may   string // members that may differ
		state build.Acceptance
		found func(layout.Layout) *cut.Answer
	}{
		{"the derived layout", "", build.Taken, func(l layout.Layout) *cut.Answer { return l.Answer }},
		{"a hasty layout", "cut buy steps time price", build.Taken, func(l layout.Layout) *cut.Answer {
			hasty, err := l.Solve(context.Background(), cut.Limits{Nodes: 50})
			if err != nil {
				t.Fatal(err)
			}
			if hasty.Answer.Bound > l.Answer.Cost || len(hasty.Answer.NotPlaced) > len(l.Answer.NotPlaced) {
				return l.Answer
			}
			return hasty.Answer
		}},
		{"a layout that lacks a part", "", build.Refused, func(l layout.Layout) *cut.Answer {
			less := *l.Answer
			less.Used, less.Panels, less.NotPlaced, less.Bought = nil, nil, nil, nil
			return &less
		}},
	} {
		rec := all(t, b, c.found)
		got := deriveWith(t, doc, s, rec, memo)
		may := c.may + " input_hash accepted"
		if !cmp.Equal(b.Layout.Chosen(), got.Layout.Chosen()) {
			may += " parts totals findings supplies" // a pipe is cut that was bought, or the other way round
		}
		if diff := cmp.Diff(apart(t, b, strings.Fields(may)...), apart(t, got, strings.Fields(may)...)); diff != "" {
			t.Errorf("%s: %s changes more than it may: %s", name, c.what, diff)
		}
		if b.Hash == got.Hash && len(rec.Layouts) > 0 {
			t.Errorf("%s: %s: the input has the hash of one without", name, c.what)
		}
		for i, a := range got.Accepted {
			if a.State != c.state && len(got.Layout.All()[i].Tags()) > 0 {
				t.Errorf("%s: %s of %s is %s: %s", name, c.what, a.Material, a.State, a.Why)
			}
		}
		if err := layoutsAreRight(got); err != nil {
			t.Errorf("%s: %s: %v", name, c.what, err)
		}
	}
}

// bench is a piece whose only glued-up panel is cut from one board.
func bench(t *testing.T) (*piece.Document, *shop.Shop, *build.Build) {
	t.Helper()
	b := example(t, "low-bench")
	return b.Doc, b.Shop, b
}

func TestAnAcceptedLayoutIsCutByAsLongAsItsProblemIsTheSame(t *testing.T) {
	doc, s, own := bench(t)
	dearer := all(t, own, func(l layout.Layout) *cut.Answer { return twice(l) })
	b := deriveWith(t, doc, s, dearer, nil)
	if len(b.Accepted) != 2 {
		t.Fatalf("%+v", b.Accepted)
	}
	for i, l := range b.Layout.All() {
		a, before := b.Accepted[i], own.Layout.All()[i].Answer
		if a.State != build.Taken || l.Answer.Cost != a.Cost {
			t.Errorf("%s: %s (%s), cost %v, accepted %v", l.Material, a.State, a.Why, l.Answer.Cost, a.Cost)
		}
		if a.Cost > before.Cost && !strings.Contains(a.Why, fmt.Sprintf("%.2f is known", before.Cost)) {
			t.Errorf("nobody says that a cheaper one is known: %q", a.Why)
		}
		if l.Answer.Bound != before.Bound || l.Answer.Proven != (a.Cost == before.Bound) {
			t.Errorf("%s: bound %v, proven %v; the derived one has %v", l.Material, l.Answer.Bound, l.Answer.Proven, before.Bound)
		}
	}
	if b.Buy.Material.Cents <= own.Buy.Material.Cents {
		t.Error("the second board is not bought")
	}
	edited := read(t, "low-bench", bytes.Replace(doc.Text, []byte("48 in"), []byte("47 in"), 1))
	if bytes.Equal(edited.Text, doc.Text) {
		t.Fatal("the edit changes nothing")
	}
	changed := deriveWith(t, edited, s, dearer, nil)
	if diff := cmp.Diff(apart(t, derive(t, edited, s, nil), "input_hash", "accepted"), apart(t, changed, "input_hash", "accepted")); diff != "" {
		t.Errorf("a layout of an earlier state changes the piece: %s", diff)
	}
	outdated := 0
	for _, a := range changed.Accepted {
		if a.State == build.Outdated {
			outdated++
			if !strings.Contains(a.Words(), "no longer fits: ") || !strings.Contains(a.Words(), "look deeper again") || a.Why == "" {
				t.Errorf("%q", a.Words())
			}
		}
	}
	if outdated == 0 {
		t.Errorf("nothing is told to be outdated: %+v", changed.Accepted)
	}
	back := deriveWith(t, doc, s, dearer, nil)
	if back.Hash != b.Hash || back.Accepted[0].State != build.Taken {
		t.Error("with the edit taken back it is not cut by again")
	}
}

// twice opens one more of the first piece of stock, cuts nothing from it, and knows less of the bound.
func twice(l layout.Layout) *cut.Answer {
	a := *l.Answer
	if l.Kind != layout.OfSticks {
		return &a
	}
	a.Used = append(a.Used[:len(a.Used):len(a.Used)], cut.Used{Stock: a.Used[0].Stock})
	a.Waste = cut.Waste{}
	for i, st := range l.Sticks.Stock {
		if st.Tag == a.Used[0].Stock {
			a.Cost += l.Sticks.Cost(i)
		}
	}
	a.Bound--
	a.Proven = false
	return &a
}

// The verifier finds no fault in a layout that leaves parts out and says so.
func TestALayoutThatLeavesOutWhatFindsAPlaceIsNotUsed(t *testing.T) {
	doc, s, own := bench(t)
	rec := all(t, own, func(l layout.Layout) *cut.Answer {
		a := &cut.Answer{Proven: true, Of: l.Answer.Of}
		for _, tag := range l.Tags() {
			a.NotPlaced = append(a.NotPlaced, cut.NotPlaced{Tag: tag, Why: "left out"})
		}
		if faults := l.Faults(a); len(faults) > 0 {
			t.Fatal(faults[0])
		}
		return a
	})
	for _, a := range deriveWith(t, doc, s, rec, nil).Accepted {
		if a.State != build.Refused || a.Why != "it leaves out parts that find a place" {
			t.Errorf("%s: %s", a.State, a.Words())
		}
	}
}

func TestADamagedLayoutIsToldAndNotUsed(t *testing.T) {
	doc, s, own := bench(t)
	for what, c := range map[string]struct {
		spoil func(*journal.Laid)
		why   string // on one of sticks; of boards the verifier sees it first
	}{
		"a part moved out of its stock": {func(l *journal.Laid) {
			l.Answer = bytes.Replace(l.Answer, []byte(`"at":[`), []byte(`"at":[9`), 1)
		}, "does not fit its parts"},
		"a cost that is none": {func(l *journal.Laid) { l.Answer = bytes.Replace(l.Answer, []byte(`"cost": `), []byte(`"cost": 1`), 1) }, "cost"},
		"what is no layout":   {func(l *journal.Laid) { l.Answer = []byte(`{"unit":"mm","used":[]}`) }, `the key "cost" is missing`},
		"a bound above a cost known": {func(l *journal.Laid) {
			l.Answer = bytes.Replace(l.Answer, []byte(`"bound": `), []byte(`"bound": 9`), 1)
			l.Answer = bytes.Replace(l.Answer, []byte(`"proven": true`), []byte(`"proven": false`), 1)
		}, "no layout costs less than 9"},
	} {
		rec := all(t, own, func(l layout.Layout) *cut.Answer { return l.Answer })
		for i := range rec.Layouts {
			c.spoil(&rec.Layouts[i])
		}
		b := deriveWith(t, doc, s, rec, nil)
		if diff := cmp.Diff(apart(t, own, "input_hash"), apart(t, b, "input_hash", "accepted")); diff != "" {
			t.Errorf("%s changes the piece: %s", what, diff)
		}
		for _, a := range b.Accepted {
			if a.State != build.Refused || a.Kind == string(layout.OfSticks) && !strings.Contains(a.Why, c.why) || !strings.Contains(a.Words(), "is not used") {
				t.Errorf("%s: %s: %s", what, a.State, a.Words())
			}
		}
	}
}

func TestALayoutOfAnotherMaterialIsNobodysHere(t *testing.T) {
	doc, s, own := bench(t)
	rec := all(t, own, func(l layout.Layout) *cut.Answer { return l.Answer })
	for i := range rec.Layouts {
		rec.Layouts[i].Material = "ebony 4/4"
	}
	if b := deriveWith(t, doc, s, rec, nil); len(b.Accepted) != 0 {
		t.Errorf("%+v", b.Accepted)
	}
}

func TestAnAcceptedLayoutStandsInTheObject(t *testing.T) {
	doc, s, own := bench(t)
	o := object(t, deriveWith(t, doc, s, all(t, own, func(l layout.Layout) *cut.Answer { return l.Answer }), nil))
	first := o["accepted"].([]any)[0].(map[string]any)
	if first["kind"] != "stick" || first["material"] != "3/4" || first["entry"] != 1.0 || first["actor"] != "anna" || first["state"] != "taken" {
		t.Errorf("%v", first)
	}
	if _, ok := object(t, own)["accepted"]; ok {
		t.Error("a piece without any tells of them")
	}
}

func TestALayoutThatIsAcceptableCanBeWrittenDown(t *testing.T) {
	_, _, own := bench(t)
	for _, l := range own.Layout.All() {
		layout, err := build.Acceptable(l.Task, l.Answer)
		if err != nil {
			t.Fatal(err)
		}
		e := journal.Entry{
			Number: 1, ID: "01890000-0000-7000-8000-000000000001", Actor: "anna", At: time.Unix(1_777_885_200, 0).UTC(), Kind: journal.Accepted, Layout: &layout,
		}
		if err := e.Check(); err != nil {
			t.Errorf("%s: %v", l.Material, err)
		}
		wrong := *l.Answer
		wrong.Cost++
		if _, err := build.Acceptable(l.Task, &wrong); err == nil {
			t.Errorf("%s: a false cost is acceptable", l.Material)
		}
	}
}

// BenchmarkDeriveAccepted derives the large example after an edit, cut by layouts that were accepted for it.
func BenchmarkDeriveAccepted(b *testing.B) {
	text, err := os.ReadFile("../examples/large.piece.yaml")
	if err != nil {
		b.Fatal(err)
	}
	s, memo := shop.Sample(), build.NewMemo(64)
	derive(b, read(b, "large", text), s, memo)
	edited := bytes.Replace(text, []byte("step:        {is: 13 in"), []byte("step:        {is: 13 1/2 in"), 1)
	rec := all(b, derive(b, read(b, "large", edited), s, memo), func(l layout.Layout) *cut.Answer { return l.Answer })
	for b.Loop() {
		deriveWith(b, read(b, "large", edited), s, rec, memo)
	}
}
