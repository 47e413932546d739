package cutting

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rodwright/cut"
	"rodwright/draw"
	"rodwright/draw/lettering"
	"rodwright/length"
)

// bar is the height of a stick on paper, in millimetres. A stick at the scale of its length would be a
// hairline: the drawing says that widths are not to scale.
const bar = 8.0

func (b *bench) stickOf(tag string) (cut.StickStock, bool) {
	i := slices.IndexFunc(b.l.Sticks.Stock, func(s cut.StickStock) bool { return s.Tag == tag })
	if i < 0 {
		return cut.StickStock{}, false
	}
	return b.l.Sticks.Stock[i], true
}

// sticks draws sticks one under the other, as many as there is room for.
func (b *bench) sticks() (out []*draw.Drawing) {
	var longest length.Length
	for _, u := range b.l.Answer.Used {
		s, _ := b.stickOf(u.Stock)
		longest = max(longest, s.Length)
	}
	per := draw.ScaleFor(longest, length.Millimetre, b.st)
	for _, s := range b.stacks { // one scale for all of a material
		per, _ = lettering.Fit(b.st, per, func(per int64) []draw.Mark { return b.stick(s, per) })
	}
	var rows [][]draw.Mark
	for _, s := range b.stacks {
		rows = append(rows, b.stick(s, per))
	}
	rows = append(rows, b.sawNote(longest, per))
	for from := 0; from < len(rows); {
		marks, n := stacked(rows[from:], per, b.st)
		out = append(out, b.stickDrawing(marks, per, len(out)+1, b.stacks[from:min(from+n, len(b.stacks))]))
		from += n
	}
	if len(out) > 1 {
		for i, d := range out {
			d.Title += fmt.Sprintf(", drawing %d of %d", i+1, len(out))
		}
	}
	return out
}

func (b *bench) stickDrawing(marks []draw.Mark, per int64, n int, stacks []stack) *draw.Drawing {
	scale := fmt.Sprintf("lengths to scale 1 : %d, widths not", per)
	d := &draw.Drawing{ID: b.id(n), Per: per, Marks: marks, Title: b.material() + ", how its sticks are cut; " + scale}
	d.Alt = d.Title + "."
	for _, s := range stacks {
		u := b.l.Answer.Used[s.of[0]]
		d.Alt += " " + capital(numbered("stick", s)) + ":"
		for i, p := range u.Parts {
			if i > 0 {
				d.Alt += ","
			}
			d.Alt += " " + b.name(s, p.Tag) + " " + b.text(p.Size[0])
		}
		d.Alt += "."
	}
	return d
}

// sawNote is the last row: what the saw takes.
func (b *bench) sawNote(long length.Length, per int64) []draw.Mark {
	f := newFigure(per)
	f.under(0, b.noteWidth(f, long, 60), capital(b.unit())+"; hatched: waste.", b.sawWords(b.l.Sticks.Kerf, b.l.Sticks.Trim, "end"))
	return f.marks
}

// sawWords tells what the saw takes: 1/8 in for each cut, 1/4 in of each end. Empty when it is nothing.
func (b *bench) sawWords(kerf, trim length.Length, where string) string {
	var says []string
	if kerf > 0 {
		says = append(says, "each saw cut takes "+b.st.Fineness.Finer().Text(kerf))
	}
	if trim > 0 {
		says = append(says, "each "+where+" loses "+b.st.Fineness.Finer().Text(trim))
	}
	if says == nil {
		return ""
	}
	return capital(strings.Join(says, ", and ")) + "."
}

// stacked puts figures one under the other as long as they fit; at least one.
func stacked(rows [][]draw.Mark, per int64, st draw.Style) (out []draw.Mark, n int) {
	gap, room := full(4, per), full(st.Height, per)
	var y length.Length
	for _, r := range rows {
		b := boundsOf(r, per)
		low := y - (b.Max.Y - b.Min.Y)
		if n > 0 && -low > room {
			break
		}
		for _, m := range r {
			out = append(out, moved(m, at(0, y-b.Max.Y)))
		}
		y = low - gap
		n++
	}
	return out, n
}

// stick draws one stick: the parts with their lengths from the left, the saw cut behind each, what is kept and
// what is lost.
func (b *bench) stick(s stack, per int64) []draw.Mark {
	f := newFigure(per)
	u := b.l.Answer.Used[s.of[0]]
	stock, _ := b.stickOf(u.Stock)
	high := f.full(bar)
	f.box(draw.Outline, draw.Waste, rect(0, 0, stock.Length, high))
	for _, p := range u.Parts {
		c := caption{b.name(s, p.Tag), b.number(p.Size[0]), rect(p.At[0], 0, p.Size[0], high)}
		f.box(draw.Outline, draw.Paper, c.in)
		if !f.upright(c) {
			f.rest = append(f.rest, c)
		}
	}
	for k, o := range u.Left {
		c := b.kept(s, k, b.number(o.Size[0]), rect(o.At[0], 0, o.Size[0], high))
		f.box(draw.Outline, draw.Paper, c.in)
		if !f.upright(c) {
			f.rest = append(f.rest, c)
		}
	}
	for _, p := range u.Parts {
		if end := p.At[0] + p.Size[0]; end < stock.Length {
			x := end + min(b.l.Sticks.Kerf, stock.Length-end).Half()
			f.line(draw.Saw, at(x, -f.full(1)), at(x, high+f.full(1)))
		}
	}
	b.slots(f, stock.Length)
	says := capital(numbered("stick", s)) + ": " + b.text(stock.Length)
	if from := b.from(s.of[0]); from != "" {
		says += ", " + from
	} else {
		says += ", bought as " + strings.TrimPrefix(u.Stock, "pipe "+b.l.Material+" ")
	}
	f.over(0, b.noteWidth(f, stock.Length, 60), says)
	return f.marks
}

// upright writes a caption level in a bar, tag over length.
func (f *figure) upright(c caption) bool {
	return f.lines(c.in, false, []draw.Text{{Words: c.tag, Height: strong, Strong: true}, {Words: c.size, Height: words}})
}

// slots writes the captions of parts too short for them in a row of upright words under the bar. Parts of one
// kind and length that follow each other share one where they are many.
func (b *bench) slots(f *figure, long length.Length) {
	gap := f.full(words + 0.9)
	room := int((long + f.full(6)) / gap)
	if len(f.rest) > room {
		f.rest = shared(f.rest)
	}
	if len(f.rest) > room { // no row of words holds them: as lines under the bar, from the left
		var says []string
		for _, c := range f.rest {
			says = append(says, c.tag+" "+c.size)
		}
		f.under(0, long, "narrow pieces from the left: "+and(says))
		return
	}
	var mids []length.Length
	for _, c := range f.rest {
		mids = append(mids, (c.in.Min.X + c.in.Max.X).Half())
	}
	for i, x := range lettering.Within(lettering.Spread(mids, gap), gap, -f.full(3), long+f.full(3)) {
		top, foot := at(mids[i], f.full(0.8)), at(x, -f.full(4))
		f.line(draw.Measure, top, at(mids[i], -f.full(1)))
		f.line(draw.Measure, at(mids[i], -f.full(1)), foot)
		f.put(draw.Text{
			Words: f.rest[i].tag + ", " + f.rest[i].size, Height: words,
			At: at(x+f.full(words*0.35), foot.Y-f.full(0.6)), Anchor: draw.End, Turned: true,
		})
	}
}

// shared gives neighbours of one kind and length one caption: C3.1 to C3.4, each 4 1/8.
func shared(in []caption) (out []caption) {
	for i := 0; i < len(in); {
		j := i + 1
		for j < len(in) && in[j].size == in[i].size && kindOf(in[j].tag) == kindOf(in[i].tag) {
			j++
		}
		c := in[i]
		if j-i > 1 {
			c.in.Max = in[j-1].in.Max
			c.tag, c.size = span(in[i:j]), "each "+c.size
		}
		out = append(out, c)
		i = j
	}
	return out
}

// span names a run of parts: 3 × C3 where they bear one name, else the first to the last.
func span(run []caption) string {
	a, b := run[0].tag, run[len(run)-1].tag
	if a == b {
		return fmt.Sprintf("%d × %s", len(run), a)
	}
	var tags []string
	follow := true
	for i, c := range run {
		tags = append(tags, c.tag)
		follow = follow && (i == 0 || after(run[i-1].tag) == c.tag)
	}
	if !follow {
		return and(tags)
	}
	return a + " to " + b
}

// after is the tag of the next piece of a kind: C3.2 after C3.1.
func after(tag string) string {
	kind, n, _ := strings.Cut(tag, ".")
	if v, err := strconv.Atoi(n); err == nil {
		return fmt.Sprintf("%s.%d", kind, v+1)
	}
	return ""
}

func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return string(s[0]-'a'+'A') + s[1:]
}
