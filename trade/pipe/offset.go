package pipe

import (
	"fmt"
	"math"

	"rodwright/length"
)

// Offset returns how long the slanting pipe of an offset is from centre to centre, and how far it goes
// along, where two fittings of the same angle carry a run sideways by the given offset:
//
//	travel = offset ÷ sin(angle), setback = offset ÷ tan(angle)
//
// The angle is in degrees, over 0 and up to 90.
func Offset(offset length.Length, degrees float64) (travel, setback length.Length, err error) {
	if !(degrees > 0 && degrees <= 90) {
		return 0, 0, fmt.Errorf("the angle of an offset is %v°; write more than 0 and at most 90", degrees)
	}
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	t := offset.MM() / sin
	if math.Abs(t) > length.Max.MM() {
		return 0, 0, fmt.Errorf("at %v° the offset would travel more than 1 km; write a steeper angle", degrees)
	}
	return length.FromMM(t), length.FromMM(t * cos), nil
}
