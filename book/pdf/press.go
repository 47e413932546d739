package pdf

import (
	"fmt"
	"slices"

	"github.com/carlos7ags/folio/content"
	"github.com/carlos7ags/folio/font"
	"github.com/carlos7ags/folio/layout"

	"rodwright/book/pdf/sheet"
	"rodwright/draw"
	"rodwright/draw/typeface"
)

// press turns blocks into the library's, and remembers what their printing needs.
type press struct {
	regular, strong *font.EmbeddedFont
	begun           int         // marks begun in the book
	onSheet         map[int]int // marks begun on each sheet
}

func newPress() (*press, error) {
	regular, err := font.ParseFont(typeface.Regular())
	if err != nil {
		return nil, fmt.Errorf("reading the regular type: %w", err)
	}
	strong, err := font.ParseFont(typeface.SemiBold())
	if err != nil {
		return nil, fmt.Errorf("reading the semi-bold type: %w", err)
	}
	return &press{regular: font.NewEmbeddedFont(regular), strong: font.NewEmbeddedFont(strong), onSheet: map[int]int{}}, nil
}

// block returns a block and what is in it as the library's. Its structure tree has no artifacts: they are
// marked here.
func (p *press) block(b sheet.Block) layout.PlacedBlock {
	aside := b.Tag == "Artifact"
	out := layout.PlacedBlock{
		X: b.X, Y: b.Y, Width: b.Width, Height: b.Height, Tag: b.Tag, AltText: b.Alt,
		HeadingText: b.Outline, BookmarkLevel: b.Level, AnchorName: b.Anchor,
	}
	if aside {
		out.Tag = ""
	}
	if b.Link != "" {
		out.Links = []layout.LinkArea{{DestName: b.Link}}
	}
	out.Draw = func(ctx layout.DrawContext, x, top float64) {
		if out.Tag != "" {
			p.number(ctx, out.Tag, holds(b.Children))
		}
		if aside {
			ctx.Stream.BeginMarkedContent(b.Tag)
			defer ctx.Stream.EndMarkedContent()
		}
		if b.Draw != nil {
			b.Draw(pen{p, ctx.Stream, ctx.Page}, x, top)
		}
	}
	for _, c := range b.Children {
		out.Children = append(out.Children, p.block(c))
	}
	return out
}

// holds says whether one of the blocks, or one in them, has a mark of its own.
func holds(blocks []sheet.Block) bool {
	return slices.ContainsFunc(blocks, func(b sheet.Block) bool { return b.Tag != "" || holds(b.Children) })
}

// number gives the mark that was just begun the number it has in the structure tree. The library numbers
// marks through the book but the tree by sheet (version 0.11), so that a reader that follows the tree would
// find other words. The mark of what only holds other marks ends at once, so that no words are under two.
func (p *press) number(ctx layout.DrawContext, tag string, holder bool) {
	here := p.onSheet[ctx.PageIdx]
	mark := func(n int) string { return fmt.Sprintf("/%s <</MCID %d>> BDC", tag, n) }
	now := mark(here)
	if holder {
		now += fmt.Sprintf("\nEMC\n/%s BMC", tag)
	}
	if now != mark(p.begun) {
		ctx.Stream.ReplaceInBytes(mark(p.begun), now)
	}
	p.begun++
	p.onSheet[ctx.PageIdx] = here + 1
}

// font returns the name of a font on a sheet, entered there when it is new.
func (p *press) font(on *layout.PageResult, strong bool) (string, *font.EmbeddedFont) {
	f := p.regular
	if strong {
		f = p.strong
	}
	for _, e := range on.Fonts {
		if e.Embedded == f {
			return e.Name, f
		}
	}
	name := fmt.Sprintf("F%d", len(on.Fonts)+1)
	on.Fonts = append(on.Fonts, layout.FontEntry{Name: name, Embedded: f})
	return name, f
}

// pen draws on one sheet.
type pen struct {
	*press
	s  *content.Stream
	on *layout.PageResult
}

// Words implements sheet.Pen.
func (p pen) Words(words string, x, y, size float64, strong bool, c sheet.Ink) {
	name, f := p.font(p.on, strong)
	p.s.SetFillColorRGB(c[0], c[1], c[2])
	p.s.BeginText()
	p.s.SetFont(name, size)
	p.s.SetTextMatrix(1, 0, 0, 1, x, y)
	p.s.ShowTextHex(f.EncodeString(words))
	p.s.EndText()
}

// Within implements sheet.Pen.
func (p pen) Within(a, b, c, d, e, f float64, draw func()) {
	p.s.SaveState()
	p.s.ConcatMatrix(a, b, c, d, e, f)
	draw()
	p.s.RestoreState()
}

// Path implements sheet.Pen.
func (p pen) Path(path []draw.Segment, b sheet.Brush) {
	if b.Says != "" {
		p.s.BeginMarkedContentActualText(b.Says)
		defer p.s.EndMarkedContent()
	}
	if b.Stroke != nil {
		p.s.SetStrokeColorRGB(b.Stroke[0], b.Stroke[1], b.Stroke[2])
		p.s.SetLineWidth(b.Width)
		p.s.SetDashPattern(b.Dashes, 0)
	}
	if b.Fill != nil {
		p.s.SetFillColorRGB(b.Fill[0], b.Fill[1], b.Fill[2])
	}
	for _, g := range path {
		switch g.Op {
		case draw.Move:
			p.s.MoveTo(g.P[0].X, g.P[0].Y)
		case draw.LineTo:
			p.s.LineTo(g.P[0].X, g.P[0].Y)
		case draw.CurveTo:
			p.s.CurveTo(g.P[0].X, g.P[0].Y, g.P[1].X, g.P[1].Y, g.P[2].X, g.P[2].Y)
		case draw.Close:
			p.s.ClosePath()
		}
	}
	p.paint(b)
}

// paint ends a path.
func (p pen) paint(b sheet.Brush) {
	switch {
	case b.Fill != nil && b.Stroke != nil:
		p.s.FillEvenOddAndStroke()
	case b.Fill != nil:
		p.s.FillEvenOdd()
	case b.Stroke != nil:
		p.s.Stroke()
	default:
		p.s.EndPath()
	}
}
