package layout_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
)

// limits keep the tests fast; the laws hold for any.
var limits = cut.Limits{Nodes: 20_000}

// taken is a piece with its parts.
type taken struct {
	name string
	r    *piece.Resolved
	list *part.List
}

func take(t testing.TB, name string, text []byte, s *shop.Shop) taken {
	t.Helper()
	doc, err := piece.Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := piece.Resolve(doc, s)
	if err != nil {
		t.Fatal(err)
	}
	list, err := part.TakeOff(r, s)
	if err != nil {
		t.Fatal(err)
	}
	return taken{name, r, list}
}

func examples(t testing.TB, s *shop.Shop) (out []taken) {
	t.Helper()
	files, err := filepath.Glob("../examples/*.piece.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, take(t, filepath.Base(f), text, s))
	}
	return out
}

// wanted lists the tags that a layout must place: every panel, and every pipe cut from a stick.
func wanted(list *part.List) (tags []string) {
	for _, p := range list.Parts {
		if p.Kind == part.Panel || p.Kind == part.Pipe && p.From == part.FromStick {
			tags = append(tags, p.Tags...)
		}
	}
	slices.Sort(tags)
	return tags
}

// laidTags lists the tags that the layouts place or tell as not placed.
func laidTags(r *layout.Result) (tags []string) {
	for _, l := range r.All() {
		for _, n := range l.Answer.NotPlaced {
			tags = append(tags, n.Tag)
		}
		if l.Kind == layout.OfBoards {
			for _, g := range l.Answer.Panels {
				tags = append(tags, g.Tag)
			}
			continue
		}
		for _, u := range l.Answer.Used {
			for _, q := range u.Parts {
				tags = append(tags, q.Tag)
			}
		}
	}
	slices.Sort(tags)
	return tags
}

func laws(t *testing.T, p taken, s *shop.Shop) *layout.Result {
	t.Helper()
	got, err := layout.Lay(context.Background(), p.r, p.list, s, limits)
	if err != nil {
		t.Fatalf("%s: %v", p.name, err)
	}
	for _, l := range got.All() {
		for _, f := range l.Faults(l.Answer) {
			t.Errorf("%s, %s: %v", p.name, l.Material, f)
		}
		if len(l.Opened) != len(l.Answer.Used) {
			t.Errorf("%s, %s: %d pieces opened, %d used", p.name, l.Material, len(l.Opened), len(l.Answer.Used))
		}
	}
	if len(got.Missing) == 0 && !slices.Equal(laidTags(got), wanted(p.list)) {
		t.Errorf("%s: laid out %v, wanted %v", p.name, laidTags(got), wanted(p.list))
	}
	return got
}

func TestEveryExampleIsLaidOutWholeAndPassesTheVerifier(t *testing.T) {
	s := shop.Sample()
	for _, p := range examples(t, s) {
		t.Run(p.name, func(t *testing.T) {
			if got := laws(t, p, s); len(got.Missing) > 0 {
				t.Errorf("not laid out: %v", got.Missing)
			}
		})
	}
}

func TestRandomPiecesAreLaidOutWithoutAFault(t *testing.T) {
	s := shop.Sample()
	for seed := range uint64(40) {
		laws(t, take(t, fmt.Sprintf("seed %d", seed), random.Document(seed), s), s)
	}
}

func TestTheSameInputGivesTheSameLayout(t *testing.T) {
	s := shop.Sample()
	for _, p := range examples(t, s) {
		a, b := laws(t, p, s), laws(t, p, s)
		if !reflect.DeepEqual(a, b) {
			t.Errorf("%s: two layouts of one piece differ", p.name)
		}
	}
}

// stock returns the sample shop with something in its rack.
func stocked(rack shop.Rack) *shop.Shop {
	s := *shop.Sample()
	s.Rack = rack
	return &s
}

func TestWhatLiesInTheRackComesFirst(t *testing.T) {
	s := stocked(shop.Rack{
		Sticks: []shop.Stick{{Tag: "R1", Pipe: "3/4", Length: 21 * length.Foot}},
		Boards: []shop.Board{{
			Tag: "R2", Species: "white-oak", Quarters: "6/4", Length: 9 * length.Foot, Width: 8 * length.Inch,
			Thickness: 3 * length.Inch / 2, RoughEdges: 2, Ring: "up",
		}},
	})
	text, err := os.ReadFile("../examples/stepped-stand.piece.yaml")
	if err != nil {
		t.Fatal(err)
	}
	got := laws(t, take(t, "stepped stand", text, s), s)
	if !slices.ContainsFunc(got.Stick[0].Opened, func(o layout.Stock) bool { return o.Tag == "R1" && o.FromRack }) {
		t.Errorf("the stick in the rack is left there: %+v", got.Stick[0].Opened)
	}
	if !slices.ContainsFunc(got.Panel[0].Opened, func(o layout.Stock) bool { return o.Tag == "R2" && o.FromRack }) {
		t.Errorf("the board in the rack is left there: %+v", got.Panel[0].Opened)
	}
	fromRack := 0.0
	for _, l := range got.Buy {
		fromRack += l.FromRack
		if l.FromRack > l.Count {
			t.Errorf("%s: more from the rack than is used at all", l.Item)
		}
	}
	if fromRack == 0 {
		t.Error("the buying list does not tell what comes from the rack")
	}
}

func TestABoardTooThinForAPanelStaysInTheRack(t *testing.T) {
	s := stocked(shop.Rack{Boards: []shop.Board{{
		Tag: "R2", Species: "white-oak", Length: 12 * length.Foot, Width: 9 * length.Inch, Thickness: length.Inch / 2,
	}}})
	for _, p := range examples(t, s) {
		for _, l := range laws(t, p, s).Panel {
			if slices.ContainsFunc(l.Opened, func(o layout.Stock) bool { return o.FromRack }) {
				t.Errorf("%s: a panel is cut from a board of half an inch", p.name)
			}
		}
	}
}

func TestAShopThatNamesNoBoardsIsTold(t *testing.T) {
	s := *shop.Sample()
	s.Boards = nil
	p := examples(t, &s)[0]
	got, err := layout.Lay(context.Background(), p.r, p.list, &s, limits)
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Panel) > 0 || !slices.ContainsFunc(got.Missing, func(m string) bool { return strings.Contains(m, "names no boards") }) {
		t.Errorf("layouts %v, missing %v", got.Panel, got.Missing)
	}
}

func TestAnAcceptedLayoutHoldsAsLongAsItsPartsDo(t *testing.T) {
	s := shop.Sample()
	p := examples(t, s)[0]
	tasks, _ := layout.Tasks(p.r, p.list, s)
	for _, task := range tasks {
		l, err := task.Solve(context.Background(), limits)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := task.Accept(l.Answer); err != nil {
			t.Errorf("%s: its own answer is refused: %v", task.Material, err)
		}
		untold := *l.Answer
		untold.Cuts = []cut.Setting{{N: 1, On: "no stock"}}
		if taken, err := task.Accept(&untold); err != nil || !reflect.DeepEqual(taken.Answer, l.Answer) {
			t.Errorf("%s: its cuts are not told anew: %v", task.Material, err)
		}
		worse := *l.Answer
		worse.Cost /= 2
		if _, err := task.Accept(&worse); err == nil {
			t.Errorf("%s: an answer with a false cost is accepted", task.Material)
		}
	}
	again, _ := layout.Tasks(p.r, p.list, s)
	for i, task := range tasks {
		if key := again[i].Key(); task.Key() != key || len(key) != len("sha256:")+64 {
			t.Errorf("%s: unstable key %s", task.Material, key)
		}
	}
	if tasks[0].Key() == tasks[1].Key() {
		t.Error("two tasks have one key")
	}
}

func BenchmarkLayLarge(b *testing.B) {
	s := shop.Sample()
	text, err := os.ReadFile("../examples/large.piece.yaml")
	if err != nil {
		b.Fatal(err)
	}
	p := take(b, "large", text, s)
	for b.Loop() {
		if _, err := layout.Lay(context.Background(), p.r, p.list, s, limits); err != nil {
			b.Fatal(err)
		}
	}
}
