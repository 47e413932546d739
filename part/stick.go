package part

import (
	"slices"
	"strings"

	"rodwright/figure"
	"rodwright/length"
	"rodwright/piece"
	"rodwright/shop"
	"rodwright/trade/pipe"
)

// NippleReach is how far a stock nipple may miss the exact length and still be taken for it, 1/32 in: less
// than half a pitch of every pipe thread from 8 to 14 threads per inch (0.036 in at the finest), which is
// what a joint is set by anyway when it is wrenched up. Common practice, no source.
const NippleReach = length.Inch / 32

// noPipe tells the exact length where no pipe can be cut, so that the figure has its reason still.
var noPipe = figure.Formula{
	Text:   "cut = C − (A1 − e) − (A2 − e)",
	Source: "pipe fitters' take-out, common practice; fittings and make-up by their tables",
	Range:  "nothing is left between the two joints",
}

// pipeCut works out one pipe between two joints. What can't be made is told by an empty From and is no
// error.
func pipeCut(between length.Length, a, b pipe.Fitting, w shop.PipeWork) Part {
	p := Part{
		Kind: Pipe, Material: a.Size.ID, Between: between, Ends: [2]pipe.Kind{a.Kind, b.Kind},
		TakeOuts: [2]length.Length{a.TakeOut(), b.TakeOut()},
	}
	p.Exact = between - p.TakeOuts[0] - p.TakeOuts[1]
	p.Least = pipe.LeastBetween(a, b)
	p.Cut, p.From = source(a.Size, p.Exact, w)
	p.fit(a, b)
	if p.From == FromNipple && p.Exact >= leastSawn(a.Size, w) {
		sawn := p
		sawn.Cut = p.Exact
		sawn.fit(a, b)
		p.Sawn = &Sawn{sawn.Cut, sawn.Loosest, sawn.Tightest, sawn.CutFigure, sawn.MassKg}
	}
	return p
}

// fit works out what follows from a pipe's length.
func (p *Part) fit(a, b pipe.Fitting) {
	p.Moves = p.Cut - p.Exact
	cut, err := pipe.CutLength(p.Between+p.Moves, a, b)
	if err != nil {
		p.CutFigure = figure.OfLength("cut length", p.Cut, &noPipe, figure.InLength("C", p.Between),
			figure.InLength("A1, "+a.Kind.Words(), a.CentreToEnd), figure.InLength("A2, "+b.Kind.Words(), b.CentreToEnd),
			figure.InLength("e", a.Size.Engagement))
		return
	}
	p.Loosest, p.Tightest, p.CutFigure = cut.Loosest, cut.Tightest, cut.Figure
	p.MassKg = a.Size.Mass(p.Cut)
}

// leastSawn is the shortest pipe that is cut from a stick and threaded.
func leastSawn(s pipe.Size, w shop.PipeWork) length.Length {
	least := w.LeastThreaded
	if least == 0 {
		least = pipe.Threadable
	}
	return max(least, s.CloseNipple)
}

// source decides what a pipe of the exact length is made from, and its length then.
//
//  1. A stock nipple that misses by at most [NippleReach], if the shop buys nipples of that length. Where it could be
//     cut as well, that is only the rule of thumb: the layouts decide, and [Settle] takes over what they chose.
//  2. Else a stick, if the threading machine holds the piece.
//  3. Else nothing: its ends must move.
func source(s pipe.Size, exact length.Length, w shop.PipeWork) (cut length.Length, from string) {
	stock, _, _ := pipe.NearestNipple(s, exact)
	longest := w.NippleUpTo
	if longest == 0 {
		longest = length.Max
	}
	if stock > 0 && stock <= longest && (stock-exact).Abs() <= NippleReach {
		return stock, FromNipple
	}
	if exact >= leastSawn(s, w) {
		return exact, FromStick
	}
	return exact, FromNothing
}

// alike is what makes two pipes one part: the same group, size, length and ends, either way round.
type alike struct {
	group          string
	role           piece.Role
	size           string
	exact, between length.Length
	ends           [2]pipe.Kind
}

// sticks takes off every pipe. Pipes that are alike are one part, in the order of the first of each.
func (t *takeOff) sticks() error {
	t.list.StickTags = make([]string, len(t.r.Sticks))
	at := map[alike]int{}
	var parts []Part
	for i, s := range t.r.Sticks {
		p, err := t.stick(s)
		if err != nil {
			return err
		}
		ends := p.Ends
		slices.Sort(ends[:])
		key := alike{s.Group, s.Role, p.Material, p.Exact, p.Between, ends}
		n, seen := at[key]
		if !seen {
			n = len(parts)
			at[key] = n
			p.Name, p.At = groupName(s), t.r.Nodes[s.A].At
			parts = append(parts, p)
		}
		parts[n].Count++
		parts[n].Indexes = append(parts[n].Indexes, i)
	}
	number(parts)
	t.add("C", parts, t.list.StickTags)
	return nil
}

// stick works out one pipe with the fittings at its ends.
func (t *takeOff) stick(s piece.Stick) (Part, error) {
	if s.Section.Pipe == nil {
		return Part{}, t.wrong(s.Pos, s.Name+" is no pipe", "give it a size of pipe; square sticks are not taken off")
	}
	var ends [2]pipe.Fitting
	for i, n := range []int{s.A, s.B} {
		f, err := t.fitting(n, *s.Section.Pipe)
		if err != nil {
			return Part{}, err
		}
		ends[i] = f
	}
	p := pipeCut(s.Between, ends[0], ends[1], t.s.Pipe)
	p.Assumed = words(ends[0].Assumed, ends[1].Assumed, s.Section.Pipe.Assumed)
	return p, nil
}

// fitting returns the fitting at a node, as the shop has it, for a pipe of the given size.
func (t *takeOff) fitting(node int, size pipe.Size) (pipe.Fitting, error) {
	n := t.r.Nodes[node]
	if f, ok := t.fits[fit{size.ID, n.Kind}]; ok {
		return f, nil
	}
	f, err := t.s.Fitting(size, n.Kind)
	if err != nil {
		return f, t.wrong(n.Pos, n.Place+": "+err.Error(), "choose another size of pipe, or measure the fitting and enter it in the shop")
	}
	t.fits[fit{size.ID, n.Kind}] = f
	return f, nil
}

// groupName names a pipe by its group and role: side rail, front post.
func groupName(s piece.Stick) string {
	if s.Role == piece.FreeRole || strings.HasSuffix(s.Group, string(s.Role)) || strings.HasSuffix(s.Group, string(s.Role)+"s") {
		return s.Group
	}
	return s.Group + " " + string(s.Role)
}

// number tells parts of one name apart: front post 1, front post 2, in the order of the list.
func number(parts []Part) {
	total, seen := map[string]int{}, map[string]int{}
	for _, p := range parts {
		total[p.Name]++
	}
	for i, p := range parts {
		if total[p.Name] > 1 {
			seen[p.Name]++
			parts[i].Name = p.Name + " " + itoa(seen[p.Name])
		}
	}
}
