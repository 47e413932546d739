package check

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rodwright/length"
	beams "rodwright/mechanics/frame"
	"rodwright/trade/pipe"
)

// brace is a level rail between two posts that stand in line.
type brace struct {
	a, b int // sticks of the posts, where the rail meets them
}

// levels are the heights at which a rail is tried, as shares of the height.
var levels = []float64{0.5, 0.75}

// swayMend names the change that mends the sway along an axis: rails between the posts at the height at which they help
// most, else thicker pipe.
func (k *skeleton) swayMend(g gives, now float64, axis int) string {
	said, with := []string(nil), ""
	if g == softest {
		with = " with the softest joints"
	}
	if level, then, names := k.bestRail(g, axis); then < 0.9*now {
		text := fmt.Sprintf("join %s by a rail about %s above the floor: it moves %s then%s", strings.Join(names, " and "), k.p.up(length.FromMM(level)), k.p.fine(then), with)
		if said = append(said, text); then <= k.limit() {
			return text
		}
	}
	if size, then := k.thicker(g, axis); size != "" && then < now {
		said = append(said, fmt.Sprintf("take pipe of %s: it moves %s then", size, k.p.fine(then)))
	}
	said = append(said, fmt.Sprintf("push it and measure: %s settles how far its joints give", k.exampleTest()))
	return strings.Join(said, "; or ")
}

// exampleTest is how a push test is told.
func (k *skeleton) exampleTest() string {
	if top := k.topPanels(); len(top) > 0 {
		return fmt.Sprintf("pushed 20 lb on %s to the left moved 1/4 in", k.p.Panels[top[0]].Name)
	}
	return "a push of 20 lb at its top"
}

// bestRail tries rails between posts at several heights and returns the one that helps most, with the sway then.
func (k *skeleton) bestRail(g gives, axis int) (level, sway float64, names []string) {
	sway = math.Inf(1)
	for _, share := range levels {
		z := share * k.height()
		braces := k.bracesAt(axis, z)
		if len(braces) == 0 {
			continue
		}
		with := k.braced(braces, z)
		if s, ok := with.swayWith(g, axis); ok && s < sway {
			level, sway, names = z, s, k.braceNames(braces)
		}
	}
	return level, sway, names
}

// swayWith is the sway along an axis with given joints.
func (k *skeleton) swayWith(g gives, axis int) (float64, bool) {
	f := k.jointed(g)
	f.Nodes = slices.Clone(f.Nodes)
	for i := range f.Nodes {
		f.Nodes[i].Floor = false // held down
	}
	m, err := beams.New(f)
	if err != nil {
		return 0, false
	}
	pushes := k.atTop(along(axis, k.push().Value))
	a, err := m.Solve(beams.Case{Name: "push", Pushes: pushes})
	if err != nil {
		return 0, false
	}
	return k.moved(&a[0], pushes), true
}

// clearOf is how far a rail keeps off the joints of its posts, mm: room for two fittings.
const clearOf = 60

// bracesAt pairs the posts that stand next to each other along an axis and pass a level clear of their joints.
func (k *skeleton) bracesAt(axis int, z float64) (out []brace) {
	var posts []int
	for _, i := range k.s.sticks {
		st := k.p.Sticks[i]
		a, b := vec(k.p.Nodes[st.A].At), vec(k.p.Nodes[st.B].At)
		if st.Dir.X == 0 && st.Dir.Y == 0 && min(a[2], b[2])+clearOf < z && z < max(a[2], b[2])-clearOf {
			posts = append(posts, i)
		}
	}
	at := func(i int) beams.Vec { return vec(k.p.Nodes[k.p.Sticks[i].A].At) }
	for _, i := range posts {
		next := -1
		for _, j := range posts {
			p, q := at(i), at(j)
			if math.Abs(p[1-axis]-q[1-axis]) < nearEnough && q[axis] > p[axis]+clearOf && (next < 0 || q[axis] < at(next)[axis]) {
				next = j
			}
		}
		if next >= 0 {
			out = append(out, brace{i, next})
		}
	}
	return out
}

// braceNames names the posts that rails would join, each pair once.
func (k *skeleton) braceNames(braces []brace) (out []string) {
	name := func(i int) string {
		n := k.p.Sticks[i].Name
		if at := strings.LastIndexByte(n, ' '); at > 0 && strings.Trim(n[at+1:], "0123456789") == "" {
			n = n[:at]
		}
		return n
	}
	for _, b := range braces {
		out = append(out, name(b.a)+" with "+name(b.b))
	}
	if len(out) > 3 {
		out = []string{fmt.Sprintf("the %d pairs of posts that stand in line", len(out))}
	}
	return out
}

// braced is the frame with rails at a level.
func (k *skeleton) braced(braces []brace, z float64) *skeleton {
	with := *k
	with.frame.Nodes = slices.Clone(k.frame.Nodes)
	with.frame.Members = slices.Clone(k.frame.Members)
	with.ends, with.sticks = slices.Clone(k.ends), slices.Clone(k.sticks)
	met := map[int]int{}
	for _, b := range braces {
		from, to := with.meet(b.a, z, met), with.meet(b.b, z, met)
		size := k.p.Sticks[b.a].Section.Pipe
		if from < 0 || to < 0 || size == nil {
			continue
		}
		c := beams.Pipe(pipe.SteelModulus, steelShear, size.OD.MM(), size.Bore.MM())
		with.pipe(from, to, c, -1, [2]joint{threaded, threaded}, *size)
	}
	return &with
}

// meet parts a post at a level and returns the new node; what is parted has threads there.
func (k *skeleton) meet(stick int, z float64, met map[int]int) int {
	if n, ok := met[stick]; ok {
		return n
	}
	for i := range k.frame.Members {
		if k.sticks[i] != stick {
			continue
		}
		m := k.frame.Members[i]
		from, _ := k.find(m.From)
		to, _ := k.find(m.To)
		a, b := k.frame.Nodes[from].At, k.frame.Nodes[to].At
		if min(a[2], b[2])+nearEnough > z || max(a[2], b[2])-nearEnough < z {
			continue
		}
		n := k.node(fmt.Sprintf("b%d", len(k.frame.Nodes)), beams.Vec{a[0], a[1], z})
		end := k.ends[i][1]
		k.frame.Members[i].To, k.ends[i][1] = k.frame.Nodes[n].Name, threaded
		k.member(n, to, m.Section, m.Up, stick, [2]joint{threaded, end})
		met[stick] = n
		return n
	}
	return -1
}

// thicker is the frame with the next thicker pipe, and its sway.
func (k *skeleton) thicker(g gives, axis int) (string, float64) {
	next, ok := nextSize(k.p.Doc.Pipe)
	if !ok {
		return "", 0
	}
	with := *k
	with.frame.Members = slices.Clone(k.frame.Members)
	c := beams.Pipe(pipe.SteelModulus, steelShear, next.OD.MM(), next.Bore.MM())
	for i, st := range k.sticks {
		if st >= 0 && with.frame.Members[i].Section.Area < c.Area {
			with.frame.Members[i].Section = c
		}
	}
	sway, ok := with.swayWith(g, axis)
	if !ok {
		return "", 0
	}
	return next.ID, sway
}

// nextSize is the next thicker pipe of a standard.
func nextSize(s pipe.Size) (pipe.Size, bool) {
	found := false
	for _, id := range pipe.Sizes() {
		q, err := pipe.Lookup(id)
		if err != nil || q.Standard != s.Standard {
			continue
		}
		if found {
			return q, true
		}
		found = q.ID == s.ID
	}
	return pipe.Size{}, false
}
