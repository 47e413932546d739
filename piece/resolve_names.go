package piece

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"rodwright/length"
)

// wordsFor tells the members of a group apart in plan: left and right, front and back, with a middle, in
// at most three rows and columns; else by number. A single member needs no word.
func wordsFor(at []spot) []string {
	xs := columns(at, func(p spot) length.Length { return p.x })
	ys := columns(at, func(p spot) length.Length { return p.y })
	across := map[int][]string{1: {""}, 2: {"left", "right"}, 3: {"left", "middle", "right"}}[len(xs)]
	deep := map[int][]string{1: {""}, 2: {"front", "back"}, 3: {"front", "middle", "back"}}[len(ys)]
	out := make([]string, len(at))
	seen := map[string]bool{}
	for i, p := range at {
		if across == nil || deep == nil {
			return numbers(len(at))
		}
		x, _ := slices.BinarySearch(xs, p.x)
		y, _ := slices.BinarySearch(ys, p.y)
		word := strings.TrimSpace(deep[y] + " " + across[x])
		if word == "middle middle" {
			word = "middle"
		}
		if seen[word] {
			return numbers(len(at))
		}
		seen[word] = true
		out[i] = word
	}
	return out
}

// columns returns the different values of a coordinate, rising.
func columns(at []spot, of func(spot) length.Length) (out []length.Length) {
	for _, p := range at {
		out = append(out, of(p))
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func numbers(n int) []string {
	out := make([]string, n)
	for i := range out {
		out[i] = "number " + strconv.Itoa(i+1)
	}
	return out
}

// nouns are the words a group's name may end in that already say what its sticks are.
var nouns = []string{"post", "leg", "upright", "rail", "stretcher", "bar", "brace", "arm", "bracket", "stick", "foot", "caster"}

// nounFor returns what one member of the group is called: side → side rail, legs → leg.
func nounFor(group, role string) string {
	words := strings.Fields(group)
	if len(words) == 0 {
		return role
	}
	last := words[len(words)-1]
	single := last
	if strings.HasSuffix(last, "s") && !strings.HasSuffix(last, "ss") {
		single = strings.TrimSuffix(last, "s")
	}
	if single == last && !slices.Contains(nouns, last) {
		return group + " " + role
	}
	words[len(words)-1] = single
	return strings.Join(words, " ")
}

// memberName names one member of a group by its word: front and left give front left post, side and left
// give left side rail. Words that the group's name already says are not said twice.
func memberName(group, role, word string) string {
	noun := nounFor(group, role)
	if strings.HasPrefix(word, "number ") {
		return noun + strings.TrimPrefix(word, "number")
	}
	said := strings.Fields(group)
	var words []string
	for _, w := range strings.Fields(word) {
		if !slices.Contains(said, w) {
			words = append(words, w)
		}
	}
	rest := strings.Join(words, " ")
	if rest == "" {
		return noun
	}
	if group == "front" || group == "back" {
		return group + " " + rest + strings.TrimPrefix(noun, group)
	}
	return rest + " " + noun
}

// unique returns the name, with the group said or a number added where another stick has it already.
func (r *rod) unique(name, group string) string {
	taken := func(n string) bool { return slices.ContainsFunc(r.runs, func(o run) bool { return o.name == n }) }
	if !taken(name) {
		return name
	}
	if with := name + " of " + group; group != "" && !taken(with) {
		return with
	}
	for n := 2; ; n++ {
		if with := name + " no. " + strconv.Itoa(n); !taken(with) {
			return with
		}
	}
}

// order of directions at a joint: x, y, z, positive first, square before slanting.
func (d Dir) compare(e Dir) int {
	rank := func(d Dir) [3]int {
		axis, sign := 2, d.Z
		if d.X != 0 {
			axis, sign = 0, d.X
		} else if d.Y != 0 {
			axis, sign = 1, d.Y
		}
		return [3]int{axis, -int(sign), d.slants()}
	}
	a, b := rank(d), rank(e)
	return cmp.Or(slices.Compare(a[:], b[:]), cmp.Compare(e.Y, d.Y), cmp.Compare(e.Z, d.Z))
}

// slants is the number of axes a direction has a part in, less one.
func (d Dir) slants() int {
	n := -1
	for _, v := range []int8{d.X, d.Y, d.Z} {
		if v != 0 {
			n++
		}
	}
	return n
}

func (d Dir) minus() Dir { return Dir{-d.X, -d.Y, -d.Z} }

func (d Dir) dot(e Dir) int { return int(d.X)*int(e.X) + int(d.Y)*int(e.Y) + int(d.Z)*int(e.Z) }

// upright reports whether a stick in this direction moves nothing in plan.
func (d Dir) upright() bool { return d.X == 0 && d.Y == 0 }

// level reports whether a stick in this direction keeps its height.
func (d Dir) level() bool { return d.Z == 0 }

// String says the direction as seen from the front: right, left, back, front, up, down, and what lies
// between them.
func (d Dir) String() string {
	var words []string
	for _, w := range []struct {
		v        int8
		pos, neg string
	}{{d.X, "right", "left"}, {d.Y, "back", "front"}, {d.Z, "up", "down"}} {
		switch {
		case w.v > 0:
			words = append(words, w.pos)
		case w.v < 0:
			words = append(words, w.neg)
		}
	}
	return strings.Join(words, "-")
}

// list joins words: a, b and c.
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
