package journal

import (
	"fmt"
	"strings"

	"rodwright/length"
)

// Words tells the entry numbered i from 0 of a log in a line, with lengths of facts rounded to the fineness: the value
// that was edited, the fact, the change asked for and the answer to it, the layout accepted, and which entry is taken back. It is empty
// where there is no such entry.
func Words(es []Entry, i int, f length.Fineness, currency string) string {
	if i < 0 || i >= len(es) {
		return ""
	}
	switch e := es[i]; {
	case e.Kind == Edit:
		return editWords(e)
	case e.Kind == Undo:
		return "undo of " + entryWords(es, e.Names)
	case e.Kind == Fact && e.Fact != nil:
		return e.Fact.Words(f, currency)
	case e.Kind == Asked && e.Order != nil:
		return e.Order.wordsOf(currency)
	case e.Kind == Answer:
		return answerWords(es, e)
	case e.Kind == Accepted && e.Layout != nil:
		return e.Layout.words()
	case e.Kind == Withdrawn:
		return withdrawnWords(es, e, f, currency)
	default:
		return string(e.Kind)
	}
}

func editWords(e Entry) string {
	if e.Old == "" {
		return e.Path + ": " + shown(e.New)
	}
	old := strings.Join(strings.Fields(e.Old), " ") // what stood there may be of several lines
	return e.Path + ": " + old + " → " + shown(e.New)
}

// shown is a value as it is told: an empty one in a word.
func shown(value string) string {
	if value == "" {
		return "nothing"
	}
	return value
}

// entryWords tells which entry has the id.
func entryWords(es []Entry, id string) string {
	if i := indexOf(es, id); i >= 0 {
		return fmt.Sprintf("entry %d", es[i].Number)
	}
	return "an entry that is not here"
}

// indexOf returns where the entry with the id is, or -1.
func indexOf(es []Entry, id string) int {
	for i, e := range es {
		if e.ID == id {
			return i
		}
	}
	return -1
}

// wordsOf tells what was asked for, what it changes, what it costs and when the piece is ready then.
func (o *Order) wordsOf(currency string) string {
	said := fmt.Sprintf("change %d asked", o.No)
	if o.Words != "" {
		said += ": " + o.Words
	}
	puts := make([]string, len(o.Edits))
	for i, p := range o.Edits {
		puts[i] = p.Path + ": " + shown(p.New)
	}
	said += " (" + strings.Join(puts, "; ") + ")"
	switch {
	case o.Cents != nil && *o.Cents < 0:
		said += ", " + money(-*o.Cents, currency) + " less"
	case o.Cents != nil:
		said += ", " + money(*o.Cents, currency) + " more"
	}
	if o.Ready != "" {
		said += ", ready " + o.Ready
	}
	return said
}

func answerWords(es []Entry, e Entry) string {
	said := "no to "
	if e.Yes {
		said = "yes to "
	}
	if i := indexOf(es, e.Names); i >= 0 && es[i].Order != nil {
		return fmt.Sprintf("%schange %d", said, es[i].Order.No)
	}
	return said + entryWords(es, e.Names)
}

func withdrawnWords(es []Entry, e Entry, f length.Fineness, currency string) string {
	said := "withdrawn: " + entryWords(es, e.Names)
	i := indexOf(es, e.Names)
	if i < 0 || es[i].Kind == Withdrawn { // which can't be withdrawn, and two might name each other
		return said
	}
	return said + ", " + Words(es, i, f, currency)
}
