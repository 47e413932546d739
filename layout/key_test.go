package layout_test

import (
	"crypto/sha256"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"rodwright/cut"
	"rodwright/layout"
	"rodwright/length"
)

// glued is a problem in which every member is something.
func glued() *cut.PanelProblem {
	mm := length.Millimetre
	return &cut.PanelProblem{
		Unit: length.In, Kerf: 3 * mm, Jointing: 2 * mm, EndTrim: 20 * mm, PanelEdgeTrim: 5 * mm, BoardEdgeTrim: 6 * mm, Salvage: 0.5, MinTail: 600 * mm,
		Strip: cut.Span{Least: 40 * mm, Most: 160 * mm}, Recut: true,
		Boards: []cut.Board{{
			Tag: "P1", Length: 2400 * mm, Width: 180 * mm, Thickness: 30 * mm, RoughEdges: 1, Price: cut.Priced(38.5), Mate: "log-a", Ring: cut.RingUp,
			Defects: []cut.Defect{{Kind: cut.Knot, Face: cut.GoodFace, Rect: cut.Rect{X: mm, Y: 2 * mm, Length: 3 * mm, Width: 4 * mm}}},
		}},
		Panels: []cut.Panel{{
			Tag: "A1.1", Length: 900 * mm, Width: 400 * mm, Thickness: 26 * mm, Count: 1, Show: cut.Clear, KeepOut: []cut.Rect{{X: mm, Y: mm, Length: mm, Width: mm}}, Mates: true,
		}},
	}
}

func keyOf(p *cut.PanelProblem) string {
	return layout.Task{Kind: layout.OfBoards, Boards: p}.Key()
}

// Keys stand in journals: one that comes out otherwise than it did makes accepted layouts out of date in every shop. What
// is hashed is written down by hand.
func TestAKeyIsTheSameInEveryVersion(t *testing.T) {
	const text = `panel{Unit:3 Kerf:1000000 Boards:[{Tag:"P1" },] Panels:[{Tag:"A\"1" Count:2 },] }`
	want := fmt.Sprintf("sha256:%x", sha256.Sum256([]byte(text)))
	if got := keyOf(&cut.PanelProblem{Unit: length.In, Kerf: length.Millimetre, Boards: []cut.Board{{Tag: "P1"}}, Panels: []cut.Panel{{Tag: `A"1`, Count: 2}}}); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestAMemberThatIsNothingIsNotInTheKey(t *testing.T) {
	none, empty := glued(), glued()
	none.Boards[0].Defects, empty.Boards[0].Defects = nil, []cut.Defect{}
	if keyOf(none) != keyOf(empty) {
		t.Error("no defects and an empty list of them are two problems")
	}
}

// Whatever of a problem is another, the key is another: every member is changed once, wherever it stands.
func TestEveryMemberOfAProblemIsInItsKey(t *testing.T) {
	keys := map[string]string{keyOf(glued()): "nothing"}
	paths := leaves(reflect.ValueOf(glued()).Elem(), "")
	for _, path := range paths {
		p := glued()
		spoil(reflect.ValueOf(p).Elem(), path)
		key := keyOf(p)
		if as, there := keys[key]; there {
			t.Errorf("with another %s the key is that with another %s", path, as)
		}
		keys[key] = path
	}
	if len(paths) < 30 {
		t.Errorf("only %d members were changed: %q", len(paths), paths)
	}
	swapped := glued()
	swapped.Panels = append(swapped.Panels, cut.Panel{Tag: "A2"})
	other := glued()
	other.Panels = append([]cut.Panel{{Tag: "A2"}}, other.Panels...)
	if keyOf(swapped) == keyOf(other) {
		t.Error("the order of the panels, which an answer depends on, is not in the key")
	}
}

// leaves lists the paths of all values of a problem that hold no others.
func leaves(v reflect.Value, at string) (out []string) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			out = append(out, leaves(v.Field(i), at+"/"+v.Type().Field(i).Name)...)
		}
	case reflect.Slice:
		for i := range v.Len() {
			out = append(out, leaves(v.Index(i), at+"/0")...)
		}
	default:
		out = append(out, at)
	}
	return out
}

// spoil changes the value at a path.
func spoil(v reflect.Value, path string) {
	for _, name := range strings.Split(path[1:], "/") {
		if v.Kind() == reflect.Slice {
			v = v.Index(0)
			continue
		}
		v = v.FieldByName(name)
	}
	switch {
	case v.CanInt():
		v.SetInt(v.Int() + 1)
	case v.CanUint():
		v.SetUint(v.Uint() - 1)
	case v.CanFloat():
		v.SetFloat(v.Float() + 0.25)
	case v.Kind() == reflect.Bool:
		v.SetBool(!v.Bool())
	default:
		v.SetString(v.String() + "x")
	}
}
