// Package fate says what becomes of a part that is already made when the plan needs something else: it is used as it
// is, cut down, added to, or can't serve; and which of the parts that exist serves which need at the least cost.
//
// Words: a thing is a part that exists, a need one that the plan wants; a way is what makes the need out of the thing.
// Wood can only be taken off, or an edge strip glued on before the finish; a pipe is shortened and threaded again, or
// lengthened by a coupling and a nipple. Start with [Ways] for one thing and one need, and with [Assign] for all.
//
// Costs are material and hours at the shop's prices. A price that the shop does not know counts as nothing in them and
// is named, so that the order of ways is by hours then.
package fate

import (
	"fmt"
	"strings"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/shop"
	"rodwright/steps"
)

// Kind says what becomes of a part that is already made.
type Kind string

// What becomes of a part that is already made.
const (
	AsIs    Kind = "as it is"
	CutDown Kind = "cut down"
	AddTo   Kind = "add to"
	Rack    Kind = "rack"
	Again   Kind = "made again"
)

// Need is one part that the plan wants.
type Need struct {
	Part  *part.Part
	Tag   string // of the physical part: C2.1
	Place string // front left post 2
}

// Way makes a need out of a thing.
type Way struct {
	Kind    Kind
	Words   string // what is done, with figures
	Off     []Off
	Jobs    []Job
	Goods   []Goods // what is bought for it
	Shows   []string
	HandsH  float64
	WaitH   float64
	Cents   shop.Cents // material and hours
	Unknown []string   // what of the cost has no price
	After   journal.Shape
}

// Off is how much is cut off one edge or end.
type Off struct {
	Side string // start end, far end, near edge, far edge; end of a pipe; face of a panel planed thinner
	Much length.Length
}

// Goods are something bought for a way.
type Goods struct {
	Item  string
	Count float64
	Unit  string
}

// Job is work that a way takes, in order.
type Job struct {
	Work        string
	Title       string
	form        string // the title with [itself] where the part is named
	Units       float64
	Settings    int
	Per         string
	SetUpH      float64 // of HandsH: parts that are put right alike share it
	Tool        string
	Substitutes []string
	HandsH      float64
	WaitH       float64
	Cautions    []string
}

// Titled is the title of the work where it is done to all those parts.
func (j Job) Titled(labels []string) string {
	return strings.ReplaceAll(j.form, itself, strings.Join(labels, ", "))
}

// bench is what ways are worked out on.
type bench struct {
	s    *shop.Shop
	fine length.Fineness
}

// Ways returns the ways to make a need out of a thing, the cheapest first; none where it can't be, and why.
func Ways(t journal.Thing, n Need, s *shop.Shop, fine length.Fineness) (ways []Way, why string) {
	b := bench{s, fine}
	switch {
	case !t.Live():
		return nil, "it is spoiled: " + t.Spoiled
	case t.Shape.Kind == journal.KindPanel && n.Part.Kind == part.Panel:
		ways, why = b.panel(t, n)
	case t.Shape.Kind == journal.KindPipe && n.Part.Kind == part.Pipe:
		ways, why = b.pipe(t, n)
	default:
		return nil, fmt.Sprintf("it is a %s", t.Shape.Kind)
	}
	for i := range ways {
		b.cost(&ways[i])
		for k := range ways[i].Jobs {
			j := &ways[i].Jobs[k]
			j.Title = strings.ReplaceAll(j.form, itself, t.Label)
		}
	}
	order(ways)
	return ways, why
}

// itself stands in a title for the part that is put right: several that are put right alike are one step.
const itself = "[itself]"

// show prints a length as a maker sets it, and finer where that would round it.
func (b bench) show(l length.Length) string { return b.fine.Show(l) }

// job adds work to a way.
func (b bench) job(w *Way, work string, units float64, settings int, format string, args ...any) {
	j := Job{Work: work, form: fmt.Sprintf(format, args...), Units: units, Settings: settings, Cautions: steps.Cautions(work)}
	if o, ok := b.s.Operation(work); ok {
		j.Per, j.SetUpH, j.WaitH = o.Per, float64(settings)*o.SetUpH, o.WaitH
		j.HandsH = j.SetUpH + units*o.UnitH
	} else {
		w.Unknown = append(w.Unknown, "time for "+work)
	}
	j.Tool, j.Substitutes, _ = steps.Tools(work, b.s, nil)
	w.Jobs = append(w.Jobs, j)
}

// cost adds up what a way takes.
func (b bench) cost(w *Way) {
	w.HandsH, w.WaitH, w.Cents = 0, 0, 0
	for _, j := range w.Jobs {
		w.HandsH += j.HandsH
		w.WaitH += j.WaitH
	}
	w.Cents += b.hours(w.HandsH, &w.Unknown)
	for _, g := range w.Goods {
		w.Cents += b.price(g.Item, g.Count, g.Unit, &w.Unknown)
	}
}
