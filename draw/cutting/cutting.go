// Package cutting draws how stock is cut: sticks as bars, boards with their strips, sheets with what is placed
// on them, and panels as their strips are glued side by side.
//
// A picture stands for one piece of stock, or for several that are cut alike. What becomes a part is white and
// bears the part's tag, what is kept says so, everything else is hatched: what is drawn adds up to the stock.
// Ringed numbers are the steps of the layout's order of cuts. Start with Of and GlueUp.
package cutting

import (
	"fmt"
	"slices"
	"strings"

	"rodwright/cut"
	"rodwright/cut/sawing"
	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/layout"
	"rodwright/length"
)

// Of draws every piece of stock that a layout opens; those cut alike once.
func Of(l layout.Layout, st draw.Style) []*draw.Drawing {
	if l.Answer == nil || len(l.Answer.Used) == 0 {
		return nil
	}
	b := &bench{l: l, st: st, names: namesOf(l)}
	switch {
	case l.Kind == layout.OfSticks && l.Sticks != nil:
		b.stacks = b.alike()
		return b.sticks()
	case l.Kind == layout.OfBoards && l.Boards != nil:
		b.stacks = b.alike()
		return b.boards()
	case l.Kind == layout.OfSheets && l.Sheets != nil:
		b.stacks = b.alike()
		return b.sheets()
	}
	return nil
}

// bench draws the layout of one material.
type bench struct {
	l      layout.Layout
	st     draw.Style
	names  map[string]string // of parts, by physical tag
	stacks []stack
	cuts   *sawing.List // made when it is first asked for
}

// stack is pieces of stock that are cut alike: their places in Answer.Used, in order.
type stack struct{ of []int }

// kindOf is a physical tag without the number of the piece: C1 of C1.2.
func kindOf(tag string) string {
	kind, _, _ := strings.Cut(tag, ".")
	return kind
}

// namesOf is what parts are called on the drawing: by their kind alone where there is one of the kind.
func namesOf(l layout.Layout) map[string]string {
	tags := l.Tags()
	kinds := map[string]int{}
	for _, t := range tags {
		kinds[kindOf(t)]++
	}
	names := map[string]string{}
	for _, t := range tags {
		if names[t] = t; kinds[kindOf(t)] == 1 {
			names[t] = kindOf(t)
		}
	}
	return names
}

// alike gathers pieces of stock that are the same and are cut the same: equal kinds of parts at equal places.
func (b *bench) alike() (out []stack) {
	var keys []string
	for i, u := range b.l.Answer.Used {
		k := b.key(i, u)
		n := slices.Index(keys, k)
		if n < 0 {
			keys, out = append(keys, k), append(out, stack{})
			n = len(out) - 1
		}
		out[n].of = append(out[n].of, i)
	}
	return out
}

func (b *bench) key(i int, u cut.Used) string {
	var k strings.Builder
	fmt.Fprint(&k, b.stockKey(i, u), u.Left)
	for _, p := range u.Parts {
		fmt.Fprint(&k, "|", kindOf(p.Tag), p.At, p.Size, p.Turned)
	}
	return k.String()
}

// stockKey is the same for pieces of stock that nobody can tell apart.
func (b *bench) stockKey(i int, u cut.Used) string {
	if b.l.Kind != layout.OfBoards || i < len(b.l.Opened) && b.l.Opened[i].FromRack {
		return u.Stock
	}
	c, ok := b.board(u.Stock)
	if !ok || len(c.Defects) > 0 || c.Ring != cut.NoRing || c.Mate != "" {
		return u.Stock
	}
	return fmt.Sprint(c.Length, c.Width, c.Thickness, c.RoughEdges)
}

// Slug writes words as the part of an id: of a–z, 0–9 and -.
func Slug(words string) string {
	var out strings.Builder
	for _, r := range strings.ToLower(words) {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			out.WriteRune(r)
		} else if s := out.String(); s != "" && !strings.HasSuffix(s, "-") {
			out.WriteByte('-')
		}
	}
	return strings.Trim(out.String(), "-")
}

// material is the layout's material in words: white oak 5/4, pipe 3/4.
func (b *bench) material() string {
	m := strings.ReplaceAll(b.l.Material, "-", " ")
	if b.l.Kind == layout.OfSticks {
		return "pipe " + m
	}
	return m
}

// numbered names pieces of stock by their numbers: board 1; boards 1 to 3 and 5, 4 alike.
func numbered(word string, s stack) string {
	if len(s.of) == 1 {
		return fmt.Sprintf("%s %d", word, s.of[0]+1)
	}
	var n []string
	for i := 0; i < len(s.of); {
		j := i + 1
		for j < len(s.of) && s.of[j] == s.of[j-1]+1 {
			j++
		}
		if j-i > 2 {
			n = append(n, fmt.Sprintf("%d to %d", s.of[i]+1, s.of[j-1]+1))
		} else {
			for _, k := range s.of[i:j] {
				n = append(n, fmt.Sprint(k+1))
			}
		}
		i = j
	}
	return fmt.Sprintf("%ss %s, %d alike", word, and(n), len(s.of))
}

// and lists words: 1, 3 and 4.
func and(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// from tells where a piece of stock comes from, when it is not bought.
func (b *bench) from(i int) string {
	if i < len(b.l.Opened) && b.l.Opened[i].FromRack {
		return "from the rack, marked " + b.l.Opened[i].Tag
	}
	return ""
}

// name is what a part is called where the stock of a stack is drawn: by its kind when several are alike.
func (b *bench) name(s stack, tag string) string {
	if len(s.of) > 1 {
		return kindOf(tag)
	}
	if n, ok := b.names[tag]; ok {
		return n
	}
	return tag
}

func (b *bench) number(l length.Length) string { return b.st.Fineness.Number(l) }
func (b *bench) text(l length.Length) string   { return b.st.Fineness.Text(l) }

// kept is the caption of offcut k of the pieces of a stack: that it is kept, and what is written on it.
func (b *bench) kept(s stack, k int, size string, in draw.Rect) caption {
	var marks []string
	for _, i := range s.of {
		marks = append(marks, b.l.OffcutMark(i, k))
	}
	if len(marks) > 3 {
		marks = []string{marks[0] + " to " + marks[len(marks)-1]}
	}
	return caption{"kept, " + and(marks), size, in}
}

// by writes a size: 31 × 4 3/8.
func (b *bench) by(size [2]length.Length) string {
	return b.number(size[0]) + " × " + b.number(size[1])
}

func (b *bench) id(n int) string { return fmt.Sprintf("cut-%s-%d", Slug(b.l.Material), n) }

// noteWidth is how wide notes of a figure run: as wide as its stock, or so many millimetres where that is more and the sheet
// has them.
func (b *bench) noteWidth(f *figure, stock length.Length, mm float64) length.Length {
	wide := f.full(mm)
	if b.st.Width > 0 {
		wide = min(wide, f.full(b.st.Width)+boundsOf(f.marks, f.per).Min.X)
	}
	return max(stock, wide)
}

// unit says in which unit a drawing's measures are.
func (b *bench) unit() string {
	if b.st.Fineness.Unit.Metric() {
		return "measures in millimetres"
	}
	return "measures in inches"
}

func boundsOf(marks []draw.Mark, per int64) draw.Rect {
	return (&draw.Drawing{Per: per, Marks: marks}).Bounds()
}

// Sizes on paper in millimetres.
const (
	words  = 2.8        // height of sizes and notes
	small  = draw.Small // of captions in narrow strips, of defects and steps
	strong = 3.2        // height of tags
	title  = 3.2
	ring   = 1.9 // radius of the ring round a step's number
)

func at(x, y length.Length) draw.Point { return draw.Point{X: x, Y: y} }

func rect(x, y, l, w length.Length) draw.Rect { return draw.Rect{Min: at(x, y), Max: at(x+l, y+w)} }

func placed(p cut.Placed) draw.Rect { return rect(p.At[0], p.At[1], p.Size[0], p.Size[1]) }

func full(mm float64, per int64) length.Length { return lettering.Full(mm, per) }
