package check

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"rodwright/finding"
	bend "rodwright/mechanics/plate"
	"rodwright/piece/random"
	"rodwright/shop"
	"rodwright/trade/plate"
)

// alike compares findings. Where a bent panel has no wood its picture is no number, which is like no other.
func alike(a, b []finding.Finding) bool {
	if len(a) != len(b) {
		return false
	}
	a, b = slices.Clone(a), slices.Clone(b)
	for i := range a {
		p, q := a[i].Picture.Bent, b[i].Picture.Bent
		if (p == nil) != (q == nil) || p != nil && fmt.Sprint(*p) != fmt.Sprint(*q) {
			return false
		}
		a[i].Picture.Bent, b[i].Picture.Bent = nil, nil
	}
	return reflect.DeepEqual(a, b)
}

// bentAs works panel i of a piece out with a change.
func bentAs(p *Piece, i int, change func(*bend.Plate)) (plate.Bent, error) {
	stuff, _, err := p.stuffOf(i)
	if err != nil {
		return plate.Bent{}, err
	}
	model := p.plateOf(i)
	if len(model.Posts)+len(model.Discs)+len(model.Rails) == 0 {
		return plate.Bent{}, plate.ErrUnheld
	}
	change(model)
	return p.bend(model, stuff)
}

func heavier(f float64) func(*bend.Plate) {
	return func(m *bend.Plate) {
		m.Load.Density *= f
		for k := range m.Load.Patches {
			m.Load.Patches[k].Pressure *= f
		}
	}
}

// thinner leaves the panel its weight.
func thinner(f float64) func(*bend.Plate) {
	return func(m *bend.Plate) { m.Thickness, m.Load.Density = m.Thickness/f, m.Load.Density*f }
}

// stiffRails takes what gives way below a panel from it: a thinner panel leans less on a rail that does.
func stiffRails(then func(*bend.Plate)) func(*bend.Plate) {
	return func(m *bend.Plate) {
		for k := range m.Rails {
			m.Rails[k].EI = 0
		}
		then(m)
	}
}

// On any piece: twice the load is twice the sag, and a panel on what doesn't give way sags more when it is thinner. Where two
// meshes differ, both may be off by 2 %.
func TestAPanelOfARandomPieceSagsMoreWhenLoadedMoreOrThinner(t *testing.T) {
	judged := 0
	for seed := range uint64(60) {
		p, err := tryDerive(shop.Sample(), random.Document(seed))
		if err != nil {
			t.Fatal(err)
		}
		for i := range p.Panels {
			name := fmt.Sprintf("seed %d, %s", seed, p.Panels[i].Name)
			a, err := bentAs(p, i, heavier(1))
			if err != nil {
				continue
			}
			judged++
			b, err := bentAs(p, i, heavier(2))
			if err != nil || math.Abs(b.Sag.Value-2*a.Sag.Value) > 1e-4*math.Abs(2*a.Sag.Value)+1e-9 {
				t.Errorf("%s: sags %v, under twice the load %v, %v", name, a.Sag.Value, b.Sag.Value, err)
			}
			c, err := bentAs(p, i, stiffRails(heavier(1)))
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			d, err := bentAs(p, i, stiffRails(thinner(1.25)))
			if err != nil || d.Sag.Value < 1.9*c.Sag.Value || d.Sag.Value > 2.0*c.Sag.Value {
				t.Errorf("%s: sags %v, a quarter thinner %v, which is not 1.25³ as much: %v", name, c.Sag.Value, d.Sag.Value, err)
			}
		}
	}
	if judged < 60 {
		t.Errorf("only %d panels were judged", judged)
	}
}
