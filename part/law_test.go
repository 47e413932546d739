package part_test

import (
	"fmt"
	"math"
	"slices"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/piece/random"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// seeds is how many random pieces the laws are tried on.
const seeds = 1000

type taken struct {
	r   *piece.Resolved
	l   *part.List
	err error
}

// all takes off every random piece once for all laws.
var all = sync.OnceValue(func() (out []taken) {
	s := shop.Sample()
	for seed := range uint64(seeds) {
		r, l, err := made(seed, s)
		out = append(out, taken{r, l, err})
	}
	return out
})

// each tries a law on every random piece.
func each(t *testing.T, law func(t *testing.T, r *piece.Resolved, l *part.List)) {
	t.Helper()
	for seed, p := range all() {
		if p.err != nil {
			t.Fatalf("seed %d: %v", seed, p.err)
		}
		if law(t, p.r, p.l); t.Failed() {
			t.Fatalf("seed %d:\n%s", seed, p.r.Doc.Text)
		}
	}
}

func made(seed uint64, s *shop.Shop) (*piece.Resolved, *part.List, error) {
	doc, err := piece.Read("random.piece.yaml", random.Document(seed))
	if err != nil {
		return nil, nil, err
	}
	r, err := piece.Resolve(doc, s)
	if err != nil {
		return nil, nil, err
	}
	l, err := part.TakeOff(r, s)
	return r, l, err
}

// Promise 1: every panel, pipe and fitting has exactly one tag, and every tag stands for one thing.
func TestEveryThingHasOneTagAndEveryTagOneThing(t *testing.T) {
	each(t, func(t *testing.T, r *piece.Resolved, l *part.List) {
		of := map[part.Kind][]string{part.Panel: l.PanelTags, part.Pipe: l.StickTags, part.Fitting: l.NodeTags, part.Hardware: l.FootTags}
		seen := map[string]bool{}
		for _, p := range l.Parts {
			if len(p.Tags) != p.Count || p.Indexes != nil && len(p.Indexes) != p.Count {
				t.Errorf("%s: %d of it, tags %v, indexes %v", p.Tag, p.Count, p.Tags, p.Indexes)
			}
			for n, tag := range p.Tags {
				if seen[tag] || tag != fmt.Sprintf("%s.%d", p.Tag, n+1) {
					t.Errorf("tag %s of %s", tag, p.Tag)
				}
				seen[tag] = true
				if p.Indexes != nil && of[p.Kind][p.Indexes[n]] != tag {
					t.Errorf("%s stands at %d, which is tagged %s", tag, p.Indexes[n], of[p.Kind][p.Indexes[n]])
				}
			}
		}
		for i, n := range r.Nodes {
			if (n.Kind == pipe.None) != (l.NodeTags[i] == "") {
				t.Errorf("node %d is a %s, tagged %q", i, n.Kind, l.NodeTags[i])
			}
		}
		everyOnce(t, l.PanelTags)
		everyOnce(t, l.StickTags)
		counts := [4]int{len(r.Panels), len(r.Sticks), len(r.Nodes), len(r.Feet)}
		if got := [4]int{len(l.PanelTags), len(l.StickTags), len(l.NodeTags), len(l.FootTags)}; got != counts {
			t.Errorf("tags for %v of %v", got, counts)
		}
	})
}

func everyOnce(t *testing.T, tags []string) {
	t.Helper()
	sorted := slices.Sorted(slices.Values(tags))
	if len(slices.Compact(sorted)) != len(tags) || len(tags) > 0 && slices.Contains(tags, "") {
		t.Errorf("tags %v", tags)
	}
}

// Promise 2: a pipe's exact length and both take-outs add up to the distance between its joints, to the
// nanometre; so does the sum over all pipes.
func TestPipesAndTakeOutsMakeUpEveryDistance(t *testing.T) {
	each(t, func(t *testing.T, r *piece.Resolved, l *part.List) {
		var between, cut length.Length
		for _, p := range l.Parts {
			if p.Kind != part.Pipe {
				continue
			}
			if p.Exact+p.TakeOuts[0]+p.TakeOuts[1] != p.Between || p.Cut-p.Moves != p.Exact || p.Moves.Abs() > part.NippleReach {
				t.Errorf("%s: %v exact, %v cut, %v between", p.Tag, p.Exact, p.Cut, p.Between)
			}
			if p.From == part.FromStick && p.Moves != 0 || p.From == part.FromNipple && !pipe.IsStockNipple(*r.Sticks[p.Indexes[0]].Section.Pipe, p.Cut) {
				t.Errorf("%s: %v from %s moves %v", p.Tag, p.Cut, p.From, p.Moves)
			}
			for _, i := range p.Indexes {
				between += r.Sticks[i].Between
				cut += p.Exact + p.TakeOuts[0] + p.TakeOuts[1]
			}
		}
		if between != cut {
			t.Errorf("distances %v, pipes and take-outs %v", between, cut)
		}
	})
}

// Promise 3: a blank contains its finished panel, and the panel its features.
func TestBlanksContainFinishedPanels(t *testing.T) {
	each(t, func(t *testing.T, r *piece.Resolved, l *part.List) {
		for _, p := range l.Parts {
			if p.Kind != part.Panel {
				continue
			}
			for k := range 3 {
				if p.Blank[k] < p.Finished[k] || p.Finished[k] <= 0 || !p.Sheet && p.Blank[k] == p.Finished[k] {
					t.Errorf("%s: blank %v of %v", p.Tag, p.Blank, p.Finished)
				}
			}
			flat := r.Panels[p.Indexes[0]]
			if p.Finished[2] != flat.Max.Z-flat.Min.Z || len(p.Features) != len(flat.Features) {
				t.Errorf("%s: %v thick, %d features", p.Tag, p.Finished[2], len(p.Features))
			}
			for _, f := range p.Features {
				for k := range 2 {
					if f.At[k] < 0 || f.At[k]+f.Size[k] > p.Finished[k] || f.Size[k] <= 0 {
						t.Errorf("%s: %s at %v size %v in %v", p.Tag, f.Name, f.At, f.Size, p.Finished)
					}
				}
			}
		}
	})
}

// Promise 4: the masses of the parts, each times its count, add up to the total; and the counts add up too.
func TestWeightsAndCountsAddUp(t *testing.T) {
	each(t, func(t *testing.T, r *piece.Resolved, l *part.List) {
		var mass, held float64
		var screws, unions int
		for _, p := range l.Parts {
			if !(p.MassKg > 0) && !(p.Kind == part.Pipe && p.From == part.FromNothing) {
				t.Errorf("%s %s weighs %v", p.Tag, p.Name, p.MassKg)
			}
			mass += float64(p.Count) * p.MassKg
		}
		for _, f := range l.Fasteners {
			screws += f.Count
		}
		for _, n := range r.Nodes {
			if n.Kind == pipe.Union {
				unions++
			}
		}
		for _, h := range r.Held {
			held += h.MassKg
		}
		sum := l.Totals
		if math.Abs(sum.MassKg-mass) > 1e-9 || math.Abs(sum.WoodKg+sum.SteelKg-mass) > 1e-9 || math.Abs(sum.HeldKg-held) > 1e-9 {
			t.Errorf("totals %+v, parts %v", sum, mass)
		}
		if sum.Screws != screws || sum.Unions != unions || unions != len(r.Loops) {
			t.Errorf("%d screws of %d, %d unions of %d for %d loops", sum.Screws, screws, sum.Unions, unions, len(r.Loops))
		}
	})
}

// Every flange on a panel or wall, every strap and every plate has its own set of screws.
func TestEverythingScrewedHasItsScrews(t *testing.T) {
	each(t, func(t *testing.T, r *piece.Resolved, l *part.List) {
		want := 0
		for _, n := range r.Nodes {
			if n.Kind == pipe.Flange && (n.Panel >= 0 || n.ToWall) {
				want++
			}
		}
		for _, p := range r.Panels {
			for _, s := range p.Seats {
				if s.Strap {
					want++
				}
			}
		}
		for _, f := range r.Feet {
			if f.Panel >= 0 && f.Spec.Kind == piece.PlateCaster {
				want++
			}
		}
		var holds []string
		for _, f := range l.Fasteners {
			holds = append(holds, f.Holds)
			if f.Count < 2 || f.Length <= f.Grip || f.Screws == "" {
				t.Errorf("%+v", f)
			}
		}
		if len(holds) != want {
			t.Errorf("%d sets of screws, want %d", len(holds), want)
		}
		everyOnce(t, holds)
	})
}

func TestEverySupplyHasAQuantityAndAReason(t *testing.T) {
	each(t, func(t *testing.T, _ *piece.Resolved, l *part.List) {
		for _, s := range l.Supplies {
			if !(s.Quantity.Value > 0) || s.Quantity.Formula == nil || len(s.For) == 0 || len(s.Cautions) == 0 || len(s.Assumed) == 0 {
				t.Errorf("%+v", s)
			}
		}
	})
}

// Promise 5: the same input gives the same list, and what is put in stays as it is.
func TestTakenOffTwiceIsTheSame(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		seed := rapid.Uint64().Draw(rt, "seed")
		s := shop.Sample()
		r, a, err := made(seed, s)
		if err != nil {
			rt.Fatalf("seed %d: %v", seed, err)
		}
		b, err := part.TakeOff(r, s)
		if err != nil {
			rt.Fatal(err)
		}
		_, c, err := made(seed, shop.Sample())
		if err != nil {
			rt.Fatal(err)
		}
		for _, other := range []*part.List{b, c} {
			if d := cmp.Diff(a, other); d != "" {
				rt.Fatalf("seed %d: %s", seed, d)
			}
		}
	})
}
