package finding

// Picture is what a finding shows where a picture says more than a figure. Exactly one field is set; only
// package draw draws it.
type Picture struct {
	Tilt *Tilt
	Year *Year
	Bent *Bent
	Sway *Sway
}

// Tilt is the tilt at which a piece goes over in every direction, seen from above.
type Tilt struct {
	Rays   []Ray
	Limit  float64      // degrees it must bear
	Base   [][2]float64 // mm, x and y of what it stands on, in order round it
	Centre [2]float64   // mm, x and y of the centre of gravity
}

// Ray is the tilt that a piece bears in one direction.
type Ray struct {
	Towards float64 // degrees from x (to the right) over y (to the back)
	Tilt    float64 // degrees
}

// Year is how lengths go over a year.
type Year struct {
	Times []string // the names of the times, in order: months, or driest, as built, dampest
	Lines []Line
	Limit float64 // mm, drawn as a line across; below it something binds or comes off
}

// Line is one length over the times of a year.
type Line struct {
	Name   string
	Values []float64 // mm, one for each time
}

// Bent is how far a panel sags, as a grid of points from its left front corner.
type Bent struct {
	Width, Depth float64      // mm, along the piece and front to back
	Columns      int          // points along the piece
	Down         []float64    // mm, row by row from the front; NaN where there is no wood
	Supports     [][2]float64 // mm, where it is borne
}

// Sway is how a frame moves.
type Sway struct {
	Sticks []Moved
	Grown  float64 // how many times larger than it is a movement should be drawn
}

// Moved is a stick of a frame, as points from end to end.
type Moved struct {
	Tag  string
	At   [][3]float64 // mm, as drawn
	Move [][3]float64 // mm, how far each point moves
}
