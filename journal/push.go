package journal

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"rodwright/length"
)

// Push is a push test of the standing frame: a level push in the middle of a panel, and how far the panel moved there.
type Push struct {
	On      string  `json:"on"`      // a panel
	Towards string  `json:"towards"` // front, back, left or right
	Force   float64 `json:"force"`   // as it was said, in Unit
	Unit    string  `json:"unit"`    // N, lbf, or the mass whose weight it is: lb, kg
	Moved   MM      `json:"moved"`
}

var pushSides = []string{"front", "back", "left", "right"}

// newtons are the units of a push: the pound of 1959 and the standard gravity of 1901, exact.
var newtons = map[string]float64{"N": 1, "lbf": 0.45359237 * 9.80665, "lb": 0.45359237 * 9.80665, "kg": 9.80665}

// Newtons returns the push in newtons, and reports whether its unit is one of a push.
func (p *Push) Newtons() (float64, bool) {
	by, ok := newtons[p.Unit]
	return p.Force * by, ok
}

// mostPush is the hardest push that is kept, N: no frame of a shop bears a tenth of it.
const mostPush = 1e5

func (p *Push) check() error {
	n, known := p.Newtons()
	switch {
	case strings.TrimSpace(p.On) == "" || !oneLine(p.On, MostPath):
		return &EntryError{"fact.push.on", fmt.Sprintf("must name the panel that was pushed, in one line of at most %d letters", MostPath)}
	case !slices.Contains(pushSides, p.Towards):
		return &EntryError{"fact.push.towards", "must be front, back, left or right"}
	case !known:
		return &EntryError{"fact.push.unit", "must be N, lbf, lb or kg"}
	case !(n > 0 && n <= mostPush) || math.IsInf(p.Force, 0):
		return &EntryError{"fact.push.force", "must be more than nothing and at most 100 kN"}
	case !isSpan(p.Moved) || p.Moved == 0:
		return &EntryError{"fact.push.moved", "must be more than nothing and at most 1 km"}
	}
	return nil
}

func (p *Push) words(f length.Fineness) string {
	return fmt.Sprintf("%s %s on %s to the %s moved %s", strconv.FormatFloat(p.Force, 'f', -1, 64), p.Unit, p.On, p.Towards, f.Text(length.Length(p.Moved)))
}

// Test is a push test with the entry that told it.
type Test struct {
	Push
	Number int64
}
