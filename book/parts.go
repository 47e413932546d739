package book

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rodwright/length"
	"rodwright/part"
	"rodwright/trade/screw"
	"rodwright/trade/wood"
)

// cutList lists the panels.
func (a *author) cutList() []Section {
	t := Table{
		Caption: "Panels: length along the grain, finished; the blank is what is glued up or sawn first",
		Columns: []Column{
			{Head: "Tag", Share: 0.7}, {Head: "Name", Share: 1.6}, {Head: "Count", Share: 0.8, Align: Right},
			{Head: "Length", Share: 1.1, Align: Right}, {Head: "Width", Share: 1.1, Align: Right}, {Head: "Thick", Share: 1.1, Align: Right},
			{Head: "Blank", Share: 2.2, Align: Right}, {Head: "Stock", Share: 1.6}, {Head: "Weight", Share: 1.4, Align: Right},
		},
	}
	kg, n := 0.0, 0
	for _, p := range a.of(part.Panel) {
		f := a.w.to
		t.Rows = append(t.Rows, []string{
			p.Tag, p.Name, strconv.Itoa(p.Count), f.Text(p.Finished[0]), f.Text(p.Finished[1]), f.Text(p.Finished[2]),
			a.w.size(p.Blank[:]...), a.stock(p), a.w.mass(p.MassKg),
		})
		kg += p.MassKg * float64(p.Count)
		n += p.Count
	}
	if n > 0 {
		t.Foot = []string{"", "Together", strconv.Itoa(n), "", "", "", "", "", a.w.mass(kg)}
	}
	s := Section{ID: "cut-list", Title: "Cut list"}
	s.table(t)
	return []Section{s}
}

// pipes lists the pipes with how their cut lengths come about.
func (a *author) pipes() []Section {
	t := Table{
		Caption: "Pipes: cut length = between − what both fittings take",
		Columns: []Column{
			{Head: "Tag", Share: 0.7}, {Head: "Name", Share: 1.7}, {Head: "Count", Share: 0.8, Align: Right}, {Head: "Cut", Share: 1.3, Align: Right},
			{Head: "Between", Share: 1.3, Align: Right}, {Head: "Fittings take", Share: 1.8, Align: Right}, {Head: "Ends", Share: 1.5}, {Head: "Made from", Share: 1.4},
		},
	}
	n := 0
	for _, p := range a.of(part.Pipe) {
		t.Rows = append(t.Rows, []string{
			p.Tag, p.Name, strconv.Itoa(p.Count), a.w.to.Show(p.Cut), a.w.to.Show(p.Between),
			a.taken(p.TakeOuts), p.Ends[0].Words() + " – " + p.Ends[1].Words(), a.madeFrom(p),
		})
		n += p.Count
	}
	if n > 0 {
		t.Foot = []string{"", "Together", strconv.Itoa(n), a.w.to.Show(a.b.Parts.Totals.Pipe), "", "", "", ""}
	}
	s := Section{ID: "pipe-schedule", Title: "Pipe schedule"}
	if len(t.Rows) > 0 {
		s.Blocks = []Block{t, Paragraph{"Between is from centre to centre of the fittings, or to the face of a flange or cap. A joint may end a turn tighter or looser: " +
			"the plan reckons with " + a.play() + "."}}
		s.Blocks = append(s.Blocks, a.boughtOrCut()...)
	}
	return []Section{s}
}

// boughtOrCut tells of pipes that could be bought ready made or cut which of the two the plan reckons with, and why,
// without naming money.
func (a *author) boughtOrCut() (out []Block) {
	var there, bought, cut []string
	for _, p := range a.of(part.Pipe) {
		switch {
		case p.FromWhy == "":
		case p.From == part.FromStick:
			cut = append(cut, p.Tag)
		case strings.HasSuffix(p.FromWhy, " is there"):
			there = append(there, p.Tag)
		default:
			bought = append(bought, p.Tag)
		}
	}
	for _, of := range []struct {
		tags []string
		says string
	}{
		{there, "%s: nipples with both ends threaded that are there already."},
		{bought, "%s: bought ready made as nipples with both ends threaded, at the prices this plan was reckoned with the cheaper way. Cut and threaded as long as between and take-outs give, they serve as well."},
		{cut, "%s: cut and threaded, at the prices this plan was reckoned with the cheaper way. A nipple bought ready made serves only where it is as long."},
	} {
		if len(of.tags) > 0 {
			out = append(out, Paragraph{fmt.Sprintf(of.says, spans(of.tags))})
		}
	}
	return out
}

// play is how far a pipe may come out longer or shorter as it is wrenched, at most.
func (a *author) play() string {
	most := length.Length(0)
	for _, p := range a.of(part.Pipe) {
		most = max(most, p.Loosest-p.Between, p.Between-p.Tightest)
	}
	return a.w.to.Show(most) + " more or less between the ends of one pipe at most"
}

// taken tells both take-outs, as finely as they are known.
func (a *author) taken(t [2]length.Length) string {
	f := a.w.to.Finer()
	if t[0] == t[1] {
		return "2 × " + f.Show(t[0])
	}
	return f.Show(t[0]) + ", " + f.Show(t[1])
}

func (a *author) madeFrom(p part.Part) string {
	switch p.From {
	case part.FromStick:
		return "stick of pipe " + p.Material
	case part.FromNipple:
		return "nipple " + p.Material
	}
	return "neither sold nor cut"
}

// hardware lists fittings and hardware, and how screws are bored for.
func (a *author) hardware() []Section {
	s := Section{ID: "fittings-and-hardware", Title: "Fittings and hardware"}
	columns := []Column{{Head: "Tag", Share: 0.7}, {Head: "Count", Share: 0.8, Align: Right}, {Head: "What", Share: 3}, {Head: "Pipe", Share: 1}}
	fittings := Table{Caption: "Fittings", Columns: columns}
	for _, p := range a.of(part.Fitting) {
		fittings.Rows = append(fittings.Rows, []string{p.Tag, strconv.Itoa(p.Count), p.Fitting.Words(), p.Material})
	}
	s.table(fittings)
	small := Table{Caption: "Hardware", Columns: columns}
	for _, p := range a.of(part.Hardware) {
		small.Rows = append(small.Rows, []string{p.Tag, strconv.Itoa(p.Count), strings.TrimSuffix(a.hardwareName(p), " "+p.Material), p.Material})
	}
	s.table(small)
	s.table(a.screws())
	return []Section{s}
}

// hardwareName names hardware; a screw with its length in the reader's unit.
func (a *author) hardwareName(p part.Part) string {
	if p.Gauge == 0 {
		return p.Name
	}
	name := fmt.Sprintf("wood screw No. %d × %s", p.Gauge, length.SixtyFourth.Text(p.Long))
	if a.w.to.Unit.Metric() {
		name += " (" + length.WholeMM.Text(p.Long) + ")"
	}
	return name
}

// screws tells for each set of screws what it holds to what, and how it is bored for. Sets alike are told once.
func (a *author) screws() Table {
	t := Table{
		Caption: "Screws: what they hold and the pilot to bore",
		Columns: []Column{{Head: "Screws", Share: 1}, {Head: "Hold", Share: 2}, {Head: "To", Share: 1.5}, {Head: "Pilot", Share: 1.3}, {Head: "Deep", Share: 1.2, Align: Right}},
	}
	var holds [][]string
	for _, f := range a.b.Parts.Fasteners {
		to, pilot := a.into(f)
		row := []string{fmt.Sprintf("%s, %d each", f.Screws, f.Count), "", to, pilot, a.w.to.Text(f.Length - f.Grip)}
		if f.Slotted {
			row[0] += ", in slots"
		}
		i := slices.IndexFunc(t.Rows, func(r []string) bool { return r[0] == row[0] && slices.Equal(r[2:], row[2:]) })
		if i < 0 {
			i = len(t.Rows)
			t.Rows, holds = append(t.Rows, row), append(holds, nil)
		}
		holds[i] = append(holds[i], f.Holds)
	}
	for i := range t.Rows {
		t.Rows[i][1] = spans(holds[i])
	}
	return t
}

// into tells what a set of screws goes into, and the bit for its pilot.
func (a *author) into(f part.Fastener) (to, bit string) {
	if f.Panel < 0 {
		return "the wall", "as the wall asks"
	}
	p, ok := panelOf(a.b.Parts, f)
	if !ok {
		return "", ""
	}
	to = a.b.Parts.PanelTags[f.Panel] + " " + p.Name
	if l, ok := pilot(f, p); ok {
		return to, bitText(l, a.w.to.Unit.Metric())
	}
	return to, "by a trial in waste"
}

// panelOf returns the panel that a set of screws goes into.
func panelOf(list *part.List, f part.Fastener) (part.Part, bool) {
	for _, p := range list.Parts {
		if p.Kind == part.Panel && f.Panel >= 0 && slices.Contains(p.Indexes, f.Panel) {
			return p, true
		}
	}
	return part.Part{}, false
}

// pilot returns the diameter to bore for a set of screws; false in sheet goods, for which there is no rule.
func pilot(f part.Fastener, p part.Part) (length.Length, bool) {
	s, err := wood.Lookup(p.Material)
	if err != nil || p.Sheet {
		return 0, false
	}
	bore, err := screw.Pilot(f.Gauge, s)
	if err != nil {
		return 0, false
	}
	return length.FromMM(bore.Pilot.Value), true
}

// bitText names the drill to take for a pilot, from a set of metric bits or of inch ones.
func bitText(pilot length.Length, metric bool) string {
	bit := screw.Bit(pilot, metric)
	if metric {
		return length.HalfMM.Text(bit)
	}
	return length.SixtyFourth.Text(bit)
}
