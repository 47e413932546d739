package answer

import (
	"fmt"
	"strings"
)

// Rule says which groups of keys stand for each other. A group is given whole or not at all.
type Rule struct {
	Groups      [][]string
	Least, Most int // how many of the groups must, and may, be given
}

// either is the rule that exactly one of the groups is given.
func either(groups ...[]string) Rule { return Rule{groups, 1, 1} }

// together is the rule that the keys are given all or not at all.
func together(keys ...string) Rule { return Rule{[][]string{keys}, 0, 1} }

// String says the rule in words: give wood or modulus; give pad and edge_strip, or neither.
func (r Rule) String() string {
	names := make([]string, len(r.Groups))
	for i, g := range r.Groups {
		names[i] = list(g, "and")
	}
	if len(r.Groups) == 1 {
		return "give " + names[0] + " together or not at all"
	}
	words := map[[2]int]string{{1, 1}: "give either ", {0, 1}: "give at most one of: "}
	start, ok := words[[2]int{r.Least, r.Most}]
	if !ok {
		start = "give at least one of: "
	}
	return start + strings.Join(names, ", or ")
}

// broken returns what is wrong with the given keys by this rule, and the key it is about.
func (r Rule) broken(has func(string) bool) (key, why string) {
	whole := 0
	for _, g := range r.Groups {
		var there, missing []string
		for _, k := range g {
			if has(k) {
				there = append(there, k)
			} else {
				missing = append(missing, k)
			}
		}
		if len(missing) == 0 {
			whole++
		} else if len(there) > 0 && !r.elsewhere(there, has) {
			return missing[0], fmt.Sprintf("is missing beside %s; %s", list(there, "and"), r)
		}
	}
	switch first := r.Groups[0][0]; {
	case whole < r.Least:
		return first, "is missing; " + r.String()
	case whole > r.Most:
		return r.Groups[1][0], "is given beside " + first + "; " + r.String()
	}
	return "", ""
}

// elsewhere reports whether keys of a half-given group all belong to another group that is whole.
func (r Rule) elsewhere(keys []string, has func(string) bool) bool {
	for _, g := range r.Groups {
		whole := true
		for _, k := range g {
			whole = whole && has(k)
		}
		if !whole {
			continue
		}
		inside := 0
		for _, k := range keys {
			for _, o := range g {
				if k == o {
					inside++
				}
			}
		}
		if inside == len(keys) {
			return true
		}
	}
	return false
}

// list joins words with commas and a last and, or or.
func list(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	n := len(words) - 1
	return strings.Join(words[:n], ", ") + " " + last + " " + words[n]
}
