package wire

import (
	"fmt"
	"math"
	"strconv"

	"rodwright/cut"
	"rodwright/length"
)

// root starts reading a file that holds one object.
func root(file string, src []byte) (*decoder, *node) {
	d, v := newDecoder(file, src)
	if v == nil {
		return d, d.object(nil, "")
	}
	return d, d.object(v, "")
}

// ReadStick reads a problem of sticks.
func ReadStick(file string, src []byte) (*cut.StickProblem, error) {
	d, n := root(file, src)
	n.readUnit()
	p := &cut.StickProblem{Unit: d.unit, Kerf: n.length("kerf"), Trim: n.length("trim"), Useful: n.length("useful")}
	n.each("stock", func(v *value, path string) {
		o := d.object(v, path)
		p.Stock = append(p.Stock, cut.StickStock{
			Tag: o.text("tag", ""), Length: o.length("length"), Count: o.count("count", cut.Any), Price: o.price("price"),
		})
		o.end()
	})
	n.each("parts", func(v *value, path string) {
		o := d.object(v, path)
		p.Parts = append(p.Parts, cut.StickPart{
			Tag: o.text("tag", ""), Length: o.length("length"), Count: o.count("count", 1), Bought: o.price("bought"), Making: o.price("making"),
		})
		o.end()
	})
	n.end()
	return p, d.checked(p.Check)
}

// ReadPanel reads a problem of glued-up panels.
func ReadPanel(file string, src []byte) (*cut.PanelProblem, error) {
	d, n := root(file, src)
	n.readUnit()
	p := &cut.PanelProblem{
		Unit: d.unit, Kerf: n.length("kerf"), Jointing: n.length("jointing"), EndTrim: n.length("end_trim"),
		PanelEdgeTrim: n.length("panel_edge_trim"), BoardEdgeTrim: n.length("board_edge_trim"), MinTail: n.length("min_tail"),
	}
	p.Salvage, _ = n.float("salvage")
	p.Recut = n.flag("recut")
	if v := n.field("strip"); v != nil && v.form != null {
		o := d.object(v, "strip")
		p.Strip = cut.Span{Least: o.length("least"), Most: o.length("most")}
		o.end()
	}
	n.each("boards", func(v *value, path string) { p.Boards = append(p.Boards, d.board(v, path)) })
	n.each("panels", func(v *value, path string) { p.Panels = append(p.Panels, d.panel(v, path)) })
	n.end()
	return p, d.checked(p.Check)
}

func (d *decoder) board(v *value, path string) cut.Board {
	o := d.object(v, path)
	b := cut.Board{
		Tag: o.text("tag", ""), Length: o.length("length"), Width: o.length("width"), Thickness: o.length("thickness"),
		RoughEdges: int(o.count("rough_edges", 0)), Price: o.price("price"), Mate: o.text("mate", ""),
		Ring: cut.Ring(o.text("ring", "")),
	}
	o.each("defects", func(v *value, path string) {
		e := d.object(v, path)
		b.Defects = append(b.Defects, cut.Defect{
			Kind: cut.DefectKind(e.text("kind", "")), Face: cut.Face(e.text("face", "both")), Rect: e.rect(),
		})
		e.end()
	})
	o.end()
	return b
}

// rect reads the four sizes of a rectangle.
func (n *node) rect() cut.Rect {
	return cut.Rect{X: n.length("x"), Y: n.length("y"), Length: n.length("length"), Width: n.length("width")}
}

func (d *decoder) panel(v *value, path string) cut.Panel {
	o := d.object(v, path)
	q := cut.Panel{
		Tag: o.text("tag", ""), Length: o.length("length"), Width: o.length("width"), Thickness: o.length("thickness"),
		Count: o.count("count", 1), Show: cut.Show(o.text("show", string(cut.Clear))), Mates: o.flag("mates"),
	}
	o.each("keep_out", func(v *value, path string) {
		e := d.object(v, path)
		q.KeepOut = append(q.KeepOut, e.rect())
		e.end()
	})
	o.end()
	return q
}

// ReadSheet reads a problem of sheets.
func ReadSheet(file string, src []byte) (*cut.SheetProblem, error) {
	d, n := root(file, src)
	n.readUnit()
	p := &cut.SheetProblem{
		Unit: d.unit, Kerf: n.length("kerf"), Trim: n.length("trim"), Stages: int(n.count("stages", 0)), Useful: n.pair("useful"),
	}
	n.each("sheets", func(v *value, path string) { p.Sheets = append(p.Sheets, d.sheet(v, path)) })
	n.each("parts", func(v *value, path string) { p.Parts = append(p.Parts, d.sheetPart(v, path)) })
	n.end()
	return p, d.checked(p.Check)
}

func (d *decoder) sheet(v *value, path string) cut.Sheet {
	o := d.object(v, path)
	s := cut.Sheet{
		Tag: o.text("tag", ""), Length: o.length("length"), Width: o.length("width"), Count: o.count("count", cut.Any),
		Price: o.price("price"), Grain: o.flag("grain"),
	}
	o.each("defects", func(v *value, path string) {
		e := d.object(v, path)
		s.Defects = append(s.Defects, e.rect())
		e.end()
	})
	o.end()
	return s
}

// sheetPart reads a part of a sheet. Without a count it is one; null is any number, for parts with a value.
func (d *decoder) sheetPart(v *value, path string) cut.SheetPart {
	o := d.object(v, path)
	q := cut.SheetPart{
		Tag: o.text("tag", ""), Length: o.length("length"), Width: o.length("width"), Turn: o.flag("turn"), Value: o.price("value"),
		Count: 1,
	}
	if c := o.field("count"); c != nil {
		q.Count = o.count("count", cut.Any)
	}
	if q.Count == cut.Any && !q.Value.Given {
		d.fail(d.placeOf(path+".count"), path+".count is null, any number, and the part has no value", "a whole number")
	}
	o.end()
	return q
}

// maxMoney is far above the cost of any stock, and small enough that sums and shares of it are numbers.
const maxMoney = 1e18

// money reads cost and bound, which without one is the cost, and returns the gap, nil where there is none.
func (d *decoder) money(n *node, a *cut.Answer) (gap *float64) {
	read := func(key string) (float64, bool) {
		f, absent := n.float(key)
		if math.Abs(f) > maxMoney {
			d.fail(d.placeOf(key), fmt.Sprintf("%s is beyond reason", key), "a layout as this program writes it")
		}
		return f, absent
	}
	a.Cost, _ = read("cost")
	var absent bool
	if a.Bound, absent = read("bound"); absent {
		a.Bound = a.Cost
	}
	if f, absent := read("gap"); !absent {
		gap = &f
	}
	return gap
}

// scope reads of which layouts the bound is true.
func (d *decoder) scope(n *node) cut.Scope {
	s := cut.Scope(n.text("bound_of", ""))
	if s != cut.EveryLayout && s != cut.WithoutRecut {
		d.fail(d.placeOf("bound_of"), fmt.Sprintf("bound_of: %q is not known", s), strconv.Quote(string(cut.WithoutRecut))+", or leave the key out")
	}
	return s
}

// ReadAnswer reads a layout. Lengths are in the problem's unit; left out may be all but cost and used.
func ReadAnswer(file string, src []byte, unit length.Unit) (*cut.Answer, error) {
	a, _, err := readAnswer(file, src, unit)
	return a, err
}

func readAnswer(file string, src []byte, unit length.Unit) (a *cut.Answer, gap *float64, err error) {
	d, n := root(file, src)
	d.unit = unit
	a = &cut.Answer{}
	for _, key := range []string{"cost", "used"} {
		if n.field(key) == nil {
			d.fail(n.v.at, `the key "`+key+`" is missing`, "a layout as this program writes it")
		}
	}
	if u := n.field("unit"); u != nil && u.form != null && (u.form != text || u.raw != unit.String()) {
		d.fail(u.at, "the layout is in another unit than its problem, or in none", strconv.Quote(unit.String())+`, or lay the problem out anew`)
	}
	gap = d.money(n, a)
	a.Of = d.scope(n)
	a.Proven = n.flag("proven")
	a.TookMS, _ = n.float("took_ms")
	if v := n.field("waste"); v != nil && v.form != null {
		d.waste(v, a, n)
	}
	n.each("used", func(v *value, path string) { a.Used = append(a.Used, d.used(v, path)) })
	n.each("bought", func(v *value, path string) { a.Bought = append(a.Bought, d.tag(v, path)) })
	n.each("panels", func(v *value, path string) { a.Panels = append(a.Panels, d.glued(v, path)) })
	n.each("cuts", func(v *value, path string) { a.Cuts = append(a.Cuts, d.setting(v, path)) })
	n.each("not_placed", func(v *value, path string) {
		o := d.object(v, path)
		a.NotPlaced = append(a.NotPlaced, cut.NotPlaced{Tag: o.text("tag", ""), Why: o.text("why", "")})
		o.end()
	})
	n.end()
	return a, gap, d.err
}

// waste reads the waste, in units or square units; which, the layout does not say, so it is kept as it
// stands and converted by who knows the problem.
func (d *decoder) waste(v *value, a *cut.Answer, n *node) {
	o := d.object(v, n.sub("waste"))
	for _, f := range wasteFields(&a.Waste) {
		*f.to, _ = o.float(f.key)
	}
	o.end()
}

// wasteField is one key of the waste and its place.
type wasteField struct {
	key string
	to  *float64
}

func wasteFields(w *cut.Waste) []wasteField {
	return []wasteField{
		{"kerf", &w.Kerf}, {"trim", &w.Trim}, {"defect", &w.Defect},
		{"leftover_useful", &w.LeftoverUseful}, {"leftover_lost", &w.LeftoverLost},
	}
}

func (d *decoder) used(v *value, path string) cut.Used {
	o := d.object(v, path)
	u := cut.Used{Stock: o.text("stock", "")}
	o.each("parts", func(v *value, path string) {
		e := d.object(v, path)
		u.Parts = append(u.Parts, cut.Placed{
			Tag: e.text("tag", ""), At: e.pair("at"), Size: e.pair("size"), Turned: e.flag("turned"),
		})
		e.end()
	})
	o.each("left", func(v *value, path string) {
		e := d.object(v, path)
		u.Left = append(u.Left, cut.Offcut{At: e.pair("at"), Size: e.pair("size")})
		e.end()
	})
	o.end()
	return u
}

func (d *decoder) glued(v *value, path string) cut.GluedPanel {
	o := d.object(v, path)
	g := cut.GluedPanel{Tag: o.text("tag", "")}
	o.each("strips", func(v *value, path string) {
		e := d.object(v, path)
		g.Strips = append(g.Strips, cut.Strip{
			Board: e.text("board", ""), At: e.pair("at"), Size: e.pair("size"),
			Ring: cut.Ring(e.text("ring", "")), NetWidth: e.length("net_width"),
		})
		e.end()
	})
	o.end()
	return g
}

func (d *decoder) setting(v *value, path string) cut.Setting {
	o := d.object(v, path)
	s := cut.Setting{
		N: int(o.count("n", 0)), On: o.text("on", ""), Machine: cut.Machine(o.text("machine", "")), Setting: o.length("setting"),
	}
	o.each("makes", func(v *value, path string) { s.Makes = append(s.Makes, d.tag(v, path)) })
	o.end()
	return s
}

// tag reads a tag that stands in a list by itself.
func (d *decoder) tag(v *value, path string) string {
	if v.form != text {
		d.fail(v.at, path+" is "+v.form.String(), "a tag in quotes")
	}
	return v.raw
}
