package piece

import (
	"slices"
	"testing"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// fourLegs is a table: it has four legs on caps under a top and a rectangle of rails.
func fourLegs(t testing.TB, x, y float64) *Document {
	d := blank(t)
	d.Feet = Feet{Kind: CapFoot}
	inset := inch(3)
	d.Panels = []Panel{plank("top", x+6, y+6, 1, 30, Seat{Kind: OnPosts, Group: "legs"})}
	d.Posts = []Posts{{Name: "legs", Panel: "top", Corners: []Corner{FrontLeft, FrontRight, BackLeft, BackRight}, InsetX: inset, InsetY: inset, From: fromFeet, To: toPanel("top")}}
	d.Rails = []Rails{{Name: "low", From: "legs", Level: inch(6), Share: [2]int64{1, 2}}}
	return d
}

// unions returns how many sticks and joints a piece has, and cuts every union: what is left must be a forest.
func afterCutting(t testing.TB, r *Resolved) {
	t.Helper()
	f := newForest(len(r.Nodes))
	f.trees = len(r.Nodes)
	wall := -1
	for i := range r.Nodes {
		if r.Nodes[i].ToWall {
			if wall >= 0 {
				f.join(wall, i)
			}
			wall = i
		}
	}
	cut := map[int]bool{}
	for i := range r.Sticks {
		s := &r.Sticks[i]
		if r.Nodes[s.A].Kind == pipe.Union && !cut[s.A] { // the union's one half stays on one of its two pipes
			cut[s.A] = true
			continue
		}
		if r.Nodes[s.B].Kind == pipe.Union && !cut[s.B] {
			cut[s.B] = true
			continue
		}
		if !f.join(s.A, s.B) {
			t.Errorf("a loop through %s is left when all unions are cut", s.Name)
		}
	}
	joints := len(r.Nodes)
	for i, first := 0, true; i < len(r.Nodes); i++ {
		if r.Nodes[i].ToWall {
			if !first {
				joints--
			}
			first = false
		}
	}
	if want := pipe.LoopCount(len(r.Sticks), joints, r.Groups); len(r.Loops) != want || count(r, pipe.Union) != want {
		t.Errorf("%d loops written down, %d unions, want %d", len(r.Loops), count(r, pipe.Union), want)
	}
	for _, l := range r.Loops {
		if r.Nodes[l.Union].Kind != pipe.Union {
			t.Errorf("loop %v is closed by a %s", l.Sticks, r.Nodes[l.Union].Kind)
		}
		for i, s := range l.Sticks {
			a, b := &r.Sticks[s], &r.Sticks[l.Sticks[(i+1)%len(l.Sticks)]]
			if a.A != b.A && a.A != b.B && a.B != b.A && a.B != b.B && r.Wall == nil {
				t.Errorf("in loop %v the %s does not follow the %s", l.Sticks, b.Name, a.Name)
			}
		}
	}
}

// The rail between two tees 14 1/2 in apart becomes two equal pipes of 6.065 in, with a union of 2.0 in: computed by
// hand, the union's length from memory.
func TestAClosedRectangleGetsOneUnionInTheMiddleOfALongRail(t *testing.T) {
	d := fourLegs(t, 14.5, 8)
	r := resolved(t, d)
	if len(r.Loops) != 1 || len(r.Loops[0].Sticks) != 5 {
		t.Fatalf("loops %v", r.Loops)
	}
	n := r.Nodes[r.Loops[0].Union]
	if n.At != (Vec{inch(3 + 7.25), inch(3), inch(6)}) || n.Place != "union in the front low rail" {
		t.Errorf("%s at %v", n.Place, n.At)
	}
	for _, name := range []string{"front low rail 1", "front low rail 2"} {
		if got := cut(t, r, name); got != inch(6.065) {
			t.Errorf("%s: cut %.4f in", name, got.Inches())
		}
	}
	afterCutting(t, r)
}

func TestLoopsOfWholeFrames(t *testing.T) {
	for _, c := range []struct {
		name  string
		doc   *Document
		loops int
	}{
		{"stand of 13 pipes and 14 joints", stand(t), 0},
		{"box of 12 pipes and 8 joints", boxFrame(t), 5},
		{"table with one rectangle", fourLegs(t, 30, 20), 1},
	} {
		r := resolved(t, c.doc)
		if len(r.Loops) != c.loops {
			t.Errorf("%s: %d loops, want %d", c.name, len(r.Loops), c.loops)
		}
		if pipes, joints := len(r.Sticks)-c.loops, len(r.Nodes)-c.loops; pipe.LoopCount(pipes, joints, r.Groups) != c.loops {
			t.Errorf("%s: %d pipes and %d joints without the unions", c.name, pipes, joints)
		}
		afterCutting(t, r)
	}
}

func TestTheBoxHasItsUnionsInLongRailsFirst(t *testing.T) {
	r := resolved(t, boxFrame(t))
	long := 0
	for _, l := range r.Loops {
		s := r.Sticks[l.Sticks[0]]
		if s.Role == PostRole {
			t.Errorf("a union in the %s", s.Name)
		}
		if s.Dir == right {
			long++
		}
	}
	// a fourth long rail can't have one: without all four the box falls into two ends
	if long != 3 {
		t.Errorf("%d unions in long rails, want 3", long)
	}
}

func TestTheMakerChoosesWhereTheUnionGoes(t *testing.T) {
	d := fourLegs(t, 30, 20)
	d.Rails = []Rails{{Name: "long", From: "legs", Level: inch(6)}}
	d.Posts[0].Corners = d.Posts[0].Corners[:2]
	d.Posts = append(d.Posts, Posts{Name: "rear", Panel: "top", Corners: []Corner{BackLeft, BackRight}, InsetX: inch(3), InsetY: inch(3), From: fromFeet, To: toPanel("top")})
	d.Panels[0].Seats = append(d.Panels[0].Seats, Seat{Kind: OnPosts, Group: "rear"})
	d.Rails = append(d.Rails, Rails{Name: "rear", From: "rear", Level: inch(6)}, Rails{Name: "side", From: "legs", With: "rear", Level: inch(6), Union: true})
	r := resolved(t, d)
	if len(r.Loops) != 1 || r.Nodes[r.Loops[0].Union].Place != "union in the left side rail" {
		t.Errorf("%v", r.Nodes[r.Loops[0].Union].Place)
	}
	d.Rails[2].Union, d.Rails[0].Union, d.Rails[1].Union = false, true, true
	refused(t, d, "the rails rear ask for a union, but close no loop that has none yet")
	d.Rails[0].Union, d.Rails[1].Union, d.Rails[2].Union = false, false, true
	d.Panels[0].Width = inch(10)
	refused(t, d, "the rails side ask for a union, but none of them has room")
}

func TestAUnionKeepsOffRailsThatAPanelLiesOn(t *testing.T) {
	d := fourLegs(t, 30, 20)
	d.Rails = []Rails{
		{Name: "long", From: "legs", Level: inch(6), Bands: Relieved},
	}
	d.Panels = append(d.Panels, plank("shelf", 36, 8, 0.75, 0, Seat{Kind: OnRails, Group: "long"}))
	// the shelf lies across the side rails of the rectangle and misses the long ones
	r := resolved(t, d)
	if s := r.Sticks[r.Loops[0].Sticks[0]]; s.Dir != right {
		t.Errorf("the union is in the %s", s.Name)
	}
}

func TestALoopWithoutRoomForAUnionIsRefused(t *testing.T) {
	d := blank(t)
	d.Posts = []Posts{legs(3.5, 3.5, toLevel(1, pipe.Cap), toLevel(30, pipe.Cap))}
	d.Rails = []Rails{{Name: "low", From: "legs", Level: inch(6), Pos: Pos{Line: 9, Column: 4}}}
	// 2·0.7475 + 2·0.4375 + 2·1.375 = 5.12 in, rounded up to the sixteenth
	refused(t, d, "9:4", "needs a union, and none of its sticks has room for one: the longest is 3 1/2 in", "at least 5 1/8 in")
}

func TestAnUprightStickTakesTheUnionWhereNoLevelOneHasRoom(t *testing.T) {
	d := blank(t)
	d.Posts = []Posts{{Name: "pair", At: [][2]length.Length{at(0, 0), at(4, 0)}, From: toLevel(1, pipe.Cap), To: toLevel(30, pipe.Cap)}}
	d.Rails = []Rails{{Name: "low", From: "pair", Level: inch(6)}, {Name: "high", From: "pair", Level: inch(20)}}
	r := resolved(t, d)
	if len(r.Loops) != 1 || r.Nodes[r.Loops[0].Union].Place != "union in the left pair post" {
		t.Errorf("%v", r.Loops)
	}
	afterCutting(t, r)
}

func TestFlangesOnOneWallCountAsOneJoint(t *testing.T) {
	d := blank(t)
	d.Arms = []Arms{{Name: "bracket", At: []length.Length{0, inch(30)}, Level: inch(50), Reach: inch(12), Finish: pipe.Cap}}
	d.Sticks = []FreeStick{free("front", 0, 4, 50, 30, 4, 50)}
	r := resolved(t, d)
	if r.Groups != 1 || len(r.Loops) != 1 || r.Wall == nil || *r.Wall != inch(12) {
		t.Fatalf("%d groups, %d loops, wall %v", r.Groups, len(r.Loops), r.Wall)
	}
	afterCutting(t, r)
}

func TestAPipeLongerThanTheLongestStickIsCoupled(t *testing.T) {
	s := shop.Sample()
	d := blank(t)
	sticks := s.StickLengths(d.Pipe)
	longest := slices.Max(sticks)
	d.Sticks = []FreeStick{free("handrail", 0, 0, 30, longest.Inches()+30, 0, 30)}
	r := resolved(t, d)
	if len(r.Sticks) != 2 || count(r, pipe.Coupling) != 1 || cut(t, r, "handrail stick 1") != cut(t, r, "handrail stick 2") {
		t.Errorf("%d sticks, %d couplings", len(r.Sticks), count(r, pipe.Coupling))
	}
	if s.Pipe.NPT = nil; true {
		if _, err := Resolve(d, s); err == nil {
			t.Error("no error where no stick length is known")
		}
	}
}
