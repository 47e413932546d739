package server_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
)

// FuzzRequest sends what anybody may send: it is answered, and nothing of it is the server's fault.
func FuzzRequest(f *testing.F) {
	h := opened(f, "low-bench")
	at := "/api/pieces/" + h.ids["low-bench"]
	for _, seed := range [][4]string{
		{"GET", "/", "", ""}, {"GET", at + "/build", "units=inch", ""}, {"GET", at + "/drawings/front.svg", "width=90&units=metric", ""},
		{"POST", at + "/preview", "", `{"base":0,"edits":[{"path":"sizes/length","value":"50 in"}]}`},
		{"POST", "/api/answers/movement", "", `{"width":"20 in"}`}, {"GET", at + "/log", "after=1", ""}, {"GET", "/../x", "%", ""},
		{"POST", at + "/preview", "units=", `{"base":0,"edits":[{"path":"holds/1/weight","value":"\u0000"}]}`},
	} {
		f.Add(seed[0], seed[1], seed[2], seed[3])
	}
	f.Fuzz(func(t *testing.T, method, path, query, body string) {
		if strings.Contains(path, "/events") {
			return // a stream ends with the server
		}
		r := httptest.NewRequest("GET", "/", strings.NewReader(body))
		r.Method, r.URL, r.Host = method, &url.URL{Path: path, RawQuery: query}, "localhost"
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code >= http.StatusInternalServerError {
			t.Errorf("%s %q?%q %q: %d %s", method, path, query, body, w.Code, w.Body)
		}
	})
}
