package server_test

import (
	"bytes"
	"fmt"
	"io"
	"net/http"
	"runtime"
	"runtime/pprof"
	"strings"
	"testing"
)

// TestNothingRunsAfterAStop opens everything, listens, stops, and looks for goroutines of the server.
func TestNothingRunsAfterAStop(t *testing.T) {
	r := run(t, opened(t, "low-bench"))
	client := &http.Client{Transport: &http.Transport{}}
	for range 4 {
		s := r.listen(t, client)
		defer s.body.Body.Close()
		if _, ok := s.next(t); !ok {
			t.Fatal("no number")
		}
	}
	for _, path := range []string{"/", "/api/pieces", "/api/pieces/" + r.ids["low-bench"] + "/build"} {
		answer, err := client.Get(r.url + path)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.Copy(io.Discard, answer.Body); err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
	}
	r.stop()
	if err := <-r.done; err != nil {
		t.Fatal(err)
	}
	client.CloseIdleConnections()
	// A goroutine that has answered may take a moment to be gone.
	for try := 0; ; try++ {
		left := goroutines(t)
		if len(left) == 0 {
			return
		}
		if try == 10_000 {
			t.Fatalf("still running:\n%s", strings.Join(left, "\n\n"))
		}
		runtime.Gosched()
	}
}

// goroutines are those that answer requests.
func goroutines(t *testing.T) (found []string) {
	t.Helper()
	var all bytes.Buffer
	if err := pprof.Lookup("goroutine").WriteTo(&all, 1); err != nil {
		t.Fatal(err)
	}
	for g := range strings.SplitSeq(all.String(), "\n\n") {
		if strings.Contains(g, "internal/server.(*Server)") || strings.Contains(g, "net/http.(*conn).serve") {
			found = append(found, g)
		}
	}
	return found
}

// paths are everything that is read of a piece.
func (h *house) paths(t testing.TB, id string) []string {
	at := "/api/pieces/" + id
	all := []string{at + "/build", at + "/sizes", at + "/solids", at + "/drawings", at + "/log", at + "/text", at + "/book.html", at + "/book.pdf"}
	var got drawn
	h.into(t, at+"/drawings", &got)
	for _, d := range got.Drawings {
		all = append(all, at+"/drawings/"+d.ID+".svg")
	}
	return all
}

// BenchmarkHeapOfAllExamples tells how much is kept once everything of every example was opened and many edits
// were tried, as heap-MB.
func BenchmarkHeapOfAllExamples(b *testing.B) {
	before := heap()
	h := opened(b)
	for b.Loop() {
		for _, id := range h.ids {
			for _, path := range h.paths(b, id) {
				h.reads(b, path)
			}
		}
		for i := range 40 {
			body := fmt.Sprintf(`{"base":0,"edits":[{"path":"sizes/length","value":"%d in"}]}`, 90+i%12)
			if w := h.answers(h.previews("large", body)); w.Code != http.StatusOK {
				b.Fatalf("%d %s", w.Code, w.Body)
			}
		}
	}
	b.ReportMetric((heap()-before)/1e6, "heap-MB")
	runtime.KeepAlive(h)
}

func heap() float64 {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return float64(m.HeapAlloc)
}

// BenchmarkPreview tries edits of the largest example that were not tried before.
func BenchmarkPreview(b *testing.B) {
	h := opened(b, "large")
	for i := 0; b.Loop(); i++ {
		body := fmt.Sprintf(`{"base":0,"edits":[{"path":"sizes/length","value":"%d.%03d in"}]}`, 90+i%10, i/10%1000)
		if w := h.answers(h.previews("large", body)); w.Code != http.StatusOK {
			b.Fatalf("%d %s", w.Code, w.Body)
		}
	}
}

// BenchmarkList opens a shop and lists its pieces for the first time.
func BenchmarkList(b *testing.B) {
	for b.Loop() {
		b.StopTimer()
		h := opened(b)
		b.StartTimer()
		h.reads(b, "/api/pieces")
	}
}
