package piece

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// anyTable draws a table of either standard: a top on four legs, up to three rings of rails, a stretcher
// between side rails, and a shelf round the legs. Lengths are whole nanometres, not steps of a rule.
func anyTable(t *rapid.T, base *Document) *Document {
	span := func(name string, lo, hi float64) length.Length {
		return length.Length(rapid.Int64Range(int64(inch(lo)), int64(inch(hi))).Draw(t, name))
	}
	d := *base
	size, err := pipe.Lookup(rapid.SampledFrom([]string{"1/2", "3/4", "1", "DN15", "DN20", "DN25"}).Draw(t, "size"))
	if err != nil {
		t.Fatal(err)
	}
	d.Pipe = size
	top := plank("top", 0, 0, 1, 0, Seat{Kind: OnPosts, Group: "legs"})
	level := span("height", 28, 40)
	top.Length, top.Width, top.Level = span("length", 36, 70), span("width", 24, 36), &level
	top.Turned, top.GrainX = rapid.Bool().Draw(t, "turned"), rapid.Bool().Draw(t, "grain")
	d.Panels = []Panel{top}
	d.Posts = []Posts{{Name: "legs", Panel: "top", Corners: []Corner{FrontLeft, FrontRight, BackLeft, BackRight},
		InsetX: span("inset x", 2, 5), InsetY: span("inset y", 2, 5), From: fromFeet, To: toPanel("top")}}
	d.Feet = Feet{Kind: rapid.SampledFrom([]FootKind{StemCaster, PlateCaster, Leveller, CapFoot, FlangeFoot, BareFoot}).Draw(t, "feet"), Height: inch(2), Locks: 2}
	for i := range rapid.IntRange(0, 2).Draw(t, "rings") {
		d.Rails = append(d.Rails, Rails{Name: []string{"low", "high"}[i], From: "legs", Level: span("level", 8, 10) + inch(8)*length.Length(i)})
	}
	if rapid.Bool().Draw(t, "shelf") {
		shelf := plank("shelf", 0, 0, 0.75, 0, Seat{Kind: AroundPosts, Group: "legs"})
		shelf.Length, shelf.Width, shelf.Turned, shelf.GrainX = top.Length, top.Width, top.Turned, top.GrainX
		at := level - inch(3)
		shelf.Level = &at
		d.Panels = append(d.Panels, shelf)
	}
	return &d
}

// Law: sizes measured again on what was resolved are the document's to the nanometre; cutting the unions leaves
// a forest; resolving twice gives the same.
func TestLawsOfAnyTable(t *testing.T) {
	base, s := blank(t), shop.Sample()
	rapid.Check(t, func(rt *rapid.T) {
		d := anyTable(rt, base)
		r, err := Resolve(d, s)
		if err != nil {
			rt.Fatal(err)
		}
		top, g := &r.Panels[0], &d.Posts[0]
		x, y := top.Spec.extent()
		if top.Max.X-top.Min.X != x || top.Max.Y-top.Min.Y != y || top.Max.Z != *top.Spec.Level || top.Max.Z-top.Min.Z != top.Spec.Thickness {
			rt.Fatalf("top from %v to %v", top.Min, top.Max)
		}
		posts := map[string]length.Length{}
		for _, st := range r.Sticks {
			if st.Role == PostRole {
				posts[st.Name[:len("front left")]] += st.Between
			}
			a, b := r.Nodes[st.A].At, r.Nodes[st.B].At
			if sum := (b.X - a.X) + (b.Y - a.Y) + (b.Z - a.Z); sum != st.Between {
				rt.Fatalf("%s: between %v, its ends %v apart", st.Name, st.Between, sum)
			}
		}
		for name, sum := range posts {
			if len(name) > 0 && len(posts) >= 3 && sum != top.Min.Z-d.Feet.fixedAt() {
				rt.Fatalf("%s: %v from foot to top, want %v", name, sum, top.Min.Z-d.Feet.fixedAt())
			}
		}
		for _, seat := range top.Seats {
			left, right := seat.At[0]-top.Min.X, top.Max.X-seat.At[0]
			front, back := seat.At[1]-top.Min.Y, top.Max.Y-seat.At[1]
			if min(left, right) != g.InsetX || min(front, back) != g.InsetY {
				rt.Fatalf("an inset of %v, %v", min(left, right), min(front, back))
			}
		}
		for i := range d.Rails {
			found := false
			for _, n := range r.Nodes {
				found = found || n.Kind != pipe.Union && n.At.Z == d.Rails[i].Level
			}
			if !found {
				rt.Fatalf("no joint at the level of the rails %s", d.Rails[i].Name)
			}
		}
		// each ring closes one loop, and three more with the ring below it
		if want := 4*len(d.Rails) - 3; len(d.Rails) > 0 && len(r.Loops) != want {
			rt.Fatalf("%d loops of %d rings, want %d", len(r.Loops), len(d.Rails), want)
		}
		if again, err := Resolve(d, s); err != nil || !reflect.DeepEqual(r, again) {
			rt.Fatalf("another answer: %v", err)
		}
		checkForest(rt, r)
	})
}

// checkForest is afterCutting for a drawn piece without a wall.
func checkForest(t *rapid.T, r *Resolved) {
	f := newForest(len(r.Nodes))
	half := map[int]bool{}
	for _, s := range r.Sticks {
		skip := false
		for _, n := range []int{s.A, s.B} {
			if r.Nodes[n].Kind == pipe.Union && !half[n] {
				half[n], skip = true, true
				break
			}
		}
		if !skip && !f.join(s.A, s.B) {
			t.Fatalf("a loop through %s is left when all unions are cut", s.Name)
		}
	}
	if pipe.LoopCount(len(r.Sticks), len(r.Nodes), r.Groups) != len(r.Loops) {
		t.Fatalf("%d pipes, %d joints, %d groups, %d loops", len(r.Sticks), len(r.Nodes), r.Groups, len(r.Loops))
	}
}

// Law: every pipe that a union divides is divided into two of equal length, to the nanometre that a half may
// be rounded by.
func TestUnionsDivideIntoEqualPipes(t *testing.T) {
	base, s := blank(t), shop.Sample()
	rapid.Check(t, func(rt *rapid.T) {
		r, err := Resolve(anyTable(rt, base), s)
		if err != nil {
			rt.Fatal(err)
		}
		for _, l := range r.Loops {
			var cuts []length.Length
			for _, i := range r.Nodes[l.Union].Sticks {
				st := &r.Sticks[i]
				c, err := pipe.CutLength(st.Between, r.Nodes[st.A].Fitting, r.Nodes[st.B].Fitting)
				if err != nil {
					rt.Fatal(err)
				}
				cuts = append(cuts, c.Cut)
			}
			if len(cuts) != 2 || (cuts[0]-cuts[1]).Abs() > 1 {
				rt.Fatalf("pipes of %v at the %s", cuts, r.Nodes[l.Union].Place)
			}
		}
	})
}
