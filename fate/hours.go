package fate

import (
	"rodwright/journal"
	"rodwright/steps"
)

// Hours tells the hours with hands that the plan gives to each part by the state they lead to; work that is done to
// several parts at once is shared evenly. Putting together is no part's own work.
type Hours struct {
	state map[string][journal.Fitted]float64 // by tag
	work  map[string]map[string]float64      // by tag and kind of work
}

// PartHours shares the hours of a plan out to its parts.
func PartHours(work *steps.Work) Hours {
	h := Hours{map[string][journal.Fitted]float64{}, map[string]map[string]float64{}}
	if work == nil {
		return h
	}
	for _, s := range work.Steps {
		to, ok := journal.AfterWork(s.Work)
		if !ok || to >= journal.Fitted || len(s.Parts) == 0 {
			continue
		}
		share := s.HandsH / float64(len(s.Parts))
		for _, tag := range s.Parts {
			row := h.state[tag]
			row[to] += share
			h.state[tag] = row
			if h.work[tag] == nil {
				h.work[tag] = map[string]float64{}
			}
			h.work[tag][s.Work] += share
		}
	}
	return h
}

// from is how many hours a part takes from a state on.
func (h Hours) from(tag string, done journal.State) (sum float64) {
	row := h.state[tag]
	for to := done + 1; int(to) < len(row); to++ {
		sum += row[to]
	}
	return sum
}

// Between is how many hours the plan gives to a part from a state to what a kind of work leads to. Of openings it is the
// share of one kind of work among all that are cut.
func (h Hours) Between(tag string, done journal.State, work string) (sum float64) {
	to, _ := journal.AfterWork(work)
	if to == journal.Shaped && work != journal.Shaped.String() {
		return h.Between(tag, done, "size") + h.work[tag][work]
	}
	row := h.state[tag]
	for s := done + 1; s <= to && int(s) < len(row); s++ {
		sum += row[s]
	}
	return sum
}
