package server_test

import (
	"net/http"
	"strings"
	"testing"
)

func TestARequestFromAnotherSitesPageIsRefused(t *testing.T) {
	h := opened(t, "low-bench")
	for _, headers := range []map[string]string{
		{"Sec-Fetch-Site": "cross-site"},
		{"Sec-Fetch-Site": "same-site"},
		{"Origin": "https://elsewhere.example"},
		{"Origin": "http://127.0.0.1:1"},
		{"Origin": "null"},
	} {
		for _, r := range []*http.Request{h.previews("low-bench", `{"base":0,"edits":[]}`), request("POST", "/api/answers/movement", "{}"), request("DELETE", "/api/pieces", ""), request("PUT", "/", "")} {
			for k, v := range headers {
				r.Header.Set(k, v)
			}
			h.refuses(t, r, http.StatusForbidden)
		}
	}
	own := h.previews("low-bench", `{"base":0,"edits":[]}`)
	own.Header.Set("Sec-Fetch-Site", "same-origin")
	own.Header.Set("Origin", "http://127.0.0.1:18730")
	if w := h.answers(own); w.Code != http.StatusOK {
		t.Errorf("its own page: %d %s", w.Code, w.Body)
	}
}

func TestAForeignNameIsRefused(t *testing.T) {
	h := opened(t, "low-bench")
	for _, host := range []string{"elsewhere.example", "elsewhere.example:18730", "127.0.0.1.elsewhere.example", "localhost.elsewhere.example", "192.168.1.20:80", "10.0.0.1", "[2001:db8::1]:80", "", "0.0.0.0", "[::]", "127.0.0.1:80:80", strings.Repeat("a", 5000)} {
		for _, path := range []string{"/", "/api/pieces", "/openapi.json", "/fonts/regular.ttf", "/icon.svg"} {
			r := request("GET", path, "")
			r.Host = host
			if p := h.refuses(t, r, http.StatusForbidden); len(p.Detail) > 300 {
				t.Errorf("%d letters of detail", len(p.Detail))
			}
		}
	}
	for _, host := range []string{"127.0.0.1", "127.0.0.1:1", "localhost", "LOCALHOST:18730", "[::1]:18730", "[::1]", "127.0.1.1:8"} {
		r := request("GET", "/api/pieces", "")
		r.Host = host
		if w := h.answers(r); w.Code != http.StatusOK {
			t.Errorf("%s: %d", host, w.Code)
		}
	}
}

func TestEveryAnswerKeepsTheBrowserCareful(t *testing.T) {
	h := opened(t, "low-bench")
	for _, path := range []string{"/", "/api/pieces", "/nothing.here", "/api/nothing", "/openapi.json", "/api/pieces/" + h.ids["low-bench"] + "/book.html"} {
		head := h.answers(request("GET", path, "")).Header()
		for name, want := range map[string]string{"X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer", "Content-Security-Policy": "default-src 'self'", "Cross-Origin-Resource-Policy": "same-origin"} {
			if !strings.HasPrefix(head.Get(name), want) {
				t.Errorf("%s: %s %q", path, name, head.Get(name))
			}
		}
		if head.Get("Access-Control-Allow-Origin") != "" || head.Get("Content-Type") == "" {
			t.Errorf("%s: %v", path, head)
		}
	}
}

func TestWhatIsNotThereIsAProblem(t *testing.T) {
	h := opened(t, "low-bench")
	h.refuses(t, request("GET", "/api/nothing", ""), http.StatusNotFound)
	h.refuses(t, request("GET", "/api", ""), http.StatusNotFound)
	h.refuses(t, request("GET", "/api/pieces/"+h.ids["low-bench"], ""), http.StatusNotFound)
	r := request("POST", "/api/pieces", "{}")
	w := h.answers(r)
	if w.Code != http.StatusMethodNotAllowed || w.Header().Get("Allow") != "GET, HEAD" {
		t.Errorf("%d, Allow %q", w.Code, w.Header().Get("Allow"))
	}
	h.refuses(t, r, http.StatusMethodNotAllowed)
	h.refuses(t, request("PUT", "/api/pieces/"+h.ids["low-bench"]+"/preview", "{}"), http.StatusMethodNotAllowed)
}
