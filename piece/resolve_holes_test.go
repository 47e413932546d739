package piece

import (
	"testing"

	"rodwright/length"
)

func TestHolesAlongAnEdgeStandAtEqualParts(t *testing.T) {
	for along, want := range map[string][][2]float64{
		"front": {{10.5, 1.5}, {21, 1.5}, {31.5, 1.5}},
		"back":  {{10.5, 17.5}, {21, 17.5}, {31.5, 17.5}},
		"left":  {{1.5, 4.75}, {1.5, 9.5}, {1.5, 14.25}},
		"right": {{40.5, 4.75}, {40.5, 9.5}, {40.5, 14.25}},
	} {
		d := stand(t)
		d.Panels[0].Seats, d.Rails = d.Panels[0].Seats[:1], d.Rails[:1]
		d.Holes[0].Along, d.Holes[0].Count = along, 3
		fs := panelNamed(t, resolved(t, d), "deep board").Features
		if len(fs) != 3 {
			t.Fatalf("%s: %d holes", along, len(fs))
		}
		for i, f := range fs {
			x, y := f.Min[0]+f.Radius, f.Min[1]+f.Radius
			if x != inch(want[i][0]) || y != inch(want[i][1]) || !f.Round || f.Kind != HoleFeature {
				t.Errorf("%s: %s at %.4f, %.4f in, want %v", along, f.Name, x.Inches(), y.Inches(), want[i])
			}
		}
		if fs[1].Name != "drains 2" || fs[1].Depth != 0 || fs[1].Node != -1 || fs[1].Stick != -1 {
			t.Errorf("%+v", fs[1])
		}
	}
}

func TestHolesSlotsAndCutOutsAtPlaces(t *testing.T) {
	d := stand(t)
	d.Holes = []Holes{
		{Name: "slot", In: "high board", Kind: Slot, At: [][2]length.Length{at(10, 4)}, Size: at(6, 1), Depth: inch(0.5)},
		{Name: "sink", In: "high board", Kind: CutOut, At: [][2]length.Length{at(25, 4)}, Size: at(8, 5), Radius: inch(1)},
		{Name: "cable", In: "high board", Kind: RoundHole, At: [][2]length.Length{at(35, 4)}, Diameter: inch(2), Passes: "plug", PassSize: inch(1.5)},
	}
	fs := panelNamed(t, resolved(t, d), "high board").Features
	if len(fs) != 3 {
		t.Fatalf("%d features", len(fs))
	}
	if f := fs[0]; f.Kind != SlotFeature || f.Min != at(7, 3.5) || f.Max != at(13, 4.5) || f.Radius != inch(0.5) || f.Depth != inch(0.5) || f.Name != "slot" {
		t.Errorf("%+v", f)
	}
	if f := fs[1]; f.Kind != CutOutFeature || f.Min != at(21, 1.5) || f.Max != at(29, 6.5) || f.Radius != inch(1) || f.Round {
		t.Errorf("%+v", f)
	}
	if f := fs[2]; f.PassSize != inch(1.5) || f.Passes != "plug" || f.Max[0]-f.Min[0] != inch(2) {
		t.Errorf("%+v", f)
	}
	d.Holes[2].At = [][2]length.Length{at(45, 4)}
	refused(t, d, "the middle of cable 1 lies outside high board")
}

func TestHeldThingsAreSpreadAlongThePanel(t *testing.T) {
	r := resolved(t, stand(t))
	if len(r.Held) != 5 {
		t.Fatalf("%d things", len(r.Held))
	}
	for i, x := range []float64{7, 21, 35} { // (i − ½)/3 of 42 in
		h := r.Held[i]
		if (h.Min.X+h.Max.X)/2 != inch(x) || h.Min.Z != inch(17.5) || h.Max.Z != inch(20.5) || h.Panel != 0 {
			t.Errorf("%s from %v to %v", h.Name, h.Min, h.Max)
		}
	}
	// 9 in deep, no post above it: in the middle, which is 16 1/4 in from the front
	if h := r.Held[3]; h.Name != "watering cans 1" || (h.Min.Y+h.Max.Y)/2 != inch(16.25) || h.MassKg != 6.8 {
		t.Errorf("%s from %v to %v", h.Name, h.Min, h.Max)
	}
}

func TestHeldThingsStandClearOfPosts(t *testing.T) {
	r := resolved(t, stand(t))
	// the back posts stand at 16 1/4 in, 1.050 in thick above the tee: 15.725 in are clear
	if h := r.Held[0]; (h.Min.Y+h.Max.Y)/2 != inch(15.725).Half() {
		t.Errorf("trays in the middle of %.4f in", (h.Min.Y + h.Max.Y).Inches())
	}
	d := stand(t)
	d.Holds[0].Size[1] = inch(17) // deeper than the clear strip
	if h := resolved(t, d).Held[0]; (h.Min.Y+h.Max.Y)/2 != inch(9.5) {
		t.Errorf("too deep: in the middle of %.4f in", (h.Min.Y + h.Max.Y).Inches())
	}
}

func TestPlacedThingsStandSideBySide(t *testing.T) {
	d := stand(t)
	place := at(8, 9)
	d.Holds[0].At, d.Holds[0].Count = &place, 2
	h := resolved(t, d).Held
	if h[0].Min != (Vec{inch(1.5), inch(1.5), inch(17.5)}) || h[1].Min.X != h[0].Max.X {
		t.Errorf("from %v, from %v", h[0].Min, h[1].Min)
	}
	turned := blank(t)
	turned.Panels = []Panel{plank("seat", 60, 20, 1, 20)}
	turned.Panels[0].Turned = true
	turned.Holds = []Hold{{Name: "pots", On: "seat", Size: [3]length.Length{inch(5), inch(5), inch(5)}, Count: 3}}
	if h := resolved(t, turned).Held[0]; h.Min.X != inch(7.5) || h.Min.Y != inch(7.5) {
		t.Errorf("turned: from %v", h.Min)
	}
}
