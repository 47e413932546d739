package server

import (
	"log/slog"
	"net"
	"net/http"
	"net/netip"
	"runtime/debug"
	"strings"
)

// policy keeps the page to what this server serves: nothing is fetched from elsewhere, and no other site may
// put it in a frame. Drawings and books bring styles of their own.
const policy = "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self' data:; " +
	"object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'self'"

// guard stands before everything: it sets the headers that keep a browser careful, answers to this machine's own
// names only, and refuses unsafe requests from other sites.
func (s *Server) guard(next http.Handler) http.Handler {
	cross := http.NewCrossOriginProtection()
	cross.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		problem(http.StatusForbidden, "this request comes from another site's page", "send it from this program's own page").write(w)
	}))
	inner := cross.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		if !ownName(r.Host) {
			problem(http.StatusForbidden, "this program answers to this machine alone, not to "+quoted(r.Host), "open http://127.0.0.1 or http://localhost with its port").write(w)
			return
		}
		defer s.recovered(w, r)
		inner.ServeHTTP(w, r)
	})
}

// quoted keeps a foreign name short.
func quoted(host string) string {
	const most = 100
	if len(host) > most {
		host = host[:most] + "…"
	}
	return `"` + strings.ToValidUTF8(host, "") + `"`
}

// ownName reports whether a Host header names this machine. A page of another site whose name was made to lead here
// is refused by it.
func ownName(host string) bool {
	name := host
	if h, _, err := net.SplitHostPort(host); err == nil {
		name = h
	} else {
		name = strings.TrimSuffix(strings.TrimPrefix(name, "["), "]")
	}
	if strings.EqualFold(name, "localhost") {
		return true
	}
	addr, err := netip.ParseAddr(name)
	return err == nil && addr.Unmap().IsLoopback()
}

// recovered answers a request whose handler panicked, and logs where.
func (s *Server) recovered(w http.ResponseWriter, r *http.Request) {
	v := recover()
	if v == nil {
		return
	}
	if v == http.ErrAbortHandler {
		panic(v)
	}
	s.log.LogAttrs(r.Context(), slog.LevelError, "panic", slog.Any("value", v), slog.String("path", r.URL.Path), slog.String("stack", string(debug.Stack())))
	problem(http.StatusInternalServerError, "the server could not do this; its log says why", "nothing was changed; ask again").write(w)
}
