package cut

import "rodwright/length"

// Answer is a layout: what is cut from what, in which order, what it costs and how much better any other
// layout could be. Every piece of stock and every part stands for itself and is never grouped.
type Answer struct {
	Cost      float64 // of the stock opened and of what is bought and made, less what kept tails are worth; with values: the value cut
	Bound     float64 // no layout costs less; with values: none is worth more
	Proven    bool    // Cost and Bound are equal
	Of        Scope   // the layouts that Bound is true of
	TookMS    float64 // filled in by who holds a clock
	Waste     Waste
	Used      []Used
	Bought    []string     // only of a StickProblem: the tag of each part that is bought ready made
	Panels    []GluedPanel // only of a PanelProblem
	Cuts      []Setting
	NotPlaced []NotPlaced
}

// Scope says which layouts a bound is true of.
type Scope string

// The scopes.
const (
	// EveryLayout is all that the problem allows.
	EveryLayout Scope = ""
	// WithoutRecut is, of a problem that allows it, all layouts that use nothing of what falls off: that crosscut
	// first and then rip, each segment for panels of one kind.
	WithoutRecut Scope = "without recut"
)

// Words returns a scope as the end of a sentence about layouts; nothing for every layout.
func (s Scope) Words() string {
	if s == WithoutRecut {
		return "of all that crosscut first and then rip, each length for one kind of panel"
	}
	return ""
}

// Gap returns the share of the cost that may be too much: (Cost − Bound) ÷ Cost, of an upper bound
// (Bound − Cost) ÷ Bound; 0 where both are 0.
func (a *Answer) Gap() float64 {
	hi, lo := max(a.Cost, a.Bound), min(a.Cost, a.Bound)
	if hi <= 0 {
		return 0
	}
	return (hi - lo) / hi
}

// Waste splits what was opened and did not become parts: millimetres of sticks, square millimetres of
// boards and sheets.
type Waste struct {
	Kerf           float64
	Trim           float64
	Defect         float64
	LeftoverUseful float64
	LeftoverLost   float64
}

// Total returns the sum of all waste.
func (w Waste) Total() float64 {
	return w.Kerf + w.Trim + w.Defect + w.LeftoverUseful + w.LeftoverLost
}

// Used is one piece of stock that is opened.
type Used struct {
	Stock string // its tag
	Parts []Placed
	Left  []Offcut // the offcuts worth keeping
}

// Placed is one part in its piece of stock. Of a stick's two numbers the second is 0.
type Placed struct {
	Tag    string
	At     [2]length.Length // x and y of the corner next to the origin
	Size   [2]length.Length // extent along x and y, as it lies there
	Turned bool
}

// Offcut is one leftover piece worth keeping.
type Offcut struct{ At, Size [2]length.Length }

// GluedPanel is one panel with its strips, in order across it.
type GluedPanel struct {
	Tag    string
	Strips []Strip
}

// Strip is one strip of a panel. At and Size are on its board, Size before jointing.
type Strip struct {
	Board    string
	At, Size [2]length.Length
	Ring     Ring
	NetWidth length.Length
}

// Machine is the kind of cut a setting is for.
type Machine string

// The machines: a crosscut goes across the length of the stock, a rip along it.
const (
	Crosscut Machine = "crosscut"
	Rip      Machine = "rip"
)

// Setting is one step at the machine: what is cut from one piece of stock at one setting of fence or
// stop. Steps with one setting follow each other.
type Setting struct {
	N       int
	On      string // tag of the stock
	Machine Machine
	Setting length.Length
	Makes   []string // tags of the parts, one for each piece
}

// NotPlaced is one part that no stock is left for, once for each piece.
type NotPlaced struct{ Tag, Why string }
