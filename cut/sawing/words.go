package sawing

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/cut"
	"rodwright/length"
)

// Speech is how a list is put into words.
type Speech struct {
	Length func(length.Length) string // with its unit
	Fine   func(length.Length) string // the same for what is small, finer; nil: as Length
	Noun   string                     // stick, board, sheet
	Piece  func(i int) string         // what a piece of stock is called; nil: its noun and its number from 1
}

// Told is one step in words: stick 1; cut C1.1, C1.2; 86 mm is left.
type Told struct {
	N    int // 0 where the ends of sticks are squared
	On   string
	Does string
	Left string // what stays of the piece that was cut, to check by; empty where nothing does
}

// Heads tells what each run of a list is set to: stop at 31 3/4 in, fence at 4 in. Settings that differ and
// would read alike are told finer.
func (s Speech) Heads(l *List) []string {
	texts := make([]string, len(l.Runs))
	for i, r := range l.Runs {
		show := s.Length
		if r.Why != Part {
			show = s.fine
		}
		for _, finer := range []func(length.Length) string{s.fine, exactly(s.Length(length.Inch))} {
			if slices.ContainsFunc(l.Runs, func(o Run) bool {
				return o.Machine == r.Machine && o.Setting != r.Setting && number(show(o.Setting)) == number(show(r.Setting))
			}) {
				show = finer
			}
		}
		texts[i] = s.head(r, show(r.Setting))
	}
	return texts
}

func (s Speech) fine(l length.Length) string {
	if s.Fine != nil {
		return s.Fine(l)
	}
	return s.Length(l)
}

// number is a printed length without the mark of one that is rounded, which nobody sets a stop by.
func number(text string) string { return strings.TrimPrefix(text, "≈ ") }

// exactly prints lengths in full in the unit that a text ends with.
func exactly(text string) func(length.Length) string {
	u := length.MM
	if strings.HasSuffix(text, " in") {
		u = length.In
	}
	return func(l length.Length) string { return cut.Text(l, u) }
}

func (s Speech) head(r Run, setting string) string {
	switch {
	case r.Why == Square && r.Machine == cut.Crosscut:
		return "square the end: " + setting + " off, saw cut and all"
	case r.Why == Square:
		return "true the edge: " + setting + " off, saw cut and all"
	case r.Why == Off:
		return "take " + setting + " off, saw cut and all"
	case r.Machine == cut.Rip:
		return "fence at " + setting
	}
	return "stop at " + setting
}

// Step tells one step of a list.
func (s Speech) Step(l *List, t Step) Told {
	out := Told{N: t.N, On: s.PieceOf(t.Piece), Does: s.does(l, t)}
	if t.Left > 0 {
		out.Left = s.Length(t.Left) + " is left"
	}
	return out
}

// PieceOf is what piece i of the stock used is called.
func (s Speech) PieceOf(i int) string {
	if s.Piece != nil {
		return s.Piece(i)
	}
	return fmt.Sprintf("%s %d", s.Noun, i+1)
}

func (s Speech) does(l *List, t Step) string {
	first := l.Cuts[t.Cuts[0]]
	switch first.Why {
	case Square:
		if first.Machine == cut.Rip {
			return "its edge"
		}
		return "its end"
	case Off:
		return "waste"
	case Keep:
		return "an offcut to keep, " + s.by(first.Kept)
	}
	var whole, parted []string
	pieces := 0
	for _, i := range t.Cuts {
		if c := l.Cuts[i]; c.Whole {
			whole = append(whole, c.Makes...)
		} else {
			pieces++
			parted = append(parted, c.Makes...)
		}
	}
	var says []string
	if len(whole) > 0 {
		says = append(says, s.verb(first.Machine)+" "+s.whole(first.Machine, whole))
	}
	if pieces > 0 {
		says = append(says, s.verb(first.Machine)+" "+several(pieces, lengthOrStrip(first.Machine))+" for "+counted(parted, false))
	}
	return strings.Join(says, "; ")
}

// by prints a size with its unit once: 45 7/8 × 8 in.
func (s Speech) by(size [2]length.Length) string {
	l, w := s.Length(size[0]), s.Length(size[1])
	if at := strings.LastIndexByte(w, ' '); at >= 0 {
		l = strings.TrimSuffix(l, w[at:])
	}
	return l + " × " + number(w)
}

func (s Speech) verb(m cut.Machine) string {
	if m == cut.Rip {
		return "rip"
	}
	return "cut"
}

func lengthOrStrip(m cut.Machine) string {
	if m == cut.Rip {
		return "strip"
	}
	return "length"
}

// whole names what needs no further cut: of boards strips for a panel, else the parts themselves.
func (s Speech) whole(m cut.Machine, tags []string) string {
	if s.Noun != "board" {
		return counted(tags, true)
	}
	return several(len(tags), lengthOrStrip(m)) + " for " + counted(tags, false)
}

func several(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// counted lists tags, each once, in the order in which they come first; with numbers where one comes more
// than once.
func counted(tags []string, numbers bool) string {
	var order []string
	n := map[string]int{}
	for _, t := range tags {
		if n[t]++; n[t] == 1 {
			order = append(order, t)
		}
	}
	words := slices.Clone(order)
	for i, t := range order {
		if numbers && n[t] > 1 {
			words[i] = fmt.Sprintf("%d × %s", n[t], t)
		}
	}
	return strings.Join(words, ", ")
}

// Changes tells how often a stop or fence is set, and how sure it is that this is the fewest.
func (l *List) Changes() string {
	says := several(l.Settings, "setting")
	if l.Walks > 0 {
		says += ", " + several(l.Walks, "walk") + " from saw to saw"
	}
	switch {
	case l.Fewest():
		return says + "; no order of these cuts has fewer"
	case l.Walks > 0:
		return says + fmt.Sprintf("; no order of these cuts has fewer than %d in all", l.AtLeast)
	}
	return says + fmt.Sprintf("; no order of these cuts has fewer than %d", l.AtLeast)
}

// Note tells how a setting is measured.
func (s Speech) Note(kerf length.Length) string {
	from := "the stop or the fence"
	if s.Noun == "stick" {
		from = "the stop"
	}
	if kerf <= 0 {
		return "Settings run from " + from + " to the blade."
	}
	k := s.fine(kerf)
	return "Settings run from " + from + " to the near side of the blade; the saw cut, " + k +
		", comes off what stays. A stop beyond the blade, on the side that stays, is set " + k + " farther."
}
