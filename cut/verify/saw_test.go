package verify_test

import (
	"testing"

	"rodwright/cut"
	"rodwright/cut/verify"
	"rodwright/length"
)

// sawnSheet is a sheet of 1000 × 500, saw cut 4, with one part of 400 × 480 at x, 10 and what is left beside it.
func sawnSheet(x length.Length, left []cut.Offcut, cuts ...cut.Setting) (*cut.SheetProblem, *cut.Answer) {
	p := &cut.SheetProblem{
		Unit: length.MM, Kerf: 4 * mm, Useful: at(100, 100),
		Sheets: []cut.Sheet{{Tag: "P", Length: 1000 * mm, Width: 500 * mm, Count: 1, Price: cut.Priced(60)}},
		Parts:  []cut.SheetPart{{Tag: "D1", Length: 400 * mm, Width: 480 * mm, Count: 1}},
	}
	a := &cut.Answer{
		Cost: 60, Bound: 60, Proven: true,
		Used: []cut.Used{{Stock: "P", Parts: []cut.Placed{{Tag: "D1", At: at(x, 10), Size: at(400, 480)}}, Left: left}},
	}
	for i, c := range cuts {
		c.N, c.On, c.Setting = i+1, "P", c.Setting*mm
		a.Cuts = append(a.Cuts, c)
	}
	return p, a
}

// The cuts as a person makes them: all lengths in millimetres, the part between 10 and 490 across.
func TestAListIsRightWhenItCanBeSawn(t *testing.T) {
	across := func(setting length.Length, makes ...string) cut.Setting {
		return cut.Setting{Machine: cut.Crosscut, Setting: setting, Makes: makes}
	}
	along := func(setting length.Length, makes ...string) cut.Setting {
		return cut.Setting{Machine: cut.Rip, Setting: setting, Makes: makes}
	}
	kept := []cut.Offcut{{At: at(420, 10), Size: at(570, 480)}}
	for _, c := range []struct {
		name  string
		x     length.Length
		left  []cut.Offcut
		cuts  []cut.Setting
		right bool
	}{
		{"an edge taken off, saw cut and all", 10, nil, []cut.Setting{across(10), across(400, "D1"), along(10), along(480, "D1")}, true},
		{"an edge taken off in front of the saw cut", 10, nil, []cut.Setting{across(6), across(400, "D1"), along(6), along(480, "D1")}, true},
		{"an edge of less than a saw cut skimmed off", 3, nil, []cut.Setting{across(3), across(400, "D1"), along(10), along(480, "D1")}, true},
		{"an edge of less than a saw cut left on the part", 3, nil, []cut.Setting{across(400, "D1"), along(10), along(480, "D1")}, false},
		{"an edge left on the part", 10, nil, []cut.Setting{across(10), across(400, "D1"), along(480, "D1")}, false},
		{"an offcut kept in what stays", 10, kept, []cut.Setting{across(10), across(400, "D1"), along(10), along(480, "D1")}, true},
		{"an offcut cut out of what stays", 10, kept, []cut.Setting{across(10), across(400, "D1"), across(6), across(570), along(10), along(10), along(480, "D1"), along(480)}, true},
		{"a cut through an offcut to keep", 10, kept, []cut.Setting{across(10), across(400, "D1"), across(300), along(10), along(480, "D1")}, false},
		{"the part named too late", 10, nil, []cut.Setting{across(10), across(400), along(10), along(480, "D1")}, false},
		{"the part not cut free", 10, nil, []cut.Setting{across(10), across(400, "D1"), along(10)}, false},
	} {
		p, a := sawnSheet(c.x, c.left, c.cuts...)
		if faults := verify.Sheet(p, a); (len(faults) == 0) != c.right {
			t.Errorf("%s: %v", c.name, faults)
		}
	}
}

// B1 of 1000 × 150 has a rough edge of 4 on either side and keeps its end of 498; of B2, 600 × 100, nothing is kept.
func TestTheListOfBoardsIsSawnToo(t *testing.T) {
	cuts := func() []cut.Setting {
		return []cut.Setting{
			{N: 1, On: "B1", Machine: cut.Crosscut, Setting: 500 * mm, Makes: []string{"A1"}},
			{N: 2, On: "B2", Machine: cut.Crosscut, Setting: 500 * mm, Makes: []string{"A1"}},
			{N: 3, On: "B1", Machine: cut.Rip, Setting: 4 * mm},
			{N: 4, On: "B1", Machine: cut.Rip, Setting: 80 * mm, Makes: []string{"A1"}},
			{N: 5, On: "B2", Machine: cut.Rip, Setting: 80 * mm, Makes: []string{"A1"}},
		}
	}
	fresh := func() (*cut.PanelProblem, *cut.Answer) {
		p, a := boards()
		a.Cuts = cuts()
		return p, a
	}
	type problem = cut.PanelProblem
	tryAll(t, fresh, verify.Panel, []plant[problem]{
		{"a strip not ripped off", verify.CutRule, func(_ *problem, a *cut.Answer) { a.Cuts = a.Cuts[:4] }},
		{"another setting of the fence", verify.CutRule, func(_ *problem, a *cut.Answer) { a.Cuts[3].Setting++ }},
		{"a rip before the crosscut of a board that keeps its end", verify.CutRule, func(_ *problem, a *cut.Answer) {
			a.Cuts[0], a.Cuts[2] = a.Cuts[2], a.Cuts[0]
			a.Cuts[0].N, a.Cuts[2].N = 1, 3
		}},
		{"the rough edge left on", verify.CutRule, func(_ *problem, a *cut.Answer) {
			a.Cuts = append(a.Cuts[:2:2], a.Cuts[3:]...)
			a.Cuts[2].N, a.Cuts[3].N = 3, 4
		}},
		{"cut on the other board", verify.CutRule, func(_ *problem, a *cut.Answer) { a.Cuts[4].On = "B1" }},
	})
}
