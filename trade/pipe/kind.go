package pipe

import (
	"slices"

	"rodwright/trade/table"
)

// Standard is the family of pipe, thread and fittings a size belongs to. Parts of the two do not screw
// together.
type Standard string

// The standards.
const (
	NPT  Standard = "npt"  // NPS Schedule 40 pipe with NPT threads, dimensions in inches
	ISO7 Standard = "iso7" // DN pipe of EN 10255, medium series, with R threads, dimensions in millimetres
)

// Kind is what a pipe's end is joined by.
type Kind string

// The kinds of joints. A pipe's end that is left bare is of kind None.
const (
	Elbow90   Kind = "elbow90"
	Elbow45   Kind = "elbow45"
	Tee       Kind = "tee"
	Cross     Kind = "cross"
	SideElbow Kind = "side-elbow" // three pipes, each square to the others
	SideTee   Kind = "side-tee"   // a tee with a fourth outlet square to its plane
	Coupling  Kind = "coupling"
	Union     Kind = "union"
	Flange    Kind = "flange" // floor flange: screwed to wood or wall
	Cap       Kind = "cap"
	None      Kind = "none"
)

// kinds holds what is fixed for each kind, in the order they are listed.
var kinds = []struct {
	kind    Kind
	words   string
	outlets int
}{
	{Elbow90, "90° elbow", 2},
	{Elbow45, "45° elbow", 2},
	{Tee, "tee", 3},
	{Cross, "cross", 4},
	{SideElbow, "side outlet elbow", 3},
	{SideTee, "side outlet tee", 4},
	{Coupling, "coupling", 2},
	{Union, "union", 2},
	{Flange, "flange", 1},
	{Cap, "cap", 1},
	{None, "bare end", 1},
}

// Kinds returns every kind, None last.
func Kinds() []Kind {
	out := make([]Kind, len(kinds))
	for i, k := range kinds {
		out[i] = k.kind
	}
	return out
}

// ParseKind reads a kind as it is written in documents and questions: elbow90, side-tee, none. The error is
// a *table.UnknownError.
func ParseKind(text string) (Kind, error) {
	if slices.Contains(Kinds(), Kind(text)) {
		return Kind(text), nil
	}
	var known []string
	for _, k := range Kinds() {
		known = append(known, string(k))
	}
	return "", table.Unknown("fitting", text, known)
}

// Words returns the kind as the trade says it: 90° elbow, side outlet tee, bare end.
func (k Kind) Words() string {
	for _, row := range kinds {
		if row.kind == k {
			return row.words
		}
	}
	return string(k)
}

// Outlets returns how many pipes the kind joins: 2 for an elbow, 1 for a cap; 0 for what is no kind.
func (k Kind) Outlets() int {
	for _, row := range kinds {
		if row.kind == k {
			return row.outlets
		}
	}
	return 0
}
