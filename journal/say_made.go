package journal

import (
	"fmt"
	"math"
	"strings"

	"rodwright/length"
)

// sawn is the word that a maker says for the state of a blank that is cut.
const sawn = "cut"

// workOf returns the kind of work that a word names.
func workOf(said string) (string, bool) {
	if said == sawn {
		return BlankCut.String(), true
	}
	_, ok := AfterWork(said)
	return said, ok
}

// saidWork is the word for a kind of work, as workOf reads it.
func saidWork(work string) string {
	if work == BlankCut.String() {
		return sawn
	}
	return work
}

// worksWanted lists the words that name work.
func worksWanted() string {
	states := []string{sawn}
	for s := BlankCut + 1; s <= Fitted; s++ {
		states = append(states, s.String())
	}
	return "one of " + strings.Join(Works(), ", ") + ", or for all work up to a state " + strings.Join(states, ", ")
}

func sayMade(p phrase, unit length.Unit) (Happened, error) {
	h := Happened{What: Made}
	if len(p.words) < 2 {
		return h, p.wrong(len(p.words), "the work is missing", "the tag and the work, as made C2.1 cut-pipe 26 1/2 in")
	}
	var ok bool
	h.Part = p.words[0].text
	if h.Work, ok = workOf(p.words[1].text); !ok {
		return h, p.wrong(1, fmt.Sprintf("%q is no work on a part", p.words[1].text), worksWanted())
	}
	p = p.from(2)
	if n := len(p.words); n > 0 && p.words[n-1].text == "again" {
		h.Again, p = true, p.upto(n-1)
	}
	var err error
	if p, h.HandsH, err = sayHours(p); err != nil {
		return h, err
	}
	if p, err = h.sayStock(p, unit); err != nil || len(p.words) == 0 {
		return h, err
	}
	size, _, err := p.measures(unit)
	h.Shape = &Shape{Size: size, Measured: true}
	return h, err
}

// sayStock reads what the part was cut from, at the end of the phrase, and returns what is before it.
func (h *Happened) sayStock(p phrase, unit length.Unit) (phrase, error) {
	at := p.index("from")
	if at < 0 {
		return p, nil
	}
	stock := p.from(at + 1)
	switch {
	case len(stock.words) == 0:
		return p, stock.wrong(0, "the stock is missing", "the tag of the board, stick or sheet, as from S1")
	case len(stock.words) > 1 && stock.words[1].text != "taking":
		return p, stock.wrong(1, fmt.Sprintf("%q is not understood behind the stock", stock.words[1].text), "what of its length was used up, as taking 26 5/8 in, or nothing")
	}
	h.From = stock.words[0].text
	if len(stock.words) > 1 {
		var err error
		if h.Took, err = stock.from(2).measure(unit); err != nil {
			return p, err
		}
	}
	return p.upto(at), nil
}

// hourSizes are the seconds of the units of time.
var hourSizes = []struct {
	unit    string
	seconds int64
}{{"min", 60}, {"h", 3600}}

// sayHours reads the hours that it took, at the end of the phrase, and returns what is before them. Inches end in the
// same word that a time begins with: a time ends in its own unit.
func sayHours(p phrase) (phrase, float64, error) {
	at := p.lastIndex("in")
	if at < 0 {
		return p, 0, nil
	}
	value, tail, why := length.ScanNumber(p.from(at + 1).String())
	if why != "" {
		return p, 0, nil
	}
	for _, u := range hourSizes {
		if strings.TrimSpace(tail) != u.unit {
			continue
		}
		value.Mul(value, length.Length(u.seconds).Rat())
		seconds, _ := value.Float64()
		seconds = math.RoundToEven(seconds)
		if seconds > mostHours*3600 {
			return p, 0, p.wrong(at+1, "the time is too long", fmt.Sprintf("at most %d h", mostHours))
		}
		return p.upto(at), seconds / 3600, nil
	}
	return p, 0, nil
}
