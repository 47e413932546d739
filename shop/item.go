package shop

import (
	"strings"

	"rodwright/length"
	"rodwright/trade/pipe"
)

// The functions below name what can be bought. A shop's file gives its prices under these names, and
// every other room asks for them by these functions, so that both always agree.

// HourItem and OverheadItem name what an hour of work, and the standing costs of that hour, are charged
// at.
const (
	HourItem     = "hour of work"
	OverheadItem = "overhead per hour"
	ThreadItem   = "thread" // the seller's fee for one thread
)

// WoodItem names a board foot of the species in the given quarters: white-oak 5/4.
func WoodItem(species, quarters string) string { return species + " " + quarters }

// StickItem names one stick of pipe: pipe 3/4 21 ft.
func StickItem(size pipe.Size, stick length.Length) string {
	return "pipe " + size.ID + " " + stickText(size, stick)
}

// NippleItem names a stock nipple: nipple 3/4 2 1/2 in.
func NippleItem(size pipe.Size, l length.Length) string {
	if l == size.CloseNipple {
		return "nipple " + size.ID + " close"
	}
	return "nipple " + size.ID + " " + partText(size, l)
}

// FittingItem names a fitting: tee 3/4.
func FittingItem(kind pipe.Kind, size pipe.Size) string { return string(kind) + " " + size.ID }

// ScrewItem names a wood screw by its gauge and
// length: wood screw 10 × 1 in.
func ScrewItem(gauge int, l length.Length) string {
	return "wood screw " + itoa(gauge) + " × " + length.SixtyFourth.Text(l)
}

// StrapItem names a two-hole strap for the pipe: strap 3/4.
func StrapItem(size pipe.Size) string { return "strap " + size.ID }

// stickText prints a stick's length as it is asked for at the counter: whole feet, or metres.
func stickText(size pipe.Size, l length.Length) string {
	if size.Standard == pipe.ISO7 || l%length.Foot != 0 {
		return strings.TrimSuffix(length.WholeMM.Text(l), " mm") + " mm"
	}
	return itoa(int(l/length.Foot)) + " ft"
}

// partText prints a length in the units of the pipe's standard.
func partText(size pipe.Size, l length.Length) string {
	if size.Standard == pipe.ISO7 {
		return length.HalfMM.Text(l)
	}
	return length.SixtyFourth.Text(l)
}
