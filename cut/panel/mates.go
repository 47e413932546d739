package panel

import (
	"cmp"
	"slices"
)

// log returns what tells the log of board k: its mate word, or a word of its own.
func (m *model) log(k int) string {
	if w := m.p.Boards[k].Mate; w != "" {
		return "log " + w
	}
	return "board " + m.p.Boards[k].Tag
}

// chooseLogs picks a log for each panel that wants mates: the one with least wood that is enough, so that
// rich logs are left for larger panels; the panel with the widest need chooses first.
func (s *search) chooseLogs() []string {
	out := make([]string, len(s.m.kinds))
	var wanting []int
	for t, kd := range s.m.kinds {
		if kd.mates {
			wanting = append(wanting, t)
		}
	}
	slices.SortStableFunc(wanting, func(a, b int) int {
		return cmp.Compare(s.m.kinds[b].wood(), s.m.kinds[a].wood())
	})
	taken := map[string]float64{} // share of each log's wood that is spoken for
	for _, t := range wanting {
		out[t] = s.logFor(t, taken)
	}
	return out
}

// logFor returns the log for kind t and notes what it takes of it.
func (s *search) logFor(t int, taken map[string]float64) string {
	wood := s.woodByLog(t)
	need := float64(s.m.kinds[t].need)
	best, share := "", 0.0
	for _, log := range sortedKeys(wood) {
		use := need / wood[log]
		total := use + taken[log]
		fits, bestFits := total <= 1, share <= 1 && best != ""
		switch {
		case best == "", fits && !bestFits, fits && bestFits && total > share, !fits && !bestFits && total < share:
			best, share = log, total
		}
	}
	taken[best] = share
	return best
}

// woodByLog returns the net width each log yields for kind t when it is cut for nothing else.
func (s *search) woodByLog(t int) map[string]float64 {
	price := make([]float64, len(s.m.kinds))
	price[t] = 1
	wood := map[string]float64{}
	for k := range s.m.boards {
		p := s.find.find(k, price, 0, func(kind int) bool { return kind == t })
		if p.value > 0 {
			wood[s.m.log(k)] += p.value
		}
	}
	return wood
}

func sortedKeys(m map[string]float64) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}

// wood is the net area of all panels of a kind, in square millimetres.
func (a kind) wood() float64 { return a.need.MM() * a.length.MM() }
