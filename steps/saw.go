package steps

import "slices"

// SawCautions returns what to beware of when a layout of a kind is cut, as the steps of that work say it, each
// caution once.
func SawCautions(k Kind) []string {
	switch k {
	case OfSticks:
		return Cautions("cut-pipe")
	case OfBoards:
		return once(slices.Concat(Cautions("crosscut"), Cautions("rip")))
	}
	return Cautions("size-sheet")
}
