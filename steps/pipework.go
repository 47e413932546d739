package steps

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/cut"
	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// pipework plans everything that is done to pipe and fittings before they are put together, and returns
// its last step.
func (p *planner) pipework() int {
	pipes := left(p.of(func(q part.Part) bool { return q.Kind == part.Pipe }), journal.Coated)
	if len(pipes) == 0 {
		return 0
	}
	var done []int
	var sizes []string
	for _, q := range pipes {
		sizes = append(sizes, q.Material)
	}
	for _, size := range once(sizes) {
		done = append(done, p.makePipe(size, pipes))
	}
	fittings := p.of(func(q part.Part) bool { return q.Kind == part.Fitting })
	return p.cleanAndCoat(slices.Concat(tags(pipes), tags(fittings)), pipes, done)
}

// makePipe plans the pipes of one size that are cut from sticks.
func (p *planner) makePipe(size string, pipes []part.Part) int {
	mine := slices.DeleteFunc(slices.Clone(pipes), func(q part.Part) bool { return q.Material != size || q.From == part.FromNipple })
	if len(mine) == 0 {
		return p.bought
	}
	a := p.answer(OfSticks, size)
	groups := setOnce(p.settings(a, cut.Crosscut))
	if a == nil {
		groups = pipeSettings(left(mine, journal.BlankCut))
	}
	uncut := len(tags(left(mine, journal.BlankCut)))
	cutStep := p.do(job{
		work: "cut-pipe", parts: tags(left(mine, journal.BlankCut)), units: float64(uncut), settings: len(groups), after: before(p.bought),
		title:    fmt.Sprintf("Cut %s of %s at %s%s", several(uncut, "pipe"), size, several(len(groups), "stop setting"), sticksUsed(a)),
		measures: append(p.settingLines(groups), "measure the first of each setting before you cut the rest"),
	})
	if mine = left(mine, journal.Sized); len(mine) == 0 {
		return cutStep
	}
	n := len(tags(mine))
	threaded := p.threads(size, mine, n, cutStep)
	return p.do(job{
		work: "deburr", parts: tags(mine), units: float64(2 * n), after: before(threaded),
		title: fmt.Sprintf("Deburr both ends of the %s of %s, inside and outside", several(n, "pipe"), size),
	})
}

// threads plans the threading of both ends of each pipe, in the shop or at the seller's.
func (p *planner) threads(size string, mine []part.Part, n, after int) int {
	s, err := pipe.Lookup(size)
	var lines []string
	if err == nil {
		lines = append(lines, fmt.Sprintf("thread until the end sits flush with the die; normal make-up is %s, %g threads to the inch", p.show(s.Engagement), s.ThreadsPerInch))
	}
	for _, q := range mine {
		if q.Cut < p.s.Pipe.LeastThreaded {
			lines = append(lines, fmt.Sprintf("%s is shorter than the %s the machine holds: buy it as a nipple or move its ends", phrase(q.Tags), p.show(p.s.Pipe.LeastThreaded)))
		}
	}
	lines = append(lines, "keep the factory threads at a stick's ends where a length falls there: one end less to thread")
	j := job{
		work: "thread", parts: tags(mine), units: float64(2 * n), after: before(after), measures: lines,
		title: fmt.Sprintf("Thread both ends of the %s of %s: %d threads", several(n, "pipe"), size, 2*n),
	}
	if !p.s.Pipe.ThreadsAtShop {
		j.title = fmt.Sprintf("Let the seller thread both ends of the %s of %s: %d threads, for a fee each", several(n, "pipe"), size, 2*n)
		j.fits = func(shop.Tool) bool { return false }
	}
	return p.do(j)
}

// sticksUsed says from how many sticks the pipes come.
func sticksUsed(a *cut.Answer) string {
	if a == nil {
		return ""
	}
	var from []string
	for _, u := range a.Used {
		from = append(from, u.Stock)
	}
	kinds := once(from)
	for i, k := range kinds {
		n := 0
		for _, f := range from {
			if f == k {
				n++
			}
		}
		kinds[i] = fmt.Sprintf("%d × %s", n, k)
	}
	return " from " + strings.Join(kinds, ", ")
}

// pipeSettings groups the pipes by length, longest first.
func pipeSettings(pipes []part.Part) []group {
	var out []group
	for _, q := range pipes {
		i := slices.IndexFunc(out, func(g group) bool { return g.setting == q.Cut })
		if i < 0 {
			i = len(out)
			out = append(out, group{setting: q.Cut})
		}
		out[i].makes = append(out[i].makes, q.Tags...)
		out[i].cuts += len(q.Tags)
	}
	sortGroups(out)
	return out
}

// cleanAndCoat takes oil, and where the steel will show its scale, off everything and coats it.
func (p *planner) cleanAndCoat(all []string, pipes []part.Part, after []int) int {
	var run length.Length
	for _, q := range pipes {
		run += max(q.Cut, 0) * length.Length(q.Count)
	}
	m := run.MM() / 1000
	coat, why := p.steelCoat()
	last := p.do(job{
		work: "clean-pipe", parts: all, units: m, after: before(after...),
		title:    "Wash the mill's oil off pipes, nipples and fittings, and dry them at once",
		measures: []string{"black pipe only; a white cloth must stay white, inside the threads too"},
		cautions: Cautions("galvanised"),
	})
	if showsSteel(coat) {
		last = p.do(job{
			work: "descale", parts: all, units: 1, after: before(last),
			title:    "Soak the grey scale off in vinegar for 24 to 48 h; rinse, dry at once and coat the same day",
			measures: []string{"fully under the liquid: half out, it rusts along the line", "turn pipe seams, which hold scale, to the back when you put the frame together"},
			cautions: Cautions("galvanised"),
		})
	}
	return p.coatSteel(coat, why, all, m, last)
}

// steelCoat returns the finish of the steel, and why it is not the shop's usual one.
func (p *planner) steelCoat() (class, why string) {
	if p.r.Doc == nil {
		return p.s.Settings.MetalFinish, ""
	}
	return p.s.Settings.SteelCoat(p.r.Doc.Place.HighRH)
}

// coatSteel plans the coats of a finish on the steel, as many as are usual for its class, and returns the
// last of them. A shop that names no finish leaves the steel bare.
func (p *planner) coatSteel(class, why string, parts []string, metres float64, after int) int {
	if class == "" {
		return after
	}
	f := p.finishing(class)
	for n := 1; n <= f.coats; n++ {
		wait := f.recoatH
		if n == f.coats {
			wait = f.handleH
		}
		which := ""
		if f.coats > 1 {
			which = fmt.Sprintf(", coat %d of %d", n, f.coats)
		}
		after = p.do(job{
			work: "coat-pipe", parts: parts, units: metres, after: before(after), waitH: wait,
			title:    fmt.Sprintf("Coat the steel with %s, not the threads%s", f.name, which),
			measures: once(append([]string{"wax serves in a dry room; in a damp one take a film", why}, f.lines...)),
			cautions: f.cautions, assumed: f.assumed,
		})
	}
	return after
}

// showsSteel reports whether the steel is seen through its coat, so that its scale must go first.
func showsSteel(finish string) bool {
	for _, word := range []string{"wax", "oil", "clear", "varnish"} {
		if strings.Contains(finish, word) {
			return true
		}
	}
	return false
}
