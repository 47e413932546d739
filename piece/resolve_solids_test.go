package piece

import (
	"testing"

	"rodwright/length"
	"rodwright/shop"
	"rodwright/solid"
	"rodwright/trade/pipe"
)

// clashes returns the pairs of bodies that fill the same space and do not belong together.
func clashes(r *Resolved) (out []string) {
	bodies := r.Solids()
	for i, a := range bodies {
		for _, b := range bodies[:i] {
			if r.MayMeet(a, b) {
				continue
			}
			if m, ok := solid.Overlap(a.Shape, b.Shape); ok {
				out = append(out, b.Name+" and "+a.Name+": "+length.SixtyFourth.Text(m.Depth))
			}
		}
	}
	return out
}

func TestWholePiecesDoNotClash(t *testing.T) {
	six := fourLegs(t, 30, 20)
	six.Rails = append(six.Rails, Rails{Name: "high", From: "legs", Level: inch(20)})
	for name, doc := range map[string]*Document{"stand": stand(t), "box": boxFrame(t), "table": six, "shelf on arms": shelf(t, Short), "rack": rack(t, 3)} {
		for _, c := range clashes(resolved(t, doc)) {
			t.Errorf("%s: %s", name, c)
		}
	}
}

func TestAClashIsFound(t *testing.T) {
	d := stand(t)
	d.Holds[1].Size[2] = inch(60)
	d.Holds[0].Size[2] = inch(30) // the trays reach up into the high board
	if len(clashes(resolved(t, d))) == 0 {
		t.Error("no clash between trays and high board")
	}
	notch := stand(t)
	notch.Panels[0].Seats = notch.Panels[0].Seats[:2] // the board is not cut round the back posts
	if len(clashes(resolved(t, notch))) == 0 {
		t.Error("no clash between the deep board and the back posts")
	}
	flush := stand(t)
	flush.Rails[1].Bands = Short // the board lies over the bands without pockets
	if len(clashes(resolved(t, flush))) == 0 {
		t.Error("no clash between the deep board and the bands")
	}
}

func TestBodiesOfAPiece(t *testing.T) {
	r := resolved(t, stand(t))
	counts := map[BodyKind]int{}
	for _, b := range r.Solids() {
		counts[b.Kind]++
	}
	// 6 tees of 3 outlets, 4 caps, 4 flanges with hub and plate; 4 casters
	if counts[PanelBody] != 2 || counts[StickBody] != 13 || counts[FittingBody] != 6*3+4+4*2 || counts[FootBody] != 4 || counts[HeldBody] != 5 {
		t.Errorf("%v", counts)
	}
	for _, b := range r.Solids() {
		if b.Kind != StickBody {
			continue
		}
		s := &r.Sticks[b.Index]
		c := b.Shape.(solid.Cylinder)
		cut, err := pipe.CutLength(s.Between, r.Nodes[s.A].Fitting, r.Nodes[s.B].Fitting)
		if err != nil {
			t.Fatal(err)
		}
		if got := (c.B.X - c.A.X) + (c.B.Y - c.A.Y) + (c.B.Z - c.A.Z); got != cut.Cut {
			t.Errorf("%s: a body of %v, cut %v", b.Name, got, cut.Cut)
		}
	}
}

func TestMayMeet(t *testing.T) {
	r := resolved(t, stand(t))
	stick := func(i int) Body { return Body{Kind: StickBody, Index: i} }
	joint := func(i int) Body { return Body{Kind: FittingBody, Index: i} }
	foot := Body{Kind: FootBody, Index: 0}
	if n := r.Sticks[0].A; !r.MayMeet(stick(0), joint(n)) || !r.MayMeet(joint(n), stick(0)) || !r.MayMeet(joint(n), joint(n)) {
		t.Error("a stick may meet its own joint, and a joint itself")
	}
	if r.MayMeet(stick(0), stick(1)) || r.MayMeet(stick(0), joint(r.Sticks[3].B)) || r.MayMeet(Body{Kind: PanelBody}, joint(0)) {
		t.Error("strangers may not meet")
	}
	if !r.MayMeet(foot, joint(r.Feet[0].Node)) || !r.MayMeet(foot, stick(0)) || r.MayMeet(foot, stick(2)) || r.MayMeet(foot, Body{Kind: PanelBody}) {
		t.Error("a caster may meet the cap and the pipe it is fixed to, and nothing else")
	}
}

func TestTheBoxRoundAPiece(t *testing.T) {
	r := resolved(t, shelf(t, Short))
	plate, err := shop.Sample().Fitting(r.Doc.Pipe, pipe.Flange)
	if err != nil {
		t.Fatal(err)
	}
	axis := inch(54 - 0.525)
	if r.Min.Z != axis-plate.Plate.Half() || r.Max.Z != inch(55.215) && r.Max.Z != axis+plate.Plate.Half() || r.Max.Y != *r.Wall {
		t.Errorf("from %v to %v", r.Min, r.Max)
	}
}
