package build

import (
	"fmt"
	"math"
	"strconv"

	"rodwright/length"
)

// mm is a length in JSON.
type mm = length.Millimetres

// rounded is a computed number in JSON: six significant digits, so that the last bits of a sum never
// show. What is no number is an error, as it must not reach a reader.
type rounded float64

// MarshalJSON writes the number with six significant digits.
func (r rounded) MarshalJSON() ([]byte, error) {
	v := float64(r)
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil, fmt.Errorf("a computed number is %v", v)
	}
	six, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	if err != nil {
		return nil, err
	}
	return strconv.AppendFloat(nil, six+0, 'f', -1, 64), nil // + 0 turns -0 into 0
}

func mms(ls ...length.Length) []mm {
	out := make([]mm, len(ls))
	for i, l := range ls {
		out[i] = mm(l)
	}
	return out
}
