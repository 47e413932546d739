package server

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"strconv"
	"time"
)

// How long a request may take in its parts, and how long a stop waits for those under way.
const (
	headersWithin = 5 * time.Second
	answerWithin  = time.Minute
	idleAtMost    = 2 * time.Minute
	drainWithin   = 5 * time.Second
	mostHeaders   = 64 << 10
)

// ErrNotLoopback says that a listener can be reached from other machines.
var ErrNotLoopback = errors.New("this program serves this machine alone: it listens on 127.0.0.1 only")

// Listen listens on a port of this machine's own loopback address; port 0 picks one that is free.
func Listen(port int) (net.Listener, error) {
	return net.Listen("tcp4", net.JoinHostPort("127.0.0.1", strconv.Itoa(port)))
}

// Serve answers requests on the listener until ctx is done. Then it ends the streams and the searches, waits a few
// seconds for requests under way, and returns nil. The listener is closed in any case. The error for a listener that other
// machines can reach is [ErrNotLoopback].
func (s *Server) Serve(ctx context.Context, l net.Listener) error {
	if a, ok := l.Addr().(*net.TCPAddr); !ok || !a.IP.IsLoopback() {
		return errors.Join(fmt.Errorf("%s: %w", l.Addr(), ErrNotLoopback), l.Close())
	}
	h := &http.Server{
		Handler: s, ReadHeaderTimeout: headersWithin, WriteTimeout: answerWithin, IdleTimeout: idleAtMost, MaxHeaderBytes: mostHeaders,
		ErrorLog: slog.NewLogLogger(s.log.Handler(), slog.LevelWarn),
	}
	failed := make(chan error, 1)
	go func() { failed <- h.Serve(l) }()
	select {
	case err := <-failed:
		s.Close()
		return err
	case <-ctx.Done():
	}
	s.Close()
	within, cancel := context.WithTimeout(context.WithoutCancel(ctx), drainWithin)
	defer cancel()
	err := h.Shutdown(within)
	if errors.Is(err, context.DeadlineExceeded) {
		err = h.Close() // who is not done by now is cut off
	}
	<-failed // http.ErrServerClosed
	s.searches.wait(drainWithin)
	return err
}
