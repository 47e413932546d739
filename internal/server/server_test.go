package server_test

import (
	"context"
	"encoding/json"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"rodwright/examples"
	"rodwright/internal/server"
	"rodwright/internal/store"
)

// house is a shop with the examples in it, and its server.
type house struct {
	*server.Server
	store *store.Store
	ids   map[string]string // of the examples by name
}

// files are a small page.
var files = fstest.MapFS{
	"index.html":      {Data: []byte("<!doctype html><title>page</title>")},
	"app-ZP6G64HH.js": {Data: []byte("export {};")},
	"icon.svg":        {Data: []byte("<svg xmlns='http://www.w3.org/2000/svg'/>")},
}

// opened is a house with the given examples, or with all.
func opened(t testing.TB, names ...string) *house {
	t.Helper()
	ctx := context.Background()
	st, err := store.Open(ctx, filepath.Join(t.TempDir(), "shop.db"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := st.Close(); err != nil {
			t.Error(err)
		}
	})
	h := &house{store: st, ids: map[string]string{}}
	if len(names) == 0 {
		names = examples.Names()
	}
	for _, name := range names {
		text, err := examples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := st.Create(ctx, store.Write{Actor: "maker"}, name, text)
		if err != nil {
			t.Fatal(err)
		}
		h.ids[name] = p.ID
	}
	h.Server = served(t, server.Options{Store: st, Files: fs.FS(files), Version: "0.0.0-test"})
	return h
}

func served(t testing.TB, o server.Options) *server.Server {
	t.Helper()
	s, err := server.New(o)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.Close)
	return s
}

// request is one from this machine.
func request(method, path, body string) *http.Request {
	r := httptest.NewRequest(method, path, strings.NewReader(body))
	r.Host = "127.0.0.1:18730"
	if body != "" {
		r.Header.Set("Content-Type", "application/json")
	}
	return r
}

// answers returns what the server answers to a request.
func (h *house) answers(r *http.Request) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// reads returns the body of what must be answered with 200.
func (h *house) reads(t testing.TB, path string) string {
	t.Helper()
	w := h.answers(request("GET", path, ""))
	if w.Code != http.StatusOK {
		t.Fatalf("GET %s: %d %s", path, w.Code, w.Body)
	}
	return w.Body.String()
}

// into reads JSON that must be answered with 200.
func (h *house) into(t testing.TB, path string, v any) {
	t.Helper()
	if err := json.Unmarshal([]byte(h.reads(t, path)), v); err != nil {
		t.Fatalf("GET %s: %v", path, err)
	}
}

// problem is a problem as it is sent.
type problem struct {
	Type, Title, Detail, Right, Path string
	Status                           int
	Place                            *struct {
		File         string
		Line, Column int
	}
}

// refuses returns the problem that a request must be answered with.
func (h *house) refuses(t testing.TB, r *http.Request, status int) problem {
	t.Helper()
	w := h.answers(r)
	if w.Code != status {
		t.Fatalf("%s %s: %d %s; want %d", r.Method, r.URL, w.Code, w.Body, status)
	}
	if got := w.Header().Get("Content-Type"); got != "application/problem+json" {
		t.Errorf("%s %s: a problem of type %q", r.Method, r.URL, got)
	}
	var p problem
	if err := json.Unmarshal(w.Body.Bytes(), &p); err != nil {
		t.Fatalf("%s %s: %v: %s", r.Method, r.URL, err, w.Body)
	}
	if p.Status != status || p.Title == "" || p.Detail == "" {
		t.Errorf("%s %s: %+v", r.Method, r.URL, p)
	}
	return p
}
