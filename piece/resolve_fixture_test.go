package piece

import (
	"errors"
	"strings"
	"testing"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/trade/pipe"
	"rodwright/trade/wood"
)

// inch gives a length in inches.
func inch(v float64) length.Length { return length.FromInches(v) }

// blank is a document of 3/4 pipe and flat-sawn white oak at 8 %, in a room of 30 to 60 % RH at 70 °F: the
// air of the notch example, whose corners are one temperature.
func blank(t testing.TB) *Document {
	t.Helper()
	size, err := pipe.Lookup("3/4")
	if err != nil {
		t.Fatal(err)
	}
	oak, err := wood.Lookup("white-oak")
	if err != nil {
		t.Fatal(err)
	}
	seventy := (70.0 - 32) / 1.8
	return &Document{File: "test.piece.yaml", Name: "test", Unit: length.In, Fineness: length.Sixteenth, Pipe: size,
		Place: Place{LowRH: 30, HighRH: 60, LowC: seventy, HighC: seventy},
		Wood:  Wood{Species: oak, Cut: wood.Flat, Moisture: 8}}
}

// plank is a panel with its grain along the piece, its level the height of its top; 0 leaves it open.
func plank(name string, l, w, thick, level float64, seats ...Seat) Panel {
	p := Panel{Name: name, Length: inch(l), Width: inch(w), Thickness: inch(thick), GrainX: true, Seats: seats, Straps: -1}
	if level > 0 {
		top := inch(level)
		p.Level = &top
	}
	return p
}

func at(x, y float64) [2]length.Length { return [2]length.Length{inch(x), inch(y)} }

func toPanel(name string) PostEnd { return PostEnd{Kind: AtPanel, Name: name} }

func toLevel(level float64, finish pipe.Kind) PostEnd {
	return PostEnd{Kind: AtLevel, Level: inch(level), Finish: finish}
}

func toRail(name string) PostEnd { return PostEnd{Kind: AtRail, Name: name} }

var fromFeet = PostEnd{Kind: AtFeet}

// stand is the stepped seedling stand: a deep board low in front, a high board at the back, stem casters.
func stand(t testing.TB) *Document {
	d := blank(t)
	d.Feet = Feet{Kind: StemCaster, Wheel: inch(3), Height: inch(4), Offset: inch(1.125), RatedKg: 50, Locks: 2, Fixed: "through drilled caps"}
	inset := inch(2.75)
	d.Posts = []Posts{
		{Name: "front", Panel: "deep board", Corners: []Corner{FrontLeft, FrontRight}, InsetX: inset, InsetY: inset, From: fromFeet, To: toPanel("deep board")},
		{Name: "back", Panel: "deep board", Corners: []Corner{BackLeft, BackRight}, InsetX: inset, InsetY: inset, From: fromFeet, To: toPanel("high board")},
	}
	d.Rails = []Rails{
		{Name: "side", From: "front", With: "back", Level: inch(8.5), Share: [2]int64{1, 2}},
		{Name: "back", From: "back", Under: "deep board", Bands: Relieved, Share: [2]int64{1, 2}},
	}
	d.Panels = []Panel{
		plank("deep board", 42, 19, 1.0625, 17.5, Seat{Kind: OnPosts, Group: "front"}, Seat{Kind: OnRails, Group: "back"}, Seat{Kind: AroundPosts, Group: "back"}),
		plank("high board", 41, 9, 1.0625, 38.5, Seat{Kind: OnPosts, Group: "back"}),
	}
	d.Holes = []Holes{{Name: "drains", In: "deep board", Kind: RoundHole, Along: "front", FromEdge: inch(1.5), Diameter: inch(0.625), Count: 5}}
	d.Edges = []Edge{{Panel: "deep board", Side: "front", Profile: "chamfer", Size: inch(3.0 / 32)}}
	d.Holds = []Hold{
		{Name: "seed trays", On: "deep board", Size: [3]length.Length{inch(13), inch(15), inch(3)}, MassKg: 5.4, Count: 3},
		{Name: "watering cans", On: "high board", Size: [3]length.Length{inch(12), inch(7), inch(13)}, MassKg: 6.8, Count: 2},
	}
	return d
}

// legs is a group of posts at the corners of a rectangle, between two levels.
func legs(x, y float64, from, to PostEnd) Posts {
	return Posts{Name: "legs", At: [][2]length.Length{at(0, 0), at(x, 0), at(0, y), at(x, y)}, From: from, To: to}
}

// boxFrame is a closed box of pipe: four legs between two rectangles of rails, elbows at all eight corners.
func boxFrame(t testing.TB) *Document {
	d := blank(t)
	d.Posts = []Posts{legs(40, 20, toRail("bottom"), toRail("top"))}
	d.Rails = []Rails{{Name: "bottom", From: "legs", Level: inch(2)}, {Name: "top", From: "legs", Level: inch(30)}}
	return d
}

// resolved resolves a document that must be right.
func resolved(t testing.TB, d *Document) *Resolved {
	t.Helper()
	r, err := Resolve(d, shop.Sample())
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// refused checks that a document is refused with an Error that says all the words.
func refused(t *testing.T, d *Document, words ...string) {
	t.Helper()
	_, err := Resolve(d, shop.Sample())
	var e *Error
	if !errors.As(err, &e) {
		t.Errorf("%v, want an error that says %q", err, words)
		return
	}
	for _, w := range words {
		if !strings.Contains(e.Error(), w) {
			t.Errorf("%v\nlacks %q", e, w)
		}
	}
	if e.Want == "" || e.File != d.File {
		t.Errorf("%v lacks what would be right, or the file", e)
	}
}

// nodeAt returns the joint at a point given in inches.
func nodeAt(t testing.TB, r *Resolved, x, y, z float64) *Node {
	t.Helper()
	for i := range r.Nodes {
		if r.Nodes[i].At == (Vec{inch(x), inch(y), inch(z)}) {
			return &r.Nodes[i]
		}
	}
	t.Fatalf("no joint at %v, %v, %v", x, y, z)
	return nil
}

// stickNamed returns the stick of that name.
func stickNamed(t testing.TB, r *Resolved, name string) *Stick {
	t.Helper()
	for i := range r.Sticks {
		if r.Sticks[i].Name == name {
			return &r.Sticks[i]
		}
	}
	t.Fatalf("no stick %q", name)
	return nil
}

func panelNamed(t testing.TB, r *Resolved, name string) *FlatPanel {
	t.Helper()
	for i := range r.Panels {
		if r.Panels[i].Name == name {
			return &r.Panels[i]
		}
	}
	t.Fatalf("no panel %q", name)
	return nil
}

// cut returns the length a stick is cut to.
func cut(t testing.TB, r *Resolved, name string) length.Length {
	t.Helper()
	s := stickNamed(t, r, name)
	c, err := pipe.CutLength(s.Between, r.Nodes[s.A].Fitting, r.Nodes[s.B].Fitting)
	if err != nil {
		t.Fatal(err)
	}
	return c.Cut
}
