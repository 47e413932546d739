// Package server is the HTTP interface of one shop: its pieces and everything derived from them as JSON,
// drawings and books, what an edit would do before it is stored, what was told of a piece under way and what follows
// from it, word of changes, deeper searches for layouts, and the page in the browser.
//
// The words: a piece is opened when its document is read from the shop; what is derived from it is kept, a bounded
// number at a time, by the document's bytes, what was told of the piece, the shop's settings and the unit asked for. A problem is an error as
// RFC 9457 writes it, with the place in the document and what would be right.
//
// Start with [New], or with [Listen] and [Server.Serve]. It serves this machine alone: it listens on loopback
// addresses, answers to loopback names only, and refuses unsafe requests that come from another site's page.
package server

import (
	"fmt"
	"io/fs"
	"log/slog"
	"net/http"
	"sync"
	"time"

	"github.com/danielgtaylor/huma/v2"

	"rodwright/build"
	"rodwright/journal"
	"rodwright/shop"
)

// Options are what a server is made of. Store is needed; the others may be left out.
type Options struct {
	Store   Store
	Sample  *shop.Shop       // serves while the shop has no settings of its own; shop.Sample() when nil
	Files   fs.FS            // the page: index.html and what belongs to it; no page when nil
	Version string           // of the program, for the interface's own description
	Edition string           // differs where another program may answer otherwise; Version when empty
	Logger  *slog.Logger     // of what went wrong; nothing is logged when nil
	Now     func() time.Time // the clock that days are counted from; time.Now when nil
}

// Server serves one shop. It is a handler; [Server.Serve] runs it on a listener.
type Server struct {
	store   Store
	sample  *shop.Shop
	version string
	edition string
	log     *slog.Logger

	memo      *build.Memo
	derived   *cache[deriveKey, *derived]
	summaries *cache[deriveKey, func() Summary]
	records   *cache[recordKey, *journal.Record]
	shop      lastShop
	now       func() time.Time
	searches  *searches
	writing   sync.Mutex // held from the reading of a log to the entries that follow from it

	handler http.Handler
	ending  chan struct{} // closed when streams must end
	end     sync.Once
}

// How much is kept of what was derived: whole builds, their costly stages, and lines of the list of pieces.
const (
	mostBuilds    = 16
	mostStages    = 256
	mostSummaries = 4096
)

// New returns the handler of a shop. Call [Server.Close] when it serves no more. The error says that a file of
// the page can't be read.
func New(o Options) (*Server, error) {
	s := &Server{
		store: o.Store, sample: o.Sample, version: o.Version, edition: o.Edition, log: o.Logger,
		memo:      build.NewMemo(mostStages),
		derived:   newCache[deriveKey, *derived](mostBuilds),
		summaries: newCache[deriveKey, func() Summary](mostSummaries),
		records:   newCache[recordKey, *journal.Record](mostSummaries),
		searches:  newSearches(),
		now:       o.Now,
		ending:    make(chan struct{}),
	}
	if s.now == nil {
		s.now = time.Now
	}
	if s.sample == nil {
		s.sample = shop.Sample()
	}
	if s.edition == "" {
		s.edition = s.version
	}
	if s.log == nil {
		s.log = slog.New(slog.DiscardHandler)
	}
	page, err := newPage(o.Files)
	if err != nil {
		return nil, fmt.Errorf("page: %w", err)
	}
	routes, err := s.routes(page)
	if err != nil {
		return nil, err
	}
	s.handler = s.guard(routes)
	return s, nil
}

// routes puts the interface and the page on one mux.
func (s *Server) routes(page http.Handler) (http.Handler, error) {
	mux := http.NewServeMux()
	api := newAPI(mux, s.version)
	for _, register := range []func(huma.API){
		s.registerPieces, s.registerSizes, s.registerDrawings, s.registerPictures, s.registerSolids, s.registerBooks,
		s.registerLog, s.registerPreview, s.registerEntries, s.registerWeigh, s.registerTake, s.registerWrong,
		s.registerThings, s.registerYields, s.registerCutting, s.registerSearches, s.registerCompare, s.registerMoment,
		s.registerAnswers, s.registerEvents,
	} {
		register(api)
	}
	if err := describe(mux, api); err != nil {
		return nil, err
	}
	return split(strict(mux), withDrawings(page)), nil
}

// ServeHTTP answers one request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.handler.ServeHTTP(w, r) }

// Close ends the streams that are open and the searches that run, so that a server can stop. Other requests are answered
// still.
func (s *Server) Close() {
	s.end.Do(func() {
		close(s.ending)
		s.searches.cancel()
	})
}
