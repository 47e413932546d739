package shop

import (
	_ "embed" // the data files of this package
	"maps"
	"slices"
	"sync"
)

//go:embed defaults.yaml
var defaultsText []byte

//go:embed sample.yaml
var sampleText []byte

// defaults is the trade's usual way of working. The embedded text is read once; the tests hold it
// correct.
var defaults = sync.OnceValue(func() *Shop {
	s := &Shop{prices: map[string]Price{}}
	top, err := root(defaultsText)
	must(err)
	must(s.read(top))
	return s
})

var sample = sync.OnceValue(func() *Shop {
	s, err := Read("sample shop", sampleText)
	must(err)
	s.Assumed = []string{"the prices, hours and tools are the built-in sample shop's, invented"}
	return s
})

// must stops the program when its own embedded data is damaged, which no input can bring about.
func must(err error) {
	if err != nil {
		panic(err)
	}
}

// Defaults returns a shop with the trade's usual habits and times of work [common practice, no source] and
// nothing else: it has no name, no prices, no tools and no boards.
func Defaults() *Shop { return defaults().clone() }

// SampleText returns the file of the built-in shop, for a shop of one's own to begin from.
func SampleText() []byte { return append([]byte(nil), sampleText...) }

// Sample returns the built-in shop. Its prices are invented and marked assumed.
func Sample() *Shop { return sample().clone() }

// clone returns a copy that shares no slice or map with s which a caller could change.
func (s *Shop) clone() *Shop {
	c := *s
	c.prices = maps.Clone(s.prices)
	c.Pipe.NPT, c.Pipe.ISO = slices.Clone(s.Pipe.NPT), slices.Clone(s.Pipe.ISO)
	c.Boards, c.Fittings = slices.Clone(s.Boards), slices.Clone(s.Fittings)
	c.Tools, c.Operations = slices.Clone(s.Tools), slices.Clone(s.Operations)
	c.Rack.Boards, c.Rack.Sticks = slices.Clone(s.Rack.Boards), slices.Clone(s.Rack.Sticks)
	c.Rack.Sheets, c.Assumed = slices.Clone(s.Rack.Sheets), slices.Clone(s.Assumed)
	return &c
}
