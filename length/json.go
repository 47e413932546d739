package length

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/big"
	"strings"
)

// Millimetres is a length as it is written in JSON: a number of millimetres, exact to the nanometre.
type Millimetres Length

// MarshalJSON writes the length without loss and without zeros at its end. One outside ±[Max] is an error: it could not
// be read back.
func (l Millimetres) MarshalJSON() ([]byte, error) {
	sign, v := "", Length(l)
	if v > Max || v < -Max {
		return nil, fmt.Errorf("%d nm is no length to be kept: it must be at most 1 km", v)
	}
	if v < 0 {
		sign, v = "-", -v
	}
	return []byte(sign + decimal(v)), nil
}

// UnmarshalJSON reads a number of millimetres. One that is not whole in nanometres, or lies outside ±[Max], is an
// error, as is null: a length that was written by MarshalJSON is read back as it was, and nothing else is guessed at.
func (l *Millimetres) UnmarshalJSON(text []byte) error {
	var n json.Number
	err := json.Unmarshal(text, &n) // which takes a number in quotes too
	if err != nil || n == "" || len(n) > mostNumber || bytes.HasPrefix(bytes.TrimSpace(text), []byte{'"'}) || farExponent(n.String()) {
		return fmt.Errorf("%.40s is no length: it must be a number of millimetres, at most 1 km", text)
	}
	r, ok := new(big.Rat).SetString(n.String())
	if !ok {
		return fmt.Errorf("%s is no length: it must be a number of millimetres", n)
	}
	r.Mul(r, Millimetre.Rat())
	v, within := FromRat(r)
	if !r.IsInt() || !within {
		return fmt.Errorf("%s mm is no length: it must be whole in nanometres, and at most 1 km", n)
	}
	*l = Millimetres(v)
	return nil
}

// mostNumber bounds the letters of a number: the longest that MarshalJSON writes has 14.
const mostNumber = 20

// farExponent reports an exponent of more than two digits: no length has one, and 1e999999 must not be worked out.
func farExponent(number string) bool {
	at := strings.IndexAny(number, "eE")
	return at >= 0 && len(strings.TrimLeft(number[at+1:], "+-0")) > 2
}
