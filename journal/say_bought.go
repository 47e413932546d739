package journal

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"rodwright/length"
)

const wantBought = "bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1, bought stick 3/4 21 ft as S1, bought sheet birch-plywood-18 96 × 48 in as B1 or bought 8 × tee 1"

func sayBought(p phrase, unit length.Unit) (Happened, error) {
	g := &Goods{}
	h := Happened{What: Bought, Goods: g}
	if len(p.words) == 0 {
		return h, p.wrong(0, "what was bought is missing", wantBought)
	}
	stock := slices.Contains([]string{BoardGoods, StickGoods, SheetGoods}, p.words[0].text)
	if !stock {
		p = p.parted()
	}
	var err error
	if p, g.Cents, err = sayPrice(p); err != nil {
		return h, err
	}
	if stock {
		g.Kind = p.words[0].text
		return h, g.sayStock(p.from(1), unit)
	}
	g.Kind = ItemGoods
	return h, g.sayItem(p)
}

// sayItem reads a number of things sold by the piece.
func (g *Goods) sayItem(p phrase) error {
	count, tail, why := length.ScanNumber(p.String())
	if why != "" {
		return p.wrong(0, "it is neither a board, a stick or a sheet nor a number of an item", wantBought)
	}
	rest := strings.TrimLeft(tail, " ")
	item, crossed := strings.CutPrefix(rest, "×")
	if !crossed {
		item, crossed = strings.CutPrefix(rest, "x ")
	}
	if g.Item = strings.TrimSpace(item); !crossed || g.Item == "" {
		return p.wrong(min(1, len(p.words)), "the number is not followed by × and the item", "bought 8 × tee 1")
	}
	if thousands := new(big.Rat).Mul(count, big.NewRat(1000, 1)); !thousands.IsInt() {
		return p.wrong(0, "the number is too fine", "it with at most three decimals")
	}
	g.Count, _ = count.Float64()
	return nil
}

// sayStock reads a board, a stick or a sheet: what it is, its size, its tag, and the rough edges of a board.
func (g *Goods) sayStock(p phrase, unit length.Unit) error {
	as := p.index("as")
	if as < 0 || as+1 >= len(p.words) {
		return p.wrong(len(p.words), "the tag is missing", "what is written on it behind its size, as P1")
	}
	g.Tag = p.words[as+1].text
	if err := g.sayRough(p.from(as + 2)); err != nil {
		return err
	}
	p = p.upto(as)
	if g.Kind == StickGoods {
		return g.sayStick(p, unit)
	}
	if len(p.words) < 2 {
		return p.wrong(len(p.words), "what it is of or its size is missing", wantBought)
	}
	g.Material, p = p.words[0].text, p.from(1)
	if g.Kind == BoardGoods && isQuarters(p) {
		g.Quarters, p = p.words[0].text, p.from(1)
	}
	size, n, err := p.measures(unit)
	if least := map[string]int{BoardGoods: 3, SheetGoods: 2}[g.Kind]; err == nil && n < least {
		err = p.wrong(len(p.words), fmt.Sprintf("a %s has %d measures at least", g.Kind, least), "length × width, and × thickness of a board")
	}
	g.Size = size
	return err
}

// sayStick reads the size of a pipe, which may be of two words as 1 1/4, and the length of the stick.
func (g *Goods) sayStick(p phrase, unit length.Unit) error {
	at, ok := p.longest(1, unit)
	if !ok {
		return p.wrong(min(1, len(p.words)), "the length of the stick is missing", "bought stick 3/4 21 ft as S1")
	}
	var err error
	g.Material = p.upto(at).String()
	g.Size[0], err = p.from(at).measure(unit)
	return err
}

// quarters is the trade's name of how thick a board was sawn.
var quarters = regexp.MustCompile(`^[0-9]{1,2}/4$`)

// isQuarters reports whether the first word names quarters and is no measure itself: another measure begins behind
// it.
func isQuarters(p phrase) bool {
	if len(p.words) < 2 || !quarters.MatchString(p.words[0].text) {
		return false
	}
	_, _, why := length.ScanNumber(p.words[1].text)
	return why == ""
}

// sayRough reads how many edges of a board are rough.
func (g *Goods) sayRough(p phrase) error {
	if len(p.words) == 0 {
		return nil
	}
	said := p.String()
	for n, text := range []string{"0 rough edges", "1 rough edge", "2 rough edges"} {
		if said == text && g.Kind == BoardGoods {
			g.Rough = n
			return nil
		}
	}
	return p.wrong(0, fmt.Sprintf("%q is not understood behind the tag", said), "1 rough edge or 2 rough edges of a board, and for and the price")
}

// price is an amount with two decimals or none.
var price = regexp.MustCompile(`^[0-9]{1,9}(\.[0-9]{2})?$`)

// sayPrice reads what was paid, at the end of the phrase, and returns what is before it. A currency may stand behind
// the amount; a unit of length there makes it part of an item's name.
func sayPrice(p phrase) (phrase, *int64, error) {
	at := p.lastIndex("for")
	if at < 0 {
		return p, nil, nil
	}
	paid := p.from(at + 1).words
	if len(paid) == 2 {
		if _, ok := length.UnitOf(paid[1].text); ok {
			return p, nil, nil
		}
	}
	if len(paid) == 0 || len(paid) > 2 || strings.Trim(paid[0].text, "0123456789.,") != "" {
		return p, nil, nil
	}
	if !price.MatchString(paid[0].text) {
		return p, nil, p.wrong(at+1, fmt.Sprintf("%q is no price", paid[0].text), "an amount with two decimals or none, as 38.50")
	}
	whole, hundredths, _ := strings.Cut(paid[0].text, ".")
	cents, err := strconv.ParseInt(whole+(hundredths + "00")[:2], 10, 64)
	if err != nil || cents > 100*mostCount {
		return p, nil, p.wrong(at+1, "the price is too high", fmt.Sprintf("at most %d", mostCount))
	}
	return p.upto(at), &cents, nil
}
