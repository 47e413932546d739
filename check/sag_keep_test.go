package check

import (
	"maps"
	"sync"
)

// keeping keeps every answer by its input, as a memo does.
type keeping struct {
	mu    sync.Mutex
	byKey map[string]any
}

func (k *keeping) keep(stage string, input []byte, compute func() any) any {
	key := stage + "\x00" + string(input)
	k.mu.Lock()
	v, ok := k.byKey[key]
	k.mu.Unlock()
	if ok {
		return v
	}
	v = compute()
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.byKey == nil {
		k.byKey = map[string]any{}
	}
	k.byKey[key] = v
	return v
}

func (k *keeping) copied() *keeping { return &keeping{byKey: maps.Clone(k.byKey)} }
