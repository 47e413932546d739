package main

import (
	"fmt"
	"io"
	"os"
	"sync"
	"time"

	"rodwright/cut"
	"rodwright/layout"
)

// progress shows on a terminal how a search goes on; anywhere else nothing.
type progress struct {
	to   io.Writer // nil: no terminal
	ends time.Time

	mu   sync.Mutex
	of   layout.Layout
	best *cut.Answer
	stop chan struct{}
	done sync.WaitGroup
}

// ticks is how often the seconds left are shown anew.
const ticks = 500 * time.Millisecond

func newProgress(to io.Writer, ends time.Time) *progress {
	p := &progress{ends: ends, stop: make(chan struct{})}
	file, ok := to.(*os.File)
	if !ok {
		return p
	}
	if at, err := file.Stat(); err != nil || at.Mode()&os.ModeCharDevice == 0 {
		return p
	}
	p.to = to
	p.done.Go(p.run)
	return p
}

func (p *progress) run() {
	t := time.NewTicker(ticks)
	defer t.Stop()
	for {
		select {
		case <-p.stop:
			return
		case <-t.C:
			p.mu.Lock()
			p.show()
			p.mu.Unlock()
		}
	}
}

func (p *progress) begin(l layout.Layout) { p.now(func() { p.of, p.best = l, l.Answer }) }

func (p *progress) better(a *cut.Answer) { p.now(func() { p.best = a }) }

func (p *progress) now(set func()) {
	p.mu.Lock()
	defer p.mu.Unlock()
	set()
	p.show()
}

// show writes one line over the last. Whoever can't be told is looked for all the same.
func (p *progress) show() {
	if p.to != nil && p.best != nil {
		left := max(0, time.Until(p.ends)).Round(time.Second)
		fmt.Fprintf(p.to, "\r\x1b[K%s: %s; %v left, Ctrl+C ends it", p.of.Material, goodWords(p.best), left)
	}
}

// end takes the line away.
func (p *progress) end() {
	close(p.stop)
	p.done.Wait()
	if p.to != nil {
		fmt.Fprint(p.to, "\r\x1b[K")
	}
}
