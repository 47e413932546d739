package journal

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"rodwright/length"
)

// SayError says where a line that tells a fact can't be understood, and what would be right.
type SayError struct {
	At      int // the column, in letters from 1
	Message string
	Want    string
}

// Error names the place and what would be right.
func (e *SayError) Error() string {
	return fmt.Sprintf("at letter %d: %s; write %s", e.At, e.Message, e.Want)
}

// sayings reads what follows the first word of a line, by that word.
var sayings = map[What]func(phrase, length.Unit) (Happened, error){
	Made: sayMade, Measured: sayMeasured, Pushed: sayPushed, Bought: sayBought, Wrong: sayWrong, Spoiled: saySpoiled, Meant: sayMeant, Finished: sayNoMore(Finished), Delivered: sayNoMore(Delivered),
}

const wantFirst = "made, measured, pushed, bought, wrong, spoiled, meant, finished or delivered first"

// Say reads a fact as a maker writes it on one line. There is one way to say each:
//
//	made TAG WORK [SIZE [× SIZE [× SIZE]]] [from STOCKTAG [taking LENGTH]] [in 25 min|in 1.5 h] [again]
//	measured NAME to NAME LENGTH [outside|inside]
//	pushed FORCE on PANEL to the SIDE moved LENGTH
//	bought board SPECIES [QUARTERS] LENGTH × WIDTH × THICKNESS as TAG [1 rough edge|2 rough edges] [for PRICE]
//	bought stick PIPESIZE LENGTH as TAG [for PRICE]
//	bought sheet SHEET LENGTH × WIDTH [× THICKNESS] as TAG [for PRICE]
//	bought COUNT × ITEM [for PRICE]
//	wrong TAG [SIZE [× SIZE [× SIZE]]|short LENGTH|narrow LENGTH|hole DIAMETER at X × Y [deep DEPTH]] : WHY
//	spoiled TAG WHY
//	meant TAG for PLACE|the rack
//	finished
//	delivered
//
// for example
//
//	made C2.1 cut-pipe 26 1/2 in from S1 taking 26 5/8 in in 25 min
//	made A1.1 size 42 × 18 1/4 in
//	measured front left post to back left post 24 3/32 in
//	pushed 20 lb on high board to the left moved 1/4 in
//	bought board white-oak 5/4 118 × 6 3/4 × 1 1/8 in as P1 1 rough edge for 38.50
//	bought stick 3/4 21 ft as S1 for 41
//	bought sheet birch-plywood-18 96 × 48 in as B1 for 60
//	bought 8 × tee 1 for 31.20
//	wrong C2.1 25 3/4 in: cut too short
//	wrong A1.1 hole 1 in at 6 × 3 in: bored from the wrong edge
//	spoiled A1.1 split along its grain
//	meant C2.1 for back left post 1
//
// Lengths are those of length.Parse. One without a unit takes that of the next one joined to it by × or x, and where
// there is none the given unit. WORK is a kind of work of the steps (Works), or the word of the state that it leads
// to for all work up to it: cut, glued, sized, shaped, filled, sanded, finished or fitted. Times are kept to the second. A currency may stand behind a price.
// Where a name ends in a number, the longest end of the line that is a length is the length.
//
// What a line can't tell stays empty for the caller to fill in from the plan: of made, wrong and spoiled the thing, the
// place and what of the shape was not measured. So the fact of made and of wrong has a Shape, with its Size alone,
// only where a size was given. An error is a *SayError.
func Say(line string, unit length.Unit) (Happened, error) {
	if !utf8.ValidString(line) || !oneLine(line, MostValue) {
		return Happened{}, &SayError{1, "this is more than one line of text", fmt.Sprintf("one line of at most %d letters", MostValue)}
	}
	p := phraseOf(line)
	if len(p.words) == 0 {
		return Happened{}, &SayError{1, "nothing is said", wantFirst}
	}
	read, ok := sayings[What(p.words[0].text)]
	if !ok {
		return Happened{}, p.wrong(0, fmt.Sprintf("%q tells of nothing that is known", p.words[0].text), wantFirst)
	}
	h, err := read(p.from(1), unit)
	if err != nil {
		return Happened{}, err
	}
	if err := h.sayable(); err != nil {
		return Happened{}, keptError(p, err)
	}
	return h, nil
}

// sayable reports what of a fact can't be kept, as far as a line tells it.
func (h Happened) sayable() error {
	switch {
	case h.Goods != nil:
		return h.Goods.check()
	case h.Distance != nil:
		return h.Distance.check()
	case h.Push != nil:
		return h.Push.check()
	}
	return h.checkTexts()
}

// keptError says of a line as a whole why its fact can't be kept.
func keptError(p phrase, err error) error {
	var bad *EntryError
	if !errors.As(err, &bad) {
		return p.wrong(0, err.Error(), "another fact")
	}
	field := bad.Field[strings.LastIndex(bad.Field, ".")+1:]
	return p.wrong(0, "the "+field+" "+bad.Why, "another "+field)
}

func saySpoiled(p phrase, _ length.Unit) (Happened, error) {
	if len(p.words) < 2 {
		return Happened{}, p.wrong(len(p.words), "what went wrong is missing", "the tag and why, as spoiled A1.1 hole on the wrong side")
	}
	return Happened{What: Spoiled, Part: p.words[0].text, Why: p.from(1).String()}, nil
}

func sayNoMore(what What) func(phrase, length.Unit) (Happened, error) {
	return func(p phrase, _ length.Unit) (Happened, error) {
		if len(p.words) > 0 {
			return Happened{}, p.wrong(0, "nothing follows "+string(what), string(what)+" alone")
		}
		return Happened{What: what}, nil
	}
}
