package piece

import (
	"testing"

	"rodwright/trade/pipe"
)

func TestPostsEndAtTheirFeet(t *testing.T) {
	for kind, want := range map[FootKind]struct {
		end    pipe.Kind
		height float64
	}{
		StemCaster:  {pipe.Cap, 4},
		PlateCaster: {pipe.Flange, 4},
		Leveller:    {pipe.Cap, 4},
		CapFoot:     {pipe.Cap, 0},
		FlangeFoot:  {pipe.Flange, 0},
		BareFoot:    {pipe.None, 0},
	} {
		d := stand(t)
		d.Feet.Kind = kind
		r := resolved(t, d)
		n := nodeAt(t, r, 2.75, 2.75, want.height)
		if n.Kind != want.end || n.Foot != 0 || r.Feet[0].At.Z != inch(want.height) {
			t.Errorf("%s: a %s", kind, n.Kind)
		}
		if r.Min.Z != 0 {
			t.Errorf("%s: the piece begins at %v", kind, r.Min.Z)
		}
		if len(r.Feet) != 4 || r.Nodes[r.Feet[3].Node].At != (Vec{inch(39.25), inch(16.25), inch(want.height)}) {
			t.Errorf("%s: feet %+v", kind, r.Feet)
		}
	}
}

func TestLocksGoToTheFrontFirst(t *testing.T) {
	for locks, want := range map[int][]bool{0: {false, false, false, false}, 1: {true, false, false, false}, 2: {true, true, false, false}, 9: {true, true, true, true}} {
		d := stand(t)
		d.Feet.Locks = locks
		d.Posts[0], d.Posts[1] = d.Posts[1], d.Posts[0] // the document's order does not matter
		r := resolved(t, d)
		for _, f := range r.Feet {
			i := 0
			if f.At.Y > inch(10) {
				i += 2
			}
			if f.At.X > inch(20) {
				i++
			}
			if f.Locked != want[i] {
				t.Errorf("%d locks: %s locked %v", locks, f.Name, f.Locked)
			}
		}
	}
}

func TestFeetUnderAPanelStandAtItsCorners(t *testing.T) {
	d := blank(t)
	d.Feet = Feet{Kind: PlateCaster, Panel: "base", Inset: inch(3), Wheel: inch(3), Height: inch(4), Locks: 2}
	d.Panels = []Panel{plank("base", 60, 20, 1.25, 0)}
	r := resolved(t, d)
	want := map[string][2]float64{"front left caster": {3, 3}, "front right caster": {57, 3}, "back left caster": {3, 17}, "back right caster": {57, 17}}
	if len(r.Feet) != 4 {
		t.Fatalf("%d feet", len(r.Feet))
	}
	for _, f := range r.Feet {
		if p := want[f.Name]; f.At != (Vec{inch(p[0]), inch(p[1]), inch(4)}) || f.Panel != 0 || f.Node != -1 {
			t.Errorf("%s at %v", f.Name, f.At)
		}
	}
	d.Feet.Count = 6
	r = resolved(t, d)
	if f := r.Feet[4]; len(r.Feet) != 6 || f.Name != "front middle caster" || f.At.X != inch(30) {
		t.Errorf("%d feet, the fifth %s at %v", len(r.Feet), f.Name, f.At)
	}
	d.Panels[0].Length, d.Panels[0].Width = inch(20), inch(60)
	if f := resolved(t, d).Feet[5]; f.Name != "middle right caster" || f.At.Y != inch(30) {
		t.Errorf("the sixth %s at %v", f.Name, f.At)
	}
	d.Feet.Count = 5
	refused(t, d, "5 feet under a panel")
}
