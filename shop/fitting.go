package shop

import (
	"strconv"

	"rodwright/length"
	"rodwright/trade/pipe"
)

func itoa(n int) string { return strconv.Itoa(n) }

// MeasuredFitting is a fitting that somebody put a rule on. Lengths that were not measured are zero and
// stay as the table has them.
type MeasuredFitting struct {
	Pipe        string // size: 3/4, DN20
	Kind        pipe.Kind
	CentreToEnd length.Length // from the axis to the face of an end; for a flange or cap its height
	Band        length.Length // outside diameter of the largest band
	Plate       length.Length // a flange's diameter
	PlateThick  length.Length
	HoleCircle  length.Length
	MassKg      float64
}

// Fitting returns the fitting of that size and kind as this shop has it: what was measured on the bench
// wins over the table, and is then said in Assumed.
func (s *Shop) Fitting(size pipe.Size, kind pipe.Kind) (pipe.Fitting, error) {
	table, err := size.Fitting(kind)
	for _, m := range s.Fittings {
		if m.Pipe != size.ID || m.Kind != kind {
			continue
		}
		if err != nil { // no table has it: only what was measured is known
			table, err = pipe.Fitting{Kind: kind, Size: size}, nil
		}
		return m.over(table), nil
	}
	return table, err
}

// over returns the fitting with every measured length in place of the table's.
func (m MeasuredFitting) over(f pipe.Fitting) pipe.Fitting {
	words := ""
	set := func(to *length.Length, measured length.Length, name string) {
		if measured == 0 {
			return
		}
		*to = measured
		if words != "" {
			words += ", "
		}
		words += name + " " + length.SixtyFourth.Text(measured)
	}
	set(&f.CentreToEnd, m.CentreToEnd, "centre to end")
	set(&f.Band, m.Band, "band")
	set(&f.Plate, m.Plate, "plate")
	set(&f.PlateThick, m.PlateThick, "plate thickness")
	set(&f.HoleCircle, m.HoleCircle, "hole circle")
	if m.MassKg > 0 {
		f.MassKg = m.MassKg
	}
	said := string(f.Kind) + " " + f.Size.ID + ": " + words + " measured in the shop"
	if f.Assumed != "" {
		said += "; else " + f.Assumed
	}
	f.Assumed = said
	return f
}
