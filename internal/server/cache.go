package server

import (
	"container/list"
	"sync"
)

// cache keeps a bounded number of values; the one not used for longest goes first.
type cache[K comparable, V any] struct {
	mu     sync.Mutex
	most   int
	byUse  *list.List // of entry[K, V], last used first
	places map[K]*list.Element
}

type entry[K comparable, V any] struct {
	key   K
	value V
}

func newCache[K comparable, V any](most int) *cache[K, V] {
	return &cache[K, V]{most: most, byUse: list.New(), places: make(map[K]*list.Element)}
}

// get returns the value kept under the key, or keeps what fresh returns. Fresh must be quick: others wait.
func (c *cache[K, V]) get(key K, fresh func() V) V {
	c.mu.Lock()
	defer c.mu.Unlock()
	if at, ok := c.places[key]; ok {
		c.byUse.MoveToFront(at)
		return at.Value.(entry[K, V]).value
	}
	value := fresh()
	c.places[key] = c.byUse.PushFront(entry[K, V]{key, value})
	if c.byUse.Len() > c.most {
		last := c.byUse.Back()
		delete(c.places, c.byUse.Remove(last).(entry[K, V]).key)
	}
	return value
}

// kept returns the value kept under the key, if there is one.
func (c *cache[K, V]) kept(key K) (value V, ok bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	at, ok := c.places[key]
	if ok {
		c.byUse.MoveToFront(at)
		value = at.Value.(entry[K, V]).value
	}
	return value, ok
}

// size returns how many values are kept.
func (c *cache[K, V]) size() int {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.byUse.Len()
}
