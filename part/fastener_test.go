package part_test

import (
	"errors"
	"strings"
	"testing"

	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// A screw reaches at most 1/8 in from the far face: common practice, no source. A flange is 0.19 in thick
// under the head and takes No. 10 at 3/4 and No. 12 at 1 in, a strap 0.06 in and No. 10: from memory. Worked
// by hand: 0.19 + 1 − 0.125 = 1.065 takes 1 in; 0.19 + 1.5 − 0.125 = 1.565 takes 1 1/2; 0.19 + 0.5 − 0.125 =
// 0.565 takes 1/2.
func TestScrewsAreTheLongestThatDoNotComeThrough(t *testing.T) {
	for _, c := range []struct{ thickness, pipe, want string }{
		{"1", "3/4", "wood screw 10 × 1 in"},
		{"1.5", "3/4", "wood screw 10 × 1 1/2 in"},
		{"0.5", "3/4", "wood screw 10 × 1/2 in"},
		{"1", "1", "wood screw 12 × 1 in"},
	} {
		_, l := takeOff(t, strings.NewReplacer("thickness: 1,", "thickness: "+c.thickness+",", "pipe: 3/4", "pipe: "+c.pipe).Replace(bench))
		p := named(t, l, c.want)
		if p.Count != 16 || len(l.Fasteners) != 4 {
			t.Errorf("%d × %s in %d sets", p.Count, c.want, len(l.Fasteners))
		}
		for _, f := range l.Fasteners {
			if !f.Fits || f.Count != 4 || f.Panel != 0 || f.Screws != p.Tag || !strings.HasPrefix(f.Holds, "F") {
				t.Errorf("%+v", f)
			}
		}
	}
}

func TestATooThinPanelTakesTheShortestScrewAndSaysThatItDoesNotFit(t *testing.T) {
	_, l := takeOff(t, strings.Replace(bench, "thickness: 1,", "thickness: 1/4,", 1))
	f := l.Fasteners[0]
	if f.Fits || f.Length != 3*inch/8 { // the shortest that is sold
		t.Errorf("%+v", f)
	}
}

func TestTheMakersScrewWins(t *testing.T) {
	_, l := takeOff(t, bench+"joints:\n  flange: {screw: 14 × 1 1/4 in, slotted: yes, hole: 3/8 in}\n")
	f := l.Fasteners[0]
	if f.Gauge != 14 || f.Length != 5*inch/4 || !f.Slotted || f.Hole != 3*inch/8 || f.Fits {
		t.Errorf("%+v: 1 1/4 in comes through 1 in", f)
	}
	_, l = takeOff(t, bench+"joints:\n  flange: 8\n")
	if f = l.Fasteners[0]; f.Gauge != 8 || f.Length != inch || !f.Fits || f.Slotted {
		t.Errorf("%+v", f)
	}
}

func TestAScrewThatIsNotMadeIsAnError(t *testing.T) {
	s := shop.Sample()
	r := resolve(t, s, bench+"joints:\n  flange: 13\n")
	_, err := part.TakeOff(r, s)
	var e *piece.Error
	if !errors.As(err, &e) || e.Pos.Line == 0 || !strings.Contains(e.Message, "13") {
		t.Errorf("%v", err)
	}
}

// wallShelf hangs on two arms from the wall.
const wallShelf = `
unit: in
place: {room: studio, wall: WALL}
wood: white-oak
pipe: 3/4
arms:
  bracket: {at: ends of shelf, inset: 6, level: 50, bands: ridden, reach: 10}
panels:
  shelf: {length: 36, width: 9, thickness: 1, sits: on bracket arms}
`

// Common practice, no source: 2 1/2 in into a stud; anchors where the wall is masonry.
func TestFlangesOnAWall(t *testing.T) {
	_, l := takeOff(t, strings.Replace(wallShelf, "WALL", "studs 16 in", 1))
	wall := 0
	for _, f := range l.Fasteners {
		if f.Panel < 0 {
			wall += f.Count
			if f.Length != part.WallScrew || len(f.Assumed) == 0 {
				t.Errorf("%+v", f)
			}
		}
	}
	if wall != 8 || named(t, l, "wood screw 10 × 2 1/2 in").Count != 8 {
		t.Errorf("%d screws in the wall", wall)
	}
	_, l = takeOff(t, strings.Replace(wallShelf, "WALL", "masonry", 1))
	if n := named(t, l, "wall anchor").Count; n != 8 {
		t.Errorf("%d anchors", n)
	}
}

func TestStrapsTakeTwoScrewsEachAndHaveTheirSeats(t *testing.T) {
	r, l := takeOff(t, strings.Replace(wallShelf, "WALL", "studs", 1))
	straps := named(t, l, "strap 3/4")
	if straps.Count != 4 { // two on each arm, the shop's default
		t.Errorf("%d straps", straps.Count)
	}
	tagged := 0
	for k, seat := range r.Panels[0].Seats {
		if seat.Strap != (l.SeatTags[0][k] != "") {
			t.Errorf("seat %d: strap %v, tag %q", k, seat.Strap, l.SeatTags[0][k])
		}
		if seat.Strap {
			tagged++
		}
	}
	if tagged != straps.Count {
		t.Errorf("%d tagged", tagged)
	}
	if n := named(t, l, "wood screw 10 × 7/8 in").Count; n != 8 { // 0.06 + 1 − 0.125 = 0.935
		t.Errorf("%d screws through straps", n)
	}
}

// Feet under a panel: a plate takes four No. 14 screws, a stem an insert. From memory and common practice.
func TestCastersUnderAPanel(t *testing.T) {
	const trolley = `
unit: in
wood: white-oak
pipe: 3/4
feet: {FEET}
posts:
  handle: {at: left corners of base, inset: {along: 6, across: 4}, from: base, to: {level: 34, end: cap}}
panels:
  base: {length: 40, width: 20, thickness: 1.5, sits: [on feet, under handle posts]}
`
	_, l := takeOff(t, strings.Replace(trolley, "FEET", "casters: {kind: plate, wheel: 3 in, locks: 2, under: base, inset: 2}", 1))
	if n := named(t, l, "3 in plate caster with lock").Count; n != 2 {
		t.Errorf("%d with a lock", n)
	}
	if n := named(t, l, "wood screw 14 × 1 1/2 in").Count; n != 16 { // 0.125 + 1.5 − 0.125 = 1.5
		t.Errorf("%d screws", n)
	}
	_, l = takeOff(t, strings.Replace(trolley, "FEET", "levelling feet: {under: base, inset: 2}", 1))
	if n := named(t, l, "threaded insert 3/8-16").Count; n != 4 || named(t, l, "levelling foot").Count != 4 {
		t.Errorf("%d inserts", n)
	}
	_, l = takeOff(t, strings.NewReplacer("FEET", "levelling feet: {under: base, inset: 2}", "pipe: 3/4", "pipe: DN20").Replace(trolley))
	named(t, l, "threaded insert M10")
}

// A screw of 1 1/8 in ends within a board of 1 in under a flange, but less than 1/8 in from its far face.
func TestAScrewMustKeepClearOfTheFarFace(t *testing.T) {
	_, l := takeOff(t, bench+"joints:\n  flange: {screw: 10 × 1 1/8 in}\n")
	if f := l.Fasteners[0]; f.Fits || f.Length != 9*inch/8 {
		t.Errorf("%+v", f)
	}
	s := own(func(s *shop.Shop) { s.Settings.ScrewAllowance = inch / 4 })
	l, err := part.TakeOff(resolve(t, s, bench), s)
	if err != nil {
		t.Fatal(err)
	}
	if f := l.Fasteners[0]; f.Length != 7*inch/8 { // 0.19 + 1 − 0.25 = 0.94
		t.Errorf("with a quarter inch left: %v in", f.Length.Inches())
	}
}
