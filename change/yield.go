package change

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"rodwright/journal"
	"rodwright/length"
	"rodwright/part"
	"rodwright/trade/lumber"
)

// Yield is what a board, stick or sheet that was bought still gives.
type Yield struct {
	Stock string      `json:"stock"`
	Left  MM          `json:"left"`  // of its length, as told
	Start MM          `json:"start"` // where the first cut is to begin
	Parts []YieldPart `json:"parts"`
}

// YieldPart is how many parts of one kind the stock still gives by itself.
type YieldPart struct {
	Tag    string `json:"tag"`
	Name   string `json:"name"`
	Long   MM     `json:"long"`   // each, along the stock
	Wanted int    `json:"wanted"` // still to be made
	Count  int    `json:"count"`  // that come out, one after the other
	Short  MM     `json:"short"`  // by how much one more is too long
}

// Yields says what a board or stick still gives after the cuts that were told, if its first cut begins at start: of each
// kind of part still to be made from such stock, how many come out one after the other, before the next cut is made.
func Yields(now *Truth, stock string, start length.Length) (*Yield, error) {
	i := slices.IndexFunc(now.Record.Goods, func(g journal.Piece) bool { return g.Tag == stock && g.Tag != "" })
	if i < 0 {
		return nil, &FactError{fmt.Sprintf("no stock with the tag %q was bought for this piece", stock), "its tags are " + strings.Join(tagsOf(now.Record), ", ")}
	}
	g := now.Record.Goods[i]
	if start < 0 || start > length.Length(g.Left) {
		return nil, &FactError{fmt.Sprintf("the first cut would begin outside what is left of %s", stock), "it lies between 0 and " + now.Build.Doc.Fineness.Text(length.Length(g.Left))}
	}
	y := &Yield{Stock: stock, Left: mm(length.Length(g.Left)), Start: mm(start), Parts: []YieldPart{}}
	for j := range now.Build.Parts.Parts {
		p := now.Build.Parts.Parts[j].Left(journal.BlankCut)
		if part, ok := yields(now, g, &p, start); ok {
			y.Parts = append(y.Parts, part)
		}
	}
	return y, nil
}

func tagsOf(rec *journal.Record) (out []string) {
	for _, g := range rec.Goods {
		if g.Tag != "" {
			out = append(out, g.Tag)
		}
	}
	return out
}

// yields says how many parts of one kind a piece of stock gives, where they are made of such stock.
func yields(now *Truth, g journal.Piece, p *part.Part, start length.Length) (YieldPart, bool) {
	s := now.Log.Shop
	long, kerf := length.Length(0), s.Panel.Kerf
	switch {
	case p.Count == 0 || p.Material != g.Material:
		return YieldPart{}, false
	case g.Kind == journal.BoardGoods && p.Kind == part.Panel && !p.Sheet && (g.Quarters == "" || p.Rough == g.Quarters):
		long = p.Blank[0]
	case g.Kind == journal.SheetGoods && p.Kind == part.Panel && p.Sheet:
		long = p.Blank[0]
	case g.Kind == journal.StickGoods && p.Kind == part.Pipe && p.From == part.FromStick:
		long, kerf = p.Cut, s.Pipe.Kerf
	default:
		return YieldPart{}, false
	}
	n, err := lumber.PiecesFrom(length.Length(g.Left), long, kerf, start)
	if err != nil {
		return YieldPart{}, false
	}
	return YieldPart{p.Tag, p.Name, mm(long), p.Count, n.Count, mm(n.Short)}, true
}

// Asked makes an order of edits that the client asks for: what it costs and when the piece is ready then, told before
// the answer. From is the day on which it is asked, 2027-01-15, from which the promise counts; empty leaves the day open. Its number
// is settled when it is written.
func Asked(now *Truth, words string, edits []journal.Put, from string) (journal.Order, *Weighed, error) {
	o := journal.Order{Words: words, Edits: edits}
	w, err := Weigh(now, edits...)
	if err != nil {
		return o, nil, err
	}
	o.Cents = w.Cost.Total
	if from == "" {
		return o, w, nil
	}
	day, err := time.Parse(time.DateOnly, from)
	if err != nil {
		return o, nil, &FactError{fmt.Sprintf("%q is no day", from), "write it as 2027-01-15"}
	}
	o.Ready = day.AddDate(0, 0, w.Promise.To).Format(time.DateOnly)
	return o, w, nil
}
