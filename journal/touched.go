package journal

// touched returns of each entry, by its id, the paths of the values that it may put into the document, take out of it
// or put in again. Of a change that is asked for these are none until the client says yes.
func touched(es []Entry) map[string][]string {
	paths := make(map[string][]string, len(es))
	asked := make(map[string][]string)
	given := make(map[string]bool) // of each asked change: some answer to it was yes
	for _, e := range es {
		switch e.Kind {
		case Edit:
			paths[e.ID] = []string{e.Path}
		case Asked:
			asked[e.ID] = e.Order.paths()
		case Answer: // a no after a yes takes the values out
			given[e.Names] = given[e.Names] || e.Yes
			if given[e.Names] {
				paths[e.ID] = asked[e.Names]
			}
		case Undo, Withdrawn:
			paths[e.ID] = paths[e.Names]
			if given[e.Names] {
				paths[e.ID] = asked[e.Names]
			}
		}
	}
	return paths
}

// paths returns the paths of the values that the order puts in.
func (o *Order) paths() []string {
	if o == nil {
		return nil
	}
	out := make([]string, 0, len(o.Edits))
	for _, p := range o.Edits {
		out = append(out, p.Path)
	}
	return out
}
