package journal

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rodwright/length"
)

// Words tells the fact in a sentence, as Say reads it, with lengths rounded to the fineness and the currency behind a
// price. What Say can't tell is left out, but for a note, which stands at the end in brackets. Say gives a fact that
// it made back from these words where its lengths are multiples of the fineness; with the zero Fineness, in
// millimetres without rounding, always.
func (h Happened) Words(f length.Fineness, currency string) string {
	said := string(h.What)
	switch {
	case h.What == Made:
		said = h.madeWords(f)
	case h.What == Wrong:
		return h.wrongWords(f)
	case h.What == Spoiled:
		return fmt.Sprintf("spoiled %s %s", h.tag(), h.Why)
	case h.What == Meant && h.Place == "":
		said = fmt.Sprintf("meant %s for the rack", h.tag())
	case h.What == Meant:
		said = fmt.Sprintf("meant %s for %s", h.tag(), h.Place)
	case h.What == Measured && h.Distance != nil:
		said = "measured " + h.Distance.words(f)
	case h.What == Pushed && h.Push != nil:
		said = "pushed " + h.Push.words(f)
	case h.What == Bought && h.Goods != nil:
		said = "bought " + h.Goods.words(f, currency)
	}
	if h.Why != "" {
		said += " (" + h.Why + ")"
	}
	return said
}

// tag is what the part is called by.
func (h Happened) tag() string {
	if h.Part == "" {
		return "part"
	}
	return h.Part
}

func (h Happened) madeWords(f length.Fineness) string {
	said := []string{"made", h.tag(), saidWork(h.Work)}
	if h.Shape != nil && h.Shape.Measured { // else it is as drawn, which nobody said
		said = append(said, sizeWords(h.Shape.Size, f))
	}
	if h.From != "" {
		said = append(said, "from", h.From)
	}
	if h.From != "" && h.Took > 0 {
		said = append(said, "taking", f.Text(length.Length(h.Took)))
	}
	if spent := timeWords(h.HandsH); spent != "" {
		said = append(said, "in", spent)
	}
	if h.Again {
		said = append(said, "again")
	}
	return strings.Join(said, " ")
}

func (h Happened) wrongWords(f length.Fineness) string {
	if h.From != "" {
		return fmt.Sprintf("wrong %s short %s: %s", h.From, f.Text(length.Length(h.Took)), h.Why)
	}
	said := "wrong " + h.tag()
	if h.Shape != nil && h.Shape.Measured {
		said += " " + sizeWords(h.Shape.Size, f)
	}
	return said + ": " + h.Why
}

// sizeWords tells the measures up to the first that is not there: 42 × 18 1/4 in.
func sizeWords(size [3]MM, f length.Fineness) string {
	var said []string
	for _, v := range size {
		if v == 0 {
			break
		}
		said = append(said, f.Number(length.Length(v)))
	}
	_, unit, _ := strings.Cut(f.Text(0), " ")
	return strings.Join(said, " × ") + " " + unit
}

// timeWords tells hours to the second: in hours where they have no more than two decimals, else in minutes. It is
// empty for no time.
func timeWords(hours float64) string {
	seconds := math.RoundToEven(hours * 3600)
	switch {
	case !(seconds > 0):
		return ""
	case seconds >= 3600 && math.Mod(seconds, 36) == 0:
		return decimals(seconds/3600) + " h"
	}
	return decimals(seconds/60) + " min"
}

// decimals prints a number with at most two decimals.
func decimals(v float64) string {
	return strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(v, 'f', 2, 64), "0"), ".")
}

func (d *Distance) words(f length.Fineness) string {
	names := d.From + " to " + d.To
	value := f.Text(length.Length(d.Value))
	if whole := "0 " + value; !readsApart(names, value) && readsApart(names, whole) { // post 1 3/4 in would be 1 3/4
		value = whole
	}
	if d.Over != OverCentres {
		value += " " + d.Over
	}
	return names + " " + value
}

// readsApart reports whether the value behind the names of a distance is read as it stands there.
func readsApart(names, value string) bool {
	p := phraseOf(names + " " + value)
	at, ok := p.longest(p.index("to")+2, length.MM)
	return ok && p.from(at).String() == value
}

func (g *Goods) words(f length.Fineness, currency string) string {
	var said []string
	if g.Kind == ItemGoods {
		said = []string{strconv.FormatFloat(g.Count, 'f', -1, 64), "×", g.Item}
	} else {
		said = []string{g.Kind, g.Material}
		if g.Quarters != "" {
			said = append(said, g.Quarters)
		}
		said = append(said, sizeWords(g.Size, f), "as", g.Tag)
	}
	if g.Rough > 0 {
		said = append(said, counted(g.Rough, "rough edge"))
	}
	if g.Cents != nil {
		said = append(said, "for", money(*g.Cents, currency))
	}
	if n := len(g.Defects); n > 0 {
		said = append(said, "with "+counted(n, "defect"))
	}
	return strings.Join(said, " ")
}

// counted is a number of things.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// money prints an amount of hundredths, with the currency where there is one.
func money(cents int64, currency string) string {
	sign := ""
	if cents < 0 {
		sign, cents = "-", -cents
	}
	return strings.TrimSpace(fmt.Sprintf("%s%d.%02d %s", sign, cents/100, cents%100, currency))
}
