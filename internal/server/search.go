package server

import (
	"context"
	"fmt"
	"net/http"
	"runtime/debug"
	"slices"
	"sync"
	"time"

	"github.com/google/uuid"

	"rodwright/cut"
	"rodwright/layout"
)

// How much is searched at once and kept, and for how long.
const (
	mostSearching = 2
	mostSearches  = 32 // that are over and told still
)

// The states of a search.
const (
	searching = "running"
	searched  = "done"
	stopped   = "cancelled"
	failed    = "failed"
)

// search is a job that looks deeper for the layout of one material of a piece. It lives in memory alone: what is
// accepted of it is an entry of the log.
type search struct {
	id     string
	piece  string
	number int64 // of the last entry of the piece that it was begun on
	of     layout.Layout
	key    string // of its problem
	limit  time.Duration
	began  time.Time
	cancel context.CancelFunc
	ended  chan struct{} // closed when it is over

	mu       sync.Mutex
	state    string
	best     *cut.Answer // that at hand where none is better
	took     time.Duration
	accepted int64 // number of the entry; 0: it was not
}

// standing is how a search stands at a moment.
type standing struct {
	state    string
	best     *cut.Answer
	took     time.Duration
	accepted int64
}

func (j *search) stands() standing {
	j.mu.Lock()
	defer j.mu.Unlock()
	took := j.took
	if j.state == searching {
		took = time.Since(j.began)
	}
	return standing{j.state, j.best, took, j.accepted}
}

// change alters how the search stands.
func (j *search) change(how func()) {
	j.mu.Lock()
	defer j.mu.Unlock()
	how()
}

// searches are the jobs of a server.
type searches struct {
	ctx    context.Context // ends with the server
	cancel context.CancelFunc
	run    sync.WaitGroup

	mu  sync.Mutex
	all []*search // in the order they were begun
}

func newSearches() *searches {
	s := &searches{}
	s.ctx, s.cancel = context.WithCancel(context.Background())
	return s
}

// begin begins a search for a better layout than the one at hand, or returns the one that runs already for that problem.
// The error is a *Problem where too many run.
func (s *Server) begin(piece string, number int64, of layout.Layout, limit time.Duration) (*search, error) {
	all := s.searches
	key := of.Key()
	all.mu.Lock()
	defer all.mu.Unlock()
	if all.ctx.Err() != nil {
		return nil, problem(http.StatusServiceUnavailable, "the server is stopping", "start it again")
	}
	running := 0
	for _, j := range all.all {
		if j.stands().state != searching {
			continue
		}
		if j.piece == piece && j.key == key {
			return j, nil
		}
		running++
	}
	if running >= mostSearching {
		return nil, problem(http.StatusTooManyRequests, fmt.Sprintf("%d searches run already", running), "wait until one is done, or cancel one")
	}
	id, err := uuid.NewV7()
	if err != nil {
		return nil, err
	}
	j := &search{
		id: id.String(), piece: piece, number: number, of: of, key: key, limit: limit, began: time.Now(), ended: make(chan struct{}),
		state: searching, best: of.Answer,
	}
	var ctx context.Context
	ctx, j.cancel = context.WithTimeout(all.ctx, limit)
	all.keep(j)
	all.run.Go(func() { s.look(ctx, j) })
	return j, nil
}

// keep adds a search; those that are over for longest are forgotten.
func (s *searches) keep(j *search) {
	for i := 0; len(s.all) >= mostSearches && i < len(s.all); {
		if s.all[i].stands().state == searching {
			i++
			continue
		}
		s.all = slices.Delete(s.all, i, i+1)
	}
	s.all = append(s.all, j)
}

// look runs a search to its end. One that breaks does not break the server.
func (s *Server) look(ctx context.Context, j *search) {
	defer close(j.ended)
	defer j.cancel()
	end := failed
	defer func() {
		if v := recover(); v != nil {
			s.log.Error("panic", "value", v, "search", j.of.Material, "stack", string(debug.Stack()))
		}
		j.change(func() { j.state, j.took = end, time.Since(j.began) })
	}()
	best, err := j.of.Deepen(ctx, j.of.Answer, func(a *cut.Answer) { j.change(func() { j.best = a }) })
	if err != nil {
		s.log.Error("search failed", "error", err, "material", j.of.Material)
		return
	}
	j.change(func() { j.best = best })
	if end = searched; context.Cause(ctx) == context.Canceled {
		end = stopped
	}
}

// of returns the searches of a piece, in the order they were begun.
func (s *searches) of(piece string) (out []*search) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, j := range s.all {
		if j.piece == piece {
			out = append(out, j)
		}
	}
	return out
}

// search returns a search of a piece.
func (s *Server) search(piece, id string) (*search, error) {
	for _, j := range s.searches.of(piece) {
		if j.id == id {
			return j, nil
		}
	}
	return nil, problem(http.StatusNotFound, "there is no search "+quoted(id)+" of this piece", "one that is over is forgotten after others, and with the end of the program; begin it again")
}

// wait waits until all searches are over, at most that long. They must be cancelled.
func (s *searches) wait(most time.Duration) {
	over := make(chan struct{})
	go func() {
		s.run.Wait()
		close(over)
	}()
	select {
	case <-over:
	case <-time.After(most):
	}
}
