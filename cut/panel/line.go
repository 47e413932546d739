package panel

import (
	"encoding/binary"
	"slices"

	"rodwright/length"
)

// lining glues the panels of one kind one after another from ranges one after another: each panel but the first goes
// on in the range in which the one before ended, and each range but the last is ripped to its end. So little is left
// over, in many strips, where every range ripped for itself would leave something too narrow for any. The order of the
// panels and of the ranges is searched, and what has been left to do before with no more to lose is not tried again.
type lining struct {
	m       *model
	pool    []piece
	panels  []made
	strips  [][]strip // by panel
	used    []bool    // by range
	begun   []bool    // by panel
	failed  map[string]length.Length
	left    int           // steps that may still be taken
	atLeast length.Length // net width of a strip
}

// liningSteps bounds the search for an order.
const liningSteps = 1_000

// lineUp glues all panels from the pool, or reports false where no order was found, and tells the steps it took.
func (m *model) lineUp(pool []piece, panels []made) (g gluing, steps int, ok bool) {
	slack := length.Length(0)
	for _, pc := range pool {
		slack += m.netOf(pc.y.To - pc.y.From)
	}
	for _, q := range panels {
		slack -= q.width
	}
	l := &lining{
		m: m, pool: pool, panels: panels, strips: make([][]strip, len(panels)), used: make([]bool, len(pool)), begun: make([]bool, len(panels)),
		failed: map[string]length.Length{}, left: liningSteps, atLeast: max(m.p.Strip.Least, m.p.Joint()+1) - m.p.Joint(),
	}
	if slack < 0 || !l.open(piece{}, slack) {
		return g, liningSteps - max(l.left, 0), false
	}
	for i, q := range panels {
		g.panels = append(g.panels, panelStrips{q, l.strips[i]})
	}
	return g, liningSteps - l.left, true
}

// open begins a panel, one of each width, where all before are done; pc is what is left of the last range.
func (l *lining) open(pc piece, slack length.Length) bool {
	if !slices.Contains(l.begun, false) {
		return true
	}
	for i := len(l.panels) - 1; i >= 0; i-- {
		if l.begun[i] || i+1 < len(l.panels) && l.panels[i+1].width == l.panels[i].width && !l.begun[i+1] {
			continue
		}
		l.begun[i] = true
		if l.rip(i, l.panels[i].width, pc, slack) {
			return true
		}
		l.begun[i] = false
	}
	return false
}

// rip takes what panel i still lacks from a range, and goes on.
func (l *lining) rip(i int, missing length.Length, pc piece, slack length.Length) bool {
	most := l.m.netOf(pc.y.To - pc.y.From)
	if most == 0 {
		return l.change(i, missing, slack)
	}
	take := missing
	if rest := missing - most; rest > 0 {
		if take = most; rest < l.atLeast {
			take = missing - l.atLeast
		}
	}
	if take < l.atLeast {
		return false
	}
	if l.left--; l.left < 0 || l.before(missing, pc, slack) {
		return false
	}
	strips, end, net := l.m.ripPiece(pc, take)
	pc.y.From = end
	slack -= most - min(net, missing) - l.m.netOf(pc.y.To-pc.y.From)
	if slack < 0 {
		return false
	}
	n := len(l.strips[i])
	l.strips[i] = append(l.strips[i], strips...)
	if net >= missing && l.open(pc, slack) || net < missing && l.rip(i, missing-net, pc, slack) {
		return true
	}
	l.strips[i] = l.strips[i][:n]
	return false
}

// change goes on with another range, one of each width.
func (l *lining) change(i int, missing, slack length.Length) bool {
	var tried []length.Length
	for k, pc := range l.pool {
		width := pc.y.To - pc.y.From
		if l.used[k] || len(pc.void) == 0 && slices.Contains(tried, width) {
			continue
		}
		if len(pc.void) == 0 {
			tried = append(tried, width)
		}
		l.used[k] = true
		if l.rip(i, missing, pc, slack) {
			return true
		}
		l.used[k] = false
	}
	return false
}

// before reports whether the same was left to do before, with no less to lose.
func (l *lining) before(missing length.Length, pc piece, slack length.Length) bool {
	var key []byte
	for k, pc := range l.pool {
		if !l.used[k] {
			key = binary.AppendUvarint(key, uint64(pc.y.To-pc.y.From))
			if len(pc.void) > 0 {
				key = binary.AppendUvarint(key, uint64(k))
			}
		}
	}
	key = append(key, 0)
	for i, q := range l.panels {
		if !l.begun[i] {
			key = binary.AppendUvarint(key, uint64(q.width))
		}
	}
	key = append(key, 0)
	key = binary.AppendUvarint(binary.AppendUvarint(key, uint64(missing)), uint64(pc.y.To-pc.y.From))
	if len(pc.void) > 0 {
		key = binary.AppendUvarint(key, uint64(pc.y.From))
	}
	if had, ok := l.failed[string(key)]; ok && had >= slack {
		return true
	}
	l.failed[string(key)] = slack
	return false
}
