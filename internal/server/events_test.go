package server_test

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"net"
	"net/http"
	"strings"
	"testing"

	"rodwright/internal/server"
	"rodwright/internal/store"
)

// running is a house on a port of this machine.
type running struct {
	*house
	url  string
	stop context.CancelFunc
	done chan error
}

func run(t testing.TB, h *house) *running {
	t.Helper()
	l, err := server.Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	r := &running{house: h, url: "http://" + l.Addr().String(), stop: stop, done: make(chan error, 1)}
	go func() { r.done <- h.Serve(ctx, l) }()
	t.Cleanup(stop)
	return r
}

// stream is what a listener hears.
type stream struct {
	body  *http.Response
	lines *bufio.Scanner
}

func (r *running) listen(t testing.TB, client *http.Client) *stream {
	t.Helper()
	answer, err := client.Get(r.url + "/api/events")
	if err != nil {
		t.Fatal(err)
	}
	if answer.StatusCode != http.StatusOK || answer.Header.Get("Content-Type") != "text/event-stream" || answer.Header.Get("Cache-Control") != "no-store" {
		t.Fatalf("%d %v", answer.StatusCode, answer.Header)
	}
	return &stream{answer, bufio.NewScanner(answer.Body)}
}

type heard struct {
	Piece  string
	Number int64
}

// next returns the next event, comments passed over; false when the stream ends.
func (s *stream) next(t testing.TB) (heard, bool) {
	t.Helper()
	var h heard
	event := ""
	for s.lines.Scan() {
		name, data, _ := strings.Cut(s.lines.Text(), ": ")
		switch name {
		case "event":
			event = data
		case "data":
			if err := json.Unmarshal([]byte(data), &h); err != nil || event != "piece" {
				t.Fatalf("event %q, data %q: %v", event, data, err)
			}
			return h, true
		}
	}
	return h, false
}

func TestAnEditIsToldToWhoListens(t *testing.T) {
	r := run(t, opened(t, "low-bench", "packing-table"))
	s := r.listen(t, http.DefaultClient)
	defer s.body.Body.Close()
	for range 2 { // the numbers of both pieces at first
		if got, ok := s.next(t); !ok || got.Number != 0 {
			t.Fatalf("%+v, %v", got, ok)
		}
	}
	for range 3 {
		want := r.append(t, "low-bench", "sizes/length", "50 in")
		if got, ok := s.next(t); !ok || got.Piece != want.Piece || got.Number != want.Number {
			t.Fatalf("heard %+v, want %+v", got, want)
		}
	}
}

func TestAStopEndsTheStreams(t *testing.T) {
	r := run(t, opened(t, "low-bench"))
	s := r.listen(t, http.DefaultClient)
	defer s.body.Body.Close()
	if _, ok := s.next(t); !ok {
		t.Fatal("no number")
	}
	r.stop()
	if _, ok := s.next(t); ok {
		t.Error("an event after the stop")
	}
	if err := s.lines.Err(); err != nil {
		t.Errorf("it was cut off and not ended: %v", err)
	}
	if err := <-r.done; err != nil {
		t.Error(err)
	}
	if _, err := http.Get(r.url); err == nil {
		t.Error("it answers after the stop")
	}
}

// slow is a shop whose list takes until it is let go.
type slow struct {
	server.Store
	asked, free chan struct{}
}

func (s slow) Pieces(ctx context.Context) ([]store.Piece, error) {
	close(s.asked)
	<-s.free
	return s.Store.Pieces(ctx)
}

func TestAStopWaitsForWhatIsUnderWay(t *testing.T) {
	h := opened(t, "low-bench")
	shop := slow{h.store, make(chan struct{}), make(chan struct{})}
	r := run(t, &house{Server: served(t, server.Options{Store: shop})})
	code := make(chan int, 1)
	go func() {
		answer, err := http.Get(r.url + "/api/pieces")
		if err != nil {
			code <- 0
			return
		}
		answer.Body.Close()
		code <- answer.StatusCode
	}()
	<-shop.asked
	r.stop()
	close(shop.free)
	if got := <-code; got != http.StatusOK {
		t.Errorf("%d", got)
	}
	if err := <-r.done; err != nil {
		t.Error(err)
	}
}

func TestAListenerThatOtherMachinesReachIsRefused(t *testing.T) {
	l, err := net.Listen("tcp4", "0.0.0.0:0")
	if err != nil {
		t.Fatal(err)
	}
	if err := opened(t, "low-bench").Serve(context.Background(), l); !errors.Is(err, server.ErrNotLoopback) {
		t.Errorf("%v", err)
	}
	if _, err := l.Accept(); !errors.Is(err, net.ErrClosed) {
		t.Errorf("it is still open: %v", err)
	}
}

func TestAPortInUseIsAnError(t *testing.T) {
	l, err := server.Listen(0)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if _, err := server.Listen(l.Addr().(*net.TCPAddr).Port); err == nil {
		t.Error("two listen on one port")
	}
}
