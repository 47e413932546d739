package steps

import (
	_ "embed" // the tables of this package
	"slices"
	"sync"

	"rodwright/shop"
	"rodwright/trade/table"
)

//go:embed cautions.csv
var cautionsCSV string

//go:embed ways.csv
var waysCSV string

// cautionsOf and waysOf hold what the trade knows by kind of work, in the order of the tables.
var (
	cautionsOf = sync.OnceValue(func() map[string][]string {
		out := map[string][]string{}
		for _, r := range table.Read(cautionsCSV) {
			work := r.Text("work")
			out[work] = append(out[work], r.Text("caution"))
		}
		return out
	})
	waysOf = sync.OnceValue(func() map[string][]way {
		out := map[string][]way{}
		for _, r := range table.Read(waysCSV) {
			work := r.Text("work")
			out[work] = append(out[work], way{r.Text("tool"), r.Text("name"), r.Text("listed") == "yes"})
		}
		return out
	})
)

// Cautions returns what to beware of in a kind of work; nil where the work hurts nobody.
func Cautions(work string) []string { return slices.Clone(cautionsOf()[work]) }

// way is one way to do a kind of work.
//
// A listed tool is one that a shop names among its own; what is in no list, as a file or a cloth, is at
// hand everywhere.
type way struct {
	tool, name string
	listed     bool
}

// ways returns the trade's ways to do a kind of work, the best first. Nobody may change them.
func ways(work string) []way { return waysOf()[work] }

// Tools returns what the shop does a kind of work with, the trade's best way that the shop owns a tool
// for, and what serves instead: the shop's other tools first, then what the trade would use. A tool that
// fits reports false for is passed over: its limits are too narrow. Where the shop owns none for work
// that takes a tool, owned is false and the first is what the trade would use.
func Tools(work string, s *shop.Shop, fits func(shop.Tool) bool) (tool string, instead []string, owned bool) {
	var have, other []string
	plain := true // the work takes nothing that a shop would list among its tools
	for _, w := range ways(work) {
		t, ok := s.Tool(w.tool)
		switch {
		case ok && (fits == nil || fits(t)):
			have = append(have, toolName(t, w, work))
		case !ok:
			other = append(other, w.name)
		}
		plain = plain && !w.listed
	}
	all := append(have, other...)
	if len(all) == 0 {
		return "", nil, false
	}
	return all[0], slices.Clip(all[1:]), len(have) > 0 || plain
}

// toolName is the shop's own name of its tool where it was listed for just this work, else the way's.
func toolName(t shop.Tool, w way, work string) string {
	if slices.Contains(t.Does, work) {
		return t.Name
	}
	return w.name
}
