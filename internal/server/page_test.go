package server_test

import (
	"bytes"
	"net/http"
	"strings"
	"testing"

	"rodwright/draw/svg"
	"rodwright/draw/typeface"
	"rodwright/internal/server"
)

func TestEveryPathOfThePageIsThePage(t *testing.T) {
	h := opened(t, "low-bench")
	for _, path := range []string{"/", "/pieces", "/pieces/" + nobody + "/shape", "/index.html", "/answers/", "/a/b/c/d"} {
		w := h.answers(request("GET", path, ""))
		if w.Code != http.StatusOK || !strings.Contains(w.Body.String(), "<title>page</title>") || w.Header().Get("Cache-Control") != "no-cache" {
			t.Errorf("%s: %d %s %v", path, w.Code, w.Body, w.Header())
		}
		if got := w.Header().Get("Content-Type"); got != "text/html; charset=utf-8" {
			t.Errorf("%s: %s", path, got)
		}
	}
}

func TestAPageThatNamesNoIconGetsOneAllTheSame(t *testing.T) {
	w := opened(t, "low-bench").answers(request("GET", "/favicon.ico", ""))
	if w.Code != http.StatusOK || w.Header().Get("Content-Type") != "image/svg+xml" {
		t.Errorf("%d %v", w.Code, w.Header())
	}
}

func TestTheStyleOfDrawingsIsServedBesideThePage(t *testing.T) {
	w := opened(t, "low-bench").answers(request("GET", "/drawing.css", ""))
	if w.Code != http.StatusOK || w.Body.String() != svg.Style || w.Header().Get("Content-Type") != "text/css; charset=utf-8" {
		t.Errorf("%d %v", w.Code, w.Header())
	}
}

func TestFilesNamedByTheirContentsAreKeptForEver(t *testing.T) {
	h := opened(t, "low-bench")
	w := h.answers(request("GET", "/app-ZP6G64HH.js", ""))
	if w.Code != http.StatusOK || !strings.Contains(w.Header().Get("Cache-Control"), "immutable") || w.Header().Get("Content-Type") != "text/javascript; charset=utf-8" {
		t.Errorf("%d %v", w.Code, w.Header())
	}
	w = h.answers(request("GET", "/icon.svg", ""))
	if w.Code != http.StatusOK || w.Header().Get("Cache-Control") != "no-cache" || w.Header().Get("Content-Type") != "image/svg+xml" {
		t.Errorf("%d %v", w.Code, w.Header())
	}
	again := request("GET", "/icon.svg", "")
	again.Header.Set("If-None-Match", w.Header().Get("ETag"))
	if w := h.answers(again); w.Code != http.StatusNotModified || w.Body.Len() != 0 {
		t.Errorf("%d", w.Code)
	}
	if w := h.answers(request("HEAD", "/icon.svg", "")); w.Code != http.StatusOK || w.Body.Len() != 0 {
		t.Errorf("HEAD: %d with %d bytes", w.Code, w.Body.Len())
	}
}

func TestNoPathLeadsOutOfThePage(t *testing.T) {
	h := opened(t, "low-bench")
	for _, path := range []string{"/../server.go", "/..%2fserver.go", "/%2e%2e/%2e%2e/go.mod", "/fonts/../../go.mod", "/app-ZZZZZZZZ.js", "/..%5cserver.go", "//etc/passwd.txt", "/fonts/regular.ttf/../x.ttf", "/index.html%00.js"} {
		h.refuses(t, request("GET", path, ""), http.StatusNotFound)
	}
	if w := h.answers(request("GET", "/../../etc/passwd", "")); strings.Contains(w.Body.String(), "root:") {
		t.Error("a file of the machine")
	}
	h.refuses(t, request("POST", "/", "x"), http.StatusMethodNotAllowed)
}

func TestTheTypeOfTheDrawingsIsServed(t *testing.T) {
	h := opened(t, "low-bench")
	for path, want := range map[string][]byte{"/fonts/regular.ttf": typeface.Regular(), "/fonts/semibold.ttf": typeface.SemiBold()} {
		w := h.answers(request("GET", path, ""))
		if !bytes.Equal(w.Body.Bytes(), want) || w.Header().Get("Content-Type") != "font/ttf" {
			t.Errorf("%s: %d bytes, %v", path, w.Body.Len(), w.Header())
		}
	}
	h.refuses(t, request("GET", "/fonts/other.ttf", ""), http.StatusNotFound)
}

func TestAServerWithoutItsPageSaysSo(t *testing.T) {
	h := opened(t, "low-bench")
	bare := &house{Server: served(t, server.Options{Store: h.store})}
	if p := bare.refuses(t, request("GET", "/", ""), http.StatusNotFound); !strings.Contains(p.Detail, "without its page") {
		t.Errorf("%+v", p)
	}
}
