package cut

// Better returns the better of two answers to one problem: more placed, then the cost; a when they are as good. Of two
// that place everything the closer bound is true of both, if it is of the same scope. Neither is changed; nil is no answer.
func Better(a, b *Answer) *Answer {
	switch {
	case a == nil:
		return b
	case b == nil:
		return a
	case len(a.NotPlaced) != len(b.NotPlaced):
		if len(b.NotPlaced) < len(a.NotPlaced) {
			return b
		}
		return a
	}
	upper := a.Bound > a.Cost || b.Bound > b.Cost
	if upper && b.Cost > a.Cost || !upper && b.Cost < a.Cost {
		a, b = b, a
	}
	if len(a.NotPlaced) > 0 || a.Of != b.Of { // what is left out, or what is bounded, differs, and the bound with it
		return a
	}
	both := *a
	if both.Bound = max(a.Bound, b.Bound); upper {
		both.Bound = min(a.Bound, b.Bound)
	}
	both.Proven = both.Bound == both.Cost
	return &both
}
