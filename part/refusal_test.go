package part_test

import (
	"errors"
	"strings"
	"testing"

	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

func TestWhatCantBeTakenOffNamesItsPlace(t *testing.T) {
	for _, c := range []struct {
		name, body, says string
	}{
		{"stock that nobody sells", strings.Replace(bench, "thickness: 1,", "thickness: 1, stock: 9/4,", 1), "9/4"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := shop.Sample()
			_, err := part.TakeOff(resolve(t, s, c.body), s)
			var e *piece.Error
			if !errors.As(err, &e) || e.Pos.Line == 0 || !strings.Contains(e.Message, c.says) {
				t.Errorf("%v", err)
			}
		})
	}
}

// changed takes off the bench after its resolved geometry was changed.
func changed(t *testing.T, change func(*piece.Resolved)) error {
	t.Helper()
	s := shop.Sample()
	r := resolve(t, s, bench)
	change(r)
	_, err := part.TakeOff(r, s)
	return err
}

func TestGeometryThatNoTableKnowsIsAnError(t *testing.T) {
	for name, change := range map[string]func(*piece.Resolved){
		"a fitting of no kind":        func(r *piece.Resolved) { r.Nodes[0].Kind = "spider" },
		"a fitting of no size":        func(r *piece.Resolved) { r.Nodes[3].Size = pipe.Size{ID: "7/9"} },
		"a sheet of no kind":          func(r *piece.Resolved) { r.Panels[0].Spec.Sheet = "birch" },
		"a wood without weight":       func(r *piece.Resolved) { r.Panels[0].Spec.Wood.Species.SG12 = 0 },
		"a stick of no pipe":          func(r *piece.Resolved) { r.Sticks[0].Section = piece.Section{} },
		"a strap on a square stick":   func(r *piece.Resolved) { strapOn(r, piece.Section{}) },
		"a strap on too large a pipe": func(r *piece.Resolved) { three, _ := pipe.Lookup("3"); strapOn(r, piece.Section{Pipe: &three}) },
	} {
		var e *piece.Error
		if err := changed(t, change); !errors.As(err, &e) || e.Message == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func strapOn(r *piece.Resolved, s piece.Section) {
	r.Panels[0].Seats = append(r.Panels[0].Seats, piece.PanelSeat{Kind: piece.OnRails, Strap: true, Stick: len(r.Sticks), Node: -1, Foot: -1})
	r.Sticks = append(r.Sticks, r.Sticks[0])
	r.Sticks[len(r.Sticks)-1].Section = s
}

func TestNothingIsTakenOffFromNothing(t *testing.T) {
	l, err := part.TakeOff(&piece.Resolved{}, shop.Sample())
	if err != nil || len(l.Parts) != 0 || l.Totals.MassKg != 0 || len(l.Supplies) != 0 {
		t.Errorf("%+v %v", l, err)
	}
}
