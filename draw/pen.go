package draw

// Width returns how wide the pen draws, in paper millimetres: a wide line 0.5, thin ones half of that and
// less, after the line groups of ISO 128-2 (from memory).
func (p Pen) Width() float64 {
	return [...]float64{Outline: 0.5, Hidden: 0.25, Centre: 0.18, Saw: 0.35, Measure: 0.18, Grain: 0.18, Hatching: 0.13, Ghost: 0.25}[p]
}

// Dashes returns the lengths of dashes and gaps in turn, in paper millimetres; nil is a line without gaps.
// Hidden lines are dashed, axes long and short dashes in turn, what is not part of it a long and two short
// ones, as ISO 128-2 has it (types 02, 04 and 05, from memory).
func (p Pen) Dashes() []float64 {
	switch p {
	case Hidden:
		return []float64{2.4, 1}
	case Centre:
		return []float64{5, 0.9, 0.5, 0.9}
	case Saw:
		return []float64{4, 1.2}
	case Ghost:
		return []float64{4.5, 0.9, 0.5, 0.9, 0.5, 0.9}
	}
	return nil
}
