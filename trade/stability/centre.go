package stability

import (
	"rodwright/figure"
	"rodwright/length"
	"rodwright/trade/within"
)

// Mass is a body with its centre of gravity: x along the piece, y front to back, z up from the floor.
type Mass struct {
	Kg      float64
	X, Y, Z length.Length
}

// Centre returns the common centre of gravity of the given bodies, with their whole mass, rounded to the
// nanometre. Bodies without mass don't count; it is an error when nothing has mass or a mass is negative.
func Centre(bodies ...Mass) (Mass, error) {
	var kg, x, y, z float64
	for _, b := range bodies {
		if err := within.NotNegative("mass", b.Kg, figure.Kg); err != nil {
			return Mass{}, err
		}
		kg += b.Kg
		x += b.Kg * b.X.MM()
		y += b.Kg * b.Y.MM()
		z += b.Kg * b.Z.MM()
	}
	if err := within.Positive("mass of the whole", kg, figure.Kg); err != nil {
		return Mass{}, err
	}
	return Mass{kg, length.FromMM(x / kg), length.FromMM(y / kg), length.FromMM(z / kg)}, nil
}
