package build

import (
	"container/list"
	"crypto/sha256"
	"sync"
)

// Memo keeps the results of the stages of Derive that take longer than a millisecond, by the hash of
// their inputs, so that an edit computes only what it changed. It never changes an answer. It is bounded,
// may be shared, and its nil value keeps nothing.
type Memo struct {
	mu    sync.Mutex
	most  int
	byKey map[[sha256.Size]byte]*list.Element
	order *list.List // most recently used first
}

type kept struct {
	key   [sha256.Size]byte
	value any
}

// NewMemo returns an empty memo that keeps at most the given number of results; the one not used for
// longest goes first.
func NewMemo(most int) *Memo {
	return &Memo{most: max(most, 1), byKey: map[[sha256.Size]byte]*list.Element{}, order: list.New()}
}

// Keep returns the result kept for a stage with that input, or computes and keeps it. The input must hold
// everything that the result depends on. A kept result is shared: nobody may change it. When two callers
// ask at once both may compute; the results are alike.
func (m *Memo) Keep(stage string, input []byte, compute func() any) any {
	if m == nil {
		return compute()
	}
	key := sha256.Sum256(append([]byte(stage+"\x00"), input...))
	if v, ok := m.look(key); ok {
		return v
	}
	v := compute()
	m.put(key, v)
	return v
}

func (m *Memo) look(key [sha256.Size]byte) (any, bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	e, ok := m.byKey[key]
	if !ok {
		return nil, false
	}
	m.order.MoveToFront(e)
	return e.Value.(kept).value, true
}

func (m *Memo) put(key [sha256.Size]byte, v any) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if _, ok := m.byKey[key]; ok {
		return
	}
	m.byKey[key] = m.order.PushFront(kept{key, v})
	for m.order.Len() > m.most {
		last := m.order.Back()
		delete(m.byKey, last.Value.(kept).key)
		m.order.Remove(last)
	}
}

// Len returns how many results are kept.
func (m *Memo) Len() int {
	if m == nil {
		return 0
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.order.Len()
}
