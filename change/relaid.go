package change

import (
	"slices"

	"rodwright/build"
)

// Relaid is a board, stick or sheet already bought that is laid out otherwise.
type Relaid struct {
	Tag    string   `json:"tag"`
	Before []string `json:"before"` // tags of what was to be cut from it
	After  []string `json:"after"`
}

// relaid lists the stock bought for the piece whose layout changes, in the order it was bought.
func relaid(before, after *build.Build) []Relaid {
	out := []Relaid{}
	if after.Under == nil {
		return out
	}
	was, is := onStock(before), onStock(after)
	for _, g := range after.Under.Record.Goods {
		if g.Tag == "" || slices.Equal(was[g.Tag], is[g.Tag]) {
			continue
		}
		out = append(out, Relaid{g.Tag, nonNil(was[g.Tag]), nonNil(is[g.Tag])})
	}
	return out
}

// onStock lists by tag of stock what is laid out on it.
func onStock(b *build.Build) map[string][]string {
	out := map[string][]string{}
	for _, l := range b.Layout.All() {
		for _, u := range l.Answer.Used {
			for _, p := range u.Parts {
				if !slices.Contains(out[u.Stock], p.Tag) {
					out[u.Stock] = append(out[u.Stock], p.Tag)
				}
			}
			slices.Sort(out[u.Stock])
		}
	}
	return out
}
