package frame

import (
	"fmt"
	"strings"
)

// Mechanism says that something moves without resistance: it names a node and the way nothing holds it.
type Mechanism struct {
	Node    string
	Freedom Freedom // the freedom that moves most
	// Direction is the unit direction along (or, for a turning, about) which the node moves.
	Direction Vec
	Case      string // the case whose load moves it; empty when the frame is loose under any load
}

// Error says it in words.
func (m *Mechanism) Error() string {
	loose := fmt.Sprintf("nothing holds node %q %s", m.Node, m.Freedom)
	if d := m.Direction; d != m.Freedom.axis() {
		loose += fmt.Sprintf(" (it moves %s (%.2f, %.2f, %.2f))", strings.Fields(m.Freedom.String())[0], d[0], d[1], d[2])
	}
	if m.Case != "" {
		return fmt.Sprintf("case %q: %s", m.Case, loose)
	}
	return loose + ": brace it, make a joint stiff or hold a node"
}

// axis is the direction of the axis along or about which the freedom moves.
func (f Freedom) axis() Vec {
	var v Vec
	v[f%3] = 1
	return v
}

// Tips says that under a case no push of the floor keeps the frame down: it tips over or is lifted.
type Tips struct {
	Case  string
	Over  []string // the feet about which it turns; empty when it is lifted off
	Rises []string // the feet that rise
}

// Error says it in words.
func (t *Tips) Error() string {
	if len(t.Over) == 0 {
		return fmt.Sprintf("case %q: the frame is lifted off its floor (%s rise); load it down or hold it", t.Case, quoted(t.Rises))
	}
	return fmt.Sprintf("case %q: the frame tips over %s while %s rise; load it down, spread its feet or hold it",
		t.Case, quoted(t.Over), quoted(t.Rises))
}

func quoted(names []string) string {
	all := make([]string, len(names))
	for i, n := range names {
		all[i] = fmt.Sprintf("%q", n)
	}
	return strings.Join(all, ", ")
}
