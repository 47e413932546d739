package pipe

import (
	"fmt"
	"strings"
	"sync"

	"rodwright/length"
	"rodwright/trade/table"
)

// Fitting is one fitting of one size. Fittings are compared with ==.
type Fitting struct {
	Kind Kind
	Size Size

	// CentreToEnd is what a pipe's end is measured from: A or C from the centre of elbow, tee, cross and
	// side outlets, half the length of coupling and union, the height F of a flange over the face it is
	// screwed to, the height P of a cap from its closed face. Zero for None.
	CentreToEnd length.Length
	Band        length.Length // largest outside diameter round the pipe's axis: band, union nut, flange hub; the pipe itself for None

	// What follows is zero but for a flange.
	Plate      length.Length // diameter
	PlateThick length.Length // under the screw head
	HoleCircle length.Length // diameter of the circle the screw holes stand on
	Hole       length.Length // diameter of a screw hole
	Holes      int
	ScrewGauge int // of wood screw

	MassKg      float64
	Assumed     string // what of the dimensions is assumed, in words, parted by "; "
	MassAssumed string // how the mass came about, in words
	Source      table.Source
}

// Fitting returns the fitting of a kind in this size. What the table of a DN size lacks is the NPT part of
// the same nominal size, and a mass that no table has is reckoned from the envelope; Assumed and
// MassAssumed say so. Where neither exists the error says in which sizes the kind is known.
func (s Size) Fitting(k Kind) (Fitting, error) {
	f, ok := fittings()[dimension{kind: k, nominal: s.ID}]
	if !ok || f.Size != s { // a size that a shop has measured anew
		f, ok = s.fill(k)
	}
	switch {
	case ok:
		return f, nil
	case k.Outlets() == 0:
		_, err := ParseKind(string(k))
		return Fitting{}, err
	}
	return Fitting{}, noFitting(s, k)
}

// fittings is every fitting of every size, by kind and the size's id: a piece asks for the same few again and
// again.
var fittings = sync.OnceValue(func() map[dimension]Fitting {
	all := map[dimension]Fitting{}
	for _, s := range sizes().byID {
		for _, k := range Kinds() {
			if f, ok := s.fill(k); ok {
				all[dimension{kind: k, nominal: s.ID}] = f
			}
		}
	}
	return all
})

// fill reads a fitting from the tables, and reports whether they have it.
func (s Size) fill(k Kind) (Fitting, bool) {
	f := Fitting{Kind: k, Size: s}
	if k == None {
		f.Band, f.Source = s.OD, s.Source
		return f, true
	}
	if k.Outlets() == 0 || !f.fillDimensions() {
		return Fitting{}, false
	}
	f.fillMass()
	return f, true
}

// TakeOut returns what a joint takes off the distance between two centres: CentreToEnd − Engagement, exact;
// zero for None.
func (f Fitting) TakeOut() length.Length {
	if f.Kind == None {
		return 0
	}
	return f.CentreToEnd - f.Size.Engagement
}

// Name returns the fitting as it stands in a list: tee 3/4, flange DN20.
func (f Fitting) Name() string { return f.Kind.Words() + " " + f.Size.ID }

// noFitting says that no table has a kind in a size, and which sizes have it.
func noFitting(s Size, k Kind) error {
	var known []string
	for _, id := range Sizes() {
		other := Fitting{Kind: k, Size: sizes().byID[normal(id)]}
		if (other.Size.Standard == s.Standard || s.Standard == "") && other.fillDimensions() {
			known = append(known, id)
		}
	}
	return fmt.Errorf("no %s is known for pipe of %s; known for %s; or measure one and enter it in the shop's catalogue",
		k.Words(), sizeName(s), strings.Join(known, ", "))
}
