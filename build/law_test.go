package build_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"rodwright/build"
	"rodwright/cut"
	"rodwright/layout"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// pieces is how many random pieces the laws are held against; a longer run asks for more.
func pieces(t *testing.T) uint64 {
	t.Helper()
	n := os.Getenv("RODWRIGHT_PIECES")
	if n == "" {
		return 500
	}
	v, err := strconv.ParseUint(n, 10, 32)
	if err != nil {
		t.Fatalf("RODWRIGHT_PIECES=%q is no count", n)
	}
	return v
}

func read(t testing.TB, name string, text []byte) *piece.Document {
	t.Helper()
	doc, err := piece.Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func derive(t testing.TB, doc *piece.Document, s *shop.Shop, memo *build.Memo) *build.Build {
	t.Helper()
	b, err := build.Derive(build.Input{Document: doc, Shop: s}, memo)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Each law is a statement about one derived piece; the error says what breaks it.
var laws = []struct {
	says  string
	holds func(*build.Build) error
}{
	{"sizes measured on the resolved parts are the document's to the nanometre", sizesAreTheDocuments},
	{"weights add up", weightsAddUp},
	{"blanks hold the finished parts", blanksHoldTheFinished},
	{"layouts place every part once and the verifier finds no fault", layoutsAreRight},
	{"nipples are bought, and pipes cut, as the layouts have it", nipplesAreAsLaidOut},
	{"loops by formula are what is left after cutting the unions", unionsOpenEveryLoop},
	{"a pipe and its take-outs fill the distance between its joints", pipesFillTheirDistance},
	{"printed chains add up", printedChainsAddUp},
	{"every finding has a reason", findingsHaveReasons},
}

// bytesEvery is how many pieces come to one that is derived with every kind of memo: that takes five times as long.
const bytesEvery = 8

func TestTheLawsHoldOnRandomPieces(t *testing.T) {
	dear, shared := shop.Sample(), build.NewMemo(64)
	cheap := dear.With(shop.Price{Item: shop.HourItem, Cents: 100, Pack: 1, Unit: "h"}) // so that nipples are cut as well
	covered, proofs := random.Coverage{}, &proofs{}
	for seed := range pieces(t) {
		name := fmt.Sprintf("random %d", seed)
		doc, s := read(t, name, random.Document(seed)), dear
		if seed%2 == 1 {
			s = cheap
		}
		b := derive(t, doc, s, shared)
		covered.Add(b.Resolved)
		proofs.add(b)
		for _, law := range laws {
			if err := law.holds(b); err != nil {
				t.Errorf("%s: %s: %v", name, law.says, err)
			}
		}
		if seed%bytesEvery == 0 {
			sameBytes(t, name, b, doc, s, shared)
			acceptedChangesNothingElse(t, name, b, doc, s, shared)
		}
	}
	t.Logf("features of the pieces:\n%s", covered)
	t.Log(proofs)
	if missing := covered.Missing(); len(missing) > 0 && pieces(t) >= 500 {
		t.Errorf("no random piece has %q", missing)
	}
}

// proofs counts what is proven of layouts of boards.
type proofs struct {
	layouts, proven, every int
	gaps                   float64
}

func (p *proofs) add(b *build.Build) {
	for _, l := range b.Layout.All() {
		if l.Boards == nil || l.Answer == nil || len(l.Answer.Used) == 0 {
			continue
		}
		p.layouts++
		p.gaps += 1 - l.Answer.Bound/l.Answer.Cost
		if l.Answer.Proven {
			p.proven++
		}
		if l.Answer.Proven && l.Answer.Of == cut.EveryLayout {
			p.every++
		}
	}
}

func (p *proofs) String() string {
	return fmt.Sprintf("%d layouts of boards: %d proven, %d of them against every layout; mean gap %.2f %%",
		p.layouts, p.proven, p.every, 100*p.gaps/float64(max(p.layouts, 1)))
}

// sameBytes derives again with no, an empty, a warm and a shared memo.
func sameBytes(t *testing.T, name string, first *build.Build, doc *piece.Document, s *shop.Shop, shared *build.Memo) {
	t.Helper()
	want, err := first.JSON()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	own := build.NewMemo(8)
	for what, memo := range map[string]*build.Memo{"no": nil, "an empty": own, "a shared": shared} {
		for range 2 { // the second time the memo is warm
			got, err := derive(t, doc, s, memo).JSON()
			if err != nil || !bytes.Equal(got, want) {
				t.Fatalf("%s: with %s memo other bytes come out: %v", name, what, err)
			}
			if memo == nil {
				break
			}
		}
	}
}

func sizesAreTheDocuments(b *build.Build) error {
	for _, p := range b.Resolved.Panels {
		x, y := p.Max.X-p.Min.X, p.Max.Y-p.Min.Y
		if p.Spec.Turned {
			x, y = y, x
		}
		if x != p.Spec.Length || y != p.Spec.Width || p.Max.Z-p.Min.Z != p.Spec.Thickness {
			return fmt.Errorf("%s measures %d × %d × %d nm", p.Name, x, y, p.Max.Z-p.Min.Z)
		}
		if l := p.Spec.Level; l != nil && *l != p.Max.Z {
			return fmt.Errorf("the top of %s is at %d nm, asked %d", p.Name, p.Max.Z, *l)
		}
	}
	for _, s := range b.Resolved.Sticks {
		a, c := b.Resolved.Nodes[s.A].At, b.Resolved.Nodes[s.B].At
		d := math.Hypot(math.Hypot((c.X-a.X).MM(), (c.Y-a.Y).MM()), (c.Z - a.Z).MM())
		if (length.FromMM(d) - s.Between).Abs() > length.Nanometre {
			return fmt.Errorf("%s: its joints stand %v mm apart, said %v", s.Name, d, s.Between.MM())
		}
	}
	return nil
}

func weightsAddUp(b *build.Build) error {
	var kg float64
	for _, p := range b.Parts.Parts {
		kg += p.MassKg * float64(p.Count)
	}
	t := b.Parts.Totals
	if math.Abs(kg-t.MassKg) > 1e-9*kg || math.Abs(t.WoodKg+t.SteelKg-t.MassKg) > 1e-9*kg {
		return fmt.Errorf("parts %v kg, wood and steel %v kg, in all %v kg", kg, t.WoodKg+t.SteelKg, t.MassKg)
	}
	return nil
}

func blanksHoldTheFinished(b *build.Build) error {
	for _, p := range b.Parts.Parts {
		for a := range p.Finished {
			if p.Kind == part.Panel && p.Blank[a] < p.Finished[a] {
				return fmt.Errorf("%s: blank %d nm, finished %d nm", p.Tag, p.Blank[a], p.Finished[a])
			}
		}
	}
	return nil
}

func layoutsAreRight(b *build.Build) error {
	placed := map[string]int{}
	for _, l := range b.Layout.All() {
		if faults := l.Faults(l.Answer); len(faults) > 0 {
			return faults[0]
		}
		if l.Answer.Bound > l.Answer.Cost+1e-9 {
			return fmt.Errorf("%s: bound %v above cost %v", l.Material, l.Answer.Bound, l.Answer.Cost)
		}
		for _, n := range l.Answer.NotPlaced {
			placed[n.Tag]++
		}
		countPlaced(l, placed)
	}
	for _, p := range b.Parts.Parts {
		if p.Kind != part.Panel && p.From != part.FromStick {
			continue
		}
		for _, tag := range p.Tags {
			if placed[tag] > 1 || placed[tag] == 0 && len(b.Layout.Missing) == 0 {
				return fmt.Errorf("%s is placed %d times", tag, placed[tag])
			}
		}
	}
	return nil
}

func nipplesAreAsLaidOut(b *build.Build) error {
	from := map[string]string{}
	for _, p := range b.Parts.Parts {
		for _, tag := range p.Tags {
			from[tag] = p.From
		}
	}
	for _, l := range b.Layout.Stick {
		for _, n := range l.Nipples {
			if bought := slices.Contains(l.Answer.Bought, n.Tag); bought != (from[n.Tag] == part.FromNipple) {
				return fmt.Errorf("%s is made from a %s, and that the layout buys it is %v", n.Tag, from[n.Tag], bought)
			}
		}
	}
	return nil
}

func countPlaced(l layout.Layout, placed map[string]int) {
	if l.Kind == layout.OfBoards {
		for _, g := range l.Answer.Panels {
			placed[g.Tag]++
		}
		return
	}
	for _, u := range l.Answer.Used {
		for _, p := range u.Parts {
			placed[p.Tag]++
		}
	}
}

// unionsOpenEveryLoop cuts the frame at its unions and looks whether a forest is left.
func unionsOpenEveryLoop(b *build.Build) error {
	r := b.Resolved
	unions, onWall, walls := 0, -1, 0
	parent := make([]int, len(r.Nodes)+1)
	for i := range parent {
		parent[i] = i
	}
	root := func(i int) int {
		for parent[i] != i {
			i = parent[i]
		}
		return i
	}
	for i, n := range r.Nodes {
		if n.Kind == pipe.Union {
			unions++
		}
		if n.ToWall { // all flanges on the wall are one body
			walls++
			if onWall < 0 {
				onWall = i
			}
			parent[root(i)] = root(onWall)
		}
	}
	joints := len(r.Nodes) - max(walls-1, 0)
	if loops := pipe.LoopCount(len(r.Sticks), joints, r.Groups); loops != unions || len(r.Loops) != unions {
		return fmt.Errorf("%d loops by formula, %d listed, %d unions", loops, len(r.Loops), unions)
	}
	for _, s := range r.Sticks {
		if r.Nodes[s.B].Kind == pipe.Union { // cut here: what lies on this side does not reach the union
			continue
		}
		a, c := root(s.A), root(s.B)
		if a == c {
			return fmt.Errorf("%s closes a loop that no union opens", s.Name)
		}
		parent[a] = c
	}
	return nil
}

func pipesFillTheirDistance(b *build.Build) error {
	for _, p := range b.Parts.Parts {
		if p.Kind == part.Pipe && p.Exact+p.TakeOuts[0]+p.TakeOuts[1] != p.Between {
			return fmt.Errorf("%s: %d + %d + %d nm is not %d", p.Tag, p.Exact, p.TakeOuts[0], p.TakeOuts[1], p.Between)
		}
	}
	return nil
}

func printedChainsAddUp(b *build.Build) error {
	to := b.Doc.Fineness
	byPost := map[string][]length.Length{}
	for _, s := range b.Resolved.Sticks {
		if s.Role == piece.PostRole {
			post := s.Group + fmt.Sprint(b.Resolved.Nodes[s.A].At.X, b.Resolved.Nodes[s.A].At.Y)
			byPost[post] = append(byPost[post], s.Between)
		}
	}
	for post, links := range byPost {
		if got, want := length.Sum(to.Chain(links)...), to.Round(length.Sum(links...)); got != want {
			return fmt.Errorf("post %s: links print as %s, the whole as %s", post, to.Text(got), to.Text(want))
		}
	}
	return nil
}

func findingsHaveReasons(b *build.Build) error {
	for _, f := range b.Findings {
		known := f.Verdict.String() != "unknown"
		if known && (len(f.Because) == 0 || f.Limit.Missing() || f.Figure.Missing()) {
			return fmt.Errorf("%s, %s: no reason, figure or limit", f.Check, f.Place)
		}
		if !known && f.Missing == "" {
			return fmt.Errorf("%s, %s: unknown, and not said what is missing", f.Check, f.Place)
		}
		if f.Verdict.String() == "fails" && f.Mend == "" {
			return fmt.Errorf("%s, %s: fails without a mend", f.Check, f.Place)
		}
	}
	return nil
}
