package store

import "sync"

// Change says that a piece has a new last entry. It carries numbers only: who wants to know more asks.
type Change struct {
	Piece  string // its id
	Number int64  // of its last entry
}

// behind is how many changes wait for a listener.
const behind = 64

// feed tells every listener of every change.
type feed struct {
	mu        sync.Mutex
	listeners map[chan Change]bool
	told      map[string]int64 // the last number of each piece
	closed    bool
}

// Changes returns a channel on which the writes of this Store are told, from now on until stop is called or the
// Store is closed; then the channel is closed. The numbers of one piece rise; one that a higher overtook on its
// way is not told. A slow listener holds nobody up and misses nothing unknowingly: when 64 changes wait for
// them, the channel is closed, and they listen again and ask how things stand. Writes of another Store on the
// same file are not told.
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
	if last, ok := f.told[c.Piece]; ok && c.Number <= last {
		return
	}
	if f.told == nil {
		f.told = make(map[string]int64)
	}
	f.told[c.Piece] = c.Number
	for ch := range f.listeners {
		select {
		case ch <- c:
		default:
			delete(f.listeners, ch)
			close(ch)
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
