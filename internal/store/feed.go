package store

import "sync"

// Change says that a piece has a new last entry. It carries numbers only: who wants to know more asks.
type Change struct {
	Piece  string // its id
	Number int64  // of its last entry
}

// behind is how many changes wait for a listener. One who falls further behind misses some, and learns of the
// piece by its next change or by asking.
const behind = 64

// feed tells every listener of every change.
type feed struct {
	mu        sync.Mutex
	listeners map[chan Change]bool
	closed    bool
}

// Changes returns a channel on which the writes of this Store are told, from now on until stop is called or the
// Store is closed; then the channel is closed.
func (s *Store) Changes() (changes <-chan Change, stop func()) {
	ch := make(chan Change, behind)
	s.feed.add(ch)
	return ch, func() { s.feed.remove(ch) }
}

func (f *feed) add(ch chan Change) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.closed {
		close(ch)
		return
	}
	if f.listeners == nil {
		f.listeners = make(map[chan Change]bool)
	}
	f.listeners[ch] = true
}

func (f *feed) remove(ch chan Change) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if f.listeners[ch] {
		delete(f.listeners, ch)
		close(ch)
	}
}

func (f *feed) send(c Change) {
	f.mu.Lock()
	defer f.mu.Unlock()
	for ch := range f.listeners {
		select {
		case ch <- c:
		default: // a slow listener holds nobody up
		}
	}
}

func (f *feed) close() {
	f.mu.Lock()
	defer f.mu.Unlock()
	for ch := range f.listeners {
		close(ch)
	}
	f.listeners, f.closed = nil, true
}
