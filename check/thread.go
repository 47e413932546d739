package check

import (
	"fmt"

	"rodwright/figure"
	"rodwright/finding"
	"rodwright/length"
	"rodwright/part"
	"rodwright/trade/pipe"
)

var (
	closeNipple = figure.Formula{
		Text: "least pipe = the close nipple", Source: "ASTM A733 Pipe Nipples, lengths, from memory",
		Range: "two threads need that much pipe",
	}
	machineLeast = figure.Formula{
		Text: "least piece the threading machine holds", Source: "common practice, no source",
		Range: "pieces cut from a stick; a stock nipple is bought threaded",
	}
)

// Thread says of every kind of pipe whether there is enough of it for its two threads, and for the
// machine that cuts them.
func Thread(p *Piece) []finding.Finding {
	var out []finding.Finding
	for i := range p.Parts.Parts {
		if pt := &p.Parts.Parts[i]; pt.Kind == part.Pipe {
			out = append(out, p.thread(pt))
		}
	}
	return out
}

// leastThreaded is the shortest piece that the shop's threading machine holds, else the trade's.
func (p *Piece) leastThreaded() length.Length {
	if l := p.Shop.Pipe.LeastThreaded; l > 0 {
		return l
	}
	return pipe.Threadable
}

func (p *Piece) thread(pt *part.Part) finding.Finding {
	size := *p.Sticks[pt.Indexes[0]].Section.Pipe
	least, why := size.CloseNipple, &closeNipple
	if pt.From == part.FromStick || pt.From == part.FromNothing && pt.Exact > size.CloseNipple {
		least, why = max(least, p.leastThreaded()), &machineLeast
	}
	f := finding.Finding{
		Check: "thread", Parts: tags(pt.Tags...), Place: pt.Name, Sense: finding.AtLeast,
		Figure:  figure.OfLength("length of pipe", pt.Cut, nil),
		Limit:   figure.OfLength("least length", least, why, figure.InText("pipe", size.ID)),
		Assumed: append([]string(nil), pt.Assumed...),
	}
	f.Because = []figure.Figure{pt.CutFigure, f.Limit}
	f.Verdict = finding.Judge(pt.Cut.MM(), least.MM(), finding.AtLeast)
	if pt.From == part.FromNipple {
		f.Verdict = finding.Stands // it is bought as it is; there is nothing to hold or to cut
		if pt.Moves != 0 {
			f.Assumed = append(f.Assumed, fmt.Sprintf("a stock nipple sets the joints %s mm from where they are drawn", figure.Digits(pt.Moves.MM(), 2)))
		}
	}
	if f.Verdict == finding.Fails {
		f.Mend = p.threadMend(pt, size, least)
	}
	if pt.From != part.FromNipple {
		f.Caution = "Threading turns with great force: no gloves or loose sleeves at the machine; gloves for the raw threads after."
	}
	return f
}

// threadMend names the nearest distances that can be made: a stock nipple shorter or longer, or the
// least pipe the machine threads.
func (p *Piece) threadMend(pt *part.Part, size pipe.Size, least length.Length) string {
	if pt.Exact < size.CloseNipple {
		return fmt.Sprintf("set the joints at least %s apart, %s farther than now", p.up(pt.Least), p.up(pt.Least-pt.Between))
	}
	_, shorter, longer := pipe.NearestNipple(size, pt.Exact)
	mend := fmt.Sprintf("move the joints %s farther apart, so that the machine can thread the pipe", p.up(least-pt.Exact))
	bought := p.Shop.Pipe.NippleUpTo == 0 || longer <= p.Shop.Pipe.NippleUpTo
	if longer > 0 && bought && longer < least {
		mend = fmt.Sprintf("move the joints %s farther apart, so that a %s nipple serves", p.nearly(longer-pt.Exact), p.Doc.Fineness.Text(longer))
	}
	if shorter >= size.CloseNipple && pt.Exact-shorter < pt.Between {
		mend += fmt.Sprintf(", or %s closer for one of %s", p.nearly(pt.Exact-shorter), p.Doc.Fineness.Text(shorter))
	}
	return mend
}

// nearly prints a length to the nearest mark, in millimetres where it is less than half of one.
func (p *Piece) nearly(l length.Length) string {
	if p.Doc.Fineness.Round(l) != 0 {
		return p.Doc.Fineness.Text(l)
	}
	return figure.Digits(l.MM(), 2) + " mm"
}
