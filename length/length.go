// Package length holds the one exact type in which every dimension of a piece is kept.
//
// A Length is a whole number of nanometres. One sixty-fourth of an inch is 396 875 nm, so inches with
// fractions and millimetres are both exact, and a sum of lengths never drifts. Start with [Parse] to
// read what a maker types, and with [Fineness] to print a length as a maker would set a tape.
//
// The package knows nothing of wood, pipe or furniture.
package length

import (
	"math"
	"math/big"
)

// Length is a signed distance in whole nanometres.
type Length int64

// The lengths that others are multiples of. All conversions between them are exact.
const (
	Nanometre  Length = 1
	Micrometre        = 1000 * Nanometre
	Millimetre        = 1000 * Micrometre
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Inch              = 25_400_000 * Nanometre // the international inch of 1959, 25.4 mm exactly
	Foot              = 12 * Inch
)

// Max is the longest length that is read or computed without an error: one kilometre, far above any
// piece and far below the range of the type, so that sums and products of sizes can't wrap round.
const Max = 1_000_000 * Millimetre

// Unit is a unit in which lengths are written.
type Unit uint8

// The units a length may be written in.
const (
	MM Unit = iota
	CM
	M
	In
	Ft
)

// String returns the unit's symbol as a maker writes it: mm, cm, m, in, ft.
func (u Unit) String() string { return [...]string{"mm", "cm", "m", "in", "ft"}[u] }

// Size returns the length of one unit.
func (u Unit) Size() Length { return [...]Length{Millimetre, Centimetre, Metre, Inch, Foot}[u] }

// Metric reports whether u belongs to the metric system.
func (u Unit) Metric() bool { return u <= M }

// UnitOf returns the unit with the given symbol.
func UnitOf(symbol string) (Unit, bool) {
	for u := MM; u <= Ft; u++ {
		if u.String() == symbol {
			return u, true
		}
	}
	return 0, false
}

// MM returns l in millimetres. It is exact to 15 digits, so a length below 1 km keeps its nanometre.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }

// Inches returns l in inches.
func (l Length) Inches() float64 { return float64(l) / float64(Inch) }

// Abs returns the distance without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// Rat returns l in nanometres as an exact rational.
func (l Length) Rat() *big.Rat { return new(big.Rat).SetInt64(int64(l)) }

// FromMM returns the length nearest to v millimetres, halves to even.
func FromMM(v float64) Length { return Length(math.RoundToEven(v * float64(Millimetre))) }

// FromInches returns the length nearest to v inches, halves to even.
func FromInches(v float64) Length { return Length(math.RoundToEven(v * float64(Inch))) }

// Half returns half of l, rounded to even where l is odd.
func (l Length) Half() Length {
	h := l / 2
	if l%2 != 0 && h%2 != 0 { // truncation went towards zero; step away from it to reach the even neighbour
		if l > 0 {
			return h + 1
		}
		return h - 1
	}
	return h
}

// Scale returns l × n ÷ d, rounded to the nanometre, halves to even. It panics if d is zero.
func (l Length) Scale(n, d int64) Length {
	r := new(big.Rat).Mul(l.Rat(), big.NewRat(n, d))
	v, _ := FromRat(r)
	return v
}

// FromRat rounds r nanometres to a length, halves to even. It reports false when r lies outside ±[Max].
func FromRat(r *big.Rat) (Length, bool) {
	num, den := new(big.Int).Set(r.Num()), r.Denom()
	q, m := new(big.Int).DivMod(num, den, new(big.Int)) // floor, as den > 0
	switch twice := m.Lsh(m, 1); twice.Cmp(den) {
	case 1:
		q.Add(q, big.NewInt(1))
	case 0:
		if q.Bit(0) == 1 {
			q.Add(q, big.NewInt(1))
		}
	}
	if !q.IsInt64() || Length(q.Int64()).Abs() > Max || q.Int64() == math.MinInt64 {
		return 0, false
	}
	return Length(q.Int64()), true
}

// Sum returns the total of the given lengths.
func Sum(ls ...Length) (total Length) {
	for _, l := range ls {
		total += l
	}
	return total
}
