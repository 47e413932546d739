package layout

// PartsOn tells for each part of the layout the stock it is cut from: several pieces where its strips come from
// several boards.
func (l Layout) PartsOn() map[string][]string {
	out := map[string][]string{}
	if l.Answer == nil {
		return out
	}
	for _, u := range l.Answer.Used {
		for _, p := range u.Parts {
			out[p.Tag] = append(out[p.Tag], u.Stock)
		}
	}
	return out
}
