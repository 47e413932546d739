package cut

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rodwright/length"
)

// checker collects the first value of a problem that can't be.
type checker struct {
	unit   length.Unit
	err    error
	total  int
	seen   map[string]bool
	seenIn string
}

func (c *checker) fail(why, path string, args ...any) {
	if c.err == nil {
		c.err = wrong(why, path, args...)
	}
}

// maxKinds bounds the entries of a list of stock.
const maxKinds = 5_000

// some reports a problem that offers no stock, or more kinds of it than can be thought over.
func (c *checker) some(n int, path string) {
	if n > maxKinds {
		c.fail(fmt.Sprintf("must hold at most %d pieces of stock, holds %d", maxKinds, n), "%s", path)
	}
	if n == 0 {
		c.fail("must hold at least one piece of stock", "%s", path)
	}
}

func (c *checker) over(l length.Length, path string, args ...any) {
	if l <= 0 {
		c.fail("must be more than 0, is "+Text(l, c.unit), path, args...)
	}
	c.under(l, path, args...)
}

func (c *checker) atLeast(least, l length.Length, path string, args ...any) {
	if l < least {
		c.fail("must be at least "+Text(least, c.unit)+", is "+Text(l, c.unit), path, args...)
	}
	c.under(l, path, args...)
}

func (c *checker) under(l length.Length, path string, args ...any) {
	if l > length.Max {
		c.fail("must be at most 1 km", path, args...)
	}
}

func (c *checker) rect(r Rect, path string, args ...any) {
	c.atLeast(0, r.X, path+".x", args...)
	c.atLeast(0, r.Y, path+".y", args...)
	c.over(r.Length, path+".length", args...)
	c.over(r.Width, path+".width", args...)
}

func (c *checker) share(v float64, path string) {
	if !(v >= 0 && v <= 1) {
		c.fail(fmt.Sprintf("must be from 0 to 1, is %v", v), "%s", path)
	}
}

// maxPrice keeps sums of prices exact to the rounding of money.
const maxPrice = 1e9

func (c *checker) price(p Price, path string, args ...any) {
	if p.Given && !(p.Value >= 0 && p.Value <= maxPrice) || math.IsNaN(p.Value) {
		c.fail(fmt.Sprintf("must be from 0 to %g, is %v", maxPrice, p.Value), path, args...)
	}
}

func (c *checker) stockCount(n Count, path string, args ...any) {
	if n != Any && (n < 0 || n > MaxPieces) {
		c.fail(fmt.Sprintf("must be null (any number) or from 0 to %d, is %d", MaxPieces, n), path, args...)
	}
}

// pieces checks the count of a part and that all counts together stay within MaxPieces.
func (c *checker) pieces(n Count, path string, args ...any) {
	if n < 0 || n > MaxPieces {
		c.fail(fmt.Sprintf("must be from 0 to %d, is %d", MaxPieces, n), path, args...)
		return
	}
	c.total += int(n)
	if c.total > MaxPieces {
		c.fail(fmt.Sprintf("makes more than %d parts in all", MaxPieces), path, args...)
	}
}

// tag checks that a tag is there and stands only once in its list: an answer names pieces by tag alone.
func (c *checker) tag(tag, list string, i int) {
	if c.seenIn != list {
		c.seen, c.seenIn = map[string]bool{}, list
	}
	switch {
	case tag == "":
		c.fail("is missing; every piece needs a tag of its own", "%s[%d].tag", list, i)
	case c.seen[tag]:
		c.fail(fmt.Sprintf("%q stands twice; every piece needs a tag of its own", tag), "%s[%d].tag", list, i)
	}
	c.seen[tag] = true
}

func (c *checker) oneOf(word string, words []string, path string, args ...any) {
	if slices.Contains(words, word) {
		return
	}
	if words[0] == "" {
		words = words[1:]
	}
	c.fail(fmt.Sprintf("%q is not one of %s", word, strings.Join(words, ", ")), path, args...)
}
