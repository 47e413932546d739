// Package caster holds what the trade knows of casters and levelling feet: generic classes by wheel, and how
// much each of them carries.
//
// The words: a caster's height is from the floor to what it is fixed to; its offset is how far the wheel
// touches the floor away from the swivel axis; it is fixed by a plate and screws or by a threaded stem. The
// classes are from memory, so every figure of one is an assumption until the caster in hand is measured.
// Start with [Lookup] and [Share].
package caster

import (
	_ "embed"
	"fmt"
	"sync"

	"rodwright/length"
	"rodwright/trade/table"
)

//go:embed casters.csv
var castersCSV string

// Kind is how a class is fixed, or that it is a foot.
type Kind string

// The kinds of classes.
const (
	Plate Kind = "plate" // caster on a screwed plate
	Stem  Kind = "stem"  // caster on a threaded stem
	Foot  Kind = "foot"  // levelling foot on a threaded stem
)

// ParseKind reads plate, stem or foot.
func ParseKind(text string) (Kind, error) {
	switch k := Kind(text); k {
	case Plate, Stem, Foot:
		return k, nil
	}
	return "", table.Unknown("kind of caster", text, []string{string(Plate), string(Stem), string(Foot)})
}

// Class is a caster or levelling foot as it is commonly sold. What a kind does not have is zero or empty.
type Class struct {
	ID         string
	Kind       Kind
	Wheel      length.Length    // diameter
	Height     length.Length    // overall, from the floor to the plate's or stem's shoulder
	Offset     length.Length    // swivel axis to floor contact
	Adjust     length.Length    // range of a levelling foot
	RatedKg    float64          // each, as sold
	Plate      [2]length.Length // across, along
	Holes      int              // in the plate
	Bolt       string           // the inch bolt its holes are made for
	ScrewGauge int              // the wood screw they take
	StemInch   string           // thread of the stem: 3/8-16
	StemMetric string           // thread of the stem where metric parts are sold: M10
	Assumed    string           // that this is a generic class, in words
	Source     table.Source
}

// pound is the international pound of 1959 in kilograms, exact.
const pound = 0.45359237

var classes = sync.OnceValue(func() []Class {
	var out []Class
	for _, r := range table.Read(castersCSV) {
		c := Class{
			ID: r.Text("id"), Kind: Kind(r.Text("kind")), Wheel: r.Inches("wheel_in"), Height: r.Inches("height_in"),
			Offset: r.Inches("offset_in"), Adjust: r.Inches("adjust_in"), RatedKg: r.Float("rated_lb") * pound,
			Plate: [2]length.Length{r.Inches("plate_across_in"), r.Inches("plate_along_in")},
			Bolt:  r.Text("hole_bolt"), StemInch: r.Text("stem_inch"), StemMetric: r.Text("stem_metric"),
			Source: r.Source(),
		}
		c.Holes, _ = r.Int("holes")
		c.ScrewGauge, _ = r.Int("screw_gauge")
		c.Assumed = fmt.Sprintf("%s: generic class, from memory; measure yours", c)
		out = append(out, c)
	}
	return out
})

// String returns the class in words: 3 in plate caster, levelling foot.
func (c Class) String() string {
	if c.Kind == Foot {
		return "levelling foot"
	}
	return fmt.Sprintf("%s %s caster", length.Sixteenth.Text(c.Wheel), c.Kind)
}

// Lookup returns the class with the given id: plate-2, plate-3, plate-4, plate-5, stem-3, stem-4 or foot.
// The error is a *table.UnknownError.
func Lookup(id string) (Class, error) {
	for _, c := range classes() {
		if c.ID == id {
			return c, nil
		}
	}
	return Class{}, table.Unknown("caster", id, IDs())
}

// IDs returns the ids of all classes.
func IDs() []string {
	var out []string
	for _, c := range classes() {
		out = append(out, c.ID)
	}
	return out
}

// Nearest returns the class of a kind whose wheel is nearest to the given one, the smaller of two as near.
// Where the wheel is another, Assumed says so. A foot has no wheel: any is taken.
func Nearest(kind Kind, wheel length.Length) (Class, error) {
	if _, err := ParseKind(string(kind)); err != nil {
		return Class{}, err
	}
	var best Class
	for _, c := range classes() {
		if c.Kind == kind && (best.ID == "" || (c.Wheel-wheel).Abs() < (best.Wheel-wheel).Abs()) {
			best = c
		}
	}
	if kind != Foot && best.Wheel != wheel {
		best.Assumed = fmt.Sprintf("no class for a %s wheel; %s", length.Sixteenth.Text(wheel), best.Assumed)
	}
	return best, nil
}

// SwingRadius returns how far the wheel reaches from the swivel axis: the room it needs all round.
func (c Class) SwingRadius() length.Length { return c.Offset + c.Wheel.Half() }
