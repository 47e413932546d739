package wire

import (
	"fmt"
	"strconv"
	"strings"

	"rodwright/cut"
	"rodwright/length"
)

// Text writes an answer as a list to cut from: each piece of stock with its parts in order, then the cuts
// by setting, then what it costs and how sure that is. Lengths are printed exactly, in the unit u.
func Text(a *cut.Answer, u length.Unit, k Kind) string {
	return TextWith(a, func(l length.Length) string { return cut.Text(l, u) }, k)
}

// TextWith is [Text] with lengths printed by show, for example to a maker's fineness.
func TextWith(a *cut.Answer, show func(length.Length) string, k Kind) string {
	w := &writer{show: show}
	for i, s := range a.Used {
		w.line("%d  %s: %s%s", i+1, s.Stock, w.parts(s.Parts, k), w.left(s.Left, k))
	}
	for _, g := range a.Panels {
		w.line("panel %s: %s", g.Tag, w.strips(g.Strips))
	}
	if len(a.Cuts) > 0 {
		w.line("cuts, by setting:")
	}
	for _, s := range a.Cuts {
		w.line("%4d  %s at %s on %s%s", s.N, s.Machine, w.num(s.Setting), s.On, makes(s.Makes))
	}
	for _, n := range a.NotPlaced {
		w.line("not placed: %s, %s", n.Tag, n.Why)
	}
	w.line("%s", verdict(a))
	return w.String()
}

type writer struct {
	strings.Builder
	show func(length.Length) string
}

func (w *writer) line(format string, args ...any) { fmt.Fprintf(w, format+"\n", args...) }

func (w *writer) num(l length.Length) string { return w.show(l) }

func (w *writer) size(s [2]length.Length, k Kind) string {
	if k == Stick {
		return w.num(s[0])
	}
	return w.num(s[0]) + " × " + w.num(s[1])
}

func (w *writer) parts(parts []cut.Placed, k Kind) string {
	words := make([]string, len(parts))
	for i, q := range parts {
		words[i] = q.Tag + " " + w.size(q.Size, k)
		if q.Turned {
			words[i] += " turned"
		}
	}
	return strings.Join(words, ", ")
}

func (w *writer) left(left []cut.Offcut, k Kind) string {
	if len(left) == 0 {
		return ""
	}
	words := make([]string, len(left))
	for i, o := range left {
		words[i] = w.size(o.Size, k)
	}
	return "; left " + strings.Join(words, ", ")
}

func (w *writer) strips(strips []cut.Strip) string {
	words := make([]string, len(strips))
	for i, s := range strips {
		words[i] = fmt.Sprintf("%s from %s", w.num(s.Size[1]), s.Board)
		if s.Ring != cut.NoRing {
			words[i] += " rings " + string(s.Ring)
		}
	}
	return strings.Join(words, " | ")
}

func makes(tags []string) string {
	if len(tags) == 0 {
		return ", off"
	}
	return ": " + strings.Join(tags, " ")
}

// verdict says what the layout costs and how much better any other could be.
func verdict(a *cut.Answer) string {
	cost := digits(a.Cost, 7)
	if a.Proven {
		return "cost " + cost + ": nothing better is possible"
	}
	if digits(a.Bound, 7) == cost { // the two differ in rounding only, which is no proof
		return "cost " + cost + "; no layout is better by as much as 0.0001 %"
	}
	return fmt.Sprintf("cost %s; no layout is better than %s, a gap of %s %%", cost, digits(a.Bound, 7), digits(100*a.Gap(), 2))
}

// digits prints v with at most the given number of significant digits.
func digits(v float64, n int) string {
	short, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64)
	return strconv.FormatFloat(short, 'f', -1, 64)
}
