package pipe

import (
	"rodwright/length"
	"rodwright/trade/table"
)

// Size is one size of pipe with its thread: everything that depends on the pipe alone. Sizes are compared
// with ==.
//
// NPT dimensions are exact to the decimal inches of their table, DN ones to its millimetres.
type Size struct {
	ID       string // as documents write it: 3/4, 1-1/4, DN20
	Standard Standard
	Nominal  string // the nominal size in inches, 3/4 for DN20 too: it names the NPT part of the same size

	OD   length.Length // outside diameter
	Wall length.Length // Schedule 40, or the medium series
	Bore length.Length // OD − 2·Wall

	ThreadsPerInch float64
	Pitch          length.Length // 25.4 mm ÷ threads per inch, to the nanometre
	Engagement     length.Length // e: how deep a pipe sits in a fitting at a normal tight make-up
	HandTight      length.Length // L1, or the gauge length: about where a joint stops by hand
	Root           length.Length // diameter at the root of the thread where the pipe leaves the fitting
	CloseNipple    length.Length // the shortest piece of pipe there is: thread over its whole length

	MassPerMetre float64      // kg/m, plain
	Source       table.Source // of the pipe's dimensions
	ThreadSource table.Source // of the thread and its engagement
	Assumed      string       // what of it is assumed, in words, parted by "; "
}

// Lookup returns the size with the given id. Read are NPS sizes (3/4, 1-1/4, 1 1/4) and DN sizes (DN20,
// DN 20), in any case. The error is a *table.UnknownError with the nearest ids.
func Lookup(id string) (Size, error) {
	if s, ok := sizes().byID[normal(id)]; ok {
		return s, nil
	}
	return Size{}, table.Unknown("pipe size", id, Sizes())
}

// Sizes returns the ids of all sizes: NPS first, then DN, each from thin to thick.
func Sizes() []string { return append([]string(nil), sizes().ids...) }

// MakeUp returns how far a pipe moves into a fitting in the given turns: turns × pitch.
func (s Size) MakeUp(turns float64) length.Length {
	return length.FromMM(s.Pitch.MM() * turns)
}

// Mass returns the mass in kg of a plain length of the pipe.
func (s Size) Mass(l length.Length) float64 { return s.MassPerMetre * l.MM() / 1000 }
