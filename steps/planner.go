package steps

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/piece"
	"rodwright/shop"
)

// planner is one plan in the making: steps are added in the order of the work.
type planner struct {
	r       *piece.Resolved
	list    *part.List
	layouts []Layout
	s       *shop.Shop
	work    *Work
	fine    length.Fineness
	err     error

	bought    int                      // the step after which the material is there
	handled   int                      // the step after which finished panels may be handled
	cured     int                      // the step after which they may be used
	laid      map[int]bool             // panels that lie in the frame already, by index
	states    map[string]journal.State // of each panel, pipe and fitting that is made at all, by tag
	redone    map[string]int           // the last step that puts a made part right, by tag
	delivered bool                     // the piece was brought to its wall before its panels went on
}

// job is what a stage knows of a step; the planner works out tool, hours and cautions.
type job struct {
	work     string
	title    string
	parts    []string
	measures []string
	units    float64
	settings int     // set-ups; 1 when zero
	waitH    float64 // instead of the operation's own wait, when more than zero
	noWait   bool    // the operation's own wait does not apply
	after    []int
	cautions []string // besides those of the work
	assumed  []string
	fits     func(shop.Tool) bool // tool limits
	again    bool                 // it is done though it was done before
	clamps   int
	clampH   float64
}

// do adds a step and returns its number. Work that is done already to all parts it is for is no step: what follows
// it follows what went before it.
func (p *planner) do(j job) int {
	if p.isDone(j) {
		return slices.Max(append(before(slices.Clone(j.after)...), 0))
	}
	for _, tag := range j.parts {
		j.after = append(j.after, p.redone[tag])
	}
	st := Step{
		N: len(p.work.Steps) + 1, Work: j.work, Title: j.title, Parts: j.parts, Measures: j.measures,
		Units: j.units, Settings: max(j.settings, 1), Assumed: j.assumed, Clamps: j.clamps, ClampH: j.clampH,
	}
	p.time(&st, j)
	var owned bool
	st.Tool, st.Substitutes, owned = Tools(j.work, p.s, j.fits)
	if !owned {
		st.Assumed = append(slices.Clone(st.Assumed), "the shop has no tool for this on its list")
	}
	st.Cautions = once(sentences(append(Cautions(j.work), j.cautions...)))
	st.After = ordered(j.after)
	p.work.Steps = append(p.work.Steps, st)
	return st.N
}

// time works out hands and wait by the shop's times: settings × set-up + units × unit time.
func (p *planner) time(st *Step, j job) {
	o, ok := p.s.Operation(j.work)
	if !ok {
		p.work.Unknown = append(p.work.Unknown, "time for "+j.work)
	}
	st.Per = o.Per
	st.HandsH = float64(st.Settings)*o.SetUpH + st.Units*o.UnitH
	switch {
	case j.waitH > 0:
		st.WaitH = j.waitH
	case !j.noWait:
		st.WaitH = o.WaitH
	}
}

// sentences makes each text a sentence of its own, so that cautions from several tables can be read one
// after the other.
func sentences(texts []string) []string {
	out := make([]string, 0, len(texts))
	for _, t := range texts {
		first, size := utf8.DecodeRuneInString(t)
		if size == 0 {
			continue
		}
		t = string(unicode.ToUpper(first)) + t[size:]
		if !strings.ContainsAny(t[len(t)-1:], ".!?") {
			t += "."
		}
		out = append(out, t)
	}
	return out
}

// before returns those of the numbers that are steps, for an After that may not exist.
func before(ns ...int) []int {
	return slices.DeleteFunc(ns, func(n int) bool { return n == 0 })
}

func ordered(ns []int) []int {
	out := before(slices.Clone(ns)...)
	slices.Sort(out)
	return slices.Compact(out)
}

func once(texts []string) []string {
	var out []string
	for _, t := range texts {
		if t != "" && !slices.Contains(out, t) {
			out = append(out, t)
		}
	}
	return out
}

// tags returns the physical tags of parts, in order.
func tags(parts []part.Part) []string {
	var out []string
	for _, q := range parts {
		out = append(out, q.Tags...)
	}
	return out
}

// of returns the parts of the list that fit.
func (p *planner) of(fits func(part.Part) bool) []part.Part {
	var out []part.Part
	for _, q := range p.list.Parts {
		if fits(q) {
			out = append(out, q)
		}
	}
	return out
}

func (p *planner) show(l length.Length) string { return p.fine.Text(l) }

// several writes a count with its noun: 1 joint, 3 joints, 4 feet.
func several(n int, one string) string {
	switch {
	case n == 1:
		return "1 " + one
	case one == "foot":
		return strconv.Itoa(n) + " feet"
	}
	return strconv.Itoa(n) + " " + one + "s"
}

// phrase joins words as a sentence does: a, b and c.
func phrase(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// titled writes a part's name with its tags: deep board A1.1.
func titled(q part.Part) string { return fmt.Sprintf("%s %s", q.Name, span(q.Tags)) }

// span shortens a run of tags: C1.1–C1.4.
func span(tags []string) string {
	if len(tags) < 3 {
		return strings.Join(tags, ", ")
	}
	return tags[0] + "–" + tags[len(tags)-1]
}
