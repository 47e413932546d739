package wire

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"rodwright/cut"
	"rodwright/cut/explain"
	"rodwright/cut/sawing"
	"rodwright/length"
)

// Telling is how a layout is told to a person.
type Telling struct {
	Show  func(length.Length) string // prints a length, for example to a maker's fineness; nil prints four decimals
	Fine  func(length.Length) string // the same for what is small, finer; nil: as Show
	Piece func(i int) string         // what the pieces of stock used are called; nil numbers them
	Money func(float64) string       // nil where money is not named
}

// Text writes an answer as what a person cuts from: each piece of stock with its parts in order, the cuts by
// setting with a box to tick, where the stock goes, why fewer pieces are not enough, then what it costs and
// how sure that is.
func Text(p cut.Problem, a *cut.Answer, t Telling) string {
	if t.Show == nil {
		t.Show = rounded(p.Unit())
	}
	k := kindOf(p)
	w := &writer{show: t.Show, saw: sawing.Speech{Length: t.Show, Fine: t.Fine, Noun: explain.NounOf(p), Piece: t.Piece}}
	for i, s := range a.Used {
		w.line("%s: %s%s", w.piece(i, s.Stock), w.parts(s.Parts, k), w.left(s.Left, k))
	}
	if len(a.Bought) > 0 {
		w.line("bought: %s", strings.Join(together(a.Bought), ", "))
	}
	for _, g := range a.Panels {
		w.line("panel %s: %s", g.Tag, w.strips(g.Strips, a.Used))
	}
	w.cuts(p, a)
	w.notPlaced(a.NotPlaced)
	s := SpeechOf(p, t)
	if says := s.Shares(p, a); says != "" {
		w.line("%s", says)
	}
	if says := s.Why(explain.WhyNotFewer(p, a), a.Of); says != "" {
		w.line("why not fewer %ss? %s", s.Noun, says)
	}
	if says := s.Cost(p, a); says != "" {
		w.line("%s", says)
	}
	w.line("%s", verdict(a, t.Money))
	return w.String()
}

// rounded prints a length in full, or to four decimals where it has more, which nobody sets a stop by.
func rounded(u length.Unit) func(length.Length) string {
	return func(l length.Length) string {
		full := cut.Text(l, u)
		value, unit, _ := strings.Cut(full, " ")
		if _, decimals, _ := strings.Cut(value, "."); len(decimals) <= 4 {
			return full
		}
		v, err := strconv.ParseFloat(value, 64)
		if err != nil {
			return full
		}
		return "≈ " + strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64) + " " + unit
	}
}

// hundredths prints money to hundredths.
func hundredths(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) }

func kindOf(p cut.Problem) Kind {
	switch {
	case p.Sticks != nil:
		return Stick
	case p.Boards != nil:
		return Panel
	}
	return Sheet
}

// SpeechOf is how explanations of a problem are put into words.
func SpeechOf(p cut.Problem, t Telling) explain.Speech {
	return explain.Speech{Noun: explain.NounOf(p), Length: t.Show, Metric: p.Unit().Metric(), Money: t.Money}
}

// cuts writes the list that a person follows at the saw.
func (w *writer) cuts(p cut.Problem, a *cut.Answer) {
	l := sawing.Of(p, a.Used)
	if len(l.Runs) == 0 {
		return
	}
	s := w.saw
	heads := s.Heads(l)
	w.line("cuts, by setting: %s", l.Changes())
	for i, r := range l.Runs {
		if r.Steps[0].N == 0 {
			w.line("  every %s first: %s", s.Noun, heads[i])
			continue
		}
		w.line("  %s", heads[i])
		for _, step := range r.Steps {
			told := s.Step(l, step)
			if told.Left != "" {
				told.Does += "; " + told.Left
			}
			w.line("    [ ] %3d  %s: %s", told.N, told.On, told.Does)
		}
	}
	w.line("  %s", s.Note(p.Kerf()))
}

// notPlaced tells once what found no place for one reason.
func (w *writer) notPlaced(list []cut.NotPlaced) {
	for len(list) > 0 {
		n := 1
		for n < len(list) && list[n] == list[0] {
			n++
		}
		what := list[0].Tag
		if n > 1 {
			what = fmt.Sprintf("%d × %s", n, what)
		}
		w.line("not placed: %s, %s", what, list[0].Why)
		list = list[n:]
	}
}

type writer struct {
	strings.Builder
	show func(length.Length) string
	saw  sawing.Speech // calls the pieces of stock what the cuts call them
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
	return strings.Join(together(words), ", ")
}

// together says once what follows itself: 3 × leg 14.375 in.
func together(words []string) (out []string) {
	for len(words) > 0 {
		n := 1
		for n < len(words) && words[n] == words[0] {
			n++
		}
		if n > 1 {
			out = append(out, fmt.Sprintf("%d × %s", n, words[0]))
		} else {
			out = append(out, words[0])
		}
		words = words[n:]
	}
	return out
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

// piece heads the line of piece i of the stock used: board 2 (B7).
func (w *writer) piece(i int, stock string) string {
	name := w.saw.PieceOf(i)
	if strings.HasSuffix(name, stock) { // board 2, marked R7
		return name
	}
	return name + " (" + stock + ")"
}

func (w *writer) strips(strips []cut.Strip, used []cut.Used) string {
	words := make([]string, len(strips))
	for i, s := range strips {
		from := s.Board
		if at := slices.IndexFunc(used, func(u cut.Used) bool { return u.Stock == s.Board }); at >= 0 {
			from = w.saw.PieceOf(at)
		}
		words[i] = fmt.Sprintf("%s from %s", w.num(s.Size[1]), from)
		if s.Ring != cut.NoRing {
			words[i] += " rings " + string(s.Ring)
		}
	}
	return strings.Join(together(words), " | ")
}

// verdict says what the layout costs and how much better any other could be.
func verdict(a *cut.Answer, money func(float64) string) string {
	if money == nil {
		money = func(v float64) string { return digits(v, 7) }
	}
	cost := "cost " + money(a.Cost)
	round := math.Floor // no more is promised than is proven
	if a.Bound > a.Cost {
		round = math.Ceil // what is cut for its value can be worth no more
	}
	least := money(round(100*a.Bound) / 100)
	switch {
	case a.Proven:
		return cost + ": nothing better is possible" + of(a)
	case digits(a.Bound, 7) == digits(a.Cost, 7): // the two differ in rounding only, which is no proof
		return cost + "; no layout is better by as much as 0.0001 %" + of(a)
	case "cost "+least == cost:
		return cost + "; no layout is better by as much as 0.02" + of(a)
	}
	return fmt.Sprintf("%s; no layout is better than %s, a gap of %s %%", cost, least, digits(100*a.Gap(), 2)) + of(a)
}

// of says which layouts the bound is true of, where it is not true of every one.
func of(a *cut.Answer) string {
	if words := a.Of.Words(); words != "" {
		return ", " + words
	}
	return ""
}

// digits prints v with at most the given number of significant digits.
func digits(v float64, n int) string {
	short, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64)
	return strconv.FormatFloat(short, 'f', -1, 64)
}
