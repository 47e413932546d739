package pipe

import (
	"fmt"

	"rodwright/length"
	"rodwright/trade/table"
)

// letters are the dimensions that CentreToEnd is read from, and what part of them it is. Side outlets are as
// the elbow and the tee where they have no row of their own.
var letters = map[Kind]struct {
	letter string
	halved bool // the table gives the length over both ends
	as     Kind
}{
	Elbow90:   {letter: "A"},
	Tee:       {letter: "A"},
	Cross:     {letter: "A"},
	SideElbow: {letter: "A", as: Elbow90},
	SideTee:   {letter: "A", as: Tee},
	Elbow45:   {letter: "C"},
	Coupling:  {letter: "W", halved: true},
	Cap:       {letter: "P"},
}

// fillEnds reads CentreToEnd from EN 10242 for a DN size, else from the NPT part of the same nominal size. It
// reports false where no table has it.
func (f *Fitting) fillEnds() bool {
	l := letters[f.Kind]
	if r, ok := f.isoRow(); ok {
		f.setEnd(r.MM("value_mm"), l.halved, r)
		f.assume(f.endWords() + ", from memory of its standard; measure yours")
		return true
	}
	rows := fittingTable().npt
	r, ok := rows[dimension{f.Kind, f.Size.Nominal, l.letter}]
	likeness := ""
	if !ok {
		if r, ok = rows[dimension{l.as, f.Size.Nominal, l.letter}]; !ok {
			return false
		}
		likeness = ", as the " + l.as.Words()
	}
	f.setEnd(r.Inches("value_in"), l.halved, r)
	f.assume(f.endWords() + likeness + f.borrowed() + memory(r))
	return true
}

// isoRow is the row of EN 10242 for a fitting of DN size.
func (f *Fitting) isoRow() (table.Row, bool) {
	if f.Size.Standard != ISO7 {
		return table.Row{}, false
	}
	r, ok := fittingTable().iso[dimension{f.Kind, f.Size.Nominal, "a"}]
	return r, ok
}

func (f *Fitting) setEnd(l length.Length, halved bool, r table.Row) {
	if halved {
		l = l.Half()
	}
	f.CentreToEnd, f.Source = l, r.Source()
}

// endWords tells the dimension a maker can measure: the whole length of a coupling or union, not its half.
func (f *Fitting) endWords() string {
	name, l := "centre to end", f.CentreToEnd
	switch f.Kind {
	case Coupling, Union:
		name, l = "length", 2*l
	case Flange, Cap:
		name = "height"
	}
	return fmt.Sprintf("%s: %s %s", f.Name(), name, f.Size.show(l))
}

// borrowed says that a DN size uses the NPT part.
func (f *Fitting) borrowed() string {
	if f.Size.Standard == ISO7 {
		return ", the NPT part of the same size"
	}
	return ""
}

// memory says how sure a row is.
func memory(r table.Row) string {
	switch {
	case r.Text("source") == "TRADE":
		return ", not standardised, from memory; measure yours"
	case r.FromMemory("value_in"):
		return ", from memory of its standard; measure yours"
	}
	return ""
}

func (f *Fitting) assume(words string) {
	if f.Assumed != "" {
		words = f.Assumed + "; " + words
	}
	f.Assumed = words
}

// fillBand reads the band H, which both standards' fittings share here: EN 10242 fixes none.
func (f *Fitting) fillBand() bool {
	r, ok := f.shared("H")
	if !ok {
		return false
	}
	f.Band = r.Inches("value_in")
	if f.Size.Standard == ISO7 {
		f.assume(fmt.Sprintf("%s: band %s of the NPT part of the same size", f.Name(), f.Size.show(f.Band)))
	}
	return true
}

// shared is the row of a dimension that all fittings of the size have: B, E, G or H.
func (f *Fitting) shared(letter string) (table.Row, bool) {
	r, ok := fittingTable().npt[dimension{anyKind, f.Size.Nominal, letter}]
	return r, ok
}

func (f *Fitting) fillFlange() bool {
	r, ok := fittingTable().flanges[f.Size.Nominal]
	if !ok || !f.fillBand() {
		return false
	}
	f.setEnd(r.Inches("height_in"), false, r)
	f.Plate, f.PlateThick = r.Inches("diameter_in"), r.Inches("plate_in")
	f.HoleCircle, f.Hole = r.Inches("hole_circle_in"), r.Inches("hole_in")
	f.Holes, _ = r.Int("holes")
	f.ScrewGauge, _ = r.Int("screw_gauge")
	f.assume(f.endWords() + f.borrowed() + memory(r))
	return true
}

func (f *Fitting) fillUnion() bool {
	r, ok := fittingTable().unions[f.Size.Nominal]
	if !ok {
		return false
	}
	f.setEnd(r.Inches("length_in"), true, r)
	f.Band = r.Inches("nut_in")
	f.assume(f.endWords() + f.borrowed() + fmt.Sprintf(", its nut %s over the corners", f.Size.show(f.Band)) + memory(r))
	return true
}

// fillDimensions reads everything but the mass, and reports whether some table has the kind in this size.
func (f *Fitting) fillDimensions() bool {
	switch f.Kind {
	case Flange:
		return f.fillFlange()
	case Union:
		return f.fillUnion()
	}
	return f.fillEnds() && f.fillBand()
}
