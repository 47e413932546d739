package build

import (
	"math"

	"rodwright/finding"
)

// pictureJSON says that a finding has a picture, and under which name it is drawn. The numbers behind it stand
// here where they are few: the tilts of every direction, the lengths over a year.
type pictureJSON struct {
	Kind  string     `json:"kind"` // tilt, year, bent, sway
	Name  string     `json:"name"`
	Tilt  *tiltJSON  `json:"tilt,omitempty"`
	Times []string   `json:"times,omitempty"`
	Lines []lineJSON `json:"lines,omitempty"`
	Limit *rounded   `json:"limit,omitempty"` // mm over a year, degrees of tilt
}

// tiltJSON is the tilt that is borne towards each direction, both in degrees.
type tiltJSON struct {
	Towards []*rounded `json:"towards"`
	Tilt    []*rounded `json:"tilt"`
}

type lineJSON struct {
	Name   string     `json:"name"`
	Values []*rounded `json:"values_mm"` // null where a time is not known
}

func pictureOf(p finding.Picture, name string) *pictureJSON {
	switch {
	case p.Tilt != nil:
		out := &pictureJSON{Kind: "tilt", Name: name, Tilt: &tiltJSON{Towards: []*rounded{}, Tilt: []*rounded{}}, Limit: known(p.Tilt.Limit)}
		for _, r := range p.Tilt.Rays {
			out.Tilt.Towards = append(out.Tilt.Towards, known(r.Towards))
			out.Tilt.Tilt = append(out.Tilt.Tilt, known(r.Tilt))
		}
		return out
	case p.Year != nil:
		out := &pictureJSON{Kind: "year", Name: name, Times: nonNil(p.Year.Times), Lines: []lineJSON{}, Limit: known(p.Year.Limit)}
		for _, l := range p.Year.Lines {
			line := lineJSON{Name: l.Name, Values: []*rounded{}}
			for _, v := range l.Values {
				line.Values = append(line.Values, known(v))
			}
			out.Lines = append(out.Lines, line)
		}
		return out
	case p.Bent != nil:
		return &pictureJSON{Kind: "bent", Name: name}
	case p.Sway != nil:
		return &pictureJSON{Kind: "sway", Name: name}
	}
	return nil
}

// known returns a number for JSON, or nothing where it is none.
func known(v float64) *rounded {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	r := rounded(v)
	return &r
}
