package book

import (
	"fmt"
	"strings"

	"rodwright/build"
	"rodwright/draw"
	"rodwright/length"
	"rodwright/part"
)

// Options are how a reader wants the book. The zero value is A4, in the piece's own fineness.
type Options struct {
	Paper    Paper
	Fineness length.Fineness // zero: the piece's own
	Memo     *build.Memo     // of whoever derives often; may be nil
}

// author writes the book of one build for one reader.
type author struct {
	b  *build.Build // derived in the reader's fineness
	w  *wording
	st draw.Style
}

// Of writes the plan of a piece for a stranger who builds it. Where the reader's fineness is not the piece's
// own everything is derived again, so that all words are in the reader's measures. Prices are the shop's and
// are left out. The error is that of a paper that is not known, or of the derivation.
func Of(b *build.Build, o Options) (*Document, error) {
	paper, err := ParsePaper(string(o.Paper))
	if err != nil {
		return nil, err
	}
	if b, err = shown(b, o); err != nil {
		return nil, err
	}
	a := &author{b: b, w: wordingOf(b), st: paper.Style(b.Doc.Fineness)}
	d := &Document{
		Title: capital(b.Doc.Name), Subtitle: a.subtitle(), Language: "en", Paper: paper, Units: unitWords(b.Doc.Fineness),
	}
	for _, chapter := range []func() []Section{
		a.piece, a.before, a.shows, a.needs, a.cutList, a.pipes, a.hardware, a.views, a.markings, a.layouts, a.work, a.time, a.granted,
	} {
		for _, s := range chapter() {
			if len(s.Blocks) > 0 {
				d.Sections = append(d.Sections, s)
			}
		}
	}
	return d, nil
}

// shown returns the build in the reader's fineness.
func shown(b *build.Build, o Options) (*build.Build, error) {
	if o.Fineness == (length.Fineness{}) || o.Fineness == b.Doc.Fineness {
		return b, nil
	}
	again, err := build.Derive(build.Input{Document: b.Doc.Shown(o.Fineness), Shop: b.Shop}, o.Memo)
	if err != nil {
		return nil, fmt.Errorf("deriving the piece in %s: %w", unitWords(o.Fineness), err)
	}
	return again, nil
}

func (a *author) subtitle() string {
	return a.overall() + ", " + a.w.mass(a.b.Parts.Totals.MassKg)
}

// overall is the size of the whole piece.
func (a *author) overall() string {
	lo, hi, f := a.b.Resolved.Min, a.b.Resolved.Max, a.w.to
	return fmt.Sprintf("%s long × %s deep × %s high", f.Text(hi.X-lo.X), f.Text(hi.Y-lo.Y), f.Text(hi.Z))
}

// of returns the parts of a kind, in the order of the list.
func (a *author) of(k part.Kind) (out []part.Part) {
	for _, p := range a.b.Parts.Parts {
		if p.Kind == k {
			out = append(out, p)
		}
	}
	return out
}

// counted adds up the parts of a kind.
func counted(parts []part.Part) (n int) {
	for _, p := range parts {
		n += p.Count
	}
	return n
}

// stock is what a panel is made of, in words: white oak 6/4.
func (a *author) stock(p part.Part) string {
	return strings.TrimSpace(a.w.say(p.Material) + " " + p.Rough)
}

// figures sets drawings one under the other, each with its title and scale.
func figures(ds []*draw.Drawing) (out []Block) {
	for _, d := range ds {
		out = append(out, Figure{Drawing: d, Caption: capital(d.Title) + scale(d)})
	}
	return out
}

func scale(d *draw.Drawing) string {
	if strings.Contains(d.Title, "1 : ") {
		return ""
	}
	return fmt.Sprintf(", 1 : %d", d.Per)
}
