package answer

import (
	"fmt"
	"math"
	"strings"

	"rodwright/figure"
	"rodwright/trade/answer/quantity"
	"rodwright/trade/table"
)

// Key is one value that a topic asks for.
type Key struct {
	Name     string
	Kind     quantity.Kind // what it measures, where Word is false
	Word     bool          // takes a word: one of Choices, or the id of a species or a pipe
	Choices  []string      // the words it takes, the default first; empty where an id is asked
	Optional bool          // may be left out
	Default  string        // what stands for it when left out; empty where nothing does
	Means    string        // what it is, for a person
	Example  string
	least    float64 // of the number, in the kind's base unit
	most     float64
	above    bool // the number must be above least, not equal to it
}

// bounds says between which numbers a value of a kind makes sense in a furniture shop, in the kind's
// base unit, where a key does not say otherwise. Common practice, no source: they keep slips of the pen
// out, the formulas' own ranges are checked by the trade.
var bounds = [...]struct {
	least, most float64
	above       bool
}{
	quantity.Length: {0, 100_000, true}, quantity.Rough: {0, 1000, true}, quantity.Mass: {0, 100_000, true}, quantity.Force: {0, 1e6, true},
	quantity.Pressure: {0, 1e6, true}, quantity.Temperature: {-50, 100, false}, quantity.Volume: {0, 1e9, true}, quantity.Area: {0, 1e5, true},
	quantity.Density: {1, 25_000, false}, quantity.Speed: {0, 100, false}, quantity.Coverage: {0, 1000, true}, quantity.Spread: {0, 10_000, true},
	quantity.Percent: {0, 100, false}, quantity.Money: {0, 1e9, false}, quantity.Count: {1, 100_000, false}, quantity.Ratio: {0, 1000, true},
	quantity.Mix: {0.001, 1000, false}, quantity.Time: {0, 1e5, false}, quantity.Gauge: {0, 24, false}, quantity.Amount: {0, 1e9, true},
	quantity.Inertia: {0, 1e9, true},
}

// ask returns a key that must be given.
func ask(name string, k quantity.Kind, example, means string) Key {
	b := bounds[k]
	return Key{Name: name, Kind: k, Means: means, Example: example, least: b.least, most: b.most, above: b.above}
}

// named returns a key that takes an id from a table of the trade.
func named(name, example, means string) Key {
	return Key{Name: name, Word: true, Means: means, Example: example}
}

// choose returns a key that takes one of the given words, the first when it is left out.
func choose(name, means string, words ...string) Key {
	return Key{Name: name, Word: true, Choices: words, Optional: true, Default: words[0], Means: means, Example: words[0]}
}

// optional returns the key as one that may be left out, with nothing standing for it.
func (k Key) optional() Key { k.Optional = true; return k }

// or returns the key as one that may be left out for the given value.
func (k Key) or(value string) Key { k.Optional, k.Default = true, value; return k }

// within returns the key with its own bounds, both allowed.
func (k Key) within(least, most float64) Key { k.least, k.most, k.above = least, most, false; return k }

// between returns the key with both its bounds, the lower one not allowed.
func (k Key) between(least, most float64) Key {
	k.least, k.most, k.above = least, most, true
	return k
}

// zero returns the key as one that takes nought too.
func (k Key) zero() Key { k.above = false; return k }

// Takes says what the key takes, for a message and for the list: a length, flat|quarter|mixed.
func (k Key) Takes() string {
	if len(k.Choices) > 0 {
		return strings.Join(k.Choices, "|")
	}
	if k.Word {
		return "a name"
	}
	return k.Kind.String()
}

// read reads text as the key's value.
func (k Key) read(text string) (quantity.Value, error) {
	if k.Word {
		return k.word(text)
	}
	v, err := quantity.Parse(text, k.Kind)
	if err != nil {
		return v, err
	}
	if n := v.Number; n < k.least || n > k.most || k.above && n == k.least || math.IsNaN(n) {
		return v, fmt.Errorf("got %q: takes %s %s, for example %s", text, k.Kind, k.span(), k.Example)
	}
	return v, nil
}

func (k Key) word(text string) (quantity.Value, error) {
	t := strings.TrimSpace(text)
	if t == "" {
		return quantity.Value{}, fmt.Errorf("got %q: there is nothing behind the equals sign; takes %s, for example %s", text, k.Takes(), k.Example)
	}
	if len(k.Choices) == 0 {
		return quantity.Value{Text: t}, nil
	}
	for _, c := range k.Choices {
		if t == c {
			return quantity.Value{Text: t}, nil
		}
	}
	near := table.Near(t, k.Choices)
	hint := ""
	if len(near) > 0 && len(k.Choices) > 4 {
		hint = "; near: " + strings.Join(near, ", ")
	}
	return quantity.Value{}, fmt.Errorf("got %q: takes one of %s%s", text, strings.Join(k.Choices, ", "), hint)
}

// span says the key's bounds in words.
func (k Key) span() string {
	low := "of at least"
	if k.above {
		low = "above"
	}
	return fmt.Sprintf("%s %s and at most %s", low, k.bound(k.least), k.bound(k.most))
}

// bound shows a bound in the kind's base unit.
func (k Key) bound(v float64) string {
	return strings.TrimSpace(figure.Digits(v, 4) + " " + k.Kind.Base())
}
