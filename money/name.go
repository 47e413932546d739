package money

import (
	"strings"

	"rodwright/trade/sheet"
)

// stockName is what people call the stock of an item: white oak 6/4, birch plywood 18 mm, 21 ft stick of pipe 3/4.
func stockName(item string) string {
	if of, ok := strings.CutPrefix(item, "pipe "); ok {
		size, long, _ := strings.Cut(of, " ")
		return long + " stick of pipe " + size
	}
	if s, err := sheet.Lookup(item); err == nil {
		return s.Name
	}
	return strings.ReplaceAll(item, "-", " ")
}
